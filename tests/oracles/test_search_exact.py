"""The exact search against brute force on 300 random small lines.

Each line has some dozens to some ten thousands of set-ups; client, rules, settled choices, what is
on request or made to order, musts and preferences are drawn too. Best set-up, trade-off front,
smallest corrections with their amounts, smallest conflicts and the count must all be the same.
"""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures.registry import FIGURES
from chairwright.search.best import cost_of, find_best
from chairwright.search.front import Objective, find_front
from chairwright.search.reasons import Give, find_reasons
from chairwright.targets.target import Target

from . import brute_force, drawn_targets
from .brute_force import Everything
from .cases import PIECES, Case, draw, in_pieces


@pytest.mark.parametrize("seed", range(300))
def test_random_small_line(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    in_pieces(monkeypatch, PIECES[seed % len(PIECES)])
    case = draw(seed)
    assert case.space.count == case.everything.count
    easy = drawn_targets.targets(case.rng, case.everything, int(case.rng.integers(0, 4)), 5)
    _same_best(case, easy)
    _same_front(case, easy)
    hard = drawn_targets.targets(case.rng, case.everything, int(case.rng.integers(2, 8)), 2)
    _same_best(case, hard)
    _same_reasons(case, hard)


@pytest.mark.parametrize("seed", range(5))
def test_line_that_builds_nothing(seed: int) -> None:
    case = draw(1000 + seed, standing=False)
    one = Target("seat_width_mm", 400.0, None, True, 1.0, "test", "test")
    assert case.space.count == case.everything.count
    assert find_best(case.space, [one]) is None
    aims = (Objective("seat_width_mm", "min"), Objective("chair_mass_kg", "min"))
    assert find_front(case.space, [], aims).points == ()
    reasons = find_reasons(case.space, [one])
    assert (reasons.corrections, reasons.conflicts) == ((), ())


def _same_best(case: Case, targets: list[Target]) -> None:
    found, wanted = find_best(case.space, targets), brute_force.best(case.everything, targets)
    if wanted is None:
        assert found is None
        return
    assert found is not None
    cost, at = wanted
    assert found.cost == pytest.approx(cost, abs=2e-9)
    assert found.index == case.everything.setup(at)
    assert cost_of(case.space, found.index, targets) == pytest.approx(cost, abs=2e-9)
    again = find_best(case.space, targets, at_most=cost)
    assert again is not None, "what it costs was told beforehand"
    assert (again.index, again.cost) == (found.index, found.cost)
    assert find_best(case.space, targets, at_most=cost - 1e-4) is None


def _same_front(case: Case, targets: list[Target]) -> None:
    aims = drawn_targets.aims(case.rng, case.everything, int(case.rng.integers(2, 4)))
    if len(aims) < 2:
        return
    objectives = tuple(Objective(name, sense) for name, sense in aims)  # type: ignore[arg-type]
    found = find_front(case.space, targets, objectives)
    vectors = [
        tuple(
            np.round(point.values[name] / FIGURES[name].resolution) * (-1 if sense == "max" else 1)
            for name, sense in aims
        )
        for point in found.points
    ]
    assert len(set(vectors)) == len(vectors)
    assert set(vectors) == brute_force.front(case.everything, targets, aims)
    for point in found.points:
        at = case.everything.place(point.index)
        for name, value in point.values.items():
            step = FIGURES[name].resolution
            assert value == pytest.approx(case.everything.figures[name][at], abs=0.5001 * step)


def _same_reasons(case: Case, targets: list[Target]) -> None:
    musts = [target for target in targets if target.must]
    found = find_reasons(case.space, targets)
    if brute_force.best(case.everything, musts) is not None:
        assert (found.corrections, found.conflicts) == ((), ())
        return
    wanted = brute_force.corrections(case.everything, musts)
    assert len(found.corrections) == len(wanted)
    for correction in found.corrections:
        group = frozenset(_at(musts, give.target) for give in correction.gives)
        least, place = wanted[group]
        _same_amounts(case.everything, correction.gives, place, least)
        at = case.everything.place(correction.index)
        _same_amounts(case.everything, correction.gives, at, least)
        if not any(np.isnan(give.value) for give in correction.gives):
            assert at == brute_force.shown(case.everything, targets, group, place)
    groups = [frozenset(_at(musts, must) for must in group) for group in found.conflicts]
    assert len(set(groups)) == len(groups)
    assert set(groups) == brute_force.conflicts(case.everything, musts)


def _same_amounts(everything: Everything, gives: tuple[Give, ...], at: int, least: float) -> None:
    """The amounts are those of one set-up, and least in total."""
    total = 0.0
    for give in gives:
        far = brute_force.excess(everything, give.target)[at]
        value = everything.figures[give.target.figure][at]
        assert give.by == pytest.approx(far, abs=1e-7, nan_ok=True)
        assert give.value == pytest.approx(value, abs=1e-7, nan_ok=True)
        total += brute_force.steps(everything, give.target)[at]
    assert total == pytest.approx(least, abs=2e-9 * len(gives))


def _at(musts: list[Target], target: Target) -> int:
    return next(at for at, must in enumerate(musts) if must is target or must == target)
