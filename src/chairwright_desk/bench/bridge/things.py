"""Which choices belong to which thing of the chair, and how each is shown."""

from __future__ import annotations

THINGS: dict[str, tuple[str, tuple[str, ...]]] = {
    "axle": (
        "Rear wheels and axle",
        ("axle_hole", "rear_wheel", "camber", "hand_rim", "wheel_lock", "anti_tip"),
    ),
    "casters": (
        "Casters",
        ("caster", "fork", "caster_housing", "stem_setting", "stem_spacer"),
    ),
    "seat": (
        "Frame and seat",
        ("side_frame", "seat_width", "seat_depth", "cushion", "arm_support"),
    ),
    "back": ("Back", ("back_height", "back_angle", "back_support", "push_handle")),
    "feet": ("Legs and feet", ("foot_supports", "hanger", "leg_length", "foot_plate")),
    "rest": ("Belt and finish", ("belt", "finish")),
}
"""Every choice once: the thing's key, its words, its choices."""

SLIDERS: dict[str, str] = {
    "seat_width": "width_mm",
    "seat_depth": "depth_mm",
    "back_height": "height_mm",
    "leg_length": "length_mm",
    "stem_setting": "angle_deg",
    "camber": "angle_deg",
}
"""Choices that slide along one number, with that number."""
