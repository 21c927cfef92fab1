"""The surest answer: the best set-up whose musts hold with their spread, or what keeps it away."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Judged, describe
from chairwright.fitting.fit import Fit
from chairwright.fitting.sureness import Sureness
from chairwright.fitting.to_order import surcharge_of, within
from chairwright.search.best import Best
from chairwright.search.prepared import Prepared, prepare
from chairwright.search.sure import find_sure
from chairwright.targets.target import Target

Progress = Callable[[str], None]


def surest(fit: Fit, progress: Progress = lambda _: None) -> Fit:
    """The same fitting with the best set-up whose musts hold with their spread.

    Parameters
    ----------
    fit : Fit
    progress : callable
        Told in a few words what is being done.

    Returns
    -------
    Fit
        Unchanged when no set-up meets every must. Otherwise with `Fit.sure`: where no set-up is
        sure of every must, those that none is sure of are named, and the set-up is the best that
        is sure of the others; where there is none either, the best on nominal values stays.
        With sizes made to order the surcharge stays the least.
    """
    if fit.best is None or fit.setup is None:
        return fit
    prepared, targets = prepare(fit.space), _targets(fit)
    unsure = [item for item in fit.setup.judged if _is_unsure(item)]
    if not unsure:
        return replace(fit, sure=Sureness(fit.best.cost))
    progress("looking for the best set-up whose musts hold with their spread")
    found = find_sure(prepared, targets, fit.person.surroundings)
    if found is not None:
        return _with(fit, found, Sureness(fit.best.cost))
    return _as_sure_as_can_be(fit, prepared, targets, unsure, progress)


def _targets(fit: Fit) -> Sequence[Target]:
    """What is asked, and no more surcharge than is needed."""
    targets = fit.person.targets
    if fit.extent != "needed" or fit.best is None:
        return targets
    return within(targets, surcharge_of(fit.space, fit.best.index))


def _is_unsure(item: Judged) -> bool:
    return item.target.must and item.verdict.word == "holds on nominal values"


def _as_sure_as_can_be(
    fit: Fit,
    prepared: Prepared,
    targets: Sequence[Target],
    unsure: Sequence[Judged],
    progress: Progress,
) -> Fit:
    """Name what no set-up is sure of, the quick questions first, until the others can be sure."""
    places, never, found = fit.person.surroundings, list[Target](), None
    quick = [item.target for item in unsure if FIGURES[item.target.figure].depends]
    slow = [item.target for item in unsure if item.target not in quick]
    for group in (quick, slow):
        for target in group:
            progress(f"is any set-up sure of {FIGURES[target.figure].label}?")
            if find_sure(prepared, targets, places, only=[target]) is None:
                never.append(target)
        rest = [each for each in targets if each.must and each not in never]
        found = find_sure(prepared, targets, places, only=rest) if never else None
        if found is not None:
            break
    cost = 0.0 if fit.best is None else fit.best.cost
    told = Sureness(cost, tuple(never), rest_sure=found is not None, all_sure=False)
    return replace(fit, sure=told) if found is None else _with(fit, found, told)


def _with(fit: Fit, best: Best, told: Sureness) -> Fit:
    person = fit.person
    setup = describe(fit.line, person.occupant, best.index, person.targets, person.surroundings)
    return replace(fit, best=best, setup=setup, sure=told)
