"""The model of surroundings, and a place under several codes in words."""

from __future__ import annotations

from dataclasses import FrozenInstanceError
from typing import get_args

import pytest

from chairwright.figures.rolling import surfaces
from chairwright.places.code_clauses import CERTAINTY, clause, length, read_limit
from chairwright.places.codes import CODES, differences, judge, judge_all, summary
from chairwright.places.kinds import KINDS, Bed, Corner, Door, Ramp, Room, Surface
from chairwright.places.model import Slope, Surroundings
from chairwright.tables.load import load_sources, load_table

DOOR = Door(name="door", clear_width_mm=700.0, typed={"clear_width_mm": "70 cm"})


def test_a_slope_in_degrees_and_as_one_in() -> None:
    assert Slope(1 / 12).degrees == pytest.approx(4.7636, abs=5e-5)  # atan(1/12)
    assert Slope(1 / 12).one_in == pytest.approx(12.0)
    assert Slope(0.0).one_in == float("inf")


def test_a_place_is_frozen_and_equal_by_its_measures() -> None:
    assert Door(name="door", clear_width_mm=700.0, where="a.yaml:3") == DOOR
    with pytest.raises(FrozenInstanceError):
        DOOR.name = "other"  # type: ignore[misc]
    assert len({DOOR, Door(name="door", clear_width_mm=700.0)}) == 1


def test_floor_in_front_of_a_door() -> None:
    along = Door(name="d", clear_width_mm=700.0, approach="corridor", corridor_width_mm=1050.0)
    assert along.floor_depth_mm == 1050.0
    ahead = Door(name="d", clear_width_mm=700.0, corridor_width_mm=1050.0)
    assert ahead.floor_depth_mm is None
    assert Door(name="d", clear_width_mm=700.0, depth_mm=900.0).floor_depth_mm == 900.0


def test_a_place_is_found_by_its_name() -> None:
    home = Surroundings("T-1", (DOOR,))
    assert home.of("door") is DOOR
    with pytest.raises(KeyError):
        home.of("window")


def test_every_kind_has_a_word_of_its_own() -> None:
    assert [KINDS[word].kind for word in KINDS] == list(KINDS)


def test_surfaces_are_those_of_the_rolling_table() -> None:
    assert set(get_args(Surface)) == set(surfaces())


def test_a_ramp_knows_its_slope() -> None:
    ramp = Ramp(name="r", rise_mm=100.0, run_mm=800.0, typed={"slope": "1:8"})
    assert ramp.slope == Slope(0.125)
    assert ramp.slope.typed == "1:8"
    assert ramp.slope_deg == pytest.approx(7.125, abs=5e-4)  # atan(1/8)


def test_lengths_in_words_show_what_was_typed() -> None:
    assert length(700.0, DOOR, "clear_width_mm") == "70 cm (700 mm)"
    assert length(700.0) == "700 mm"
    assert length(None) == "not measured"


def test_printed_limits_as_numbers() -> None:
    assert read_limit("1/2", "in") == pytest.approx(12.7, abs=1e-12)
    assert read_limit("1:48", "ratio") == pytest.approx(1 / 48, abs=1e-15)
    assert clause("ada_route_width").asked == "width at least 36 in (914.4 mm)"


def test_every_row_has_a_code_and_a_tag_that_are_known() -> None:
    for name in ("access_clauses", "ramp_flights"):
        for row in load_table("access", name):
            assert row["code"] in CODES
            assert row["tag"] in CERTAINTY
    for code in CODES.values():
        assert code.source in load_sources()
        assert code.dated
        assert code.tag in CERTAINTY


def test_a_code_is_silent_about_what_it_does_not_hold() -> None:
    assert judge(Bed(name="b", height_mm=500.0, transfer="hoist"), "ada_2010") is None
    assert judge(Room(name="r", width_mm=900.0, depth_mm=900.0), "ireland_tgd_m") is None
    with pytest.raises(KeyError):
        judge(DOOR, "no_such_code")


def test_a_verdict_says_clause_date_numbers_and_certainty() -> None:
    found = judge(DOOR, "ada_2010")
    assert found is not None
    assert found.word == "fails"
    assert [each.item for each in found.failing] == ["clear width"]
    assert [each.item for each in found.open] == ["free floor"]
    assert summary(found) == (
        "ADA 2010 Standards (2010-09-15): fails, 404.2.3 asks clear width at least 32 in "
        "(812.8 mm), got 70 cm (700 mm) [read in the source]."
    )


def test_what_is_not_measured_leaves_a_code_open() -> None:
    wide = Door(name="door", clear_width_mm=900.0)
    found = judge(wide, "ada_2010")
    assert found is not None
    assert found.word == "not known"
    assert "48 in (1219.2 mm) deep, got not measured deep" in summary(found)


def test_codes_that_do_not_agree_on_a_corner() -> None:
    corner = Corner(name="corner", width_in_mm=1000.0, width_out_mm=905.0)
    home = Surroundings("T-1", (DOOR, corner), ("ada_2010", "england_ad_m", "ireland_tgd_m"))
    judged = judge_all(home)
    assert [(each.place.name, each.code.key) for each in judged] == [
        ("door", "ada_2010"), ("door", "england_ad_m"),
        ("corner", "ada_2010"), ("corner", "england_ad_m"),
    ]  # fmt: skip
    (only,) = differences(judged)
    assert only.place is corner
    assert (only.holds, only.fails) == (("England Approved Document M",), ("ADA 2010 Standards",))
    assert "got 905 mm" in only.words
