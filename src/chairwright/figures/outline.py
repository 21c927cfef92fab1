"""The outline in plan that the length and turning figures are taken from."""

from __future__ import annotations

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.chair.shape import Point
from chairwright.figures.space import Corner, front_corners, rear_corners


def plan_outline(rows: Rows) -> tuple[Point, ...]:
    """Outermost points of one occupied chair in plan, both sides, casters trailing.

    Parameters
    ----------
    rows : Rows, shape (1,)
        A complete set-up.

    Returns
    -------
    tuple of Point [mm]
        Floor axes: ahead of the rear axle, left of the mid-plane.
    """
    corners = (*front_corners(rows), *rear_corners(rows))
    points = [(float(x[0]), float(y[0])) for x, y in corners]
    return (*points, *((x, -y) for x, y in points))


def corners_of(rows: Rows) -> tuple[Corner, ...]:
    """Outermost points of occupied chairs in plan, as few as say the same.

    Of points at one distance from the mid-plane only the farthest ahead, or behind, counts: the
    others lie between it and the widest place over the axle.

    Parameters
    ----------
    rows : Rows, shape (n,)
        Complete set-ups, or unfinished ones with feet, plates and device placed.

    Returns
    -------
    tuple of (x, distance from the mid-plane), shape (n,) each [mm]
    """
    *feet, caster, rim, middle = front_corners(rows)
    tyre, rim_behind, device, handle, _ = rear_corners(rows)
    foremost = np.maximum.reduce([x for x, _ in feet]) if feet else np.zeros(len(rows))
    outer = feet[0][1] if feet else middle[1]
    behind = np.minimum(device[0], handle[0])
    return ((foremost, outer), caster, rim, middle, tyre, rim_behind, (behind, device[1]))
