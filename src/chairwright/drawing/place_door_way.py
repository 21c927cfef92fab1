"""How one chair gets through a doorway, straight or from a corridor, or why it does not."""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

import numpy as np

from chairwright.drawing.limbs import capsule
from chairwright.drawing.place_marks import Gap
from chairwright.drawing.place_way import (
    Points,
    Way,
    nearest,
    overlaps,
    points_of,
    way_of,
    way_that_hits,
)
from chairwright.mass_points import FloatArray
from chairwright.places.arcs import RUN_UP, door_arc, door_arc_that_hits
from chairwright.places.kinds import Door
from chairwright.places.moves import Move, Pose, Route
from chairwright.places.outline import Outline
from chairwright.places.routes import door_route
from chairwright.places.sweep import swept
from chairwright.places.walls import LONG, Walls, block, door_walls

WALL_MM = 100.0
"""Thickness of the wall when the file does not give one (common practice, no source)."""
LEAF_MM = 40.0
"""Thickness of a door leaf as drawn (common practice, no source)."""
HAND_REACH_MM = 45.0
"""Half the length of a fist as drawn."""


def thickness_mm(door: Door) -> float:
    """Depth of the opening: as measured, else a usual wall."""
    return WALL_MM if door.opening_depth_mm is None else door.opening_depth_mm


def from_corridor(door: Door) -> float | None:
    """Corridor along which one comes [mm]; None when one comes straight at the door."""
    return door.corridor_width_mm if door.approach == "corridor" else None


def hinge_at_mm(door: Door) -> float:
    """Where the hinges are along the opening, from its near jamb [mm].

    On the near or far side as approached along the corridor; else drawn on the left.
    """
    far = from_corridor(door) is not None and door.approach_side == "latch"
    return door.clear_width_mm if far else 0.0


def leaf_ring(door: Door) -> FloatArray | None:
    """The open leaf at 90 degrees, shape (4, 2) [mm]; None for a sliding door or none at all."""
    if door.swing not in ("push", "pull"):
        return None
    hinge, width = hinge_at_mm(door), door.clear_width_mm
    west = hinge if hinge > 0.0 else hinge - LEAF_MM
    south = thickness_mm(door) if door.swing == "push" else -width
    return block(west, west + LEAF_MM, south, south + width)


def door_way(outline: Outline, door: Door, hands_mm: float, *, moves: bool = False) -> Way:
    """The way of a chair through a door, in the axes of ``walls.door_walls``.

    Parameters
    ----------
    outline : Outline
    door : Door
    hands_mm : float [mm]
        Room for a hand on each rim.
    moves : bool
        Whether to look for a sequence of moves when one steady turn is not enough; that can
        take seconds.

    Returns
    -------
    Way
        Overlaps of the hands are among its overlaps.

    Raises
    ------
    InputError
        When a size is not above zero.
    """
    corridor = from_corridor(door)
    size = (door.clear_width_mm, thickness_mm(door), 0.0 if corridor is None else corridor)
    way = _door_way(points_of(outline), *size, moves)
    pose = through(door)
    jambs = Walls(door_walls(LONG, *size[:2]).blocks[:2])
    hit = overlaps(hands_at(outline, pose, hands_mm), jambs) if way.outcome != "wide" else ()
    return replace(way, overlaps=(*way.overlaps, *hit, *leaf_hit(door, way)))


def leaf_hit(door: Door, way: Way) -> tuple[FloatArray, ...]:
    """Parts of the leaf, open at 90 degrees, that stand in a way which keeps clear of the walls."""
    leaf = leaf_ring(door)
    if leaf is None or way.outcome not in ("arc", "moves"):
        return ()
    return overlaps(way.rings[:1], Walls((leaf,)))


def through(door: Door) -> Pose:
    """Where the chair stands with its axle between the jambs."""
    return Pose(door.clear_width_mm / 2, thickness_mm(door) / 2, 90.0)


def hands_at(outline: Outline, pose: Pose, hands_mm: float) -> tuple[FloatArray, ...]:
    """Fists on both rims beside the outline, as polygons in the place's axes.

    Parameters
    ----------
    outline : Outline
    pose : Pose
    hands_mm : float [mm]
        Thickness of a fist; none are drawn for 0.

    Returns
    -------
    tuple of ndarray, each of shape (k, 2) [mm]
        Left and right.
    """
    if hands_mm <= 0.0:
        return ()
    half, reach = hands_mm / 2, max(HAND_REACH_MM - hands_mm / 2, 0.0)
    sides = (float(outline.points[:, 1].max()) + half, float(outline.points[:, 1].min()) - half)
    fists = [capsule((-reach, y), (reach, y), half) for y in sides]
    return tuple(pose.place(np.array(fist)) for fist in fists)


@lru_cache(maxsize=64)
def _door_way(points: Points, width: float, thickness: float, corridor: float, moves: bool) -> Way:
    outline = Outline(np.array(points))
    if outline.width > width:
        return _wide(outline, width, thickness, corridor)
    if not corridor:
        return _straight(outline, width, thickness)
    walls = door_walls(corridor, width, thickness)
    names = (
        ("gap_near_jamb_mm", (0.0, 0.0)),
        ("gap_far_jamb_mm", (width, 0.0)),
        ("gap_corridor_mm", (width / 2, -corridor)),
    )
    arc = door_arc(outline, corridor, width, thickness, 0.0)
    if arc is not None:
        return way_of(arc, walls, names, "arc")
    route = door_route(outline, corridor, width, thickness) if moves else None
    if route is not None:
        return way_of(route, walls, names, "moves")
    return _open(outline, width, thickness, corridor)


def _straight(outline: Outline, width: float, thickness: float) -> Way:
    start = Pose(width / 2, -outline.ahead - RUN_UP, 90.0)
    route = Route(outline, start, (Move(thickness + outline.behind - start.y_mm),))
    between = Pose(width / 2, thickness / 2, 90.0)
    side = width / 2 - float(outline.points[:, 1].min())
    ends = ((side, thickness / 2), (width, thickness / 2))
    gap = Gap("gap_far_jamb_mm", *ends, width - side)
    left = width / 2 - float(outline.points[:, 1].max())
    rings = swept(route).rings
    return Way("arc", (start, between), rings, (), (gap,), min(left, width - side), 1)


def _open(outline: Outline, width: float, thickness: float, corridor: float) -> Way:
    """The best turn hits the far jamb."""
    route = door_arc_that_hits(outline, corridor, width, thickness)
    return way_that_hits(route, door_walls(corridor, width, thickness), (width, 0.0))


def _wide(outline: Outline, width: float, thickness: float, corridor: float) -> Way:
    """Wider than the opening: it stands with the axle between the jambs."""
    pose = Pose(width / 2, thickness / 2, 90.0)
    first = Pose(width / 2, -outline.ahead - RUN_UP, 90.0)
    if corridor:
        first = Pose(-outline.ahead - RUN_UP, -corridor / 2, 0.0)
    placed = pose.place(outline.points)
    walls = Walls(door_walls(LONG, width, thickness).blocks[:2])
    edge, _ = nearest([placed], walls.blocks[1], (width, thickness / 2))
    gap = Gap("overlap_mm", edge, (width, edge[1]), (outline.width - width) / 2)
    return Way("wide", (first, pose), (), overlaps([placed], walls), (gap,))
