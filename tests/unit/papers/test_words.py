"""Numbers, ranges and sources in words."""

from __future__ import annotations

import math

import pytest

from chairwright.figures.registry import FIGURES
from chairwright.papers.words import (
    SourceNumbers,
    amount_words,
    brief_citations,
    inches_words,
    range_words,
    spread_words,
    target_words,
    value_words,
)
from chairwright.targets.target import Target

WIDTH = FIGURES["seat_width_mm"]
TOE = FIGURES["toe_deg"]


def target(low: float | None, high: float | None) -> Target:
    return Target("seat_width_mm", low, high, must=True, weight=1.0, source="", reason="")


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        (393.7, 444.5, "394 to 444"),
        (410.0, 410.0, "410"),
        (400.2, 400.4, "400"),
        (50.0, None, "at least 50"),
        (None, 700.0, "at most 700"),
    ],
)
def test_ranges(low: float | None, high: float | None, words: str) -> None:
    assert range_words(target(low, high)) == words
    assert target_words(target(low, high)) == f"Seat width {words} mm"


def test_values_have_the_figures_digits_and_no_negative_zero() -> None:
    assert value_words(WIDTH, 419.6) == "420"
    assert value_words(TOE, -0.004) == "0.00"
    assert value_words(TOE, -0.03) == "-0.03"
    assert value_words(TOE, math.nan) == "–"


def test_a_spread_that_does_not_show_is_left_out() -> None:
    assert spread_words(TOE, 0.004) == ""
    assert spread_words(FIGURES["com_x_mm"], 19.6) == "± 20"


def test_only_lengths_have_inches() -> None:
    assert inches_words(WIDTH, 419.1) == "16 1/2 in"
    assert inches_words(TOE, 1.0) == ""
    assert inches_words(WIDTH, math.nan) == ""


def test_a_small_amount_is_never_nothing() -> None:
    assert amount_words(WIDTH, 0.2) == "under 1 mm"
    assert amount_words(WIDTH, 20.0) == "20 mm"


def test_sources_are_numbered_once_each() -> None:
    sources = [
        "A (read in the source); B (derived)",
        "B (derived)",
        "common practice, no source: zero is the aim",
    ]
    numbers = SourceNumbers(sources)
    assert numbers.listed == [
        (1, "A (read in the source)"),
        (2, "B (derived)"),
        (3, "common practice, no source: zero is the aim"),
    ]
    assert numbers.of(sources[:2]) == "1 2"
    brief = SourceNumbers(sources, brief_citations)
    assert brief.listed[2] == (3, "common practice, no source")


def test_a_bracket_inside_a_citation_does_not_split_it() -> None:
    words = "Code, 60 in (1524 mm); 1500 mm elsewhere (restated by a secondary source)"
    assert SourceNumbers([words]).listed == [(1, words)]
