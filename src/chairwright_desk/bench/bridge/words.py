"""Values in the units that the client was measured in, and marks of verdicts."""

from __future__ import annotations

import math

from chairwright.figures.registry import Figure
from chairwright.fitting.ledger import Word
from chairwright.fitting.moved import change
from chairwright.line.model import Line
from chairwright.papers.words import (
    NO_VALUE,
    finer,
    range_of_ends,
    range_words,
    spread_words,
    unit_words,
    value_words,
)
from chairwright.targets.target import Target
from chairwright.units import MM_PER_INCH, inches_text
from chairwright_desk.bench.bridge.opened import Units

NOMINAL = (
    "Holds on nominal values: it holds for the values as entered; within what tape, scales and "
    "estimates can be off it may fail."
)
"""What the verdict means, said once on each page where it stands."""

MARKS: dict[Word, str] = {
    "holds": "holds",
    "holds, not as preferred": "wish",
    "holds on nominal values": "nominal",
    "not as preferred": "wish",
    "fails": "fails",
    "not known": "unknown",
}
"""Which mark stands beside a word; "" where nothing is asked."""


def mark_of(word: Word | str | None) -> str:
    """Name of the mark beside a verdict's word; empty when nothing is asked."""
    return MARKS.get(word or "", "")  # type: ignore[call-overload, no-any-return]


def length_words(value_mm: float, units: Units) -> str:
    """A length with its unit.

    Parameters
    ----------
    value_mm : float [mm]
    units : {"mm", "in"}

    Examples
    --------
    >>> length_words(25.0, "mm"), length_words(25.4, "in")
    ('25 mm', '1 in')
    """
    return inches_text(value_mm) if units == "in" else f"{value_mm:.0f} mm"


def shown(figure: Figure, value: float, units: Units, *targets: Target) -> str:
    """A figure's value without its unit; a dash when there is none.

    Parameters
    ----------
    figure : Figure
    value : float
        In the figure's unit.
    units : {"mm", "in"}
    *targets : Target
        Beside which it stands: finer where it misses one by less than shows.
    """
    if figure.unit == "mm" and units == "in" and not math.isnan(value):
        return _inches(value, finer(_inches, value, *targets))
    return value_words(figure, value, *targets)


def _inches(value_mm: float, more: int) -> str:
    """Eighths of an inch; finer, with a decimal point."""
    if not more:
        return inches_text(value_mm).removesuffix(" in")
    return f"{value_mm / MM_PER_INCH:.{more + 1}f}"


def unit_of(figure: Figure, line: Line, units: Units) -> str:
    """The unit that stands beside a figure.

    Parameters
    ----------
    figure : Figure
    line : Line
    units : {"mm", "in"}
    """
    return "in" if figure.unit == "mm" and units == "in" else unit_words(figure, line)


def spread_shown(figure: Figure, spread: float, units: Units) -> str:
    """A half width such as ``± 2.4``; empty for none.

    Parameters
    ----------
    figure : Figure
    spread : float
        In the figure's unit.
    units : {"mm", "in"}
    """
    if figure.unit == "mm" and units == "in":
        words = inches_text(spread).removesuffix(" in")
        return "" if words == "0" else f"± {words}"
    return spread_words(figure, spread)


def range_shown(target: Target, figure: Figure, units: Units, *values: float) -> str:
    """A target's range: ``394 to 445``, ``at least 50``.

    Parameters
    ----------
    target : Target
    figure : Figure
        Which the target is about.
    units : {"mm", "in"}
    *values : float
        Beside which it stands: finer where one of them misses it by less than shows.
    """
    if figure.unit != "mm" or units != "in":
        return range_words(target, *values)
    more = max((finer(_inches, value, target) for value in values), default=0)
    low = "" if target.low is None else _inches(target.low, more)
    high = "" if target.high is None else _inches(target.high, more)
    return range_of_ends(low, high)


def change_shown(figure: Figure, before: float, after: float, units: Units) -> str:
    """How a figure has changed, with its sign; empty when it prints alike.

    Parameters
    ----------
    figure : Figure
    before, after : float
        In the figure's unit.
    units : {"mm", "in"}
    """
    moved = change(figure, before, after)
    if moved == 0.0:
        return ""
    if math.isnan(moved):
        return "now there" if math.isnan(before) else "no longer there"
    words = shown(figure, abs(moved), units)
    if words == "0":
        return ""
    return f"{'+' if moved > 0 else '−'}{words}"


__all__ = [
    "NO_VALUE",
    "change_shown",
    "length_words",
    "mark_of",
    "range_shown",
    "shown",
    "spread_shown",
    "unit_of",
]
