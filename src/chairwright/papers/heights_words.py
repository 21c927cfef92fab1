"""A seat-height chart in words: what it holds, what it does not, and each cell."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

import numpy as np

from chairwright.figures.registry import FIGURES
from chairwright.fitting.heights_chart import (
    ANGLE,
    FRONT,
    REAR,
    STANDS,
    STEM,
    HeightsChart,
)
from chairwright.fitting.heights_fixed import SQUARED
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Option
from chairwright.papers.heights_blocks import (
    Block,
    column_spread_mm,
    other_columns,
    printed_holes,
)
from chairwright.papers.words import NO_VALUE, value_words
from chairwright.units import MM_PER_INCH

ChartUnits = Literal["mm", "in", "both"]

NOT_SQUARE = "*"

WHAT = (
    "Top of the seat rail above a level, hard floor, casters trailing: at the back post, and at "
    "the seat's front edge."
)
NOT_HELD = (
    "Not in these heights: the occupant, the cushion, the sag of the sling, the give of tyres, "
    "play. A tyre's real radius is within 3 mm of the nominal one as a rule and 12 mm at worst "
    "(public tables of roll-out; derived): tape the finished chair."
)
STEM_WORDS = (
    "Stem: the setting that brings the caster stem nearest to the vertical, and how far off it "
    "stays in degrees, top leaning back positive."
)
SQUARE_WORDS = "After any move of the axle square the caster housings again."


@dataclass(frozen=True)
class Cell:
    """One cell: texts, or the reason for its dash.

    Parameters
    ----------
    mm, inches : str
        Back and front: ``482/510`` and ``19.0/20.1``.
    angle : str
        Seat angle [deg].
    setting, stem : str
        Stem setting, and what is left off the vertical [deg].
    reason : str
        Empty where the chair stands.
    """

    mm: str = ""
    inches: str = ""
    angle: str = ""
    setting: str = ""
    stem: str = ""
    reason: str = ""


def cell(chart: HeightsChart, block: Block, hole: int, fork: int) -> Cell:
    """The words of one cell.

    Parameters
    ----------
    chart : HeightsChart
    block : Block
    hole, fork : int
        Places along the chart's axes.

    Returns
    -------
    Cell
    """
    place = (block.wheel, hole, block.caster, fork)
    if chart.why[place] != STANDS:
        return Cell(reason=chart.reasons[chart.why[place]])
    ends = [float(chart.figures[name][place]) for name in (REAR, FRONT)]
    stem = float(chart.figures[STEM][place])
    return Cell(
        mm="/".join(value_words(FIGURES[REAR], end) for end in ends),
        inches="/".join(f"{end / MM_PER_INCH:.1f}" for end in ends),
        angle=value_words(FIGURES[ANGLE], float(chart.figures[ANGLE][place])),
        setting=chart.line.choices[SQUARED].options[chart.setting[place]].code,
        stem=_stem_words(stem, square_within_deg(chart)),
    )


def _stem_words(stem_deg: float, within_deg: float) -> str:
    """With its sign as printed, marked when the printed angle is too great."""
    words = value_words(FIGURES[STEM], stem_deg)
    sign = "+" if float(words) > 0.0 else ""
    return f"{sign}{words}{NOT_SQUARE if abs(float(words)) > within_deg else ''}"


def square_within_deg(chart: HeightsChart) -> float:
    """How near to the vertical the line's stem settings are meant to bring a stem [deg].

    Parameters
    ----------
    chart : HeightsChart

    Returns
    -------
    float
        Half the widest step between neighbouring settings; infinite when there is one only.
    """
    angles = np.sort(chart.line.column(SQUARED, "angle_deg"))
    return float(np.max(np.diff(angles))) / 2 if len(angles) > 1 else math.inf


def unsquare_words(chart: HeightsChart) -> str:
    """What the mark beside a stem angle means."""
    within = square_within_deg(chart)
    return (
        f"stem more than {within:g} degree{'' if within == 1.0 else 's'} (half a step of the "
        "settings) off vertical: the front lifts or drops as the caster swings round"
    )


def facts(chart: HeightsChart) -> list[tuple[str, str, str]]:
    """What stays the same on the chart: label, code, description.

    Parameters
    ----------
    chart : HeightsChart

    Returns
    -------
    list of tuple of str
    """
    rows = [
        (
            CHOICES[name].label,
            "" if option.code == NONE else option.code,
            _described(name, option),
        )
        for name, option in chart.fixed.items()
    ]
    return [*rows, ("Axle holes", f"column {chart.column.label}", column_words(chart))]


def _described(name: str, option: Option) -> str:
    leans = name == "camber" and option.numbers["angle_deg"] > 0.0
    return f"{named(option)}{' (tops leaning in)' if leans else ''}"


def named(option: Option) -> str:
    """What an option is, and whether it must be asked for."""
    return option.name if option.kind == "standard" else f"{option.name}, {option.kind}"


def column_words(chart: HeightsChart) -> str:
    """Where the printed column is, and what the plate's others would change."""
    option = chart.line.choices["axle_hole"].options[next(iter(chart.column.rows.values()))]
    plate, x_mm = option.name.partition(", column")[0], chart.column.x_mm
    side = "behind" if x_mm < 0 else "ahead of"
    where = f"{plate}, {abs(x_mm):g} mm ({abs(x_mm) / MM_PER_INCH:.1f} in) {side} the back post"
    others = [column.label for column in other_columns(chart)]
    if not others:
        return where
    spread = column_spread_mm(chart)
    return (
        f"{where}; in the plate's other columns ({', '.join(others)}) heights differ by up to "
        f"{spread:.0f} mm ({spread / MM_PER_INCH:.1f} in)"
    )


def level_words(chart: HeightsChart) -> str:
    """What the chart was narrowed to; empty when it holds all that stands."""
    if chart.level_deg is None:
        return ""
    low, high = chart.level_deg
    return f"Only seat angles from {low:g} to {high:g} degrees are shown."


def settings_words(chart: HeightsChart, codes: Iterable[str]) -> str:
    """Stem settings by code: ``N0 stem as drawn, NF2 stem turned 2 degrees forward``."""
    used = set(codes)
    options = chart.line.choices[SQUARED].options
    return ", ".join(f"{each.code} {each.name}" for each in options if each.code in used)


def cells_of(chart: HeightsChart, block: Block) -> list[list[Cell]]:
    """Every cell of a block, axle holes down.

    Parameters
    ----------
    chart : HeightsChart
    block : Block

    Returns
    -------
    list of list of Cell
    """
    holes = printed_holes(chart)
    return [[cell(chart, block, hole, fork) for fork in block.forks] for hole in holes]


def dash(letter: str) -> str:
    """A cell without a height, with the letter of its reason."""
    return f"{NO_VALUE} {letter}"
