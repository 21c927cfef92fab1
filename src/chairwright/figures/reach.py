"""Where the shoulder stands over the axle and how the elbow bends at the top of the rim."""

from __future__ import annotations

import numpy as np

from chairwright.chair.occupant import LimbSide, Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.steps import NO_FOOT
from chairwright.mass_points import FloatArray

MIDDLE_ELBOW_DEG = 110.0
"""Middle of the recommended 100-120 degrees (PVA Consortium 2005, fig. 2 caption)."""

NO_HAND = "the {side} hand cannot push: it is lost"

ROUNDING = 1e-12
"""A cosine this near to 1 or -1 is the folded or the straight arm, not out of reach."""

RIM_TUBE_HALF_MM = 10.0
"""Half the hand-rim tube: the hand's middle lies this far inside the rim's outer edge
(common practice, no source)."""


def elbow_angle(upper_arm_mm: float, forearm_mm: float, distance_mm: FloatArray) -> FloatArray:
    """Elbow angle with the hand at a distance from the shoulder [deg]; 180 is straight.

    Parameters
    ----------
    upper_arm_mm, forearm_mm : float [mm]
        Shoulder to elbow; elbow to the centre of the grip.
    distance_mm : ndarray [mm]

    Returns
    -------
    ndarray [deg]
        NaN when the hand cannot be there: too far, or nearer than the arm can fold.

    References
    ----------
    Law of cosines: cos E = (a^2 + f^2 - d^2) / (2 a f).
    """
    cosine = (upper_arm_mm**2 + forearm_mm**2 - distance_mm**2) / (2 * upper_arm_mm * forearm_mm)
    cosine = np.where(np.abs(np.abs(cosine) - 1.0) < ROUNDING, np.sign(cosine), cosine)
    with np.errstate(invalid="ignore"):
        return np.asarray(np.degrees(np.arccos(cosine)))


def shoulder_to_rim(rows: Rows, occupant: Occupant, hub_half_mm: FloatArray) -> FloatArray:
    """Shoulder joint to the top of the hand rim, in space [mm].

    Parameters
    ----------
    rows : Rows
    occupant : Occupant
    hub_half_mm : ndarray [mm]
        Hub's wheel plane from the mid-plane.
    """
    along, up = rows.to_floor(rows["shoulder_x"], rows["shoulder_z"])
    across = rim_across(rows, occupant, hub_half_mm, rows["rim_standoff"])
    return np.sqrt(along**2 + (up - rim_top(rows)) ** 2 + across**2)


def rim_top(rows: Rows) -> FloatArray:
    """Top of the hand rim above the floor [mm]."""
    rim = rows.option("rear_wheel", "hand_rim_radius_mm")
    return np.asarray(rows["rear_height"] + rim * np.cos(np.radians(rows["camber"])))


def rim_across(
    rows: Rows, occupant: Occupant, hub_half_mm: FloatArray, standoff_mm: FloatArray
) -> FloatArray:
    """Top of the rim outward of the shoulder joint [mm].

    Parameters
    ----------
    rows : Rows
    occupant : Occupant
    hub_half_mm : ndarray [mm]
        Hub's wheel plane from the mid-plane.
    standoff_mm : ndarray [mm]
        Outermost place of the rim from the wheel plane.

    Returns
    -------
    ndarray [mm]
        Middle of the hand on the rim; negative when it lies inward of the shoulder.
    """
    lean = np.radians(rows["camber"])
    rim = rows.option("rear_wheel", "hand_rim_radius_mm")
    return np.asarray(
        hub_half_mm
        + standoff_mm
        - RIM_TUBE_HALF_MM
        - rim * np.sin(lean)
        - occupant.body.half_shoulder_mm
    )


def elbow(rows: Rows, occupant: Occupant) -> FloatArray:
    """Elbow angle at the top of the rim, the straighter of the arms that push [deg]."""
    return elbow_of(occupant, shoulder_to_rim(rows, occupant, rows["hub_half"]))


def elbow_of(
    occupant: Occupant, distance_mm: FloatArray, within_reach: bool | None = None
) -> FloatArray:
    """Elbow angle of the straighter arm at a shoulder-to-rim distance [deg].

    Parameters
    ----------
    occupant : Occupant
    distance_mm : ndarray [mm]
    within_reach : bool or None
        True takes a distance beyond the arm as the straight arm, False takes one too near to
        fold to as the folded arm; None gives NaN for both.

    Returns
    -------
    ndarray [deg]
        NaN when no hand pushes.
    """
    angles = []
    for side in occupant.hands_that_push:
        upper, fore = occupant.body.upper_arm_mm[side], occupant.body.forearm_to_grip_mm[side]
        if upper is None or fore is None:
            raise ValueError(NO_HAND.format(side=side))
        reached = distance_mm
        if within_reach is not None:
            reached = np.maximum(reached, abs(upper - fore))
        if within_reach:
            reached = np.minimum(reached, upper + fore)
        angles.append(elbow_angle(upper, fore, reached))
    if not angles:
        return np.full(len(distance_mm), np.nan)
    return np.asarray(np.maximum.reduce(angles))


def push_reach(rows: Rows, occupant: Occupant) -> FloatArray:
    """How far the elbow is from the middle of the recommended range [deg]."""
    return np.abs(elbow(rows, occupant) - MIDDLE_ELBOW_DEG)


def shoulder_ahead_of_axle(rows: Rows, occupant: Occupant) -> FloatArray:
    """Shoulder joint ahead of the rear axle [mm]."""
    return rows.to_floor(rows["shoulder_x"], rows["shoulder_z"])[0]


def knee_joint(rows: Rows, occupant: Occupant, side: LimbSide) -> tuple[FloatArray, FloatArray]:
    """Knee joint in frame axes, thigh along the cushion [mm].

    Parameters
    ----------
    rows : Rows
    occupant : Occupant
    side : {"left", "right"}
    """
    thigh = occupant.body.thigh_mm[side]
    if thigh is None:
        raise ValueError(NO_FOOT.format(side=side))
    slope = rows["seat_slope"]
    return rows["hip_x"] + thigh * np.cos(slope), rows["hip_z"] + thigh * np.sin(slope)


def knee_top(rows: Rows, occupant: Occupant) -> FloatArray:
    """Top of the higher knee above the floor, thighs along the cushion [mm]; NaN without legs."""
    tops = [
        rows.to_floor(*knee_joint(rows, occupant, side))[1] + above
        for side, above in occupant.knee_above_joint_mm.items()
    ]
    return np.asarray(np.maximum.reduce(tops)) if tops else np.full(len(rows), np.nan)
