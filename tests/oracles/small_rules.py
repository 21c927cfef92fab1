"""Random rules of a small line: option codes, whole parts, ranges of sizes."""

from __future__ import annotations

from typing import Any

import numpy as np

from .lines import Written
from .written import Said, said

Rng = np.random.Generator
MOST_RULES = 4


def random_rules(data: Written, rng: Rng) -> list[Written]:
    """Draw up to four rules between the things of which a line has several.

    Parameters
    ----------
    data : dict
        The line file as written, its rules left out of account.
    rng : numpy.random.Generator
    """
    choices = {name: found for name, found in said(data).items() if len(found) > 1}
    rules: list[Written] = []
    while len(choices) > 1 and rng.random() < 0.65 and len(rules) < MOST_RULES:
        names = [str(name) for name in rng.permutation(list(choices))]
        when = {names[0]: _one(rng, choices[names[0]])}
        if len(names) > 2 and rng.random() < 0.25:
            when[names[2]] = _one(rng, choices[names[2]])
        need = {names[1]: _all_but_one(rng, choices[names[1]])}
        rules.append({"when": when, "need": need, "because": "drawn for a test"})
    return rules


def _one(rng: Rng, options: list[Said]) -> Any:
    """One option, one whole part, or a range that starts at one size."""
    option = options[int(rng.integers(len(options)))]
    way = rng.random()
    if way < 0.4 and not np.isnan(option.size):
        return {"from" if way < 0.2 else "to": option.size}
    return [option.part if option.part and way < 0.7 else option.code]


def _all_but_one(rng: Rng, options: list[Said]) -> Any:
    """All but one option or part, or a range that leaves out the smallest or the largest."""
    out = options[int(rng.integers(len(options)))]
    sizes = sorted({option.size for option in options if not np.isnan(option.size)})
    way = rng.random()
    if way < 0.4 and len(sizes) > 1:
        return {"from": sizes[1]} if way < 0.2 else {"from": sizes[0], "to": sizes[-2]}
    parts = [option.part or option.code for option in options]
    others = dict.fromkeys(name for name in parts if name != (out.part or out.code))
    if way < 0.7 and others:
        return list(others)
    return [option.code for option in options if option is not out]
