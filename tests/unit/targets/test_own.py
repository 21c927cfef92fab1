"""The clinician's own targets over the rules."""

from __future__ import annotations

from typing import Any

import pytest

from chairwright.errors import InputError
from chairwright.person.client import OwnTarget

from .people import must, person, prefer, targets

REASON = "spare room for a winter coat"


def own(figure: str, low: float | None, high: float | None, **fields: Any) -> OwnTarget:
    given = {"must": True, "weight": 1.0, "reason": REASON, **fields}
    return OwnTarget(figure, low, high, **given)


def test_both_ends_replace_the_rule() -> None:
    width = must(person(own_targets=(own("seat_width_mm", 400, 460),)), "seat_width_mm")
    assert (width.low, width.high, width.tolerance) == (400, 460, 0.0)
    assert (width.source, width.reason) == ("clinician's decision", REASON)


def test_an_end_left_out_stays_the_rules() -> None:
    width = must(person(own_targets=(own("seat_width_mm", None, 410),)), "seat_width_mm")
    assert (width.low, width.high, width.tolerance) == (380, 410, 10.0)
    assert width.source.startswith("clinician's decision; other end: WHO WSTP")


@pytest.mark.parametrize(("low", "high"), [(None, 370.0), (450.0, None)])
def test_a_rules_end_on_the_wrong_side_is_dropped(low: float | None, high: float | None) -> None:
    width = must(person(own_targets=(own("seat_width_mm", low, high),)), "seat_width_mm")
    assert (width.low, width.high) == (low, high)
    assert width.source == "clinician's decision"


def test_the_rules_preference_moves_inside_the_own_must() -> None:
    width = prefer(person(own_targets=(own("seat_width_mm", 400, 460),)), "seat_width_mm")
    assert (width.low, width.high) == (400, 400)


def test_an_own_preference_keeps_its_ends_and_weight() -> None:
    client = person(own_targets=(own("seat_width_mm", 450, 460, must=False, weight=3.0),))
    width = prefer(client, "seat_width_mm")
    assert (width.low, width.high, width.weight) == (450, 460, 3.0)
    assert must(client, "seat_width_mm").high == 430.8


def test_a_figure_without_a_rule_gets_the_own_target() -> None:
    length = must(person(own_targets=(own("wheelbase_mm", None, 420),)), "wheelbase_mm")
    assert (length.low, length.high, length.reason) == (None, 420, REASON)


def test_a_must_and_a_preference_of_one_figure_may_stand_together() -> None:
    both = (own("seat_width_mm", 400, 460), own("seat_width_mm", 420, 430, must=False))
    width = [t for t in targets(person(own_targets=both)) if t.figure == "seat_width_mm"]
    assert [(t.must, t.low, t.high) for t in width] == [(True, 400, 460), (False, 420, 430)]


@pytest.mark.parametrize(
    ("wrong", "message"),
    [
        ((own("seat_wdith_mm", 1, 2),), "must name a figure"),
        ((own("seat_width_mm", None, None),), "must have a low or a high end"),
        ((own("seat_width_mm", 460, 400),), "low end must not be above"),
        ((own("seat_width_mm", 400, None, weight=-1.0),), "weight must not be below zero"),
        (
            (own("seat_width_mm", 400, None), own("seat_width_mm", None, 420)),
            "at most one own must",
        ),
    ],
)
def test_own_targets_that_cannot_be_meant(wrong: tuple[OwnTarget, ...], message: str) -> None:
    with pytest.raises(InputError, match=message):
        targets(person(own_targets=wrong))


def test_every_problem_is_named_at_its_place() -> None:
    wrong = (
        own("seat_width_mm", 460, 400, where="a.yaml:7"),
        own("seat", 1, 2, where="a.yaml:9"),
    )
    with pytest.raises(InputError) as caught:
        targets(person(own_targets=wrong))
    assert [problem.where for problem in caught.value.problems] == ["a.yaml:7", "a.yaml:9"]
