"""A thicker cushion on the same frame."""

from __future__ import annotations

from chairwright_desk.teach.lessons.lesson import Lesson, Step, Way

THIN = ("thin cushion, Q30", {"cushion": "Q30"})
THICK = ("thick contoured cushion, Q75", {"cushion": "Q75"})

CUSHION = Lesson(
    "cushion",
    "The cushion",
    "It is chosen for the skin; it changes the whole chair. Fit the chair on the cushion that "
    "will be used.",
    (
        Step(
            "The frame is not touched. A thick cushion takes the place of a thin one.",
            "What happens to the angles at which the chair tips back?",
            Way("tip_rear_locked_deg"),
            "cushion",
            "front_mm",
            (THIN, THICK),
            ("com_z_mm", "tip_forward_deg", "tip_left_deg"),
            remember="The cushion raises the whole person: the chair is easier to tip every way.",
        ),
        Step(
            "The hands reach down to rims that have stayed where they were.",
            "What happens to the angle of the elbow with the hand on the top of the rim?",
            Way(
                "elbow_angle_deg",
                ("It gets smaller: more bent", "It hardly changes", "It gets greater: straighter"),
            ),
            "cushion",
            "front_mm",
            (THIN, THICK),
            ("push_reach_deg", "push_arc_deg"),
            remember="What the cushion takes away, a hole up on the axle plate gives back in part.",
        ),
        Step(
            "Back, arm pads and footplates are on the frame; the person now sits higher than they "
            "were set for.",
            "What happens to the height of the back above the cushion?",
            Way("back_height_mm"),
            "cushion",
            "front_mm",
            (THIN, THICK),
            ("arm_height_mm", "leg_support_length_mm", "cushion_to_floor_front_mm"),
            remember="Set back, arm pads and footplates again whenever the cushion changes.",
            practice=True,
        ),
    ),
    ("cushion", ""),
)
