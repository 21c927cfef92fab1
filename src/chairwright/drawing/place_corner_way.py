"""How one chair gets round a corner of two corridors, or why it does not."""

from __future__ import annotations

from functools import lru_cache

import numpy as np

from chairwright.drawing.place_marks import Gap
from chairwright.drawing.place_way import (
    Names,
    Points,
    Way,
    deepest,
    nearest,
    overlaps,
    points_of,
    way_of,
    way_that_hits,
)
from chairwright.figures.corner import corner_free_in_mm
from chairwright.mass_points import FloatArray
from chairwright.places.arcs import RUN_UP, corner_arc, corner_arc_that_hits
from chairwright.places.moves import Pose
from chairwright.places.outline import Outline
from chairwright.places.routes import corner_route
from chairwright.places.walls import Walls, corner_walls

_COARSE_DEG = 0.25
_FINE = 2001


def corner_way(outline: Outline, width_in: float, width_out: float, *, moves: bool = False) -> Way:
    """The way of a chair round a corner to the left, in the axes of ``walls.corner_walls``.

    Parameters
    ----------
    outline : Outline
    width_in, width_out : float [mm]
    moves : bool
        Whether to look for a sequence of moves when one steady turn is not enough; that can
        take seconds.

    Returns
    -------
    Way

    Raises
    ------
    InputError
        When a width is not above zero.
    """
    return _corner_way(points_of(outline), width_in, width_out, moves)


@lru_cache(maxsize=64)
def _corner_way(points: Points, width_in: float, width_out: float, moves: bool) -> Way:
    outline, walls = Outline(np.array(points)), corner_walls(width_in, width_out)
    if outline.width > min(width_in, width_out):
        return _wide(outline, width_in, width_out, walls)
    arc = corner_arc(outline, width_in, width_out, 0.0)
    if arc is not None:
        return way_of(arc, walls, _names(width_in, width_out), "arc")
    if width_in < float(corner_free_in_mm(outline.corners, width_out)[0]):
        return _stuck(outline, width_in, width_out, walls)
    route = corner_route(outline, width_in, width_out) if moves else None
    if route is not None:
        return way_of(route, walls, _names(width_in, width_out), "moves")
    return _open(outline, width_in, width_out, walls)


def _names(width_in: float, width_out: float) -> Names:
    """Room to the inner corner, to the outer wall of the way in, and to that of the way out."""
    inner, low, beyond = (0.0, 0.0), (0.0, -width_in), (width_out, 0.0)
    return ("gap_inner_mm", inner), ("gap_in_mm", low), ("gap_out_mm", beyond)


def _start(outline: Outline, width_in: float) -> Pose:
    return Pose(-outline.ahead - RUN_UP, -width_in / 2, 0.0)


def _open(outline: Outline, width_in: float, width_out: float, walls: Walls) -> Way:
    """The best turn hits the inner corner."""
    route = corner_arc_that_hits(outline, width_in, width_out)
    return way_that_hits(route, walls, (0.0, 0.0))


def _stuck(outline: Outline, width_in: float, width_out: float, walls: Walls) -> Way:
    """Pushed against both outer walls, the chair is deepest in the inner corner at one angle."""
    pose = tightest_pose(outline, width_in, width_out)
    placed = pose.place(outline.points)
    hit = overlaps([placed], Walls(walls.blocks[:1]))
    poses = (_start(outline, width_in), pose)
    return Way("stuck", poses, (), hit, (deepest(placed, (0.0, 0.0)),))


def tightest_pose(outline: Outline, width_in: float, width_out: float) -> Pose:
    """Where the chair, pushed against both outer walls, is deepest in the inner corner.

    Parameters
    ----------
    outline : Outline
    width_in, width_out : float [mm]

    Returns
    -------
    Pose
        In the axes of ``walls.corner_walls``; to a ten thousandth of a degree.
    """
    coarse = np.arange(0.0, 90.0 + _COARSE_DEG / 2, _COARSE_DEG)
    best = coarse[_depths(outline, width_in, width_out, coarse).argmax()]
    fine = best + np.linspace(-_COARSE_DEG, _COARSE_DEG, _FINE)
    angle = float(fine[_depths(outline, width_in, width_out, fine).argmax()])
    x, y = _pushed(outline, width_in, width_out, np.array([angle]))
    return Pose(float(x[0]), float(y[0]), angle)


def _pushed(
    outline: Outline, width_in: float, width_out: float, angles_deg: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Middle of the axle when the outline touches both outer walls, at each angle."""
    sine, cosine = np.sin(np.radians(angles_deg)), np.cos(np.radians(angles_deg))
    x, y = outline.points.T[:, :, None]
    east, south = (x * cosine - y * sine).max(axis=0), (x * sine + y * cosine).min(axis=0)
    return width_out - east, -width_in - south


def _depths(
    outline: Outline, width_in: float, width_out: float, angles_deg: FloatArray
) -> FloatArray:
    """How deep the inner corner lies in the outline at each angle; negative when outside [mm]."""
    x, y = _pushed(outline, width_in, width_out, angles_deg)
    sine, cosine = np.sin(np.radians(angles_deg)), np.cos(np.radians(angles_deg))
    corner = np.stack([-x * cosine - y * sine, x * sine - y * cosine])
    edges = np.roll(outline.points, -1, axis=0) - outline.points
    normals = np.column_stack([edges[:, 1], -edges[:, 0]]) / np.linalg.norm(edges, axis=1)[:, None]
    offsets = np.einsum("ij,ij->i", normals, outline.points)
    return np.asarray((offsets[:, None] - normals @ corner).min(axis=0))


def _wide(outline: Outline, width_in: float, width_out: float, walls: Walls) -> Way:
    """Wider than a corridor: it stands in the middle of the first that is too narrow."""
    start = _start(outline, width_in)
    inside = outline.width <= width_in
    pose = Pose(width_out / 2, outline.behind + RUN_UP, 90.0) if inside else start
    placed = pose.place(outline.points)
    edge, _ = nearest([placed], walls.blocks[2 if inside else 1], (0.0, 0.0))
    wall = (width_out, edge[1]) if inside else (edge[0], -width_in)
    over = (outline.width - (width_out if inside else width_in)) / 2
    gap = Gap("overlap_mm", edge, wall, over)
    return Way("wide", (start, pose)[: 1 + inside], (), overlaps([placed], walls), (gap,))
