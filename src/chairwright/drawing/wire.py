"""A chair in centre lines only, to lie over or under another one in outline."""

from __future__ import annotations

from dataclasses import replace
from math import hypot

from chairwright.chair.shape import Figurine, Point, Shape
from chairwright.drawing.palette import PenName
from chairwright.drawing.scene import Circle, Group, Line, Polyline, Primitive

NEAR_MM = 4.0
"""Lines that lie nearer together than this on the real chair would print as one."""


def wire(shape: Shape, pen: PenName) -> Group:
    """Every part of a chair as centre lines and circles.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    pen : str

    Returns
    -------
    Group
        Primitives in real mm; nothing is filled.
    """
    items: list[Primitive] = [
        *_wheels(shape, pen),
        *_lines(pen, _seat(shape)),
        *_lines(pen, _frame(shape)),
        *_anti_tip(shape, pen),
    ]
    return Group("second", tuple(items))


def wire_person(figurine: Figurine, pen: PenName) -> Group:
    """A seated person as joints joined by lines, from the right."""
    body = [figurine.hip, figurine.shoulder, figurine.head_centre]
    legs = [figurine.hip, figurine.knee.get("right"), figurine.ankle.get("right"),
            figurine.toe.get("right")]  # fmt: skip
    leg: list[Point] = []
    for joint in legs:
        if joint is None:
            break
        leg.append(joint)
    items: list[Primitive] = [*_lines(pen, [tuple(body), tuple(leg)])]
    items.append(Circle(figurine.head_centre, figurine.head_radius_mm, pen))
    return Group("second-person", tuple(items))


def ghost(now: Shape, before: Shape, pen: PenName) -> Group:
    """Wheels, seat and back of an earlier state where they have visibly moved on the frame.

    Parameters
    ----------
    now : Shape
        Floor axes [mm].
    before : Shape
        The earlier state in its own floor axes; laid over ``now`` at the seat corner.
    pen : str

    Returns
    -------
    Group
        An empty group when nothing has visibly moved.
    """
    before = moved(before, now.seat_corner[0] - before.seat_corner[0])
    items: list[Primitive] = []
    if _apart(now.rear_axle, before.rear_axle, now.rear_radius_mm - before.rear_radius_mm):
        items += [Circle(before.rear_axle, before.rear_radius_mm, pen)]
        items += _cross(before.rear_axle, pen)
    if _apart(now.caster_axle, before.caster_axle, now.caster_radius_mm - before.caster_radius_mm):
        items.append(Circle(before.caster_axle, before.caster_radius_mm, pen))
    pairs = zip(_seat(now), _seat(before), strict=False)
    shown = [old for new, old in pairs if any(_apart(a, b) for a, b in zip(new, old, strict=False))]
    items += _lines(pen, shown)
    return Group("ghost", tuple(items))


def moved(shape: Shape, dx_mm: float) -> Shape:
    """The parts that `ghost` draws, moved forward [mm]."""

    def at(point: Point) -> Point:
        return (point[0] + dx_mm, point[1])

    return replace(
        shape,
        rear_axle=at(shape.rear_axle),
        caster_axle=at(shape.caster_axle),
        seat_corner=at(shape.seat_corner),
        seat_front=at(shape.seat_front),
        cushion_rear=at(shape.cushion_rear),
        cushion_front=at(shape.cushion_front),
        back_bottom=at(shape.back_bottom),
        back_top=at(shape.back_top),
    )


def _apart(one: Point, other: Point, more_mm: float = 0.0) -> bool:
    return hypot(one[0] - other[0], one[1] - other[1]) > NEAR_MM or abs(more_mm) > NEAR_MM


def _cross(at: Point, pen: PenName, half_mm: float = 22.0) -> list[Primitive]:
    x, z = at
    return [
        Line((x - half_mm, z), (x + half_mm, z), pen),
        Line((x, z - half_mm), (x, z + half_mm), pen),
    ]


def _lines(pen: PenName, runs: list[tuple[Point, ...]]) -> list[Primitive]:
    return [Polyline(run, pen) for run in runs if len(run) > 1]


def _wheels(shape: Shape, pen: PenName) -> list[Primitive]:
    items: list[Primitive] = [
        Circle(shape.rear_axle, shape.rear_radius_mm, pen),
        Circle(shape.caster_axle, shape.caster_radius_mm, pen),
    ]
    if shape.hand_rim_radius_mm > 0.0:
        items.append(Circle(shape.rear_axle, shape.hand_rim_radius_mm, pen))
    return items + _cross(shape.rear_axle, pen)


def _seat(shape: Shape) -> list[tuple[Point, ...]]:
    return [
        (shape.seat_corner, shape.seat_front),
        (shape.cushion_rear, shape.cushion_front),
        (shape.back_bottom, shape.back_top),
    ]


def _frame(shape: Shape) -> list[tuple[Point, ...]]:
    low = min((hole.at[1] for hole in shape.axle_holes), default=shape.rear_axle[1])
    runs: list[tuple[Point, ...]] = [
        (shape.back_top, shape.push_handle),
        (shape.seat_corner, (shape.seat_corner[0], low), shape.caster_tube_bottom),
        (shape.seat_front, shape.caster_tube_top, shape.caster_tube_bottom),
        (shape.stem_top, shape.fork_crown, shape.caster_axle),
    ]
    runs += [
        (support.pivot, support.plate_rear, support.plate_front)
        for support in shape.foot_supports[:1]
    ]
    if shape.arm_pad is not None:
        runs.append(shape.arm_pad)
    return runs


def _anti_tip(shape: Shape, pen: PenName) -> list[Primitive]:
    wheel, mount = shape.anti_tip_wheel, shape.anti_tip_mount
    if wheel is None or mount is None:
        return []
    return [Line(mount, wheel, pen), Circle(wheel, shape.anti_tip_radius_mm, pen)]
