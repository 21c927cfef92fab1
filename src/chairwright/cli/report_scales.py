"""What scales under the wheels say, as text."""

from __future__ import annotations

import math

from chairwright.cli.table import text_table
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.scales_words import (
    SHARE,
    TILT,
    WHOLE,
    Onto,
    Row,
    Weighed,
    beyond,
    half_words,
    notes,
    shift_words,
)
from chairwright.papers.words import Units, spread_words, value_words, wrapped
from chairwright.scales.propagate import Measured
from chairwright.units import inches_text

CARRIED = "This goes with the client to other set-ups (--onto SETUP)."


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
        sections += [wrapped(f"{words} {CARRIED}") for words in [shift_words(weighed)] if words]
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
