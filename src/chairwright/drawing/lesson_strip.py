"""A strip chart that stands over a row of numbers: one dot a column, ends of a must dashed."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from chairwright.drawing.scene import Circle, Group, Line, Primitive
from chairwright.drawing.sheet import Sheet

_DOT_MM = 0.95
_EDGE_MM = 1.5
_APART_MM = 1.0
_FULL_SPAN = 0.35
"""An end of a must is drawn when it lies no farther from the dots than this share of the span."""


@dataclass(frozen=True)
class Strip:
    """What a strip chart shows.

    Parameters
    ----------
    words : str
        For readers who cannot see it.
    values : sequence of float
        One a column; NaN leaves a gap.
    present : int
        The column of the set-up as it stands: its dot is filled.
    least_span : float
        Smaller differences than this do not fill the height.
    low, high : float or None
        Ends of the range that must hold.
    """

    words: str
    values: Sequence[float]
    present: int
    least_span: float
    low: float | None = None
    high: float | None = None


def strip_sheet(strip: Strip, width_mm: float, height_mm: float) -> Sheet:
    """Draw a strip chart in paper mm.

    Parameters
    ----------
    strip : Strip
    width_mm, height_mm : float [mm]
        Whole size; the columns share the width evenly.

    Returns
    -------
    Sheet
    """
    known = [value for value in strip.values if not math.isnan(value)]
    groups = (Group("strip", tuple(_items(strip, known, width_mm, height_mm))),) if known else ()
    return Sheet("Strip chart", strip.words, width_mm, height_mm, groups)


def _items(
    strip: Strip, known: Sequence[float], width_mm: float, height_mm: float
) -> list[Primitive]:
    bottom, top = _range(strip, known)
    room = height_mm - 2.0 * _EDGE_MM

    def level(value: float) -> float:
        return height_mm - _EDGE_MM - room * (value - bottom) / (top - bottom)

    column = width_mm / len(strip.values)
    dots = [
        ((at + 0.5) * column, level(value), at)
        for at, value in enumerate(strip.values)
        if not math.isnan(value)
    ]
    items: list[Primitive] = [
        Line((0.0, at), (width_mm, at), "hidden")
        for at in _apart([level(end) for end in _ends(strip, bottom, top)])
    ]
    items += [
        Line((x, y), (next_x, next_y), "thin")
        for (x, y, at), (next_x, next_y, after) in pairwise(dots)
        if after == at + 1
    ]
    for x, y, at in dots:
        items.append(Circle((x, y), _DOT_MM, "thin", "ink" if at == strip.present else "sheet"))
    return items


def _range(strip: Strip, known: Sequence[float]) -> tuple[float, float]:
    low, high = min(known), max(known)
    reach = _FULL_SPAN * max(high - low, strip.least_span)
    near = [end for end in (strip.low, strip.high) if end is not None]
    near = [end for end in near if low - reach <= end <= high + reach]
    low, high = min([low, *near]), max([high, *near])
    missing = max(strip.least_span - (high - low), 0.0) / 2.0
    return low - missing, high + missing


def _ends(strip: Strip, bottom: float, top: float) -> list[float]:
    return [end for end in (strip.low, strip.high) if end is not None and bottom <= end <= top]


def _apart(levels: list[float]) -> list[float]:
    """Two lines that would print as one become one between them."""
    if len(levels) == 2 and abs(levels[0] - levels[1]) < _APART_MM:
        return [sum(levels) / 2.0]
    return levels
