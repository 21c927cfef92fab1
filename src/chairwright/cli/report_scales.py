"""What scales under the wheels say, as text."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple

from chairwright.cli.table import text_table
from chairwright.cli.weighed import Weighed
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.words import Units, spread_words, value_words, wrapped
from chairwright.scales.carried import CarriedOver
from chairwright.scales.propagate import Measured
from chairwright.units import inches_text

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
class Onto:
    """Another set-up with the occupant as weighed."""

    name: str
    setup: Described
    there: CarriedOver


def scales_text(weighed: Weighed, onto: Onto | None, units: Units) -> str:
    """The whole report.

    Parameters
    ----------
    weighed : Weighed
    onto : Onto or None
    units : {"mm", "in"}

    Returns
    -------
    str
    """
    file, found = weighed.file, weighed.found
    day = f" on {file.dated}" if file.dated else ""
    sections = [f"{file.client}: weighed{day} ({file.method})", _whole_text(weighed, units)]
    sections += [wrapped(note) for note in notes(weighed)]
    if "occupant_mass_kg" in found.values:
        sections.append(_table("The occupant's share", SHARE, found, units))
        sections += [wrapped(words) for words in [_shift_words(weighed)] if words]
    if onto is not None:
        sections.append(_onto_text(onto))
    return "\n\n".join([*sections, wrapped(TILT), wrapped(PURPOSE)])


def _table(title: str, wanted: tuple[Row, ...], found: Measured, units: Units) -> str:
    inches = ["inches"] if units == "in" else []
    rows = [
        [f"  {row.label}", *_cells(row, found, units)] for row in wanted if row.name in found.values
    ]
    return text_table([title, "value", "unit", "+/-", *inches], rows, "lrlrr")


def _cells(row: Row, found: Measured, units: Units) -> list[str]:
    value, half = found.values[row.name], found.half_width(row.name)
    cells = [f"{value:.{row.digits}f}", row.unit, half_words(half, row.digits)]
    return [*cells, inches_text(value) if row.unit == "mm" else ""] if units == "in" else cells


def half_words(half: float, digits: int) -> str:
    """Write a half width; one that would round to nothing as less than the last digit.

    Examples
    --------
    >>> half_words(0.42, 1), half_words(0.04, 1)
    ('0.4', '<0.1')
    """
    text = f"{half:.{digits}f}"
    return text if float(text) > 0.0 else f"<{10.0**-digits:g}"


def _whole_text(weighed: Weighed, units: Units) -> str:
    found, setup = weighed.found, weighed.setup
    title = "Chair with occupant, as weighed"
    if setup is None:
        return _table(title, WHOLE, found, units)
    rows = []
    for row in WHOLE:
        if row.name in found.values:
            cells = [f"  {row.label}", *_cells(row, found, units)]
            rows.append([*cells, *_against(row, weighed, setup)])
    inches = ["inches"] if units == "in" else []
    headers = [title, "value", "unit", "+/-", *inches, "estimate", "+/-", "off by", ""]
    return text_table(headers, rows, "lrlr" + "r" * len(inches) + "rrr")


def _against(row: Row, weighed: Weighed, setup: Described) -> list[str]:
    if row.name not in setup.figures:
        return ["", "", "", ""]
    value, spread = setup.figures[row.name], setup.spreads.get(row.name, 0.0)
    off = weighed.found.values[row.name] - value
    wide = beyond(weighed, setup, row.name)
    shown = f"{spread:.{row.digits}f}" if spread else ""
    word = "more than the estimate allows" if wide else ""
    return [f"{value:.{row.digits}f}", shown, f"{off:+.{row.digits}f}", word]


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
    found, session = weighed.found, weighed.file.session
    told = [
        "+/- is two standard uncertainties, about 95 %, from a scale step of "
        f"{session.resolution_kg * 1000:g} g and a tape read to {session.tape_mm:g} mm. What the "
        "client does meanwhile, leaning or breathing, comes on top."
    ]
    if "com_z_mm" in found.values:
        told.append(_best_again(found))
    else:
        told.append(NO_HEIGHT)
    return told + (_sizes(weighed, weighed.setup) if weighed.setup is not None else [])


def _best_again(found: Measured) -> str:
    name, share = next(iter(found.shares("com_z_mm").items()))
    return (
        f"Most of the doubt about the height, {share:.0%} of its variance, comes from "
        f"{_reading_words(name)}: read that once more, or use a higher block."
    )


def _reading_words(name: str) -> str:
    if name in READINGS:
        return READINGS[name]
    state, stance, pad = name.split(".")
    where = "level" if stance == "level" else "with the casters raised"
    return f"the load on {pad.replace('_', ' ')}, {state} chair, {where}"


def _sizes(weighed: Weighed, setup: Described) -> Notes:
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


def _shift_words(weighed: Weighed) -> str:
    shift, occupant = weighed.shift, weighed.occupant
    if shift is None or occupant is None:
        return ""
    heavier = shift.mass_kg - occupant.body.mass_kg
    return (
        f"Against the estimate the occupant is {abs(heavier):.1f} kg "
        f"{'heavier' if heavier >= 0 else 'lighter'}, and the centre lies "
        f"{_way(shift.ahead_mm, 'forward', 'back')}, {_way(shift.up_mm, 'up', 'down')} and "
        f"{_way(shift.left_mm, 'to the left', 'to the right')}, in the frame's axes. "
        "This goes with the client to other set-ups (--onto SETUP)."
    )


def _way(shift_mm: float, more: str, less: str) -> str:
    return f"{abs(shift_mm):.0f} mm {more if shift_mm >= 0 else less}"


def _onto_text(onto: Onto) -> str:
    rows = []
    for name, value in onto.there.figures.items():
        figure, was = FIGURES[name], onto.setup.figures[name]
        if math.isnan(value):
            continue
        half, spread = onto.there.half_widths.get(name, 0.0), onto.setup.spreads.get(name, 0.0)
        rows.append(
            [
                f"  {figure.label}",
                value_words(figure, value),
                figure.unit,
                spread_words(figure, half).removeprefix("± "),
                value_words(figure, was),
                spread_words(figure, spread).removeprefix("± "),
            ]
        )
    headers = [f"{onto.name}, occupant as weighed", "value", "unit", "+/-", "estimate", "+/-"]
    return text_table(headers, rows, "lrlrrr")
