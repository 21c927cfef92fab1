"""What a chair on its wheels cannot be, whatever anybody targets."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.occupant import SIDES
from chairwright.chair.rows import Rows

PITCH_RANGE_DEG = (-5.0, 20.0)
"""Frame pitch that a chair can have: seat slopes of 0 to 20 degrees were studied (Thomas 2018);
5 degrees nose-down is a margin of ours (common practice, no source)."""


def buildable(rows: Rows) -> NDArray[np.bool_]:
    """Which set-ups stand on their four wheels with nothing in the floor.

    Only what the choices made so far settle is judged: the pitch, the footplates, the
    anti-tip wheels.

    Parameters
    ----------
    rows : Rows, shape (n,)

    Returns
    -------
    ndarray of bool, shape (n,)
    """
    low, high = np.radians(PITCH_RANGE_DEG)
    fine = (rows["pitch"] >= low) & (rows["pitch"] <= high)
    if "device_z" in rows.columns:
        fine &= ~(rows["device_z"] < rows["device_radius"])
    if "plate_x" in rows.columns:
        fine &= ~_plate_in_floor(rows)
    return np.asarray(fine)


def reason_not(rows: Rows, at: int = 0) -> str:
    """Why one set-up of ``rows`` is not buildable, in plain words; empty when it is.

    Parameters
    ----------
    rows : Rows, shape (n,)
    at : int
        Which one.
    """
    pitch = float(np.degrees(rows["pitch"][at]))
    if not PITCH_RANGE_DEG[0] <= pitch <= PITCH_RANGE_DEG[1]:
        low, high = PITCH_RANGE_DEG
        tilt = "cannot stand on its wheels" if np.isnan(pitch) else f"would tilt {pitch:.1f} deg"
        return f"the frame {tilt}; it must stay between {low:g} and {high:g} deg"
    if rows["device_z"][at] < rows["device_radius"][at]:
        return "the anti-tip wheel would stand in the floor; choose a higher hole"
    if _plate_in_floor(rows)[at]:
        return "the footplate would stand in the floor; choose a shorter hanger length"
    return ""


def _plate_in_floor(rows: Rows) -> NDArray[np.bool_]:
    fitted = np.logical_or.reduce([rows[f"plate_{side}"] > 0 for side in SIDES])
    bottom = rows["plate_z"] - rows["sole_plate_thickness"]
    rear = rows.to_floor(rows["plate_x"], bottom)[1]
    tip = rows.to_floor(rows["plate_x"] + rows["sole_plate_length"], bottom)[1]
    return np.asarray(fitted & (np.minimum(rear, tip) < 0))
