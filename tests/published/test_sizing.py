"""Sizing rules against the numbers printed by their sources, mm unless said."""

from __future__ import annotations

import pytest

from chairwright.person.client import Client, Measure, Side
from chairwright.person.estimates import MeasureSet
from chairwright.targets.build import targets_for
from chairwright.targets.envelope import envelope
from chairwright.targets.heights import drop_angle_deg, seat_height_for_clearance
from chairwright.targets.rules import RuleResult, all_rules, apply_rule, rules_for
from chairwright.targets.scope import gauge_note
from chairwright.targets.target import Target
from chairwright.targets.verdict import verdict
from chairwright.units import Dimension, parse_quantity

EXACT = 1e-9
INCH = 25.4


def measures(**typed: float) -> MeasureSet:
    """Measures in mm; ``_left`` and ``_right`` at the end of a name give the side."""
    rows = [_row(name, value) for name, value in typed.items()]
    return MeasureSet(tuple(rows), {})


def _row(name: str, value: float) -> Measure:
    stem, _, last = name.rpartition("_")
    side: Side = "left" if last == "left" else "right" if last == "right" else "middle"
    dimension: Dimension = "mass" if name == "body_mass" else "length"
    unit = "kg" if dimension == "mass" else "mm"
    quantity = parse_quantity(f"{value} {unit}", dimension, name)
    return Measure(name if side == "middle" else stem, side, quantity, 5.0)


def results(dimension: str, body: MeasureSet, **fields: str) -> dict[str, RuleResult]:
    """Every rule's result for one dimension, by the rule's key."""
    client = Client("T-1", "female", tuple(body), **fields)  # type: ignore[arg-type]
    return {r.rule.key: r for r in rules_for(dimension, client, body)}


def ends(result: RuleResult) -> tuple[float | None, float | None]:
    """Low and high end."""
    return result.low, result.high


LEGS = {"lower_leg_length_left": 420.0, "lower_leg_length_right": 420.0}


class TestWhoMeasures:
    """SZ-01, WHO WSTP measures A, B, C, H (restated by a secondary source); NSW (read)."""

    body = measures(
        hip_width=380, buttock_thigh_depth_left=470, buttock_thigh_depth_right=480,
        axilla_height=400, **LEGS,
    )  # fmt: skip

    def test_seat_width(self) -> None:
        assert ends(results("seat_width_mm", self.body)["who_width"]) == (380, 380)

    def test_seat_depth_takes_the_shorter_side(self) -> None:
        assert ends(results("seat_depth_mm", self.body)["who_depth"]) == (420, 440)

    def test_cushion_top_to_footplate(self) -> None:
        assert ends(results("leg_support_length_mm", self.body)["who_leg"]) == (420, 420)

    def test_trunk_pad_top_takes_the_stricter(self) -> None:
        pads = results("trunk_pad_top_mm", self.body)
        assert (pads["who_trunk_pad"].high, pads["nsw_trunk_pad"].high) == (370, 375)
        assert envelope(list(pads.values())) == (None, 370)


class TestWidthRules:
    """SZ-02: hip 380, all width rules."""

    found = results("seat_width_mm", measures(hip_width=380))

    @pytest.mark.parametrize(
        ("rule", "printed"),
        [
            ("who_width", 380),  # WHO WSTP
            ("exam_width", 400),  # Exam
            ("werner_width", 400),  # Werner, ch. 64
            ("pmr_width", 405.4),  # PM&R
            ("us_width", 430.8),  # US lists
            ("exam_wide_width", 440),  # Exam, + 6 cm
        ],
    )
    def test_width(self, rule: str, printed: float) -> None:
        assert self.found[rule].low == pytest.approx(printed, abs=EXACT)
        assert self.found[rule].high == pytest.approx(printed, abs=EXACT)

    def test_six_cm_more_is_too_wide(self) -> None:
        assert "too wide" in self.found["exam_wide_width"].refused

    def test_the_envelope_ends_below_the_one_that_is_too_wide(self) -> None:
        assert envelope(list(self.found.values())) == (380, 430.8)


class TestDepthRules:
    """SZ-03: thigh 470, all depth rules."""

    found = results("seat_depth_mm", measures(buttock_thigh_depth_left=470))

    @pytest.mark.parametrize(
        ("rule", "low", "high"),
        [
            ("who_depth", 420, 440),  # WHO WSTP
            ("exam_depth", 420, 445),  # Exam
            ("pmr_depth", 419.2, 419.2),  # PM&R
            ("us_depth", 419.2, 419.2),  # US lists
            ("werner_child_depth", 460, 460),  # Werner, ch. 64
        ],
    )
    def test_depth(self, rule: str, low: float, high: float) -> None:
        assert ends(self.found[rule]) == pytest.approx((low, high), abs=EXACT)

    def test_the_child_rule_is_refused_for_adults(self) -> None:
        assert self.found["werner_child_depth"].refused == "a rule for children"
        assert not self.found["werner_child_depth"].counts

    def test_the_envelope_leaves_the_child_rule_out(self) -> None:
        assert envelope(list(self.found.values())) == (419.2, 445)


class TestFootPropulsion:
    """SZ-04: lower leg 440; Heinrichs 2021 (abstract), WHO WSTP (restated)."""

    body = measures(
        body_mass=70, hip_width=380, buttock_thigh_depth_left=470, axilla_height=400,
        scapula_height=340, shoulder_height=560, elbow_height=220,
        lower_leg_length_left=440, lower_leg_length_right=440,
    )  # fmt: skip
    client = Client("T-1", "female", tuple(body), propulsion="feet")
    found = results("cushion_to_floor_front_mm", body, propulsion="feet")

    def test_loaded_seat(self) -> None:
        seat = self.found["heinrichs_height"]
        assert seat.low == pytest.approx(389.2, abs=0.05)
        assert seat.high == pytest.approx(414.6, abs=0.05)
        assert ends(self.found["who_foot_height"]) == (440, 440)

    def test_both_are_shown_with_a_warning(self) -> None:
        seat = next(
            t for t in targets_for(self.client, self.body)
            if t.figure == "cushion_to_floor_front_mm" and t.must
        )  # fmt: skip
        assert "Heinrichs 2021 389.2 to 414.6" in seat.reason
        assert "WHO WSTP 440" in seat.reason
        assert "conflict" in seat.reason

    def test_the_footplate_rule_is_skipped(self) -> None:
        names = {target.figure for target in targets_for(self.client, self.body)}
        assert "footplate_clearance_mm" not in names


class TestExaminationAnswers:
    """SZ-05 and SZ-06: worked answers of the Japanese licence examination, cm printed."""

    @pytest.mark.parametrize(
        ("rule", "body_cm", "low_cm", "high_cm"),
        [
            ("exam_answer_width", 40, 44, 44),
            ("exam_answer_depth", 46, 41, 41),
            ("exam_answer_arm", 16, 18, 18),
            ("exam_53_back", 42, 32, 37),
            ("exam_53_depth", 40, 35, 37.5),
            ("exam_53_width", 35, 37, 40),
        ],
    )
    def test_answer(self, rule: str, body_cm: float, low_cm: float, high_cm: float) -> None:
        found = apply_rule(all_rules()[rule], body_cm * 10)
        assert found == pytest.approx((low_cm * 10, high_cm * 10), abs=EXACT)

    @pytest.mark.parametrize(
        ("rule", "body_cm", "low_cm", "high_cm"),
        [("exam_53_back", 42, 35, 40), ("exam_53_arm", 18, 23, 23)],
    )
    def test_answer_counted_from_the_frame_under_a_3_cm_cushion(
        self, rule: str, body_cm: float, low_cm: float, high_cm: float
    ) -> None:
        low, high = apply_rule(all_rules()[rule], body_cm * 10)
        assert low is not None
        assert high is not None
        assert (low + 30, high + 30) == pytest.approx((low_cm * 10, high_cm * 10), abs=EXACT)


class TestSeatAngle:
    """SZ-07 to SZ-09: first principles; tolerance half of the last printed digit."""

    @pytest.mark.parametrize(
        ("drop", "depth", "printed"),
        [
            (20, 430, 2.67),  # front 45, rear 43, depth 43 cm: common practice, no source
            (20, 400, 2.87),  # P&O drop
            (40, 400, 5.74),  # P&O drop
            (50.8, 406, 7.19),  # trigonometry
        ],
    )
    def test_angle(self, drop: float, depth: float, printed: float) -> None:
        assert drop_angle_deg(drop, depth) == pytest.approx(printed, abs=0.005)


class TestClearanceIdentity:
    """SZ-10: leg of 16 in hanging straight."""

    def test_a_seat_of_18_in_leaves_2_in(self) -> None:
        seat = seat_height_for_clearance(16 * INCH, 2 * INCH)
        assert seat == pytest.approx(18 * INCH, abs=EXACT)

    def test_4_in_need_a_seat_of_20_in(self) -> None:
        seat = seat_height_for_clearance(16 * INCH, 4 * INCH)
        assert seat == pytest.approx(20 * INCH, abs=EXACT)


class TestOverallLimits:
    """SZ-11: ISO 7193 as in JIS T 9203:2000 (read in the source)."""

    limits = tuple(
        target
        for target in targets_for(TestFootPropulsion.client, TestFootPropulsion.body)
        if "ISO 7193" in target.source
    )

    def words(self, length: float, width: float, height: float) -> dict[str, str]:
        """Verdict of each overall size."""
        sizes = {
            "overall_length_mm": length,
            "overall_width_mm": width,
            "overall_height_mm": height,
        }
        return {t.figure: verdict(t, sizes[t.figure]).word for t in self.limits}

    def test_1200_700_1090_pass(self) -> None:
        assert set(self.words(1200, 700, 1090).values()) == {"holds"}
        assert len(self.limits) == 3

    def test_1201_fails(self) -> None:
        assert self.words(1201, 700, 1090)["overall_length_mm"] == "fails"

    def test_701_fails(self) -> None:
        assert self.words(1200, 701, 1090)["overall_width_mm"] == "fails"


class TestOverallWidth:
    """SZ-12, PM&R (read in the source): an 18 in seat is usually 27 in overall."""

    def test_sanity_figure(self) -> None:
        low, high = apply_rule(all_rules()["pmr_overall"], 18 * INCH)
        assert (low, high) == pytest.approx((27 * INCH, 27 * INCH), abs=1e-6)


class TestGaugeScope:
    """SZ-13: scope page of ISO 7176-7:1998."""

    @pytest.mark.parametrize(("mass", "width"), [(121, 400), (80, 211)])
    def test_outside(self, mass: float, width: float) -> None:
        assert "not to ISO 7176-7" in gauge_note(mass, width)

    def test_inside(self) -> None:
        assert gauge_note(120, 212) == ""


class TestCushionCompression:
    """SZ-14, WHO note (restated): compression is measured, never assumed."""

    def test_no_rule_takes_a_cushion_for_granted(self) -> None:
        heights = results("cushion_to_floor_front_mm", TestFootPropulsion.body)
        # 2 in above the lower leg, on top of whatever cushion: the frame height needs its
        # measured loaded thickness and is not a target.
        assert heights["sci_height"].low == pytest.approx(440 + 2 * INCH, abs=EXACT)
        figures = {
            t.figure for t in targets_for(TestFootPropulsion.client, TestFootPropulsion.body)
        }
        assert not figures & {"seat_to_floor_front_mm", "seat_to_floor_rear_mm"}


class TestElbowRange:
    """PVA Consortium 2005, fig. 2 caption (read); van der Woude 2009 (abstract)."""

    pva = Target("elbow_angle_deg", *apply_rule(all_rules()["pva_elbow"]), False, 1.0, "", "")
    woude = Target("elbow_angle_deg", *apply_rule(all_rules()["woude_elbow"]), True, 1.0, "", "")

    @pytest.mark.parametrize("angle", [100.0, 120.0])
    def test_inside_the_recommended_range(self, angle: float) -> None:
        assert verdict(self.pva, angle).word == "holds"

    def test_130_is_only_inside_the_efficient_range(self) -> None:
        assert verdict(self.pva, 130.0).word == "fails"
        assert verdict(self.woude, 130.0).word == "holds"

    def test_90_is_outside_both(self) -> None:
        assert verdict(self.woude, 90.0).breaks
