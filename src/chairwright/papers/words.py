"""Numbers, ranges, sources and choices in the words that papers and screens share."""

from __future__ import annotations

import math
import re
import textwrap
from collections.abc import Callable, Iterable, Sequence
from typing import Literal

from chairwright.figures.registry import FIGURES, Figure
from chairwright.line.model import Line
from chairwright.person.client import Client
from chairwright.targets.target import Target
from chairwright.units import inches_text

Units = Literal["mm", "in"]
Split = Callable[[str], tuple[str, ...]]

WIDTH = 100
"""Letters in a line of a report on a screen."""

NO_VALUE = "–"
COMMON = "common practice, no source"
_CERTAINTIES = ("source", "only", "derived", "unverified", "witness")
_AFTER_CITATION = re.compile("(?:" + "|".join(f"(?<={end}\\))" for end in _CERTAINTIES) + "); ")
_PROPULSION = {
    "hands": "both hands on the rims",
    "feet": "both feet on the floor",
    "hand_and_foot_left": "left hand and left foot",
    "hand_and_foot_right": "right hand and right foot",
    "carer": "a carer",
}


def wrapped(words: str, indent: str = "") -> str:
    """Fill a paragraph to the width of a report; later lines are indented."""
    return textwrap.fill(words, WIDTH, subsequent_indent=indent)


def value_words(figure: Figure, value: float) -> str:
    """Write a value with the figure's digits; a dash when there is none.

    Examples
    --------
    >>> value_words(FIGURES["seat_angle_deg"], 3.04), value_words(FIGURES["toe_deg"], -0.001)
    ('3.0', '0.00')
    """
    if math.isnan(value):
        return NO_VALUE
    text = f"{value:.{figure.digits}f}"
    return text.lstrip("-") if float(text) == 0.0 else text


def spread_words(figure: Figure, spread: float) -> str:
    """Write a half width, such as ``± 2.4``; empty when there is none that shows."""
    text = f"{spread:.{figure.digits}f}"
    return f"± {text}" if float(text) > 0.0 else ""


def inches_words(figure: Figure, value: float) -> str:
    """Write a length in inches to the nearest eighth; empty for what is no length."""
    return inches_text(value) if figure.unit == "mm" and not math.isnan(value) else ""


def range_words(target: Target) -> str:
    """Write a target's range: ``394 to 445``, ``430``, ``at least 50`` or ``at most 12.0``."""
    figure = FIGURES[target.figure]
    low, high = (
        None if end is None else value_words(figure, end) for end in (target.low, target.high)
    )
    if low is None:
        return f"at most {high}"
    if high is None:
        return f"at least {low}"
    return low if low == high else f"{low} to {high}"


def unit_words(figure: Figure, line: Line | None) -> str:
    """A figure's unit; the line's currency for money, nothing where no line is known."""
    if figure.unit != "currency":
        return figure.unit
    return "" if line is None else line.currency


def target_words(target: Target, line: Line | None = None) -> str:
    """Write a target as a clause: ``Seat width 394 to 445 mm``; money in the line's currency."""
    figure = FIGURES[target.figure]
    return f"{figure.label} {range_words(target)} {unit_words(figure, line)}".rstrip()


def measured_words(figure: Figure, value: float, line: Line | None = None) -> str:
    """Write a value with its unit: ``430 mm``; a dash when there is none.

    Parameters
    ----------
    figure : Figure
    value : float
        In the figure's unit; NaN when there is none.
    line : Line or None
        Says the currency of money.
    """
    if math.isnan(value):
        return NO_VALUE
    return f"{value_words(figure, value)} {unit_words(figure, line)}".rstrip()


def amount_words(figure: Figure, amount: float, line: Line | None = None) -> str:
    """Write an amount with its unit, never shown as nothing: ``20 mm``, ``under 0.1 deg``.

    Parameters
    ----------
    figure : Figure
    amount : float
        In the figure's unit.
    line : Line or None
        Says the currency of money.
    """
    least = figure.resolution
    if 0.0 < amount < least:
        return f"under {measured_words(figure, least, line)}"
    return measured_words(figure, amount, line)


def propulsion_words(client: Client) -> str:
    """Say how the chair is moved: ``both hands on the rims``."""
    return _PROPULSION[client.propulsion]


def citations(source: str) -> tuple[str, ...]:
    """Split a target's source into the citations that it joins.

    Examples
    --------
    >>> citations("Exam (read in the source); P&O (read in the source)")
    ('Exam (read in the source)', 'P&O (read in the source)')
    """
    return tuple(_AFTER_CITATION.split(source))


def brief_citations(source: str) -> tuple[str, ...]:
    """Split as `citations` does, what is common practice said once.

    Examples
    --------
    >>> brief_citations("common practice, no source: workshop clearance")
    ('common practice, no source',)
    """
    return tuple(dict.fromkeys(COMMON if COMMON in words else words for words in citations(source)))


class SourceNumbers:
    """Numbers citations in the order in which they are first met.

    Parameters
    ----------
    sources : iterable of str
        As in ``Target.source``.
    split : callable
        `citations` or `brief_citations`.
    """

    def __init__(self, sources: Iterable[str], split: Split = citations) -> None:
        self._split = split
        every = (citation for source in sources for citation in split(source))
        self._numbers = {citation: at for at, citation in enumerate(dict.fromkeys(every), 1)}

    def of(self, sources: Iterable[str]) -> str:
        """Return the numbers of some sources, ascending: ``1 3 4``."""
        found = {self._numbers[one] for source in sources for one in self._split(source)}
        return " ".join(str(number) for number in sorted(found))

    @property
    def listed(self) -> Sequence[tuple[int, str]]:
        """Every number with its citation."""
        return [(number, citation) for citation, number in self._numbers.items()]
