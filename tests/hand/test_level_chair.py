"""Every figure of geometry of one level chair, worked out with a pencil.

Wheel 300 mm, axle 200 mm below the seat rail: the rail lies at 500 mm. Caster 75 mm, its axle
125 mm below the crown at -300: 425 mm below the rail, so 75 mm above the floor. Level.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from chairwright.person.client import Carried

from .level_chair import level_chair

EXACT = 1e-9


@pytest.mark.parametrize(
    ("figure", "value"),
    [
        ("seat_angle_deg", 0.0),
        ("seat_to_floor_rear_mm", 500.0),
        ("seat_to_floor_front_mm", 500.0),
        ("cushion_to_floor_front_mm", 532.0),  # 500 + 32
        ("back_angle_deg", 0.0),
        ("seat_to_back_angle_deg", 90.0 - math.degrees(math.atan(5 / 400))),  # cushion 27 to 32
        ("seat_width_mm", 400.0),
        ("seat_depth_mm", 415.0),  # 400 + 15 of back support
        ("back_height_mm", 373.0),  # 400 - 27
        ("arm_height_mm", 223.0),  # 250 - 27
        ("wheelbase_mm", 400.0),  # tube 400 + 50 ahead - 50 trail - axle at 0
        ("rear_track_mm", 480.0),  # 400 + 2 x 40
        ("caster_track_mm", 420.0),  # 400 + 2 x 10
        ("overall_width_mm", 580.0),  # 480 + 2 x 50 to the rims
        ("folded_width_mm", 250.0),  # 580 - (400 - 70)
        ("caster_stem_angle_deg", 0.0),
        ("caster_trail_mm", 50.0),
        ("toe_deg", 0.0),
        # Hanger 60 deg, 300 mm: foot 300 sin 60 below -50; plate 8 thick.
        ("footplate_clearance_mm", 500.0 - 50.0 - 300.0 * math.sin(math.pi / 3) - 8.0),
        # Along the hanger from the cushion's front top edge (400, 32) to the pivot (420, -50).
        ("leg_support_length_mm", 300.0 + 20.0 * 0.5 + 82.0 * math.sin(math.pi / 3)),
        ("load_margin_kg", 40.0),  # the casters' 120, less than frame and wheels, less 80
        ("price", 677.5),  # 500 + rims 12.5 + arms 30 + back 90 + anti-tip 45
        ("custom_surcharge", 0.0),
        ("lead_days", 14.0),  # 10 to build, and the anti-tip device's 4, which is the longest
        ("overall_height_mm", 600.0 + 330.0),  # rail 500, post 400, handle 30 above
    ],
)
def test_figure(figure: str, value: float) -> None:
    assert level_chair()[figure][0] == pytest.approx(value, abs=EXACT)


def test_mass_of_the_chair_is_the_sum_of_its_parts() -> None:
    running_gear = 4.0 + 3.5 + 0.5 + 1.0 + 1.0 + 0.5 + 0.6
    seat = 0.4 + 0.8 + 2.0 + 1.5
    back_and_rest = 0.6 + 0.7 + 0.4 + 1.4 + 0.8 + 0.3 + 0.5 + 0.5
    made = level_chair()
    assert running_gear + seat + back_and_rest == pytest.approx(21.0)
    assert made["chair_mass_kg"][0] == pytest.approx(21.0, abs=EXACT)
    assert made["total_mass_kg"][0] == pytest.approx(101.0, abs=EXACT)
    # To lift: all but both wheels with their rims, arm supports, cushion, hangers and footplates.
    assert made["heaviest_part_kg"][0] == pytest.approx(21 - 4 - 1.5 - 0.8 - 2.2, abs=EXACT)


def test_a_size_made_to_order_costs_and_takes_more() -> None:
    # 410 mm: surcharge 240 and 12 days, longer than the anti-tip device's 4; mass 1.5 + 0.6.
    made = level_chair(seat_width="MS410")
    assert made["price"][0] == pytest.approx(917.5, abs=EXACT)
    assert made["custom_surcharge"][0] == pytest.approx(240.0, abs=EXACT)
    assert made["lead_days"][0] == pytest.approx(22.0, abs=EXACT)
    assert made["chair_mass_kg"][0] == pytest.approx(21.1, abs=EXACT)
    assert made["overall_width_mm"][0] == pytest.approx(590.0, abs=EXACT)


def test_what_takes_longest_decides_and_prices_add_up() -> None:
    # Colour to a sample 140 and 12 days, pelvic belt 40 and none: 677.5 + 140 + 40; 10 + 12 days.
    made = level_chair(finish="FK", belt="YP")
    assert made["price"][0] == pytest.approx(857.5, abs=EXACT)
    assert made["custom_surcharge"][0] == 0.0
    assert made["lead_days"][0] == 22.0
    # With a width made to order, 12 days as well, made meanwhile: 857.5 + 240; still 22 days.
    both = level_chair(finish="FK", belt="YP", seat_width="MS410")
    assert both["price"][0] == pytest.approx(1097.5, abs=EXACT)
    assert both["lead_days"][0] == 22.0


def test_what_is_carried_counts_against_the_load_limit() -> None:
    # 120 less 80 less 12.
    made = level_chair()
    bag = (Carried("bag", 12.0, "backpack"),)
    carrying = made.changed(occupant=replace(made.occupant, carries=bag))
    assert carrying["load_margin_kg"][0] == pytest.approx(28.0, abs=EXACT)


def test_without_hand_rims_the_tyres_stand_out_farthest() -> None:
    # Track 480 + tyre 25; arm supports 400 + 2 x 30. Folded: 505 - (400 - 70).
    made = level_chair(hand_rim="none")
    assert made["overall_width_mm"][0] == pytest.approx(505.0, abs=EXACT)
    assert made["folded_width_mm"][0] == pytest.approx(175.0, abs=EXACT)
    assert made["chair_mass_kg"][0] == pytest.approx(20.5, abs=EXACT)
    assert made["price"][0] == pytest.approx(665.0, abs=EXACT)


def test_a_seat_wider_than_folds_has_no_folded_width() -> None:
    # It folds up to 500 mm. At 500: 680 overall, less 500 - 70.
    assert level_chair(seat_width="S500")["folded_width_mm"][0] == pytest.approx(250.0, abs=EXACT)
    assert math.isnan(level_chair(seat_width="S520")["folded_width_mm"][0])


def test_legs_40_mm_longer_take_hangers_and_footplates_ahead_and_down() -> None:
    # Along the hanger at 60 deg: footplates (0.8 kg) all of 40 mm, hangers (1.4 kg) 0.45 of it;
    # 0.8 x 40 + 1.4 x 18 = 57.2 kg mm along, half of it ahead, of 101 kg.
    short, long = level_chair(), level_chair(leg_length="G340")
    ahead = long["com_x_mm"][0] - short["com_x_mm"][0]
    assert ahead == pytest.approx(57.2 * 0.5 / 101, abs=EXACT)
    down = short["com_z_mm"][0] - long["com_z_mm"][0]
    assert down == pytest.approx(57.2 * math.sin(math.pi / 3) / 101, abs=EXACT)


def test_a_stem_spacer_lifts_the_front() -> None:
    # Caster axle 12 mm lower in the frame: 437 below the rail, 237 below the rear axle, 400 ahead.
    made = level_chair(stem_spacer="Z12")
    rise = math.asin((75 - 300) / math.hypot(400, 237)) + math.atan(237 / 400)
    assert made["seat_angle_deg"][0] == pytest.approx(math.degrees(rise), abs=EXACT)
    assert made["chair_mass_kg"][0] == pytest.approx(21.08, abs=EXACT)
    assert made["price"][0] == pytest.approx(685.5, abs=EXACT)


def test_axle_plate_turned_round() -> None:
    # About 60: column B, 50 ahead of the post, comes to 70. Base 400 - 70.
    made = level_chair(axle_hole="B1R")
    assert made["wheelbase_mm"][0] == pytest.approx(330.0, abs=EXACT)
    assert made["seat_angle_deg"][0] == pytest.approx(0.0, abs=EXACT)


def test_without_push_handles_the_back_posts_are_highest() -> None:
    made = level_chair(push_handle="none")
    assert made["overall_height_mm"][0] == pytest.approx(900.0, abs=EXACT)
    assert made["chair_mass_kg"][0] == pytest.approx(20.6, abs=EXACT)


def test_anti_tip_wheel() -> None:
    # Short tube, hole 7: wheel centre 390 below the rail and 200 behind the axle: 110 up, 85 clear.
    made = level_chair()
    assert made.rows["device_z"][0] == pytest.approx(110.0, abs=EXACT)
    pitch = math.radians(float(made["pitch_to_anti_tip_deg"][0]))
    touches = -200.0 * math.sin(pitch) + (110.0 - 300.0) * math.cos(pitch) + 300.0 - 25.0
    assert touches == pytest.approx(0.0, abs=1e-9)


def test_axle_50_mm_ahead_shortens_the_base_and_leaves_it_level() -> None:
    made = level_chair(axle_hole="B1")
    assert made["wheelbase_mm"][0] == pytest.approx(350.0, abs=EXACT)
    assert made["seat_angle_deg"][0] == pytest.approx(0.0, abs=EXACT)
    moved = level_chair()["shoulder_ahead_of_axle_mm"][0] - made["shoulder_ahead_of_axle_mm"][0]
    assert moved == pytest.approx(50.0, abs=EXACT)


def test_caster_housing_behind_the_tube_shortens_the_base_by_100() -> None:
    made = level_chair(caster_housing="T1")
    assert made["wheelbase_mm"][0] == pytest.approx(300.0, abs=EXACT)
    # Housings, forks and casters (0.6 + 0.5 + 1.0 kg) come 100 mm back.
    back = level_chair()["com_x_mm"][0] - made["com_x_mm"][0]
    assert back == pytest.approx(2.1 * 100 / 101, abs=EXACT)


def test_stem_turned_forward_5_deg_lifts_or_lowers_the_front_by_what_the_fork_swings() -> None:
    # Crown (450, -300); the fork turned by -5 deg: trail 50 back, drop 125 down.
    sin, cos = math.sin(math.radians(-5)), math.cos(math.radians(-5))
    x, z = 450 - 50 * cos + 125 * sin, -300 - 50 * sin - 125 * cos
    rise = math.asin((75 - 300) / math.hypot(x, z + 200)) - math.atan2(z + 200, x)
    made = level_chair(stem_setting="NF5")
    assert made["seat_angle_deg"][0] == pytest.approx(math.degrees(rise), abs=EXACT)
    assert made["caster_stem_angle_deg"][0] == pytest.approx(-5 + math.degrees(rise), abs=EXACT)


def test_back_leaning_10_deg() -> None:
    made = level_chair(back_angle="B10")
    assert made["back_angle_deg"][0] == pytest.approx(10.0, abs=EXACT)
    handle = 500 + 430 * math.cos(math.radians(10))
    assert made["overall_height_mm"][0] == pytest.approx(handle, abs=EXACT)


def test_turning_is_about_the_middle_of_the_axle_and_the_feet_sweep_widest() -> None:
    made = level_chair()
    rows = made.rows
    # Footplate tip: pivot 420 + 300 cos 60 - 20 + 150; 200 - 20 off the mid-plane.
    tip = math.hypot(420 + 150 - 20 + 150, 180)
    toes = [float(rows[f"toe_x_{side}"][0]) for side in ("left", "right")]
    toe = math.hypot(max(toes), 180)
    assert made["turning_diameter_mm"][0] == pytest.approx(2 * max(tip, toe), abs=EXACT)
    # Behind, the handles (-70) do not reach as far as the tyres: 300 back, 240 + 12.5 out; rims
    # 270 back, 290 out; anti-tip 225 back; the axle's end 290 out.
    rear = max(math.hypot(300, 252.5), math.hypot(270, 290), math.hypot(225, 200))
    assert made["half_turn_width_mm"][0] == pytest.approx(max(tip, toe) + rear, abs=EXACT)


def test_caster_swing() -> None:
    made = level_chair()
    # Stem meets the floor 450 ahead of the axle. Circle: trail 50 + radius 75, half width 15.
    swing = math.hypot(125, 15)
    # Rear tyre at caster height (150 up): sqrt(300^2 - 150^2) ahead; sideways 240 - 12.5 - 210.
    gap = math.hypot(450 - math.sqrt(300**2 - 150**2), 240 - 12.5 - 210) - swing
    assert made["caster_tyre_clearance_mm"][0] == pytest.approx(gap, abs=EXACT)
    # Footplate from 420 + 150 - 20 = 550: 100 ahead of the stem, inner gap 10 + 20 sideways;
    # it hangs lower than the caster's top.
    plate = math.hypot(550 - 450, 30) - swing
    above = 500 - 50 - 300 * math.sin(math.pi / 3) - 8 - 150
    assert made["caster_foot_clearance_mm"][0] == pytest.approx(max(plate, above), abs=EXACT)
