"""Public access codes: limits as printed, at and just beyond each (inches for U.S. values)."""

from __future__ import annotations

from typing import Any

import pytest

from chairwright.places.code_clauses import clause
from chairwright.places.code_doors import floor_needed
from chairwright.places.code_reach import knee_depth_needed_mm, reach_over
from chairwright.places.code_ways import share_served_pct, t_turn_rulings
from chairwright.places.codes import CODES, Ruling, differences, judge
from chairwright.places.kinds import Basin, Corridor, Door, Kerb, Ramp, Room, Table, Threshold
from chairwright.places.model import Place, Slope

INCH = 25.4


def ramp(rise: float, run: float, **more: Any) -> Ramp:
    """A ramp with everything that a code can ask for, unless it is said otherwise."""
    usual: dict[str, Any] = {
        "name": "ramp", "building": "public", "cross_slope": Slope(1 / 48), "width_mm": 1600.0,
        "landing_length_mm": 1670.0, "landing_width_mm": 1670.0, "rails": "both",
        "edge_protection": True,
    }  # fmt: skip
    return Ramp(rise_mm=rise, run_mm=run, **usual | more)


def rulings(place: Place, code: str) -> tuple[Ruling, ...]:
    """Every clause of one code on a place; none when the code is silent."""
    judgement = judge(place, code)
    return judgement.rulings if judgement else ()


def word(place: Place, code: str = "ada_2010") -> str:
    """Verdict of one code."""
    judgement = judge(place, code)
    return judgement.word if judgement else "silent"


def failing(place: Place, code: str = "ada_2010") -> list[str]:
    """What fails under one code."""
    return [ruling.item for ruling in rulings(place, code) if ruling.word == "fails"]


def door(**more: Any) -> Door:
    """A door 36 in clear."""
    usual: dict[str, Any] = {"name": "door", "clear_width_mm": 36 * INCH}
    return Door(**usual | more)


class TestRampsAda:
    """ADA 2010, 405 (read in the source)."""

    def test_ac_01_rise_of_30_in_at_1_to_12(self) -> None:
        whole = ramp(30 * INCH, 360 * INCH, site="new", landing_length_mm=60 * INCH)
        assert whole.run_mm == pytest.approx(360 * INCH)
        assert word(whole) == "holds"

    @pytest.mark.parametrize(
        ("lacks", "item"),
        [
            ({"rails": "one"}, "rise without handrails"),
            ({"edge_protection": False}, "edge protection"),
            ({"landing_length_mm": 59.9 * INCH}, "landing length"),
            ({"landing_width_mm": 1599.0}, "landing width"),
            ({"width_mm": 35.9 * INCH}, "width between rails"),
            ({"cross_slope": Slope(1 / 47)}, "cross slope"),
            ({"turns": True, "landing_width_mm": 59.9 * INCH, "width_mm": 1200.0}, "landing width"),
        ],
    )
    def test_ac_01_each_thing_that_it_needs(self, lacks: dict[str, Any], item: str) -> None:
        assert failing(ramp(30 * INCH, 360 * INCH, **lacks)) == [item]

    def test_ac_02_rise_of_30_1_in(self) -> None:
        assert failing(ramp(30.1 * INCH, 12 * 30.1 * INCH, site="new")) == ["rise"]

    @pytest.mark.parametrize(("rise", "needed"), [(6.0, False), (6.1, True)])
    def test_ac_03_rails_above_6_in(self, rise: float, needed: bool) -> None:
        bare = ramp(rise * INCH, 12 * rise * INCH, rails="none")
        assert (failing(bare) == ["rise without handrails"]) is needed

    @pytest.mark.parametrize(
        ("rise", "run", "kept"),
        [(3.0, 24.0, True), (3.1, 24.8, False), (6.0, 60.0, True), (3.0, 3 * 7.9, False),
         (0.5, 0.5 * 7.9, False), (6.1, 61.0, False)],
    )  # fmt: skip
    def test_ac_04_existing_site(self, rise: float, run: float, kept: bool) -> None:
        steep = ramp(rise * INCH, run * INCH, site="existing")
        assert (word(steep) == "holds") is kept

    def test_ac_05_new_site_at_1_to_10(self) -> None:
        assert failing(ramp(6 * INCH, 60 * INCH, site="new")) == ["slope"]


class TestOneRampUnderFourCodes:
    """6.0 m flight at 1:12, rise 500 mm; England's rows restated by a secondary source."""

    ramp = ramp(500.0, 6000.0, site="new")

    @pytest.mark.parametrize(
        ("code", "expected"),
        [("ada_2010", "holds"), ("ontario_3_8", "holds"), ("england_ad_m", "fails"),
         ("ireland_tgd_m", "fails")],
    )  # fmt: skip
    def test_ac_06_verdicts(self, code: str, expected: str) -> None:
        assert word(self.ramp, code) == expected

    @pytest.mark.parametrize(
        ("code", "asked"), [("england_ad_m", "at most 2 m"), ("ireland_tgd_m", "at most 5 m")]
    )
    def test_ac_06_the_clause_says_why(self, code: str, asked: str) -> None:
        (why,) = [ruling for ruling in rulings(self.ramp, code) if ruling.word == "fails"]
        assert why.item == "flight length"
        assert asked in why.asked
        assert why.found == "6000 mm"

    def test_ac_06_the_difference_is_told(self) -> None:
        found = [judge(self.ramp, code) for code in CODES]
        (difference,) = differences(each for each in found if each is not None)
        assert difference.holds == ("ADA 2010 Standards", "Ontario Building Code 3.8")
        assert difference.fails == (
            "England Approved Document M", "Ireland Technical Guidance Document M",
        )  # fmt: skip
        assert "restated by a secondary source" in difference.words

    @pytest.mark.parametrize(
        ("run", "one_in", "kept"),
        [(10_000, 20, True), (10_001, 20, False), (5000, 15, True), (5001, 15, False),
         (2000, 12, True), (2001, 12, False), (1000, 11.9, False)],
    )  # fmt: skip
    def test_england_flights(self, run: float, one_in: float, kept: bool) -> None:
        assert (word(ramp(run / one_in, run), "england_ad_m") == "holds") is kept

    @pytest.mark.parametrize(
        ("run", "one_in", "kept"),
        [(10_000, 15, True), (10_001, 15, False), (5000, 12, True), (5001, 14.9, False),
         (4000, 11.9, False), (30_000, 20.1, True)],
    )  # fmt: skip
    def test_ireland_flights(self, run: float, one_in: float, kept: bool) -> None:
        assert (word(ramp(run / one_in, run), "ireland_tgd_m") == "holds") is kept

    @pytest.mark.parametrize(
        ("one_in", "outside", "expected"),
        [(10, True, "holds"), (9.9, True, "fails"), (8, False, "holds"), (7.9, False, "fails"),
         (9, None, "not known"), (10, None, "holds"), (7.9, None, "fails")],
    )  # fmt: skip
    def test_quebec_inside_and_outside(
        self, one_in: float, outside: bool | None, expected: str
    ) -> None:
        steep = ramp(100.0, 100.0 * one_in, outside=outside, site="existing")
        assert word(steep, "quebec_s3_r2") == expected

    def test_quebec_is_silent_on_new_sites(self) -> None:
        assert word(ramp(100.0, 1200.0, site="new"), "quebec_s3_r2") == "silent"


class TestDoorWidths:
    """ADA 404.2.3 and Ontario 3.8 (read in the source); AD M (restated)."""

    def test_ac_07_door_of_813_mm(self) -> None:
        public = Door(name="d", clear_width_mm=813.0, building="public")
        assert failing(public) == []
        assert word(public, "ontario_3_8") == "fails"
        home: dict[str, Any] = {"name": "d", "clear_width_mm": 813.0, "use": "bath_or_bedroom"}
        for corridor in (1059.0, 1060.0, None):
            assert word(Door(**home, corridor_width_mm=corridor), "ontario_3_8") == "holds"

    def test_ac_07_narrower_doors_in_a_suite_hang_on_the_corridor(self) -> None:
        home: dict[str, Any] = {"name": "d", "clear_width_mm": 760.0, "use": "bath_or_bedroom"}
        assert word(Door(**home, corridor_width_mm=1060.0), "ontario_3_8") == "holds"
        assert word(Door(**home, corridor_width_mm=1059.0), "ontario_3_8") == "fails"
        assert word(Door(**home), "ontario_3_8") == "not known"

    def test_ada_asks_32_in_and_36_in_where_the_opening_is_deep(self) -> None:
        assert failing(door(clear_width_mm=32 * INCH, depth_mm=2000.0)) == []
        assert failing(door(clear_width_mm=31.9 * INCH, depth_mm=2000.0)) == ["clear width"]
        deep = door(clear_width_mm=35.9 * INCH, opening_depth_mm=24.1 * INCH, depth_mm=2000.0)
        assert failing(deep) == ["clear width"]

    @pytest.mark.parametrize(
        ("clear", "corridor", "expected"),
        [(775, 1050, "holds"), (775, 1000, "fails"), (800, 900, "holds"), (750, 1200, "holds"),
         (749, 2000, "fails"), (800, 899, "fails")],
    )  # fmt: skip
    def test_ac_08_england_dwelling_from_the_side(
        self, clear: float, corridor: float, expected: str
    ) -> None:
        side = Door(name="d", clear_width_mm=clear, corridor_width_mm=corridor, approach="corridor")
        assert word(side, "england_ad_m") == expected

    @pytest.mark.parametrize(
        ("site", "way", "corridor", "clear"),
        [("new", "straight", None, 800), ("existing", "straight", None, 750),
         ("new", "corridor", 1500, 800), ("existing", "corridor", 1500, 750),
         ("new", "corridor", 1200, 825), ("existing", "corridor", 1200, 775)],
    )  # fmt: skip
    def test_england_public(self, site: Any, way: Any, corridor: Any, clear: float) -> None:
        made: dict[str, Any] = {"name": "d", "site": site, "approach": way, "building": "public"}
        made["corridor_width_mm"] = corridor
        assert word(Door(clear_width_mm=clear, **made), "england_ad_m") == "holds"
        assert word(Door(clear_width_mm=clear - 1, **made), "england_ad_m") == "fails"

    @pytest.mark.parametrize(
        ("building", "site", "clear"),
        [("dwelling", "new", 775), ("public", "new", 1000), ("public", "existing", 775)],
    )
    def test_england_entrances(self, building: Any, site: Any, clear: float) -> None:
        made: dict[str, Any] = {"name": "d", "site": site, "building": building, "use": "entrance"}
        assert word(Door(clear_width_mm=clear, **made), "england_ad_m") == "holds"
        assert word(Door(clear_width_mm=clear - 1, **made), "england_ad_m") == "fails"


class TestManoeuvring:
    """ADA 2010, tables 404.2.4.1 and 404.2.4.2 (read in the source), perpendicular x parallel."""

    @pytest.mark.parametrize(("beside", "expected"), [(18.0, "holds"), (17.9, "fails")])
    def test_ac_09_front_pull(self, beside: float, expected: str) -> None:
        front = door(swing="pull", depth_mm=60 * INCH, latch_space_mm=beside * INCH)
        assert word(front) == expected

    @pytest.mark.parametrize(
        ("deep", "beside", "expected"),
        [(54, 42, "holds"), (54, 36, "fails"), (60, 36, "holds"), (60, 35.9, "fails"),
         (53.9, 42, "fails")],
    )  # fmt: skip
    def test_ac_10_hinge_pull(self, deep: float, beside: float, expected: str) -> None:
        hinge = door(
            swing="pull", approach="corridor", approach_side="hinge",
            corridor_width_mm=deep * INCH, latch_space_mm=beside * INCH,
        )  # fmt: skip
        assert word(hinge) == expected

    @pytest.mark.parametrize(
        ("swing", "approach", "closer", "latch", "needed"),
        [
            ("push", "front", True, True, (48, 12, "latch")),
            ("push", "front", True, False, (48, 0, "latch")),
            ("push", "front", False, True, (48, 0, "latch")),
            ("pull", "latch", True, True, (54, 24, "latch")),
            ("pull", "latch", False, True, (48, 24, "latch")),
            ("push", "hinge", True, True, (48, 22, "hinge")),
            ("push", "hinge", False, True, (42, 22, "hinge")),
            ("push", "hinge", True, False, (42, 22, "hinge")),
            ("push", "latch", True, True, (48, 24, "latch")),
            ("push", "latch", False, True, (42, 24, "latch")),
            ("slide", "front", False, False, (48, 0, "latch")),
            ("slide", "hinge", False, False, (42, 22, "hinge")),
            ("slide", "latch", False, False, (42, 24, "latch")),
            ("none", "front", False, False, (48, 0, "latch")),
            ("none", "side", False, False, (42, 0, "latch")),
        ],
    )
    def test_ac_11_what_each_approach_needs(
        self, swing: str, approach: str, closer: bool, latch: bool, needed: tuple[float, float, str]
    ) -> None:
        (found,) = floor_needed(swing, approach, closer, latch)
        assert (found.depth_in, found.beside_in, found.beside) == needed

    def test_a_closer_that_nobody_looked_at_leaves_it_open(self) -> None:
        usual: dict[str, Any] = {"swing": "push", "depth_mm": 48 * INCH, "latch_space_mm": 0.0}
        assert word(door(**usual)) == "not known"
        assert word(door(**usual, closer=False)) == "holds"
        assert word(door(**usual, closer=True, latch=True)) == "fails"

    def test_a_recess_above_8_in_counts_as_front(self) -> None:
        side: dict[str, Any] = {
            "swing": "pull", "approach": "corridor", "approach_side": "latch", "closer": False,
            "corridor_width_mm": 48 * INCH, "latch_space_mm": 24 * INCH,
        }  # fmt: skip
        assert word(door(**side, recess_mm=8 * INCH)) == "holds"
        assert word(door(**side, recess_mm=8.1 * INCH)) == "fails"


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
