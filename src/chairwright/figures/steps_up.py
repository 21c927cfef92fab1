"""Over thresholds and up kerbs: push at the axle, tip lever, pitch. mm, N, degrees.

Theory: docs/theory/rolling.md.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.balance import GRAVITY_MPS2
from chairwright.figures.band import Band, corner_band
from chairwright.figures.mass import MassBox
from chairwright.mass_points import FloatArray

TIP_LEVER_MM = 250.0
"""How far a carer's foot on the tip lever works behind the axle (common practice, no source)."""


def step_push_over_load(radius_mm: FloatArray, step_mm: float) -> FloatArray:
    """Slow level push at the axle that rolls a wheel over a step, over the load on it.

    Parameters
    ----------
    radius_mm : ndarray [mm]
    step_mm : float [mm]

    Returns
    -------
    ndarray
        NaN for a step as high as the axle or higher: no push does it.

    References
    ----------
    First principles, moments about the step's edge: sqrt(s (2r - s)) / (r - s).
    """
    radius = np.asarray(radius_mm, dtype=float)
    rolls = np.where(radius > step_mm, radius, np.nan)
    return np.asarray(np.sqrt(step_mm * (2.0 * rolls - step_mm)) / (rolls - step_mm))


def lever_force_n(
    mass_kg: FloatArray,
    x_mm: FloatArray,
    above_axle_mm: FloatArray,
    lever_mm: float = TIP_LEVER_MM,
    pitch_deg: float = 0.0,
) -> FloatArray:
    """Force straight down on a lever behind the axle that holds the casters up [N].

    Parameters
    ----------
    mass_kg : ndarray [kg]
        All but the rear wheels.
    x_mm, above_axle_mm : ndarray [mm]
        Its centre of mass ahead of and above the axle, before it is tipped.
    lever_mm : float [mm]
        Where the force works behind the axle.
    pitch_deg : float [deg]

    Returns
    -------
    ndarray [N]

    References
    ----------
    First principles: m g (x cos p - (h - R) sin p) / (lever cos p).
    """
    sin, cos = np.sin(np.radians(pitch_deg)), np.cos(np.radians(pitch_deg))
    over = x_mm * cos - above_axle_mm * sin
    return np.asarray(mass_kg * GRAVITY_MPS2 * over / (lever_mm * cos))


def kerb_pitch_deg(wheelbase_mm: FloatArray, kerb_mm: float) -> FloatArray:
    """Pitch that raises the casters by a kerb's height [deg]: asin(H / L); NaN beyond L."""
    with np.errstate(invalid="ignore"):
        return np.asarray(np.degrees(np.arcsin(kerb_mm / wheelbase_mm)))


def caster_step(step_mm: float) -> Callable[[Rows, MassBox], Band]:
    """Formula of the push that rolls both casters over a step [N]."""

    def band(rows: Rows, box: MassBox) -> Band:
        steep = step_push_over_load(rows["caster_radius"], step_mm)

        def push(mass: FloatArray, x: FloatArray) -> FloatArray:
            load = mass * GRAVITY_MPS2 * np.clip(x / rows["wheelbase"], 0.0, 1.0)
            return np.asarray(load * steep)

        return corner_band(push, box.mass, box.x)

    return band


def rear_step(step_mm: float) -> Callable[[Rows, MassBox], Band]:
    """Formula of the push that rolls both rear wheels over a step [N]."""

    def band(rows: Rows, box: MassBox) -> Band:
        steep = step_push_over_load(rows["rear_radius"], step_mm)

        def push(mass: FloatArray, x: FloatArray) -> FloatArray:
            load = mass * GRAVITY_MPS2 * np.clip(1.0 - x / rows["wheelbase"], 0.0, 1.0)
            return np.asarray(load * steep)

        return corner_band(push, box.mass, box.x)

    return band


def tip_lever(rows: Rows, box: MassBox) -> Band:
    """Force down on a lever 250 mm behind the axle that begins to lift the casters [N]."""
    wheels = rows["wheel_mass"]

    def force(mass: FloatArray, x: FloatArray) -> FloatArray:
        return lever_force_n(mass - wheels, x, np.zeros_like(x))

    return corner_band(force, box.mass, box.tilting_x)


def pitch_for(kerb_mm: float) -> Callable[[Rows, Occupant], FloatArray]:
    """Formula of the pitch that raises the casters by a kerb's height [deg]."""

    def formula(rows: Rows, occupant: Occupant) -> FloatArray:
        return kerb_pitch_deg(rows["wheelbase"], kerb_mm)

    return formula
