"""The lines that come with the program: sound, apart from each other, each with its clients."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from chairwright.files.client import read_client
from chairwright.fitting.described import Described, describe
from chairwright.fitting.line_checks.check import check_line
from chairwright.fitting.person import Person, read_person
from chairwright.line.choices import CHOICES
from chairwright.line.load import SHIPPED, load_line
from chairwright.line.model import Line
from chairwright.line.reachable import Deduction
from chairwright.search.best import find_best
from chairwright.search.space import open_space

CLIENTS = Path(__file__).parents[3] / "examples" / "clients"
FITS = (
    ("everyday", "avg-001"),
    ("heavy-duty", "bar-006"),
    ("light-rigid", "avg-001"),
    ("light-rigid", "chi-007"),
)
"""A line, and a client for whom such a chair is made."""
MASSES_KG = {"everyday": (14.0, 22.0), "heavy-duty": (22.0, 30.0), "light-rigid": (8.0, 11.0)}
"""Chair with cushion, arm supports and anti-tip device (common practice, no source)."""
WHEELS = {"light-rigid": ("N24", "N24L")}
"""The average client keeps 24 in wheels; the client file names those of the everyday line."""
LINES = pytest.mark.parametrize("name", SHIPPED)


@cache
def line_of(name: str) -> Line:
    return load_line(name)


@cache
def fitted(name: str, reference: str) -> tuple[Person, int, Described]:
    """The client, the number of set-ups that are open to them, and the best one."""
    line, client = line_of(name), read_client(CLIENTS / f"{reference}.yaml")
    if "rear_wheel" in client.fixed_choices and name in WHEELS:
        client = replace(client, fixed_choices={"rear_wheel": WHEELS[name]})
    person = read_person(client)
    space = open_space(line, person.occupant, client.fixed_choices)
    best = find_best(space, person.targets)
    assert best is not None, (name, reference)
    index = {each: int(at) for each, at in best.index.items()}
    return person, space.count, describe(line, person.occupant, index, person.targets)


def possible(line: Line, **codes: str) -> bool:
    settled = {name: frozenset({code}) for name, code in codes.items()}
    return Deduction(line).example(settled) is not None


@LINES
def test_it_is_named_after_its_file_and_every_choice_has_its_numbers(name: str) -> None:
    line = line_of(name)
    assert line.name == name
    for choice, kind in CHOICES.items():
        fitted_ones = [o for o in line.choices[choice].options if o.code != "none"]
        for key in kind.needs:
            assert all(key in option.numbers for option in fitted_ones), (choice, key)


@LINES
def test_the_check_finds_no_mistake_and_only_casters_that_may_strike(name: str) -> None:
    for finding in check_line(line_of(name)):
        assert finding.severity == "remark", finding
        assert finding.problem.must.startswith("casters should swing clear of"), finding


@LINES
def test_prices_and_days_are_given(name: str) -> None:
    line = line_of(name)
    options = [option for choice in line.choices.values() for option in choice.options]
    assert line.base_price > 0
    assert line.build_days > 0
    assert any(option.numbers["price"] > 0 for option in options)
    assert any(option.numbers["extra_days"] > 0 for option in options)
    assert {option.kind for option in options} == {"standard", "made to order", "on request"}


def test_no_two_lines_have_a_maker_a_title_or_a_frame_code_in_common() -> None:
    lines = [line_of(name) for name in SHIPPED]
    assert len({line.maker for line in lines}) == len(lines)
    assert len({line.title for line in lines}) == len(lines)
    codes = [code for line in lines for code in line.choices["side_frame"].codes]
    assert len(set(codes)) == len(codes)
    assert all("(invented)" in line.maker for line in lines)


@pytest.mark.parametrize(("name", "reference"), FITS)
def test_somebody_is_fitted_with_every_must_met(name: str, reference: str) -> None:
    _, _, setup = fitted(name, reference)
    assert setup.broken == ()


@pytest.mark.parametrize(("name", "reference"), FITS)
def test_the_fitted_chair_weighs_what_such_chairs_weigh(name: str, reference: str) -> None:
    least, most = MASSES_KG[name]
    assert least <= fitted(name, reference)[2].figures["chair_mass_kg"] <= most


@pytest.mark.parametrize(("name", "reference"), FITS)
def test_a_client_chooses_from_a_thousand_million_set_ups_and_more(
    name: str, reference: str
) -> None:
    assert fitted(name, reference)[1] >= 10**9


def test_a_light_rigid_chair_never_folds_and_a_heavy_one_only_up_to_28_inches() -> None:
    rigid, heavy = line_of("light-rigid"), line_of("heavy-duty")
    assert rigid.folds_to_width_mm == 0
    assert math.isnan(fitted("light-rigid", "chi-007")[2].figures["folded_width_mm"])
    assert heavy.folds_to_width_mm == pytest.approx(28 * 25.4)
    assert fitted("heavy-duty", "bar-006")[2].figures["folded_width_mm"] > 0


def test_wide_heavy_seats_need_the_double_brace_and_then_the_rigid_bar() -> None:
    heavy = line_of("heavy-duty")
    assert possible(heavy, seat_width="K24", side_frame="J160")
    assert not possible(heavy, seat_width="K26", side_frame="J160")
    assert possible(heavy, seat_width="K28", side_frame="J220L")
    assert not possible(heavy, seat_width="K30", side_frame="J220L")
    assert possible(heavy, seat_width="K32", side_frame="J270")


def test_a_plate_turned_round_brings_the_axle_forward_and_asks_for_leading_casters() -> None:
    heavy = line_of("heavy-duty")
    holes = heavy.choices["axle_hole"]
    x_mm = {o.code: o.numbers["x_mm"] for o in holes.options}
    # turned about 50 mm ahead of the back post: -25 comes to 2 x 50 + 25 = 125
    assert (x_mm["A3"], x_mm["A3R"]) == (-25, 125)
    assert possible(heavy, axle_hole="A3", caster_housing="T3")
    assert not possible(heavy, axle_hole="A3R", caster_housing="T3")


def test_an_anti_tip_device_is_left_out_only_on_request() -> None:
    kinds = {name: line_of(name).choices["anti_tip"].options[-1].kind for name in SHIPPED}
    assert kinds == {
        "everyday": "standard", "heavy-duty": "on request", "light-rigid": "on request"
    }  # fmt: skip


def test_a_line_whose_push_handles_are_all_on_request_comes_without() -> None:
    handles = line_of("light-rigid").choices["push_handle"].options
    assert {option.code: option.kind for option in handles} == {
        "VD": "on request", "none": "standard"
    }  # fmt: skip
    usual = line_of("everyday").choices["push_handle"].options[-1]
    assert (usual.code, usual.kind) == ("none", "on request")


def test_codes_and_names_that_the_program_makes_are_in_the_maker_s_units() -> None:
    inches = line_of("heavy-duty")
    arms, lengths, widths = (
        {o.code: o.name for o in inches.choices[choice].options}
        for choice in ("arm_support", "leg_length", "seat_width")
    )
    assert arms["TA-9"] == "height-adjustable arm support, pad 9 in (229 mm) above the seat rail"
    assert lengths["G14"] == "14 in (356 mm) along the hanger"
    assert widths["MS23"] == "23 in (584 mm), made to order"
    everyday = line_of("everyday").choices
    assert "AW-225" in everyday["arm_support"].codes
    assert {"G400", "MG410"} <= set(everyday["leg_length"].codes)


def test_the_load_limits_of_the_heavy_builds_are_their_frames() -> None:
    limits = {
        option.code: option.numbers["load_limit_kg"]
        for option in line_of("heavy-duty").choices["side_frame"].options
    }
    assert limits == {"J160": 160, "J220": 220, "J220L": 220, "J270": 270}
    # 200 kg in a frame for 220 kg leaves 20 kg; wheels and casters carry 280 kg
    assert fitted("heavy-duty", "bar-006")[2].figures["load_margin_kg"] == pytest.approx(20)


def test_a_side_guard_has_no_pad_and_an_arm_support_flips_up_beside_it() -> None:
    arms = line_of("light-rigid").choices["arm_support"].options
    with_pad = {option.part for option in arms if "pad_height_mm" in option.numbers}
    assert with_pad == {"UF"}
    assert {option.part for option in arms} == {"UG", "UF", "UC"}
