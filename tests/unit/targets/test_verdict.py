"""Verdicts in words and costs in arrays."""

from __future__ import annotations

import math

import numpy as np
import pytest

from chairwright.targets.target import Target
from chairwright.targets.verdict import broken, outside, penalty, verdict

NAN = math.nan
MUST = Target("seat_width_mm", 380.0, 430.0, True, 1.0, "s", "r", tolerance=5.0)
PREFER = Target("seat_width_mm", 380.0, 400.0, False, 2.0, "s", "r")
OPEN = Target("footplate_clearance_mm", 50.0, None, True, 1.0, "s", "r")


@pytest.mark.parametrize(
    ("value", "spread", "word", "margin"),
    [
        (400.0, 0.0, "holds", 20.0),
        (385.0, 0.0, "holds", 5.0),
        (384.0, 0.0, "holds on nominal values", 4.0),
        (390.0, 6.0, "holds on nominal values", 10.0),
        (390.0, 5.0, "holds", 10.0),
        (380.0, 0.0, "holds on nominal values", 0.0),
        (379.0, 0.0, "fails", -1.0),
        (432.0, 0.0, "fails", -2.0),
    ],
)
def test_verdict(value: float, spread: float, word: str, margin: float) -> None:
    found = verdict(MUST, value, spread)
    assert (found.word, found.margin, found.breaks) == (word, margin, word == "fails")


def test_an_open_end_is_never_reached() -> None:
    assert verdict(OPEN, 5000.0, 100.0).word == "holds"
    assert verdict(OPEN, 49.0).breaks


def test_a_failed_preference_breaks_nothing() -> None:
    found = verdict(PREFER, 500.0)
    assert (found.word, found.breaks) == ("fails", False)


def test_a_must_without_a_value_is_not_known_and_breaks() -> None:
    found = verdict(MUST, NAN)
    assert (found.word, found.breaks) == ("not known", True)
    assert math.isnan(found.margin)
    assert not verdict(PREFER, NAN).breaks


def test_rounding_of_the_arithmetic_is_not_a_failure() -> None:
    assert verdict(OPEN, 50.0 - 1e-12).word == "holds"
    assert outside(OPEN, np.array([50.0 - 1e-12])).tolist() == [0.0]


def test_outside() -> None:
    found = outside(MUST, np.array([370.0, 380.0, 400.0, 431.5, NAN]))
    assert found[:4].tolist() == [10.0, 0.0, 0.0, 1.5]
    assert math.isnan(found[4])


def test_a_boundless_value_never_passes_an_open_end() -> None:
    assert outside(OPEN, np.array([np.inf, -np.inf])).tolist() == [0.0, np.inf]


def test_broken_agrees_with_the_verdict() -> None:
    values = [370.0, 380.0, 400.0, 430.0, 430.1, NAN]
    assert broken(MUST, np.array(values)).tolist() == [verdict(MUST, v).breaks for v in values]


def test_penalty_is_weight_times_distance_over_scale() -> None:
    found = penalty(PREFER, np.array([360.0, 390.0, 425.0, NAN]), 10.0)
    # 2 x 20 / 10; inside; 2 x 25 / 10; no value: 2 x 10 steps.
    assert found.tolist() == [4.0, 0.0, 5.0, 20.0]
