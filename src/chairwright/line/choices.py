"""Which choices a folding chair has, in the order in which ties are broken."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class ChoiceKind:
    """A choice's label for people and the figures that each of its options must have."""

    label: str
    needs: tuple[str, ...]


NONE = "none"

CHOICES: dict[str, ChoiceKind] = {
    "side_frame": ChoiceKind(
        "Side frame",
        (
            "caster_tube_x_mm",
            "hanger_x_mm",
            "hanger_z_mm",
            "depth_from_mm",
            "depth_to_mm",
            "rated_load_kg",
            "mass_kg",
            "x_mm",
            "z_mm",
        ),
    ),
    "rear_wheel": ChoiceKind(
        "Rear wheel",
        (
            "bead_seat_mm",
            "tyre_width_mm",
            "radius_mm",
            "hand_rim_radius_mm",
            "hand_rim_standoff_mm",
            "spin_inertia_kgm2",
            "mass_kg",
        ),
    ),
    "camber": ChoiceKind("Camber", ("angle_deg", "hub_extra_mm")),
    "axle_hole": ChoiceKind("Axle hole", ("x_mm", "z_mm")),
    "caster": ChoiceKind("Caster", ("radius_mm", "width_mm", "mass_kg")),
    "fork": ChoiceKind("Fork and hole", ("trail_mm", "drop_mm", "largest_radius_mm", "mass_kg")),
    "caster_housing": ChoiceKind("Caster housing", ("ahead_mm", "z_mm", "mass_kg")),
    "stem_setting": ChoiceKind("Stem setting", ("angle_deg",)),
    "seat_width": ChoiceKind("Seat width", ("width_mm", "mass_kg", "x_mm", "z_mm")),
    "arm_support": ChoiceKind("Arm support", ("hub_outset_mm", "outer_outset_mm", "mass_kg")),
    "seat_depth": ChoiceKind("Seat depth", ("depth_mm", "mass_kg")),
    "cushion": ChoiceKind("Cushion", ("rear_mm", "front_mm", "mass_kg")),
    "back_angle": ChoiceKind("Back angle", ("angle_deg",)),
    "back_support": ChoiceKind("Back support", ("behind_post_mm", "mass_kg")),
    "foot_supports": ChoiceKind("Foot supports", ("left", "right")),
    "hanger": ChoiceKind("Hanger", ("angle_deg", "mass_kg")),
    "leg_length": ChoiceKind("Hanger length", ("length_mm",)),
    "back_height": ChoiceKind("Back height", ("height_mm", "mass_kg")),
    "wheel_lock": ChoiceKind("Wheel lock", ("mass_kg", "x_mm", "z_mm")),
    "anti_tip": ChoiceKind("Anti-tip device", ("mass_kg",)),
}
