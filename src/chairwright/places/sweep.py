"""What a moving chair sweeps over the floor, as polygons for drawings.

A straight move sweeps the convex hull of its two ends, exactly. A turn sweeps, besides the
first pose, what the outline's edges pass over: the outline is cut where its distance from the
centre is least and greatest; each part passes over a band between two arcs and its own two
ends. Arcs are drawn as chords, and the chord error is stated.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from math import acos, ceil, pi, radians

import numpy as np

from chairwright.mass_points import FloatArray
from chairwright.places.moves import Move, Pose, Route
from chairwright.places.outline import Outline, hull
from chairwright.places.union import area_mm2, union

CHORD = 0.5
"""Chord error of swept outlines unless another is asked for [mm]."""


@dataclass(frozen=True, eq=False)
class Swept:
    """Floor swept by a route.

    Parameters
    ----------
    rings : tuple of ndarray, each of shape (m, 2) [mm]
        Outer outlines counter-clockwise, holes clockwise; the largest first.
    chord_mm : float [mm]
        No point of the true outline is farther from the drawn one.
    """

    rings: tuple[FloatArray, ...]
    chord_mm: float

    @property
    def area_mm2(self) -> float:
        """Area swept [mm2]."""
        return sum(area_mm2(each) for each in self.rings)

    @property
    def bounds_mm(self) -> tuple[float, float, float, float]:
        """Least and greatest x, then least and greatest y [mm]."""
        points = np.concatenate(self.rings)
        (west, south), (east, north) = points.min(axis=0), points.max(axis=0)
        return float(west), float(east), float(south), float(north)


def cut_at_feet(ring: FloatArray, centre: FloatArray) -> FloatArray:
    """Ring with a point added on each edge where it is nearest to a centre, shape (k, 2)."""
    points = []
    for start, end in zip(ring, np.roll(ring, -1, axis=0), strict=True):
        points.append(start)
        way = end - start
        at = float((centre - start) @ way / (way @ way))
        if 1e-9 < at < 1 - 1e-9:
            points.append(start + at * way)
    return np.array(points)


def _parts(ring: FloatArray, centre: FloatArray) -> list[FloatArray]:
    """Stretches of a ring along which the distance from the centre only rises or only falls."""
    away = np.linalg.norm(ring - centre, axis=1)
    rising = np.roll(away, -1) >= away
    turns = np.flatnonzero(rising != np.roll(rising, 1))
    count = len(ring)
    ends = np.append(turns[1:], turns[0] + count)
    return [
        ring[np.arange(first, last + 1) % count] for first, last in zip(turns, ends, strict=True)
    ]


def _turned(points: FloatArray, centre: FloatArray, angles: FloatArray) -> FloatArray:
    """Points turned about a centre by each angle, shape (a, k, 2)."""
    c, s = np.cos(angles)[:, None], np.sin(angles)[:, None]
    x, y = (points - centre).T
    return np.stack([x * c - y * s, x * s + y * c], axis=-1) + centre


def turn_step(radius: float, chord_mm: float) -> float:
    """Angle whose chord on a circle of given radius leaves the arc by the chord error [rad]."""
    return pi / 4 if radius <= chord_mm else min(pi / 4, 2 * acos(1 - chord_mm / radius))


def _bands(outline: Outline, pose: Pose, move: Move, chord_mm: float) -> Iterator[FloatArray]:
    """Bands that the parts of the outline pass over during a turn."""
    centre = pose.place(np.array([[0.0, move.centre_mm]]))[0]
    ring = cut_at_feet(pose.place(outline.points), centre)
    turn = radians(move.turn_deg)
    for part in _parts(ring, centre):
        near, far = sorted(np.linalg.norm(part[[0, -1]] - centre, axis=1))
        step = turn_step(far, min(chord_mm, max((far - near) / 2, 1e-3)))
        angles = np.linspace(0.0, turn, ceil(abs(turn) / step) + 1)
        arcs = [_turned(part[[end]], centre, angles)[:, 0] for end in (0, -1)]
        moved = _turned(part, centre, np.array([turn]))[0]
        yield np.concatenate([part[1:-1], arcs[1], moved[-2:0:-1], arcs[0][::-1]])


def tiles(route: Route, chord_mm: float = CHORD) -> list[FloatArray]:
    """Simple polygons whose union is what the route sweeps, up to the chord error.

    Parameters
    ----------
    route : Route
        Turns of less than a whole turn.
    chord_mm : float [mm]

    Returns
    -------
    list of ndarray, each of shape (m, 2) [mm]
    """
    found = [route.start.place(route.outline.points)]
    for pose, move in route.steps():
        placed = pose.place(route.outline.points)
        if move.turn_deg:
            found += [placed, *_bands(route.outline, pose, move, chord_mm)]
        else:
            found.append(
                hull(np.concatenate([placed, move.after(pose).place(route.outline.points)]))
            )
    return found


def swept(route: Route, chord_mm: float = CHORD) -> Swept:
    """Floor that a route sweeps.

    Parameters
    ----------
    route : Route
        Turns of less than a whole turn.
    chord_mm : float [mm]
        Greatest distance of the drawn outline from the true one.

    Returns
    -------
    Swept
    """
    return Swept(union(tiles(route, chord_mm)), chord_mm)
