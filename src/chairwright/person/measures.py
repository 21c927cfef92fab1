"""The catalogue of body measures: names, clinical terms, limits, and how to take each.

Letters are those of the WHO Wheelchair Service Training Package (restated by a secondary
source) and of the New South Wales clinical list; the terms follow ISO 16840-1, which names
measures but does not say how to take them. The widest limits are working values
(common practice, no source): they pass adults from 1.2 m to 2.3 m and up to 250 kg.
"""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.errors import Problem
from chairwright.person.client import Measure
from chairwright.units import Dimension

STATURE = "stature"
BODY_MASS = "body_mass"
TAPE_MM = 10.0
SCALES_KG = 1.0


@dataclass(frozen=True)
class MeasureKind:
    """One kind of body measure.

    Parameters
    ----------
    name : str
        Key in files and code.
    label : str
        What a therapist calls it.
    term : str
        Clinical or ISO 16840-1 term, with the letter of the clinical list where it has one.
    dimension : {"length", "mass"}
    sided : bool
        True when left and right are measured apart.
    low, high : float [mm or kg]
        Widest values that a person can have; outside them the value is refused.
    tolerance : float [mm or kg]
        Half width of the spread of a careful measurement (common practice, no source).
    ansur : str or None
        Column of the ANSUR II tables that is nearest, None when there is none.
    how : str
        How to measure it, in one line.
    """

    name: str
    label: str
    term: str
    dimension: Dimension
    sided: bool
    low: float
    high: float
    tolerance: float
    ansur: str | None
    how: str

    @property
    def sides(self) -> tuple[str, ...]:
        """Sides on which it is measured."""
        return ("left", "right") if self.sided else ("middle",)


def _middle(
    name: str, label: str, term: str, low: float, high: float, ansur: str | None, how: str
) -> MeasureKind:
    return MeasureKind(name, label, term, "length", False, low, high, TAPE_MM, ansur, how)


def _sided(
    name: str, label: str, term: str, low: float, high: float, ansur: str | None, how: str
) -> MeasureKind:
    return MeasureKind(name, label, term, "length", True, low, high, TAPE_MM, ansur, how)


_KINDS = (
    _middle(
        STATURE, "Body height", "stature", 900, 2300, "stature",
        "Lying straight or against a wall: heel to top of the head, no shoes.",
    ),
    MeasureKind(
        BODY_MASS, "Body mass", "body mass", "mass", False, 20, 350, SCALES_KG, "weight_kg",
        "On chair scales, with everyday clothes and any prosthesis taken off.",
    ),
    _middle(
        "sitting_height", "Sitting height", "sitting height", 500, 1150, "sittingheight",
        "Firm seat to top of the head, sitting as upright as the person can.",
    ),
    _middle(
        "shoulder_height", "Shoulder height", "shoulder height (N; WHO F)", 300, 800,
        "d_acromialheight_sitting", "Firm seat to the bony top of the shoulder.",
    ),
    _middle(
        "axilla_height", "Axilla height", "axilla height (K; WHO H)", 220, 680,
        "d_axillaheight_sitting", "Firm seat to the fold of the armpit.",
    ),
    _middle(
        "scapula_height", "Scapula height", "inferior angle of scapula height (J; WHO E)",
        180, 620, None, "Firm seat to the lowest point of the shoulder blade.",
    ),
    _middle(
        "elbow_height", "Elbow height", "elbow height (L)", 80, 420, "elbowrestheight",
        "Firm seat to the underside of the elbow bent to 90 degrees, shoulder relaxed.",
    ),
    _middle(
        "hip_width", "Hip width", "hip width (A)", 200, 850, "hipbreadthsitting",
        "Widest part of hips or thighs, sitting, tissue not pressed in.",
    ),
    _middle(
        "shoulder_width", "Shoulder width", "shoulder width (E)", 250, 850, "bideltoidbreadth",
        "Widest part of the upper arms at the shoulders.",
    ),
    _middle(
        "biacromial_width", "Biacromial width", "biacromial breadth", 220, 560,
        "biacromialbreadth", "Between the bony tops of both shoulders.",
    ),
    _middle(
        "chest_width", "Chest width", "chest width (D)", 160, 650, "chestbreadth",
        "Width of the chest just below the armpits.",
    ),
    _middle(
        "chest_depth", "Chest depth", "chest depth", 120, 600, "chestdepth",
        "Back to front of the chest at its deepest.",
    ),
    _middle(
        "abdomen_depth", "Abdomen depth", "abdominal extension depth, sitting", 120, 750,
        "abdominalextensiondepthsitting", "Back plane to the front of the abdomen, sitting.",
    ),
    _middle(
        "thigh_clearance", "Thigh clearance", "thigh clearance", 60, 330, "thighclearance",
        "Firm seat to the top of the thigh at its highest.",
    ),
    _middle(
        "external_knee_width", "External knee width", "external knee width (C)", 120, 800,
        None, "Outside of one knee to outside of the other, as the person sits.",
    ),
    _middle(
        "trochanter_width", "Trochanter width", "trochanter width (B)", 180, 800, None,
        "Between the bony points of both hips, sitting.",
    ),
    _sided(
        "buttock_thigh_depth", "Buttock to back of knee", "thigh depth (F; WHO B)", 250, 750,
        "buttockpopliteallength", "Back of the buttock to the crease behind the knee.",
    ),
    _sided(
        "buttock_knee_length", "Buttock to front of knee", "buttock-knee length", 330, 880,
        "buttockkneelength", "Back of the buttock to the front of the knee.",
    ),
    _sided(
        "knee_height", "Knee height", "knee height, sitting", 280, 750, "kneeheightsitting",
        "Sole of the shoe as worn to the top of the knee bent to 90 degrees.",
    ),
    _sided(
        "lower_leg_length", "Lower leg length", "lower leg length (G; WHO C)", 200, 640,
        "poplitealheight", "Crease behind the knee to the sole of the shoe as worn.",
    ),
    _sided(
        "foot_length", "Foot length", "foot depth (H)", 140, 420, "footlength",
        "Back of the heel to the tip of the shoe as worn.",
    ),
    _middle(
        "foot_width", "Foot width", "foot width (I)", 50, 190, "footbreadthhorizontal",
        "Widest part of one foot.",
    ),
    _sided(
        "upper_arm_length", "Upper arm length", "shoulder-elbow length", 180, 500,
        "shoulderelbowlength",
        "Bony top of the shoulder to the underside of the elbow bent to 90 degrees.",
    ),
    _sided(
        "forearm_length", "Forearm length", "forearm depth (M), elbow to centre of grip",
        160, 480, "forearmcenterofgriplength",
        "Back of the elbow to the middle of the closed grip.",
    ),
    _sided(
        "hand_length", "Hand length", "hand length", 90, 260, "handlength",
        "Crease of the wrist to the tip of the middle finger.",
    ),
    MeasureKind(
        "shoe_sole", "Shoe sole under the heel", "shoe sole", "length", False, 0, 120, 5.0,
        None, "Thickness of the sole under the heel.",
    ),
)  # fmt: skip

CATALOGUE: dict[str, MeasureKind] = {kind.name: kind for kind in _KINDS}


def check_limits(measure: Measure) -> Problem | None:
    """Say what is wrong when a value lies outside what any adult can have.

    Parameters
    ----------
    measure : Measure
        Value in mm or kg.

    Returns
    -------
    Problem or None
        None when the value is inside the limits of its kind.
    """
    kind = CATALOGUE[measure.name]
    if kind.low <= measure.value <= kind.high:
        return None
    unit = measure.quantity.unit
    return Problem(
        where=measure.where or measure.name,
        must=f"{kind.label.lower()} must lie between {kind.low:g} and {kind.high:g} {unit}",
        got=f"{measure.quantity.typed} ({measure.value:g} {unit})",
        remedy="Check the number and its unit.",
    )
