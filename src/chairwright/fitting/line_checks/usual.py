"""Between which values the sizes and masses of a manual wheelchair's parts lie.

Generous: a value outside is a slip of the unit, of a sign or of a digit, not an unusual part
(common practice, no source).
"""

from __future__ import annotations

Pattern = tuple[str, ...]
EACH = "*"
"""Any key or list position."""

_SEAT_WIDTH, _SEAT_DEPTH = (200.0, 900.0), (200.0, 650.0)
_BACK_HEIGHT, _LEG_LENGTH = (150.0, 800.0), (80.0, 650.0)
_BELOW_SEAT = (-600.0, -20.0)

SIZES: dict[Pattern, tuple[float, float]] = {
    ("side_frames", EACH, "caster_tube_x_mm"): (150.0, 700.0),
    ("side_frames", EACH, "depth_from_mm"): _SEAT_DEPTH,
    ("side_frames", EACH, "depth_to_mm"): _SEAT_DEPTH,
    ("rear_wheels", EACH, "bead_seat_mm"): (250.0, 640.0),
    ("rear_wheels", EACH, "tyre_width_mm"): (15.0, 80.0),
    ("rear_wheels", EACH, "hand_rim_diameter_mm"): (200.0, 650.0),
    ("hand_rims", EACH, "standoff_mm"): (10.0, 120.0),
    ("axle_plates", EACH, "columns_mm", EACH): (-300.0, 400.0),
    ("axle_plates", EACH, "rows_mm", EACH): (-400.0, 20.0),
    ("casters", EACH, "diameter_mm"): (60.0, 260.0),
    ("casters", EACH, "width_mm"): (10.0, 80.0),
    ("forks", EACH, "largest_caster_mm"): (60.0, 260.0),
    ("forks", EACH, "holes_mm", EACH): (30.0, 260.0),
    ("stem_spacers", EACH, "height_mm"): (2.0, 60.0),
    ("caster_housings", "rows_mm", EACH): (-500.0, 50.0),
    ("caster_housings", "ahead_of_tube_mm", EACH): (-150.0, 150.0),
    ("seat_widths", EACH, "width_mm"): _SEAT_WIDTH,
    ("seat_depths", EACH, "depth_mm"): _SEAT_DEPTH,
    ("cushions", EACH, "loaded_rear_mm"): (-60.0, 200.0),
    ("cushions", EACH, "loaded_front_mm"): (-60.0, 200.0),
    ("back_supports", EACH, "behind_post_mm"): (-120.0, 150.0),
    ("back_supports", EACH, "settings", EACH, "behind_post_mm"): (-120.0, 150.0),
    ("back_heights", EACH, "height_mm"): _BACK_HEIGHT,
    ("arm_supports", EACH, "hub_outset_mm"): (10.0, 150.0),
    ("arm_supports", EACH, "outer_outset_mm"): (2.0, 200.0),
    ("arm_supports", EACH, "pad_heights_mm", EACH): (80.0, 450.0),
    ("foot_plates", EACH, "length_mm"): (60.0, 450.0),
    ("foot_plates", EACH, "width_mm"): (60.0, 900.0),
    ("foot_plates", EACH, "thickness_mm"): (1.0, 50.0),
    ("leg_lengths", "lengths_mm", EACH): _LEG_LENGTH,
    ("anti_tips", EACH, "wheel_x_mm"): (-700.0, -20.0),
    ("anti_tips", EACH, "wheel_radius_mm"): (8.0, 80.0),
    ("anti_tips", EACH, "holes_mm", EACH): _BELOW_SEAT,
    ("folding", "folded_seat_mm"): (10.0, 300.0),
    ("folding", "folds_to_width_mm"): _SEAT_WIDTH,
    ("custom_sizes", "seat_width", "from_mm"): _SEAT_WIDTH,
    ("custom_sizes", "seat_width", "to_mm"): _SEAT_WIDTH,
    ("custom_sizes", "seat_depth", "from_mm"): _SEAT_DEPTH,
    ("custom_sizes", "seat_depth", "to_mm"): _SEAT_DEPTH,
    ("custom_sizes", "back_height", "from_mm"): _BACK_HEIGHT,
    ("custom_sizes", "back_height", "to_mm"): _BACK_HEIGHT,
    ("custom_sizes", "leg_length", "from_mm"): _LEG_LENGTH,
    ("custom_sizes", "leg_length", "to_mm"): _LEG_LENGTH,
}
"""Ends in mm, both included, by place in the file."""

MASSES: dict[Pattern, tuple[float, float]] = {
    ("side_frames", EACH, "mass_kg"): (0.8, 25.0),
    ("rear_wheels", EACH, "mass_kg"): (0.8, 15.0),
    ("axle_plates", EACH, "mass_kg"): (0.05, 4.0),
    ("casters", EACH, "mass_kg"): (0.1, 6.0),
    ("forks", EACH, "mass_kg"): (0.05, 4.0),
    ("caster_housings", "mass_kg"): (0.05, 4.0),
    ("seat_widths", EACH, "mass_kg"): (0.1, 12.0),
    ("seat_depths", EACH, "mass_kg"): (0.05, 6.0),
    ("cushions", EACH, "mass_kg"): (0.1, 6.0),
    ("back_supports", EACH, "mass_kg"): (0.1, 8.0),
    ("back_heights", EACH, "mass_kg"): (0.05, 8.0),
    ("arm_supports", EACH, "mass_kg"): (0.05, 8.0),
    ("hangers", EACH, "mass_kg"): (0.2, 12.0),
    ("wheel_locks", EACH, "mass_kg"): (0.05, 4.0),
    ("anti_tips", EACH, "mass_kg"): (0.05, 4.0),
}
"""Ends in kg of a pair, both included, by place in the file."""
