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
from chairwright.targets.verdict import SLACK
from chairwright.units import inches_text

Units = Literal["mm", "in"]
Split = Callable[[str], tuple[str, ...]]
Write = Callable[[float, int], str]

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


def finer(write: Write, value: float, *targets: Target) -> int:
    """How much finer a value and a limit are written so that a miss can be seen.

    Parameters
    ----------
    write : callable
        Writes a number, so many steps finer than usual.
    value : float
        In the figure's unit; NaN when there is none.
    *targets : Target
        Beside which the value stands.

    Returns
    -------
    int
        0 when the value lies inside, or differs from every limit that it misses as it is.
    """
    ends = [
        end
        for target in targets
        for end, over in ((target.low, -1.0), (target.high, 1.0))
        if end is not None and over * (value - end) > SLACK
    ]
    more = 0
    while any(write(value, more) == write(end, more) for end in ends):
        more += 1
    return more


def value_words(figure: Figure, value: float, *targets: Target) -> str:
    """Write a value with the figure's digits; a dash when there is none.

    Parameters
    ----------
    figure : Figure
    value : float
        In the figure's unit; NaN when there is none.
    *targets : Target
        Beside which it stands: more digits where it misses one by less than shows.

    Examples
    --------
    >>> value_words(FIGURES["seat_angle_deg"], 3.04), value_words(FIGURES["toe_deg"], -0.001)
    ('3.0', '0.00')
    """
    write = _digits(figure)
    return NO_VALUE if math.isnan(value) else write(value, finer(write, value, *targets))


def _digits(figure: Figure) -> Write:
    def write(value: float, more: int) -> str:
        text = f"{value:.{figure.digits + more}f}"
        return text.lstrip("-") if float(text) == 0.0 else text

    return write


def spread_words(figure: Figure, spread: float) -> str:
    """Write a half width, such as ``± 2.4``; empty when there is none that shows."""
    text = f"{spread:.{figure.digits}f}"
    return f"± {text}" if float(text) > 0.0 else ""


def inches_words(figure: Figure, value: float) -> str:
    """Write a length in inches to the nearest eighth; empty for what is no length."""
    return inches_text(value) if figure.unit == "mm" and not math.isnan(value) else ""


def range_words(target: Target, *values: float) -> str:
    """Write a target's range: ``394 to 445``, ``430``, ``at least 50`` or ``at most 12.0``.

    Parameters
    ----------
    target : Target
    *values : float
        Beside which it stands, in the figure's unit: a limit that is no round number has more
        digits where one of them misses it by less than shows.
    """
    write = _digits(FIGURES[target.figure])
    more = max((finer(write, value, target) for value in values), default=0)
    low, high = (
        "" if end is None else _end_words(write, end, more) for end in (target.low, target.high)
    )
    return range_of_ends(low, high)


def range_of_ends(low: str, high: str) -> str:
    """Write a range from its ends in words; an open end is empty."""
    if not low:
        return f"at most {high}"
    if not high:
        return f"at least {low}"
    return low if low == high else f"{low} to {high}"


def _end_words(write: Write, end: float, more: int) -> str:
    usual, exact = write(end, 0), write(end, more)
    return usual if float(usual) == float(exact) else exact.rstrip("0")


def unit_words(figure: Figure, line: Line | None) -> str:
    """A figure's unit; the line's currency for money, nothing where no line is known."""
    if figure.unit != "currency":
        return figure.unit
    return "" if line is None else line.currency


def target_words(target: Target, line: Line | None = None, *values: float) -> str:
    """Write a target as a clause: ``Seat width 394 to 445 mm``.

    Parameters
    ----------
    target : Target
    line : Line or None
        Says the currency of money.
    *values : float
        As in `range_words`.
    """
    figure = FIGURES[target.figure]
    return f"{figure.label} {range_words(target, *values)} {unit_words(figure, line)}".rstrip()


def measured_words(figure: Figure, value: float, line: Line | None = None, *targets: Target) -> str:
    """Write a value with its unit: ``430 mm``; a dash when there is none.

    Parameters
    ----------
    figure : Figure
    value : float
        In the figure's unit; NaN when there is none.
    line : Line or None
        Says the currency of money.
    *targets : Target
        As in `value_words`.
    """
    if math.isnan(value):
        return NO_VALUE
    return f"{value_words(figure, value, *targets)} {unit_words(figure, line)}".rstrip()


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
