"""Which options are free: the arrays say what asking for each option by itself says.

Brute force: every option of every choice is put in the place of the present one, and the line's
rules, the client's feet and hands and the floor are asked one after the other.
"""

from __future__ import annotations

import pytest

from chairwright.fitting.allowed import why_not_allowed
from chairwright.fitting.described import why_not_buildable
from chairwright.fitting.follow_up import cleared, device_gap_mm
from chairwright.line.choices import CHOICES
from chairwright_desk.bench.bridge import State, choices_shown, state_of, table_of
from chairwright_desk.bench.bridge.things import SLIDERS, THINGS
from tests.desk.bench.examples import opened

NAMES = ("avg-001", "amp-005", "foo-003", "tal-002", "chi-007")


def test_every_choice_belongs_to_one_thing() -> None:
    names = [name for _, choices in THINGS.values() for name in choices]
    assert sorted(names) == sorted(CHOICES)


@pytest.mark.parametrize("name", NAMES)
def test_an_option_is_refused_exactly_when_it_may_not_be_built(name: str) -> None:
    state = opened(name)
    table, line, occupant = table_of(state), state.bench.line, state.bench.person.occupant
    gap = device_gap_mm(line, occupant, state.index)
    assert state.against == ()
    for choice in CHOICES:
        for at in range(len(line.choices[choice].options)):
            if at == state.index[choice]:
                continue
            index, pair = {**state.index, choice: at}, (choice, at)
            rules = why_not_allowed(line, occupant, index)
            falls = "" if rules else why_not_buildable(line, occupant, index)
            hole = cleared(line, occupant, index, gap) if falls and choice != "anti_tip" else None
            assert bool(table.refused.get(pair)) == bool(rules or (falls and hole is None)), pair
            assert table.lifted.get(pair) == hole, pair
            if rules:
                assert all(words in table.refused[pair] for words in rules), pair


def _shown(state: State) -> dict[str, dict[str, str]]:
    return {
        choice.name: {option.code: option.standing for option in choice.options}
        for thing in choices_shown(state)
        for choice in thing.choices
    }


def test_what_is_shown_is_what_stands() -> None:
    state = opened("avg-001")
    shown = _shown(state)
    assert {
        name: [c for c, s in each.items() if s == "chosen"] for name, each in shown.items()
    } == {name: [code] for name, code in state.codes.items()}
    assert shown["caster"] == {"C5": "refused", "C6": "chosen", "C4": "refused", "C8": "allowed"}


def test_a_slider_rises_and_stands_at_the_chosen_option() -> None:
    state = opened("avg-001")
    sliders = {
        choice.name: choice
        for thing in choices_shown(state)
        for choice in thing.choices
        if choice.slider
    }
    assert {"seat_width", "seat_depth", "back_height", "leg_length"} <= sliders.keys()
    for name, choice in sliders.items():
        options = state.bench.line.choices[name]
        sizes = [
            options.options[options.codes[each.code]].numbers[SLIDERS[name]]
            for each in choice.slider
        ]
        assert sizes == sorted(sizes), name
        assert choice.slider[choice.at].standing == "chosen"


def test_a_set_up_that_breaks_a_rule_can_be_mended() -> None:
    state = opened("avg-001")
    broken = state_of(state.bench, {**state.codes, "caster": "C5"})
    assert broken.against
    back = state.bench.line.choices["caster"].codes["C6"]
    assert ("caster", back) not in table_of(broken).refused
