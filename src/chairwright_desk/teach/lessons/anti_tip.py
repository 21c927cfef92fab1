"""The device that is to stop a tip to the rear."""

from __future__ import annotations

from chairwright_desk.teach.lessons.lesson import Amount, Lesson, Pick, Step, Way

FITTED = ("lowest hole, TS-9", {"anti_tip": "TS-9"})
HIGHER = ("two holes up, TS-7", {"anti_tip": "TS-7"})

ANTI_TIP = Lesson(
    "anti-tip",
    "Anti-tip devices",
    "Fitted is not safe: what counts is where it touches, and what it adds from there.",
    (
        Step(
            "The chair has no device; then one is fitted in its lowest hole.",
            "What happens to the angle at which the chair itself begins to tip back, wheels "
            "locked?",
            Way("tip_rear_locked_deg"),
            "anti_tip",
            "",
            (("no device", {"anti_tip": "none"}), FITTED),
            ("chair_mass_kg", "overall_length_mm"),
            remember="A device does not make the chair steadier. It catches the chair after it has "
            "begun to tip.",
        ),
        Step(
            "The device goes two holes up on its tube, say to clear a kerb.",
            "How much further does the frame tilt before the device touches the floor?",
            Amount("pitch_to_anti_tip_deg"),
            "anti_tip",
            "z_mm",
            (FITTED, HIGHER),
            ("tip_rear_anti_tip_deg", "anti_tip_gain_deg"),
            remember="Clearance is bought with tilt: the higher it stands, the later it touches.",
        ),
        Step(
            "Three holes of the same tube.",
            "With which of them does the chair stand the steepest slope over the device before it "
            "goes over?",
            Pick("tip_rear_anti_tip_deg", "greatest"),
            "anti_tip",
            "z_mm",
            (
                ("lowest hole, TS-9", {"anti_tip": "TS-9"}),
                ("middle hole, TS-7", {"anti_tip": "TS-7"}),
                ("high hole, TS-5", {"anti_tip": "TS-5"}),
            ),
            ("pitch_to_anti_tip_deg", "anti_tip_gain_deg"),
            remember="Test with a helper behind: tilt the chair until the device touches, then "
            "look whether it holds.",
            practice=True,
        ),
        Step(
            "The axle goes one column forward and nobody looks at the device again.",
            "What happens to the tilt at which the device touches?",
            Way("pitch_to_anti_tip_deg"),
            "axle_hole",
            "x_mm",
            (
                ("axle in D8", {"axle_hole": "D8"}),
                ("axle in E8", {"axle_hole": "E8"}),
            ),
            ("tip_rear_anti_tip_deg", "anti_tip_gain_deg", "tip_rear_free_deg"),
            remember="Axle and device belong together: set the device again whenever the axle "
            "moves.",
            practice=True,
        ),
    ),
    ("anti_tip", "settings"),
)
