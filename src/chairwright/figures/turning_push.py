"""Turning a chair on the spot and holding it on a cross slope: torques and rim forces.

Lengths in mm, torques in N m. Theory: docs/theory/rolling.md.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Literal

import numpy as np

from chairwright.chair.pose import track_growth
from chairwright.chair.rows import Rows
from chairwright.figures.balance import GRAVITY_MPS2
from chairwright.figures.band import Band, corner_band, known
from chairwright.figures.mass import MassBox
from chairwright.figures.rolling import Coefficients, caster_load_share, coefficients, surfaces
from chairwright.mass_points import FloatArray

Patch = Literal["uniform", "hertz", "line"]
PATCHES: dict[Patch, float] = {"uniform": 2.0 / 3.0, "hertz": 3.0 * np.pi / 16.0, "line": 0.25}
"""Share of friction times load times patch size that a tyre's patch turns against."""


def differential_inertia_kgm2(
    body_kgm2: float,
    body_kg: float,
    ahead_mm: float,
    *,
    wheel_kg: float,
    wheel_spin_kgm2: float,
    wheel_upright_kgm2: float,
    track_mm: float,
    radius_mm: float,
) -> float:
    """Yaw inertia about the middle of the axle of a body on two wheels turned against each other.

    Parameters
    ----------
    body_kgm2 : float [kg m2]
        Of all but the rear wheels, about its own centre of mass.
    body_kg : float [kg]
    ahead_mm : float [mm]
        Its centre of mass ahead of the axle.
    wheel_kg, wheel_spin_kgm2, wheel_upright_kgm2 : float
        Of one rear wheel: mass, inertia about its axle and about its upright diameter.
    track_mm, radius_mm : float [mm]

    Returns
    -------
    float [kg m2]

    References
    ----------
    First principles: parallel axes to the axle's middle, not the centre of mass; each wheel spins
    T / 2R times as fast as the chair turns.
    """
    half, radius = track_mm / 2000.0, radius_mm / 1000.0
    wheels = 2.0 * (
        wheel_upright_kgm2 + wheel_kg * half**2 + wheel_spin_kgm2 * (half / radius) ** 2
    )
    return body_kgm2 + body_kg * (ahead_mm / 1000.0) ** 2 + wheels


def downhill_moment_nm(mass_kg: FloatArray, x_mm: FloatArray, cross_deg: float) -> FloatArray:
    """Moment that turns a chair downhill on a cross slope [N m]; negative turns it uphill.

    Parameters
    ----------
    mass_kg : ndarray [kg]
    x_mm : ndarray [mm]
        Centre of mass ahead of the rear axle.
    cross_deg : float [deg]

    Returns
    -------
    ndarray [N m]

    References
    ----------
    McLaurin & Brubaker 1991 (restated by a secondary source): W sin a x.
    """
    return np.asarray(mass_kg * GRAVITY_MPS2 * np.sin(np.radians(cross_deg)) * x_mm / 1000.0)


def pivot_torque_nm(
    mass_kg: FloatArray,
    caster_share: FloatArray,
    wheels: Coefficients,
    *,
    wheelbase_mm: FloatArray,
    track_mm: FloatArray,
    caster_track_mm: FloatArray,
) -> FloatArray:
    """Torque that keeps a chair turning on the spot against the rolling of its wheels [N m].

    Parameters
    ----------
    mass_kg : ndarray [kg]
    caster_share : ndarray
        Share of the load on the casters.
    wheels : Coefficients
    wheelbase_mm, track_mm, caster_track_mm : ndarray [mm]

    Returns
    -------
    ndarray [N m]
        Casters turned into the circle; the tyres' scrub is left out.

    References
    ----------
    First principles: W [(1 - f) mu_r T / 2 + f mu_f sqrt(L2 + (Tf / 2)2)].
    """
    casters_out = np.hypot(wheelbase_mm, caster_track_mm / 2.0)
    rear = (1.0 - caster_share) * wheels.rear * track_mm / 2.0
    arm_mm = rear + caster_share * wheels.casters * casters_out
    return np.asarray(mass_kg * GRAVITY_MPS2 * arm_mm / 1000.0)


def scrub_torque_nm(
    friction: float, load_n: FloatArray | float, size_mm: FloatArray | float, patch: Patch
) -> FloatArray:
    """Torque that turns a standing tyre on its patch [N m].

    Parameters
    ----------
    friction : float
        Of tyre on floor.
    load_n : ndarray or float [N]
    size_mm : ndarray or float [mm]
        Radius of a round patch, length of a line.
    patch : {"uniform", "hertz", "line"}

    Returns
    -------
    ndarray [N m]

    References
    ----------
    First principles: 2/3 mu N a with even pressure, 3 pi/16 mu N a with that of Hertz, mu N b / 4
    on a line.
    """
    return np.asarray(PATCHES[patch] * friction * np.asarray(load_n) * size_mm / 1000.0)


def rim_force_for_torque_n(
    torque_nm: FloatArray,
    track_mm: FloatArray,
    wheel_mm: FloatArray,
    rim_mm: FloatArray,
    hands: FloatArray | float = 2.0,
) -> FloatArray:
    """Force along the rim, for each hand, that turns a chair about its axle's middle [N].

    Parameters
    ----------
    torque_nm : ndarray [N m]
    track_mm : ndarray [mm]
        Rear track.
    wheel_mm, rim_mm : ndarray [mm]
        Radius of rear wheel and hand rim.
    hands : ndarray or float
        Two share it, one forward and one back; one does it alone.

    Returns
    -------
    ndarray [N]
        NaN without a rim or a hand that pushes.

    References
    ----------
    First principles: torque / T x R / rim radius for each of two hands.
    """
    there = (rim_mm > 0) & (np.asarray(hands) > 0)
    arm_mm2 = np.where(there, track_mm * rim_mm * hands / 2.0, np.nan)
    return np.asarray(torque_nm * 1000.0 * wheel_mm / arm_mm2)


def downhill_moment_per_deg(rows: Rows, box: MassBox) -> Band:
    """Moment that turns the chair downhill for each degree of cross slope [N m]: W sin(1) x."""
    return corner_band(lambda mass, x: downhill_moment_nm(mass, x, 1.0), box.mass, box.x)


def tracks(rows: Rows) -> tuple[Band, Band]:
    """Rear and caster track [mm]; while seat width or arm support are open, all that the line has.

    Parameters
    ----------
    rows : Rows

    Returns
    -------
    tuple of Band
    """
    if "rear_track" in rows.columns:
        return known(rows["rear_track"]), known(rows["caster_track"])
    width = known(rows["width"]) if "width" in rows.columns else _ends(rows, "seat_width", "width")
    hub = _ends(rows, "arm_support", "hub_outset")
    more = 2 * rows.option("camber", "hub_extra_mm")
    more = more + track_growth(rows["rear_radius"], rows["camber"])
    rear = corner_band(lambda wide, out: wide + 2 * out + more, width, hub)
    return rear, corner_band(lambda wide: wide + 2 * rows.line.caster_outset_mm, width)


def _ends(rows: Rows, choice: str, key: str) -> Band:
    column = rows.line.column(choice, f"{key}_mm")
    return Band(np.full(len(rows), column.min()), np.full(len(rows), column.max()))


def cross_push(cross_deg: float) -> Callable[[Rows, MassBox], Band]:
    """Formula of what each hand adds or takes back to hold a line on a cross slope [N]."""

    def band(rows: Rows, box: MassBox) -> Band:
        def force(mass: FloatArray, x: FloatArray, track: FloatArray) -> FloatArray:
            return _rim_force(rows, downhill_moment_nm(mass, x, cross_deg), track)

        return corner_band(force, box.mass, box.x, tracks(rows)[0])

    return band


def _rim_force(rows: Rows, torque_nm: FloatArray, track_mm: FloatArray) -> FloatArray:
    """Force along the rim, for each hand, of a torque about the axle's middle [N]."""
    wheel, rim = rows["rear_radius"], rows["rim_radius"]
    return rim_force_for_torque_n(torque_nm, track_mm, wheel, rim, rows["hands"])


def pivot_push(surface: str) -> Callable[[Rows, MassBox], Band]:
    """Formula of the rim force that keeps the chair turning on the spot on one surface [N]."""

    def band(rows: Rows, box: MassBox) -> Band:
        rear, casters = coefficients(rows)
        adds = surfaces()[surface].adds
        wheels = Coefficients(rear + adds, casters + adds)

        def force(
            mass: FloatArray, x: FloatArray, track: FloatArray, caster_track: FloatArray
        ) -> FloatArray:
            share = caster_load_share(x, np.zeros_like(x), rows["wheelbase"], 0.0)
            torque = pivot_torque_nm(
                mass,
                share,
                wheels,
                wheelbase_mm=rows["wheelbase"],
                track_mm=track,
                caster_track_mm=caster_track,
            )
            return _rim_force(rows, torque, track)

        return corner_band(force, box.mass, box.x, *tracks(rows))

    return band
