"""What it takes to keep a chair rolling: per wheel from its load, tyre, radius, surface and toe.

Air drag and bearings are left out: at everyday speed the tyres are nearly all of it.
Theory: docs/theory/rolling.md.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Literal, NamedTuple

import numpy as np

from chairwright.chair.pose import toe_out_deg
from chairwright.chair.rows import Rows
from chairwright.figures.balance import GRAVITY_MPS2
from chairwright.figures.band import Band, corner_band
from chairwright.figures.mass import MassBox
from chairwright.mass_points import FloatArray
from chairwright.tables.load import load_table

Way = Literal["level", "up", "down", "cross"]

TOE_SHARE = 0.255
"""Rolling resistance grows by 25.5 percent for 1 degree of toe, as a parabola (Vander Wiel 2016,
read in the abstract only)."""

START_MPS2 = 0.5
"""Acceleration of a calm start (common practice, no source)."""

FULL_PCT = 100.0
HARD = "hard"
CARPET = "carpet"


@dataclass(frozen=True)
class Surface:
    """A kind of floor.

    Parameters
    ----------
    code, label : str
    adds : float
        Added to the rolling coefficient of the whole chair.
    source, certainty : str
    """

    code: str
    label: str
    adds: float
    source: str
    certainty: str


@cache
def surfaces() -> dict[str, Surface]:
    """Every kind of floor by its code."""
    return {
        row["surface"]: Surface(
            row["surface"], row["label"], float(row["adds"]), row["source"], row["certainty"]
        )
        for row in load_table("rolling", "surfaces")
    }


class Coefficients(NamedTuple):
    """Rolling resistance over load, of the rear wheels and of the casters, shape (n,) each."""

    rear: FloatArray
    casters: FloatArray


def coefficient(length_mm: FloatArray, radius_mm: FloatArray) -> FloatArray:
    """Rolling resistance over load of one wheel: rolling length over radius."""
    return np.asarray(length_mm / radius_mm)


def toe_factor(toe_deg: FloatArray) -> FloatArray:
    """How much toe, in or out, multiplies the resistance of the rear wheels.

    References
    ----------
    Vander Wiel 2016 (read in the abstract only): +25.5 percent at 1 degree, parabolic.
    """
    return np.asarray(1.0 + TOE_SHARE * np.square(toe_deg))


def pressure_factor(percent: float) -> float:
    """How much lost pressure multiplies the resistance of an air tyre.

    Parameters
    ----------
    percent : float
        Pressure as a percentage of the rated one, 0 to 100.

    References
    ----------
    Sawatzky 2005 (restated by a secondary source; energy of the person, taken for the tyre's
    resistance), Fuss and Chua (flat tyre, read in the abstract only). Between their values in
    a straight line (common practice, no source).
    """
    rows = load_table("rolling", "tyre_pressure")
    known = sorted((float(row["pressure_pct_of_rated"]), float(row["factor"])) for row in rows)
    at, factors = np.array(known).T
    return float(np.interp(percent, at, factors))


def caster_load_share(
    x_mm: FloatArray, z_mm: FloatArray, wheelbase_mm: FloatArray, slope_deg: float
) -> FloatArray:
    """Share of what presses on the floor that the casters carry, on a slope uphill.

    Parameters
    ----------
    x_mm, z_mm : ndarray [mm]
        Centre of mass ahead of the rear axle and above the floor.
    wheelbase_mm : ndarray [mm]
    slope_deg : float [deg]
        Uphill positive.

    Returns
    -------
    ndarray
        From 0 to 1: beyond, the chair tips.

    References
    ----------
    First principles: (x - z tan a) / L, whoever pushes at the rim; the place of a carer's hands
    is left out.
    """
    share = (x_mm - z_mm * np.tan(np.radians(slope_deg))) / wheelbase_mm
    return np.asarray(np.clip(share, 0.0, 1.0))


def floor_push_n(
    mass_kg: FloatArray,
    caster_share: FloatArray,
    wheels: Coefficients,
    adds: float = 0.0,
    slope_deg: float = 0.0,
) -> FloatArray:
    """Push along the floor that keeps a chair rolling at a steady speed [N].

    Parameters
    ----------
    mass_kg : ndarray [kg]
    caster_share : ndarray
        Share of the load on the casters.
    wheels : Coefficients
    adds : float
        What the surface adds to the coefficient.
    slope_deg : float [deg]
        Uphill positive; downhill a negative push holds back.

    Returns
    -------
    ndarray [N]

    References
    ----------
    First principles: sum of N_i lam_i / r_i over the wheels, and W sin a.
    """
    slope = np.radians(slope_deg)
    rolls = wheels.rear + (wheels.casters - wheels.rear) * caster_share + adds
    return np.asarray(mass_kg * GRAVITY_MPS2 * (rolls * np.cos(slope) + np.sin(slope)))


def start_push_n(
    steady_n: FloatArray,
    mass_kg: FloatArray,
    spin_inertia_kgm2: FloatArray,
    radius_mm: FloatArray,
    start_mps2: float = START_MPS2,
) -> FloatArray:
    """Push along the floor that sets a chair moving [N].

    Parameters
    ----------
    steady_n : ndarray [N]
        Push that keeps it rolling.
    mass_kg : ndarray [kg]
    spin_inertia_kgm2 : ndarray [kg m2]
        Of both rear wheels.
    radius_mm : ndarray [mm]
        Of the rear wheels.
    start_mps2 : float [m/s2]

    Returns
    -------
    ndarray [N]

    References
    ----------
    First principles: steady push and (m + I / R2) a.
    """
    return np.asarray(
        steady_n + (mass_kg + spin_inertia_kgm2 / np.square(radius_mm / 1000.0)) * start_mps2
    )


def per_hand_n(
    push_n: FloatArray, wheel_mm: FloatArray, rim_mm: FloatArray, hands: FloatArray | float = 2.0
) -> FloatArray:
    """Force along the rim for each hand that pushes [N]; the mean over a steady cycle.

    Parameters
    ----------
    push_n : ndarray [N]
        Along the floor.
    wheel_mm, rim_mm : ndarray [mm]
        Radius of rear wheel and hand rim.
    hands : ndarray or float
        Number of hands that push.

    Returns
    -------
    ndarray [N]
        NaN without a rim or a hand that pushes.
    """
    arm = np.where((rim_mm > 0) & (np.asarray(hands) > 0), rim_mm * hands, np.nan)
    return np.asarray(push_n * wheel_mm / arm)


def coefficients(rows: Rows, pressure_pct: float = FULL_PCT) -> Coefficients:
    """Rolling coefficients of the chosen wheels on a hard floor.

    Parameters
    ----------
    rows : Rows
    pressure_pct : float
        Of air tyres at the rear, as a percentage of the rated pressure.
    """
    toe = toe_factor(toe_out_deg(rows["camber"], rows["pitch"]))
    soft = pressure_factor(pressure_pct)
    tyre = np.where(rows.option("rear_wheel", "air") > 0, soft, 1.0) if soft != 1.0 else 1.0
    rear = coefficient(rows.option("rear_wheel", "rolling_mm"), rows["rear_radius"])
    casters = coefficient(rows.option("caster", "rolling_mm"), rows["caster_radius"])
    return Coefficients(rear * toe * tyre, casters)


def floor_push_band(
    rows: Rows, box: MassBox, surface: str, slope_deg: float = 0.0, pressure_pct: float = FULL_PCT
) -> Band:
    """Push along the floor that keeps it rolling [N].

    Parameters
    ----------
    rows : Rows
    box : MassBox
    surface : str
        Code in `surfaces`.
    slope_deg : float [deg]
        Uphill positive.
    pressure_pct : float
    """
    wheels, adds = coefficients(rows, pressure_pct), surfaces()[surface].adds

    def push(mass: FloatArray, x: FloatArray, z: FloatArray) -> FloatArray:
        share = caster_load_share(x, z, rows["wheelbase"], slope_deg)
        return floor_push_n(mass, share, wheels, adds, slope_deg)

    return corner_band(push, box.mass, box.x, box.z)


def keeps_rolling(surface: str) -> Callable[[Rows, MassBox], Band]:
    """Formula of the push along a level floor of one surface [N]."""

    def band(rows: Rows, box: MassBox) -> Band:
        return floor_push_band(rows, box, surface)

    return band
