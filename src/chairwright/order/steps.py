"""The order of adjustment, in pieces of work that one pair of hands does at a time.

Foot support, seat, back, rear wheel, then the caster housings squared to the floor again, then
wheel locks to the tyre, then anti-tip height (common practice of the trade, no source; squaring
after any axle move: NSW, read in the source).
"""

from __future__ import annotations

from dataclasses import dataclass

EXTRAS = "extras"


@dataclass(frozen=True)
class Work:
    """One piece of work.

    Parameters
    ----------
    group : str
        Step of the order of adjustment.
    choices : tuple of str
        Choices that are changed together, since one holds the other.
    lift : str
        How the chair is lifted for it; empty when it is not.
    rebuild : bool
        Whether it is work on the frame itself, for a workshop.
    """

    group: str
    choices: tuple[str, ...]
    lift: str = ""
    rebuild: bool = False


FOOT, SEAT, BACK, WHEEL = "Foot support", "Seat", "Back", "Rear wheel"
CASTERS, LOCKS, DEVICE, LAST = "Caster housings", "Wheel locks", "Anti-tip", "Everything else"

WORKS = (
    Work(FOOT, ("foot_supports", "hanger", "foot_plate", "leg_length")),
    Work(SEAT, ("side_frame", "seat_width", "seat_depth"), "Frame on blocks.", rebuild=True),
    Work(SEAT, ("cushion",)),
    Work(SEAT, ("arm_support",)),
    Work(BACK, ("back_angle",)),
    Work(BACK, ("back_height",)),
    Work(BACK, ("back_support",)),
    Work(BACK, ("push_handle",)),
    Work(
        WHEEL,
        ("rear_wheel", "hand_rim", "axle_hole", "camber"),
        "Frame on blocks; pull both rear wheels off.",
    ),
    Work(CASTERS, ("caster", "fork", "stem_spacer", "caster_housing"), "Front on blocks."),
    Work(CASTERS, ("stem_setting",)),
    Work(LOCKS, ("wheel_lock",)),
    Work(DEVICE, ("anti_tip",)),
    Work(LAST, ("belt",)),
    Work(LAST, (EXTRAS,)),
    Work(LAST, ("finish",), rebuild=True),
)

UNDO = {
    "foot_supports": "Swing the hangers out and lift them off.",
    "hanger": "Swing the hangers out and lift them off.",
    "foot_plate": "Undo the footplates from their tubes.",
    "leg_length": "Undo the clamp of each hanger tube.",
    "side_frame": "Strip the chair down to its side frames.",
    "seat_width": "Take cushion, seat upholstery and cross-brace off.",
    "seat_depth": "Take cushion and seat upholstery off.",
    "cushion": "Take the cushion off.",
    "arm_support": "Take the arm supports out, or undo the clamps of their pads.",
    "back_angle": "Undo the bolts of the back posts' angle plates.",
    "back_height": "Undo the clamps of the back posts.",
    "back_support": "Take the back support off its posts, or undo its hardware.",
    "push_handle": "Undo the push handles at the back posts.",
    "rear_wheel": "Take the axles out of the wheels.",
    "hand_rim": "Undo the hand rims from the wheels.",
    "camber": "Take the camber parts out.",
    "axle_hole": "Undo both axles from the plates.",
    "caster": "Undo both caster axles.",
    "fork": "Undo both caster axles.",
    "stem_spacer": "Take both forks out of their housings.",
    "caster_housing": "Undo the bolts of both caster housings.",
    "stem_setting": "Undo the angle bolts of both caster housings.",
    "wheel_lock": "Undo the clamps of both wheel locks.",
    "anti_tip": "Press the buttons of both anti-tip tubes, or undo their bolts.",
    "belt": "Undo the belt's bolts.",
    EXTRAS: "See to the accessories.",
    "finish": "Strip the frame for its new finish.",
}
"""What is loosened or taken off before a choice is changed (common practice, no source)."""

GEAR = frozenset({
    "side_frame", "rear_wheel", "camber", "axle_hole", "caster", "fork", "stem_spacer",
    "caster_housing", "stem_setting",
})  # fmt: skip
"""Choices that set how the frame stands on the floor."""

TYRE = frozenset({"side_frame", "rear_wheel", "camber", "axle_hole", "seat_width", "arm_support"})
"""Choices that move the rear tyres in the frame, or the frame's rail that the locks hang on."""
