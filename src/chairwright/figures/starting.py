"""What lifts wheels on the move: a push-off, a braking, a bend. Lengths in mm, angles in degrees.

Theory: docs/theory/rolling.md.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.balance import GRAVITY_MPS2
from chairwright.figures.band import Band, corner_band
from chairwright.figures.mass import MassBox
from chairwright.mass_points import FloatArray

KGM2_IN_KGMM2 = 1e6


def start_lift_mps2(
    x_mm: FloatArray, z_mm: FloatArray, spin_mm: FloatArray | float = 0.0, slope_deg: float = 0.0
) -> FloatArray:
    """Acceleration up a slope that takes the load off the casters [m/s2].

    Parameters
    ----------
    x_mm, z_mm : ndarray [mm]
        Centre of mass ahead of the rear axle and above the floor.
    spin_mm : ndarray or float [mm]
        Sum of I / (m r) over rear wheels and casters, see `spin_length_mm`.
    slope_deg : float [deg]
        Uphill positive.

    Returns
    -------
    ndarray [m/s2]

    References
    ----------
    First principles, checked against a physics engine in the tests:
    g (x cos a - h sin a) / (h + sum of I / (m r)).
    """
    sin, cos = np.sin(np.radians(slope_deg)), np.cos(np.radians(slope_deg))
    return np.asarray(GRAVITY_MPS2 * (x_mm * cos - z_mm * sin) / (z_mm + spin_mm))


def braking_lift_mps2(
    x_mm: FloatArray,
    z_mm: FloatArray,
    wheelbase_mm: FloatArray,
    spin_mm: FloatArray | float = 0.0,
    slope_deg: float = 0.0,
) -> FloatArray:
    """Braking down a slope that takes the load off the rear wheels [m/s2].

    Parameters
    ----------
    x_mm, z_mm : ndarray [mm]
        Centre of mass ahead of the rear axle and above the floor.
    wheelbase_mm : ndarray [mm]
    spin_mm : ndarray or float [mm]
        I / (m r) of the casters. The rear wheels bear nothing then, so the floor no longer
        slows their spin: they have no part in it.
    slope_deg : float [deg]
        Downhill positive.

    Returns
    -------
    ndarray [m/s2]

    References
    ----------
    First principles, checked against a physics engine in the tests:
    g ((L - x) cos a - h sin a) / (h + I / (m r)).
    """
    sin, cos = np.sin(np.radians(slope_deg)), np.cos(np.radians(slope_deg))
    over = (wheelbase_mm - x_mm) * cos - z_mm * sin
    return np.asarray(GRAVITY_MPS2 * over / (z_mm + spin_mm))


def bend_lift_mps(radius_mm: float, to_tip_line_mm: float, z_mm: float) -> float:
    """Speed in a bend that lifts the inner wheels [m/s].

    Parameters
    ----------
    radius_mm : float [mm]
        Of the bend.
    to_tip_line_mm : float [mm]
        Centre of mass to the line of the outer contacts.
    z_mm : float [mm]
        Centre of mass above the floor.

    Returns
    -------
    float [m/s]

    References
    ----------
    First principles: sqrt(g r s / h).
    """
    return float(np.sqrt(GRAVITY_MPS2 * radius_mm / 1000.0 * to_tip_line_mm / z_mm))


def spin_length_mm(
    spin_inertia_kgm2: FloatArray, mass_kg: FloatArray, radius_mm: FloatArray
) -> FloatArray:
    """What the spin of a pair of wheels adds to the height of the centre of mass [mm]: I / (m r).

    Parameters
    ----------
    spin_inertia_kgm2 : ndarray [kg m2]
        Of the pair.
    mass_kg : ndarray [kg]
        Of the whole chair.
    radius_mm : ndarray [mm]
    """
    return np.asarray(spin_inertia_kgm2 * KGM2_IN_KGMM2 / (mass_kg * radius_mm))


def _casters_spin(rows: Rows, mass_kg: FloatArray) -> FloatArray:
    inertia = rows.option("caster", "spin_inertia_kgm2")
    return spin_length_mm(inertia, mass_kg, rows["caster_radius"])


def start_acceleration(slope_deg: float) -> Callable[[Rows, MassBox], Band]:
    """Formula of the push-off that lifts the casters, uphill positive [m/s2]."""

    def band(rows: Rows, box: MassBox) -> Band:
        wheels = rows.option("rear_wheel", "spin_inertia_kgm2")

        def lift(x: FloatArray, z: FloatArray, mass: FloatArray) -> FloatArray:
            spin = spin_length_mm(wheels, mass, rows["rear_radius"])
            return start_lift_mps2(x, z, spin + _casters_spin(rows, mass), slope_deg)

        return corner_band(lift, box.x, box.z, box.mass)

    return band


def braking_deceleration(slope_deg: float) -> Callable[[Rows, MassBox], Band]:
    """Formula of the braking that lifts the rear wheels, downhill positive [m/s2]."""

    def band(rows: Rows, box: MassBox) -> Band:
        def lift(x: FloatArray, z: FloatArray, mass: FloatArray) -> FloatArray:
            spin = _casters_spin(rows, mass)
            return braking_lift_mps2(x, z, rows["wheelbase"], spin, slope_deg)

        return corner_band(lift, box.x, box.z, box.mass)

    return band
