"""The clinician's weights on preferences that come from rules and limits."""

from __future__ import annotations

from dataclasses import replace

import pytest

from chairwright.errors import InputError
from chairwright.person.client import OwnTarget

from .people import person, prefer, targets


def test_a_weight_replaces_the_rules_and_says_so() -> None:
    plain = person()
    heavy = replace(plain, weights={"chair_mass_kg": 3.0})
    before, after = prefer(plain, "chair_mass_kg"), prefer(heavy, "chair_mass_kg")
    assert (before.weight, after.weight) == (0.2, 3.0)
    assert after.reason == f"{before.reason}; weight 3 instead of 0.2: clinician's decision"
    assert (after.low, after.high, after.source) == (before.low, before.high, before.source)


def test_every_other_target_stays_as_it_was() -> None:
    plain = person()
    heavy = replace(plain, weights={"overall_width_mm": 5.0})
    moved = [
        (a.figure, a.must) for a, b in zip(targets(plain), targets(heavy), strict=True) if a != b
    ]
    assert moved == [("overall_width_mm", False)]  # the must on the width is not weighed


def test_a_weight_on_what_nobody_prefers_is_refused_with_its_line() -> None:
    client = replace(
        person(),
        weights={"com_x_mm": 2.0, "chair_mass_kg": 1.0},
        where={"weights.com_x_mm": "client.yaml:12"},
    )
    with pytest.raises(InputError) as caught:
        targets(client)
    (problem,) = caught.value.problems
    assert problem.where == "client.yaml:12"
    assert problem.got == "com_x_mm"


def test_an_own_preference_may_be_weighed_where_a_rule_prefers_too() -> None:
    own = OwnTarget("com_x_mm", 100.0, None, must=False, weight=4.0, reason="tried")
    client = replace(person(), own_targets=(own,))
    assert prefer(client, "com_x_mm").weight == 4.0
