"""Joint-to-joint lengths of one person, from the measures and the published proportions."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from chairwright.errors import InputError, Problem
from chairwright.person.client import Sex, Side
from chairwright.person.estimates import MeasureSet
from chairwright.person.expectation import offset_mm
from chairwright.person.population import summary_row
from chairwright.person.segments import de_leva_length_mm
from chairwright.tables.load import find_row

SIDES: tuple[Side, Side] = ("left", "right")
REFERENCE_STATURE_MM: dict[Sex, float] = {"male": 1741.0, "female": 1735.0}
MEAN_MAN_STATURE_MM = 1756.0


@dataclass(frozen=True)
class Lengths:
    """Lengths of a body with every limb whole, all in mm.

    Parameters
    ----------
    hip_above_seat, hip_ahead_of_back : float
        Middle of the hip joints above the seat surface and ahead of the buttock plane.
    trunk, neck, head_top : float
        From mid-hip up the trunk line to mid-shoulder, seventh neck vertebra and vertex.
    head_radius : float
    half_shoulder, half_hip : float
        Off the mid-plane.
    upper_arm, forearm, grip, thigh, shank, foot : mapping of side to float
        ``forearm`` elbow to wrist; ``grip`` elbow to centre of grip; ``foot`` with the shoe.
    ankle_height : float
        Ankle joint above the sole of the shoe.
    heel_behind_ankle : float
        Back of the heel behind the ankle joint.
    """

    hip_above_seat: float
    hip_ahead_of_back: float
    trunk: float
    neck: float
    head_top: float
    head_radius: float
    half_shoulder: float
    half_hip: float
    upper_arm: Mapping[Side, float]
    forearm: Mapping[Side, float]
    grip: Mapping[Side, float]
    thigh: Mapping[Side, float]
    shank: Mapping[Side, float]
    foot: Mapping[Side, float]
    ankle_height: float
    heel_behind_ankle: float = 0.0


def drillis_fraction(quantity: str) -> float:
    """Return one length as a fraction of stature.

    Parameters
    ----------
    quantity : str
        Row of the table, for example ``"thigh"``.

    Returns
    -------
    float

    References
    ----------
    Drillis & Contini 1966.
    """
    row = find_row("body", "drillis_contini1966_fractions", quantity=quantity)
    return float(row["fraction_of_stature"])


def hip_height_ratio(sex: Sex) -> float:
    """Height of the hip joints above the seat as a share of sitting height.

    Parameters
    ----------
    sex : {"female", "male"}

    Returns
    -------
    float
        Mean sitting height less de Leva's head and trunk, scaled to the survey's mean
        stature, over mean sitting height: about 65 / 918 for men and 51 / 857 for women.

    References
    ----------
    Derived from de Leva 1996 and Gordon 2014.
    """
    head_and_trunk = de_leva_length_mm(sex, "VERT", "CERV") + de_leva_length_mm(sex, "CERV", "MIDH")
    scale = summary_row(sex, "stature")[0] / REFERENCE_STATURE_MM[sex]
    sitting_height = summary_row(sex, "sittingheight")[0]
    return (sitting_height - head_and_trunk * scale) / sitting_height


def derive_lengths(sex: Sex, measures: MeasureSet) -> Lengths:
    """Derive the joint-to-joint lengths of one client.

    Parameters
    ----------
    sex : {"female", "male"}
    measures : MeasureSet
        Complete; lost parts take the length they would have had.

    Returns
    -------
    Lengths

    Raises
    ------
    InputError
        When buttock-knee length leaves no room behind the hip joints.

    References
    ----------
    de Leva 1996 (trunk and head), Drillis & Contini 1966 (thigh, upper arm, ankle),
    Gordon 2014 (seated landmarks). The women's thigh of de Leva is short, so the thigh is
    0.245 of stature for both sexes.
    """
    stature = measures.intact["stature"]
    sitting_height = measures.intact["sitting_height"]
    hip_above_seat = hip_height_ratio(sex) * sitting_height
    above_hip = sitting_height - hip_above_seat
    split = _trunk_split(sex)
    grip = {side: _length(measures, "forearm_length", side) for side in SIDES}
    return Lengths(
        hip_above_seat=hip_above_seat,
        hip_ahead_of_back=_hip_ahead_of_back(stature, measures),
        trunk=above_hip * split["trunk"],
        neck=above_hip * split["neck"],
        head_top=above_hip,
        head_radius=above_hip * split["head_radius"],
        half_shoulder=measures.intact["biacromial_width"] / 2.0,
        half_hip=offset_mm("half_hip_spacing") * stature / MEAN_MAN_STATURE_MM,
        upper_arm=_upper_arms(sex, measures),
        forearm={side: wrist_share(sex) * length for side, length in grip.items()},
        grip=grip,
        thigh=_thighs(stature, measures),
        shank=_shanks(stature, measures),
        foot={side: _length(measures, "foot_length", side) for side in SIDES},
        ankle_height=_ankle_height(stature, measures),
    )


def wrist_share(sex: Sex) -> float:
    """Share of elbow to grip that lies before the wrist.

    Parameters
    ----------
    sex : {"female", "male"}

    Returns
    -------
    float
        With the grip at the third knuckle.

    References
    ----------
    de Leva 1996, Table 4.
    """
    forearm = de_leva_length_mm(sex, "EJC", "WJC")
    return forearm / (forearm + de_leva_length_mm(sex, "WJC", "MET3"))


def _trunk_split(sex: Sex) -> dict[str, float]:
    neck = de_leva_length_mm(sex, "CERV", "MIDH")
    total = neck + de_leva_length_mm(sex, "VERT", "CERV")
    return {
        "trunk": de_leva_length_mm(sex, "MIDS", "MIDH") / total,
        "neck": neck / total,
        "head_radius": de_leva_length_mm(sex, "VERT", "MIDG") / 2.0 / total,
    }


def _length(measures: MeasureSet, name: str, side: Side) -> float:
    measure = measures.find(name, side)
    return measure.value if measure is not None else measures.intact[name]


def _upper_arms(sex: Sex, measures: MeasureSet) -> dict[Side, float]:
    mean_joint_length = drillis_fraction("upper_arm") * summary_row(sex, "stature")[0]
    share = mean_joint_length / summary_row(sex, "shoulderelbowlength")[0]
    return {side: share * _length(measures, "upper_arm_length", side) for side in SIDES}


def _thighs(stature: float, measures: MeasureSet) -> dict[Side, float]:
    mean = drillis_fraction("thigh") * stature
    both = {side: _length(measures, "buttock_knee_length", side) for side in SIDES}
    middle = sum(both.values()) / len(both)
    return {side: mean + length - middle for side, length in both.items()}


def _hip_ahead_of_back(stature: float, measures: MeasureSet) -> float:
    to_patella = offset_mm("knee_joint_to_patella") * stature / MEAN_MAN_STATURE_MM
    both = [_length(measures, "buttock_knee_length", side) for side in SIDES]
    ahead = sum(both) / len(both) - drillis_fraction("thigh") * stature - to_patella
    if np.ndim(ahead) == 0 and ahead <= 0.0:
        raise InputError(_no_room_problem(sum(both) / len(both), stature))
    return ahead


def _ankle_height(stature: float, measures: MeasureSet) -> float:
    return drillis_fraction("ankle_height") * stature + measures.get("shoe_sole").value


def _shanks(stature: float, measures: MeasureSet) -> dict[Side, float]:
    """Knee joint to ankle joint; the knee joint half way from the crease to the knee's top.

    Half way gives 492 mm above the bare sole for the mean man, where ANSUR II has the
    bony point beside the knee joint at 492 mm (derived).
    """
    ankle = _ankle_height(stature, measures)
    return {
        side: (_length(measures, "lower_leg_length", side) + _length(measures, "knee_height", side))
        / 2.0
        - ankle
        for side in SIDES
    }


def _no_room_problem(buttock_knee: float, stature: float) -> Problem:
    return Problem(
        where="buttock_knee_length",
        must="buttock to front of knee must be longer than the thigh that goes with the stature",
        got=f"{buttock_knee:.0f} mm with a stature of {stature:.0f} mm",
        remedy="Measure buttock to front of knee and stature again.",
    )
