"""The seat-height chart of a line: what is asked, the tables, a picture of each rear wheel."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

from chairwright.errors import InputError, Problem
from chairwright.fitting.heights_chart import STANDS, Ask, HeightsChart, heights_chart
from chairwright.fitting.heights_fixed import FIXED, hole_columns
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Line
from chairwright.papers.heights_blocks import printed_holes
from chairwright.papers.heights_sheet import WheelPage, heights_pdf, wheel_pages
from chairwright.papers.heights_words import (
    NOT_HELD,
    SQUARE_WORDS,
    STEM_WORDS,
    WHAT,
    facts,
    level_words,
)
from chairwright.papers.typeset import Paper
from chairwright_desk.lines.bridge.heights_picture import Panel, panels

NARROWED = ("rear_wheel", "caster")
WIDE = 1000
"""Fork holes side by side: a screen scrolls, so a wheel is one table."""


@dataclass(frozen=True)
class HeightsAsked:
    """What a chart is wanted for; an empty text leaves it to the line.

    Parameters
    ----------
    codes : dict of str to str
        Of what stays the same, of ``rear_wheel`` and of ``caster``.
    column : str
    low, high : float or None [deg]
        Least and greatest seat angle.
    """

    codes: Mapping[str, str] = field(default_factory=dict)
    column: str = ""
    low: float | None = None
    high: float | None = None


@dataclass(frozen=True)
class Offered:
    """A list of the form: name, label, and code, words, whether it is the present one."""

    name: str
    label: str
    options: tuple[tuple[str, str, bool], ...]


@dataclass(frozen=True)
class WheelShown:
    """One rear wheel: its tables and its picture."""

    page: WheelPage
    panel: Panel


@dataclass(frozen=True)
class HeightsShown:
    """A chart as a page shows it.

    Parameters
    ----------
    offered : tuple of Offered
    facts : tuple of (str, str, str)
        What stays the same: label, code, description.
    level : str
    wheels : tuple of WheelShown
        Empty when nothing stands, or what is asked cannot be.
    against : tuple of str
        Why there is no chart.
    notes : tuple of str
    """

    offered: tuple[Offered, ...]
    facts: tuple[tuple[str, str, str], ...] = ()
    level: str = ""
    wheels: tuple[WheelShown, ...] = ()
    against: tuple[str, ...] = ()
    notes: tuple[str, ...] = (WHAT, f"{STEM_WORDS} {SQUARE_WORDS}", NOT_HELD)


def shown(line: Line, asked: HeightsAsked, units: str = "mm") -> HeightsShown:
    """Work a chart out and put it into tables and pictures.

    Parameters
    ----------
    line : Line
    asked : HeightsAsked
    units : {"mm", "in"}
        Of the pictures; the tables hold both.
    """
    try:
        chart = _chart(line, asked)
    except InputError as error:
        told = tuple(f"{each.must[:1].upper()}{each.must[1:]}; got {each.got}. {each.remedy}"
                     for each in error.problems)  # fmt: skip
        return HeightsShown(_offered(line, asked, {}), against=told)
    drawn = panels(chart, units)
    pages = wheel_pages(chart, WIDE)
    fixed = {name: option.code for name, option in chart.fixed.items()}
    return HeightsShown(
        offered=_offered(line, asked, {**fixed, "column": chart.column.label}),
        facts=tuple(facts(chart)),
        level=level_words(chart),
        wheels=tuple(WheelShown(page, panel) for page, panel in zip(pages, drawn, strict=True)),
    )


def heights_pdf_of(line: Line, asked: HeightsAsked, paper: Paper = "a4") -> bytes:
    """The chart to print.

    Parameters
    ----------
    line : Line
    asked : HeightsAsked
    paper : {"a4", "us-letter"}

    Raises
    ------
    InputError
        When what is asked cannot be.
    """
    return heights_pdf(_chart(line, asked), paper)


def _chart(line: Line, asked: HeightsAsked) -> HeightsChart:
    codes = {name: code for name, code in asked.codes.items() if code}
    low, high = asked.low, asked.high
    level = None
    if low is not None or high is not None:
        level = (-90.0 if low is None else low, 90.0 if high is None else high)
    chart = heights_chart(
        line,
        Ask(
            fixed={name: code for name, code in codes.items() if name in FIXED},
            column=asked.column or None,
            only={name: (codes[name],) for name in NARROWED if name in codes},
            level_deg=level,
        ),
    )
    if not (chart.why[:, printed_holes(chart)] == STANDS).any():
        raise InputError(_nothing(chart))
    return chart


def _nothing(chart: HeightsChart) -> Problem:
    found = chart.why[:, printed_holes(chart)].ravel().tolist()
    reasons = sorted({chart.reasons[at] for at in found})
    return Problem(
        where="heights",
        must=f"something must stand with axle holes of column {chart.column.label}",
        got=f"no combination that does ({'; '.join(reasons[:3])})",
        remedy="Choose another side frame, caster housing, column or wheel, or a wider seat angle.",
    )


def _offered(line: Line, asked: HeightsAsked, now: Mapping[str, str]) -> tuple[Offered, ...]:
    lists = [_list(line, name, asked.codes.get(name) or now.get(name, "")) for name in FIXED]
    column = asked.column or now.get("column", "")
    holes = tuple(
        (each.label, f"column {each.label}", each.label == column) for each in hole_columns(line)
    )
    narrowed = [_list(line, name, asked.codes.get(name, ""), every=True) for name in NARROWED]
    return (*lists, Offered("column", "Axle holes", holes), *narrowed)


def _list(line: Line, name: str, now: str, *, every: bool = False) -> Offered:
    options = tuple(
        (each.code, each.name if each.code == NONE else f"{each.code}  {each.name}",
         each.code == now)
        for each in line.choices[name].options
    )  # fmt: skip
    first = (("", "all", not now),) if every else ()
    return Offered(name, CHOICES[name].label, (*first, *options))


def degrees(typed: str) -> float | None:
    """A number of degrees as typed; None when nothing is.

    Raises
    ------
    ValueError
        When it is no number.
    """
    if not typed.strip():
        return None
    value = float(typed.strip().replace(",", "."))
    if not math.isfinite(value):
        raise ValueError
    return value
