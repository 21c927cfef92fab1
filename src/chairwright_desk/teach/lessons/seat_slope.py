"""A seat that falls to the back."""

from __future__ import annotations

from chairwright_desk.teach.lessons.lesson import Lesson, Most, Pick, Step, Way

NOW = ("as it stands, hole D8", {"axle_hole": "D8", "anti_tip": "TS-8"})
LOWER = ("back lower, hole D7", {"axle_hole": "D7", "anti_tip": "TS-8"})

SEAT_SLOPE = Lesson(
    "seat-slope",
    "The slope of the seat",
    "Two axles carry the frame. Raise one end and everything above tilts along.",
    (
        Step(
            "The back of the frame goes down by one hole of the axle plate; the casters stay.",
            "What happens to the seat's angle (positive when it falls to the back)?",
            Way("seat_angle_deg"),
            "axle_hole",
            "z_mm",
            (NOW, LOWER),
            ("seat_to_floor_rear_mm", "seat_to_floor_front_mm", "back_angle_deg"),
            remember="The back post tilts with the seat. Somebody who needs the trunk upright "
            "needs another back angle as well.",
        ),
        Step(
            "The same slope carries the body back over the rear wheels.",
            "Which of these angles moves most?",
            Most(("tip_rear_locked_deg", "tip_forward_deg", "tip_left_deg")),
            "axle_hole",
            "z_mm",
            (NOW, LOWER),
            ("com_x_mm", "com_z_mm"),
            remember="Slope holds the pelvis in the seat and costs steadiness to the back.",
            practice=True,
        ),
        Step(
            "The caster stems should stand square to the floor. The frame has tilted.",
            "What happens to the angle of the caster stems (positive when the top leans back)?",
            Way("caster_stem_angle_deg"),
            "axle_hole",
            "z_mm",
            (NOW, LOWER),
            ("caster_trail_mm", "seat_angle_deg"),
            remember="A stem out of square makes the front rise and fall as the casters turn, so "
            "the chair seeks one direction. Square the housings after every change of slope.",
            practice=True,
        ),
        Step(
            "Slope can be changed at the front as well, by the hole of the fork.",
            "With which of these is the knee, which must go under a table, lowest?",
            Pick("knee_top_mm", "least"),
            "",
            "",
            (
                ("as it stands", {"anti_tip": "TS-8"}),
                ("back lower: hole D7", {"axle_hole": "D7", "anti_tip": "TS-8"}),
                ("front lower: fork hole FL-3", {"fork": "FL-3", "anti_tip": "TS-8"}),
            ),
            ("seat_to_floor_front_mm", "seat_angle_deg", "elbow_angle_deg", "tip_rear_locked_deg"),
            remember="Each end moves something else: look at knees, hands and transfers, not only "
            "at the angle.",
        ),
    ),
    ("axle_hole", "up-down"),
)
