"""The occupied chair where it stands in a place: turned and moved, in plan and from the side."""

from __future__ import annotations

from dataclasses import replace
from math import cos, radians, sin

from chairwright.chair.shape import Shape
from chairwright.drawing import plan_chair
from chairwright.drawing.lesson_side import without_fine_lines
from chairwright.drawing.limbs import capsule
from chairwright.drawing.palette import PenName
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
from chairwright.mass_points import FloatArray
from chairwright.places.moves import Pose
from chairwright.places.outline import Outline

_SHOULDER_MM = 62.0
OUTLINED: PenName = "hidden"


def turned_point(point: Point, turn_deg: float, to: Point = (0.0, 0.0)) -> Point:
    """A point turned about the origin, then moved.

    Parameters
    ----------
    point : Point [mm]
    turn_deg : float
        Counter-clockwise [deg].
    to : Point [mm]
        Where the origin comes to lie.

    Returns
    -------
    Point [mm]
    """
    turn = radians(turn_deg)
    (x, y), (dx, dy) = point, to
    return (dx + x * cos(turn) - y * sin(turn), dy + x * sin(turn) + y * cos(turn))


def turned(group: Group, turn_deg: float, to: Point = (0.0, 0.0)) -> Group:
    """A group turned about the origin, then moved; letters stay upright.

    Parameters
    ----------
    group : Group
        Primitives in real mm.
    turn_deg : float
        Counter-clockwise [deg].
    to : Point [mm]
        Where the origin comes to lie.

    Returns
    -------
    Group
    """
    return Group(group.name, tuple(_turned(item, turn_deg, to) for item in group.items))


def _turned(item: Primitive, turn_deg: float, to: Point) -> Primitive:
    def at(point: Point) -> Point:
        return turned_point(point, turn_deg, to)

    match item:
        case Line():
            return replace(item, start=at(item.start), end=at(item.end))
        case Polyline():
            return replace(item, points=tuple(map(at, item.points)))
        case Silhouette():
            return replace(item, shapes=tuple(tuple(map(at, ring)) for ring in item.shapes))
        case Circle():
            return replace(item, centre=at(item.centre))
        case Arc():
            first, last = item.from_deg + turn_deg, item.to_deg + turn_deg
            return replace(item, centre=at(item.centre), from_deg=first, to_deg=last)
        case Text():
            return replace(item, at=at(item.at))


def ring_of(points: FloatArray) -> tuple[Point, ...]:
    """Corners of a polygon, shape (k, 2), as points of a scene."""
    return tuple((float(x), float(y)) for x, y in points)


def outline_at(outline: Outline, pose: Pose, pen: PenName = OUTLINED) -> Polyline:
    """Outline of the occupied chair where it stands in a place.

    Parameters
    ----------
    outline : Outline
    pose : Pose
    pen : str

    Returns
    -------
    Polyline
    """
    return Polyline(ring_of(pose.place(outline.points)), pen, closed=True)


def outline_of(chair: Shape | Outline) -> Outline:
    """Outline in plan of what is drawn: the one that turning figures are taken from."""
    if isinstance(chair, Outline):
        return chair
    return Outline.around(plan_chair.outline_points(chair))


def chair_at(chair: Shape | Outline, pose: Pose) -> tuple[Group, ...]:
    """The chair with its occupant from above where it stands, and the outline that counts.

    Parameters
    ----------
    chair : Shape or Outline
        Of an outline only the outline is drawn.
    pose : Pose

    Returns
    -------
    tuple of Group
    """
    around = Group("outline", (outline_at(outline_of(chair), pose, "person"),))
    if isinstance(chair, Outline):
        return (around,)
    to = (pose.x_mm, pose.y_mm)
    parts = (
        plan_chair.anti_tip(chair),
        without_fine_lines(plan_chair.casters(chair)),
        plan_chair.feet(chair),
        without_fine_lines(plan_chair.rear_wheels(chair)),
        plan_chair.seat(chair),
        _upper_body(chair),
    )
    drawn = tuple(turned(group, pose.heading_deg, to) for group in parts if group.items)
    return (*drawn, around)


def _upper_body(shape: Shape) -> Group:
    """Shoulders and head from above, so that the way the person looks is seen."""
    body = shape.figurine
    half = max(body.half_shoulder_mm - _SHOULDER_MM, 0.0)
    x = body.shoulder[0]
    shoulders = capsule((x, half), (x, -half), _SHOULDER_MM)
    ahead, radius = body.head_centre[0], body.head_radius_mm
    nose = capsule((ahead + 0.8 * radius, 0.0), (ahead + 1.12 * radius, 0.0), 0.14 * radius)
    head = capsule((ahead - 0.2 * radius, 0.0), (ahead + 0.12 * radius, 0.0), 0.8 * radius)
    return Group("upper-body", (Silhouette((shoulders,)), Silhouette((nose, head))))
