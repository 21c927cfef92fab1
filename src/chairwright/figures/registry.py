"""Every figure with its formula, and the choice that settles it; families of figures by name."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from chairwright.chair.steps import HIP, STEPS
from chairwright.figures import (
    anti_tip,
    balance,
    carer,
    heights,
    mass,
    reach,
    rolling,
    space,
    starting,
    steps_up,
    stroke,
    terms,
    turning_push,
    yaw,
)
from chairwright.figures.families import MOTION, ROLLING, resolve
from chairwright.figures.figure import (
    GROUPS,
    MOVING,
    ORDER,
    PLACES,
    REACH,
    SEAT,
    STEADY,
    WEIGHT,
    ExactFormula,
    Figure,
    MassFormula,
)

__all__ = ["FIGURES", "GROUPS", "Figure", "Figures"]

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
    "push_arc_deg": (*GEAR, *HIP, "hand_rim", "seat_width", "arm_support"),
    "fingertip_to_axle_mm": (*GEAR, *HIP),
    "heel_reach_mm": (*GEAR, *HIP),
    "knee_top_mm": (*GEAR, *HIP),
    "push_handle_height_mm": (*GEAR, "back_angle", "back_height", "push_handle"),
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
    "half_turn_free_mm": 50.0,
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


def _push(name: str, label: str, weighed: MassFormula) -> Figure:
    return Figure(name, label, "N", 1, 2.0, MOVING, "stem_setting", ROLLING, weighed=weighed)


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
    Figure("push_arc_deg", "Arc of the rim that is held", "deg", 0, 5.0, REACH, "arm_support",
           "Law of cosines; elbow limits: common practice, no source", exact=stroke.push_arc),
    _mm("shoulder_ahead_of_axle_mm", "Shoulder ahead of axle", REACH, "back_support",
        reach.shoulder_ahead_of_axle),
    _mm("fingertip_to_axle_mm", "Fingertips above the axle", REACH, "back_support",
        stroke.fingertip_to_axle, "First principles (theory: reach); de Leva 1996"),
    _mm("leg_support_length_mm", "Cushion to footplate", REACH, "leg_length",
        heights.leg_support_length),
    _mm("foot_reach_mm", "Lower leg beyond cushion height", REACH, "cushion", heights.foot_reach),
    _mm("heel_reach_mm", "Heel set down ahead of the knee", REACH, "back_support",
        stroke.heel_reach, "First principles (theory: reach)"),
    _mm("knee_top_mm", "Top of the knees above floor", REACH, "back_support", reach.knee_top,
        "First principles (theory: reach)"),
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
            starting.start_acceleration(0.0)),
    _moving("start_lift_1_to_12_mps2", "Push-off that lifts the casters, up 1:12",
            starting.start_acceleration(balance.SLOPE_1_TO_12_DEG)),
    _moving("braking_lift_level_mps2", "Braking that lifts the rear wheels, level",
            starting.braking_deceleration(0.0)),
    _moving("braking_lift_1_to_12_mps2", "Braking that lifts the rear wheels, down 1:12",
            starting.braking_deceleration(balance.SLOPE_1_TO_12_DEG)),
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
    _push("push_force_level_n", "Push to keep rolling, level hard floor",
          rolling.keeps_rolling(rolling.HARD)),
    _push("push_force_carpet_n", "Push to keep rolling, level carpet",
          rolling.keeps_rolling(rolling.CARPET)),
    Figure("yaw_inertia_kgm2", "Yaw inertia about the middle of the axle", "kg m2", 2, 0.5, MOVING,
           "belt", "First principles (theory: rolling); de Leva 1996", exact=yaw.yaw_inertia),
    Figure("downhill_moment_nm_per_deg", "Turns downhill, per degree of cross slope", "N m/deg", 2,
           0.2, MOVING, "stem_setting", MOTION, weighed=turning_push.downhill_moment_per_deg),
    Figure("tip_lever_n", "Force on a tip lever to raise the casters", "N", 0, 20.0, MOVING,
           "stem_setting", MOTION, weighed=steps_up.tip_lever),
    Figure("push_handle_height_mm", "Push handles above floor", "mm", 0, 20.0, MOVING,
           "push_handle", GEOMETRY, exact=carer.push_handle_height),
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
    _mm("half_turn_free_mm", "Width for a half turn, moving to and fro", PLACES, "anti_tip",
        space.half_turn_free, TURN),
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


class Figures(Mapping[str, Figure]):
    """Every figure by name; also one of a family, ``family@parameters``, made when asked for.

    Only the fixed figures are counted and gone through.

    Parameters
    ----------
    fixed : tuple of Figure
    """

    def __init__(self, fixed: tuple[Figure, ...]) -> None:
        self._fixed = {figure.name: figure for figure in fixed}
        self._made: dict[str, Figure] = {}

    def __getitem__(self, name: str) -> Figure:
        """Return one figure; KeyError when there is none such."""
        found = self._fixed.get(name) or self._made.get(name)
        if found is None:
            found = resolve(name) if isinstance(name, str) else None
            if found is None:
                raise KeyError(name)
            self._made[name] = found
        return found

    def __iter__(self) -> Iterator[str]:
        """Go through the names of the fixed figures, in the registry's order."""
        return iter(self._fixed)

    def __len__(self) -> int:
        """Return the number of fixed figures."""
        return len(self._fixed)


FIGURES = Figures(
    tuple(replace(figure, touches=POSED.get(figure.name, figure.touches)) for figure in _ALL)
)
