"""Which place decides: the best set-ups of example clients with and without their places."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from chairwright.files.client import read_client
from chairwright.files.places import read_places
from chairwright.fitting.fit import Fit, fit_client
from chairwright.fitting.place_effect import PlaceEffect, place_effect
from chairwright.line.load import load_line

EXAMPLES = Path(__file__).parents[3] / "examples"


@cache
def fitted(name: str) -> tuple[Fit, PlaceEffect]:
    client = read_client(EXAMPLES / "clients" / f"{name}.yaml")
    line = load_line("everyday")
    places = read_places(EXAMPLES / "places" / f"{name}.yaml")
    fit = fit_client(client, line, surroundings=places, objectives=None, alone=True)
    effect = place_effect(fit)
    assert fit.best is not None
    assert effect is not None
    return fit, effect


@pytest.mark.parametrize(
    ("name", "place", "figure"),
    [
        ("avg-001", "bathroom door", "overall_width_mm"),
        ("chi-007", "ramp into the house", "start_lift_mps2@up_9.462"),
        ("car-009", "boot of the family car", "heaviest_part_kg"),
        ("hem-004", "past the stairs to the bedroom", "corner_free_mm@770"),
    ],
)
def test_the_place_that_decides_is_named(name: str, place: str, figure: str) -> None:
    fit, effect = fitted(name)
    assert (place, figure) in {(i.target.place, i.target.figure) for i in effect.decided}
    assert not fit.setup.broken  # type: ignore[union-attr]


def moved(name: str, figure: str) -> float:
    """How a figure of the best set-up changes because of the places."""
    fit, _ = fitted(name)
    assert fit.setup is not None
    assert fit.without_places is not None
    return fit.setup.figures[figure] - fit.without_places.figures[figure]


def test_a_door_forces_a_narrower_chair() -> None:
    assert moved("avg-001", "overall_width_mm") < 0


def test_a_corner_forces_a_shorter_front() -> None:
    assert moved("hem-004", "overall_length_mm") < 0


def test_a_ramp_forces_the_axle_back() -> None:
    fit, effect = fitted("chi-007")
    before, after = effect.changed["axle_hole"]
    x = {option.code: option.numbers["x_mm"] for option in fit.line.choices["axle_hole"].options}
    assert x[after] < x[before]


def test_a_carers_limit_forces_a_lighter_build() -> None:
    assert moved("car-009", "heaviest_part_kg") < 0
