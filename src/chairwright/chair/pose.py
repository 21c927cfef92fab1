"""Where the frame comes to rest on a level floor, and the wheel geometry that follows.

Frame axes: origin at the seat corner. Floor axes: origin on the floor under the middle of the
rear-axle line. Both have x forward and z up. Pitch is positive nose-up.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from chairwright.mass_points import FloatArray


class Pose(NamedTuple):
    """Attitude of the frame, arrays of one shape; angles [rad], lengths [mm]."""

    pitch_rad: FloatArray
    wheelbase_mm: FloatArray


def settle(
    ahead_mm: FloatArray,
    above_mm: FloatArray,
    rear_height_mm: FloatArray,
    caster_radius: FloatArray,
) -> Pose:
    """Pitch and wheelbase of a frame standing on its four wheels.

    Parameters
    ----------
    ahead_mm, above_mm : ndarray [mm]
        Caster axle minus rear axle in frame axes, casters trailing.
    rear_height_mm : ndarray [mm]
        Height of the rear axle above the floor, camber included.
    caster_radius : ndarray [mm]

    Returns
    -------
    Pose
        NaN where no attitude puts both axles at their heights or the casters lie behind the axle.

    References
    ----------
    First principles: the line between the axles must rise by the difference of their heights.
    """
    length = np.hypot(ahead_mm, above_mm)
    rise = caster_radius - rear_height_mm
    with np.errstate(invalid="ignore", divide="ignore"):
        pitch = np.arcsin(rise / length) - np.arctan2(above_mm, ahead_mm)
        wheelbase = np.sqrt(length**2 - rise**2)
    standing = (ahead_mm > 0) & (np.abs(rise) < length)
    return Pose(np.where(standing, pitch, np.nan), np.where(standing, wheelbase, np.nan))


def caster_axle(
    crown_x_mm: FloatArray,
    crown_z_mm: FloatArray,
    trail_mm: FloatArray,
    drop_mm: FloatArray,
    stem_rad: FloatArray,
) -> tuple[FloatArray, FloatArray]:
    """Caster axle in frame axes, the caster trailing [mm].

    Parameters
    ----------
    crown_x_mm, crown_z_mm : ndarray [mm]
        Where the stem meets the fork crown.
    trail_mm, drop_mm : ndarray [mm]
        Axle behind the stem and below the crown, along and square to the stem.
    stem_rad : ndarray [rad]
        Stem in the frame, top leaning back positive.

    Returns
    -------
    tuple of ndarray [mm]
        x and z.

    References
    ----------
    First principles: the fork turns about the crown with the stem.
    """
    sin, cos = np.sin(stem_rad), np.cos(stem_rad)
    return (
        crown_x_mm - trail_mm * cos + drop_mm * sin,
        crown_z_mm - trail_mm * sin - drop_mm * cos,
    )


def rear_axle_height(radius_mm: FloatArray, camber_deg: FloatArray) -> FloatArray:
    """Height of the hub centre of a cambered wheel [mm]: R cos(camber)."""
    return radius_mm * np.cos(np.radians(camber_deg))


def track_growth(radius_mm: FloatArray, camber_deg: FloatArray) -> FloatArray:
    """How much camber widens the track, both wheels together [mm]: 2 R sin(camber)."""
    return 2.0 * radius_mm * np.sin(np.radians(camber_deg))


def toe_out_deg(camber_deg: FloatArray, pitch_rad: FloatArray) -> FloatArray:
    """Toe per wheel [deg], out when the frame tilts back.

    References
    ----------
    First principles, atan(tan(camber) sin(pitch)); the sign agrees with Trudel 1995.
    """
    toe = np.arctan(np.tan(np.radians(camber_deg)) * np.sin(pitch_rad))
    return np.asarray(np.degrees(toe))


def floor_trail(
    trail_mm: FloatArray, caster_radius: FloatArray, stem_rad: FloatArray
) -> FloatArray:
    """Caster trail on the floor with the stem tilted [mm].

    Parameters
    ----------
    trail_mm : ndarray [mm]
        Axle behind the stem, square to the stem.
    caster_radius : ndarray [mm]
    stem_rad : ndarray [rad]
        Stem off the vertical, top leaning back positive.

    Returns
    -------
    ndarray [mm]
        Stem axis where it meets the floor, ahead of the tyre contact.

    References
    ----------
    First principles: t / cos(d) + rc tan(d).
    """
    return trail_mm / np.cos(stem_rad) + caster_radius * np.tan(stem_rad)


def swing_radius(
    trail_mm: FloatArray, caster_radius: FloatArray, width_mm: FloatArray
) -> FloatArray:
    """Radius of the circle that a swivelling caster sweeps about its stem, in plan [mm].

    Parameters
    ----------
    trail_mm, caster_radius : ndarray [mm]
    width_mm : ndarray [mm]
        Of the caster's tyre.

    Returns
    -------
    ndarray [mm]

    References
    ----------
    First principles: the farthest corner of a box as long and as wide as the caster.
    """
    return np.hypot(trail_mm + caster_radius, width_mm / 2.0)


def turned(
    x_mm: FloatArray, z_mm: FloatArray, sin: FloatArray, cos: FloatArray
) -> tuple[FloatArray, FloatArray]:
    """Turn side-view vectors nose-up by the pitch [mm].

    Parameters
    ----------
    x_mm, z_mm : ndarray [mm]
        Forward and up.
    sin, cos : ndarray
        Of the pitch.

    Returns
    -------
    tuple of ndarray [mm]
        Forward and up after the turn.
    """
    return x_mm * cos - z_mm * sin, x_mm * sin + z_mm * cos
