"""Changing a choice: refused with the rule's words, done with what must go along."""

from __future__ import annotations

import pytest

from chairwright.errors import InputError
from chairwright.fitting.described import why_not_buildable
from chairwright_desk.bench.bridge import change, effects_of, state_of
from tests.desk.bench.examples import bench_of, opened


def test_a_refused_option_changes_nothing_and_says_why() -> None:
    state = opened("avg-001")
    found = change(state, "seat_width", "S560")
    assert found.codes == state.codes
    assert "beyond 520 mm the cross-brace must be the double one" in found.refused


@pytest.mark.parametrize(
    ("choice", "code"), [("caster", "C5"), ("seat_width", "S560"), ("rear_wheel", "W20")]
)
def test_what_is_offered_with_a_refused_option_may_be_built(choice: str, code: str) -> None:
    state = opened("avg-001")
    found = change(state, choice, code)
    assert found.refused
    assert found.companions
    for offer in found.companions:
        assert offer.codes[choice] == code
        assert state_of(state.bench, {**state.codes, **offer.codes}).against == ()


def test_what_a_rule_asks_for_goes_along() -> None:
    (offer,) = change(opened("avg-001"), "rear_wheel", "W20").companions
    assert offer.codes["wheel_lock"] == "LL"  # the line's rule: W20 needs LL or LX
    assert "wheel lock LL" in offer.words


def test_the_anti_tip_device_goes_along_when_it_would_stand_in_the_floor() -> None:
    state = opened("avg-001")
    line, occupant = state.bench.line, state.bench.person.occupant
    found = change(state, "axle_hole", "E5")
    alone = {**state.index, "axle_hole": line.choices["axle_hole"].codes["E5"]}
    assert why_not_buildable(line, occupant, alone).startswith("the anti-tip wheel")
    moved = {name for name, code in found.codes.items() if code != state.codes[name]}
    assert moved == {"axle_hole", "anti_tip"}
    assert state_of(state.bench, found.codes).against == ()


def test_an_unknown_option_is_refused_by_name() -> None:
    state = opened("avg-001")
    with pytest.raises(InputError, match=r"choices\.caster"):
        change(state, "caster", "C99")
    with pytest.raises(InputError, match=r"choices\.finish"):
        state_of(state.bench, {n: c for n, c in state.codes.items() if n != "finish"})


def test_an_effect_is_what_the_change_then_shows() -> None:
    state = opened("avg-001")
    if state.setup is None:
        raise AssertionError
    for effect in effects_of(state, "cushion", "mm"):
        after = state_of(state.bench, {**state.codes, "cushion": effect.code}).setup
        if after is None:
            raise AssertionError
        assert (effect.mark == "fails") == bool(after.broken)
        lost = {item.target.figure for item in after.broken}
        assert len(effect.breaks) == len(lost - {i.target.figure for i in state.setup.broken})


def test_a_bench_is_one_for_one_content() -> None:
    assert bench_of("avg-001") is bench_of("avg-001")
    assert bench_of("avg-001").key != bench_of("avg-001", places=True).key
