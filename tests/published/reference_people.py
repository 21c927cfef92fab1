"""The reference man and woman of de Leva 1996, and the fixed posture of the check cases.

Posture: origin mid-hip; trunk and head on one line; upper arms straight down, forearms and
hands level forward; thighs level, shanks vertical; feet square to the shanks with the heel
under the ankle and the foot's centre of mass at the ankle's height.
"""

from __future__ import annotations

import numpy as np

from chairwright.mass_points import MassPoints
from chairwright.person.body import Body, assemble_body
from chairwright.person.client import Amputation, Sex, Side
from chairwright.person.posture import leg_points, upper_body_points
from chairwright.person.proportions import Lengths
from chairwright.person.segments import de_leva_length_mm

SIDES: tuple[Side, Side] = ("left", "right")
MASS_KG: dict[Sex, float] = {"male": 73.0, "female": 61.9}


def reference_body(
    sex: Sex, *, amputations: tuple[Amputation, ...] = (), heel_behind_share: float = 0.0
) -> Body:
    """Build the reference person on de Leva's own lengths; hip joints 85 mm off the mid-plane."""

    def both(*ends: str) -> dict[Side, float]:
        return dict.fromkeys(SIDES, de_leva_length_mm(sex, *ends))

    forearm, hand = both("EJC", "WJC"), both("WJC", "MET3")
    neck = de_leva_length_mm(sex, "CERV", "MIDH")
    lengths = Lengths(
        hip_above_seat=0.0,
        hip_ahead_of_back=0.0,
        trunk=de_leva_length_mm(sex, "MIDS", "MIDH"),
        neck=neck,
        head_top=neck + de_leva_length_mm(sex, "VERT", "CERV"),
        head_radius=100.0,
        half_shoulder=200.0,
        half_hip=85.0,
        upper_arm=both("SJC", "EJC"),
        forearm=forearm,
        grip={side: forearm[side] + hand[side] for side in SIDES},
        thigh=both("HJC", "KJC"),
        shank=both("KJC", "AJC"),
        foot=both("HEEL", "TTIP"),
        ankle_height=0.0,
        heel_behind_ankle=heel_behind_share * de_leva_length_mm(sex, "HEEL", "TTIP"),
    )
    return assemble_body(
        sex=sex, table="de_leva", mass_kg=MASS_KG[sex], lengths=lengths, amputations=amputations
    )


def seated(
    body: Body,
    *,
    trunk_back_deg: float = 0.0,
    thigh_up_deg: float = 0.0,
    knee_deg: float = 90.0,
    elbow_bend_deg: float = 90.0,
) -> list[MassPoints]:
    """Seat a body with its mid-hip at the origin; ``knee_deg`` is the included angle."""
    points, _ = upper_body_points(
        body, 0.0, 0.0, np.radians(trunk_back_deg), elbow_bend_rad=np.radians(elbow_bend_deg)
    )
    shank_forward = np.radians(thigh_up_deg + knee_deg - 90.0)
    for side in SIDES:
        leg, _ = leg_points(
            body, side, 0.0, 0.0, np.radians(thigh_up_deg), shank_forward, shank_forward
        )
        points.extend(leg)
    return points
