"""Dimension lines laid out in rows, after the practice of ISO 129-1 (from memory, unverified).

Extension lines, a dimension line with closed arrows, the number above the line and readable
from below or from the right. No number may lie on another or on a foreign extension line.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import atan2, cos, degrees, hypot, sin
from typing import Literal

from chairwright.drawing.lettering import text_width
from chairwright.drawing.limbs import between
from chairwright.drawing.scene import Dimension, Group, Line, Point, Polyline, Primitive, Text
from chairwright.drawing.sheet import Box, Placement
from chairwright.units import inches_text

Units = Literal["mm", "in"]

TEXT_MM = 3.2
FIRST_ROW_MM = 6.2
ROW_MM = 5.2
_ARROW_MM = 2.2
_ARROW_HALF_MM = 0.38
_GAP_MM = 0.7
_OVERSHOOT_MM = 1.2
_ABOVE_MM = 0.8
_TAIL_MM = 4.0
_PARALLEL_TEXT = 0.6
_SLIDES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.25, 0.75, 0.2, 0.8)


def dimension_text(value_mm: float, units: Units) -> str:
    """Text of a length: millimetres, and inches after them when chosen.

    Parameters
    ----------
    value_mm : float [mm]
    units : {"mm", "in"}

    Examples
    --------
    >>> dimension_text(431.8, "in")
    '432 (17 in)'
    """
    number = f"{round(value_mm)}"
    return f"{number} ({inches_text(value_mm)})" if units == "in" else number


def label_of(dimension: Dimension, units: Units) -> tuple[str, int]:
    """Whole text beside a dimension line, and how many of its letters are the number."""
    number = dimension_text(dimension.value_mm, units)
    whole = f"{number} {dimension.words}".rstrip()
    return whole, len(number)


@dataclass(frozen=True)
class _Laid:
    """A dimension along one axis: its span, where its text lies, its row."""

    dimension: Dimension
    low: float
    high: float
    text_low: float
    text_high: float
    row: int = 0

    @property
    def taken(self) -> tuple[float, float]:
        tail = _TAIL_MM if self.high - self.low < 2.5 * _ARROW_MM else 0.0
        return (
            min(self.low - tail, self.text_low) - 1.0,
            max(self.high + tail, self.text_high) + 1.0,
        )


def lay_out(
    dimensions: tuple[Dimension, ...], placement: Placement, content: Box, units: Units
) -> tuple[Group, ...]:
    """Place every dimension on paper, one group each.

    Parameters
    ----------
    dimensions : tuple of Dimension
        In the order in which rows are filled, nearest the view first.
    placement : Placement
    content : Box
        Room of the view itself on paper [mm]; rows lie outside it.
    units : {"mm", "in"}

    Returns
    -------
    tuple of Group
        Primitives in paper mm; each group is named after its figure.
    """
    groups = []
    for side in ("below", "left", "right"):
        chosen = [item for item in dimensions if item.side == side]
        for laid in _rows(chosen, placement, content, units):
            groups.append(_drawn(laid, placement, content, units))
    for item in dimensions:
        if item.side == "parallel":
            groups.append(_parallel(item, placement, units))
    return tuple(groups)


def _rows(
    dimensions: list[Dimension], placement: Placement, content: Box, units: Units
) -> list[_Laid]:
    axis = 0 if dimensions and dimensions[0].side == "below" else 1
    ends = [placement.point(point)[axis] for item in dimensions for point in (item.start, item.end)]
    middle = (content[axis] + content[axis + 2]) / 2.0
    placed: list[_Laid] = []
    for item in dimensions:
        laid = _with_text(item, placement, axis, ends, middle, units)
        while any(_clash(laid, other) for other in placed):
            laid = replace(laid, row=laid.row + 1)
        placed.append(laid)
    return placed


def _clash(one: _Laid, other: _Laid) -> bool:
    if one.row != other.row:
        return False
    return one.taken[0] < other.taken[1] - 2.0 and other.taken[0] < one.taken[1] - 2.0


def _with_text(
    item: Dimension,
    placement: Placement,
    axis: int,
    ends: list[float],
    middle: float,
    units: Units,
) -> _Laid:
    low, high = sorted(placement.point(point)[axis] for point in (item.start, item.end))
    item = _shortened(item, high - low, units)
    width = text_width(label_of(item, units)[0], TEXT_MM)
    if width + 1.0 <= high - low:
        for share in _SLIDES:
            first = low + share * (high - low) - width / 2.0
            inside = low + 0.5 <= first and first + width <= high - 0.5
            if inside and not _crossed(first, width, ends):
                return _Laid(item, low, high, first, first + width)
        first = (low + high - width) / 2.0
        return _Laid(item, low, high, first, first + width)
    tail = _TAIL_MM if high - low < 2.5 * _ARROW_MM else 1.0
    before, after = low - tail - width, high + tail
    if axis == 1:  # upward, where the rows below the view are not
        first = _above_lines(before, width, ends)
        return _Laid(item, low, high, first, first + width)
    tries = (before, after) if (low + high) / 2.0 < middle else (after, before)
    clear = [first for first in tries if not _crossed(first, width, ends)]
    first = (clear or tries)[0]
    return _Laid(item, low, high, first, first + width)


def _above_lines(first: float, width: float, ends: list[float]) -> float:
    """Start of a text moved up until no extension line of another dimension strikes it."""
    while _crossed(first, width, ends):
        first = min(end for end in ends if first - 0.4 < end < first + width + 0.4) - 0.6 - width
    return first


def _shortened(item: Dimension, span: float, units: Units) -> Dimension:
    """Without its words, when they may go and have no room between the arrows."""
    room = text_width(label_of(item, units)[0], TEXT_MM) + 1.0
    return replace(item, words="") if item.brief and room > span else item


def _crossed(first: float, width: float, ends: list[float]) -> bool:
    return any(first - 0.4 < end < first + width + 0.4 for end in ends)


def _drawn(laid: _Laid, placement: Placement, content: Box, units: Units) -> Group:
    item = laid.dimension
    away = FIRST_ROW_MM + laid.row * ROW_MM
    level = {"below": content[3] + away, "left": content[0] - away, "right": content[2] + away}[
        item.side
    ]
    upright = item.side != "below"

    def at(along: float) -> Point:
        return (level, along) if upright else (along, level)

    items: list[Primitive] = []
    for real in (item.start, item.end):
        point = placement.point(real)
        items.append(_extension(point, at(point[1] if upright else point[0])))
    items += _arrowed(at(laid.low), at(laid.high))
    outside_low, outside_high = min(laid.low, laid.text_low), max(laid.high, laid.text_high)
    if (outside_low, outside_high) != (laid.low, laid.high):
        items.append(Line(at(outside_low), at(outside_high), "dimension"))
    items.append(_row_text(laid, level, upright, units))
    return Group(f"dimension-{item.figure.replace('_', '-')}", tuple(items))


def _row_text(laid: _Laid, level: float, upright: bool, units: Units) -> Text:
    whole, strong = label_of(laid.dimension, units)
    middle = (laid.text_low + laid.text_high) / 2.0
    at = (level - _ABOVE_MM, middle) if upright else (middle, level - _ABOVE_MM)
    return Text(at, whole, TEXT_MM, "middle", 90.0 if upright else 0.0, strong, backed=True)


def _parallel(item: Dimension, placement: Placement, units: Units) -> Group:
    start, end = placement.point(item.start), placement.point(item.end)
    length = hypot(end[0] - start[0], end[1] - start[1])
    along = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    aside = (-along[1] * item.offset_mm, along[0] * item.offset_mm)
    first = (start[0] + aside[0], start[1] + aside[1])
    last = (end[0] + aside[0], end[1] + aside[1])
    turn = degrees(atan2(first[1] - last[1], last[0] - first[0]))
    whole, strong = label_of(item, units)
    middle = between(first, last, _PARALLEL_TEXT)
    at = (middle[0] + along[1] * _ABOVE_MM, middle[1] - along[0] * _ABOVE_MM)
    text = Text(at, whole, TEXT_MM, "middle", turn, strong, backed=True)
    lines = [text, _extension(start, first), _extension(end, last), *_arrowed(first, last)]
    return Group(f"dimension-{item.figure.replace('_', '-')}", tuple(lines))


def _extension(point: Point, foot: Point) -> Line:
    length = hypot(foot[0] - point[0], foot[1] - point[1]) or 1.0
    along = ((foot[0] - point[0]) / length, (foot[1] - point[1]) / length)
    start = (point[0] + along[0] * _GAP_MM, point[1] + along[1] * _GAP_MM)
    end = (foot[0] + along[0] * _OVERSHOOT_MM, foot[1] + along[1] * _OVERSHOOT_MM)
    return Line(start, end, "dimension")


def _arrowed(first: Point, last: Point) -> list[Primitive]:
    angle = atan2(last[1] - first[1], last[0] - first[0])
    along = (cos(angle), sin(angle))
    length = hypot(last[0] - first[0], last[1] - first[1])
    if length >= 2.5 * _ARROW_MM:
        return [Line(first, last, "dimension"), _arrow(first, along), _arrow(last, _back(along))]
    start = (first[0] - along[0] * _TAIL_MM, first[1] - along[1] * _TAIL_MM)
    end = (last[0] + along[0] * _TAIL_MM, last[1] + along[1] * _TAIL_MM)
    return [Line(start, end, "dimension"), _arrow(first, _back(along)), _arrow(last, along)]


def _back(along: Point) -> Point:
    return (-along[0], -along[1])


def _arrow(tip: Point, inward: Point) -> Polyline:
    base = (tip[0] + inward[0] * _ARROW_MM, tip[1] + inward[1] * _ARROW_MM)
    aside = (-inward[1] * _ARROW_HALF_MM, inward[0] * _ARROW_HALF_MM)
    corners = (
        tip,
        (base[0] + aside[0], base[1] + aside[1]),
        (base[0] - aside[0], base[1] - aside[1]),
    )
    return Polyline(corners, "dimension", closed=True, fill="ink")
