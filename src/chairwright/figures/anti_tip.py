"""Anti-tip device: when it touches, what it is worth, and whether it can touch at all."""

from __future__ import annotations

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.balance import rear_free
from chairwright.figures.band import Band, corner_band
from chairwright.figures.mass import MassBox
from chairwright.mass_points import FloatArray


def pitch_to_contact(
    behind_mm: FloatArray, wheel_height_mm: FloatArray, wheel_radius: FloatArray, axle: FloatArray
) -> FloatArray:
    """Pitch about the rear axle until the device's wheel touches the floor [rad].

    Parameters
    ----------
    behind_mm : ndarray [mm]
        Device wheel centre behind the rear axle.
    wheel_height_mm : ndarray [mm]
        Device wheel centre above the floor.
    wheel_radius, axle : ndarray [mm]
        Device wheel radius; rear axle height.

    Returns
    -------
    ndarray [rad]
        NaN when it can never touch or there is no device; negative when it stands in the floor.

    References
    ----------
    First principles: -b sin p + (c + ra - R) cos p = ra - R.
    """
    below = wheel_height_mm - axle
    reach = np.hypot(behind_mm, below)
    with np.errstate(invalid="ignore"):
        return np.asarray(np.arccos((wheel_radius - axle) / reach) - np.arctan2(behind_mm, below))


def contact_pitch(rows: Rows) -> FloatArray:
    """Pitch until the device touches [rad], shape (n,)."""
    return pitch_to_contact(
        -rows["device_x"], rows["device_z"], rows["device_radius"], rows["rear_height"]
    )


def contact_pitch_deg(rows: Rows, occupant: Occupant) -> FloatArray:
    """Pitch until the device touches [deg], shape (n,)."""
    return np.degrees(contact_pitch(rows))


def over_device(rows: Rows, box: MassBox) -> Band:
    """Angle at which the chair, resting on the device, tips over it [deg].

    References
    ----------
    First principles: the centre of mass, pitched about the axle until contact, over the
    device's wheel: atan(distance / (height - ra)).
    """
    pitch = contact_pitch(rows)
    sin, cos = np.sin(pitch), np.cos(pitch)
    axle, radius = rows["rear_height"], rows["device_radius"]
    device = rows["device_x"] * cos - (rows["device_z"] - axle) * sin

    def angle(x: FloatArray, z: FloatArray) -> FloatArray:
        along = x * cos - (z - axle) * sin - device
        up = x * sin + (z - axle) * cos + axle - radius
        return np.asarray(np.degrees(np.arctan2(along, up)))

    return corner_band(angle, box.x, box.z)


def gain(rows: Rows, box: MassBox) -> Band:
    """What the device adds to the chair's own rearward angle, wheels free [deg]."""
    device, own = over_device(rows, box), rear_free(rows, box)
    return corner_band(lambda a, b: a - b, device, own)
