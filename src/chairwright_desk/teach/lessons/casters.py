"""Casters, forks and housings."""

from __future__ import annotations

from chairwright_desk.teach.lessons.lesson import Amount, Lesson, Step, Way

NOW: tuple[str, dict[str, str]] = ("6 in caster in the long fork", {})

CASTERS = Lesson(
    "casters",
    "Casters and forks",
    "What stands under the front: its height, its trail, and the room that it needs to swing.",
    (
        Step(
            "The casters carry the front of the frame. The 6 in casters are changed for 8 in ones; "
            "fork, hole and housing stay.",
            "What happens to the height of the seat at its front?",
            Way("seat_to_floor_front_mm"),
            "caster",
            "radius_mm",
            (NOW, ("8 in caster", {"caster": "C8"})),
            ("seat_angle_deg", "caster_stem_angle_deg", "chair_mass_kg"),
            remember="A larger caster rolls over rough ground more easily, but half of its extra "
            "diameter goes into the seat's height: take it up with the fork hole.",
            practice=True,
        ),
        Step(
            "A fork has several holes for the caster's axle. The caster goes one hole down, to the "
            "lowest.",
            "By how much does the front of the seat move?",
            Amount("seat_to_floor_front_mm"),
            "fork",
            "drop_mm",
            (
                ("third hole, FL-3", {"fork": "FL-3"}),
                ("lowest hole, FL-4", {"fork": "FL-4"}),
            ),
            ("seat_angle_deg", "tip_rear_locked_deg", "tip_forward_deg"),
            remember="Fork holes set the seat's slope in small steps. Use them together with the "
            "axle's holes.",
        ),
        Step(
            "Two forks that hold the caster about as low: one with a longer trail (how far the "
            "caster's axle lies behind its stem), one with a shorter.",
            "The short-trail fork takes the place of the long one. What happens to the room "
            "between caster and foot as the caster swings round?",
            Way("caster_foot_clearance_mm"),
            "fork",
            "",
            (
                ("long trail, FL-2", {"fork": "FL-2"}),
                ("short trail, FM-4", {"fork": "FM-4"}),
            ),
            ("caster_trail_mm", "caster_tyre_clearance_mm", "tip_forward_deg"),
            remember="Turn both casters right round by hand on the finished chair, with the feet "
            "on the plates.",
            practice=True,
        ),
        Step(
            "The housing can stand ahead of the frame's tube or behind it.",
            "The casters come from behind the tube to ahead of it. What happens to the angle at "
            "which the chair tips forward?",
            Way("tip_forward_deg"),
            "caster_housing",
            "ahead_mm",
            (
                ("casters behind the tube", {"caster_housing": "T4", "axle_hole": "A8"}),
                ("casters ahead of the tube", {"caster_housing": "L4", "axle_hole": "A8"}),
            ),
            ("wheelbase_mm", "caster_share", "tip_rear_locked_deg", "caster_tyre_clearance_mm"),
            remember="Every millimetre of wheelbase at the front counts when somebody leans "
            "forward to the floor.",
        ),
    ),
    ("fork", "settings"),
)
