"""From a view in real mm to a finished sheet: scale, dimensions, title, legend, margins."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from chairwright.drawing.dimensions import Units, lay_out
from chairwright.drawing.lettering import text_width
from chairwright.drawing.palette import PenName
from chairwright.drawing.scene import Circle, Dimension, Group, Line, Primitive, Text
from chairwright.drawing.sheet import Page, Placement, Sheet, groups_box, shifted

SCALES = (1.0, 2.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 100.0)
"""Reductions tried in turn: ISO 5455 (1, 2, 5, 10, 20, 50; from memory, unverified), with steps
between them because a seated person just misses 1:10 on a small page."""

HOLE_SCALES = (1.0, 2.0, 3.0, 5.0, 7.5)
"""Those of drawings of holes, with closer steps; marks would touch at smaller ones."""

MARGIN_MM = 3.0
_TITLE_MM = 3.6
LARGE_SCALE = 10.0
THIN = 0.7
TITLE_ROOM_MM = 7.0
_LEGEND_MM = 3.2
LEGEND_ROW_MM = 4.6
_SAMPLE_MM = 8.0
_CELL_GAP_MM = 4.0


@dataclass(frozen=True)
class LegendEntry:
    """A line kind (or the centre-of-mass mark, without a pen) and what it stands for."""

    words: str
    pen: PenName | None


@dataclass(frozen=True)
class View:
    """A view before it is put on paper; groups and dimensions in real mm.

    ``around`` is drawn too, but dimension rows may lie on it.
    """

    name: str
    description: str
    groups: tuple[Group, ...]
    dimensions: tuple[Dimension, ...]
    legend: tuple[LegendEntry, ...]
    around: tuple[Group, ...] = ()


def compose(
    build: Callable[[float], View],
    page: Page,
    units: Units,
    scales: tuple[float, ...] = SCALES,
) -> Sheet:
    """Put a view on the largest standard scale that the page takes.

    Parameters
    ----------
    build : callable
        Gives the view for a scale, so that marks keep their size on paper.
    page : Page
        Largest sheet allowed; the sheet returned hugs the drawing.
    units : {"mm", "in"}
    scales : tuple of float
        Tried in turn.

    Returns
    -------
    Sheet
        At the last scale of the series when nothing fits.
    """
    sheet = _compose_at(build, scales[-1], page, units)
    for scale in scales:
        tried = _compose_at(build, scale, page, units)
        if tried.width_mm <= page.width_mm and tried.height_mm <= page.height_mm:
            return tried
    return sheet


def _compose_at(build: Callable[[float], View], scale: float, page: Page, units: Units) -> Sheet:
    view = build(scale)
    placement = Placement(scale)
    drawn = tuple(placement.group(group) for group in view.groups)
    dimensions = lay_out(view.dimensions, placement, groups_box(drawn), units)
    drawn = tuple(placement.group(group) for group in view.around) + drawn
    left, top, right, bottom = groups_box(drawn + dimensions)
    room = max(right - left, _title_width(view.name, scale))
    legend = legend_group(view.legend, room)
    dx, dy = MARGIN_MM - left, MARGIN_MM + TITLE_ROOM_MM - top
    body = tuple(shifted(group, dx, dy) for group in drawn + dimensions)
    foot = dy + bottom + 2.0
    placed = shifted(legend, MARGIN_MM, foot)
    height = foot + LEGEND_ROW_MM * legend_rows(view.legend, room) + MARGIN_MM - 1.5
    groups = (*body, placed, title_group(view.name, scale))
    width = room + 2.0 * MARGIN_MM
    title = f"{view.name}, scale 1:{scale:g}"
    ratio = line_ratio(scale)
    placed_at = Placement(scale, (dx, dy))
    return Sheet(title, view.description, width, height, groups, ratio, placed_at)


def line_ratio(scale: float) -> float:
    """How much every pen is thinned at a scale (ISO 128 line group 0.35 instead of 0.5)."""
    return THIN if scale > LARGE_SCALE else 1.0


def title_group(name: str, scale: float) -> Group:
    """Name and scale of a view in the upper left corner of its sheet."""
    at = (MARGIN_MM, MARGIN_MM + _TITLE_MM * 0.75)
    return Group("name", (Text(at, _title_text(name, scale), _TITLE_MM, strong=len(name)),))


def _title_text(name: str, scale: float) -> str:
    return f"{name} 1:{scale:g}"


def _title_width(name: str, scale: float) -> float:
    return text_width(_title_text(name, scale), _TITLE_MM)


def _legend_columns(entries: tuple[LegendEntry, ...], room: float) -> tuple[int, float]:
    widest = max((text_width(entry.words, _LEGEND_MM) for entry in entries), default=0.0)
    cell = _SAMPLE_MM + 1.5 + widest + _CELL_GAP_MM
    return max(1, int((room + _CELL_GAP_MM) // cell)), cell


def legend_rows(entries: tuple[LegendEntry, ...], room: float) -> int:
    """How many rows a legend takes in a room of some width [mm]."""
    columns, _ = _legend_columns(entries, room)
    return -(-len(entries) // columns)


def legend_group(entries: tuple[LegendEntry, ...], room: float) -> Group:
    """A legend in rows from the upper left, on paper.

    Parameters
    ----------
    entries : tuple of LegendEntry
    room : float
        Width [mm].
    """
    columns, cell = _legend_columns(entries, room)
    items: list[Primitive] = []
    for place, entry in enumerate(entries):
        row, column = divmod(place, columns)
        left, base = column * cell, (row + 0.7) * LEGEND_ROW_MM
        level = base - 0.9
        if entry.pen is None:
            items += mass_mark((left + _SAMPLE_MM / 2.0, level), 1.4)
        else:
            items.append(Line((left, level), (left + _SAMPLE_MM, level), entry.pen))
        items.append(Text((left + _SAMPLE_MM + 1.5, base), entry.words, _LEGEND_MM))
    return Group("legend", tuple(items))


def mass_mark(at: tuple[float, float], radius: float) -> list[Primitive]:
    """Mark of the centre of mass: a ring with a cross and a filled middle."""
    x, y = at
    return [
        Circle(at, radius, "thin", "sheet"),
        Line((x - 1.6 * radius, y), (x + 1.6 * radius, y), "thin"),
        Line((x, y - 1.6 * radius), (x, y + 1.6 * radius), "thin"),
        Circle(at, 0.45 * radius, "thin", "ink"),
    ]
