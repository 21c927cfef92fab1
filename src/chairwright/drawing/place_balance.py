"""Plumb line and lines to the tipping edges of a chair that stands on a slope."""

from __future__ import annotations

from dataclasses import dataclass
from math import atan2, degrees

from chairwright.drawing.compose import mass_mark
from chairwright.drawing.dimensions import TEXT_MM
from chairwright.drawing.palette import PenName
from chairwright.drawing.place_hatch import WALL_MM, hatch
from chairwright.drawing.place_marks import Word
from chairwright.drawing.scene import Anchor, Arc, Group, Line, Point, Polyline, Primitive, Text

_ARC_MM = 30.0
_BAND_MM = 3.0
_LABEL_MM = 7.5
_ROW_MM = 5.0
_LEAST_SCALE = 10.0


@dataclass(frozen=True)
class Edge:
    """A tipping edge in the view: its place, the angle left to it, and in which pen it is drawn."""

    at: Point
    margin_deg: float
    pen: PenName
    words: str


def balance_lines(com: Point, ground_mm: float, edges: tuple[Edge, Edge], scale: float) -> Group:
    """Plumb line, lines to both tipping edges, their angles to it, mark of the centre of mass.

    Parameters
    ----------
    com : Point [mm]
    ground_mm : float
        Height of the floor straight below it.
    edges : tuple of Edge
        The left one in the view first.
    scale : float
        Real over paper length.

    Returns
    -------
    Group
    """
    radius = min(0.62 * (com[1] - ground_mm), _ARC_MM * scale)
    items: list[Primitive] = [Line(com, edge.at, edge.pen) for edge in edges]
    items.append(Line(com, (com[0], ground_mm), "plumb"))
    for edge in edges:
        way = degrees(atan2(edge.at[1] - com[1], edge.at[0] - com[0])) % 360.0
        first, last = min(way, 270.0), max(way, 270.0)
        if first < last:
            items.append(Arc(com, radius, first, last, "dimension"))
    return Group("balance", (*items, *mass_mark(com, 2.0 * scale)))


def edge_labels(edges: tuple[Edge, Edge], scale: float, inside_mm: float = 6.0) -> Group:
    """Angle left to each tipping edge, below the floor at the edge's side.

    Parameters
    ----------
    edges : tuple of Edge
        The left one in the view first.
    scale : float
        Real over paper length.
    inside_mm : float [paper mm]
        How far the words reach in between the edges; below zero they stay outside.

    Returns
    -------
    Group
    """
    anchors: tuple[Anchor, Anchor] = ("end", "start")
    items = []
    for edge, side, anchor in zip(edges, (1.0, -1.0), anchors, strict=True):
        text = f"{edge.margin_deg:.1f}° {edge.words}"
        at = (edge.at[0] + side * inside_mm * scale, edge.at[1] - _LABEL_MM * scale)
        items.append(Text(at, text, TEXT_MM, anchor, strong=text.index(" "), backed=True))
    return Group("margins", tuple(items))


def ground(line: tuple[Point, ...], scale: float) -> Group:
    """The floor as a line with a narrow hatched band below it.

    Parameters
    ----------
    line : tuple of Point [mm]
        From left to right.
    scale : float
        Real over paper length.

    Returns
    -------
    Group
    """
    deep = _BAND_MM * scale
    below = tuple((x, y - deep) for x, y in line[::-1])
    lines = hatch((*line, *below), 0.75 * WALL_MM * max(scale, _LEAST_SCALE))
    return Group("floor", (*lines, Polyline(line)))


def slope_label(at: Point, side: float, words: str, scale: float) -> Group:
    """The slope in words, a row below the angles.

    Parameters
    ----------
    at : Point [mm]
        End of the words, at the height of the nearest tipping edge.
    side : float
        1 when that is their right end, -1 for the left.
    words : str
    scale : float
        Real over paper length.

    Returns
    -------
    Group
    """
    place = (at[0], at[1] - (_LABEL_MM + _ROW_MM) * scale)
    anchor: Anchor = "end" if side > 0.0 else "start"
    return Group("slope", (Text(place, words, TEXT_MM, anchor, strong=len(words), backed=True),))


def word_of(margin_deg: float, spread_deg: float) -> Word:
    """Verdict on a margin to tipping; within its spread it holds on nominal values only."""
    if margin_deg <= 0.0:
        return "fails"
    return "holds on nominal values" if margin_deg < spread_deg else "holds"


def spread_words(margin_deg: float, spread_deg: float) -> tuple[str, ...]:
    """What the spread of the centre of mass means for a margin; nothing when it is not given."""
    if spread_deg <= 0.0:
        return ()
    less = "more" if margin_deg >= spread_deg else "less"
    return (f"The margin is {less} than the spread of ±{spread_deg:.1f}° in the figure.",)
