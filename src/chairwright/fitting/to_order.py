"""Sizes made to order: what a line offers beyond its standard range, for the least surcharge."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import Literal

import numpy as np

from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.terms import TERMS
from chairwright.search.any_of import left_by
from chairwright.search.best import Best, find_best
from chairwright.search.prepared import Prepared
from chairwright.search.space import Space
from chairwright.targets.target import Target

ToOrder = Literal["when-needed", "always", "never"]
"""When sizes made to order are looked at: only if no standard set-up holds every must, like
standard sizes, or not at all."""

SURCHARGE = "custom_surcharge"
MONEY = frozenset({SURCHARGE, "price", "lead_days"})
"""Figures that tell set-ups of different surcharge apart."""


def offers_more(standard: Space, extended: Space) -> bool:
    """Whether a space with sizes made to order has options that the standard one lacks."""
    return any(
        len(extended.allowed[name]) > len(options) for name, options in standard.allowed.items()
    )


def find_cheapest(prepared: Prepared, targets: Sequence[Target]) -> Best | None:
    """The best of the set-ups with the least surcharge that holds every must.

    Parameters
    ----------
    prepared : Prepared
        A space with sizes made to order.
    targets : sequence of Target

    Returns
    -------
    Best or None
        None when no set-up holds every must. Nothing cheaper holds every must, and nothing at
        this surcharge misses the preferences by less.
    """
    left = left_by(prepared, within(targets, math.inf)).space
    if left.is_empty:
        return None
    least = _at_least(left)
    found = find_best(prepared, within(targets, least))
    if found is not None:
        return found
    musts = [target for target in targets if target.must]
    first = find_best(prepared, [*musts, _no_more_than(least, must=False)])
    if first is None:
        return None
    second = find_best(prepared, within(targets, surcharge_of(prepared.space, first.index)))
    if second is None:
        raise AssertionError(LOST)
    return replace(second, looked_at=first.looked_at + second.looked_at)


LOST = "a set-up at this surcharge was found before and must be found again"


def within(targets: Sequence[Target], surcharge: float) -> tuple[Target, ...]:
    """Targets with the must that sizes made to order cost no more than this."""
    return (*targets, _no_more_than(surcharge))


def _at_least(space: Space) -> float:
    """What the sizes made to order of any set-up of a space cost at the least, or less."""
    key = TERMS[SURCHARGE].key
    columns = (space.line.column(name, key)[options] for name, options in space.allowed.items())
    return float(sum(column.min() for column in columns))


def surcharge_of(space: Space, index: dict[str, int]) -> float:
    """Surcharge of one set-up [the line's currency]."""
    rows, _ = realise(space.line, space.occupant, {n: np.array([at]) for n, at in index.items()})
    return float(figures_of(rows, space.occupant, [SURCHARGE])[SURCHARGE][0])


def _no_more_than(amount: float, *, must: bool = True) -> Target:
    return Target(SURCHARGE, None, amount, must, 1.0, "", "sizes made to order cost the least")
