"""Exact least distance between a moving chair and walls, over a whole move.

While two convex polygons are apart, their distance is taken on at a corner of one of them.
Corners of the chair move on arcs (or straight lines) past the edges of the walls; in the
chair's own axes the walls' corners move on arcs past the edges of the chair. So the least
distance is that between arcs and segments, in closed form. No sampling.
"""

from __future__ import annotations

from math import radians

import numpy as np

from chairwright.mass_points import FloatArray
from chairwright.places.moves import Move, Pose, Route
from chairwright.places.outline import Outline, edge_normals
from chairwright.places.walls import Walls


def gap_of_polygons_mm(one: FloatArray, two: FloatArray) -> float:
    """Distance of two convex polygons along their edges' normals [mm].

    Parameters
    ----------
    one, two : ndarray, shape (k, 2) and (m, 2) [mm]
        Counter-clockwise.

    Returns
    -------
    float [mm]
        Above zero only when they are apart; then no more than their distance.
    """
    gaps = []
    for first, second in ((one, two), (two, one)):
        normals, offsets = edge_normals(first)
        gaps.append(np.max(np.min(normals @ second.T, axis=1) - offsets))
    return float(max(gaps))


def points_to_segments_mm(points: FloatArray, ring: FloatArray) -> FloatArray:
    """Distance of points from the edges of a closed ring.

    Parameters
    ----------
    points : ndarray, shape (..., 2) [mm]
    ring : ndarray, shape (m, 2) [mm]

    Returns
    -------
    ndarray, shape (..., m) [mm]
    """
    edges = np.roll(ring, -1, axis=0) - ring
    from_start = points[..., None, :] - ring
    along = np.einsum("...mi,mi->...m", from_start, edges) / np.einsum("mi,mi->m", edges, edges)
    foot = np.clip(along, 0.0, 1.0)[..., None] * edges
    return np.asarray(np.linalg.norm(from_start - foot, axis=-1))


def _within(angles: FloatArray, first: FloatArray, turn: float) -> FloatArray:
    """Whether an angle lies on an arc that starts at ``first`` and goes on by ``turn``."""
    ahead = np.mod((angles - first) * np.sign(turn), 2 * np.pi)
    return np.asarray(ahead <= abs(turn))


def _arcs_to_ring_mm(
    points: FloatArray, centre: FloatArray, turn: float, ring: FloatArray
) -> float:
    """Least distance of arcs (points turned about a centre) from the edges of a ring [mm].

    Taken at the ends of the arcs, at the corners of the ring, where a circle is square to an
    edge, and where it crosses one.
    """
    arm = points - centre
    radius, first = np.hypot(*arm.T), np.arctan2(arm[:, 1], arm[:, 0])
    ends = np.array([[np.cos(turn), np.sin(turn)], [-np.sin(turn), np.cos(turn)]])
    least = [points_to_segments_mm(points, ring).min()]
    least.append(points_to_segments_mm(centre + arm @ ends, ring).min())
    for angle in _critical_angles(radius, centre, ring):
        met = _within(angle, first, turn) & np.isfinite(angle)
        touch = centre + radius[:, None] * np.column_stack([np.cos(angle), np.sin(angle)])
        if met.any():
            least.append(points_to_segments_mm(touch[met], ring).min())
    return float(min(least))


def _critical_angles(radius: FloatArray, centre: FloatArray, ring: FloatArray) -> list[FloatArray]:
    """Angles, one an arc, at which the distance of an arc from a ring may be least."""
    edges = np.roll(ring, -1, axis=0) - ring
    lengths = np.linalg.norm(edges, axis=1)
    angles: list[FloatArray] = []
    for start, edge, length in zip(ring, edges, lengths, strict=True):
        normal = np.array([edge[1], -edge[0]]) / length
        facing = np.arctan2(normal[1], normal[0])
        with np.errstate(divide="ignore", invalid="ignore"):
            half = np.arccos((start - centre) @ normal / radius)
        to_corner = np.arctan2(*(start - centre)[::-1])
        whole = np.full(len(radius), facing)
        angles += [whole, whole + np.pi, facing + half, facing - half]
        angles.append(np.full(len(radius), to_corner))
    return angles


def _lines_to_ring_mm(points: FloatArray, shift: FloatArray, ring: FloatArray) -> float:
    """Least distance of points moving straight from the edges of a ring [mm]."""
    least = [points_to_segments_mm(each, ring).min() for each in (points, points + shift)]
    nexts = np.roll(ring, -1, axis=0)
    for point in points:
        path = np.array([point, point + shift])
        least.append(points_to_segments_mm(ring, path)[:, 0].min())
        least += [0.0 for a, b in zip(ring, nexts, strict=True) if _cross(path, a, b)]
    return float(min(least))


def _cross(path: FloatArray, start: FloatArray, end: FloatArray) -> bool:
    def side(a: FloatArray, b: FloatArray, c: FloatArray) -> float:
        return float((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]))

    one, two = path
    apart = side(one, two, start) * side(one, two, end) < 0
    return apart and side(start, end, one) * side(start, end, two) < 0


def move_clearance_mm(outline: Outline, pose: Pose, move: Move, walls: Walls) -> float:
    """Least distance between the chair and the walls during a move [mm].

    Parameters
    ----------
    outline : Outline
    pose : Pose
        Before the move.
    move : Move
        Of less than a whole turn.
    walls : Walls

    Returns
    -------
    float [mm]
        0 when they touch or overlap anywhere on the way.
    """
    placed = pose.place(outline.points)
    found = [_block_clearance_mm(outline, placed, pose, move, each) for each in walls.blocks]
    return min(found, default=float("inf"))


def _block_clearance_mm(
    outline: Outline, placed: FloatArray, pose: Pose, move: Move, wall: FloatArray
) -> float:
    if gap_of_polygons_mm(placed, wall) <= 0:
        return 0.0
    seen = pose.to_chair(wall)
    if move.turn_deg == 0:
        ahead = np.array([move.length_mm, 0.0])
        shift = Pose(0.0, 0.0, pose.heading_deg).place(ahead)
        there = _lines_to_ring_mm(placed, shift, wall)
        return min(there, _lines_to_ring_mm(seen, -ahead, outline.points))
    turn, centre = radians(move.turn_deg), np.array([0.0, move.centre_mm])
    there = _arcs_to_ring_mm(placed, pose.place(centre), turn, wall)
    return min(there, _arcs_to_ring_mm(seen, centre, -turn, outline.points))


def route_clearance_mm(route: Route, walls: Walls) -> float:
    """Least distance between the chair and the walls over a whole route [mm]; 0 on contact."""
    found = [move_clearance_mm(route.outline, pose, move, walls) for pose, move in route.steps()]
    return min(found, default=float("inf"))
