"""The parts list: complete, with pieces and sides; settings, marks with reasons, dimensions."""

from __future__ import annotations

import math

import numpy as np
import pytest

from chairwright.cli.opened import Opened, open_setup
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described, describe
from chairwright.fitting.extras import with_extras
from chairwright.line.choices import CHOICES
from chairwright.line.load import load_line
from chairwright.order.lead import lead_time
from chairwright.order.order_dimensions import FOLLOWS, SIZES, dimensions_of
from chairwright.order.parts import left_off, one_board, part_rows, setting_rows
from chairwright.order.parts_marks import marks_of
from chairwright.order.price_items import items_of
from chairwright.order.price_list import LeadTerms
from tests.laws.example_sweeps import EXAMPLES, SETUPS
from tests.oracles.draws import random_setups
from tests.oracles.lines import everyday_as_written, line_from
from tests.oracles.people import adult, seated


def opened(name: str) -> Opened:
    return open_setup(SETUPS / f"{name}.yaml")


def changed(one: Opened, **codes: str) -> Described:
    index = {**one.setup.index} | {
        name: one.line.choices[name].codes[code] for name, code in codes.items()
    }
    return describe(one.line, one.person.occupant, index, one.person.targets)


@pytest.mark.parametrize("name", EXAMPLES)
def test_every_choice_is_a_part_or_a_setting_or_left_off(name: str) -> None:
    setup = opened(name).setup
    parts = {row.choice for row in part_rows(setup)} & set(CHOICES)
    settings = {row.choice for row in setting_rows(setup)}
    absent = set(left_off(setup))
    assert parts | settings | absent == set(CHOICES)
    assert not absent & (parts | settings)


def test_pieces_and_sides() -> None:
    rows = {row.choice: row for row in part_rows(opened("hem-004").setup)}
    both = ("side_frame", "rear_wheel", "axle_hole", "caster", "fork", "wheel_lock", "anti_tip")
    assert {(rows[name].quantity, rows[name].side) for name in both} == {(2, "left and right")}
    # The right foot pushes: one hanger, one footplate, on the left.
    for name in ("hanger", "foot_plate"):
        assert (rows[name].quantity, rows[name].side) == (1, "left")
    assert (rows["cushion"].quantity, rows["cushion"].side) == (1, "one")
    assert (rows["axle_hole"].code, rows["axle_hole"].words) == ("XN", "axle plate")
    assert (rows["fork"].code, rows["fork"].words) == ("FM", "medium fork")
    assert rows["caster_housing"].words == "caster housing"
    assert rows["arm_support"].words == "flip-back arm support"


def test_parts_of_every_chair_and_extras_are_in_the_list() -> None:
    one = opened("avg-001")
    line = with_extras(one.line, ["ET"], {})
    setup = describe(line, one.person.occupant, one.setup.index, ())
    last = [(row.choice, row.code) for row in part_rows(setup)][-3:]
    assert last == [("fixed_parts", "XH"), ("fixed_parts", "XB"), ("extras", "ET")]


def test_a_board_under_both_feet_is_one_piece() -> None:
    one = opened("avg-001")
    assert not one_board(one.setup)
    # A plate of 300 mm, 20 inside the seat's edge of 400: it reaches 120 beyond the middle.
    plate = one.setup.options["foot_plate"]
    plate.numbers["width_mm"], held = 300.0, plate.numbers["width_mm"]
    try:
        assert one_board(one.setup)
        row = next(row for row in part_rows(one.setup) if row.choice == "foot_plate")
        assert (row.quantity, row.side) == (1, "one")
    finally:
        plate.numbers["width_mm"] = held


def test_holes_have_their_place_from_the_seat_corner() -> None:
    rows = {row.choice: row for row in setting_rows(opened("avg-001").setup)}
    # Column E lies 55 ahead, row 8 196 below; hole 9 of the short tube 440 below, 200 behind.
    assert (rows["axle_hole"].code, rows["axle_hole"].x_mm, rows["axle_hole"].z_mm) == (
        "E8", 55.0, -196.0,
    )  # fmt: skip
    assert (rows["anti_tip"].x_mm, rows["anti_tip"].z_mm) == (-200.0, -440.0)
    assert rows["caster_housing"].z_mm == -260.0
    assert rows["foot_supports"].code == "both"


def test_all_standard_has_no_mark() -> None:
    one = opened("avg-001")
    assert marks_of(one.person, one.setup) == ()


def test_a_size_made_to_order_says_what_stands_against_its_neighbours() -> None:
    one = opened("avg-001")
    # Must: seat width 381 to 432. 390 lies between 380, which misses it, and 400, which holds it.
    setup = changed(one, seat_width="MS390", belt="YP")
    width, belt = marks_of(one.person, setup)
    assert (width.code, width.kind, width.days) == ("MS390", "made to order", 12)
    below, above = width.reasons
    assert below == "standard 380 mm: would miss what must hold for seat width"
    assert above.startswith("standard 400 mm: would miss no more musts")
    assert (belt.code, belt.kind) == ("YP", "on request")
    assert belt.reasons == ("chosen in the set-up file; the client file does not ask for it",)


def test_a_neighbour_that_the_rules_forbid_is_said_so() -> None:
    data = everyday_as_written()
    data["side_frames"][2]["depth_from_mm"] = 425  # the long frame
    one, line = opened("avg-001"), line_from(data)
    codes = {**one.setup.codes, "seat_depth": "MD430"}
    index = {name: line.choices[name].codes[code] for name, code in codes.items()}
    setup = describe(line, one.person.occupant, index, one.person.targets)
    (mark,) = marks_of(one.person, setup)
    assert mark.reasons[0].startswith("standard 420 mm: side frame SFL needs seat depth")
    assert "each side frame is made for a range of seat depths" in mark.reasons[0]
    assert mark.reasons[1].startswith("standard 440 mm: would")


def test_the_largest_size_has_no_neighbour_above() -> None:
    # Standard widths end at 580.
    one = opened("bar-006")
    (mark,) = marks_of(one.person, changed(one, seat_width="MS600"))
    (reason,) = mark.reasons
    assert reason.startswith("standard 580 mm: ")


@pytest.mark.parametrize("name", EXAMPLES)
def test_dimensions_have_units_two_reference_points_and_the_figures_values(name: str) -> None:
    setup = opened(name).setup
    found = {each.name: each for each in dimensions_of(setup)}
    for each in found.values():
        assert each.unit in ("mm", "deg", "kg")
        assert each.from_ and each.to and each.from_ != each.to
        assert each.tolerance > 0
    for figure in FOLLOWS:
        value = setup.figures[figure]
        assert (figure in found) == (not math.isnan(value))
        if figure in found:
            assert found[figure].value == value
            assert found[figure].unit == FIGURES[figure].unit
    for size in SIZES:
        numbers = setup.options[size.choice].numbers
        if f"{size.choice}.{size.key}" in found:
            assert found[f"{size.choice}.{size.key}"].value == numbers[size.key]


@pytest.mark.parametrize("name", ["everyday", "heavy-duty", "light-rigid"])
def test_days_of_random_set_ups_are_the_figure(name: str) -> None:
    line, rng = load_line(name), np.random.default_rng(5)
    occupant = seated(adult(rng))
    rows, _ = random_setups(line, occupant, rng, 12)
    for at in range(12):
        index = {choice: int(array[at]) for choice, array in rows.index.items()}
        setup = describe(line, occupant, index, ())
        found = lead_time(items_of(setup), line.build_days, LeadTerms())
        assert found.days == setup.figures["lead_days"]
        assert sum(step.days for step in found.path) == found.days
        assert all(step.spare >= 0 for step in found.parts)
