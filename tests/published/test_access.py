"""Access codes on knees, reach, space and level: limits as printed, at and just beyond each."""

from __future__ import annotations

from typing import Any

import pytest

from chairwright.places.code_clauses import clause
from chairwright.places.code_reach import knee_depth_needed_mm, reach_over
from chairwright.places.code_ways import share_served_pct, t_turn_rulings
from chairwright.places.kinds import Basin, Corridor, Kerb, Room, Table, Threshold

from .access_judged import INCH, failing, word


class TestKneesAndReach:
    """ADA 2010, 306 and 308 (read in the source)."""

    @pytest.mark.parametrize(("high", "deep"), [(9, 11), (15, 10), (21, 9), (27, 8)])
    def test_ac_12_knee_depth_by_height(self, high: float, deep: float) -> None:
        assert knee_depth_needed_mm(high * INCH) / INCH == pytest.approx(deep, abs=1e-9)

    def test_ac_12_toe_space_counts_up_to_6_in_beyond_the_knees(self) -> None:
        usual: dict[str, Any] = {
            "name": "b", "clear_height_mm": 27 * INCH, "knee_depth_mm": 8 * INCH,
            "foot_depth_mm": 11 * INCH, "width_mm": 30 * INCH,
        }  # fmt: skip
        assert word(Basin(**usual, toe_depth_mm=17 * INCH)) == "holds"
        assert word(Basin(**usual, toe_depth_mm=16.9 * INCH)) == "fails"
        shallow = usual | {"foot_depth_mm": 10.9 * INCH}
        low = failing(Basin(**shallow, toe_depth_mm=25 * INCH))
        assert low == ["knee depth", "toe space depth"]

    def test_ac_12_a_lower_or_narrower_top_fails(self) -> None:
        assert "knee space height" in failing(Table(name="t", clear_height_mm=26.9 * INCH))
        narrow = Table(name="t", clear_height_mm=27 * INCH, width_mm=29.9 * INCH)
        assert failing(narrow) == ["knee space width"]

    @pytest.mark.parametrize(("over", "high"), [(0, "48 in"), (20, "48 in"), (20.1, "44 in"),
                                                (25, "44 in")])  # fmt: skip
    def test_ac_13_reach_from_the_front(self, over: float, high: str) -> None:
        assert reach_over(over * INCH).printed == high

    def test_ac_13_over_25_in_is_out_of_reach(self) -> None:
        assert reach_over(25.1 * INCH).high_mm is None
        far = Table(
            name="t", clear_height_mm=700.0, reach_height_mm=900.0, reach_over_mm=25.1 * INCH
        )
        assert "reach from the front" in failing(far)

    @pytest.mark.parametrize(("over", "high"), [(10, "48 in"), (10.1, "46 in"), (24, "46 in")])
    def test_ac_14_reach_from_the_side(self, over: float, high: str) -> None:
        assert reach_over(over * INCH, "side").printed == high

    def test_ac_14_over_24_in_is_out_of_reach_and_the_top_may_be_34_in_high(self) -> None:
        assert reach_over(24.1 * INCH, "side").high_mm is None
        usual: dict[str, Any] = {
            "name": "t", "clear_height_mm": 700.0, "reach_from": "side",
            "reach_over_mm": 12 * INCH, "reach_height_mm": 46 * INCH,
        }  # fmt: skip
        item = "reach from the side"
        assert item not in failing(Table(**usual, top_height_mm=34 * INCH))
        assert item in failing(Table(**usual, top_height_mm=34.1 * INCH))

    def test_nothing_is_reached_below_15_in(self) -> None:
        low: dict[str, Any] = {"name": "t", "clear_height_mm": 700.0, "reach_over_mm": 0.0}
        assert "lowest reach" not in failing(Table(**low, reach_height_mm=15 * INCH))
        assert "lowest reach" in failing(Table(**low, reach_height_mm=14.9 * INCH))


class TestSpaceAndLevel:
    """ADA 2010, 303, 304, 403 and 404.2.5; Ontario 3.8; AWM 2010 (read in the source)."""

    def test_ac_15_t_turn(self) -> None:
        assert {each.word for each in t_turn_rulings(60 * INCH, 36 * INCH)} == {"holds"}

    @pytest.mark.parametrize(
        ("square", "arm", "item"),
        [(59.9, 36, "square of the T-turn"), (60, 35.9, "arms and base of the T-turn"),
         (60, 36.1, "clear length of each arm")],
    )  # fmt: skip
    def test_ac_15_each_limit(self, square: float, arm: float, item: str) -> None:
        found = t_turn_rulings(square * INCH, arm * INCH)
        assert item in [each.item for each in found if each.word == "fails"]

    @pytest.mark.parametrize(
        ("width", "share"), [(849, None), (850, 50), (999, 50), (1000, 95), (2000, 95)]
    )
    def test_ac_16_corridor_turn_as_measured(self, width: float, share: int | None) -> None:
        assert share_served_pct(width) == share

    def test_ac_17_inches(self) -> None:
        assert clause("ada_turning_circle").limit == pytest.approx(1524, abs=1e-9)
        assert clause("ada_route_width").limit == pytest.approx(914.4, abs=1e-9)

    def test_turning_circle(self) -> None:
        assert word(Room(name="r", width_mm=1524.0, depth_mm=1600.0)) == "holds"
        assert word(Room(name="r", width_mm=1600.0, depth_mm=1523.0)) == "fails"

    @pytest.mark.parametrize(
        ("width", "narrow", "kept"),
        [(36.0, None, True), (35.9, None, False), (32.0, 24.0, True), (32.0, 24.1, False),
         (31.9, 24.0, False)],
    )  # fmt: skip
    def test_corridor(self, width: float, narrow: float | None, kept: bool) -> None:
        long = None if narrow is None else narrow * INCH
        passage = Corridor(name="c", width_mm=width * INCH, narrow_length_mm=long)
        assert (word(passage) == "holds") is kept

    def test_corridor_in_ontario_and_england(self) -> None:
        public = Corridor(name="c", width_mm=1100.0, building="public")
        assert word(public, "ontario_3_8") == "not known"  # a passing space every 30 m
        assert (
            word(Corridor(name="c", width_mm=1600.0, building="public"), "ontario_3_8") == "holds"
        )
        assert (
            word(Corridor(name="c", width_mm=1099.0, building="public"), "ontario_3_8") == "fails"
        )
        narrow = Corridor(name="c", width_mm=750.0, narrow_length_mm=2000.0)
        assert word(narrow, "england_ad_m") == "holds"
        assert word(Corridor(name="c", width_mm=750.0), "england_ad_m") == "fails"

    @pytest.mark.parametrize(
        ("height", "bevelled", "site", "expected"),
        [(1 / 4, False, "new", "holds"), (0.26, False, "new", "fails"),
         (1 / 2, True, "new", "holds"), (0.51, True, "new", "fails"),
         (3 / 4, True, "existing", "holds"),
         (3 / 4, False, "existing", "fails"), (0.76, True, "existing", "fails"),
         (1 / 2, None, "new", "not known")],
    )  # fmt: skip
    def test_door_threshold(
        self, height: float, bevelled: bool | None, site: Any, expected: str
    ) -> None:
        step = Threshold(name="t", height_mm=height * INCH, bevelled=bevelled, site=site)
        assert word(step) == expected

    def test_a_step_away_from_a_door_is_never_above_half_an_inch(self) -> None:
        step = Threshold(name="t", height_mm=0.51 * INCH, bevelled=True, at_door=False)
        assert word(step) == "fails"

    def test_ontario_level_change(self) -> None:
        assert word(Threshold(name="t", height_mm=13.0, bevelled=True), "ontario_3_8") == "holds"
        assert word(Threshold(name="t", height_mm=13.1, bevelled=True), "ontario_3_8") == "fails"

    def test_a_kerb_must_have_a_ramp(self) -> None:
        assert word(Kerb(name="k", height_mm=100.0)) == "fails"
        assert word(Kerb(name="k", height_mm=100.0), "ontario_3_8") == "fails"
        assert word(Kerb(name="k", height_mm=100.0), "ireland_tgd_m") == "silent"


def test_draft_counters_are_for_public_buildings() -> None:
    counter: dict[str, Any] = {"name": "t", "clear_height_mm": 650.0, "width_mm": 900.0}
    low = Table(**counter, top_height_mm=660.0, building="public")
    assert word(low, "can_asc_2_3_draft") == "holds"
    high = Table(**counter, top_height_mm=866.0, building="public")
    assert failing(high, "can_asc_2_3_draft") == ["height of the top"]
    assert word(Table(**counter, top_height_mm=660.0), "can_asc_2_3_draft") == "silent"
