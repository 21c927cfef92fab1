"""The chair's own parts in side view, seen from the right."""

from __future__ import annotations

from chairwright.chair.shape import Point, Shape
from chairwright.drawing.limbs import between, capsule
from chairwright.drawing.scene import Circle, Group, Line, Polyline, Primitive

TUBE_MM = 11.0
_HUB_MM = 24.0
_RIM_DEPTH_MM = 22.0


def tube(start: Point, end: Point, radius: float = TUBE_MM) -> Polyline:
    """A tube's outline that hides what lies behind it.

    Parameters
    ----------
    start, end : Point [mm]
        Ends of the tube's centre line.
    radius : float [mm]

    Returns
    -------
    Polyline
    """
    return Polyline(capsule(start, end, radius), closed=True, fill="sheet")


def seat_and_back(shape: Shape) -> Group:
    """Seat rail, cushion, back post, push handle and arm pad."""
    items: list[Primitive] = [_cushion(shape)]
    items += [tube(shape.seat_corner, shape.seat_front), tube(shape.back_bottom, shape.back_top)]
    items.append(tube(shape.back_top, shape.push_handle, 9.0))
    grip = between(shape.back_top, shape.push_handle, 0.25)
    items.append(tube(grip, shape.push_handle, 15.0))
    if shape.arm_pad is not None:
        items += _arm_support(shape, shape.arm_pad)
    return Group("seat", tuple(items))


def _cushion(shape: Shape) -> Polyline:
    ring = (shape.seat_corner, shape.cushion_rear, shape.cushion_front, shape.seat_front)
    return Polyline(ring, closed=True, fill="sheet")


def _arm_support(shape: Shape, pad: tuple[Point, Point]) -> list[Primitive]:
    post_top = between(*pad, 0.55)
    foot = between(shape.seat_corner, shape.seat_front, 0.55)
    rear, front = pad
    low = [(rear[0], rear[1] - 26.0), (front[0], front[1] - 26.0)]
    post = tube(foot, (post_top[0], post_top[1] - 26.0), 8.0)
    return [post, Polyline((rear, front, low[1], low[0]), closed=True, fill="sheet")]


def frame(shape: Shape) -> Group:
    """Side frame tubes, caster tube and hangers with their footplates."""
    lower = (shape.seat_corner[0] + TUBE_MM, _plate_low(shape))
    items: list[Primitive] = [
        tube(shape.seat_corner, lower),
        tube(lower, shape.caster_tube_bottom),
        tube(shape.seat_front, shape.caster_tube_top),
        tube(shape.caster_tube_top, shape.caster_tube_bottom, 17.0),
    ]
    for support in sorted(shape.foot_supports, key=lambda item: item.side):
        items.append(tube(support.pivot, between(support.plate_rear, support.plate_front, 0.3)))
        items.append(_plate(support.plate_rear, support.plate_front))
    return Group("frame", tuple(items))


def _plate(rear: Point, front: Point) -> Polyline:
    """A footplate; the two points are its underside, which the clearance is measured to."""
    return tube(between(rear, front, 0.0, 6.0), between(rear, front, 1.0, 6.0), 6.0)


def _plate_low(shape: Shape) -> float:
    return min((hole.at[1] for hole in shape.axle_holes), default=shape.rear_axle[1])


def caster(shape: Shape) -> Group:
    """Stem, fork and caster, with the caster turned forward and its swing in dashed lines."""
    crown, axle, radius = shape.fork_crown, shape.caster_axle, shape.caster_radius_mm
    stem = crown[0]
    forward = (2.0 * stem - axle[0], axle[1])
    swing = shape.caster_swing_radius_mm
    items: list[Primitive] = [Circle(forward, radius, "hidden")]
    for edge in (stem - swing, stem + swing):
        items.append(Line((edge, 0.0), (edge, 2.0 * radius + 15.0), "hidden"))
    items += [
        Circle(axle, radius, fill="sheet"),
        Circle(axle, 0.62 * radius, "thin"),
        *_housing(shape),
        _fork(crown, axle),
        Circle(axle, 5.0, "thin", "ink"),
        Line((stem, crown[1] + 190.0), (stem, 0.0), "centre"),
    ]
    return Group("caster", tuple(items))


def _housing(shape: Shape) -> list[Primitive]:
    """The housing around the stem and the bracket that bolts it to the caster tube."""
    top, crown = shape.stem_top, shape.fork_crown
    middle = between(crown, top, 0.6)
    low, high = shape.caster_tube_bottom, shape.caster_tube_top
    share = (middle[1] - low[1]) / ((high[1] - low[1]) or 1.0)
    on_tube = between(low, high, min(max(share, 0.0), 1.0))
    body = between(crown, top, 0.25)
    return [tube(on_tube, middle, 9.0), tube(body, top, 14.0), tube(crown, body, 6.0)]


def _fork(crown: Point, axle: Point) -> Polyline:
    return Polyline(capsule(crown, axle, 15.0, 11.0), closed=True, fill="sheet")


def rear_wheel(shape: Shape) -> Group:
    """Tyre, rim, hand rim, hub and the middle lines of the wheel."""
    axle, radius = shape.rear_axle, shape.rear_radius_mm
    inner = radius - max(shape.rear_tyre_width_mm, 1.0)
    items: list[Primitive] = [
        Circle(axle, radius),
        Circle(axle, inner, "thin"),
        Circle(axle, inner - _RIM_DEPTH_MM, "thin"),
        *_hand_rim(axle, shape.hand_rim_radius_mm),
        Circle(axle, _HUB_MM, "thin"),
        Line((axle[0] - radius - 15, axle[1]), (axle[0] + radius + 15, axle[1]), "centre"),
    ]
    return Group("rear-wheel", tuple(items))


def _hand_rim(axle: Point, radius: float) -> list[Primitive]:
    if radius <= 0.0:
        return []
    return [Circle(axle, radius), Circle(axle, radius - 19.0)]


def axle_plate(shape: Shape) -> Group:
    """The whole plate with its holes: the chosen one filled, the others open."""
    holes = shape.axle_holes
    if not holes:
        return Group("axle-plate", (Circle(shape.rear_axle, 8.0, "outline", "ink"),))
    left, right = min(h.at[0] for h in holes) - 18.0, max(h.at[0] for h in holes) + 18.0
    low, high = min(h.at[1] for h in holes) - 18.0, max(h.at[1] for h in holes) + 18.0
    ring = ((left, low), (right, low), (right, high), (left, high))
    items: list[Primitive] = [Polyline(ring, "thin", closed=True)]
    for hole in holes:
        items.append(Circle(hole.at, 6.5, "thin", "ink" if hole.chosen else "sheet"))
    return Group("axle-plate", tuple(items))


def anti_tip(shape: Shape) -> Group:
    """Anti-tip tube and wheel; an empty group when none is fitted."""
    wheel, mount = shape.anti_tip_wheel, shape.anti_tip_mount
    if wheel is None or mount is None:
        return Group("anti-tip", ())
    items = (tube(mount, wheel, 9.0), Circle(wheel, shape.anti_tip_radius_mm, fill="sheet"))
    return Group("anti-tip", (*items, Circle(wheel, 4.0, "thin", "ink")))


def floor(shape: Shape) -> Group:
    """The floor line."""
    left, right = side_extent(shape)
    return Group("floor", (Line((left - 15.0, 0.0), (right + 15.0, 0.0)),))


def side_extent(shape: Shape) -> tuple[float, float]:
    """Rearmost and foremost point of the occupied chair [mm].

    From ``plan_outline`` when the shape carries one, otherwise from the parts drawn.
    """
    if shape.plan_outline:
        xs = [x for x, _ in shape.plan_outline]
        return min(xs), max(xs)
    swing = shape.caster_axle[0] + shape.caster_radius_mm
    xs = [shape.rear_axle[0] - shape.rear_radius_mm, shape.push_handle[0] - 15.0, swing]
    xs += [point[0] for item in shape.foot_supports for point in (item.plate_front,)]
    xs += [toe[0] for toe in shape.figurine.toe.values() if toe is not None]
    if shape.anti_tip_wheel is not None:
        xs.append(shape.anti_tip_wheel[0] - shape.anti_tip_radius_mm)
    return min(xs), max(xs)
