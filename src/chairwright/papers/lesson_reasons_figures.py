"""What each figure hangs on, for a lesson in which no special reason is known."""

from __future__ import annotations

from collections.abc import Mapping

FIGURE_REASONS: Mapping[str, str] = {
    "seat_width_mm": "It is the width between the seat rails.",
    "seat_depth_mm": "It counts from the loaded back surface to the seat's front edge.",
    "seat_to_floor_rear_mm": "The back of the frame stands on the rear wheels, in their axle hole.",
    "seat_to_floor_front_mm": "The front stands on the casters: caster, fork and housing add up.",
    "cushion_to_floor_front_mm": "It is the front of the seat with the loaded cushion on it.",
    "seat_angle_deg": "The frame stands on two axles: raise one end and it tilts.",
    "back_angle_deg": "The back post tilts with the frame.",
    "seat_to_back_angle_deg": "It is between the top of the cushion and the back.",
    "back_height_mm": "It counts from the loaded cushion to the top of the back.",
    "arm_height_mm": "It counts from the loaded cushion to the top of the pad.",
    "elbow_angle_deg": "The nearer the shoulder is to the top of the rim, the more it bends.",
    "push_reach_deg": "It is how far the elbow angle is from the middle of the usual range.",
    "push_arc_deg": "The nearer the shoulder is to the rim, the longer the hand stays on it.",
    "fingertip_to_axle_mm": "It counts from the axle up to where the hanging arm ends.",
    "knee_top_mm": "The higher the hip and the steeper the thigh, the higher the knee.",
    "heel_reach_mm": "The lower the knee, the farther ahead the heel comes down.",
    "shoulder_ahead_of_axle_mm": "Seat, back and tilt place the shoulder, the hole the axle.",
    "leg_support_length_mm": "It counts along the hanger from the cushion's front edge.",
    "foot_reach_mm": "It is the lower leg with its shoe less the height of the cushion's front.",
    "footplate_clearance_mm": "The footplates hang on the front of the frame and tilt with it.",
    "tip_rear_locked_deg": "How far the centre of mass lies ahead of the rear contact, over its "
    "height.",
    "tip_rear_free_deg": "How far the centre of mass lies ahead of the axle, over its height above "
    "it.",
    "tip_forward_deg": "How far the caster contacts lie ahead of the centre of mass, over its "
    "height.",
    "tip_forward_casters_forward_deg": "As forward, but with the casters turned ahead, so on a "
    "longer base.",
    "tip_left_deg": "How far the line from rear wheel to caster lies outside the centre of mass, "
    "over its height.",
    "tip_right_deg": "How far the line from rear wheel to caster lies outside the centre of mass, "
    "over its height.",
    "tip_left_line_deg": "As to the left, square to the line from rear wheel to caster.",
    "tip_right_line_deg": "As to the right, square to the line from rear wheel to caster.",
    "tip_least_deg": "The nearest edge of the area between the four wheels, over the height of the "
    "centre of mass.",
    "tip_least_direction_deg": "The way to the nearest edge of the area between the four wheels.",
    "pitch_to_anti_tip_deg": "The gap to the floor over the way from axle to device.",
    "tip_rear_anti_tip_deg": "Tilted until it touches, the chair then tips over the device.",
    "anti_tip_gain_deg": "The angle over the device less the chair's own.",
    "caster_share": "The distance from axle to centre of mass over the wheelbase.",
    "start_lift_level_mps2": "The more load on the casters, the harder the push that lifts them.",
    "start_lift_1_to_12_mps2": "As on the level, with less load on the casters uphill.",
    "braking_lift_level_mps2": "The longer the base ahead of the centre of mass and the lower that "
    "is, the harder one may brake.",
    "braking_lift_1_to_12_mps2": "As on the level, with more load on the casters downhill.",
    "caster_stem_angle_deg": "The stem tilts with the frame; the housing can be squared again.",
    "caster_trail_mm": "The fork's own trail, and more when the stem leans back.",
    "toe_deg": "On a frame that tilts, wheels with camber no longer run parallel.",
    "caster_foot_clearance_mm": "The caster sweeps a circle about its stem; the footplate and heel "
    "must stay out of it.",
    "caster_tyre_clearance_mm": "The caster sweeps a circle about its stem; the tyre must stay "
    "out of it.",
    "push_force_level_n": "Each wheel's load, over its radius, times what its tyre loses.",
    "push_force_carpet_n": "As on a hard floor, and the carpet's share of the weight.",
    "yaw_inertia_kgm2": "Every mass times the square of its distance from the middle of the axle.",
    "downhill_moment_nm_per_deg": "The weight times how far it lies ahead of the axle.",
    "tip_lever_n": "What lies ahead of the axle is lifted by what the foot presses behind it.",
    "push_handle_height_mm": "The back posts with their handles stand on the frame and tilt with "
    "it.",
    "wheelbase_mm": "The distance of the rear axle from the caster contacts.",
    "rear_track_mm": "Where the wheels stand beside the seat, and how far they lean.",
    "caster_track_mm": "The casters stand beside the seat.",
    "overall_width_mm": "The outermost of wheels, hand rims and arm supports.",
    "overall_length_mm": "From the rearmost part to the toes.",
    "overall_height_mm": "The highest part of the chair.",
    "folded_width_mm": "The seat rails together, and what stands outside them.",
    "turning_diameter_mm": "Twice the way from the middle of the axle to the farthest corner.",
    "half_turn_free_mm": "The two points of the outline that are farthest apart.",
    "half_turn_width_mm": "The farthest corners ahead of and behind the middle of the axle.",
    "chair_mass_kg": "The sum of the parts.",
    "heaviest_part_kg": "The heaviest of the parts that come off, or the frame that is left.",
    "total_mass_kg": "The chair with the person and the daily load.",
    "load_margin_kg": "The least load limit of the parts, less the person and the daily load.",
    "com_x_mm": "The mean place of body, parts and loads, from the axle.",
    "com_y_mm": "The mean place of body, parts and loads, to the left.",
    "com_z_mm": "The mean height of body, parts and loads.",
    "price": "The sum of the parts' prices.",
    "lead_days": "The days of the build and the longest wait for a part.",
    "custom_surcharge": "What the sizes made to order cost above the standard ones.",
}
"""One sentence a figure, which holds whatever was changed."""
