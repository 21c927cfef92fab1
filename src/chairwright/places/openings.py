"""A box through an opening: the folded chair into the boot of a car.

The box (the folded chair, or its heaviest piece) is pushed straight through a rectangular
opening into a space of the opening's cross-section. It may lie on any of its sides, and be
tilted about any one axis of the opening. First principles: docs/theory/turning.md.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import permutations
from math import acos, atan2, cos, degrees, hypot, inf, sin
from typing import Literal

from chairwright.places.walls import positive

Axis = Literal["", "width", "height", "depth"]
Box = tuple[float, float, float]
SAME = 1e-9
"""Fits that are met to within this many mm count."""


@dataclass(frozen=True)
class Way:
    """One way in which a box goes through.

    Parameters
    ----------
    width_mm, height_mm, depth_mm : float [mm]
        Edges of the box along the opening's width, its height, and the depth behind it,
        before any tilt.
    tilt_about : {"", "width", "height", "depth"}
        Axis about which the box is tilted; "depth" rolls it in the plane of the opening.
    tilt_deg : float [deg]
        The least tilt that goes; 0 when straight.
    """

    width_mm: float
    height_mm: float
    depth_mm: float
    tilt_about: Axis = ""
    tilt_deg: float = 0.0


def least_tilt_deg(across: float, up: float, width: float, height: float) -> float | None:
    """Least tilt at which a rectangle fits into another, or None.

    Parameters
    ----------
    across, up : float [mm]
        Sides of the rectangle, along width and height when not tilted.
    width, height : float [mm]
        Of the opening.

    Returns
    -------
    float or None [deg]
        0 when it fits as it stands, 90 when it only fits turned over. Exact: with the longer
        side along the width, the height needed rises with the tilt up to 45 degrees and more,
        so the least tilt that fits the width is the one to try.
    """
    if up > across:
        return least_tilt_deg(up, across, height, width)
    if across <= width + SAME and up <= height + SAME:
        return 0.0
    if across > width >= up:
        tilt = atan2(up, across) + acos(width / hypot(across, up))
        if across * sin(tilt) + up * cos(tilt) <= height + SAME:
            return degrees(tilt)
    if up <= width + SAME and across <= height + SAME:
        return 90.0
    return None


def ways_through(box: Box, width: float, height: float, depth: float = inf) -> tuple[Way, ...]:
    """Every way in which a box goes straight into a space; if none, the tilted ways.

    Parameters
    ----------
    box : tuple of three floats [mm]
    width, height : float [mm]
        Clear width and height of the opening, all the way in.
    depth : float [mm]
        Behind the opening.

    Returns
    -------
    tuple of Way
        Empty when it does not go in.

    Raises
    ------
    InputError
        When a size is not above zero.
    """
    long, wide, high = box
    positive("box", length=long, width=wide, height=high)
    positive("opening", width=width, height=height, depth=depth)
    space = (width, height, depth)
    sides: list[Box] = sorted({(a, b, c) for a, b, c in permutations(box)}, reverse=True)
    straight = [side for side in sides if _fits(side, space)]
    if straight:
        return tuple(Way(a, b, c) for a, b, c in straight)
    found: list[Way] = []
    axes: tuple[Axis, ...] = ("depth", "width", "height")
    for axis in axes:
        found += [way for side in sides for way in _tilted(side, space, axis)]
    return tuple(found)


def _fits(side: Box, space: Box) -> bool:
    return all(one <= two + SAME for one, two in zip(side, space, strict=True))


def _tilted(side: Box, space: Box, axis: Axis) -> list[Way]:
    """The tilted way about an axis, if there is one strictly between 0 and 90 degrees."""
    along = ("width", "height", "depth").index(axis)
    one, two = (place for place in range(3) if place != along)
    if side[along] > space[along] + SAME:
        return []
    if side[one] < side[two]:
        return []
    limit = min(space[one], 1e9), min(space[two], 1e9)
    tilt = least_tilt_deg(side[one], side[two], *limit)
    if tilt is None or not 0 < tilt < 90:
        return []
    a, b, c = side
    return [Way(a, b, c, axis, tilt)]
