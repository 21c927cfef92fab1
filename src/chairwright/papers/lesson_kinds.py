"""What a lesson about each choice is called, and which figures it is about."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from chairwright.figures.registry import FIGURES, Figure
from chairwright.figures.terms import TERMS
from chairwright.fitting.allowed import plain
from chairwright.fitting.moved import change, moved_figures
from chairwright.fitting.sweep import Sweep, SweptRun


@dataclass(frozen=True)
class Kind:
    """One kind of lesson.

    Parameters
    ----------
    title : str
        One step along the sweep, in plain words.
    ends : tuple of str
        What the first and the last option of the sweep are called.
    figures : tuple of str
        What it is about, the most telling first.
    """

    title: str
    ends: tuple[str, str]
    figures: tuple[str, ...]


KINDS: Mapping[tuple[str, str], Kind] = {
    ("axle_hole", "x_mm"): Kind(
        "One hole further forward",
        ("rearmost", "foremost"),
        (
            "tip_rear_locked_deg", "caster_share", "turning_diameter_mm", "elbow_angle_deg",
            "caster_stem_angle_deg", "tip_forward_deg", "caster_tyre_clearance_mm",
        ),
    ),
    ("axle_hole", "z_mm"): Kind(
        "One hole higher",
        ("lowest", "highest"),
        (
            "tip_rear_locked_deg", "caster_share", "turning_diameter_mm", "elbow_angle_deg",
            "caster_stem_angle_deg", "tip_forward_deg", "seat_to_floor_rear_mm",
        ),
    ),
    ("side_frame", "caster_tube_x_mm"): Kind(
        "A longer side frame",
        ("shortest", "longest"),
        (
            "wheelbase_mm", "tip_forward_deg", "caster_share", "caster_tyre_clearance_mm",
            "caster_foot_clearance_mm", "overall_length_mm", "chair_mass_kg", "load_margin_kg",
        ),
    ),
    ("rear_wheel", "radius_mm"): Kind(
        "A larger rear wheel",
        ("smallest", "largest"),
        (
            "seat_to_floor_rear_mm", "seat_angle_deg", "elbow_angle_deg", "tip_rear_locked_deg",
            "caster_stem_angle_deg", "tip_forward_deg", "footplate_clearance_mm", "chair_mass_kg",
        ),
    ),
    ("camber", "angle_deg"): Kind(
        "More camber",
        ("most upright", "most camber"),
        (
            "rear_track_mm", "tip_left_deg", "tip_rear_locked_deg", "overall_width_mm", "toe_deg",
            "tip_forward_deg", "seat_to_floor_rear_mm", "caster_trail_mm",
        ),
    ),
    ("caster", "radius_mm"): Kind(
        "A larger caster",
        ("smallest", "largest"),
        (
            "seat_to_floor_front_mm", "seat_angle_deg", "caster_stem_angle_deg",
            "tip_forward_deg", "caster_foot_clearance_mm", "tip_rear_locked_deg", "caster_share",
            "elbow_angle_deg",
        ),
    ),
    ("fork", "drop_mm"): Kind(
        "One fork hole lower",
        ("highest", "lowest"),
        (
            "seat_to_floor_front_mm", "seat_angle_deg", "caster_stem_angle_deg",
            "tip_forward_deg", "tip_rear_locked_deg", "caster_trail_mm", "caster_share",
            "footplate_clearance_mm",
        ),
    ),
    ("fork", ""): Kind(
        "Another fork",
        ("first", "last"),
        (
            "caster_trail_mm", "wheelbase_mm", "caster_foot_clearance_mm", "tip_forward_deg",
            "caster_tyre_clearance_mm", "seat_to_floor_front_mm",
        ),
    ),
    ("stem_spacer", "height_mm"): Kind(
        "A stem spacer",
        ("shortest", "longest"),
        (
            "seat_to_floor_front_mm", "seat_angle_deg", "caster_stem_angle_deg",
            "tip_forward_deg", "tip_rear_locked_deg", "caster_share", "footplate_clearance_mm",
        ),
    ),
    ("caster_housing", "ahead_mm"): Kind(
        "The casters further forward",
        ("rearmost", "foremost"),
        (
            "wheelbase_mm", "tip_forward_deg", "caster_share", "caster_foot_clearance_mm",
            "caster_tyre_clearance_mm", "tip_rear_locked_deg", "caster_stem_angle_deg",
        ),
    ),
    ("caster_housing", "z_mm"): Kind(
        "The housing one hole higher",
        ("lowest", "highest"),
        (
            "seat_to_floor_front_mm", "tip_forward_deg", "caster_share", "tip_rear_locked_deg",
            "caster_stem_angle_deg", "seat_angle_deg", "footplate_clearance_mm",
        ),
    ),
    ("stem_setting", "angle_deg"): Kind(
        "The caster stem squared again",
        ("most forward", "furthest back"),
        (
            "caster_stem_angle_deg", "caster_trail_mm", "seat_to_floor_front_mm", "wheelbase_mm",
            "tip_forward_deg", "caster_share", "seat_angle_deg",
        ),
    ),
    ("hand_rim", "standoff_mm"): Kind(
        "Hand rims further out",
        ("closest", "furthest out"),
        ("overall_width_mm", "elbow_angle_deg", "folded_width_mm", "chair_mass_kg"),
    ),
    ("seat_width", "width_mm"): Kind(
        "A wider seat",
        ("narrowest", "widest"),
        (
            "overall_width_mm", "tip_left_deg", "elbow_angle_deg", "folded_width_mm",
            "chair_mass_kg", "rear_track_mm", "seat_width_mm",
        ),
    ),
    ("arm_support", "pad_height_mm"): Kind(
        "A higher arm pad",
        ("lowest", "highest"),
        ("arm_height_mm", "com_z_mm", "tip_rear_locked_deg"),
    ),
    ("arm_support", ""): Kind(
        "Another arm support",
        ("first", "last"),
        (
            "overall_width_mm", "tip_left_deg", "elbow_angle_deg", "rear_track_mm",
            "chair_mass_kg", "arm_height_mm",
        ),
    ),
    ("seat_depth", "depth_mm"): Kind(
        "A deeper seat",
        ("shallowest", "deepest"),
        (
            "seat_depth_mm", "cushion_to_floor_front_mm", "leg_support_length_mm",
            "seat_to_back_angle_deg", "tip_rear_locked_deg", "chair_mass_kg",
        ),
    ),
    ("cushion", "front_mm"): Kind(
        "A thicker cushion",
        ("thinnest", "thickest"),
        (
            "cushion_to_floor_front_mm", "com_z_mm", "tip_rear_locked_deg", "tip_forward_deg",
            "elbow_angle_deg", "back_height_mm", "arm_height_mm", "leg_support_length_mm",
        ),
    ),
    ("back_angle", "angle_deg"): Kind(
        "The back one step further back",
        ("most upright", "furthest back"),
        (
            "back_angle_deg", "tip_rear_locked_deg", "tip_forward_deg", "caster_share",
            "elbow_angle_deg", "seat_to_back_angle_deg", "shoulder_ahead_of_axle_mm",
            "overall_length_mm",
        ),
    ),
    ("back_support", "behind_post_mm"): Kind(
        "A back that lets the body further back",
        ("furthest forward", "furthest back"),
        (
            "seat_depth_mm", "tip_rear_locked_deg", "tip_forward_deg", "caster_share",
            "elbow_angle_deg", "shoulder_ahead_of_axle_mm",
        ),
    ),
    ("back_support", ""): Kind(
        "Another back",
        ("first", "last"),
        (
            "seat_depth_mm", "tip_rear_locked_deg", "tip_forward_deg", "caster_share",
            "elbow_angle_deg", "back_angle_deg", "chair_mass_kg",
        ),
    ),
    ("hanger", ""): Kind(
        "Another hanger",
        ("first", "last"),
        (
            "tip_forward_deg", "overall_length_mm", "turning_diameter_mm",
            "footplate_clearance_mm", "caster_foot_clearance_mm", "chair_mass_kg",
        ),
    ),
    ("foot_plate", "length_mm"): Kind(
        "A longer footplate",
        ("shortest", "longest"),
        (
            "caster_foot_clearance_mm", "overall_length_mm", "turning_diameter_mm",
            "footplate_clearance_mm", "chair_mass_kg",
        ),
    ),
    ("push_handle", "above_mm"): Kind(
        "Higher push handles",
        ("lowest", "highest"),
        ("overall_height_mm", "overall_length_mm", "half_turn_width_mm", "chair_mass_kg"),
    ),
    ("hanger", "angle_deg"): Kind(
        "A steeper hanger",
        ("most held out", "steepest"),
        (
            "tip_forward_deg", "overall_length_mm", "turning_diameter_mm",
            "footplate_clearance_mm", "caster_foot_clearance_mm", "caster_share",
            "tip_rear_locked_deg",
        ),
    ),
    ("leg_length", "length_mm"): Kind(
        "A longer hanger",
        ("shortest", "longest"),
        (
            "leg_support_length_mm", "footplate_clearance_mm", "caster_foot_clearance_mm",
            "overall_length_mm", "turning_diameter_mm",
        ),
    ),
    ("back_height", "height_mm"): Kind(
        "A higher back",
        ("lowest", "highest"),
        ("back_height_mm", "overall_height_mm", "chair_mass_kg", "tip_rear_locked_deg"),
    ),
    ("anti_tip", "z_mm"): Kind(
        "The anti-tip device one hole higher",
        ("lowest", "highest"),
        ("pitch_to_anti_tip_deg", "tip_rear_anti_tip_deg", "anti_tip_gain_deg"),
    ),
    ("anti_tip", ""): Kind(
        "Another anti-tip device",
        ("first", "last"),
        (
            "pitch_to_anti_tip_deg", "tip_rear_anti_tip_deg", "anti_tip_gain_deg",
            "overall_length_mm", "turning_diameter_mm",
        ),
    ),
    ("foot_supports", ""): Kind(
        "Other foot supports",
        ("first", "last"),
        ("tip_forward_deg", "com_y_mm", "overall_length_mm", "chair_mass_kg"),
    ),
}  # fmt: skip

COSTS = ("price", "lead_days")
"""What a choice costs stands under every lesson in which it moves."""

MOST_FIGURES = 8
LEAST_STEP = 0.5


def kind_of(choice: str, along: str) -> Kind:
    """The kind of lesson that a choice makes; a plain one when nothing special is known."""
    known = KINDS.get((choice, along))
    return known or Kind(f"Another {plain(choice)}", ("first", "last"), ())


def title_of(sweep: Sweep) -> str:
    """The lesson's title: one step along each run, in plain words."""
    titles = [kind_of(sweep.choice, run.run.along).title for run in sweep.runs]
    rest = [title[0].lower() + title[1:] for title in titles[1:]]
    return ", ".join([titles[0], *rest])


def lesson_figures(sweep: Sweep, run: SweptRun, most: int = MOST_FIGURES) -> tuple[Figure, ...]:
    """The figures that a lesson about one run shows.

    Parameters
    ----------
    sweep : Sweep
    run : SweptRun
    most : int

    Returns
    -------
    tuple of Figure
        First those that the kind of lesson is about; when few of them move, then those that
        move farthest as well, by half a step that matters to a fitter or more; last the price
        and the days. One at least when any moves.
    """
    setups = run.setups()
    named = kind_of(sweep.choice, run.run.along).figures
    moving = moved_figures(sweep.base, setups)
    costs = [FIGURES[name] for name in COSTS if FIGURES[name] in moving]
    most -= len(costs)
    chosen = [FIGURES[name] for name in named if FIGURES[name] in moving]
    rest = [figure for figure in moving if figure not in chosen and figure.name not in TERMS]
    rest.sort(key=lambda figure: -steps_moved(sweep, run, figure))
    telling = [figure for figure in rest if steps_moved(sweep, run, figure) >= LEAST_STEP]
    more = telling[: max(0, most // 2 - len(chosen))]
    shown = [*chosen, *more][:most] or rest[:1]
    return (*shown, *costs)


def steps_moved(sweep: Sweep, run: SweptRun, figure: Figure) -> float:
    """How far a figure goes along a run, in steps that matter to a fitter.

    Parameters
    ----------
    sweep : Sweep
    run : SweptRun
    figure : Figure
    """
    now = sweep.base.figures[figure.name]
    changes = [change(figure, now, each.figures[figure.name]) for each in run.setups()]
    return max((abs(each) for each in changes if not math.isnan(each)), default=0.0) / figure.scale
