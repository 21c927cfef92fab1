"""Which choices a chair has, in the order in which ties are broken."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class ChoiceKind:
    """A choice's label for people, the figures that its options must have, its main size.

    ``size`` is the figure by which a rule may name a range of options; empty when there is none.
    """

    label: str
    needs: tuple[str, ...]
    size: str = ""


NONE = "none"
"""Code of the option that a thing is not fitted."""

CHOICES: dict[str, ChoiceKind] = {
    "side_frame": ChoiceKind(
        "Side frame",
        (
            "caster_tube_x_mm",
            "hanger_x_mm",
            "hanger_z_mm",
            "depth_from_mm",
            "depth_to_mm",
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
            "spin_inertia_kgm2",
            "mass_kg",
        ),
        "bead_seat_mm",
    ),
    "camber": ChoiceKind("Camber", ("angle_deg", "hub_extra_mm", "mass_kg"), "angle_deg"),
    "axle_hole": ChoiceKind("Axle hole", ("x_mm", "z_mm", "mass_kg")),
    "caster": ChoiceKind("Caster", ("radius_mm", "width_mm", "mass_kg"), "diameter_mm"),
    "fork": ChoiceKind("Fork and hole", ("trail_mm", "drop_mm", "largest_radius_mm", "mass_kg")),
    "stem_spacer": ChoiceKind("Stem spacer", ("height_mm", "mass_kg"), "height_mm"),
    "caster_housing": ChoiceKind("Caster housing", ("ahead_mm", "z_mm", "mass_kg")),
    "stem_setting": ChoiceKind("Stem setting", ("angle_deg",), "angle_deg"),
    "hand_rim": ChoiceKind("Hand rim", ("fitted", "standoff_mm", "mass_kg")),
    "seat_width": ChoiceKind("Seat width", ("width_mm", "mass_kg", "x_mm", "z_mm"), "width_mm"),
    "arm_support": ChoiceKind("Arm support", ("hub_outset_mm", "outer_outset_mm", "mass_kg")),
    "seat_depth": ChoiceKind("Seat depth", ("depth_mm", "mass_kg"), "depth_mm"),
    "cushion": ChoiceKind("Cushion", ("rear_mm", "front_mm", "mass_kg")),
    "back_angle": ChoiceKind("Back angle", ("angle_deg",), "angle_deg"),
    "back_support": ChoiceKind("Back support", ("behind_post_mm", "tilt_deg", "mass_kg")),
    "foot_supports": ChoiceKind("Foot supports", ("left", "right")),
    "hanger": ChoiceKind("Hanger", ("angle_deg", "mass_kg"), "angle_deg"),
    "foot_plate": ChoiceKind(
        "Footplate",
        ("length_mm", "behind_tube_mm", "thickness_mm", "outer_inset_mm", "width_mm", "mass_kg"),
        "length_mm",
    ),
    "leg_length": ChoiceKind("Hanger length", ("length_mm",), "length_mm"),
    "back_height": ChoiceKind("Back height", ("height_mm", "mass_kg"), "height_mm"),
    "push_handle": ChoiceKind("Push handles", ("behind_mm", "above_mm", "mass_kg")),
    "wheel_lock": ChoiceKind("Wheel lock", ("mass_kg", "x_mm", "z_mm")),
    "anti_tip": ChoiceKind("Anti-tip device", ("mass_kg",)),
    "belt": ChoiceKind("Belt", ("mass_kg", "x_mm", "z_mm")),
    "finish": ChoiceKind("Finish", ()),
}
