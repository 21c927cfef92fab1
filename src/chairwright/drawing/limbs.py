"""Closed outlines of rounded, tapering bodies: limbs of the figure and tubes of the chair."""

from __future__ import annotations

from math import acos, atan2, cos, hypot, pi, sin

from chairwright.drawing.scene import Point

_STEPS = 14


def capsule(
    start: Point, end: Point, start_radius: float, end_radius: float | None = None
) -> tuple[Point, ...]:
    """Outline of two circles and their outer tangents.

    Parameters
    ----------
    start, end : Point
        Centres [mm].
    start_radius, end_radius : float
        Radii [mm]; ``end_radius`` is ``start_radius`` when left out.

    Returns
    -------
    tuple of Point
        A closed ring, counter-clockwise; a full circle when one circle holds the other.

    Examples
    --------
    >>> ring = capsule((0.0, 0.0), (100.0, 0.0), 10.0)
    >>> round(max(x for x, _ in ring)), round(min(y for _, y in ring))
    (110, -10)
    """
    last = start_radius if end_radius is None else end_radius
    length = hypot(end[0] - start[0], end[1] - start[1])
    if length <= abs(start_radius - last):
        centre, radius = (start, start_radius) if start_radius >= last else (end, last)
        return _arc(centre, radius, 0.0, 2.0 * pi)
    along = atan2(end[1] - start[1], end[0] - start[0])
    tangent = acos((start_radius - last) / length)
    return _arc(end, last, along - tangent, along + tangent) + _arc(
        start, start_radius, along + tangent, along + 2.0 * pi - tangent
    )


def chain(points: tuple[Point, ...], radii: tuple[float, ...]) -> tuple[tuple[Point, ...], ...]:
    """Capsules through several points, one for each step, to lie under one silhouette."""
    steps = zip(points, points[1:], radii, radii[1:], strict=False)
    return tuple(capsule(a, b, ra, rb) for a, b, ra, rb in steps)


def between(start: Point, end: Point, share: float, aside: float = 0.0) -> Point:
    """Point part of the way between two others, moved to one side of the way.

    Parameters
    ----------
    start, end : Point [mm]
    share : float
        0 at the start, 1 at the end.
    aside : float [mm]
        To the left of the way.

    Returns
    -------
    Point [mm]
    """
    dx, dy = end[0] - start[0], end[1] - start[1]
    length = hypot(dx, dy) or 1.0
    return (
        start[0] + share * dx - aside * dy / length,
        start[1] + share * dy + aside * dx / length,
    )


def _arc(centre: Point, radius: float, first: float, last: float) -> tuple[Point, ...]:
    (x, y), turn = centre, last - first
    angles = [first + turn * step / _STEPS for step in range(_STEPS + 1)]
    return tuple([(x + radius * cos(angle), y + radius * sin(angle)) for angle in angles])
