"""Deduction from the rules agrees with trying every combination."""

from __future__ import annotations

from dataclasses import replace
from itertools import product

import numpy as np
import pytest

from chairwright.line.load import load_line
from chairwright.line.model import Choice, Line, Option, Rule
from chairwright.line.reachable import Deduction, blockers

SIZES = {"w": 3, "x": 2, "y": 3, "z": 4}
CHOICES = {
    name: Choice(name, name, tuple(Option(f"{name}{at}", "", {}) for at in range(size)))
    for name, size in SIZES.items()
}


def random_rules(seed: int) -> tuple[Rule, ...]:
    generator = np.random.default_rng(seed)

    def side() -> dict[str, frozenset[str]]:
        names = generator.choice(list(SIZES), size=int(generator.integers(1, 3)), replace=False)
        return {
            str(name): frozenset(
                code for code in CHOICES[str(name)].codes if generator.random() < 0.5
            )
            for name in names
        }

    return tuple(Rule(side(), side(), "") for _ in range(int(generator.integers(3, 12))))


def obeys(setup: dict[str, str], rule: Rule) -> bool:
    meets = all(setup[name] in codes for name, codes in rule.when.items())
    return not meets or all(setup[name] in codes for name, codes in rule.need.items())


def allowed(rules: tuple[Rule, ...]) -> list[dict[str, str]]:
    setups = (
        dict(zip(SIZES, codes, strict=True))
        for codes in product(*(choice.codes for choice in CHOICES.values()))
    )
    return [setup for setup in setups if all(obeys(setup, rule) for rule in rules)]


def small_line(rules: tuple[Rule, ...]) -> Line:
    return replace(load_line("everyday"), choices=CHOICES, rules=rules)


@pytest.mark.parametrize("seed", range(60))
def test_an_option_is_possible_when_some_set_up_has_it(seed: int) -> None:
    rules = random_rules(seed)
    deduction, setups = Deduction(small_line(rules)), allowed(rules)
    for name, choice in CHOICES.items():
        for code in choice.codes:
            example = deduction.example({name: frozenset({code})})
            assert (example is not None) == any(setup[name] == code for setup in setups)
            if example is not None:
                picks = product(*(sorted(example[each]) for each in SIZES))
                assert all(dict(zip(SIZES, pick, strict=True)) in setups for pick in picks)


def test_both_answers_occur() -> None:
    counts = [len(allowed(random_rules(seed))) for seed in range(60)]
    assert min(counts) == 0
    assert max(counts) > 10


@pytest.mark.parametrize("seed", [s for s in range(60) if not allowed(random_rules(s))])
def test_blockers_are_enough_and_none_is_spare(seed: int) -> None:
    rules = random_rules(seed)
    found = tuple(blockers(small_line(rules), {}))
    assert allowed(found) == []
    for rule in found:
        assert allowed(tuple(each for each in found if each is not rule))


def test_nothing_blocks_what_is_possible() -> None:
    assert blockers(load_line("everyday"), {}) == []


def test_nothing_is_possible_with_no_code_at_all() -> None:
    deduction = Deduction(small_line(()))
    assert deduction.example({"w": frozenset()}) is None
    assert deduction.example({"w": frozenset({"w1"})}) is not None
