"""A value that misses a limit by less than shows has the digits that show it."""

from __future__ import annotations

import math

import pytest

from chairwright.figures.registry import FIGURES
from chairwright.papers.words import measured_words, range_words, target_words, value_words
from chairwright.targets.target import Target
from chairwright_desk.bench.bridge.words import range_shown, shown

TIP, WIDTH = FIGURES["tip_rear_locked_deg"], FIGURES["seat_width_mm"]


def target(name: str, low: float | None, high: float | None = None) -> Target:
    return Target(name, low, high, must=True, weight=1.0, source="", reason="")


@pytest.mark.parametrize(
    ("low", "high", "value", "got", "asked"),
    [
        (10.0, None, 9.97, "9.97", "at least 10.0"),
        (10.0, None, 9.996, "9.996", "at least 10.0"),
        (10.0, None, 9.99996, "9.99996", "at least 10.0"),
        (10.0, None, 9.94, "9.9", "at least 10.0"),
        (10.0, None, 10.02, "10.0", "at least 10.0"),
        (None, 12.0, 12.03, "12.03", "at most 12.0"),
        (10.0, 12.0, 12.003, "12.003", "10.0 to 12.0"),
        (10.04, None, 10.01, "10.01", "at least 10.04"),  # both print as 10.0
        (10.0, 12.02, 12.04, "12.04", "10.0 to 12.02"),
        (10.04, None, 10.2, "10.2", "at least 10.0"),
        (-2.0, None, -2.04, "-2.04", "at least -2.0"),
        (0.0, None, -0.02, "-0.02", "at least 0.0"),
        (10.0, None, 10.0 - 1e-12, "10.0", "at least 10.0"),  # counts as inside
        (10.0, None, math.nan, "–", "at least 10.0"),
    ],
)
def test_as_many_more_digits_as_show_the_miss(
    low: float | None, high: float | None, value: float, got: str, asked: str
) -> None:
    limit = target(TIP.name, low, high)
    assert value_words(TIP, value, limit) == shown(TIP, value, "in", limit) == got
    assert range_words(limit, value) == range_shown(limit, TIP, "in", value) == asked


def test_clauses_have_them_too() -> None:
    limit = target(WIDTH.name, 400.0)
    assert measured_words(WIDTH, 399.8, None, limit) == "399.8 mm"
    assert target_words(limit, None, 399.8) == "Seat width at least 400 mm"
    limit = target(WIDTH.name, 399.7)
    assert measured_words(WIDTH, 399.6, None, limit) == "399.6 mm"
    assert target_words(limit, None, 399.6) == "Seat width at least 399.7 mm"


def test_one_limit_beside_several_values_is_written_once() -> None:
    limit = target(TIP.name, 10.04)
    assert range_words(limit, 10.2, 10.01, 9.0) == "at least 10.04"


def test_of_several_limits_the_nearest_missed_one_counts() -> None:
    limits = (target(TIP.name, 10.0), target(TIP.name, 9.98))
    assert value_words(TIP, 9.97, *limits) == "9.97"
    assert value_words(TIP, 9.979, *limits) == "9.979"


@pytest.mark.parametrize(
    ("low_in", "value_in", "got", "asked"),
    [
        (15.75, 15.7, "15.70", "at least 15.75"),  # both are 15 3/4 to the eighth
        (15.75, 15.749, "15.749", "at least 15.750"),
        (15.75, 15.5, "15 1/2", "at least 15 3/4"),
        (15.75, 15.76, "15 3/4", "at least 15 3/4"),
    ],
)
def test_inches_become_decimal_where_eighths_do_not_show_it(
    low_in: float, value_in: float, got: str, asked: str
) -> None:
    limit, value = target(WIDTH.name, 25.4 * low_in), 25.4 * value_in
    assert shown(WIDTH, value, "in", limit) == got
    assert range_shown(limit, WIDTH, "in", value) == asked
