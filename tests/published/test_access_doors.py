"""Access codes on doors: limits as printed, at and just beyond each (inches for U.S. values)."""

from __future__ import annotations

from typing import Any

import pytest

from chairwright.places.code_doors import floor_needed
from chairwright.places.kinds import Door

from .access_judged import INCH, door, failing, word


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
