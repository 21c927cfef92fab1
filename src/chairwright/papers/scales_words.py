"""What scales under the wheels say, in the words that report and weighing sheet share."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple

from chairwright.chair.occupant import Occupant
from chairwright.files.scales import ScalesFile
from chairwright.fitting.described import Described
from chairwright.scales.carried import CarriedOver, OccupantShift
from chairwright.scales.model import Session
from chairwright.scales.propagate import Measured

Notes = list[str]


class Row(NamedTuple):
    """One result: its name, what people call it, unit and digits."""

    name: str
    label: str
    unit: str
    digits: int = 1


WHOLE = (
    Row("total_mass_kg", "Chair with occupant", "kg"),
    Row("com_x_mm", "Centre of mass ahead of axle", "mm"),
    Row("com_y_mm", "Centre of mass to the left", "mm"),
    Row("com_z_mm", "Centre of mass above floor", "mm"),
    Row("caster_share", "Share of the load on the casters", "", 3),
    Row("tip_rear_locked_deg", "Tips back, wheels locked", "deg"),
    Row("tip_rear_free_deg", "Tips back, wheels free", "deg"),
    Row("tip_forward_deg", "Tips forward, casters trailing", "deg"),
    Row("tip_forward_caster_axle_deg", "Tips forward about the caster axles", "deg"),
    Row("tip_left_deg", "Tips to the left", "deg"),
    Row("tip_right_deg", "Tips to the right", "deg"),
    Row("tip_left_line_deg", "Tips left about the wheel line", "deg"),
    Row("tip_right_line_deg", "Tips right about the wheel line", "deg"),
)
SHARE = (
    Row("chair_mass_kg", "Chair alone", "kg"),
    Row("occupant_mass_kg", "Occupant", "kg"),
    Row("occupant_x_mm", "Occupant's centre ahead of axle", "mm"),
    Row("occupant_y_mm", "Occupant's centre to the left", "mm"),
    Row("occupant_z_mm", "Occupant's centre above floor", "mm"),
    Row("occupant_frame_x_mm", "Along the seat rail from the seat corner", "mm"),
    Row("occupant_frame_z_mm", "Square to the seat rail, upward", "mm"),
)
READINGS = {
    "wheelbase": "the wheelbase",
    "rear_height": "the height of the rear axle",
    "caster_height": "the height of the caster axles",
    "rear_track": "the rear track",
    "caster_track": "the caster track",
    "occupied.block": "the height of the block",
    "empty.block": "the height of the block under the empty chair",
}
TILT = (
    "Wheels locked and wheels free are two angles; nothing here has been tried on a slope. Tilt a "
    "chair with its client only with a helper on each side."
)
NO_HEIGHT = (
    "The height is not known, and so no tipping angle: weigh again with the casters raised on a "
    "block, wheels free."
)
AGREES_MM = 5.0
"""Sizes of chair and set-up that differ by more are told (common practice, no source)."""


@dataclass(frozen=True)
class Weighed:
    """One weighing with all that it names.

    Parameters
    ----------
    file : ScalesFile
        With what the set-up adds to its session.
    found : Measured
    setup : Described or None
        The set-up weighed, with the estimated occupant.
    shift : OccupantShift or None
    occupant : Occupant or None
        As estimated.
    setup_name : str
        What the set-up is called; empty without one.
    """

    file: ScalesFile
    found: Measured
    setup: Described | None = None
    shift: OccupantShift | None = None
    occupant: Occupant | None = None
    setup_name: str = ""


@dataclass(frozen=True)
class Onto:
    """Another set-up with the occupant as weighed."""

    name: str
    setup: Described
    there: CarriedOver


def half_words(half: float, digits: int) -> str:
    """Write a half width; one that would round to nothing as less than the last digit.

    Examples
    --------
    >>> half_words(0.42, 1), half_words(0.04, 1)
    ('0.4', '<0.1')
    """
    text = f"{half:.{digits}f}"
    return text if float(text) > 0.0 else f"<{10.0**-digits:g}"


def beyond(weighed: Weighed, setup: Described, name: str) -> bool:
    """Whether a result lies farther from the estimate than both can be off.

    Parameters
    ----------
    weighed : Weighed
    setup : Described
    name : str
        Of a figure with a spread; False for one without.
    """
    spread = setup.spreads.get(name)
    if spread is None:
        return False
    off = abs(weighed.found.values[name] - setup.figures[name])
    return off > math.hypot(spread, weighed.found.half_width(name))


def notes(weighed: Weighed) -> Notes:
    """What the reader has to know of these numbers.

    Parameters
    ----------
    weighed : Weighed

    Returns
    -------
    list of str
    """
    found = weighed.found
    told = [doubt_words(weighed.file.session)]
    if "com_z_mm" in found.values:
        told.append(best_again(found))
    else:
        told.append(NO_HEIGHT)
    return told + (look_again(weighed, weighed.setup) if weighed.setup is not None else [])


def doubt_words(session: Session) -> str:
    """Say what a half width is and what it rests on."""
    return (
        "+/- is two standard uncertainties, about 95 %, from a scale step of "
        f"{session.resolution_kg * 1000:g} g and a tape read to {session.tape_mm:g} mm. What the "
        "client does meanwhile, leaning or breathing, comes on top."
    )


def best_again(found: Measured) -> str:
    """Say which reading is worth taking once more for a surer height."""
    name, share = next(iter(found.shares("com_z_mm").items()))
    return (
        f"Most of the doubt about the height, {share:.0%} of its variance, comes from "
        f"{reading_words(name)}: read that once more, or use a higher block."
    )


def reading_words(name: str) -> str:
    """A reading as people call it, with its article."""
    if name in READINGS:
        return READINGS[name]
    state, stance, pad = name.split(".")
    where = "level" if stance == "level" else "with the casters raised"
    return f"the load on {pad.replace('_', ' ')}, {state} chair, {where}"


def look_again(weighed: Weighed, setup: Described) -> Notes:
    """Sizes read that the set-up does not have."""
    session, shape = weighed.file.session, setup.shape
    pairs = {
        "wheelbase": (session.wheelbase_mm, shape.wheelbase_mm),
        "rear axle height": (session.rear_height_mm, shape.rear_axle[1]),
        "caster axle height": (session.caster_height_mm, shape.caster_axle[1]),
        "rear track": (session.rear_track_mm, shape.rear_track_mm),
        "caster track": (session.caster_track_mm, shape.caster_track_mm),
    }
    allowed = max(AGREES_MM, 3.0 * session.tape_mm)
    return [
        f"Look again: the {name} was read as {read:.0f} mm, and the set-up makes it {made:.0f}. "
        "Either it was read wrong or the chair is not set up as the file says."
        for name, (read, made) in pairs.items()
        if abs(read - made) > allowed
    ]


def _way(shift_mm: float, more: str, less: str) -> str:
    return f"{abs(shift_mm):.0f} mm {more if shift_mm >= 0 else less}"


def shift_words(weighed: Weighed) -> str:
    """How the occupant as weighed differs from the estimate; empty when that is not known.

    Parameters
    ----------
    weighed : Weighed
    """
    shift, occupant = weighed.shift, weighed.occupant
    if shift is None or occupant is None:
        return ""
    heavier = shift.mass_kg - occupant.body.mass_kg
    return (
        f"Against the estimate the occupant is {abs(heavier):.1f} kg "
        f"{'heavier' if heavier >= 0 else 'lighter'}, and the centre lies "
        f"{_way(shift.ahead_mm, 'forward', 'back')}, {_way(shift.up_mm, 'up', 'down')} and "
        f"{_way(shift.left_mm, 'to the left', 'to the right')}, in the frame's axes."
    )
