"""The surest set-up against brute force on random small lines.

Brute force goes through every set-up that meets the musts, the cheapest and then the line's first
first, and looks at each by itself; nothing of the search room is used.
"""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.line.choices import CHOICES
from chairwright.search.sure import find_sure
from chairwright.targets.target import Target
from chairwright.targets.verdict import verdict_of_ends
from chairwright.tolerance.of_setup import tolerance_of

from . import brute_force, drawn_targets
from .cases import Case, draw

MOST = 60
"""Set-ups that are looked at one by one; where more meet the musts, only the cheapest."""
SEEDS = range(40)


def cheapest_first(case: Case, targets: list[Target]) -> list[int]:
    fine = np.nonzero(brute_force.holding(case.everything, targets))[0]
    cost = np.zeros(len(fine))
    for target in targets:
        if not target.must:
            cost += target.weight * brute_force.steps(case.everything, target)[fine]
    keys = [case.everything.index[name][fine] for name in reversed(CHOICES)]
    return [int(at) for at in fine[np.lexsort([*keys, np.round(cost, 9)])]]


def is_sure(case: Case, targets: list[Target], at: int) -> bool:
    musts = [target for target in targets if target.must]
    setup = case.everything.setup(at)
    found = tolerance_of(case.space.line, case.space.occupant, setup, (), musts)
    return all(
        verdict_of_ends(must, float(case.everything.figures[must.figure][at]), found.halves(k)).word
        == "holds"
        for k, must in enumerate(musts)
    )


@pytest.mark.parametrize("seed", SEEDS)
def test_surest_set_up_of_a_small_line(seed: int) -> None:
    case = draw(seed)
    targets = drawn_targets.targets(case.rng, case.everything, int(case.rng.integers(1, 3)), 3)
    order = cheapest_first(case, targets)
    found = find_sure(case.space, targets)
    first = next((at for at in order[:MOST] if is_sure(case, targets, at)), None)
    if first is not None:
        assert found is not None
        assert found.index == case.everything.setup(first)
    elif found is not None:
        at = case.everything.place(found.index)
        assert order.index(at) >= MOST
        assert is_sure(case, targets, at)
    else:
        later = order[MOST :: max(1, len(order) // MOST)]
        assert not any(is_sure(case, targets, at) for at in later)


def test_the_drawn_questions_are_of_every_kind() -> None:
    """Some are answered by the nominal best, some by a dearer set-up, some by none."""
    kinds = set()
    for seed in SEEDS[:25]:
        case = draw(seed)
        targets = drawn_targets.targets(case.rng, case.everything, int(case.rng.integers(1, 3)), 3)
        order = cheapest_first(case, targets)
        if order:
            found = find_sure(case.space, targets)
            at = None if found is None else case.everything.place(found.index)
            kinds.add("none" if at is None else "same" if at == order[0] else "dearer")
    assert kinds == {"none", "same", "dearer"}
