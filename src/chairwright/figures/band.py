"""A figure's low and high end while some choices (or some measurements) are still open."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product
from typing import NamedTuple

import numpy as np

from chairwright.mass_points import FloatArray


class Band(NamedTuple):
    """Low and high end, arrays of one shape; both ends are one array when the value is known."""

    low: FloatArray
    high: FloatArray


def known(values: FloatArray) -> Band:
    """Band of a value that nothing still open can change."""
    return Band(values, values)


def merged(band: Band) -> Band:
    """The same band, known to be so when both ends are equal everywhere."""
    if band.low is band.high or not np.array_equal(band.low, band.high):
        return band
    return known(band.low)


def corner_band(formula: Callable[..., FloatArray], *bands: Band) -> Band:
    """Ends of a formula that is monotone in each argument on its own.

    Parameters
    ----------
    formula : callable
        Takes one array for each band; monotone in each argument with the others held, in
        whichever direction.
    *bands : Band

    Returns
    -------
    Band
        Exact ends over the box that the bands span.

    References
    ----------
    First principles: such a formula has its extremes over a box at the box's corners.
    """
    ends = [(band.low,) if band.low is band.high else (band.low, band.high) for band in bands]
    values = [formula(*corner) for corner in product(*ends)]
    if len(values) == 1:
        return known(values[0])
    low, high = values[0], values[0]
    for value in values[1:]:
        low, high = np.fmin(low, value), np.fmax(high, value)
    return Band(low, high)
