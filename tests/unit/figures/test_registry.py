"""The registry: one name, unit, meaning and source for every figure."""

from __future__ import annotations

import pytest

from chairwright.figures.registry import FIGURES, GROUPS, Figure
from chairwright.line.choices import CHOICES

RELIED_ON = [
    "seat_to_floor_rear_mm",
    "seat_to_floor_front_mm",
    "cushion_to_floor_front_mm",
    "seat_angle_deg",
    "back_angle_deg",
    "seat_to_back_angle_deg",
    "wheelbase_mm",
    "rear_track_mm",
    "overall_length_mm",
    "overall_width_mm",
    "overall_height_mm",
    "folded_width_mm",
    "chair_mass_kg",
    "heaviest_part_kg",
    "total_mass_kg",
    "com_x_mm",
    "com_y_mm",
    "com_z_mm",
    "caster_share",
    "tip_rear_locked_deg",
    "tip_rear_free_deg",
    "tip_forward_deg",
    "tip_left_deg",
    "tip_right_deg",
    "tip_least_deg",
    "tip_least_direction_deg",
    "tip_rear_anti_tip_deg",
    "pitch_to_anti_tip_deg",
    "caster_stem_angle_deg",
    "toe_deg",
    "elbow_angle_deg",
    "footplate_clearance_mm",
    "turning_diameter_mm",
    "half_turn_width_mm",
    "push_arc_deg",
    "push_force_level_n",
    "yaw_inertia_kgm2",
    "downhill_moment_nm_per_deg",
    "load_margin_kg",
    "price",
    "custom_surcharge",
    "lead_days",
]
SUFFIX = {
    "mm": "_mm",
    "deg": "_deg",
    "kg": "_kg",
    "m/s2": "_mps2",
    "": "share",
    "days": "_days",
    "N": "_n",
    "kg m2": "_kgm2",
    "N m/deg": "_nm_per_deg",
}
MONEY = {"price", "custom_surcharge"}
"""Their unit is the line's currency, which no name can hold."""


def test_the_names_that_others_rely_on_are_there() -> None:
    assert set(RELIED_ON) <= set(FIGURES)


@pytest.mark.parametrize("figure", FIGURES.values(), ids=lambda figure: figure.name)
def test_figure_is_described(figure: Figure) -> None:
    assert FIGURES[figure.name] is figure
    if figure.unit == "currency":
        assert figure.name in MONEY
    else:
        assert figure.name.endswith(SUFFIX[figure.unit])
    assert figure.label[0].isupper()
    assert figure.source
    assert figure.group in GROUPS
    assert figure.after in CHOICES
    assert figure.scale > 0
    assert figure.resolution == pytest.approx(10.0**-figure.digits)
    assert (figure.exact is None) != (figure.weighed is None)
    assert set(figure.depends) <= set(CHOICES)


def test_labels_are_told_apart() -> None:
    labels = [figure.label for figure in FIGURES.values()]
    assert len(set(labels)) == len(labels)
