"""A rule and places that ask about one figure stand in one row."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest

from chairwright.files.client import read_client
from chairwright.files.setup import read_setup
from chairwright.fitting.described import Described, describe
from chairwright.fitting.ledger import Row, ledger
from chairwright.fitting.person import read_person
from chairwright.fitting.setup import index_of
from chairwright.line.load import load_line
from chairwright.targets.target import Target

SETUP = Path(__file__).parents[3] / "examples" / "setups" / "avg-001.yaml"
WIDTH = "overall_width_mm"


@pytest.fixture(scope="module")
def described() -> Described:
    setup = read_setup(SETUP)
    line, person = load_line(setup.line), read_person(read_client(setup.client_path))
    return describe(line, person.occupant, index_of(setup, line), ())


def rule(low: float | None, high: float | None, *, must: bool = True) -> Target:
    return Target(WIDTH, low, high, must, 1.0, "a rule", "because of a rule", tolerance=3.0)


def door(high: float, name: str = "bathroom door", *, must: bool = True) -> Target:
    words = f"{name}: clear opening"
    return Target(WIDTH, None, high, must, 0.5, "practice", words, place=name)


def row(described: Described, *targets: Target) -> Row:
    setup = describe(described.line, OCCUPANT, described.index, targets)
    (found,) = [each for each in ledger(setup) if each.figure.name == WIDTH]
    return found


OCCUPANT = read_person(read_client(read_setup(SETUP).client_path)).occupant


def test_the_narrower_of_two_stands_with_its_own_source(described: Described) -> None:
    wide = described.figures[WIDTH]
    for targets in ((rule(None, wide + 50), door(wide + 20)), (door(wide + 20), rule(None, 900))):
        found = row(described, *targets)
        assert found.must is not None and found.word == "holds"
        assert (found.must.target.high, found.must.target.source) == (wide + 20, "practice")
        assert found.must.target.place == "bathroom door"


def test_what_both_leave_has_both_sources(described: Described) -> None:
    wide = described.figures[WIDTH]
    found = row(described, rule(wide - 40, None), door(wide + 20))
    assert found.must is not None
    target = found.must.target
    assert (target.low, target.high) == (wide - 40, wide + 20)
    assert target.source == "a rule; practice"
    assert target.reason == "because of a rule; bathroom door: clear opening"
    assert (target.place, target.tolerance) == ("bathroom door", 3.0)
    assert found.must.verdict.margin == pytest.approx(20.0)


def test_three_are_joined_and_both_places_named(described: Described) -> None:
    wide = described.figures[WIDTH]
    low = replace(door(0, "lift"), low=wide - 10, high=None)
    found = row(described, rule(wide - 40, wide + 60), door(wide + 20), low)
    assert found.must is not None
    assert (found.must.target.low, found.must.target.high) == (wide - 10, wide + 20)
    assert found.must.target.place == "bathroom door and lift"


def test_of_two_that_contradict_the_worse_one_stands(described: Described) -> None:
    wide = described.figures[WIDTH]
    found = row(described, rule(wide - 5, None), door(wide - 30))
    assert found.must is not None and found.word == "fails"
    assert found.must.target.place == "bathroom door"
    assert found.must.verdict.margin == pytest.approx(-30.0)
    found = row(described, rule(wide + 40, None), door(wide - 30))
    assert found.must is not None
    assert found.must.target.source == "a rule"
    assert found.must.verdict.margin == pytest.approx(-40.0)


def test_a_must_and_a_wish_stay_apart(described: Described) -> None:
    wide = described.figures[WIDTH]
    found = row(described, rule(None, wide + 50), door(wide - 20, must=False))
    assert found.must is not None and found.prefer is not None
    assert (found.must.target.high, found.prefer.target.high) == (wide + 50, wide - 20)
    assert found.word == "holds, not as preferred"
    assert found.asked == (found.must, found.prefer)
