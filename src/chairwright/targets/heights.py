"""Small formulas between seat heights, the lower leg and the seat angle."""

from __future__ import annotations

import math


def seat_height_for_clearance(
    lower_leg_mm: float, clearance_mm: float, leg_angle_deg: float = 90.0
) -> float:
    """Front seat height that leaves a clearance under the foot [mm].

    Parameters
    ----------
    lower_leg_mm : float [mm]
        Seat to sole, shoe on.
    clearance_mm : float [mm]
        Wanted under the sole.
    leg_angle_deg : float [deg]
        Lower leg to the horizontal; 90 hangs straight down.

    Returns
    -------
    float [mm]

    References
    ----------
    First principles: clearance = front seat height - lower leg x sin(leg angle).

    Examples
    --------
    >>> seat_height_for_clearance(406.4, 50.8)
    457.2
    """
    return lower_leg_mm * math.sin(math.radians(leg_angle_deg)) + clearance_mm


def drop_angle_deg(drop_mm: float, depth_mm: float) -> float:
    """Seat angle of a seat whose rear edge is lower than its front edge [deg].

    Parameters
    ----------
    drop_mm : float [mm]
        Front height less rear height.
    depth_mm : float [mm]
        Along the seat; must not be less than the drop.

    Returns
    -------
    float [deg]

    References
    ----------
    First principles: sin(seat angle) = drop / depth.

    Examples
    --------
    >>> round(drop_angle_deg(20.0, 430.0), 2)
    2.67
    """
    return math.degrees(math.asin(drop_mm / depth_mm))
