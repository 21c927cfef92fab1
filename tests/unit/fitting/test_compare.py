"""Set-ups beside each other: what differs, and whether the people and the lines do."""

from __future__ import annotations

from dataclasses import replace

import pytest

from chairwright.fitting.compare import Comparison, Side, compare, same_person
from chairwright.fitting.described import describe
from chairwright.fitting.moved import printed
from chairwright.fitting.person import Person, read_person
from chairwright.person.client import OwnTarget
from tests.oracles.people import client

from .test_sweep import LINE, base, person


def side(name: str, **other: str) -> Side:
    return Side(name, person(), base(**other))


def other_person(mass: str = "80 kg") -> Side:
    who: Person = read_person(client(mass=mass))
    setup = describe(LINE, who.occupant, base().index, who.targets)
    return Side("other", who, setup)


def pair(**other: str) -> Comparison:
    return compare([side("one"), side("two", **other)])


def test_equal_set_ups_differ_in_nothing() -> None:
    found = pair()
    assert found.choices == ()
    assert found.figures == ()
    assert found.judged == ()
    assert found.same_client
    assert found.same_line


def test_choices_that_differ_stand_in_the_order_of_the_choices() -> None:
    assert pair(cushion="Q30", axle_hole="D4").choices == ("axle_hole", "cushion")


def test_figures_that_differ_are_those_that_print_differently() -> None:
    found = pair(cushion="Q30")
    one, two = found.setups
    for row in found.ledgers[0].values():
        figure = row.figure
        same = printed(figure, one.figures[figure.name]) == printed(
            figure, two.figures[figure.name]
        )
        absent = one.figures[figure.name] != one.figures[figure.name]
        assert (figure in found.figures) == (not same and not absent)
    assert "cushion_to_floor_front_mm" in {figure.name for figure in found.figures}


def test_a_verdict_can_differ() -> None:
    found = compare([side("one", leg_length="G280"), side("two", leg_length="G400")])
    words = [each["footplate_clearance_mm"].word for each in found.ledgers]
    assert words == ["holds", "fails"]
    assert "footplate_clearance_mm" in {figure.name for figure in found.judged}


def test_another_person_is_noticed() -> None:
    assert not compare([side("one"), other_person(mass="95 kg")]).same_client
    assert compare([side("one"), other_person()]).same_client


def test_a_person_is_the_same_whatever_is_noted_and_wherever_it_is_written() -> None:
    one = client()
    assert same_person(one, replace(one, note="seen on Monday", where={"sex": "file:3"}))
    asked = OwnTarget("seat_width_mm", 400.0, None, True, 1.0, "a coat")
    assert not same_person(one, replace(one, own_targets=(asked,)))


def test_another_version_of_the_line_is_noticed() -> None:
    second = side("two")
    newer = replace(second.setup, line=replace(LINE, version="another"))
    assert not compare([side("one"), replace(second, setup=newer)]).same_line


@pytest.mark.parametrize("count", [0, 1, 5])
def test_two_to_four_are_compared(count: int) -> None:
    with pytest.raises(ValueError, match=f"needs 2 to 4 set-ups; got {count}"):
        compare([side("one")] * count)
