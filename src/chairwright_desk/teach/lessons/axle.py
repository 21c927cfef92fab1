"""Where the rear axle sits: fore and aft, up and down."""

from __future__ import annotations

from chairwright_desk.teach.lessons.lesson import Amount, Lesson, Most, Pick, Step, Way

NOW = ("as it stands, hole D8", {"axle_hole": "D8"})
FORWARD = ("one column forward, hole E8", {"axle_hole": "E8"})
LOW = ("as it stands, hole D8", {"axle_hole": "D8", "anti_tip": "TS-8"})
UP = ("one hole up, hole D7", {"axle_hole": "D7", "anti_tip": "TS-8"})

AXLE = Lesson(
    "axle",
    "The rear axle",
    "One bolt, two directions: how easily the chair tips back, how it rolls, how the seat tilts.",
    (
        Step(
            "The axle plate has columns of holes. The wheel goes one column forward; the frame, "
            "the seat and the person stay as they are.",
            "What happens to the angle at which the chair tips back, wheels locked?",
            Way("tip_rear_locked_deg"),
            "axle_hole",
            "x_mm",
            (NOW, FORWARD),
            ("wheelbase_mm", "com_x_mm"),
            remember="After a move forward try it with a helper behind, and set the anti-tip "
            "device again.",
            practice=True,
        ),
        Step(
            "The same move again: one column forward. Tipping back is one of several ways to tip.",
            "Which of these angles moves most?",
            Most(("tip_rear_locked_deg", "tip_forward_deg", "tip_left_deg")),
            "axle_hole",
            "x_mm",
            (NOW, FORWARD),
            remember="One hole is a trade: look at every direction before you tighten the bolt.",
        ),
        Step(
            "The person's weight is shared by the rear wheels and the casters. A chair with little "
            "on its casters rolls and turns more easily.",
            "The axle goes one column forward. What happens to the casters' share of the load?",
            Way("caster_share"),
            "axle_hole",
            "x_mm",
            (NOW, FORWARD),
            ("tip_rear_locked_deg", "downhill_moment_nm_per_deg", "turning_diameter_mm"),
            remember="Easy to push and easy to tip back are one and the same move: somebody who "
            "is new to a chair begins further back and comes forward with practice.",
            practice=True,
        ),
        Step(
            "Now the wheel stays in its column but goes one hole up in the frame.",
            "By how much does the back of the seat move?",
            Amount("seat_to_floor_rear_mm"),
            "axle_hole",
            "z_mm",
            (LOW, UP),
            ("seat_to_floor_front_mm", "seat_angle_deg", "caster_stem_angle_deg"),
            remember="A hole up is a lower seat, not a higher one. The frame tilts, and the caster "
            "stems with it: square the caster housings again.",
        ),
        Step(
            "Four holes in one row, from the rearmost column to the foremost.",
            "With which of them is the chair hardest to tip back?",
            Pick("tip_rear_locked_deg", "greatest"),
            "axle_hole",
            "x_mm",
            (
                ("hole A8", {"axle_hole": "A8"}),
                ("hole C8", {"axle_hole": "C8"}),
                ("hole D8", {"axle_hole": "D8"}),
                ("hole F8", {"axle_hole": "F8"}),
            ),
            ("caster_share", "overall_length_mm", "turning_diameter_mm"),
            remember="The steadiest hole makes the longest and heaviest chair to push. Choose the "
            "foremost one in which the person is safe.",
            practice=True,
        ),
    ),
    ("axle_hole", "fore-aft"),
)
