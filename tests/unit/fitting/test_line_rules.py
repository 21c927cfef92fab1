"""Rules that never fire, contradict or demand nothing new: as trying every set-up says."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from itertools import product

import numpy as np
import pytest

from chairwright.fitting.line_checks.rules import rule_findings
from chairwright.line.load import load_line
from chairwright.line.model import Choice, Option, Rule

SIZES = {"side_frame": 3, "camber": 2, "caster": 3, "fork": 4}
CHOICES = {
    name: Choice(name, name, tuple(Option(f"{name}{at}", "", {}) for at in range(size)))
    for name, size in SIZES.items()
}
SEEDS = range(80)


def random_rules(seed: int) -> list[Rule]:
    generator = np.random.default_rng(seed)

    def codes(name: str) -> frozenset[str]:
        known = list(CHOICES[name].codes)
        size = int(generator.integers(1, len(known)))
        return frozenset(str(code) for code in generator.choice(known, size, replace=False))

    def side(most: int) -> dict[str, frozenset[str]]:
        count = int(generator.integers(1, most + 1))
        names = generator.choice(list(SIZES), size=count, replace=False)
        return {str(name): codes(str(name)) for name in names}

    count = int(generator.integers(2, 7))
    return [Rule(side(2), side(2), f"reason {at}", f"file:{at}") for at in range(count)]


def meets(setup: dict[str, str], side: dict[str, frozenset[str]]) -> bool:
    return all(setup[name] in codes for name, codes in side.items())


def expected(rules: list[Rule]) -> dict[str, str]:
    """What is wrong with each rule, by its place, from the definitions."""
    setups = [
        dict(zip(SIZES, codes, strict=True))
        for codes in product(*(choice.codes for choice in CHOICES.values()))
    ]
    found = {}
    for rule in rules:
        others = [each for each in rules if each is not rule]
        fires = [
            setup
            for setup in setups
            if meets(setup, rule.when)
            and all(not meets(setup, o.when) or meets(setup, o.need) for o in others)
        ]
        kept = [setup for setup in fires if meets(setup, rule.need)]
        if not fires:
            found[rule.where] = "the rule's condition"
        elif not kept:
            found[rule.where] = "contradiction"
        elif len(kept) == len(fires):
            found[rule.where] = "something new"
    return found


@pytest.mark.parametrize("seed", SEEDS)
def test_each_rule_is_judged_as_every_set_up_says(seed: int) -> None:
    rules = random_rules(seed)
    line = replace(load_line("everyday"), choices=CHOICES, rules=tuple(rules))
    found = {finding.problem.where: finding for finding in rule_findings(line)}
    judged = expected(rules)
    assert set(found) == set(judged)
    for where, words in judged.items():
        assert words in str(found[where].problem)
        assert (found[where].severity == "remark") == (words == "something new")


def test_every_verdict_occurs() -> None:
    seen = Counter(word for seed in SEEDS for word in expected(random_rules(seed)).values())
    assert len(seen) == 3
    assert min(seen.values()) >= 5
