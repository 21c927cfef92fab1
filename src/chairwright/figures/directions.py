"""The tipping angle of one set-up in every direction, for the polar chart."""

from __future__ import annotations

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.balance import support_edges, tip_angle
from chairwright.figures.mass import mass_box
from chairwright.mass_points import FloatArray

STEP_DEG = 5


def tip_angles(rows: Rows) -> tuple[FloatArray, FloatArray]:
    """Tipping angle, wheels locked, for every 5 degrees of direction.

    Parameters
    ----------
    rows : Rows, shape (1,)
        A complete set-up.

    Returns
    -------
    tuple of ndarray, shape (72,) [deg]
        Directions in which the floor falls away, from straight ahead, left positive, and the
        slope at which the chair tips there.
    """
    box = mass_box(rows)
    edges = support_edges(rows["wheelbase"], rows["rear_track"], rows["caster_track"])
    directions = np.arange(0.0, 360.0, STEP_DEG)
    centre = (box.x.low, box.y.low, box.z.low)
    return directions, tip_angle(edges, *centre, directions)
