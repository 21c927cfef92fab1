"""The best set-up without one of the options chosen: what the choice is worth."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from chairwright.fitting.described import Described, Judged, describe
from chairwright.fitting.fit import Fit
from chairwright.fitting.one_change import OneChange, Step
from chairwright.fitting.target_reasons import Break, breaks_of, cost_of
from chairwright.fitting.to_order import SURCHARGE, find_cheapest
from chairwright.search.best import COST_DIGITS, find_best
from chairwright.search.prepared import prepare
from chairwright.targets.target import Target

SMALLEST = 0.5 * 10.0**-COST_DIGITS
"""Costs that differ by less are alike."""


@dataclass(frozen=True)
class Shift:
    """A preference that costs more or less in another set-up."""

    target: Target
    before: float
    after: float
    costs_more: float


@dataclass(frozen=True)
class NextBest:
    """The best set-up without the option chosen, everything else set anew.

    Parameters
    ----------
    choice : str
    setup : Described or None
        None when no set-up without that option holds every must.
    costs_more : float
        What its preferences cost more; infinite when there is none.
    surcharge_more : float
        What its sizes made to order cost more [the line's currency], where the least surcharge
        goes before the preferences; 0 elsewhere.
    shifts : tuple of Shift
        The preferences that cost otherwise, the greatest rise first.
    alone : Step or None
        Where there is no such set-up: the option that breaks least when it alone is changed;
        None when none is allowed and stands.
    breaks : tuple of Break
        The musts that it breaks then.
    """

    choice: str
    setup: Described | None
    costs_more: float
    surcharge_more: float = 0.0
    shifts: tuple[Shift, ...] = ()
    alone: Step | None = None
    breaks: tuple[Break, ...] = ()

    @property
    def matters(self) -> bool:
        """Whether the option chosen is better than the next."""
        return self.costs_more > SMALLEST or self.surcharge_more > 0.0


def next_best(fit: Fit, setup: Described, name: str, changes: OneChange) -> NextBest:
    """Take the option of one choice away and find the best of the rest.

    Parameters
    ----------
    fit : Fit
        With a best set-up.
    setup : Described
        That set-up.
    name : str
        A choice with more than one open option.
    changes : OneChange
        From that set-up.

    Returns
    -------
    NextBest
    """
    options = fit.space.allowed[name]
    others = {**fit.space.allowed, name: options[options != setup.index[name]]}
    prepared = prepare(replace(fit.space, allowed=others))
    find = find_cheapest if fit.extent == "needed" else find_best
    best = find(prepared, fit.person.targets)
    if best is None or fit.best is None:
        return _none_other(name, changes)
    other = describe(
        fit.line, fit.person.occupant, best.index, fit.person.targets, fit.person.surroundings
    )
    dearer = other.figures[SURCHARGE] - setup.figures[SURCHARGE]
    return NextBest(
        choice=name,
        setup=other,
        costs_more=best.cost - fit.best.cost,
        surcharge_more=dearer if fit.extent == "needed" else 0.0,
        shifts=tuple(shifts(setup.judged, other.judged)),
    )


def _none_other(name: str, changes: OneChange) -> NextBest:
    """Without the option nothing holds every must: what the least of the others breaks."""
    places = changes.of(name)
    if not places:
        return NextBest(name, None, np.inf)
    count, far = changes.lost.sum(axis=1), changes.steps_outside()
    nearest = min(places, key=lambda at: (count[at], far[at], at))
    return NextBest(
        name, None, np.inf, alone=changes.steps[nearest], breaks=breaks_of(changes, nearest)
    )


def shifts(before: Sequence[Judged], after: Sequence[Judged]) -> Iterator[Shift]:
    """Preferences that cost otherwise in another set-up, the greatest rise first.

    Parameters
    ----------
    before, after : sequence of Judged
        Of the same targets.

    Yields
    ------
    Shift
    """
    found = [
        Shift(one.target, one.value, other.value, cost_of(other) - cost_of(one))
        for one, other in zip(before, after, strict=True)
        if not one.target.must
    ]
    yield from sorted(
        (each for each in found if abs(each.costs_more) > SMALLEST),
        key=lambda each: -each.costs_more,
    )
