"""The stroke of hand and foot: the arc of the rim that a hand holds, where the heel is set down.

Theory: docs/theory/reach.md.
"""

from __future__ import annotations

import numpy as np

from chairwright.chair.occupant import LimbSide, Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.steps import NO_FOOT
from chairwright.figures.reach import NO_HAND, RIM_TUBE_HALF_MM, knee_joint
from chairwright.mass_points import FloatArray
from chairwright.person.segments import de_leva_length_mm

HELD_ELBOW_DEG = (60.0, 150.0)
"""Elbow angles between which the hand holds the rim (common practice, no source)."""

FARTHEST_ON_RIM_DEG = 90.0
"""Beyond this from the top, to the front or the back, the rim turns under the hand (common
practice, no source)."""


def arm_span_mm(upper_arm_mm: float, forearm_mm: float, elbow_deg: float) -> float:
    """Shoulder to grip with the elbow at an angle [mm]; 180 is straight.

    Parameters
    ----------
    upper_arm_mm, forearm_mm : float [mm]
    elbow_deg : float [deg]

    Returns
    -------
    float [mm]

    References
    ----------
    Law of cosines.
    """
    square = (
        upper_arm_mm**2
        + forearm_mm**2
        - 2.0 * upper_arm_mm * forearm_mm * np.cos(np.radians(elbow_deg))
    )
    reach: float = np.sqrt(square)
    return reach


def rim_arc_deg(
    ahead_mm: FloatArray,
    up_mm: FloatArray,
    off_mm: FloatArray,
    rim_mm: FloatArray,
    spans_mm: tuple[float, float],
) -> tuple[FloatArray, FloatArray]:
    """Where along the rim the hand is neither nearer nor farther than the arm allows [deg].

    Parameters
    ----------
    ahead_mm, up_mm, off_mm : ndarray [mm]
        Shoulder joint from the middle of the rim's circle: forward and up in the rim's plane,
        and off that plane.
    rim_mm : ndarray [mm]
        Radius on which the middle of the hand runs.
    spans_mm : tuple of float [mm]
        Least and greatest distance from shoulder to hand.

    Returns
    -------
    tuple of ndarray [deg]
        Rear and front end from the rim's top, forward positive, within 90 degrees of it. Where
        the top is too near to be held, the part ahead of it. NaN when no part can be held.

    References
    ----------
    First principles: the distance from a point to a circle, d2 = A - B cos(angle).
    """
    in_plane = np.hypot(ahead_mm, up_mm)
    middle = np.arctan2(ahead_mm, up_mm)
    least, most = spans_mm
    squares = np.square(in_plane) + np.square(off_mm) + np.square(rim_mm)
    both = 2.0 * in_plane * rim_mm
    with np.errstate(invalid="ignore", divide="ignore"):
        widest = np.arccos(np.clip((squares - most**2) / both, -1.0, None))
        too_near = np.arccos(np.clip((squares - least**2) / both, -1.0, 1.0))
    rear = np.where(too_near > 0, too_near, -widest)
    ends = (np.degrees(middle + end) for end in (rear, widest))
    low, high = (np.clip(end, -FARTHEST_ON_RIM_DEG, FARTHEST_ON_RIM_DEG) for end in ends)
    held = high > low
    return np.where(held, low, np.nan), np.where(held, high, np.nan)


def push_arc(
    rows: Rows, occupant: Occupant, held_deg: tuple[float, float] = HELD_ELBOW_DEG
) -> FloatArray:
    """Arc of the hand rim that the hand holds with the elbow at 60 to 150 degrees [deg].

    Parameters
    ----------
    rows : Rows
    occupant : Occupant
    held_deg : tuple of float [deg]
        Least and greatest elbow angle.

    Returns
    -------
    ndarray [deg]
        Of the arm with the shorter arc; 0 when it holds no part, NaN when no hand pushes or the
        wheels have no rims.
    """
    arcs = []
    for spans in arm_spans_mm(occupant, held_deg):
        rear, front = rim_arc_deg(*_shoulder_from_rim(rows, occupant), rows["rim_radius"], spans)
        arcs.append(np.nan_to_num(front - rear))
    shortest = np.minimum.reduce(arcs) if arcs else np.full(len(rows), np.nan)
    return np.where(rows["rim_radius"] > 0, shortest, np.nan)


def arm_spans_mm(
    occupant: Occupant, held_deg: tuple[float, float] = HELD_ELBOW_DEG
) -> list[tuple[float, float]]:
    """Least and greatest distance from shoulder to grip of each hand that pushes [mm]."""
    least, most = held_deg
    arms = [_arm(occupant, side) for side in occupant.hands_that_push]
    return [(arm_span_mm(*arm, least), arm_span_mm(*arm, most)) for arm in arms]


def _arm(occupant: Occupant, side: LimbSide) -> tuple[float, float]:
    upper, fore = occupant.body.upper_arm_mm[side], occupant.body.forearm_to_grip_mm[side]
    if upper is None or fore is None:
        raise ValueError(NO_HAND.format(side=side))
    return upper, fore


def _shoulder_from_rim(rows: Rows, occupant: Occupant) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Shoulder joint from the middle of the hand's circle: ahead, up along it, and off it [mm]."""
    along, height = rows.to_floor(rows["shoulder_x"], rows["shoulder_z"])
    across = occupant.body.half_shoulder_mm - (
        rows["hub_half"] + rows["rim_standoff"] - RIM_TUBE_HALF_MM
    )
    above, lean = height - rows["rear_height"], np.radians(rows["camber"])
    up = above * np.cos(lean) - across * np.sin(lean)
    off = above * np.sin(lean) + across * np.cos(lean)
    return along, up, off


def fingertip_to_axle(rows: Rows, occupant: Occupant) -> FloatArray:
    """Fingertips of the hanging arm above the middle of the rear wheel [mm]; below it negative.

    NaN when no hand pushes. Of both arms the shorter counts.

    References
    ----------
    That they should come to the axle: common practice, no source.
    """
    _, height = rows.to_floor(rows["shoulder_x"], rows["shoulder_z"])
    return np.asarray(height - fingertip_span_mm(occupant) - rows["rear_height"])


def fingertip_span_mm(occupant: Occupant) -> float:
    """Shoulder joint to the fingertips of the hanging arm, the shorter of those that push [mm].

    NaN when no hand pushes.

    References
    ----------
    Fingertips beyond the wrist as the grip is, in the ratio of de Leva 1996, Table 4.
    """
    body = occupant.body
    hand, knuckles = (de_leva_length_mm(body.sex, "WJC", end) for end in ("DAC3", "MET3"))
    spans = []
    for side in occupant.hands_that_push:
        upper, fore = _arm(occupant, side)
        wrist = body.wrist_mm[side]
        spans.append(upper + wrist + (fore - wrist) * hand / knuckles)
    return np.minimum.reduce(spans) if spans else np.nan


def heel_ahead_of_knee_mm(
    knee_height_mm: FloatArray, shank_mm: float, ankle_height_mm: float
) -> FloatArray:
    """How far ahead of the knee the heel can be set on the floor, ankle at a right angle [mm].

    Parameters
    ----------
    knee_height_mm : ndarray [mm]
        Knee joint above the floor.
    shank_mm, ankle_height_mm : float [mm]
        Knee to ankle joint; ankle joint to sole, shoe included.

    Returns
    -------
    ndarray [mm]
        NaN when heel and forefoot hang clear of the floor.

    References
    ----------
    First principles: sqrt((shank + ankle height)2 - knee height2).
    """
    with np.errstate(invalid="ignore"):
        return np.asarray(np.sqrt((shank_mm + ankle_height_mm) ** 2 - np.square(knee_height_mm)))


def heel_reach(rows: Rows, occupant: Occupant) -> FloatArray:
    """How far ahead of its knee the pushing foot's heel can be set on the floor [mm].

    NaN when no foot pushes, or when it hangs clear of the floor. Of both feet the shorter counts.
    """
    found = []
    for side in occupant.feet_that_push:
        height = rows.to_floor(*knee_joint(rows, occupant, side))[1]
        found.append(heel_of(occupant, side, height))
    return np.asarray(np.minimum.reduce(found)) if found else np.full(len(rows), np.nan)


def heel_of(occupant: Occupant, side: LimbSide, knee_height_mm: FloatArray) -> FloatArray:
    """How far ahead of the knee one heel can be set down [mm].

    Parameters
    ----------
    occupant : Occupant
    side : {"left", "right"}
    knee_height_mm : ndarray [mm]
    """
    shank = occupant.body.shank_mm[side]
    if shank is None:
        raise ValueError(NO_FOOT.format(side=side))
    return heel_ahead_of_knee_mm(knee_height_mm, shank, occupant.body.ankle_height_mm)
