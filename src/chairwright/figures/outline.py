"""The outline in plan that the length and turning figures are taken from."""

from __future__ import annotations

from chairwright.chair.rows import Rows
from chairwright.chair.shape import Point
from chairwright.figures.space import front_corners, rear_corners


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
