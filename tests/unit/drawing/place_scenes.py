"""Sheets of places read back in real millimetres, and what shapely makes of the same chairs."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import numpy as np
from shapely.affinity import rotate, translate
from shapely.geometry import Polygon
from shapely.ops import unary_union

from chairwright.chair.shape import Shape
from chairwright.drawing.place_pose import outline_of
from chairwright.drawing.scene import Group, Line, Polyline, Primitive, Text
from chairwright.drawing.sheet import Sheet, text_box
from chairwright.places.moves import Move, Pose, Route
from chairwright.places.outline import Outline

from .shapes import average_adult

MICRON = 1e-3


def group(sheet: Sheet, name: str) -> Group:
    """The one group of a name."""
    (found,) = [each for each in sheet.groups if each.name == name]
    return found


def scale_of(sheet: Sheet) -> float:
    """Real over paper length, as the title says."""
    return float(sheet.title.rpartition("1:")[2])


def real_ring(sheet: Sheet, item: Primitive) -> Polygon:
    """A drawn polygon in real size and the right way up; where it lies does not matter."""
    assert isinstance(item, Polyline)
    scale = scale_of(sheet)
    return Polygon([(x * scale, -y * scale) for x, y in item.points])


def texts(sheet: Sheet) -> list[Text]:
    return [item for each in sheet.groups for item in each.items if isinstance(item, Text)]


def words(sheet: Sheet, name: str) -> str:
    """All text of one group."""
    return " ".join(item.text for item in group(sheet, name).items if isinstance(item, Text))


def length(sheet: Sheet, item: Primitive) -> float:
    """Real length of a drawn line [mm]."""
    assert isinstance(item, Line)
    (x1, y1), (x2, y2) = item.start, item.end
    return float(np.hypot(x2 - x1, y2 - y1)) * scale_of(sheet)


def overlapping(found: list[Text]) -> list[tuple[str, str]]:
    boxes = [(text.text, text_box(text)) for text in found]
    return [
        (one, other)
        for place, (one, a) in enumerate(boxes)
        for other, b in boxes[place + 1 :]
        if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
    ]


def standing(outline: Outline, pose: Pose) -> Polygon:
    """The chair in a pose, put there by the library."""
    turned = rotate(Polygon(outline.points), pose.heading_deg, origin=(0, 0))
    return translate(turned, pose.x_mm, pose.y_mm)


def all_poses(route: Route, step_deg: float = 0.02) -> list[Polygon]:
    """The chair at both ends of straight moves and all along turns."""
    found = []
    for pose, move in route.steps():
        count = max(1, int(abs(move.turn_deg) / step_deg))
        shares = np.linspace(0.0, 1.0, count + 1)
        found += [standing(route.outline, move.part(share).after(pose)) for share in shares]
    return found


def least_distance(polygons: Iterable[Polygon], block: np.ndarray) -> float:
    wall = Polygon(block)
    return min(float(each.distance(wall)) for each in polygons)


def whole_floor(route: Route) -> Polygon:
    """Floor swept: straight moves as hulls, turns as many poses."""
    parts = []
    for pose, move in route.steps():
        if move.turn_deg:
            parts += all_poses(Route(route.outline, pose, (move,)))
        else:
            ends = [standing(route.outline, each) for each in (pose, move.after(pose))]
            parts.append(unary_union(ends).convex_hull)
    return unary_union(parts)


def box(ahead: float = 850.0, behind: float = 250.0, width: float = 660.0) -> Outline:
    return Outline.box(ahead, behind, width)


def chair(**more: object) -> Shape:
    return replace(average_adult(), **more)  # type: ignore[arg-type]


def length_of(shape: Shape) -> float:
    outline = outline_of(shape)
    return outline.ahead + outline.behind


def straight(outline: Outline, start: Pose, way: float) -> Route:
    return Route(outline, start, (Move(way),))
