"""The measures that a perfect tape would take on a shipped set-up, from its drawing."""

from __future__ import annotations

import math

from chairwright.cli.opened import Opened


def measures_of(opened: Opened) -> tuple[dict[str, float], str]:
    """Every measure of a set-up's chair, exact, and its foot supports."""
    setup, shape, figures = opened.setup, opened.setup.shape, opened.setup.figures
    numbers = {name: option.numbers for name, option in setup.options.items()}
    post = -shape.seat_corner[0]
    found = {
        "seat_to_floor_front": shape.seat_front[1],
        "seat_to_floor_rear": shape.seat_corner[1],
        "seat_depth": math.dist(shape.seat_corner, shape.seat_front),
        "seat_width": shape.seat_width_mm,
        "back_angle": math.degrees(
            math.atan2(
                shape.back_bottom[0] - shape.back_top[0], shape.back_top[1] - shape.back_bottom[1]
            )
        ),
        "back_height": math.dist(shape.back_bottom, shape.back_top),
        "back_behind_post": numbers["back_support"]["behind_post_mm"],
        "rear_wheel_diameter": 2 * shape.rear_radius_mm,
        "tyre_width": shape.rear_tyre_width_mm,
        "hand_rim_diameter": 2 * shape.hand_rim_radius_mm * numbers["hand_rim"]["fitted"],
        "hand_rim_standoff": numbers["hand_rim"]["standoff_mm"],
        "caster_diameter": 2 * shape.caster_radius_mm,
        "caster_width": shape.caster_width_mm,
        "wheelbase": shape.caster_axle[0] - shape.rear_axle[0],
        "rear_track": shape.contacts[0].y_mm - shape.contacts[1].y_mm,
        "caster_track": shape.contacts[3].y_mm - shape.contacts[2].y_mm,
        "camber": shape.camber_deg,
        "caster_trail": numbers["fork"]["trail_mm"],
        "caster_stem_angle": figures["caster_stem_angle_deg"],
        "axle_ahead_of_post": post,
        "cushion_front": numbers["cushion"]["front_mm"],
        "cushion_rear": numbers["cushion"]["rear_mm"],
        "arm_pad_height": numbers["arm_support"].get("pad_height_mm", math.nan),
        "push_handle_height": figures["push_handle_height_mm"],
        "push_handle_behind_post": numbers["push_handle"]["behind_mm"],
        "chair_mass": figures["chair_mass_kg"],
        "rear_wheel_mass": numbers["rear_wheel"]["mass_kg"] / 2,
        "com_ahead_of_axle": figures["com_x_mm"],
        "com_to_left": figures["com_y_mm"],
        "com_above_floor": figures["com_z_mm"],
    }
    if shape.foot_supports:
        plate = shape.foot_supports[0]
        found |= {
            "leg_support_length": figures["leg_support_length_mm"],
            "hanger_angle": numbers["hanger"]["angle_deg"] - figures["seat_angle_deg"],
            "footplate_ahead_of_post": plate.plate_front[0] + post,
            "footplate_length": math.dist(plate.plate_rear, plate.plate_front),
            "footplate_clearance": min(plate.plate_rear[1], plate.plate_front[1]),
            "footplate_inset": numbers["foot_plate"]["outer_inset_mm"],
        }
    if shape.anti_tip_wheel is not None:
        found |= {
            "anti_tip_behind_axle": -shape.anti_tip_wheel[0],
            "anti_tip_clearance": shape.anti_tip_wheel[1] - shape.anti_tip_radius_mm,
            "anti_tip_wheel_diameter": 2 * shape.anti_tip_radius_mm,
        }
    told = {name: value for name, value in found.items() if not math.isnan(value)}
    return told, setup.codes["foot_supports"]
