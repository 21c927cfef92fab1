"""The catalogue and its widest limits."""

from __future__ import annotations

import pytest

from chairwright.person.client import Measure, Sex
from chairwright.person.measures import CATALOGUE, check_limits
from chairwright.person.population import survey_range
from chairwright.units import parse_quantity


def _measure(name: str, typed: str, where: str = "") -> Measure:
    quantity = parse_quantity(typed, CATALOGUE[name].dimension, name)
    return Measure(name, "middle", quantity, 10.0, where=where)


@pytest.mark.parametrize("name", list(CATALOGUE))
def test_every_kind_is_complete(name: str) -> None:
    kind = CATALOGUE[name]
    assert kind.name == name
    assert kind.label and kind.term and kind.how.endswith(".")
    assert kind.low < kind.high
    assert kind.sides == (("left", "right") if kind.sided else ("middle",))


@pytest.mark.parametrize("name", [n for n, k in CATALOGUE.items() if k.ansur])
@pytest.mark.parametrize("sex", ["male", "female"])
def test_limits_hold_everybody_of_the_survey(name: str, sex: Sex) -> None:
    kind = CATALOGUE[name]
    least, greatest = survey_range(sex, str(kind.ansur))
    assert kind.low < least < greatest < kind.high


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("stature", "1200 mm"),
        ("body_mass", "250 kg"),
        ("body_mass", "30 kg"),
        ("hip_width", "800 mm"),
        ("lower_leg_length", "260 mm"),
        ("buttock_thigh_depth", "330 mm"),
        ("shoe_sole", "0 mm"),
    ],
)
def test_small_and_large_adults_pass(name: str, typed: str) -> None:
    assert check_limits(_measure(name, typed)) is None


def test_a_stature_of_seventeen_metres_does_not() -> None:
    problem = check_limits(_measure("stature", "17 m", where="ann.yaml:4"))
    assert problem is not None
    assert str(problem) == (
        "ann.yaml:4: body height must lie between 900 and 2300 mm; got 17 m (17000 mm). "
        "Check the number and its unit."
    )


@pytest.mark.parametrize("typed", ["-430 mm", "43 mm", "430 cm"])
def test_negative_and_wrong_unit_do_not(typed: str) -> None:
    assert check_limits(_measure("lower_leg_length", typed)) is not None
