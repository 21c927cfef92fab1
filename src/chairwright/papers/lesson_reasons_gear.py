"""Why a change of the running gear moves a figure, in words for a lesson.

Keys are the choice and the number that rises along the sweep. Each sentence goes with the sign
that it explains: 1 the figure rises, -1 it falls, 0 it hardly moves, None whichever way. A
sentence is used only where the calculated figure goes that way.
"""

from __future__ import annotations

from collections.abc import Mapping

Reasons = Mapping[tuple[str, str], Mapping[str, tuple[int | None, str]]]

GEAR: Reasons = {
    ("axle_hole", "x_mm"): {
        "tip_rear_locked_deg": (
            -1,
            "Tipping back, the chair turns about the rear tyre contact. Further forward it stands "
            "nearer below the centre of mass, which then has less way to go.",
        ),
        "tip_rear_free_deg": (
            -1,
            "With free wheels the frame turns about the axle, which is nearer to the centre of "
            "mass: each hole counts for more degrees.",
        ),
        "tip_least_deg": (
            -1,
            "Backward is the least steady way here, and it goes with the rear contact.",
        ),
        "tip_forward_deg": (
            0,
            "Forward hardly anything changes: the casters stay where they are under the frame.",
        ),
        "caster_share": (
            -1,
            "The share is the distance from axle to centre of mass over the wheelbase; it shrinks. "
            "With less on the casters the chair rolls more easily and turns less downhill.",
        ),
        "turning_diameter_mm": (
            -1,
            "The chair turns about the middle of its axle. Further forward that is nearer to the "
            "feet, which sweep the circle.",
        ),
        "half_turn_width_mm": (
            -1,
            "The axle, about which it turns, comes nearer to the feet that sweep the widest.",
        ),
        "elbow_angle_deg": (
            None,
            "The elbow is bent most with the shoulder straight above the axle: fore and aft little "
            "changes, except how far back the hands reach.",
        ),
        "shoulder_ahead_of_axle_mm": (
            -1,
            "The axle comes forward under a shoulder that stays: the hands reach the rim further "
            "back.",
        ),
        "caster_stem_angle_deg": (
            1,
            "The same difference in height between the axles, over a shorter wheelbase, tilts the "
            "frame back more, and the stem with it.",
        ),
        "seat_angle_deg": (
            1,
            "The same difference in height, over a shorter wheelbase, tilts the frame back more.",
        ),
        "wheelbase_mm": (-1, "The rear wheels come nearer to the casters."),
        "com_x_mm": (-1, "Seat and body stay; it is the axle, which it counts from, that moves."),
        "caster_tyre_clearance_mm": (
            -1,
            "The rear tyre comes nearer to where the caster swings round: check that they clear.",
        ),
        "overall_length_mm": (-1, "The rear wheels no longer stand out as far behind."),
        "start_lift_level_mps2": (-1, "With less on the casters a hard push lifts them sooner."),
        "start_lift_1_to_12_mps2": (
            -1,
            "Uphill the little load on the casters goes back too, so a push lifts them sooner.",
        ),
        "pitch_to_anti_tip_deg": (
            -1,
            "The device keeps its place on the frame and so lies further behind the axle: it "
            "touches after a smaller tilt.",
        ),
        "tip_rear_anti_tip_deg": (
            1,
            "The device touches sooner, with the frame less tilted and the centre of mass less far "
            "back.",
        ),
    },
    ("axle_hole", "z_mm"): {
        "seat_to_floor_rear_mm": (
            -1,
            "The wheel keeps its size: a higher hole lets the back of the frame down onto it.",
        ),
        "seat_angle_deg": (
            1,
            "Only the back of the frame goes down, so the seat tips back.",
        ),
        "back_angle_deg": (1, "The back post leans back with the frame."),
        "elbow_angle_deg": (
            -1,
            "Seat and shoulder come down towards the rim: the hand at its top is nearer, and the "
            "elbow bends more. A smaller angle with a longer way along the rim.",
        ),
        "caster_stem_angle_deg": (
            1,
            "The frame tilts back and takes the stem with it: the casters no longer stand square.",
        ),
        "caster_trail_mm": (1, "A stem that leans back meets the floor further ahead."),
        "tip_rear_locked_deg": (
            -1,
            "The tilting frame carries the centre of mass back over the rear wheels; that costs "
            "more than coming down gains.",
        ),
        "tip_rear_free_deg": (
            -1,
            "The tilting frame carries the centre of mass back towards above the axle.",
        ),
        "tip_least_deg": (
            -1,
            "Backward is the least steady way here, and the centre of mass goes back.",
        ),
        "tip_forward_deg": (
            1,
            "The centre of mass goes back, away from the casters, and down: the chair is harder "
            "to tip forward.",
        ),
        "caster_share": (-1, "Tilted back, more of the weight lies over the rear wheels."),
        "turning_diameter_mm": (
            None,
            "The tilt moves the feet a little against the axle about which the chair turns; the "
            "axle's own place fore and aft counts for far more.",
        ),
        "footplate_clearance_mm": (1, "The front rises as the frame tilts back."),
        "toe_deg": (1, "On a frame that tilts back, wheels with camber turn out."),
        "shoulder_ahead_of_axle_mm": (-1, "The tilting frame carries the shoulder back."),
        "com_x_mm": (-1, "The tilting frame carries the body back over the axle."),
        "com_z_mm": (-1, "The back of the frame, with most of the weight, comes down."),
    },
    ("side_frame", "caster_tube_x_mm"): {
        "wheelbase_mm": (1, "The casters hang on a tube that stands further forward."),
        "tip_forward_deg": (
            1,
            "Tipping forward, the chair turns about the caster contacts; they are further ahead.",
        ),
        "caster_share": (-1, "The same weight over a longer base: less of it at the front."),
        "caster_tyre_clearance_mm": (1, "The caster swings further from the rear tyre."),
    },
    ("rear_wheel", "radius_mm"): {
        "seat_to_floor_rear_mm": (1, "The axle is one wheel radius above the floor."),
        "seat_angle_deg": (-1, "Only the back of the frame rises, so the seat tips forward."),
        "caster_stem_angle_deg": (
            -1,
            "The back rises, the frame tips forward and takes the stem with it.",
        ),
        "elbow_angle_deg": (
            -1,
            "The rim grows about an axle that keeps its place in the frame: its top comes nearer "
            "to the shoulder.",
        ),
        "tip_rear_locked_deg": (
            1,
            "The frame tips forward and carries the centre of mass away from the rear contact.",
        ),
        "tip_forward_deg": (
            -1,
            "The frame tips forward and up: the centre of mass comes nearer to the casters.",
        ),
        "caster_share": (1, "Tipped forward, more of the weight lies over the casters."),
        "footplate_clearance_mm": (-1, "The front dips as the back rises."),
        "overall_length_mm": (1, "A larger wheel stands out further behind."),
        "chair_mass_kg": (None, "The wheels themselves are heavier or lighter."),
    },
    ("camber", "angle_deg"): {
        "rear_track_mm": (1, "The tops lean in and the bottoms stand out: the track grows."),
        "overall_width_mm": (1, "The bottoms of the wheels stand out. Measure the door."),
        "tip_left_deg": (1, "The chair stands on a wider base."),
        "tip_right_deg": (1, "The chair stands on a wider base."),
        "tip_rear_locked_deg": (
            -1,
            "A leaning wheel is lower at its hub: the frame tilts back and so does the centre of "
            "mass.",
        ),
        "tip_rear_free_deg": (-1, "The frame tilts back a little, and so does the body."),
        "tip_forward_deg": (1, "The centre of mass goes back, away from the casters."),
        "toe_deg": (
            1,
            "On a frame that tilts back, leaning wheels point outward, and every degree of toe "
            "makes the chair roll harder.",
        ),
        "seat_to_floor_rear_mm": (-1, "A leaning wheel is lower at its hub."),
        "caster_trail_mm": (1, "The stem leans back with the frame and trails further."),
        "wheelbase_mm": (1, "The frame lies a little lower at the back and reaches further."),
        "com_x_mm": (-1, "The frame tilts back a little, and the body with it."),
    },
    ("caster", "radius_mm"): {
        "seat_to_floor_front_mm": (1, "The front stands on a larger wheel."),
        "seat_angle_deg": (1, "Only the front rises, so the seat tips back."),
        "caster_stem_angle_deg": (1, "The front rises and the stem leans back with the frame."),
        "tip_rear_locked_deg": (-1, "The frame tilts back and carries the centre of mass back."),
        "tip_forward_deg": (
            1,
            "The frame tilts back and carries the centre of mass away from the casters.",
        ),
        "caster_share": (-1, "Tilted back, more of the weight lies over the rear wheels."),
        "caster_foot_clearance_mm": (-1, "A larger caster needs more room to swing round."),
        "caster_tyre_clearance_mm": (-1, "A larger caster needs more room to swing round."),
        "footplate_clearance_mm": (1, "The front of the frame, with the footplates, rises."),
        "elbow_angle_deg": (None, "The frame tilts and moves the shoulder against the rim."),
    },
    ("fork", "drop_mm"): {
        "seat_to_floor_front_mm": (1, "The caster hangs lower in the fork and lifts the front."),
        "seat_angle_deg": (1, "Only the front rises, so the seat tips back."),
        "caster_stem_angle_deg": (1, "The front rises and the stem leans back with the frame."),
        "tip_rear_locked_deg": (-1, "The frame tilts back and carries the centre of mass back."),
        "tip_forward_deg": (
            1,
            "The frame tilts back and carries the centre of mass away from the casters.",
        ),
        "caster_share": (-1, "Tilted back, more of the weight lies over the rear wheels."),
        "caster_trail_mm": (1, "A stem that leans back meets the floor further ahead."),
        "footplate_clearance_mm": (1, "The front of the frame, with the footplates, rises."),
    },
    ("stem_spacer", "height_mm"): {
        "seat_to_floor_front_mm": (1, "The spacer sets fork and caster lower: the front rises."),
        "seat_angle_deg": (1, "Only the front rises, so the seat tips back."),
        "caster_stem_angle_deg": (1, "The front rises and the stem leans back with the frame."),
        "tip_rear_locked_deg": (-1, "The frame tilts back and carries the centre of mass back."),
        "tip_forward_deg": (
            1,
            "The frame tilts back and carries the centre of mass away from the casters.",
        ),
        "caster_share": (-1, "Tilted back, more of the weight lies over the rear wheels."),
        "footplate_clearance_mm": (1, "The front of the frame, with the footplates, rises."),
    },
    ("fork", ""): {
        "caster_trail_mm": (
            None,
            "The trail is the fork's own, and a little more when the stem leans back. A long one "
            "turns easily and sweeps a wide arc.",
        ),
        "wheelbase_mm": (None, "The casters stand the trail behind their stems."),
        "caster_foot_clearance_mm": (None, "A longer trail sweeps a wider circle."),
        "seat_to_floor_front_mm": (None, "The holes of the forks do not lie equally low."),
    },
    ("caster_housing", "ahead_mm"): {
        "wheelbase_mm": (1, "The casters move forward under the frame, the axle stays."),
        "tip_forward_deg": (
            1,
            "Tipping forward, the chair turns about the caster contacts; further ahead they are "
            "further from the centre of mass.",
        ),
        "tip_forward_casters_forward_deg": (1, "The same, with the casters turned ahead."),
        "caster_share": (-1, "The same weight over a longer base: less of it at the front."),
        "tip_rear_locked_deg": (
            None,
            "Backward little changes: the frame only settles a little differently.",
        ),
        "caster_foot_clearance_mm": (-1, "The caster swings nearer to the footplate and heel."),
        "caster_tyre_clearance_mm": (1, "The caster swings further from the rear tyre."),
        "caster_stem_angle_deg": (
            None,
            "Over another wheelbase the same difference in height tilts the frame differently.",
        ),
        "braking_lift_level_mps2": (1, "A longer base in front takes harder braking."),
    },
    ("caster_housing", "z_mm"): {
        "seat_to_floor_front_mm": (
            -1,
            "Bolted higher on its tube, the housing lets the front of the frame down.",
        ),
        "seat_angle_deg": (
            -1,
            "Only the front goes down, so the seat tips forward. A seat that tips back with an "
            "upright back holds the shoulders back.",
        ),
        "caster_stem_angle_deg": (-1, "The frame tips forward and takes the stem with it."),
        "tip_rear_locked_deg": (
            1,
            "The frame tips forward and carries the centre of mass away from the rear contact.",
        ),
        "tip_forward_deg": (
            -1,
            "The frame tips forward and carries the centre of mass towards the casters.",
        ),
        "caster_share": (1, "Tipped forward, more of the weight lies over the casters."),
        "footplate_clearance_mm": (-1, "The front of the frame, with the footplates, goes down."),
        "elbow_angle_deg": (None, "The frame tilts and moves the shoulder against the rim."),
    },
    ("stem_setting", "angle_deg"): {
        "caster_stem_angle_deg": (
            1,
            "The housing is turned on the frame and the stem with it: nought is square to the "
            "floor.",
        ),
        "caster_trail_mm": (1, "A stem that leans back meets the floor further ahead."),
        "seat_to_floor_front_mm": (
            None,
            "The fork swings about the crown and lifts or lowers the front a little.",
        ),
        "wheelbase_mm": (1, "The fork swings forward as the top of the stem goes back."),
        "tip_forward_deg": (1, "The caster contacts come forward, away from the centre of mass."),
        "caster_share": (-1, "The same weight over a longer base: less of it at the front."),
    },
}
