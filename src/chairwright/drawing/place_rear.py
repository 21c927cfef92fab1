"""The occupied chair seen from behind: left side of the person on the left, floor at zero."""

from __future__ import annotations

from math import cos, radians, sin

from chairwright.chair.shape import Point, Shape
from chairwright.drawing.limbs import capsule, chain
from chairwright.drawing.plan_chair import SIDES
from chairwright.drawing.scene import Circle, Group, Polyline, Primitive, Silhouette
from chairwright.drawing.side_chair import tube

_SHOULDER_MM = 58.0
_RIM_TUBE_MM = 9.0
_POST_MM = 12.0
_HANDLE_MM = 16.0
_CROSS_MM = 9.0
_ELBOW_OUT_MM = 70.0
_NAMES = {1.0: "right", -1.0: "left"}
"""A side of the view, right positive, to the side of the person."""


def rear_view(shape: Shape) -> tuple[Group, ...]:
    """Every part from the farthest to the nearest, casters first.

    Parameters
    ----------
    shape : Shape

    Returns
    -------
    tuple of Group
        Primitives in real mm: x to the right of the view, which is the person's right.
    """
    return (_casters(shape), _body(shape), _frame(shape), _wheels(shape), _back(shape))


def _casters(shape: Shape) -> Group:
    items: list[Primitive] = []
    radius, half = shape.caster_radius_mm, shape.caster_width_mm / 2.0
    for side in SIDES:
        x = side * shape.caster_track_mm / 2.0
        items.append(_upright(x, half, 0.0, 2.0 * radius))
        items.append(tube((x, 2.0 * radius), (x, shape.stem_top[1]), 8.0))
    return Group("casters", tuple(items))


def _upright(x: float, half: float, low: float, high: float) -> Polyline:
    ring = ((x - half, low), (x + half, low), (x + half, high), (x - half, high))
    return Polyline(ring, closed=True, fill="sheet")


def _body(shape: Shape) -> Group:
    """Head, shoulders, trunk and arms; breadths by eye, no figure comes from them."""
    body = shape.figurine
    up, head = body.shoulder[1], body.head_centre[1]
    half = max(body.half_shoulder_mm - _SHOULDER_MM, 0.0)
    hip, low = body.half_hip_mm * 0.85, shape.cushion_rear[1]
    trunk = ((-hip, low), (hip, low), (half, up), (-half, up))
    shoulders = capsule((-half, up), (half, up), _SHOULDER_MM)
    neck = capsule((0.0, up), (0.0, head), 52.0)
    radius = body.head_radius_mm
    low_end, high_end = (0.0, head - 0.25 * radius), (0.0, head + 0.1 * radius)
    skull = capsule(low_end, high_end, 0.68 * radius, 0.8 * radius)
    arms = tuple(ring for side in SIDES for ring in _arm(shape, side, half))
    return Group("person", (Silhouette((trunk, shoulders, neck, skull, *arms)),))


def _arm(shape: Shape, side: float, half: float) -> tuple[tuple[Point, ...], ...]:
    body, name = shape.figurine, _NAMES[side]
    elbow, hand = body.elbow.get(name), body.hand.get(name)
    if elbow is None:
        return ()
    start = (side * half, body.shoulder[1])
    bend = (side * (body.half_shoulder_mm - 10.0 + _ELBOW_OUT_MM / 2), elbow[1])
    if hand is None:
        return (capsule(start, bend, 48.0, 38.0),)
    end = (side * (shape.overall_width_mm / 2.0 - 25.0), hand[1])
    return chain((start, bend, end), (48.0, 38.0, 32.0))


def _frame(shape: Shape) -> Group:
    """Seat rails, cushion edge and the brace below them."""
    half, seat = shape.seat_width_mm / 2.0, shape.seat_corner[1]
    low = max(shape.rear_axle[1] - 60.0, 2.0 * _CROSS_MM)
    items: list[Primitive] = [
        _upright(0.0, half, seat, shape.cushion_rear[1]),
        tube((-half, low), (half, seat), _CROSS_MM),
        tube((half, low), (-half, seat), _CROSS_MM),
    ]
    for side in SIDES:
        items.append(tube((side * half, low), (side * half, seat), _POST_MM))
        if shape.arm_pad is not None:
            pad = shape.arm_pad[0][1]
            items.append(_upright(side * (half + 25.0), 25.0, pad - 26.0, pad))
    return Group("frame", tuple(items))


def _wheels(shape: Shape) -> Group:
    """Rear wheels as they lean, their hand rims outside."""
    lean, radius = radians(abs(shape.camber_deg)), shape.rear_radius_mm
    half = shape.rear_tyre_width_mm / 2.0
    items: list[Primitive] = []
    for side in SIDES:
        foot, along = side * shape.rear_track_mm / 2.0, (-side * sin(lean), cos(lean))

        def at(up: float, x: float = foot, way: Point = along) -> Point:
            return (x + up * way[0], up * way[1])

        items.append(Polyline(capsule(at(half), at(2.0 * radius - half), half), closed=True,
                              fill="sheet"))  # fmt: skip
        rim = shape.hand_rim_radius_mm
        if rim > 0.0:
            low = radius - rim + _RIM_TUBE_MM
            out = side * (shape.overall_width_mm / 2.0 - _RIM_TUBE_MM) - at(low)[0]
            ends = [(x + out, z) for x, z in (at(low), at(2.0 * radius - low))]
            items.append(Polyline(capsule(ends[0], ends[1], _RIM_TUBE_MM), "thin", True, "sheet"))
        items.append(tube(at(radius), (side * shape.seat_width_mm / 2.0, shape.rear_axle[1]), 8.0))
    return Group("rear-wheels", tuple(items))


def _back(shape: Shape) -> Group:
    half = shape.seat_width_mm / 2.0
    low, high = shape.back_bottom[1], shape.back_top[1]
    ring = ((-half, low + 40.0), (half, low + 40.0), (half, high - 15.0), (-half, high - 15.0))
    items: list[Primitive] = [Polyline(ring, closed=True, fill="sheet")]
    for side in SIDES:
        x = side * half
        items.append(tube((x, low), (x, high), _POST_MM))
        items.append(Circle((x, shape.push_handle[1]), _HANDLE_MM, fill="sheet"))
    return Group("back", tuple(items))
