"""The space of a client: what is left open, and how many set-ups that makes."""

from __future__ import annotations

import pytest

from chairwright.errors import InputError
from chairwright.search.space import open_space
from tests.oracles.lines import everyday
from tests.oracles.people import client, seated


def codes_left(propulsion: str, **settled: list[str]) -> set[str]:
    """Codes of the foot supports that stay open."""
    space = open_space(everyday(), seated(client(propulsion=propulsion)), settled)
    options = everyday().choices["foot_supports"].options
    return {options[at].code for at in space.allowed["foot_supports"]}


@pytest.mark.parametrize(
    ("propulsion", "left"),
    [
        ("hands", {"both"}),
        ("carer", {"both"}),
        ("feet", {"none"}),
        ("hand_and_foot_left", {"right"}),
        ("hand_and_foot_right", {"left"}),
    ],
)
def test_a_foot_that_pushes_has_no_support_and_one_that_rests_has(
    propulsion: str, left: set[str]
) -> None:
    assert codes_left(propulsion) == left


def test_settled_codes_narrow_a_choice_and_a_part_means_all_its_holes() -> None:
    settled = {"fork": ["FM"], "seat_width": ["S420", "S440"]}
    space = open_space(everyday(), seated(client()), settled)
    forks, widths = (everyday().choices[name].options for name in settled)
    assert {forks[at].code.partition("-")[0] for at in space.allowed["fork"]} == {"FM"}
    assert [widths[at].code for at in space.allowed["seat_width"]] == ["S420", "S440"]
    assert space.count < open_space(everyday(), seated(client()), {}).count


def test_settling_what_the_feet_forbid_is_refused() -> None:
    with pytest.raises(InputError) as refusal:
        open_space(everyday(), seated(client(propulsion="feet")), {"foot_supports": ["both"]})
    (problem,) = refusal.value.problems
    assert "foot_supports" in problem.where
    assert "both" in problem.got


def test_the_shipped_line_has_more_than_a_million_set_ups_for_each_client() -> None:
    for propulsion in ("hands", "feet", "hand_and_foot_left", "carer"):
        assert open_space(everyday(), seated(client(propulsion=propulsion)), {}).count > 1_000_000
