"""The seated person in plain outline, from the joints of the shape.

Body breadths are drawing proportions on the trunk length, chosen by eye; no figure comes from them.
"""

from __future__ import annotations

from math import hypot

from chairwright.chair.shape import Figurine
from chairwright.drawing.limbs import between, capsule, chain
from chairwright.drawing.scene import Group, Point, Silhouette

_TRUNK_MM = 480.0
Rings = tuple[tuple[Point, ...], ...]


def body_side(figurine: Figurine) -> Group:
    """Outline from the right without the near arm: far limbs, then trunk, head and near leg.

    Parameters
    ----------
    figurine : Figurine
        Joints in floor axes [mm]; a lost part is None.

    Returns
    -------
    Group
        Silhouettes in real mm, farthest first.
    """
    size = _size(figurine)
    layers = (
        _arm(figurine, "left", size),
        _leg(figurine, "left", size),
        _trunk(figurine, size) + _head(figurine) + _leg(figurine, "right", size),
    )
    return Group("person", tuple(Silhouette(rings) for rings in layers if rings))


def near_arm(figurine: Figurine) -> Group:
    """The right arm, which lies outside chair and wheel; an empty group when it is lost."""
    rings = _arm(figurine, "right", _size(figurine))
    return Group("near-arm", (Silhouette(rings),) if rings else ())


def _size(figurine: Figurine) -> float:
    return hypot(*_way(figurine.hip, figurine.shoulder)) / _TRUNK_MM


def _way(start: Point, end: Point) -> Point:
    return (end[0] - start[0], end[1] - start[1])


def _trunk(figurine: Figurine, size: float) -> Rings:
    hip, shoulder = figurine.hip, figurine.shoulder
    points = (
        hip,
        between(hip, shoulder, 0.3, -14.0 * size),
        between(hip, shoulder, 0.68, -16.0 * size),
        between(hip, shoulder, 0.9, -2.0 * size),
        between(hip, shoulder, 1.0, 10.0 * size),
    )
    return chain(points, tuple(size * radius for radius in (100.0, 106.0, 114.0, 92.0, 62.0)))


def _head(figurine: Figurine) -> Rings:
    (x, z), radius = figurine.head_centre, figurine.head_radius_mm

    def at(ahead: float, up: float) -> Point:
        return (x + ahead * radius, z + up * radius)

    skull = capsule(at(-0.12, 0.14), at(0.1, 0.2), 0.84 * radius, 0.78 * radius)
    face = capsule(at(0.2, 0.0), at(0.4, -0.72), 0.64 * radius, 0.3 * radius)
    nose = capsule(at(0.76, 0.06), at(0.9, -0.2), 0.06 * radius, 0.09 * radius)
    lips = capsule(at(0.66, -0.5), at(0.7, -0.56), 0.08 * radius)
    nape = at(-0.2, -0.55)
    base = between(figurine.shoulder, nape, 0.05)
    neck = capsule(base, nape, 0.58 * radius, 0.48 * radius)
    return (skull, face, nose, lips, neck)


def _arm(figurine: Figurine, side: str, size: float) -> Rings:
    elbow, hand = figurine.elbow.get(side), figurine.hand.get(side)
    if elbow is None:
        return ()
    upper = capsule(between(figurine.shoulder, elbow, 0.06), elbow, 50.0 * size, 39.0 * size)
    if hand is None:
        return (upper,)
    forearm = capsule(elbow, between(elbow, hand, 0.86), 39.0 * size, 27.0 * size)
    fist = capsule(between(elbow, hand, 0.96), between(elbow, hand, 1.12), 36.0 * size, 30.0 * size)
    return (upper, forearm, fist)


def _leg(figurine: Figurine, side: str, size: float) -> Rings:
    knee, ankle = figurine.knee.get(side), figurine.ankle.get(side)
    if knee is None:
        return ()
    thigh = chain(
        (figurine.hip, between(figurine.hip, knee, 0.5, 4.0 * size), knee),
        (88.0 * size, 76.0 * size, 56.0 * size),
    )
    if ankle is None:
        return thigh
    calf = chain(
        (knee, between(knee, ankle, 0.3, -9.0 * size), between(knee, ankle, 0.98)),
        (55.0 * size, 54.0 * size, 35.0 * size),
    )
    return thigh + calf + _shoe(figurine, side, ankle, size)


def _shoe(figurine: Figurine, side: str, ankle: Point, size: float) -> Rings:
    heel, toe = figurine.heel.get(side), figurine.toe.get(side)
    if heel is None or toe is None:
        return ()
    back = between(heel, toe, 0.12, 30.0 * size)
    ball = between(heel, toe, 0.68, 27.0 * size)
    tip = between(heel, toe, 0.9, 22.0 * size)
    instep = capsule(ankle, ball, 38.0 * size, 26.0 * size)
    return (
        capsule(ankle, back, 38.0 * size, 30.0 * size),
        instep,
        capsule(back, ball, 30.0 * size, 27.0 * size),
        capsule(ball, tip, 27.0 * size, 22.0 * size),
    )
