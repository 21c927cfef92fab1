"""A view in a window of a fixed scale, so that it stays where it is while the chair changes.

On a screen a set-up is changed step by step. A sheet that hugs its drawing would jump with every
step; here the edges of the window lie on whole decimetres of the real chair, and the rows of
dimensions have a room of their own.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, floor

from chairwright.drawing.compose import (
    LEGEND_ROW_MM,
    MARGIN_MM,
    TITLE_ROOM_MM,
    View,
    legend_group,
    legend_rows,
    line_ratio,
    title_group,
)
from chairwright.drawing.dimensions import FIRST_ROW_MM, ROW_MM, Units, lay_out
from chairwright.drawing.scene import Group, Text
from chairwright.drawing.sheet import (
    Box,
    Placement,
    Sheet,
    groups_box,
    item_box,
    shifted,
    union,
)

STEP_MM = 100.0
"""Edges of a window lie on multiples of this on the real chair."""


@dataclass(frozen=True)
class Rows:
    """How many rows of dimensions have room on each side of a window."""

    left: int = 0
    right: int = 0
    below: int = 0


def windowed(view: View, scale: float, units: Units, rows: Rows) -> Sheet:
    """Put a view into its window.

    Parameters
    ----------
    view : View
        Made for the scale.
    scale : float
        Real length over paper length.
    units : {"mm", "in"}
    rows : Rows
        Room kept for dimensions; the sheet grows where they need more.

    Returns
    -------
    Sheet
    """
    window = _window(view.groups)
    whole = union([window, _window(view.around)]) if view.around else window
    placement = _placement(whole, scale, rows)
    content = _on_paper(window, placement)
    drawn = tuple(placement.group(group) for group in (*view.around, *view.groups))
    dimensions = lay_out(view.dimensions, placement, content, units)
    page = _page(_on_paper(whole, placement), dimensions, rows)
    legend = shifted(legend_group(view.legend, page[2] - MARGIN_MM), MARGIN_MM, page[3] + 2.0)
    foot = LEGEND_ROW_MM * legend_rows(view.legend, page[2] - MARGIN_MM)
    groups = (*drawn, *dimensions, legend, title_group(view.name, scale))
    dx = max(0.0, MARGIN_MM - page[0])
    if dx:
        groups = (*(shifted(group, dx, 0.0) for group in groups[:-2]), *groups[-2:])
    return Sheet(
        title=f"{view.name}, scale 1:{scale:g}",
        description=view.description,
        width_mm=page[2] + dx + MARGIN_MM,
        height_mm=page[3] + 2.0 + foot + MARGIN_MM,
        groups=groups,
        line_ratio=line_ratio(scale),
        placement=Placement(scale, (placement.origin[0] + dx, placement.origin[1])),
    )


def _window(groups: tuple[Group, ...]) -> Box:
    """Left, low, right, high of all but the letters, on whole steps [real mm]."""
    items = [item for group in groups for item in group.items if not isinstance(item, Text)]
    left, low, right, high = union([item_box(item) for item in items])
    return (_down(left), _down(low), _up(right), _up(high))


def _down(value: float) -> float:
    return STEP_MM * floor(round(value, 6) / STEP_MM)


def _up(value: float) -> float:
    return STEP_MM * ceil(round(value, 6) / STEP_MM)


def _room(rows: int) -> float:
    return FIRST_ROW_MM + rows * ROW_MM if rows else 0.0


def _placement(whole: Box, scale: float, rows: Rows) -> Placement:
    left, _, _, high = whole
    x = MARGIN_MM + _room(rows.left) - left / scale
    return Placement(scale, (x, MARGIN_MM + TITLE_ROOM_MM + high / scale))


def _on_paper(box: Box, placement: Placement) -> Box:
    left, low, right, high = box
    (x0, y0), (x1, y1) = placement.point((left, high)), placement.point((right, low))
    return (x0, y0, x1, y1)


def _page(content: Box, dimensions: tuple[Group, ...], rows: Rows) -> Box:
    """Everything but margins, title and legend [paper mm]."""
    room = (
        content[0] - _room(rows.left),
        content[1],
        content[2] + _room(rows.right),
        content[3] + _room(rows.below),
    )
    return union([room, groups_box(dimensions)]) if dimensions else room
