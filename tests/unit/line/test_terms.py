"""Kinds of options, sizes made to order, prices and days, and parts with several settings."""

from __future__ import annotations

import math

import pytest

from chairwright.line.codes import codes_in, matching_codes
from chairwright.line.model import Line, Option
from tests.oracles.lines import everyday, everyday_as_written, line_from


def option(line: Line, choice: str, code: str) -> Option:
    each = line.choices[choice]
    return each.options[each.codes[code]]


def codes(line: Line, choice: str, kind: str) -> list[str]:
    return [each.code for each in line.choices[choice].options if each.kind == kind]


def test_sizes_made_to_order_follow_the_standard_ones_and_leave_them_out() -> None:
    written = everyday_as_written()
    written["custom_sizes"] = {
        "seat_width": {"from_mm": 390, "to_mm": 430, "step_mm": 10, "surcharge": 240, "days": 12}
    }
    written["seat_widths"] = [{"code": "S400", "width_mm": 400, "mass_kg": 2}]
    written["rules"] = []
    made = line_from(written).choices["seat_width"]
    assert [each.code for each in made.options] == ["S400", "MS390", "MS410", "MS420", "MS430"]
    assert [each.kind for each in made.options] == ["standard", *["made to order"] * 4]


def test_a_size_made_to_order_has_its_mass_between_the_ends_and_its_surcharge() -> None:
    made = option(everyday(), "seat_width", "MS350")
    # 280 to 620 mm, 1.86 to 3.05 kg: 1.86 + 70 / 340 x 1.19 = 2.105
    assert made.numbers["mass_kg"] == pytest.approx(2.105, abs=5e-4)
    assert made.numbers["width_mm"] == 350
    terms = [made.numbers[key] for key in ("price", "surcharge", "extra_days")]
    assert terms == [240, 240, 12]
    assert made.name == "350 mm, made to order"
    assert made.part == ""


def test_what_is_on_request_is_an_option_of_that_kind() -> None:
    line = everyday()
    assert codes(line, "finish", "on request") == ["FK"]
    assert codes(line, "wheel_lock", "on request") == ["LX"]
    assert set(codes(line, "axle_hole", "on request")) == {
        f"{column}{row}" for column in "UV" for row in range(1, 10)
    }
    assert codes(line, "push_handle", "on request") == ["VH", "none"]
    assert codes(line, "anti_tip", "on request") == []


def test_a_line_that_requires_anti_tip_devices_leaves_them_off_on_request_only() -> None:
    written = everyday_as_written()
    written["anti_tip_required"] = True
    assert codes(line_from(written), "anti_tip", "on request") == ["none"]


def test_a_part_without_price_days_and_limit_has_none_of_them() -> None:
    made = option(everyday(), "cushion", "Q50")
    assert (made.numbers["price"], made.numbers["extra_days"]) == (0, 0)
    assert math.isinf(made.numbers["load_limit_kg"])
    assert option(everyday(), "rear_wheel", "W24P").numbers["load_limit_kg"] == 230
    assert option(everyday(), "side_frame", "SFR").numbers["price"] == 380


def test_a_plate_that_is_turned_round_has_its_holes_mirrored_in_x() -> None:
    written = everyday_as_written()
    written["axle_plates"][1]["turned_about_x_mm"] = -60
    line = line_from(written)
    plain, turned = option(line, "axle_hole", "U3"), option(line, "axle_hole", "U3R")
    assert (plain.numbers["x_mm"], turned.numbers["x_mm"]) == (-95, -25)
    assert plain.numbers["z_mm"] == turned.numbers["z_mm"]
    assert turned.part == plain.part == "XA"
    assert "turned round" in turned.name


def test_settings_of_one_part_are_options_with_its_code() -> None:
    line = everyday()
    backs, hangers = line.choices["back_support"], line.choices["hanger"]
    assert matching_codes(backs, ["BR"]) == {"BR-1", "BR-2", "BR-3"}
    assert option(line, "back_support", "BR-3").numbers["tilt_deg"] == 5
    assert option(line, "back_support", "BS").numbers["tilt_deg"] == 0
    assert matching_codes(hangers, ["HE"]) == {"HE-70", "HE-45", "HE-15"}
    assert option(line, "hanger", "HE-45").numbers["angle_deg"] == 45
    assert matching_codes(line.choices["axle_hole"], ["XA"]) == set(
        codes(line, "axle_hole", "on request")
    )


def test_an_arm_support_without_pads_is_one_option_without_a_pad_height() -> None:
    written = everyday_as_written()
    del written["arm_supports"][2]["pad_heights_mm"]
    made = option(line_from(written), "arm_support", "AX")
    assert "pad_height_mm" not in made.numbers


def test_a_range_of_a_rule_means_the_sizes_in_it_made_to_order_ones_too() -> None:
    widths = everyday().choices["seat_width"]
    assert codes_in(widths, 560, 580) == {"S560", "S580", "MS570"}
    assert "MS620" in codes_in(widths, 521, None)
    assert codes_in(everyday().choices["hanger"], 0, 120) >= {"H70", "HE-15"}
    assert "none" not in codes_in(everyday().choices["leg_length"], None, 1000)


def test_a_line_in_inches_names_its_sizes_so() -> None:
    written = everyday_as_written()
    written["typed_in"] = "in"
    # 15 3/4 in x 25.4 = 400.05 mm; 350 mm / 25.4 = 13.78 in
    assert option(line_from(written), "seat_width", "S400").name == "15.75 in (400 mm)"
    assert option(line_from(written), "seat_width", "MS13.78").numbers["width_mm"] == 350
