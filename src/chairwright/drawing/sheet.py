"""Page mathematics in paper mm: placement, boxes, and a sheet that hugs its drawing."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import cos, radians, sin

from chairwright.drawing.lettering import CAP_HEIGHT_EM, DESCENT_EM, text_width
from chairwright.drawing.scene import (
    Arc,
    Circle,
    Group,
    Line,
    Point,
    Polyline,
    Primitive,
    Silhouette,
    Text,
)

Box = tuple[float, float, float, float]


@dataclass(frozen=True)
class Page:
    """The largest sheet that a drawing may take [mm]."""

    width_mm: float
    height_mm: float


A5_PORTRAIT = Page(148.0, 210.0)
A5_LANDSCAPE = Page(210.0, 148.0)


@dataclass(frozen=True)
class Sheet:
    """A finished drawing: groups in paper mm, the second axis down.

    ``line_ratio`` thins every pen for small scales (ISO 128 line group 0.35 instead of 0.5).
    ``placement`` says where real millimetres lie on it; None for a drawing without a scale.
    """

    title: str
    description: str
    width_mm: float
    height_mm: float
    groups: tuple[Group, ...]
    line_ratio: float = 1.0
    placement: Placement | None = None


@dataclass(frozen=True)
class Placement:
    """Where real millimetres land on paper.

    Parameters
    ----------
    scale : float
        Real length over paper length, 10 for 1:10.
    origin : Point
        Paper place of the real origin [mm].
    """

    scale: float
    origin: Point = (0.0, 0.0)

    def point(self, real: Point) -> Point:
        """Place a real point on paper [mm]."""
        return (self.origin[0] + real[0] / self.scale, self.origin[1] - real[1] / self.scale)

    def real(self, paper: Point) -> Point:
        """Point of the chair [mm] that lies at a place on paper."""
        (x, y), (x0, y0) = paper, self.origin
        return ((x - x0) * self.scale, (y0 - y) * self.scale)

    def length(self, real_mm: float) -> float:
        """Length on paper [mm] of a real length."""
        return real_mm / self.scale

    def group(self, group: Group) -> Group:
        """Place one group on paper."""
        (left, top), scale = self.origin, self.scale

        def place(real: Point) -> Point:  # as `point`, which a drawing asks some thousand times
            return (left + real[0] / scale, top - real[1] / scale)

        return Group(group.name, tuple([_mapped(item, place, 1.0 / scale) for item in group.items]))


def shifted(group: Group, dx: float, dy: float) -> Group:
    """Move a group that is on paper already.

    Parameters
    ----------
    group : Group
    dx, dy : float [paper mm]

    Returns
    -------
    Group
    """

    def move(point: Point) -> Point:
        return (point[0] + dx, point[1] + dy)

    return Group(group.name, tuple(_mapped(item, move, 1.0) for item in group.items))


def _mapped(item: Primitive, place: Callable[[Point], Point], ratio: float) -> Primitive:
    """The same with its points elsewhere; made anew, which is quicker than ``replace``."""
    match item:
        case Line(start, end, pen):
            return Line(place(start), place(end), pen)
        case Polyline(points, pen, closed, fill):
            return Polyline(tuple([place(point) for point in points]), pen, closed, fill)
        case Silhouette(shapes, pen):
            rings = tuple(tuple([place(point) for point in ring]) for ring in shapes)
            return Silhouette(rings, pen)
        case Text():
            return replace(item, at=place(item.at))
        case Circle(centre, radius, pen, fill):
            return Circle(place(centre), radius * ratio, pen, fill)
        case Arc():
            return replace(item, centre=place(item.centre), radius=item.radius * ratio)


def text_box(text: Text) -> Box:
    """Room of a text on paper: left, top, right, bottom [mm], turned with the text."""
    width = text_width(text.text, text.size_mm)
    left = -width * {"start": 0.0, "middle": 0.5, "end": 1.0}[text.anchor]
    top, bottom = -CAP_HEIGHT_EM * text.size_mm, DESCENT_EM * text.size_mm
    turn = radians(text.turn_deg)
    corners = [
        (x * cos(turn) + y * sin(turn), y * cos(turn) - x * sin(turn))
        for x in (left, left + width)
        for y in (top, bottom)
    ]
    return around([(text.at[0] + x, text.at[1] + y) for x, y in corners])


def item_box(item: Primitive) -> Box:
    """Room of a primitive on paper: left, top, right, bottom [mm]."""
    match item:
        case Line():
            return around([item.start, item.end])
        case Polyline():
            return around(list(item.points))
        case Silhouette():
            return around([point for ring in item.shapes for point in ring])
        case Text():
            return text_box(item)
        case Circle() | Arc():
            (x, y), r = item.centre, item.radius
            return (x - r, y - r, x + r, y + r)


def around(points: list[Point]) -> Box:
    """Smallest box around points."""
    xs, ys = zip(*points, strict=True)
    return (min(xs), min(ys), max(xs), max(ys))


def union(boxes: list[Box]) -> Box:
    """Smallest box around boxes."""
    return (
        min(box[0] for box in boxes),
        min(box[1] for box in boxes),
        max(box[2] for box in boxes),
        max(box[3] for box in boxes),
    )


def groups_box(groups: tuple[Group, ...]) -> Box:
    """Smallest box around everything in the groups."""
    return union([item_box(item) for group in groups for item in group.items])
