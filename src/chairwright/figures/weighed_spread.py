"""How far an occupant's centre of mass that was found on scales can be off in a set-up."""

from __future__ import annotations

import numpy as np

from chairwright.chair.weighed import COVERAGE, CentreWeighed
from chairwright.mass_points import FloatArray

POSTURE_SHARE = 0.2
"""How much of the model's own move of the body, from one set-up to the other, is not relied on:
a half width (common practice, no source)."""


def axes(weighed: CentreWeighed, modelled_at_mm: FloatArray) -> FloatArray:
    """Standard uncertainty along each axis of the covariance, shape (4, 4): mass, then place.

    Parameters
    ----------
    weighed : CentreWeighed
    modelled_at_mm : ndarray, shape (3,) [mm]
        Where the model has the occupant's centre of mass in this set-up, frame axes: the farther
        from where it was weighed, the less sure.
    """
    moved = (modelled_at_mm - np.array(weighed.modelled_at_mm)) * POSTURE_SHARE / COVERAGE
    covariance = np.array(weighed.covariance) + np.diag([0.0, *(moved**2)])
    scale = np.sqrt(np.diag(covariance))
    scale[scale == 0.0] = 1.0
    values, vectors = np.linalg.eigh(covariance / np.outer(scale, scale))
    return np.asarray((vectors * np.sqrt(np.clip(values, 0.0, None)) * scale[:, None]).T)
