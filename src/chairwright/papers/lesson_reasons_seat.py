"""Why a change of seat, back, arm or foot support moves a figure, in words for a lesson.

Keys and signs as in ``lesson_reasons_gear``.
"""

from __future__ import annotations

from chairwright.papers.lesson_reasons_gear import Reasons

SEAT: Reasons = {
    ("hand_rim", "standoff_mm"): {
        "overall_width_mm": (1, "The rims are the outermost of the chair. Measure the door."),
        "elbow_angle_deg": (None, "The rims stand further out from the shoulders."),
        "folded_width_mm": (1, "What stands outside the wheels is there when folded too."),
    },
    ("seat_width", "width_mm"): {
        "seat_width_mm": (1, "It is the width that was chosen."),
        "overall_width_mm": (
            1,
            "The wheels stand outside the seat: each millimetre of seat is one of chair. Narrow "
            "keeps the arms by the body and the rims in reach.",
        ),
        "rear_track_mm": (1, "The wheels stand outside the seat."),
        "caster_track_mm": (1, "The casters stand outside the seat."),
        "tip_left_deg": (1, "The chair stands on a wider base."),
        "tip_right_deg": (1, "The chair stands on a wider base."),
        "elbow_angle_deg": (None, "The rims stand further out from the shoulders."),
        "folded_width_mm": (None, "What stands outside the seat rails is there when folded too."),
        "chair_mass_kg": (1, "Cross-brace and sling are longer."),
    },
    ("arm_support", "pad_height_mm"): {
        "arm_height_mm": (1, "It is the height that was chosen, less the loaded cushion."),
        "com_z_mm": (1, "The forearms lie on the pads."),
    },
    ("arm_support", ""): {
        "overall_width_mm": (None, "An arm support beside the seat sets the wheels further out."),
        "rear_track_mm": (None, "An arm support beside the seat sets the wheels further out."),
        "tip_left_deg": (None, "Where the wheels stand further out the base is wider."),
        "elbow_angle_deg": (None, "Where the wheels stand further out so do the rims."),
    },
    ("seat_depth", "depth_mm"): {
        "seat_depth_mm": (1, "It is the depth that was chosen, to the surface of the back."),
        "seat_to_floor_front_mm": (
            None,
            "On a seat that slopes, the front edge is higher the further ahead it lies.",
        ),
        "cushion_to_floor_front_mm": (
            None,
            "On a seat that slopes, the front edge is higher the further ahead it lies.",
        ),
        "seat_to_back_angle_deg": (None, "The cushion's own wedge is spread over another depth."),
        "leg_support_length_mm": (None, "It counts from the cushion's front edge, which moves."),
        "tip_rear_locked_deg": (
            None,
            "The body stays against the back: only the sling, the cushion and the slope move.",
        ),
    },
    ("cushion", "front_mm"): {
        "cushion_to_floor_front_mm": (1, "The loaded cushion lies on the seat rail."),
        "com_z_mm": (1, "The body sits higher on the same chair."),
        "tip_rear_locked_deg": (
            -1,
            "The same base under a higher centre of mass: a smaller slope brings the plumb line to "
            "the edge.",
        ),
        "tip_rear_free_deg": (
            -1,
            "Above the axle the centre of mass has risen by a larger share, so more is lost.",
        ),
        "tip_forward_deg": (-1, "The same base under a higher centre of mass."),
        "tip_left_deg": (-1, "The same base under a higher centre of mass."),
        "tip_right_deg": (-1, "The same base under a higher centre of mass."),
        "elbow_angle_deg": (1, "The shoulder is further above the rim: the elbow is straighter."),
        "back_height_mm": (-1, "The back post keeps its length and the body sits higher on it."),
        "arm_height_mm": (-1, "The pad keeps its height above the rail and the body sits higher."),
        "leg_support_length_mm": (1, "The thigh is further above the footplate."),
        "seat_to_back_angle_deg": (None, "A cushion that is higher in front closes the angle."),
        "shoulder_ahead_of_axle_mm": (
            -1,
            "The body slides up along a back that leans back, and so goes back.",
        ),
        "foot_reach_mm": (-1, "The foot has further to go to the floor."),
    },
    ("back_angle", "angle_deg"): {
        "back_angle_deg": (1, "It is the angle that was chosen, with the tilt of the frame."),
        "seat_to_back_angle_deg": (1, "Only the back moves; the seat stays."),
        "com_x_mm": (-1, "Trunk, head and arms go back with the back."),
        "tip_rear_locked_deg": (
            -1,
            "Trunk and head go back over the rear wheels: less way to the rear contact.",
        ),
        "tip_rear_free_deg": (-1, "Trunk and head go back towards above the axle."),
        "tip_forward_deg": (1, "Trunk and head go back, away from the casters."),
        "caster_share": (-1, "More of the body lies over the rear wheels."),
        "elbow_angle_deg": (None, "The shoulder goes back and down against the rim."),
        "shoulder_ahead_of_axle_mm": (-1, "The shoulder goes back with the back."),
        "overall_height_mm": (-1, "A post that leans stands lower."),
    },
    ("back_support", "behind_post_mm"): {
        "seat_depth_mm": (1, "The body sits further back behind the post."),
        "com_x_mm": (-1, "The whole body sits further back on the frame."),
        "tip_rear_locked_deg": (-1, "The whole body sits nearer to above the rear contact."),
        "tip_rear_free_deg": (-1, "The whole body sits nearer to above the axle."),
        "tip_forward_deg": (1, "The whole body sits further from the casters."),
        "caster_share": (-1, "The whole body sits nearer to the rear wheels."),
        "elbow_angle_deg": (None, "The shoulder goes back against the rim."),
        "shoulder_ahead_of_axle_mm": (-1, "The shoulder goes back with the body."),
    },
    ("hanger", "angle_deg"): {
        "tip_forward_deg": (
            1,
            "The steeper the hanger, the further back the legs; legs held out in front weigh "
            "towards the casters.",
        ),
        "com_x_mm": (-1, "The legs come back under the knees."),
        "tip_rear_locked_deg": (-1, "The legs no longer weigh as far ahead of the rear contact."),
        "caster_share": (-1, "The legs no longer weigh as far in front."),
        "overall_length_mm": (-1, "The feet come back."),
        "turning_diameter_mm": (-1, "The feet, which sweep the circle, come back."),
        "half_turn_width_mm": (-1, "The feet, which sweep the widest, come back."),
        "footplate_clearance_mm": (-1, "A steeper tube of the same length reaches further down."),
        "caster_foot_clearance_mm": (
            -1,
            "The footplate comes back towards where the caster swings round.",
        ),
    },
    ("foot_plate", "length_mm"): {
        "caster_foot_clearance_mm": (
            None,
            "Where the plate's rear edge lies decides how near the caster swings.",
        ),
    },
    ("push_handle", "above_mm"): {
        "overall_height_mm": (1, "The handles stand on top of the back post."),
        "overall_length_mm": (None, "Where the grips lie furthest back they count to the length."),
    },
    ("leg_length", "length_mm"): {
        "leg_support_length_mm": (1, "It is the length that was chosen."),
        "footplate_clearance_mm": (
            -1,
            "The footplate hangs lower: 50 mm to the floor is the least that is asked.",
        ),
        "caster_foot_clearance_mm": (None, "Lower down the footplate lies further ahead too."),
    },
    ("back_height", "height_mm"): {
        "back_height_mm": (
            1,
            "It is the height that was chosen, less the loaded cushion. A lower back leaves the "
            "arms a longer stroke.",
        ),
        "overall_height_mm": (1, "The handles stand on top of the back post."),
        "chair_mass_kg": (1, "The posts and the upholstery are longer."),
    },
    ("anti_tip", "z_mm"): {
        "pitch_to_anti_tip_deg": (1, "The higher the device, the further the chair tilts first."),
        "tip_rear_anti_tip_deg": (
            -1,
            "The further the chair tilts before the device touches, the further back the centre of "
            "mass is by then.",
        ),
        "anti_tip_gain_deg": (
            -1,
            "The later it touches, the less it can add: a device can be fitted and add nothing.",
        ),
    },
    ("anti_tip", ""): {
        "pitch_to_anti_tip_deg": (
            None,
            "The further behind the axle the device stands, the sooner it touches.",
        ),
        "tip_rear_anti_tip_deg": (
            None,
            "The further behind it stands, the further the centre of mass may go back.",
        ),
        "anti_tip_gain_deg": (
            None,
            "What it adds hangs on its height and on how far it stands behind: a device that "
            "touches late can add nothing.",
        ),
        "overall_length_mm": (None, "A longer tube stands out behind the wheels."),
        "turning_diameter_mm": (None, "A longer tube stands out behind the wheels."),
    },
}
