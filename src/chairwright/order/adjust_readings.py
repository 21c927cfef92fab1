"""What is read on the chair at each step of an adjustment."""

from __future__ import annotations

import math
from dataclasses import dataclass

from chairwright.figures.registry import FIGURES
from chairwright.order.adjust_state import DEVICE_GAP, TYRE_FRONT, TYRE_OUT
from chairwright.order.steps import BACK, CASTERS, DEVICE, FOOT, SEAT, WHEEL

LABELS = {
    DEVICE_GAP: "Anti-tip wheel to floor",
    TYRE_FRONT: "Front of the rear tyre at the lock, ahead of the seat corner",
    TYRE_OUT: "Middle of the hub out from the seat's edge",
}

AT_STEP: dict[str, tuple[str, ...]] = {
    FOOT: ("leg_support_length_mm", "footplate_clearance_mm"),
    SEAT: (
        "seat_width_mm", "seat_depth_mm", "cushion_to_floor_front_mm", "arm_height_mm",
        "rear_track_mm",
    ),
    BACK: ("back_height_mm", "seat_to_back_angle_deg", "back_angle_deg", "overall_height_mm"),
    WHEEL: (
        "rear_track_mm", "seat_to_floor_rear_mm", "seat_to_floor_front_mm", "seat_angle_deg",
        "toe_deg",
    ),
    CASTERS: (
        "seat_to_floor_rear_mm", "seat_to_floor_front_mm", "seat_angle_deg",
        "caster_stem_angle_deg", "caster_foot_clearance_mm", "caster_tyre_clearance_mm",
    ),
    DEVICE: (DEVICE_GAP, "pitch_to_anti_tip_deg"),
}  # fmt: skip
"""Readings of each step of the order of adjustment."""


@dataclass(frozen=True)
class Reading:
    """One reading.

    Parameters
    ----------
    name : str
        Of the figure, or of a reading that is no figure.
    label, unit : str
    digits : int
        Behind the point when printed.
    before : float or None
        None when it could not be read before.
    after : float
    """

    name: str
    label: str
    unit: str
    digits: int
    before: float | None
    after: float

    @property
    def moved(self) -> bool:
        """Whether it prints differently after."""
        if self.before is None:
            return True
        return not math.isclose(
            round(self.before, self.digits), round(self.after, self.digits), abs_tol=1e-9
        )


def reading(name: str, before: float | None, after: float) -> Reading:
    """One reading by its name.

    Parameters
    ----------
    name : str
        A figure or a key of `LABELS`.
    before : float or None
    after : float
    """
    if name in LABELS:
        return Reading(name, LABELS[name], "mm", 0, before, after)
    figure = FIGURES[name]
    return Reading(name, figure.label, figure.unit, figure.digits, before, after)
