"""The explanation of a best set-up against looking at every set-up of random small lines."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any, cast

import numpy as np
import pytest

from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import describe
from chairwright.fitting.fit import Fit
from chairwright.fitting.moved import change
from chairwright.fitting.one_change import OneChange, one_change
from chairwright.fitting.person import Person
from chairwright.fitting.rejected import why_rejected
from chairwright.fitting.why import Why, why_best
from chairwright.line.choices import CHOICES
from chairwright.search.best import find_best
from chairwright.targets.target import Target
from tests.oracles import brute_force, drawn_targets
from tests.oracles.brute_force import Everything
from tests.oracles.cases import Case, draw

NOTHING = cast(Any, None)


def case_with_best(seed: int) -> tuple[Case, Fit]:
    """A random case that has a best set-up; the fitting as the program would have made it."""
    while True:
        case = draw(seed)
        targets = drawn_targets.targets(case.rng, case.everything, 2, 4)
        best = find_best(case.space, targets)
        if best is not None:
            break
        seed += 1000
    line, occupant = case.space.line, case.space.occupant
    return case, Fit(
        person=Person(NOTHING, NOTHING, NOTHING, occupant, tuple(targets)),
        line=line,
        space=case.space,
        count=case.everything.count,
        best=best,
        reasons=None,
        setup=describe(line, occupant, best.index, targets),
        front=None,
        objectives=(),
    )


def present(case: Case, fit: Fit) -> int:
    """Place of the best set-up among all."""
    assert fit.best is not None
    return case.everything.place(fit.best.index)


def costs(everything: Everything, targets: tuple[Target, ...]) -> np.ndarray[Any, Any]:
    """Cost of each preference of each set-up, shape (set-ups, targets); 0 for musts."""
    columns = [
        np.zeros(len(everything.index["fork"]))
        if target.must
        else target.weight * brute_force.steps(everything, target)
        for target in targets
    ]
    return np.stack(columns, axis=1)


def one_away(everything: Everything, at: int) -> list[tuple[int, str]]:
    """Places of the set-ups that differ in one choice, with that choice, in the line's order."""
    differ = np.stack([everything.index[n] != everything.index[n][at] for n in CHOICES], axis=1)
    found = [
        (int(place), list(CHOICES)[int(np.argmax(differ[place]))])
        for place in np.nonzero(differ.sum(axis=1) == 1)[0]
    ]
    order = list(CHOICES)
    return sorted(found, key=lambda pair: (order.index(pair[1]),
                                           everything.index[pair[1]][pair[0]]))  # fmt: skip


def changes_of(case: Case, fit: Fit) -> OneChange:
    assert fit.best is not None
    return one_change(case.space, fit.best.index, fit.person.targets)


@pytest.mark.parametrize("seed", range(40))
def test_what_is_said_is_what_looking_at_everything_finds(seed: int) -> None:
    case, fit = case_with_best(seed)
    why = why_best(fit)
    _one_change_is_every_set_up_that_differs_in_one_choice(case, fit)
    _the_next_best_is_the_best_without_the_option(case, fit, why)
    _each_target_is_decided_by_the_choice_that_moves_it_furthest(case, fit, why)
    _costs_add_up_and_a_nearer_change_breaks_or_costs_more(case, fit, why)
    _any_other_set_up_breaks_a_must_or_costs_no_less(case, fit)


def _one_change_is_every_set_up_that_differs_in_one_choice(case: Case, fit: Fit) -> None:
    changes, targets = changes_of(case, fit), fit.person.targets
    places = one_away(case.everything, present(case, fit))
    assert [step.choice for step in changes.steps] == [name for _, name in places]
    rows = [place for place, _ in places]
    for step, (place, name) in zip(changes.steps, places, strict=True):
        options = case.space.line.choices[name].options
        assert step.option is options[int(case.everything.index[name][place])]
    assert changes.costs == pytest.approx(costs(case.everything, targets)[rows], abs=1e-9)
    for at, target in enumerate(targets):
        lost = brute_force.broken(case.everything, [target])[rows, 0]
        assert list(changes.lost[:, at]) == list(lost & target.must)


def _the_next_best_is_the_best_without_the_option(case: Case, fit: Fit, why: Why) -> None:
    everything, targets, here = case.everything, list(fit.person.targets), present(case, fit)
    total = np.round(costs(everything, fit.person.targets).sum(axis=1), brute_force.COST_DIGITS)
    fine = brute_force.holding(everything, targets)
    open_choices = {name for name, options in case.space.allowed.items() if len(options) > 1}
    assert {each.choice for each in why.choices} == open_choices
    assert set(why.only) == set(CHOICES) - open_choices
    for each in why.choices:
        other = fine & (everything.index[each.choice] != everything.index[each.choice][here])
        if not other.any():
            assert each.setup is None
            _least_broken(case, fit, each.choice, why)
            continue
        assert each.setup is not None
        least = total[other].min()
        wanted = everything.first(other & (total == least))
        assert each.setup.index == everything.setup(wanted)
        assert each.costs_more == pytest.approx(least - total[here], abs=2e-9)
        rises = sum(shift.costs_more for shift in each.shifts)
        assert rises == pytest.approx(each.costs_more, abs=1e-8)
    ranks = [(each.setup is not None, -each.costs_more) for each in why.choices]
    assert ranks == sorted(ranks)


def _least_broken(case: Case, fit: Fit, choice: str, why: Why) -> None:
    """Where nothing else holds every must: the option that breaks fewest of them, alone."""
    (each,) = [one for one in why.choices if one.choice == choice]
    musts = [target for target in fit.person.targets if target.must]
    places = [p for p, name in one_away(case.everything, present(case, fit)) if name == choice]
    if not places:
        assert each.alone is None and each.breaks == ()
        return
    count = brute_force.broken(case.everything, musts)[places].sum(axis=1)
    assert each.alone is not None
    assert len(each.breaks) == count.min()
    (at,) = [
        place
        for place in places
        if case.everything.index[choice][place] == case.space.line.choices[choice].codes[
            each.alone.option.code
        ]
    ]  # fmt: skip
    for lost in each.breaks:
        value = case.everything.figures[lost.target.figure][at]
        assert lost.value == pytest.approx(value, abs=1e-9, nan_ok=True)
        assert lost.target in musts


def _each_target_is_decided_by_the_choice_that_moves_it_furthest(
    case: Case, fit: Fit, why: Why
) -> None:
    here = present(case, fit)
    for reason in why.reasons:
        name = reason.judged.target.figure
        values = case.everything.figures[name]
        moved: dict[str, float] = {}
        for place, choice in one_away(case.everything, here):
            by = abs(change(FIGURES[name], values[here], values[place]))
            if by != 0.0:
                moved[choice] = max(moved.get(choice, 0.0), 0.0 if np.isnan(by) else by)
        if not moved:
            assert reason.decided_by is None
            continue
        assert reason.decided_by is not None and fit.setup is not None
        furthest = max(moved.values())
        assert reason.decided_by.choice == next(n for n, by in moved.items() if by == furthest)
        assert reason.decided_by.option is fit.setup.options[reason.decided_by.choice]


def _costs_add_up_and_a_nearer_change_breaks_or_costs_more(case: Case, fit: Fit, why: Why) -> None:
    assert fit.best is not None
    here = present(case, fit)
    assert sum(each.cost for each in why.reasons) == pytest.approx(fit.best.cost, abs=1e-8)
    table = costs(case.everything, fit.person.targets)
    rows = [place for place, _ in one_away(case.everything, here)]
    for at, reason in enumerate(why.reasons):
        assert reason.cost == pytest.approx(table[here, at], abs=1e-9)
        cheapest = min((table[row, at] for row in rows), default=np.inf)
        if reason.cost == 0.0 or cheapest >= table[here, at]:
            assert reason.nearer is None
            continue
        assert reason.nearer is not None
        name = reason.nearer.step.choice
        code = case.space.line.choices[name].codes[reason.nearer.step.option.code]
        (row,) = [p for p, n in one_away(case.everything, here)
                  if n == name and case.everything.index[n][p] == code]  # fmt: skip
        assert table[row, at] == pytest.approx(cheapest, abs=1e-9)
        more = table[row].sum() - table[here].sum()
        assert reason.nearer.costs_more == pytest.approx(more, abs=1e-8)
        assert reason.nearer.breaks or more >= -1e-9


def _any_other_set_up_breaks_a_must_or_costs_no_less(case: Case, fit: Fit) -> None:
    fit = Fit(**{**vars(fit), "person": _with_nothing_settled(fit.person)})
    table, here = costs(case.everything, fit.person.targets), present(case, fit)
    musts = [target for target in fit.person.targets if target.must]
    for place in case.rng.choice(len(table), 8):
        found = why_rejected(fit, fit.line, case.everything.setup(int(place)))
        assert found.forbidden == () and found.not_open == ()
        lost = brute_force.broken(case.everything, musts)[place]
        assert [each.target for each in found.broken] == [
            must for must, gone in zip(musts, lost, strict=True) if gone
        ]
        more = table[place].sum() - table[here].sum()
        assert found.costs_more == pytest.approx(more, abs=1e-8)
        assert sum(shift.costs_more for shift in found.shifts) == pytest.approx(more, abs=1e-8)
        assert found.is_refused or more >= -1e-8
        assert found.is_best == (place == here)


def _with_nothing_settled(person: Person) -> Person:
    nobody = cast(Any, SimpleNamespace(fixed_choices={}))
    return Person(nobody, NOTHING, NOTHING, person.occupant, person.targets)
