"""Walls in plan, each a convex block; what the chair must keep off.

Every place has its own axes, in mm, named in its function. Blocks are convex polygons,
counter-clockwise, and long enough for any wheelchair to come and go.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from chairwright.errors import InputError, Problem
from chairwright.mass_points import FloatArray

LONG = 4000.0
"""How far walls are drawn from the place [mm]."""
THICK = 200.0
"""Thickness of walls that have no thickness of their own [mm]."""


@dataclass(frozen=True, eq=False)
class Walls:
    """The walls of one place.

    Parameters
    ----------
    blocks : tuple of ndarray, each of shape (m, 2) [mm]
        Convex, counter-clockwise.
    """

    blocks: tuple[FloatArray, ...]


def block(west: float, east: float, south: float, north: float) -> FloatArray:
    """Rectangle between four lines, shape (4, 2).

    Parameters
    ----------
    west, east, south, north : float [mm]
    """
    ring = [(west, south), (east, south), (east, north), (west, north)]
    return np.array(ring, dtype=np.float64)


def positive(where: str, **sizes: float) -> None:
    """Refuse sizes that are not above zero.

    Raises
    ------
    InputError
        Naming every such size.
    """
    wrong = [
        Problem(
            where, f"{name.replace('_', ' ')} must be above 0 mm", f"{size:g} mm", "Measure it."
        )
        for name, size in sizes.items()
        if not size > 0
    ]
    if wrong:
        raise InputError(*wrong)


def corner_walls(corridor_in: float, corridor_out: float) -> Walls:
    """Corner of two corridors, a turn to the left.

    The inner corner is the origin; the way in runs along +x below it, the way out along +y
    to the right of it.

    Parameters
    ----------
    corridor_in, corridor_out : float [mm]
        Widths.

    Returns
    -------
    Walls

    Raises
    ------
    InputError
        When a width is not above zero.
    """
    positive("corner", corridor_in=corridor_in, corridor_out=corridor_out)
    far = -corridor_in - THICK
    inner = block(-LONG, 0.0, 0.0, LONG)
    below = block(-LONG, corridor_out + THICK, far, -corridor_in)
    beyond = block(corridor_out, corridor_out + THICK, far, LONG)
    return Walls((inner, below, beyond))


def corridor_walls(width: float) -> Walls:
    """Straight corridor along x with its middle on y = 0.

    Raises
    ------
    InputError
        When the width is not above zero.
    """
    positive("corridor", width=width)
    half = width / 2
    left, right = block(-LONG, LONG, half, half + THICK), block(-LONG, LONG, -half - THICK, -half)
    return Walls((left, right))


def room_walls(depth: float, width: float) -> Walls:
    """Closed room with its middle at the origin.

    Parameters
    ----------
    depth : float [mm]
        Along x, the way the chair looks at first.
    width : float [mm]
        Along y.

    Returns
    -------
    Walls

    Raises
    ------
    InputError
        When a size is not above zero.
    """
    positive("room", depth=depth, width=width)
    long, half = depth / 2, width / 2
    sides = corridor_walls(width).blocks
    ahead = block(long, long + THICK, -half - THICK, half + THICK)
    behind = block(-long - THICK, -long, -half - THICK, half + THICK)
    return Walls((*sides, ahead, behind))


def door_walls(corridor: float, opening: float, thickness: float) -> Walls:
    """Opening in the left-hand wall of a corridor.

    The corridor runs along +x below y = 0; the opening lies between x = 0 and x = ``opening``
    in a wall from y = 0 to y = ``thickness``; beyond it the floor is free.

    Parameters
    ----------
    corridor, opening, thickness : float [mm]
        Width of the corridor, clear width of the opening, thickness of the wall.

    Returns
    -------
    Walls

    Raises
    ------
    InputError
        When a size is not above zero.
    """
    positive("door", corridor=corridor, opening=opening, thickness=thickness)
    before = block(-LONG, 0.0, 0.0, thickness)
    after = block(opening, opening + LONG, 0.0, thickness)
    far = block(-LONG, opening + LONG, -corridor - THICK, -corridor)
    return Walls((before, after, far))


def tee_walls(arm: float, base: float, across: float) -> Walls:
    """Space in the shape of a T to turn round in.

    The arms run along x between y = 0 and y = ``arm``; the base, a corridor with its middle
    on x = 0, comes up to them from below.

    Parameters
    ----------
    arm, base : float [mm]
        Width of the arms and of the base.
    across : float [mm]
        End to end of the arms.

    Returns
    -------
    Walls

    Raises
    ------
    InputError
        When a size is not above zero or the base is no narrower than the arms are long.
    """
    positive("T-shaped space", arm=arm, base=base, each_arm=across - base)
    half, end = base / 2, across / 2
    left = block(-end - THICK, -half, -LONG, 0.0)
    right = block(half, end + THICK, -LONG, 0.0)
    top = block(-end - THICK, end + THICK, arm, arm + THICK)
    west = block(-end - THICK, -end, 0.0, arm)
    east = block(end, end + THICK, 0.0, arm)
    return Walls((left, right, top, west, east))
