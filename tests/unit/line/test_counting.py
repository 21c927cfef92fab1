"""The number of set-ups agrees with trying every combination, and with closed forms."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import replace
from itertools import pairwise, product

from hypothesis import given, settings
from hypothesis import strategies as st

from chairwright.line.counting import count_allowed
from chairwright.line.load import load_line
from chairwright.line.model import Choice, Line, Option, Rule

SIZES = {"u": 5, "v": 2, "w": 3, "x": 2, "y": 3, "z": 4}


def choices(sizes: dict[str, int]) -> dict[str, Choice]:
    return {
        name: Choice(name, name, tuple(Option(f"{name}{at}", "", {}) for at in range(size)))
        for name, size in sizes.items()
    }


def line_of(sizes: dict[str, int], rules: Iterable[Rule]) -> Line:
    return replace(load_line("everyday"), choices=choices(sizes), rules=tuple(rules))


def codes_of(name: str) -> st.SearchStrategy[frozenset[str]]:
    codes = [f"{name}{at}" for at in range(SIZES[name])]
    return st.frozensets(st.sampled_from(codes))


def side() -> st.SearchStrategy[dict[str, frozenset[str]]]:
    names = st.lists(st.sampled_from(list(SIZES)), min_size=1, max_size=3, unique=True)
    return names.flatmap(
        lambda chosen: st.fixed_dictionaries({name: codes_of(name) for name in chosen})
    )


RULES = st.lists(st.builds(Rule, side(), side(), st.just("drawn for a test")), max_size=9)
OPEN = st.fixed_dictionaries(
    {}, optional={name: st.frozensets(st.integers(0, size - 1)) for name, size in SIZES.items()}
)


def obeys(setup: dict[str, str], rule: Rule) -> bool:
    meets = all(setup[name] in codes for name, codes in rule.when.items())
    return not meets or all(setup[name] in codes for name, codes in rule.need.items())


def brute_force(rules: list[Rule], allowed: dict[str, frozenset[int]]) -> int:
    open_codes = [
        [f"{name}{at}" for at in sorted(allowed.get(name, range(size)))]
        for name, size in SIZES.items()
    ]
    setups = (dict(zip(SIZES, codes, strict=True)) for codes in product(*open_codes))
    return sum(all(obeys(setup, rule) for rule in rules) for setup in setups)


@settings(max_examples=150, deadline=None)
@given(rules=RULES, allowed=OPEN)
def test_the_count_is_that_of_every_combination_tried(
    rules: list[Rule], allowed: dict[str, frozenset[int]]
) -> None:
    assert count_allowed(line_of(SIZES, rules), allowed) == brute_force(rules, allowed)


def test_without_rules_the_options_multiply() -> None:
    assert count_allowed(line_of(SIZES, [])) == math.prod(SIZES.values())
    assert count_allowed(line_of(SIZES, []), {"u": [0, 4], "z": []}) == 0
    assert count_allowed(line_of(SIZES, []), {"u": [0, 4], "z": [1]}) == 2 * 2 * 3 * 2 * 3


def test_a_chain_of_sixty_choices_gives_a_fibonacci_number() -> None:
    """Words of zeros and ones of length n without two neighbouring ones: F(n + 2)."""
    names = [f"c{at:02d}" for at in range(60)]
    rules = [
        Rule({first: frozenset({f"{first}1"})}, {second: frozenset({f"{second}0"})}, "")
        for first, second in pairwise(names)
    ]
    before, fibonacci = 0, 1
    for _ in range(61):
        before, fibonacci = fibonacci, before + fibonacci
    assert count_allowed(line_of(dict.fromkeys(names, 2), rules)) == fibonacci


def test_six_choices_that_all_differ_give_six_factorial() -> None:
    names = [f"c{at}" for at in range(6)]
    rules = [
        Rule(
            {first: frozenset({f"{first}{at}"})},
            {second: frozenset(f"{second}{other}" for other in range(6) if other != at)},
            "",
        )
        for here, first in enumerate(names)
        for second in names[here + 1 :]
        for at in range(6)
    ]
    assert count_allowed(line_of(dict.fromkeys(names, 6), rules)) == math.factorial(6)


def test_a_rule_may_name_a_choice_on_both_sides() -> None:
    rule = Rule(
        {"u": frozenset({"u0", "u1"})}, {"u": frozenset({"u1", "u2"}), "v": frozenset({"v0"})}, ""
    )
    alone = {name: [0] for name in SIZES if name not in ("u", "v")}
    assert count_allowed(line_of(SIZES, [rule]), alone) == 3 * 2 + 1
