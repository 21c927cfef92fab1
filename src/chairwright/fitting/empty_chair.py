"""Nobody in the chair: what is asked of a chair that is only measured, not sat in."""

from __future__ import annotations

from chairwright.chair.occupant import Occupant
from chairwright.person.body import Body

NOBODY = Occupant(
    body=Body(
        sex="female",
        table="de_leva",
        mass_kg=0.0,
        hip_above_seat_mm=0.0,
        hip_ahead_of_back_mm=0.0,
        trunk_length_mm=0.0,
        neck_mm=0.0,
        head_top_mm=0.0,
        head_radius_mm=0.0,
        half_shoulder_mm=0.0,
        half_hip_mm=0.0,
        upper_arm_mm={},
        forearm_to_grip_mm={},
        thigh_mm={},
        shank_mm={},
        foot_length_mm={},
        wrist_mm={},
        ankle_height_mm=0.0,
        heel_behind_ankle_mm=0.0,
        segments=(),
    ),
    feet_that_push=(),
    hands_that_push=(),
    carries=(),
    lower_leg_mm={},
)
"""An occupant without mass or size; sex and segment table are not used where nothing is left.

For the steps and figures that hang on the chair alone: pose, seat heights, stem and toe angles.
"""
