"""From a client to targets: envelopes, preferences, limbs that push, rest or are lost."""

from __future__ import annotations

import pytest

from chairwright.errors import InputError
from chairwright.figures.registry import FIGURES
from chairwright.person.client import Amputation

from .people import figures, measure, must, person, prefer, targets

FOOT_FIGURES = {"leg_support_length_mm", "footplate_clearance_mm", "caster_foot_clearance_mm"}
SEAT = "cushion_to_floor_front_mm"
FEET_GONE = (Amputation("left", "foot"), Amputation("right", "below_knee"))
LEGS = (("lower_leg_length", "left"), ("lower_leg_length", "right"))


def ends(target: object) -> tuple[float | None, float | None]:
    return target.low, target.high  # type: ignore[attr-defined]


class TestEnvelope:
    def test_must_is_the_envelope_and_prefer_is_who(self) -> None:
        # hip + 0 (WHO) to + 2 in (US lists).
        assert ends(must(person(), "seat_width_mm")) == (380, 430.8)
        assert ends(prefer(person(), "seat_width_mm")) == (380, 380)

    def test_a_named_set_moves_the_preference_only(self) -> None:
        client = person(rule_set="us_lists")
        assert ends(must(client, "seat_width_mm")) == (380, 430.8)
        assert ends(prefer(client, "seat_width_mm")) == (430.8, 430.8)

    def test_a_silent_set_falls_back_and_says_so(self) -> None:
        width = prefer(person(rule_set="nsw"), "seat_width_mm")
        assert ends(width) == (380, 380)
        assert "New South Wales spinal seating is silent here" in width.reason

    def test_a_bound_never_widens(self) -> None:
        # Scapula 340 (NSW, at most) cuts axilla - 50 = 350; 340 - 50.8 (PM&R) is the low end.
        assert ends(must(person(), "back_height_mm")) == (289.2, 340)

    def test_a_wide_pelvis_raises_the_least_width(self) -> None:
        client = person(instead=(measure("trochanter_width", "390 mm"),))
        assert must(client, "seat_width_mm").low == 390

    def test_the_preference_stays_inside_the_must(self) -> None:
        client = person(instead=(measure("trochanter_width", "390 mm"),))
        width = prefer(client, "seat_width_mm")
        assert ends(width) == (390, 390)
        assert "moved inside what must hold" in width.reason

    def test_who_is_silent_on_back_and_arm(self) -> None:
        # Exam: axilla - 10 to - 5 cm, cut at the scapula; elbow + 1 to 2 cm.
        assert ends(prefer(person(), "back_height_mm")) == (300, 340)
        assert ends(prefer(person(), "arm_height_mm")) == (230, 240)

    def test_seat_to_back_angle(self) -> None:
        # Training guide 1998: 90-100 deg; must: common practice, no source.
        assert ends(prefer(person(), "seat_to_back_angle_deg")) == (90, 100)
        assert ends(must(person(), "seat_to_back_angle_deg")) == (90, 105)

    def test_seat_angle_from_the_drop(self) -> None:
        # P&O 20-40 mm over the middle of WHO's 420-440 mm: asin(20/430), asin(40/430).
        assert ends(prefer(person(), "seat_angle_deg")) == (2.67, 5.34)


class TestReasons:
    def test_the_reason_has_the_clients_number(self) -> None:
        reason = must(person(), "seat_width_mm").reason
        assert "hip width 380 mm + 0 to 50.8 mm" in reason
        assert "US lists 430.8" in reason
        assert "440 not counted (too wide by its own source)" in reason

    def test_conflicting_rules_are_named(self) -> None:
        assert "conflict" in must(person(), "seat_depth_mm").reason
        assert "conflict" not in must(person(), "elbow_angle_deg").reason

    def test_an_estimate_says_so(self) -> None:
        client = person(without=(("hip_width", "middle"),))
        assert "estimated, not measured" in must(client, "seat_width_mm").reason

    def test_the_source_says_how_certain_it_is(self) -> None:
        width = prefer(person(), "seat_width_mm")
        assert width.source == "WHO WSTP (restated by a secondary source)"

    def test_every_target_has_a_source_and_a_reason(self) -> None:
        assert all(target.source and target.reason for target in targets(person()))

    def test_heavy_users_are_outside_the_gauge(self) -> None:
        reason = must(person(mass="121 kg"), "seat_width_mm").reason
        assert "not to ISO 7176-7 (user 121 kg" in reason
        assert "7176-7" not in must(person(mass="120 kg"), "seat_width_mm").reason


class TestTolerance:
    def test_the_tape_passes_through(self) -> None:
        client = person(instead=(measure("hip_width", "380 mm", tolerance=6.0),))
        assert must(client, "seat_width_mm").tolerance == 6.0
        assert prefer(client, "seat_width_mm").tolerance == 6.0

    def test_a_measure_that_sets_no_end_lends_no_tolerance(self) -> None:
        client = person(instead=(measure("trochanter_width", "350 mm", tolerance=40.0),))
        assert must(client, "seat_width_mm").tolerance == 10.0

    def test_limits_of_the_chair_have_none(self) -> None:
        assert must(person(), "overall_width_mm").tolerance == 0.0


class TestHands:
    def test_elbow_range(self) -> None:
        assert ends(must(person(), "elbow_angle_deg")) == (100, 130)
        assert ends(prefer(person(), "elbow_angle_deg")) == (100, 120)

    @pytest.mark.parametrize("propulsion", ["carer", "feet"])
    def test_no_hands_push(self, propulsion: str) -> None:
        hands_only = {"elbow_angle_deg", "caster_share", "tip_rear_free_deg"}
        assert not figures(person(propulsion=propulsion)) & hands_only

    def test_a_lost_forearm_does_not_push(self) -> None:
        lost = (Amputation("left", "above_elbow"), Amputation("right", "above_elbow"))
        client = person(amputations=lost)
        assert not figures(client) & {"elbow_angle_deg", "arm_height_mm"}

    def test_the_back_may_be_higher_when_nobody_pushes(self) -> None:
        # Up to the shoulder, 560 (NSW).
        assert must(person(propulsion="carer"), "back_height_mm").high == 560


class TestFootSupports:
    def test_leg_support(self) -> None:
        assert ends(must(person(), "leg_support_length_mm")) == (425, 455)
        assert ends(prefer(person(), "leg_support_length_mm")) == (440, 440)

    def test_the_shorter_leg_counts(self) -> None:
        client = person(instead=(measure("lower_leg_length", "420 mm", "right"),))
        leg = prefer(client, "leg_support_length_mm")
        assert leg.low == 420
        assert "right lower leg length 420 mm" in leg.reason

    def test_seat_over_supports(self) -> None:
        # P&O: lower leg + 50 to 80; least: 440 sin 60 + 50 = 431.05; most: 23.9 in.
        assert ends(prefer(person(), SEAT)) == (490, 520)
        seat = must(person(), SEAT)
        assert seat.low == pytest.approx(431.05, abs=0.06)  # rounded to 0.1 mm
        assert seat.high == pytest.approx(607.06, abs=1e-9)

    def test_the_alarm_does_not_bind_the_very_tall(self) -> None:
        tall = tuple(measure("lower_leg_length", "560 mm", side) for _, side in LEGS)  # type: ignore[arg-type]
        assert must(person(instead=tall), SEAT).high is None

    def test_clearance(self) -> None:
        assert ends(must(person(), "footplate_clearance_mm")) == (50, None)


class TestFootPropulsion:
    def test_both_feet_push(self) -> None:
        client = person(propulsion="feet")
        assert ends(must(client, SEAT)) == (389.2, 440)
        assert ends(prefer(client, SEAT)) == (389.2, 414.6)
        assert not figures(client) & FOOT_FIGURES

    def test_who_can_be_preferred(self) -> None:
        assert ends(prefer(person(propulsion="feet", rule_set="who"), SEAT)) == (440, 440)

    def test_a_flat_seat_is_preferred(self) -> None:
        assert ends(prefer(person(propulsion="feet"), "seat_angle_deg")) == (0, 3)

    def test_one_foot_pushes_and_the_other_rests(self) -> None:
        client = person(
            propulsion="hand_and_foot_left",
            instead=(measure("lower_leg_length", "430 mm", "left"),),
        )
        # Seat from the left leg; support from the right, 440 - 15 - 50.8 to 440 + 15.
        assert must(client, SEAT).high == 430
        leg = must(client, "leg_support_length_mm")
        assert leg.low == pytest.approx(374.2)
        assert leg.high == 455
        assert "right lower leg length 440 mm" in leg.reason
        assert figures(client) >= FOOT_FIGURES


class TestAmputations:
    def test_both_feet_lost(self) -> None:
        client = person(without=LEGS, amputations=FEET_GONE)
        assert not figures(client) & FOOT_FIGURES

    def test_without_feet_the_seat_height_is_only_an_alarm(self) -> None:
        client = person(without=LEGS, amputations=FEET_GONE)
        # D'Souza 2022: 16.3-23.9 in.
        assert ends(prefer(client, SEAT)) == pytest.approx((414.02, 607.06))
        assert not [t for t in targets(client) if t.figure == SEAT and t.must]

    def test_one_foot_left(self) -> None:
        client = person(without=LEGS[:1], amputations=FEET_GONE[:1])
        assert "right lower leg length 440 mm" in must(client, "leg_support_length_mm").reason

    def test_a_prosthesis_is_not_a_foot(self) -> None:
        assert not figures(person(amputations=FEET_GONE)) & FOOT_FIGURES

    def test_one_thigh_lost_takes_the_other_for_depth(self) -> None:
        client = person(
            without=(("buttock_thigh_depth", "left"), LEGS[0]),
            amputations=(Amputation("left", "above_knee"),),
        )
        assert ends(prefer(client, "seat_depth_mm")) == (430, 450)

    def test_no_thigh_left_makes_no_depth_target(self) -> None:
        client = person(
            without=(("buttock_thigh_depth", "left"), ("buttock_thigh_depth", "right"), *LEGS),
            amputations=(Amputation("left", "hip"), Amputation("right", "above_knee")),
        )
        assert "seat_depth_mm" not in figures(client)
        assert "seat_width_mm" in figures(client)


class TestOrder:
    def test_one_must_and_one_preference_at_most_in_the_registrys_order(self) -> None:
        found = targets(person(propulsion="hand_and_foot_right"))
        keys = [(target.figure, not target.must) for target in found]
        places = {name: place for place, name in enumerate(FIGURES)}
        assert len(set(keys)) == len(keys)
        assert keys == sorted(keys, key=lambda key: (places[key[0]], key[1]))

    def test_same_client_same_targets(self) -> None:
        assert targets(person()) == targets(person())

    def test_ranges_are_the_right_way_round(self) -> None:
        for target in targets(person()):
            assert target.low is None or target.high is None or target.low <= target.high

    def test_unknown_rule_set(self) -> None:
        with pytest.raises(InputError, match="the rule set must be one of envelope, who"):
            targets(person(rule_set="mine"))
