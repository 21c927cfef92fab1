"""A place of the side view that may lie anywhere in a box of the frame, on the floor's axes."""

from __future__ import annotations

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.band import Band, known
from chairwright.mass_points import FloatArray


def floor_along(rows: Rows, x_mm: Band, z_mm: Band) -> Band:
    """Ends of how far ahead of the axle the place lies, shape (n,) [mm].

    Parameters
    ----------
    rows : Rows, shape (n,)
    x_mm, z_mm : Band, shape (n,)
        In frame axes.

    Returns
    -------
    Band
        Exact: the turn is a sum of one term of each, and each term has its ends at its band's.
    """
    ahead = _term(x_mm, rows["axle_x"], rows["cos_pitch"])
    back = _term(z_mm, rows["axle_z"], rows["sin_pitch"])
    low = ahead.low - back.high
    if ahead.low is ahead.high and back.low is back.high:
        return known(low)
    return Band(low, ahead.high - back.low)


def floor_height(rows: Rows, x_mm: Band, z_mm: Band) -> Band:
    """Ends of how high above the floor the place lies, shape (n,) [mm].

    Parameters
    ----------
    rows : Rows, shape (n,)
    x_mm, z_mm : Band, shape (n,)
        In frame axes.

    Returns
    -------
    Band
        Exact, as for `floor_along`.
    """
    raised = _term(x_mm, rows["axle_x"], rows["sin_pitch"])
    above = _term(z_mm, rows["axle_z"], rows["cos_pitch"])
    low = raised.low + above.low + rows["rear_height"]
    if raised.low is raised.high and above.low is above.high:
        return known(low)
    return Band(low, raised.high + above.high + rows["rear_height"])


def _term(band: Band, axle: FloatArray, factor: FloatArray) -> Band:
    """One axis of the place off the axle, times a number of each row."""
    first = (band.low - axle) * factor
    if band.low is band.high:
        return known(first)
    second = (band.high - axle) * factor
    return Band(np.fmin(first, second), np.fmax(first, second))
