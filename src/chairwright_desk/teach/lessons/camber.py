"""Wheels that lean in at the top."""

from __future__ import annotations

from chairwright_desk.teach.lessons.lesson import Amount, Lesson, Most, Step, Way

UPRIGHT = ("wheels upright, K0", {"camber": "K0"})
LEANING = ("3 degrees of camber, K3", {"camber": "K3"})

CAMBER = Lesson(
    "camber",
    "Camber",
    "The tops of the wheels lean in: a wider base, a wider chair.",
    (
        Step(
            "The wheels get three degrees of camber; nothing else is changed. Measure the door "
            "before you read on.",
            "By how much does the whole width change?",
            Amount("overall_width_mm"),
            "camber",
            "angle_deg",
            (UPRIGHT, LEANING),
            ("rear_track_mm",),
            view="plan",
            remember="The widest place is at the floor, where nobody looks.",
        ),
        Step(
            "The base under the chair has become wider; the person sits as before.",
            "Which of these angles moves most?",
            Most(("tip_left_deg", "tip_rear_locked_deg", "tip_forward_deg")),
            "camber",
            "angle_deg",
            (UPRIGHT, LEANING),
            ("rear_track_mm", "overall_width_mm"),
            view="plan",
            remember="Camber is bought for the side, and paid for in width.",
        ),
        Step(
            "A wheel that leans must also point straight ahead. When the frame tilts, leaning "
            "wheels no longer do.",
            "What happens to the toe angle of the wheels (positive when they point outward)?",
            Way("toe_deg"),
            "camber",
            "angle_deg",
            (
                (
                    "wheels upright, seat tilted",
                    {"axle_hole": "D7", "camber": "K0", "anti_tip": "TS-8"},
                ),
                ("3 degrees, seat tilted", {"axle_hole": "D7", "camber": "K3", "anti_tip": "TS-8"}),
            ),
            ("seat_angle_deg",),
            view="plan",
            remember="Toe makes a chair hard to push. Check that the wheels run parallel after "
            "every change of the seat's slope.",
            practice=True,
        ),
    ),
    ("camber", ""),
)
