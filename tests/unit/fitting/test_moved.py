"""Differences on the numbers as they are printed. Expected values: by hand."""

from __future__ import annotations

import math

import pytest

from chairwright.figures.registry import FIGURES
from chairwright.fitting.moved import change, direction, moves

ANGLE = FIGURES["tip_rear_locked_deg"]  # one digit
LENGTH = FIGURES["wheelbase_mm"]  # none


@pytest.mark.parametrize(
    ("first", "second", "moved"),
    [
        (10.04, 7.96, -2.0),  # 10.0 and 8.0, although the values lie 2.08 apart
        (10.04, 10.06, 0.1),
        (10.01, 10.04, 0.0),
        (-0.04, 0.04, 0.0),
    ],
)
def test_a_change_is_that_of_the_printed_values(first: float, second: float, moved: float) -> None:
    assert change(ANGLE, first, second) == moved
    assert moves(ANGLE, first, second) == (moved != 0.0)


def test_a_figure_that_comes_or_goes_moves_by_nobody_knows_what() -> None:
    assert math.isnan(change(ANGLE, math.nan, 3.0))
    assert moves(ANGLE, 3.0, math.nan)
    assert not moves(ANGLE, math.nan, math.nan)


@pytest.mark.parametrize(
    ("values", "sign"),
    [
        ([300.0, 310.0, 320.0], 1),
        ([300.0, 300.4, 320.0], 1),  # 300 and 300 are printed: flat, then up
        ([320.0, math.nan, 300.0], -1),
        ([300.0, 310.0, 305.0], 0),
        ([300.0, 300.2], 0),
        ([math.nan, math.nan], 0),
        ([], 0),
    ],
)
def test_which_way_a_figure_goes(values: list[float], sign: int) -> None:
    assert direction(LENGTH, values) == sign
