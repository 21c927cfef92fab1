"""Tipping by a linear programme: how far the centre of mass can go before it leaves the feet."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import linprog

Array = NDArray[np.float64]


class Tipping(NamedTuple):
    """Where a chair tips: angle [deg], distance to go [mm], feet that still carry."""

    angle_deg: float
    reach_mm: float
    carrying: tuple[int, ...]


def tipping(feet_mm: Array, com_mm: tuple[float, float, float], direction_deg: float) -> Tipping:
    """Tipping angle on a floor that falls away in one direction.

    Parameters
    ----------
    feet_mm : ndarray, shape (feet, 2) [mm]
    com_mm : tuple of float [mm]
        x, y and height above the pivots.
    direction_deg : float
        From straight ahead, left positive.

    Returns
    -------
    Tipping

    References
    ----------
    Largest s such that com + s u is a mean, with shares of at least 0, of the feet;
    angle = atan(s / height). A free s makes it negative when the chair tips on the level.
    """
    x, y, height = com_mm
    ahead, left = np.cos(np.radians(direction_deg)), np.sin(np.radians(direction_deg))
    feet = len(feet_mm)
    equal = np.zeros((3, feet + 1))
    equal[:2, :feet] = feet_mm.T / 1000.0
    equal[:2, feet] = -ahead, -left
    equal[2, :feet] = 1.0
    cost = np.zeros(feet + 1)
    cost[feet] = -1.0
    bounds = [(0.0, None)] * feet + [(None, None)]
    found = linprog(cost, A_eq=equal, b_eq=[x / 1000.0, y / 1000.0, 1.0], bounds=bounds)
    if not found.success:
        msg = f"the floor never supports a centre of mass at {com_mm} towards {direction_deg}"
        raise ValueError(msg)
    reach = 1000.0 * float(found.x[feet])
    carrying = tuple(int(foot) for foot in np.nonzero(found.x[:feet] > 1e-9)[0])
    return Tipping(float(np.degrees(np.arctan2(reach, height))), reach, carrying)
