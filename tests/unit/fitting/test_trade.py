"""Figures of a trade-off as typed."""

from __future__ import annotations

import pytest

from chairwright.errors import InputError
from chairwright.figures.registry import FIGURES
from chairwright.fitting.trade import USUAL, read_objectives, usual_objectives
from chairwright.search.front import Objective
from tests.unit.chair.seated import person


def test_each_figure_has_its_usual_way_or_the_one_that_is_said() -> None:
    found = read_objectives("price, tip_rear_locked_deg ,wheelbase_mm=least,chair_mass_kg=most")
    assert found == (
        Objective("price", "min"),
        Objective("tip_rear_locked_deg", "max"),
        Objective("wheelbase_mm", "min"),
        Objective("chair_mass_kg", "max"),
    )


def test_usual_ways_are_of_figures_that_there_are() -> None:
    assert set(USUAL) <= set(FIGURES)
    assert USUAL["price"] == USUAL["chair_mass_kg"] == USUAL["overall_width_mm"] == "min"
    assert USUAL["tip_least_deg"] == USUAL["load_margin_kg"] == "max"


def test_without_any_it_is_about_balance_width_and_push_or_turning() -> None:
    assert [aim.figure for aim in usual_objectives(person())][2] == "push_reach_deg"
    assert [aim.figure for aim in usual_objectives(person("feet"))][2] == "turning_diameter_mm"


@pytest.mark.parametrize(
    ("typed", "message"),
    [
        ("price", "a trade-off must be of 2 to 4 figures; got 1"),
        ("", "a trade-off must be of 2 to 4 figures; got 0"),
        ("price,lead_days,chair_mass_kg,tip_least_deg,overall_width_mm", "got 5"),
        ("price,chair_mas_kg", "got chair_mas_kg. Did you mean chair_mass_kg?"),
        ("price,price", "each figure must stand once; got price"),
        ("price,wheelbase_mm", "Write wheelbase_mm=least or wheelbase_mm=most."),
        ("price=lest,lead_days", "got price=lest. Did you mean least?"),
    ],
)
def test_what_is_no_trade_off_is_refused(typed: str, message: str) -> None:
    with pytest.raises(InputError) as refused:
        read_objectives(typed)
    assert message in str(refused.value)
    assert all(problem.where == "--trade" for problem in refused.value.problems)
