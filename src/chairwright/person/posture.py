"""The seated body in side view: joints and point masses.

Every function takes scalars or arrays and broadcasts. Axes: x forward, z up, y left; any
side-view axes will do, since the trunk, thigh, shank and arm angles are all counted from
those axes.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from chairwright.mass_points import FloatArray, MassPoints
from chairwright.person.body import Body
from chairwright.person.client import Side
from chairwright.person.segments import Segment

Scalar = FloatArray | float
Joint = tuple[Scalar, Scalar]
SIDES: tuple[Side, Side] = ("left", "right")


@dataclass(frozen=True)
class UpperJoints:
    """Joints above the hip, each ``(x, z)`` [mm]; None for a lost one.

    Parameters
    ----------
    shoulder : Joint
        Middle of the shoulder joints.
    head_centre : Joint
    head_radius_mm : float
    elbow, hand : mapping of side to Joint or None
        ``hand`` is the centre of grip.
    """

    shoulder: Joint
    head_centre: Joint
    head_radius_mm: float
    elbow: Mapping[Side, Joint | None]
    hand: Mapping[Side, Joint | None]


@dataclass(frozen=True)
class LegJoints:
    """Joints of one leg, each ``(x, z)`` [mm]; None for a lost one."""

    knee: Joint | None
    ankle: Joint | None
    heel: Joint | None
    toe: Joint | None


def upper_body_points(
    body: Body,
    hip_x_mm: Scalar,
    hip_z_mm: Scalar,
    trunk_back_rad: Scalar,
    arms_up_rad: Scalar = 0.0,
    elbow_bend_rad: Scalar = np.pi / 2.0,
) -> tuple[list[MassPoints], UpperJoints]:
    """Place trunk, head and arms.

    Parameters
    ----------
    body : Body
    hip_x_mm, hip_z_mm : array_like, shape (n,) or scalar [mm]
        Middle of the hip joints.
    trunk_back_rad : array_like, shape (n,) or scalar [rad]
        Recline of the trunk line from +z, backward positive.
    arms_up_rad : array_like, shape (n,) or scalar [rad]
        Turns the arms as one: at 0 the upper arms point along -z and the forearms along
        +x; positive raises the hands.
    elbow_bend_rad : array_like, shape (n,) or scalar [rad]
        Forearm from the line of the upper arm; 0 is a hanging arm, a right angle is usual.

    Returns
    -------
    points : list of MassPoints
        One for each segment above the hip, in the axes of the hip.
    joints : UpperJoints

    References
    ----------
    First principles on the segments of `Body`.
    """
    hip = (hip_x_mm, hip_z_mm)
    up = (-np.sin(trunk_back_rad), np.cos(trunk_back_rad))
    down_arm = (np.sin(arms_up_rad), -np.cos(arms_up_rad))
    forearm_turn = np.asarray(arms_up_rad) + elbow_bend_rad
    along_forearm = (np.sin(forearm_turn), -np.cos(forearm_turn))
    shoulder = _along(hip, up, body.trunk_length_mm)
    neck = _along(hip, up, body.neck_mm)
    starts = {"trunk": (hip, up), "head_and_trunk": (hip, up), "head": (neck, up)}
    points = [
        _point(body, segment, *starts[segment.link])
        for segment in body.segments
        if segment.link in starts
    ]
    elbow, hand = dict[Side, Joint | None](), dict[Side, Joint | None]()
    for side in SIDES:
        arm, elbow[side], hand[side] = _arm(body, side, shoulder, down_arm, along_forearm)
        points.extend(arm)
    head_centre = _along(hip, up, body.head_top_mm - body.head_radius_mm)
    return points, UpperJoints(shoulder, head_centre, body.head_radius_mm, elbow, hand)


def leg_points(
    body: Body,
    side: Side,
    hip_x_mm: Scalar,
    hip_z_mm: Scalar,
    thigh_up_rad: Scalar,
    shank_forward_rad: Scalar,
    foot_up_rad: Scalar = 0.0,
) -> tuple[list[MassPoints], LegJoints]:
    """Place one leg.

    Parameters
    ----------
    body : Body
    side : {"left", "right"}
    hip_x_mm, hip_z_mm : array_like, shape (n,) or scalar [mm]
        Hip joint.
    thigh_up_rad : array_like, shape (n,) or scalar [rad]
        Thigh from +x, knee up positive.
    shank_forward_rad : array_like, shape (n,) or scalar [rad]
        Shank from -z, foot forward positive.
    foot_up_rad : array_like, shape (n,) or scalar [rad]
        Sole from +x, toes up positive.

    Returns
    -------
    points : list of MassPoints
        What is left of thigh, shank and foot.
    joints : LegJoints
        Heel and toe lie on the sole. The heel is under the ankle joint, less
        ``body.heel_behind_ankle_mm``; the foot's CoM half way from the ankle to the sole
        (common practice, no source).
    """
    hip = (hip_x_mm, hip_z_mm)
    along_thigh = (np.cos(thigh_up_rad), np.sin(thigh_up_rad))
    along_shank = (np.sin(shank_forward_rad), -np.cos(shank_forward_rad))
    along_sole = (np.cos(foot_up_rad), np.sin(foot_up_rad))
    to_sole = (np.sin(foot_up_rad), -np.cos(foot_up_rad))
    knee = _reach(hip, along_thigh, body.thigh_mm[side])
    ankle = _reach(knee, along_shank, body.shank_mm[side])
    foot = None if ankle is None else _along(ankle, along_sole, -body.heel_behind_ankle_mm)
    foot_length = body.foot_length_mm[side]
    heel = None if foot_length is None else _reach(foot, to_sole, body.ankle_height_mm)
    toe = _reach(heel, along_sole, foot_length)
    middle = _reach(foot, to_sole, body.ankle_height_mm / 2.0)
    starts = {
        "thigh": (hip, along_thigh),
        "shank": (knee, along_shank),
        "foot": (middle, along_sole),
    }
    points = _limb_points(body, side, starts)
    return points, LegJoints(knee, ankle, heel, toe)


def centre_of_mass(points: Sequence[MassPoints]) -> tuple[Scalar, Scalar, Scalar, Scalar]:
    """Total mass and common centre of mass.

    Parameters
    ----------
    points : sequence of MassPoints

    Returns
    -------
    mass : array_like [kg]
    x, y, z : array_like [mm]
    """
    mass = sum(np.asarray(point.mass_kg) for point in points)
    x = sum(np.asarray(point.mass_kg) * point.x_mm for point in points) / mass
    y = sum(np.asarray(point.mass_kg) * point.y_mm for point in points) / mass
    z = sum(np.asarray(point.mass_kg) * point.z_mm for point in points) / mass
    return mass, x, y, z


def pitch_inertia_kgm2(
    points: Sequence[MassPoints], own_gyration_mm: Mapping[str, float]
) -> Scalar:
    """Moment of inertia about the side-to-side axis through the common centre of mass.

    Parameters
    ----------
    points : sequence of MassPoints
    own_gyration_mm : mapping of str to float [mm]
        Each point's own radius of gyration about its side-to-side axis, by name, as
        `Body.gyration_mm` gives it.

    Returns
    -------
    array_like [kg m2]

    References
    ----------
    First principles (parallel axes).
    """
    _, x, _, z = centre_of_mass(points)
    return sum(
        point.mass_kg
        * ((point.x_mm - x) ** 2 + (point.z_mm - z) ** 2 + own_gyration_mm[point.name] ** 2)
        * 1e-6
        for point in points
    )


def _along(start: Joint, direction: Joint, distance: float) -> Joint:
    return (start[0] + distance * direction[0], start[1] + distance * direction[1])


def _reach(start: Joint | None, direction: Joint, distance: float | None) -> Joint | None:
    if start is None or distance is None:
        return None
    return _along(start, direction, distance)


def _arm(
    body: Body, side: Side, shoulder: Joint, down: Joint, forward: Joint
) -> tuple[list[MassPoints], Joint | None, Joint | None]:
    elbow = _reach(shoulder, down, body.upper_arm_mm[side])
    wrist = _reach(elbow, forward, body.wrist_mm[side])
    hand = _reach(elbow, forward, body.forearm_to_grip_mm[side])
    starts = {
        "upper_arm": (shoulder, down),
        "forearm": (elbow, forward),
        "hand": (wrist, forward),
    }
    return _limb_points(body, side, starts), elbow, hand


def _limb_points(
    body: Body, side: Side, starts: Mapping[str, tuple[Joint | None, Joint]]
) -> list[MassPoints]:
    points = []
    for segment in body.segments:
        start, direction = starts.get(segment.link, (None, (0.0, 0.0)))
        if segment.side == side and start is not None:
            points.append(_point(body, segment, start, direction))
    return points


def _point(body: Body, segment: Segment, start: Joint, direction: Joint) -> MassPoints:
    x, z = _along(start, direction, segment.com_mm)
    return MassPoints(segment.name, segment.mass_kg, x, _off_middle(body, segment), z)


def _off_middle(body: Body, segment: Segment) -> float:
    if segment.side == "middle":
        return 0.0
    half = (
        body.half_shoulder_mm
        if segment.link in ("upper_arm", "forearm", "hand")
        else body.half_hip_mm
    )
    return half if segment.side == "left" else -half
