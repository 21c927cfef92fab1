"""The chair's own parts in plan, front to the right and left side up."""

from __future__ import annotations

from math import cos, hypot, pi, radians, sin

from chairwright.chair.shape import FootSupport, Point, Shape
from chairwright.drawing.limbs import capsule
from chairwright.drawing.scene import Circle, Group, Line, Polyline, Primitive, Silhouette
from chairwright.drawing.side_chair import tube

SIDES = (1.0, -1.0)
_RIM_TUBE_MM = 10.0
_PAD_HALF_MM = 25.0
_SHOE_HALF_MM = 44.0


def seat(shape: Shape) -> Group:
    """Seat between its rails, back posts, push handles and arm pads."""
    rear, front, half = shape.seat_corner[0], shape.seat_front[0], shape.seat_width_mm / 2.0
    ring = ((rear, half), (front, half), (front, -half), (rear, -half))
    items: list[Primitive] = [Polyline(ring, "thin", closed=True, fill="sheet")]
    for side in SIDES:
        y = side * half
        items += [tube((rear, y), (front, y)), tube((rear, y), (shape.push_handle[0], y), 14.0)]
        items.append(Circle((rear, y), 13.0, fill="sheet"))
        if shape.arm_pad is not None:
            items.append(_arm_pad(shape.arm_pad, y + side * _PAD_HALF_MM))
    items.append(Line((rear, half - 13.0), (rear, 13.0 - half)))
    return Group("seat", tuple(items))


def _arm_pad(pad: tuple[Point, Point], y: float) -> Polyline:
    rear, front = pad[0][0], pad[1][0]
    return _box(rear, front, y - _PAD_HALF_MM, y + _PAD_HALF_MM)


def _box(rear: float, front: float, low: float, high: float) -> Polyline:
    ring = ((rear, low), (front, low), (front, high), (rear, high))
    return Polyline(ring, closed=True, fill="sheet")


def rear_wheels(shape: Shape) -> Group:
    """Rear wheels with their hand rims; with camber the tops lean in.

    A cambered wheel shows as the narrow ellipse that its rim makes from above.
    """
    items: list[Primitive] = [
        Line((0.0, shape.hub_half_mm + 40.0), (0.0, -shape.hub_half_mm - 40.0), "centre")
    ]
    radius, lean = shape.rear_radius_mm, _lean(shape)
    half = shape.rear_tyre_width_mm / 2.0
    for side in SIDES:
        y = side * (shape.rear_track_mm / 2.0 - lean)
        rim = side * (shape.overall_width_mm / 2.0 - _RIM_TUBE_MM)
        if shape.hand_rim_radius_mm > 0.0 and abs(rim) > shape.rear_track_mm / 2.0 + half:
            reach = shape.hand_rim_radius_mm - _RIM_TUBE_MM
            items.append(Polyline(capsule((-reach, rim), (reach, rim), _RIM_TUBE_MM), "thin", True))
        items.append(Polyline(_wheel_ring(y, radius, lean + half), closed=True, fill="sheet"))
        if lean > 0.0:
            items.append(Polyline(_ellipse(y, radius - half, lean), "thin", closed=True))
    return Group("rear-wheels", tuple(items))


def _lean(shape: Shape) -> float:
    return shape.rear_radius_mm * sin(radians(abs(shape.camber_deg)))


def _wheel_ring(y: float, reach: float, half: float) -> tuple[Point, ...]:
    steps = [2.0 * pi * step / 72 for step in range(72)]
    return tuple(
        (reach * _flattened(cos(turn)), y + half * _flattened(sin(turn))) for turn in steps
    )


def _flattened(value: float) -> float:
    return float(abs(value) ** 0.5) * (1.0 if value >= 0.0 else -1.0)


def _ellipse(y: float, reach: float, half: float) -> tuple[Point, ...]:
    steps = [2.0 * pi * step / 48 for step in range(48)]
    return tuple((reach * cos(turn), y + half * sin(turn)) for turn in steps)


def casters(shape: Shape) -> Group:
    """Casters trailing, with the circle that each sweeps in dashed lines."""
    stem, (axle, _) = shape.fork_crown[0], shape.caster_axle
    radius, half = shape.caster_radius_mm, shape.caster_width_mm / 2.0
    items: list[Primitive] = []
    for side in SIDES:
        y = side * shape.caster_track_mm / 2.0
        reach = radius - half
        items += [
            Circle((stem, y), shape.caster_swing_radius_mm, "hidden"),
            Polyline(
                capsule((axle - reach, y), (axle + reach, y), half), closed=True, fill="sheet"
            ),
            Circle((stem, y), 14.0, fill="sheet"),
        ]
    return Group("casters", tuple(items))


def feet(shape: Shape) -> Group:
    """Hangers, footplates and shoes."""
    items: list[Primitive] = []
    for support in shape.foot_supports:
        items += _foot_support(shape, support)
    for side, sign in (("left", 1.0), ("right", -1.0)):
        heel, toe = shape.figurine.heel.get(side), shape.figurine.toe.get(side)
        if heel is not None and toe is not None:
            items.append(Silhouette((_shoe(heel[0], toe[0], foot_y(shape, side, sign)),)))
    return Group("feet", tuple(items))


def foot_y(shape: Shape, side: str, sign: float) -> float:
    """Lateral place of a shoe [mm].

    Parameters
    ----------
    shape : Shape
    side : {"left", "right"}
    sign : float
        1 for the left, -1 for the right side.

    Returns
    -------
    float [mm]
        Mid footplate; without a footplate a little more than half way out to the hip.
    """
    for support in shape.foot_supports:
        if support.side == side:
            return (support.y_inner_mm + support.y_outer_mm) / 2.0
    return sign * shape.figurine.half_hip_mm * 0.55


def _shoe(heel: float, toe: float, y: float) -> tuple[Point, ...]:
    return capsule(
        (heel + 0.75 * _SHOE_HALF_MM, y),
        (toe - _SHOE_HALF_MM, y),
        0.75 * _SHOE_HALF_MM,
        _SHOE_HALF_MM,
    )


def _foot_support(shape: Shape, support: FootSupport) -> list[Primitive]:
    low, high = sorted((support.y_inner_mm, support.y_outer_mm))
    rear, front = support.plate_rear[0], support.plate_front[0]
    sign = 1.0 if support.side == "left" else -1.0
    y = sign * shape.seat_width_mm / 2.0
    edge = sign * max(abs(low), abs(high))
    hanger = tube((support.pivot[0], y), (rear + 0.3 * (front - rear), edge))
    return [hanger, _box(rear, front, low, high)]


def anti_tip(shape: Shape) -> Group:
    """Anti-tip tubes under the back posts; an empty group when none is fitted."""
    wheel, mount = shape.anti_tip_wheel, shape.anti_tip_mount
    if wheel is None or mount is None:
        return Group("anti-tip", ())
    items: list[Primitive] = []
    for side in SIDES:
        y = side * shape.seat_width_mm / 2.0
        items.append(tube((mount[0], y), (wheel[0], y), 9.0))
        reach = shape.anti_tip_radius_mm
        items.append(_box(wheel[0] - reach, wheel[0] + reach, y - 11.0, y + 11.0))
    return Group("anti-tip", tuple(items))


def outline_points(shape: Shape) -> tuple[Point, ...]:
    """Outline of the occupied chair in plan [mm]: the shape's own, or from the parts drawn."""
    if shape.plan_outline:
        return shape.plan_outline
    half, seat_half = shape.overall_width_mm / 2.0, shape.seat_width_mm / 2.0
    back = min(shape.push_handle[0] - 14.0, shape.seat_corner[0])
    points = [(-shape.rear_radius_mm, shape.rear_track_mm / 2.0), (0.0, half), (back, seat_half)]
    for side, sign in (("left", 1.0), ("right", -1.0)):
        toe = shape.figurine.toe.get(side)
        if toe is not None:
            points.append((toe[0], abs(foot_y(shape, side, sign)) + _SHOE_HALF_MM * 0.5))
    for support in shape.foot_supports:
        points.append(
            (support.plate_front[0], max(abs(support.y_inner_mm), abs(support.y_outer_mm)))
        )
    if shape.anti_tip_wheel is not None:
        points.append((shape.anti_tip_wheel[0] - shape.anti_tip_radius_mm, seat_half + 11.0))
    return tuple(points) + tuple((x, -y) for x, y in points)


def turning_diameter_mm(shape: Shape) -> float:
    """Twice the farthest outline point from the middle of the axle [mm]."""
    return 2.0 * max(hypot(x, y) for x, y in outline_points(shape))
