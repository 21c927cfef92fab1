"""A chair of any maker as it was measured: its slips, figures and verdicts, and what is gained."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass

from chairwright.drawing.overlay import overlay_sheet
from chairwright.errors import InputError, Problem
from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.files.measured import FOOT_SUPPORTS, MeasuredFile, read_measured
from chairwright.measured.gains import changes
from chairwright.measured.slips import Doubt, Suspect, check, outside_tolerances
from chairwright.measured.stands import Stands, model_ahead, stands, why_not
from chairwright.papers.measured_words import ASSUMED, NOT_MEASURED, SPREAD, gain_words
from chairwright.reading import FileText
from chairwright_desk.bench.bridge import (
    Bench,
    Follows,
    Kept,
    Pictures,
    State,
    Units,
    follows_of,
    pictures_of,
)
from chairwright_desk.bench.bridge.compared import PAGE
from chairwright_desk.bench.bridge.pictures import Picture, picture

GROUPS: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("Seat and heights", (
        "seat_to_floor_front", "seat_to_floor_rear", "seat_depth", "seat_width", "seat_angle",
        "cushion_front", "cushion_rear", "arm_pad_height")),
    ("Back", ("back_angle", "back_height", "back_behind_post", "push_handle_height",
              "push_handle_behind_post")),
    ("Rear wheels", ("rear_wheel_diameter", "tyre_width", "hand_rim_diameter", "hand_rim_standoff",
                     "camber", "rear_track", "axle_ahead_of_post", "axle_below_seat")),
    ("Casters", ("caster_diameter", "caster_width", "wheelbase", "diagonal", "caster_track",
                 "caster_trail", "caster_stem_angle", "caster_ahead_of_post")),
    ("Legs and feet", ("leg_support_length", "hanger_angle", "footplate_clearance",
                       "footplate_ahead_of_post", "footplate_length", "footplate_inset")),
    ("Whole chair", ("overall_length", "overall_width", "overall_height", "folded_width",
                     "anti_tip_behind_axle", "anti_tip_clearance", "anti_tip_wheel_diameter")),
    ("Masses", ("chair_mass", "heaviest_piece", "rear_wheel_mass", "rated_load", "empty_on_rear",
                "empty_on_casters", "occupied_on_rear", "occupied_on_casters")),
)  # fmt: skip
"""Everything that a form asks for, in the order of going round the chair."""

HEADS = (("gain", "Gains"), ("nearer", "Still missed, by less"), ("loss", "Losses"),
         ("farther", "Missed by more than now"),
         ("not told", "Not told: one of the two has no such figure"))  # fmt: skip
MOST_OTHERS = 2


@dataclass(frozen=True)
class Asked:
    """One thing to measure, for a form."""

    name: str
    label: str
    dimension: str
    unit: str
    needed: bool
    tolerance: float


@dataclass(frozen=True)
class Slip:
    """A reading that may be a slip: its field, and what is said there."""

    field: str
    words: str


@dataclass(frozen=True)
class Judged:
    """One measured chair, judged for one client.

    Parameters
    ----------
    bench : Bench
        Of the client, weighed where a weighing counts.
    file : MeasuredFile
    doubt : Doubt
    found : Stands
    """

    bench: Bench
    file: MeasuredFile
    doubt: Doubt
    found: Stands

    @property
    def state(self) -> State:
        """The chair as the bench's pages show one."""
        return State(self.bench, dict(self.found.setup.index), self.found.setup)


@dataclass(frozen=True)
class MeasuredShown:
    """What the page of a measured chair shows."""

    follows: Follows | None
    summary: str
    pictures: Pictures | None
    slips: tuple[Slip, ...]
    open: tuple[str, ...]
    left_out: str
    assumed: str
    spread: str = SPREAD.replace("+/-", "±")


@dataclass(frozen=True)
class Gained:
    """What a client would gain from a kept set-up."""

    groups: tuple[tuple[str, tuple[str, ...]], ...]
    over: Picture


_JUDGED: Kept[Judged] = Kept(64)


def asked_groups() -> tuple[tuple[str, tuple[Asked, ...]], ...]:
    """Everything to be measured, by group."""
    return tuple((label, tuple(_asked(name) for name in names)) for label, names in GROUPS)


def feet_choices() -> tuple[str, ...]:
    """What can be said of the foot supports."""
    return tuple(FOOT_SUPPORTS)


def _asked(name: str) -> Asked:
    kind = CHAIR_MEASURES[name]
    label = f"{kind.label}, diameter" if name.endswith("_diameter") else kind.label
    return Asked(name, label, kind.dimension, kind.unit, kind.needed, kind.tolerance)


def judged(text: str, bench: Bench) -> Judged:
    """Judge a measured chair, once for each content.

    Parameters
    ----------
    text : str
        What a measured-chair file would hold.
    bench : Bench
        Of the client.

    Returns
    -------
    Judged

    Raises
    ------
    InputError
        When a reading cannot be meant, or the chair does not stand as measured; the likely slip
        is named.
    """
    key = (hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest(), bench.key)
    return _JUDGED.of(key, lambda: _judged(text, bench))


def _judged(text: str, bench: Bench) -> Judged:
    file, person = read_measured(FileText("measured", text)), bench.person
    values, feet = file.values, file.foot_supports
    more = outside_tolerances(person.occupant.load_kg, model_ahead(values, feet, person.occupant))
    doubt = check(file.readings, more)
    reason = why_not(values, feet, person.occupant)
    if reason:
        raise InputError(_stands_not(doubt, reason))
    found = stands(
        values, file.tolerances, feet, person.occupant, person.targets, name=file.name
    )  # fmt: skip
    return Judged(bench, file, doubt, found)


def _stands_not(doubt: Doubt, reason: str) -> Problem:
    must = "the chair must be one that stands on its wheels as measured"
    if doubt.named is None:
        remedy = "Measure seat heights, wheels and wheelbase again."
        return Problem("measures", must, reason, remedy)
    slip = _slip(doubt.named)
    return Problem(f"measures.{slip.field}", must, reason, f"{slip.words} Measure it again first.")


def slips_of(found: Judged) -> tuple[Slip, ...]:
    """Readings that may be slips, the likeliest first; empty when all closes."""
    suspects = found.doubt.suspects[: 1 + MOST_OTHERS]
    return tuple(_slip(each) for each in suspects)


def open_of(found: Judged) -> tuple[str, ...]:
    """What does not close, in words."""
    return tuple(
        f"{each.words} ({', '.join(_label(n) for n in each.uses if n in CHAIR_MEASURES)})"
        for each in found.doubt.open_closures
    )


def _label(name: str) -> str:
    label = CHAIR_MEASURES[name].label
    return label[:1].lower() + label[1:]


def _slip(each: Suspect) -> Slip:
    kind = CHAIR_MEASURES[each.reading.name]
    words = (
        f"Perhaps a slip: {each.slip.words}. {each.slip.meant:.4g} {kind.unit} would fit the "
        "others."
    )
    return Slip(each.reading.name, words)


def shown_measured(found: Judged, units: Units) -> MeasuredShown:
    """Everything that is said of a measured chair.

    Parameters
    ----------
    found : Judged
    units : {"mm", "in"}
    """
    known, follows = found.found.known, follows_of(found.state, units)
    return MeasuredShown(
        follows=follows,
        summary="" if follows is None else _summary(follows),
        pictures=pictures_of(found.state, units),
        slips=slips_of(found),
        open=open_of(found),
        left_out=NOT_MEASURED.format(names=_labels(known.unknown)) if known.unknown else "",
        assumed=ASSUMED.format(names=_labels(known.assumed)).replace("+/-", "±")
        if known.assumed
        else "",
    )


def _summary(follows: Follows) -> str:
    """What is missed, and what cannot be told: a figure without its measures is not a failure."""
    fails = [each.label.lower() for each in follows.fails if each.mark == "fails"]
    unknown = [each.label.lower() for each in follows.fails if each.mark == "unknown"]
    count = "1 must fails" if len(fails) == 1 else f"{len(fails)} musts fail"
    told = f"{count}: {', '.join(fails)}." if fails else "Every must that can be told holds."
    return f"{told} Not known: {', '.join(unknown)}." if unknown else told


def _labels(names: tuple[str, ...]) -> str:
    return "; ".join(_label(name) for name in names)


def gained(found: Judged, state: State, names: tuple[str, str]) -> Gained | None:
    """What the client would gain from a kept set-up.

    Parameters
    ----------
    found : Judged
    state : State
        The set-up, for the same client.
    names : tuple of str
        Of the measured chair and the set-up.

    Returns
    -------
    Gained or None
        None when the set-up is no chair that stands.
    """
    if state.setup is None:
        return None
    moved = changes(found.found.setup, state.setup)
    groups = tuple(
        (head, tuple(gain_words(each) for each in moved if each.kind == kind))
        for kind, head in HEADS
    )
    over = overlay_sheet(found.found.setup.shape, state.setup.shape, names, PAGE, 1)
    return Gained(tuple(each for each in groups if each[1]), picture(over, "gain"))
