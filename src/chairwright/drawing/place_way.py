"""The way of one chair through a corner or a door, as it is drawn; kept once it is worked out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

import numpy as np

from chairwright.drawing.place_hatch import clipped
from chairwright.drawing.place_marks import Gap
from chairwright.mass_points import FloatArray
from chairwright.places.clearance import route_clearance_mm
from chairwright.places.moves import Pose, Route
from chairwright.places.outline import Outline
from chairwright.places.sweep import swept
from chairwright.places.union import area_mm2
from chairwright.places.walls import Walls

Outcome = Literal["arc", "moves", "open", "stuck", "wide"]
Points = tuple[tuple[float, float], ...]
Names = tuple[tuple[str, tuple[float, float]], ...]

LEAST_AREA_MM2 = 1.0
"""Overlaps smaller than this are a touch, and are not drawn."""
AS_NEAR_MM = 0.5
"""Places whose distance from a wall differs by less than this are as near."""
SHARES = (0.0, 1 / 3, 2 / 3, 1.0)


@dataclass(frozen=True, eq=False)
class Way:
    """What is drawn of one chair on its way.

    Parameters
    ----------
    outcome : {"arc", "moves", "open", "stuck", "wide"}
        One steady turn is enough; the shown moves are; no one turn is, with more moves perhaps;
        no motion is; the chair is wider than the way.
    poses : tuple of Pose
        Drawn positions, the first one whole.
    rings : tuple of ndarray, each of shape (m, 2) [mm]
        Outline of the floor swept; none when there is no way.
    overlaps : tuple of ndarray, each of shape (m, 2) [mm]
        Where chair and wall would lie over each other.
    gaps : tuple of Gap
        Narrowest room to each wall, or how far the chair would be in it.
    clearance_mm : float [mm]
        Least room all the way; 0 when something is hit.
    moves : int
        Moves made, straight ones with them.
    """

    outcome: Outcome
    poses: tuple[Pose, ...]
    rings: tuple[FloatArray, ...] = ()
    overlaps: tuple[FloatArray, ...] = ()
    gaps: tuple[Gap, ...] = ()
    clearance_mm: float = 0.0
    moves: int = 0


def points_of(outline: Outline) -> Points:
    """Corners of an outline that a result can be kept under."""
    return tuple((float(x), float(y)) for x, y in outline.points)


def way_of(route: Route, walls: Walls, names: Names, outcome: Outcome) -> Way:
    """Poses, swept floor and room to each wall of a route that keeps clear.

    Parameters
    ----------
    route : Route
    walls : Walls
    names : tuple of (str, point)
        One for each block: name of the gap, and where it is wanted when there is a choice.
    outcome : {"arc", "moves"}

    Returns
    -------
    Way
    """
    rings = swept(route).rings
    gaps = []
    for (name, about), block in zip(names, walls.blocks, strict=True):
        exact = route_clearance_mm(route, Walls((block,)))
        gaps.append(Gap(name, *nearest(rings, block, about), exact))
    least = route_clearance_mm(route, walls)
    return Way(outcome, drawn_poses(route), rings, (), tuple(gaps), least, len(route.moves))


def way_that_hits(route: Route, walls: Walls, corner: tuple[float, float]) -> Way:
    """Poses, swept floor and overlaps of a route that goes over the corner of a wall.

    Parameters
    ----------
    route : Route
    walls : Walls
    corner : point [mm]
        The corner that lies deepest in the swept floor.

    Returns
    -------
    Way
    """
    rings = swept(route).rings
    gap = deepest(rings[0], corner)
    return Way("open", drawn_poses(route), rings, overlaps(rings[:1], walls), (gap,))


def drawn_poses(route: Route) -> tuple[Pose, ...]:
    """Positions to draw: the first, thirds of a lone turn or the end of each move, the last."""
    turns = [(pose, move) for pose, move in route.steps() if move.turn_deg]
    if len(turns) == 1:
        pose, move = turns[0]
        between = [move.part(share).after(pose) for share in SHARES]
        return (route.start, *between, route.end)
    return route.poses


def overlaps(rings: Iterable[FloatArray], walls: Walls) -> tuple[FloatArray, ...]:
    """Parts of polygons inside walls, without mere touches."""
    found = [clipped(ring, block) for ring in rings for block in walls.blocks]
    return tuple(each for each in found if len(each) and abs(area_mm2(each)) > LEAST_AREA_MM2)


def nearest(
    rings: Iterable[FloatArray], block: FloatArray, about: tuple[float, float]
) -> tuple[tuple[float, float], tuple[float, float]]:
    """Where a swept outline and a wall are nearest to each other.

    Parameters
    ----------
    rings : iterable of ndarray, each of shape (m, 2) [mm]
    block : ndarray, shape (k, 2) [mm]
    about : tuple of float [mm]
        Of places that are as near, the one nearest to here is taken.

    Returns
    -------
    tuple of point [mm]
        On the outline and on the wall.
    """
    pairs = []
    for ring in rings:
        pairs.append((ring, _feet(ring, block)))
        pairs.append((_feet(block, ring), block))
    on, wall = (np.concatenate([pair[end] for pair in pairs]) for end in (0, 1))
    away = np.linalg.norm(on - wall, axis=1)
    from_here = np.linalg.norm(wall - about, axis=1)
    best = int(np.where(away <= away.min() + AS_NEAR_MM, np.round(from_here, 6), np.inf).argmin())
    return (float(on[best, 0]), float(on[best, 1])), (float(wall[best, 0]), float(wall[best, 1]))


def _feet(points: FloatArray, ring: FloatArray) -> FloatArray:
    """Nearest point of a closed ring to each point, shape (k, 2)."""
    sides = np.roll(ring, -1, axis=0) - ring
    from_start = points[:, None, :] - ring
    along = np.einsum("kmi,mi->km", from_start, sides) / np.einsum("mi,mi->m", sides, sides)
    feet = ring + np.clip(along, 0.0, 1.0)[..., None] * sides
    best = np.linalg.norm(feet - points[:, None, :], axis=2).argmin(axis=1)
    return np.asarray(feet[np.arange(len(points)), best])


def deepest(ring: FloatArray, point: tuple[float, float]) -> Gap:
    """How far a corner of a wall lies inside a swept outline, to its nearest edge."""
    (foot,) = _feet(np.array([point]), ring)
    depth = float(np.hypot(foot[0] - point[0], foot[1] - point[1]))
    return Gap("overlap_mm", (float(foot[0]), float(foot[1])), point, depth)
