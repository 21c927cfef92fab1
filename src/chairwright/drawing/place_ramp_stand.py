"""The occupied chair on a ramp: where it stands, its margins, and its anti-tip device at the foot.

The ramp's foot is the origin; x goes the way the person looks, z up. Wheels are locked or held.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import atan, cos, degrees, inf, radians, sin, tan
from typing import Literal

import numpy as np

from chairwright.chair.shape import Point, Shape
from chairwright.drawing.balance import contact_xs, tipping_angles_deg
from chairwright.drawing.place_pose import turned_point
from chairwright.figures.anti_tip import pitch_to_contact

Facing = Literal["up", "down"]
FROM_FOOT_MM = 60.0
"""How far before the foot the casters stand when the chair comes down (drawing only)."""


@dataclass(frozen=True)
class Stand:
    """A chair standing on a slope in the way it looks.

    Parameters
    ----------
    facing : {"up", "down"}
    slope_deg : float [deg]
        Above zero.
    at : Point [mm]
        Point of the floor under the middle of the axle.
    """

    facing: Facing
    slope_deg: float
    at: Point

    @property
    def turn_deg(self) -> float:
        """Turn of the chair, nose up positive [deg]."""
        return self.slope_deg if self.facing == "up" else -self.slope_deg

    def place(self, point: Point) -> Point:
        """A point of the chair, side view, on the ramp [mm]."""
        return turned_point(point, self.turn_deg, self.at)

    def ground_mm(self, x: float) -> float:
        """Height of the floor, the ramp going on without end [mm]."""
        rising = x > 0.0 if self.facing == "up" else x < 0.0
        return abs(x) * tan(radians(self.slope_deg)) if rising else 0.0


def stand_on(shape: Shape, slope_deg: float, facing: Facing) -> Stand:
    """Stand a chair on a ramp: rear wheels in the foot when it goes up, casters near it when down.

    Parameters
    ----------
    shape : Shape
    slope_deg : float [deg]
    facing : {"up", "down"}

    Returns
    -------
    Stand
        Going up, the rear wheels touch floor and ramp at once: the whole chair is as steep as
        the ramp, and the anti-tip device as near the floor as it comes.
    """
    lean = radians(slope_deg)
    if facing == "up":
        along = shape.rear_axle[1] * tan(lean / 2)
        return Stand(facing, slope_deg, (along * cos(lean), along * sin(lean)))
    _, front = contact_xs(shape)
    along = front + FROM_FOOT_MM + shape.caster_radius_mm * tan(lean / 2)
    return Stand(facing, slope_deg, (-along * cos(lean), along * sin(lean)))


def margins_deg(shape: Shape, slope_deg: float) -> tuple[float, float]:
    """What is left to tipping back, looking up, and to tipping forward, looking down [deg]."""
    rear, front = tipping_angles_deg(shape)
    return rear - slope_deg, front - slope_deg


def worse_facing(shape: Shape, slope_deg: float) -> Facing:
    """The way of facing with the smaller margin."""
    up, down = margins_deg(shape, slope_deg)
    return "up" if up <= down else "down"


def contact_pitch_deg(shape: Shape) -> float:
    """Pitch until the anti-tip device touches a level floor [deg]; infinite without a device."""
    if shape.anti_tip_wheel is None:
        return inf
    (x, z), radius = shape.anti_tip_wheel, shape.anti_tip_radius_mm
    sizes = (np.array([each]) for each in (-x, z, radius, shape.rear_axle[1]))
    pitch = float(np.degrees(pitch_to_contact(*sizes))[0])
    return inf if np.isnan(pitch) else pitch


def device_clearance_mm(shape: Shape, slope_deg: float) -> float:
    """Room under the anti-tip device when the rear wheels stand in the foot of a ramp [mm].

    Parameters
    ----------
    shape : Shape
        With a device.
    slope_deg : float [deg]

    Returns
    -------
    float [mm]
        Below zero when it would be in the floor; the same going up and coming down.

    Raises
    ------
    ValueError
        When the chair has no device.
    """
    if shape.anti_tip_wheel is None:
        message = "the chair must have an anti-tip device"
        raise ValueError(message)
    (x, z), axle, lean = shape.anti_tip_wheel, shape.rear_axle[1], radians(slope_deg)
    return axle + x * sin(lean) + (z - axle) * cos(lean) - shape.anti_tip_radius_mm


def grounds_before_mm(shape: Shape, slope_deg: float) -> float | None:
    """How far the rear axle is before the foot of a ramp when the device grounds, going up [mm].

    Parameters
    ----------
    shape : Shape
    slope_deg : float [deg]

    Returns
    -------
    float or None [mm]
        None when the device passes, or stands on the level floor already.

    References
    ----------
    First principles: rear wheel on the floor, caster on the ramp, frame pitched until the
    device touches.
    """
    pitch_deg = contact_pitch_deg(shape)
    if not 0.0 < pitch_deg < slope_deg:
        return None
    pitch, lean = radians(pitch_deg), radians(slope_deg)
    axle, caster = shape.rear_axle[1], shape.caster_radius_mm
    rear, front = contact_xs(shape)
    ahead, up = front - rear, caster - axle
    height = axle + ahead * sin(pitch) + up * cos(pitch)
    along = (height * cos(lean) - caster) / sin(lean)
    return ahead * cos(pitch) - up * sin(pitch) - along


def slope_words(ratio: float) -> str:
    """A slope as 1 in n and in degrees."""
    if ratio == 0.0:
        return "level"
    return f"1:{round(1.0 / ratio, 1):g}, {degrees(atan(ratio)):.1f}°"
