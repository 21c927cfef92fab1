"""Every figure: its name, unit, meaning, source, and the formula with the choice that settles it.

``after`` names the last choice, in the order of ``chair.steps.STEPS``, that a figure waits for.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.steps import HIP, STEPS
from chairwright.figures import anti_tip, balance, heights, mass, reach, space, terms
from chairwright.figures.band import Band
from chairwright.figures.mass import MassBox
from chairwright.line.choices import CHOICES
from chairwright.mass_points import FloatArray

ExactFormula = Callable[[Rows, Occupant], FloatArray]
MassFormula = Callable[[Rows, MassBox], Band]


@dataclass(frozen=True)
class Figure:
    """One figure.

    Parameters
    ----------
    name : str
        Unit as suffix.
    label : str
        For people.
    unit : str
    digits : int
        Digits after the point when printed.
    scale : float
        A difference that matters to a fitter, in the figure's unit: preferences are weighed in it.
    group : str
        The question it answers.
    after : str
        The choice that settles it.
    source : str
    exact : callable or None
        Formula that needs no masses.
    weighed : callable or None
        Formula of the centre of mass.
    depends : tuple of str
        All choices that an exact figure depends on, when they are few enough to tabulate.
    """

    name: str
    label: str
    unit: str
    digits: int
    scale: float
    group: str
    after: str
    source: str
    exact: ExactFormula | None = None
    weighed: MassFormula | None = None
    depends: tuple[str, ...] = ()

    @property
    def touched_by(self) -> frozenset[str]:
        """Every choice that can change the figure; for one of masses that is every choice.

        None for a figure of `figures.terms`: options with the same number are alike to it.
        """
        return frozenset(self.depends or POSED.get(self.name, tuple(CHOICES)))

    @property
    def resolution(self) -> float:
        """Smallest difference that is printed."""
        return float(10.0**-self.digits)


SEAT = "Does the seat come out right?"
REACH = "Do hands and feet reach?"
STEADY = "Is it steady?"
PLACES = "Does it fit the places?"
WEIGHT = "What does it weigh?"
ORDER = "What does it cost, and when does it come?"
GROUPS = (SEAT, REACH, STEADY, PLACES, WEIGHT, ORDER)

GEOMETRY = "First principles (theory: pose on a level floor)"
STATICS = "First principles (theory: balance)"
ADDED = "First principles (sum of the parts and body segments)"
TURN = "First principles (theory: space)"

FEW_CHOICES: dict[str, tuple[str, ...]] = {
    "seat_width_mm": ("seat_width",),
    "seat_depth_mm": ("seat_depth", "back_support"),
    "seat_to_back_angle_deg": ("seat_depth", "cushion", "back_angle", "back_support"),
    "back_height_mm": ("cushion", "back_height"),
    "arm_height_mm": ("cushion", "arm_support"),
    "overall_width_mm": ("rear_wheel", "camber", "hand_rim", "seat_width", "arm_support"),
    "folded_width_mm": ("rear_wheel", "camber", "hand_rim", "seat_width", "arm_support"),
    "leg_support_length_mm": ("side_frame", "seat_depth", "cushion", "hanger", "leg_length"),
}

GEAR = STEPS[0].choices
FOOT = ("foot_supports", "hanger", "foot_plate", "leg_length")
POSED: dict[str, tuple[str, ...]] = {
    "seat_to_floor_rear_mm": GEAR,
    "seat_to_floor_front_mm": (*GEAR, "seat_depth"),
    "cushion_to_floor_front_mm": (*GEAR, "seat_depth", "cushion"),
    "foot_reach_mm": (*GEAR, "seat_depth", "cushion"),
    "seat_angle_deg": GEAR,
    "back_angle_deg": (*GEAR, "back_angle", "back_support"),
    "wheelbase_mm": GEAR,
    "caster_stem_angle_deg": GEAR,
    "caster_trail_mm": GEAR,
    "toe_deg": GEAR,
    "rear_track_mm": ("rear_wheel", "camber", "seat_width", "arm_support"),
    "caster_track_mm": ("seat_width",),
    "elbow_angle_deg": (*GEAR, *HIP, "hand_rim", "seat_width", "arm_support"),
    "push_reach_deg": (*GEAR, *HIP, "hand_rim", "seat_width", "arm_support"),
    "shoulder_ahead_of_axle_mm": (*GEAR, *HIP),
    "footplate_clearance_mm": (*GEAR, *FOOT),
    "caster_foot_clearance_mm": (*GEAR, *FOOT),
    "caster_tyre_clearance_mm": (*GEAR, "seat_width", "arm_support"),
    "pitch_to_anti_tip_deg": (*GEAR, "anti_tip"),
    "overall_height_mm": (*GEAR, "back_angle", "back_height", "push_handle", "arm_support"),
    **dict.fromkeys(terms.TERMS, ()),
}
"""Choices that touch an exact figure, where they are too many to tabulate."""

COARSE_SCALE = {
    "overall_length_mm": 50.0,
    "overall_height_mm": 50.0,
    "turning_diameter_mm": 50.0,
    "half_turn_width_mm": 50.0,
}
"""Figures whose differences matter less, millimetre for millimetre, than those of the seat."""


def _mm(
    name: str, label: str, group: str, after: str, exact: ExactFormula, source: str = GEOMETRY
) -> Figure:
    depends, scale = FEW_CHOICES.get(name, ()), COARSE_SCALE.get(name, 10.0)
    return Figure(name, label, "mm", 0, scale, group, after, source, exact=exact, depends=depends)


def _deg(
    name: str, label: str, group: str, after: str, exact: ExactFormula, source: str = GEOMETRY
) -> Figure:
    depends = FEW_CHOICES.get(name, ())
    return Figure(name, label, "deg", 1, 1.0, group, after, source, exact=exact, depends=depends)


def _tip(name: str, label: str, after: str, weighed: MassFormula) -> Figure:
    return Figure(name, label, "deg", 1, 1.0, STEADY, after, STATICS, weighed=weighed)


def _moving(name: str, label: str, weighed: MassFormula) -> Figure:
    return Figure(name, label, "m/s2", 2, 0.2, STEADY, "stem_setting", STATICS, weighed=weighed)


_ALL = (
    _mm("seat_width_mm", "Seat width", SEAT, "seat_width", heights.seat_width),
    _mm("seat_depth_mm", "Effective seat depth", SEAT, "back_support", heights.seat_depth),
    _mm(
        "seat_to_floor_rear_mm", "Seat to floor, back", SEAT, "stem_setting",
        heights.seat_to_floor_rear,
    ),
    _mm(
        "seat_to_floor_front_mm", "Seat to floor, front", SEAT, "seat_depth",
        heights.seat_to_floor_front,
    ),
    _mm(
        "cushion_to_floor_front_mm", "Cushion top to floor, front", SEAT, "cushion",
        heights.cushion_to_floor_front,
    ),
    _deg("seat_angle_deg", "Seat angle", SEAT, "stem_setting", heights.seat_angle),
    _deg("back_angle_deg", "Back angle", SEAT, "back_support", heights.back_angle),
    _deg(
        "seat_to_back_angle_deg", "Seat-to-back angle", SEAT, "back_support",
        heights.seat_to_back_angle,
    ),
    _mm("back_height_mm", "Back height above cushion", SEAT, "back_height", heights.back_height),
    _mm("arm_height_mm", "Arm pad above cushion", SEAT, "arm_support", heights.arm_height),
    _deg("elbow_angle_deg", "Elbow at top of rim", REACH, "arm_support", reach.elbow,
         "Law of cosines"),
    _deg("push_reach_deg", "Elbow off the middle of 100-120", REACH, "arm_support",
         reach.push_reach, "Law of cosines; PVA Consortium 2005"),
    _mm("shoulder_ahead_of_axle_mm", "Shoulder ahead of axle", REACH, "back_support",
        reach.shoulder_ahead_of_axle),
    _mm("leg_support_length_mm", "Cushion to footplate", REACH, "leg_length",
        heights.leg_support_length),
    _mm("foot_reach_mm", "Lower leg beyond cushion height", REACH, "cushion", heights.foot_reach),
    _mm("footplate_clearance_mm", "Footplate to floor", REACH, "leg_length",
        heights.footplate_clearance),
    _tip("tip_rear_locked_deg", "Tips back, wheels locked", "stem_setting", balance.rear_locked),
    _tip("tip_rear_free_deg", "Tips back, wheels free", "stem_setting", balance.rear_free),
    _tip("tip_forward_deg", "Tips forward, casters trailing", "stem_setting", balance.forward),
    _tip("tip_forward_casters_forward_deg", "Tips forward, casters turned ahead", "stem_setting",
         balance.forward_casters_forward),
    _tip("tip_left_deg", "Tips to the left", "arm_support", balance.tip_left),
    _tip("tip_right_deg", "Tips to the right", "arm_support", balance.tip_right),
    _tip("tip_left_line_deg", "Tips left about the wheel line", "arm_support",
         balance.tip_left_line),
    _tip("tip_right_line_deg", "Tips right about the wheel line", "arm_support",
         balance.tip_right_line),
    _tip("tip_least_deg", "Least tipping angle of all directions", "arm_support", balance.least),
    Figure("tip_least_direction_deg", "Direction of the least", "deg", 0, 10.0, STEADY, "belt",
           STATICS, weighed=balance.least_direction),
    _deg("pitch_to_anti_tip_deg", "Pitch until the anti-tip device touches", STEADY, "anti_tip",
         anti_tip.contact_pitch_deg, STATICS),
    _tip("tip_rear_anti_tip_deg", "Tips back over the anti-tip device", "anti_tip",
         anti_tip.over_device),
    _tip("anti_tip_gain_deg", "What the anti-tip device adds", "anti_tip", anti_tip.gain),
    Figure("caster_share", "Share of the load on the casters", "", 3, 0.02, STEADY,
           "stem_setting", STATICS, weighed=balance.caster_share),
    _moving("start_lift_level_mps2", "Push-off that lifts the casters, level",
            balance.start_acceleration(0.0)),
    _moving("start_lift_1_to_12_mps2", "Push-off that lifts the casters, up 1:12",
            balance.start_acceleration(balance.SLOPE_1_TO_12_DEG)),
    _moving("braking_lift_level_mps2", "Braking that lifts the rear wheels, level",
            balance.braking_deceleration(0.0)),
    _moving("braking_lift_1_to_12_mps2", "Braking that lifts the rear wheels, down 1:12",
            balance.braking_deceleration(balance.SLOPE_1_TO_12_DEG)),
    _deg("caster_stem_angle_deg", "Caster stem off vertical", STEADY, "stem_setting",
         heights.caster_stem_angle),
    _mm("caster_trail_mm", "Caster trail on the floor", STEADY, "stem_setting",
        heights.caster_trail),
    Figure("toe_deg", "Toe of each rear wheel", "deg", 2, 0.2, STEADY, "stem_setting", GEOMETRY,
           exact=heights.toe),
    _mm("caster_foot_clearance_mm", "Caster to footplate", STEADY, "leg_length",
        space.caster_foot_clearance, TURN),
    _mm("caster_tyre_clearance_mm", "Caster to rear tyre", STEADY, "arm_support",
        space.caster_tyre_clearance, TURN),
    _mm("wheelbase_mm", "Wheelbase", PLACES, "stem_setting", heights.wheelbase),
    _mm("rear_track_mm", "Rear track", PLACES, "arm_support", heights.rear_track),
    _mm("caster_track_mm", "Caster track", PLACES, "seat_width", heights.caster_track),
    _mm("overall_width_mm", "Overall width", PLACES, "arm_support", space.overall_width, TURN),
    _mm("overall_length_mm", "Overall length, feet included", PLACES, "anti_tip",
        space.overall_length, TURN),
    _mm("overall_height_mm", "Overall height of the chair", PLACES, "push_handle",
        space.overall_height, TURN),
    _mm("folded_width_mm", "Folded width", PLACES, "arm_support", space.folded_width, TURN),
    _mm("turning_diameter_mm", "Turning diameter", PLACES, "anti_tip", space.turning_diameter,
        TURN),
    _mm("half_turn_width_mm", "Width for a half turn", PLACES, "anti_tip", space.half_turn_width,
        TURN),
    Figure("chair_mass_kg", "Chair", "kg", 1, 1.0, WEIGHT, "stem_setting", ADDED,
           weighed=lambda rows, box: box.chair),
    Figure("heaviest_part_kg", "Heaviest part to lift", "kg", 1, 1.0, WEIGHT, "belt", ADDED,
           exact=mass.heaviest_part),
    Figure("total_mass_kg", "Chair with occupant and loads", "kg", 1, 1.0, WEIGHT, "stem_setting",
           ADDED, weighed=lambda rows, box: box.mass),
    Figure("load_margin_kg", "Rated load less occupant and loads", "kg", 1, 5.0, WEIGHT,
           "finish", "The line file's load limits", exact=terms.of_term("load_margin_kg")),
    Figure("price", "List price", "currency", 2, 50.0, ORDER, "finish",
           "The line file's prices", exact=terms.of_term("price")),
    Figure("custom_surcharge", "Part of it for sizes made to order", "currency", 2, 50.0, ORDER,
           "finish", "The line file's surcharges", exact=terms.of_term("custom_surcharge")),
    Figure("lead_days", "Delivery", "days", 0, 5.0, ORDER, "finish",
           "The line file's days", exact=terms.of_term("lead_days")),
    Figure("com_x_mm", "Centre of mass ahead of axle", "mm", 0, 10.0, STEADY, "stem_setting",
           ADDED, weighed=lambda rows, box: box.x),
    Figure("com_y_mm", "Centre of mass to the left", "mm", 0, 10.0, STEADY, "stem_setting",
           ADDED, weighed=lambda rows, box: box.y),
    Figure("com_z_mm", "Centre of mass above floor", "mm", 0, 10.0, STEADY, "stem_setting",
           ADDED, weighed=lambda rows, box: box.z),
)  # fmt: skip

FIGURES: dict[str, Figure] = {figure.name: figure for figure in _ALL}
