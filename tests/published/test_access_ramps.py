"""Access codes on ramps: limits as printed, at and just beyond each (inches for U.S. values)."""

from __future__ import annotations

from typing import Any

import pytest

from chairwright.places.codes import CODES, differences, judge
from chairwright.places.model import Slope

from .access_judged import INCH, failing, ramp, rulings, word


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
