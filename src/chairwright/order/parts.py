"""The complete parts list: every choice as a part with code, quantity and side, or as a setting."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from chairwright.fitting.described import Described
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Choice, FixedPart, Option, OptionKind
from chairwright.order.chosen import SetUp

Side = Literal["left and right", "left", "right", "one"]

PAIRS = frozenset({
    "side_frame", "rear_wheel", "axle_hole", "caster", "fork", "stem_spacer", "caster_housing",
    "hand_rim", "arm_support", "back_height", "push_handle", "wheel_lock", "anti_tip",
})  # fmt: skip
"""Choices whose part is a left and a right one; the line prices and weighs them as a pair."""

BY_FOOT = frozenset({"hanger", "foot_plate", "leg_length"})
"""Choices whose part is there on the sides that have a foot support."""

SETTINGS = frozenset({"foot_supports", "stem_setting", "back_angle"})
"""Choices that are only set, whether or not they have an order code."""

PARTS = {
    "axle_hole": "axle plate",
    "fork": "caster fork",
    "caster_housing": "caster housing",
    "seat_width": "cross-brace and seat sling",
    "seat_depth": "seat upholstery and rails",
    "back_height": "back post",
    "leg_length": "hanger tube",
}
"""What the part is where the choice is named for its size or its hole."""


@dataclass(frozen=True)
class PartRow:
    """One line of the parts list.

    Parameters
    ----------
    choice : str
        Name of the choice; ``extras`` or ``fixed_parts`` for what is no choice.
    label : str
        What it is, for people.
    code : str
        Order code.
    words : str
    quantity : int
        Pieces.
    side : {"left and right", "left", "right", "one"}
    mark : {"standard", "made to order", "on request"}
    """

    choice: str
    label: str
    code: str
    words: str
    quantity: int
    side: Side
    mark: OptionKind = "standard"


@dataclass(frozen=True)
class SettingRow:
    """One thing to be set at the build.

    Parameters
    ----------
    choice, label, code, words : str
        The code is that of the hole or the setting.
    x_mm, z_mm : float or None
        Its place in frame axes: ahead of and above the seat corner; None when it has none.
    """

    choice: str
    label: str
    code: str
    words: str
    x_mm: float | None = None
    z_mm: float | None = None


def part_rows(setup: Described) -> tuple[PartRow, ...]:
    """Every part of a set-up: those of the choices, those of every chair, the extras.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    tuple of PartRow
        In the order of the choices.
    """
    return tuple(_parts(setup))


def _parts(setup: Described) -> Iterator[PartRow]:
    for name, option in setup.options.items():
        if is_part(name, option):
            count, side = pieces(name, setup)
            label = PARTS.get(name, CHOICES[name].label).capitalize()
            code = option.part or option.code
            words = part_name(setup.line.choices[name], option)
            yield PartRow(name, label, code, words, count, side, option.kind)
    extras = setup.extras
    for part in setup.line.fixed_parts:
        if part not in extras:
            yield _one("fixed_parts", "Part of every chair", part)
    yield from (_one("extras", "Extra", part) for part in extras)


def _one(group: str, label: str, part: FixedPart) -> PartRow:
    return PartRow(group, label, part.code, part.name, 1, "one")


def part_name(choice: Choice, option: Option) -> str:
    """What the part of an option is called, without the hole or the setting.

    Parameters
    ----------
    choice : Choice
    option : Option
        One of the choice's.

    Returns
    -------
    str
        What the names of all options of the part have alike, comma by comma; the name of
        the part itself when they have nothing alike.
    """
    same = [each.name for each in choice.options if each.part == option.part and option.part]
    pieces_of = [name.split(", ") for name in same]
    if choice.name == "caster_housing":
        return PARTS[choice.name]
    if len(same) < 2:
        return option.name.removesuffix(", made to order")
    common = [
        first for first, *rest in zip(*pieces_of, strict=False) if rest == [first] * len(rest)
    ]
    return ", ".join(common) or PARTS.get(choice.name, choice.label.lower())


def is_part(name: str, option: Option) -> bool:
    """Whether an option is a thing that is ordered, not a setting or nothing at all.

    Parameters
    ----------
    name : str
        The choice.
    option : Option
    """
    if option.code == NONE or name in SETTINGS:
        return False
    if name == "camber":
        return option.numbers.get("mass_kg", 0.0) > 0.0 or option.numbers["price"] > 0.0
    return bool(option.part) or option.kind == "made to order"


def pieces(name: str, setup: SetUp) -> tuple[int, Side]:
    """How many pieces a choice's part has, and on which side they go.

    Parameters
    ----------
    name : str
        The choice.
    setup : SetUp

    Returns
    -------
    tuple of int and str
        One board under both feet counts as one piece.
    """
    if name in BY_FOOT:
        sides = setup.options["foot_supports"].code
        if name == "foot_plate" and sides == "both" and one_board(setup):
            return 1, "one"
        one_sided: dict[str, Side] = {"left": "left", "right": "right"}
        return (1, one_sided[sides]) if sides in one_sided else (2, "left and right")
    return (2, "left and right") if name in PAIRS else (1, "one")


def one_board(setup: SetUp) -> bool:
    """Whether the footplate reaches across the middle, so that two would overlap."""
    plate = setup.options["foot_plate"].numbers
    half = setup.options["seat_width"].numbers["width_mm"] / 2
    return plate.get("width_mm", 0.0) > half - plate.get("outer_inset_mm", 0.0)


def setting_rows(setup: Described) -> tuple[SettingRow, ...]:
    """Every hole and setting of a set-up.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    tuple of SettingRow
        In the order of the choices; that there is no foot support is a setting.
    """
    return tuple(
        SettingRow(name, CHOICES[name].label, option.code, option.name, *_place(name, option))
        for name, option in setup.options.items()
        if _is_setting(name, option)
    )


def _is_setting(name: str, option: Option) -> bool:
    if name in SETTINGS:
        return True
    if option.code == NONE or option.kind == "made to order":
        return False
    if name in ("camber", "leg_length"):
        return True
    return bool(option.part) and option.code != option.part


def _place(name: str, option: Option) -> tuple[float | None, float | None]:
    if name in ("axle_hole", "anti_tip"):
        return option.numbers["x_mm"], option.numbers["z_mm"]
    if name == "caster_housing":
        return None, option.numbers["z_mm"]
    return None, None


def left_off(setup: Described) -> tuple[str, ...]:
    """Choices of which nothing is fitted, foot supports apart (they are a setting).

    Parameters
    ----------
    setup : Described

    Returns
    -------
    tuple of str
        Names of the choices.
    """
    return tuple(
        name for name, option in setup.options.items()
        if option.code == NONE and name != "foot_supports"
    )  # fmt: skip
