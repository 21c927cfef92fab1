"""Union of simple polygons as rings, for drawings.

Every edge is cut wherever another edge meets it; a piece belongs to the outline of the union
when the floor just outside it lies in none of the polygons. Pieces are then joined end to end.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from chairwright.mass_points import FloatArray

OUTSIDE = 1e-4
"""How far beside a piece it is looked whether the floor is free [mm]."""
SAME = 1e-5
"""Points closer than this are one point [mm]."""


def area_mm2(ring: FloatArray) -> float:
    """Area inside a ring [mm2]; counter-clockwise positive."""
    x, y = ring[:, 0], ring[:, 1]
    return float(np.sum(x * np.roll(y, -1) - np.roll(x, -1) * y) / 2)


def counter_clockwise(ring: FloatArray) -> FloatArray:
    """The same ring, counter-clockwise, without points that repeat the one before."""
    steps = np.linalg.norm(ring - np.roll(ring, 1, axis=0), axis=1)
    kept = ring[steps > SAME]
    return np.asarray(kept if area_mm2(kept) > 0 else kept[::-1])


def covered(points: FloatArray, polygon: FloatArray) -> np.ndarray:
    """Whether points lie in a polygon, shape (n,); even-odd rule."""
    (x, y), (ax, ay) = points.T[..., None], polygon.T
    bx, by = np.roll(polygon, -1, axis=0).T
    spans = (ay > y) != (by > y)
    with np.errstate(divide="ignore", invalid="ignore"):
        at = ax + (y - ay) * (bx - ax) / (by - ay)
    return np.asarray(np.sum(spans & (x < at), axis=1) % 2 == 1)


def _cuts(start: FloatArray, end: FloatArray, starts: FloatArray, ends: FloatArray) -> FloatArray:
    """Where along one edge others meet it: fractions between 0 and 1, sorted."""
    way = end - start
    length = np.hypot(*way)
    along = way / length
    across = np.array([-along[1], along[0]])
    sides = [(each - start) @ across for each in (starts, ends)]
    places = [(each - start) @ along for each in (starts, ends)]
    touching = [place[np.abs(side) < SAME] for side, place in zip(sides, places, strict=True)]
    one, two = sides
    crossing = (np.minimum(one, two) < -SAME) & (np.maximum(one, two) > SAME)
    share = one[crossing] / (one[crossing] - two[crossing])
    met = places[0][crossing] + share * (places[1][crossing] - places[0][crossing])
    every = np.concatenate([*touching, met])
    inner = every[(every > SAME) & (every < length - SAME)] / length
    return np.concatenate([[0.0], np.unique(inner), [1.0]])


def _pieces(polygons: Sequence[FloatArray]) -> tuple[FloatArray, FloatArray]:
    """All edges, cut wherever they meet: starts and ends, shape (n, 2)."""
    starts = np.concatenate(polygons)
    ends = np.concatenate([np.roll(each, -1, axis=0) for each in polygons])
    west, east = np.minimum(starts, ends) - SAME, np.maximum(starts, ends) + SAME
    firsts, lasts = [], []
    for start, end in zip(starts, ends, strict=True):
        low, high = np.minimum(start, end), np.maximum(start, end)
        near = np.all((west <= high) & (east >= low), axis=1)
        cuts = _cuts(start, end, starts[near], ends[near])
        points = start + cuts[:, None] * (end - start)
        long = np.linalg.norm(np.diff(points, axis=0), axis=1) > SAME
        firsts.append(points[:-1][long])
        lasts.append(points[1:][long])
    return np.concatenate(firsts), np.concatenate(lasts)


def _outer(
    firsts: FloatArray, lasts: FloatArray, polygons: Sequence[FloatArray]
) -> tuple[FloatArray, FloatArray]:
    """Pieces with free floor on their right, each once."""
    way = lasts - firsts
    right = np.column_stack([way[:, 1], -way[:, 0]])
    right /= np.linalg.norm(right, axis=1, keepdims=True)
    look = (firsts + lasts) / 2 + OUTSIDE * right
    free = np.ones(len(look), dtype=np.bool_)
    for polygon in polygons:
        low, high = polygon.min(axis=0), polygon.max(axis=0)
        near = free & np.all((look >= low) & (look <= high), axis=1)
        free[near] &= ~covered(look[near], polygon)
    return _once(firsts[free], lasts[free])


def _once(firsts: FloatArray, lasts: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Pieces without those that lie on one before them."""
    order = np.lexsort(((firsts + lasts) / 2).T)
    both = np.column_stack([firsts, lasts])[order]
    kept = np.ones(len(both), dtype=np.bool_)
    for number, piece in enumerate(both):
        rest = both[number + 1 : number + 9]
        kept[number + 1 : number + 9] &= np.abs(rest - piece).max(axis=1) > 10 * SAME
    return both[kept, :2], both[kept, 2:]


def _next(piece: int, firsts: FloatArray, lasts: FloatArray, open_still: np.ndarray) -> int:
    """Piece that goes on where one ends; where several do, the one most to the right."""
    gaps = np.linalg.norm(firsts - lasts[piece], axis=1)
    gaps[~open_still] = np.inf
    near = np.flatnonzero(gaps <= max(gaps.min(), 10 * SAME))
    before = lasts[piece] - firsts[piece]
    ways = lasts[near] - firsts[near]
    cross = before[0] * ways[:, 1] - before[1] * ways[:, 0]
    bend = np.arctan2(cross, ways @ before)
    return int(near[np.argmin(bend)])


def union(polygons: Sequence[FloatArray]) -> tuple[FloatArray, ...]:
    """Outline of the union of simple polygons.

    Parameters
    ----------
    polygons : sequence of ndarray, each of shape (m, 2) [mm]

    Returns
    -------
    tuple of ndarray
        Rings: outer ones counter-clockwise, holes clockwise; the largest first.
    """
    whole = [counter_clockwise(np.asarray(each, dtype=np.float64)) for each in polygons]
    firsts, lasts = _outer(*_pieces(whole), whole)
    open_still = np.ones(len(firsts), dtype=np.bool_)
    rings = []
    while open_still.any():
        first = piece = int(np.argmax(open_still))
        ring = [firsts[piece]]
        while True:
            following = _next(piece, firsts, lasts, open_still)
            open_still[following] = False
            if following == first:
                break
            ring.append(firsts[following])
            piece = following
        rings.append(_plain(np.array(ring)))
    rings = [each for each in rings if len(each) > 2]
    return tuple(sorted(rings, key=lambda each: -abs(area_mm2(each))))


def _plain(ring: FloatArray) -> FloatArray:
    """The same ring without points on a straight line between their neighbours."""
    before, after = ring - np.roll(ring, 1, axis=0), np.roll(ring, -1, axis=0) - ring
    cross = before[:, 0] * after[:, 1] - before[:, 1] * after[:, 0]
    length = np.linalg.norm(before, axis=1) + np.linalg.norm(after, axis=1)
    return np.asarray(ring[np.abs(cross) > SAME * length])
