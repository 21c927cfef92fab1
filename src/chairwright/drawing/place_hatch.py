"""Cut faces and overlaps: hatching clipped to a polygon, after ISO 128 (from memory, unverified).

Walls are hatched one way; where chair and wall would lie over each other, a thick line and
hatching both ways say so without any colour.
"""

from __future__ import annotations

from itertools import pairwise
from math import ceil, cos, floor, radians, sin

import numpy as np

from chairwright.drawing.palette import PenName
from chairwright.drawing.scene import Line, Point, Polyline, Primitive
from chairwright.mass_points import FloatArray

WALL_MM = 2.0
STRUCK_MM = 0.9
_LEAST_SCALE = 10.0


def hatch(
    ring: tuple[Point, ...], apart: float, turn_deg: float = 45.0, pen: PenName = "dimension"
) -> list[Primitive]:
    """Parallel lines inside a simple polygon, in line with those of any other polygon.

    Parameters
    ----------
    ring : tuple of Point [mm]
    apart : float [mm]
        Distance of the lines.
    turn_deg : float [deg]
        Direction, counter-clockwise from the reader's right.
    pen : str

    Returns
    -------
    list of Line
    """
    along = (cos(radians(turn_deg)), sin(radians(turn_deg)))
    corners = [(x * along[0] + y * along[1], y * along[0] - x * along[1]) for x, y in ring]
    levels = [level for _, level in corners]
    lines: list[Primitive] = []
    for number in range(ceil(min(levels) / apart), floor(max(levels) / apart) + 1):
        level = number * apart
        for first, last in _inside(corners, level):
            start, end = (_back(at, level, along) for at in (first, last))
            lines.append(Line(start, end, pen))
    return lines


def _inside(corners: list[Point], level: float) -> list[tuple[float, float]]:
    """Stretches of a level line inside a ring."""
    met = []
    for (x1, y1), (x2, y2) in pairwise([*corners, corners[0]]):
        if (y1 > level) != (y2 > level):
            met.append(x1 + (level - y1) / (y2 - y1) * (x2 - x1))
    met.sort()
    return list(zip(met[::2], met[1::2], strict=True))


def _back(at: float, level: float, along: Point) -> Point:
    return (at * along[0] - level * along[1], at * along[1] + level * along[0])


def cut_face(front: tuple[Point, ...], back: tuple[Point, ...], scale: float) -> list[Primitive]:
    """A wall in section, broken off at both ends: two faces and hatching between them.

    Parameters
    ----------
    front, back : tuple of Point [mm]
        The two faces, in the same order.
    scale : float
        Real over paper length.

    Returns
    -------
    list of Primitive
    """
    apart = WALL_MM * max(scale, _LEAST_SCALE)
    return [*hatch((*front, *back[::-1]), apart), Polyline(front), Polyline(back)]


def struck(ring: tuple[Point, ...], scale: float) -> list[Primitive]:
    """Where things would lie over each other: a thick line round hatching both ways.

    Parameters
    ----------
    ring : tuple of Point [mm]
    scale : float
        Real over paper length.

    Returns
    -------
    list of Primitive
    """
    apart = STRUCK_MM * max(scale, _LEAST_SCALE)
    body = Polyline(ring, "hit", closed=True, fill="sheet")
    return [body, *hatch(ring, apart, 45.0, "thin"), *hatch(ring, apart, 135.0, "thin")]


def clipped(ring: FloatArray, block: FloatArray) -> FloatArray:
    """Part of a polygon inside a convex one, shape (m, 2); no points when they are apart.

    Parameters
    ----------
    ring : ndarray, shape (k, 2) [mm]
        Simple polygon. Parts that hang together only beyond the block stay joined by a double
        line along its edge.
    block : ndarray, shape (n, 2) [mm]
        Convex, counter-clockwise.

    Returns
    -------
    ndarray, shape (m, 2) [mm]

    References
    ----------
    Sutherland and Hodgman, cutting edge by edge (from memory, unverified).
    """
    kept = np.asarray(ring, dtype=np.float64)
    for start, end in zip(block, np.roll(block, -1, axis=0), strict=True):
        if len(kept) == 0:
            break
        way = end - start
        side = way[0] * (kept[:, 1] - start[1]) - way[1] * (kept[:, 0] - start[0])
        kept = _cut(kept, side)
    return kept if len(kept) > 2 else np.empty((0, 2))


def _cut(ring: FloatArray, side: FloatArray) -> FloatArray:
    """Part of a ring whose side is not below zero."""
    points: list[FloatArray] = []
    for place, (point, here) in enumerate(zip(ring, side, strict=True)):
        before, there = ring[place - 1], side[place - 1]
        if (here >= 0.0) != (there >= 0.0):
            points.append(before + (point - before) * (there / (there - here)))
        if here >= 0.0:
            points.append(point)
    return np.array(points) if points else np.empty((0, 2))
