"""The measures that there are, in the order and groups in which they are taken here."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from chairwright.files.limbs import LEG_LEVELS, LEVELS
from chairwright.line.choices import CHOICES
from chairwright.person.amputation import CUT
from chairwright.person.measures import CATALOGUE, MeasureKind

_GROUPS: tuple[tuple[str, str, tuple[str, ...]], ...] = (
    ("whole", "The whole body", ("body_mass", "stature", "sitting_height")),
    (
        "seat",
        "Seat and legs",
        (
            "hip_width",
            "buttock_thigh_depth",
            "lower_leg_length",
            "knee_height",
            "buttock_knee_length",
            "thigh_clearance",
            "trochanter_width",
            "external_knee_width",
        ),
    ),
    (
        "back",
        "Back and shoulders",
        (
            "axilla_height",
            "scapula_height",
            "shoulder_height",
            "shoulder_width",
            "biacromial_width",
            "chest_width",
            "chest_depth",
            "abdomen_depth",
        ),
    ),
    (
        "arms",
        "Arms",
        ("elbow_height", "upper_arm_length", "forearm_length", "hand_length"),
    ),
    ("feet", "Feet and shoes", ("foot_length", "foot_width", "shoe_sole")),
)
LIMBS = ("left_leg", "right_leg", "left_arm", "right_arm")
LEVEL_WORDS = {
    "foot": "the foot",
    "below_knee": "below the knee",
    "through_knee": "through the knee",
    "above_knee": "above the knee",
    "hip": "the whole leg",
    "hand": "the hand",
    "below_elbow": "below the elbow",
    "through_elbow": "through the elbow",
    "above_elbow": "above the elbow",
    "shoulder": "the whole arm",
}
CHOICE_WORDS = {name: name.replace("_", " ") for name in CHOICES}
"""Choices of a chair that may be settled beforehand."""


@dataclass(frozen=True)
class Kind:
    """One measure as the form shows it."""

    name: str
    label: str
    how: str
    dimension: str
    sided: bool
    usual: str
    number: int

    @property
    def fields(self) -> tuple[tuple[str, str], ...]:
        """Side and name of each box."""
        if not self.sided:
            return (("", self.name),)
        return (("left", f"{self.name}_left"), ("right", f"{self.name}_right"))


@dataclass(frozen=True)
class KindGroup:
    """Measures that are taken together."""

    key: str
    words: str
    kinds: tuple[Kind, ...]


@cache
def kind_groups() -> tuple[KindGroup, ...]:
    """Every measure of the catalogue, once."""
    order = [name for _, _, names in _GROUPS for name in names]
    order += [name for name in CATALOGUE if name not in order]
    numbers = {name: at for at, name in enumerate(order, 1)}
    groups = [
        KindGroup(key, words, tuple(_kind(CATALOGUE[name], numbers[name]) for name in names))
        for key, words, names in _GROUPS
    ]
    known = {name for _, _, names in _GROUPS for name in names}
    rest = tuple(_kind(CATALOGUE[name], numbers[name]) for name in order if name not in known)
    return (*groups, KindGroup("other", "Others", rest)) if rest else tuple(groups)


@cache
def kinds() -> dict[str, Kind]:
    """Measures by name."""
    return {kind.name: kind for group in kind_groups() for kind in group.kinds}


def _kind(kind: MeasureKind, number: int) -> Kind:
    unit = "kg" if kind.dimension == "mass" else "mm"
    usual = f"{kind.tolerance:g} {unit}"
    return Kind(kind.name, kind.label, kind.how, kind.dimension, kind.sided, usual, number)


def levels_of(limb: str) -> tuple[tuple[str, str], ...]:
    """Levels at which a limb may be lost, with their words."""
    leg = limb.endswith("_leg")
    return tuple((each, LEVEL_WORDS[each]) for each in LEVELS if (each in LEG_LEVELS) == leg)


def has_share(level: str) -> bool:
    """Whether part of the cut segment may be left."""
    return level in CUT
