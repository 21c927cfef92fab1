"""The least that a group of musts has to give, in steps of each figure's scale."""

from __future__ import annotations

import heapq
from collections.abc import Iterator, Sequence
from dataclasses import replace

import numpy as np

from chairwright.figures.registry import FIGURES
from chairwright.figures.terms import SEPARATE, attainable
from chairwright.mass_points import FloatArray
from chairwright.search.any_of import any_of_left, find_any, left_by
from chairwright.search.best import find_best
from chairwright.search.prepared import Prepared
from chairwright.targets.target import Target
from chairwright.targets.verdict import outside

MOST_TRIES = 8
"""Sums of amounts tried one by one before the search for the least of them takes over."""


def find_least(
    prepared: Prepared, kept: Sequence[Target], given: Sequence[Target]
) -> dict[str, int] | None:
    """Find a set-up that holds some musts and misses the others by as little as can be, in total.

    Where every figure given up can only take few known values, their sums are tried from the
    least on: each is proven impossible until one is found. Otherwise one search minds them all.

    Parameters
    ----------
    prepared : Prepared
    kept, given : sequence of Target
        Musts.

    Returns
    -------
    dict of str to int, or None
        Option position of every choice; None when nothing holds the musts that are kept.
    """
    hold = False
    for amounts in _sums_from_the_least(prepared, kept, given):
        eased = [_opened(each, by) for each, by in zip(given, amounts, strict=True)]
        left = left_by(prepared, [*kept, *eased])
        if left.space.is_empty:
            continue
        found = any_of_left(left, [*kept, *eased])
        if found is not None:
            return found.index
        hold = hold or find_any(prepared, kept) is not None
        if not hold:
            return None
    asked = [replace(each, must=False, weight=1.0) for each in given]
    best = find_best(prepared, [*kept, *asked])
    return None if best is None else best.index


def _sums_from_the_least(
    prepared: Prepared, kept: Sequence[Target], given: Sequence[Target]
) -> Iterator[tuple[float, ...]]:
    """Yield an amount for each target, in its figure's unit: the least sum of steps first."""
    names = frozenset(target.figure for target in (*kept, *given))
    left = prepared.relevant(names).under(tuple(kept))
    if left.space.is_empty:
        return
    known = (_attainable(left, target) for target in given)
    amounts = [each for each in known if each is not None and len(each)]
    if len(amounts) < len(given):
        return
    scales = [FIGURES[target.figure].scale for target in given]
    steps = [each / scale for each, scale in zip(amounts, scales, strict=True)]
    for at in _places_by_sum(steps):
        yield tuple(float(each[place]) for each, place in zip(amounts, at, strict=True))


def _places_by_sum(steps: Sequence[FloatArray]) -> Iterator[tuple[int, ...]]:
    """Yield places in the ascending lists by ascending sum, as many as are tried."""
    first = (0,) * len(steps)
    waiting, seen = [(_sum(steps, first), first)], {first}
    for _ in range(MOST_TRIES):
        if not waiting:
            return
        _, at = heapq.heappop(waiting)
        yield at
        for axis, each in enumerate(steps):
            further = (*at[:axis], at[axis] + 1, *at[axis + 1 :])
            if further[axis] < len(each) and further not in seen:
                seen.add(further)
                heapq.heappush(waiting, (_sum(steps, further), further))


def _sum(steps: Sequence[FloatArray], at: tuple[int, ...]) -> float:
    return sum(float(each[place]) for each, place in zip(steps, at, strict=True))


def _attainable(left: Prepared, target: Target) -> FloatArray | None:
    """How far outside its range a figure can lie, ascending; None where that is not known.

    Every amount that some set-up has is among them; others may be.
    """
    if target.figure in SEPARATE:
        space = left.space
        values = attainable(target.figure, space.line, space.occupant, space.allowed)
    else:
        table = left.look_ahead(target.figure)
        if table is None:
            return None
        values = table.values[table.grid.marked_points()]
    if np.isnan(values).any():
        return None
    amounts = np.unique(outside(target, values))
    return amounts[np.isfinite(amounts)]


def _opened(target: Target, by: float) -> Target:
    low = None if target.low is None else target.low - by
    return replace(target, low=low, high=None if target.high is None else target.high + by)
