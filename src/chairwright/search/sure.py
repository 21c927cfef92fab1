"""The best set-up whose musts hold with their spread, proven."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.band import Band
from chairwright.line.choices import CHOICES
from chairwright.places.model import Surroundings
from chairwright.search.best import Best, BestGoal
from chairwright.search.criteria import Criteria, criteria
from chairwright.search.engine import PRIORITY, Search
from chairwright.search.look_ahead import LookAhead
from chairwright.search.narrowing import narrowed
from chairwright.search.prepared import Prepared, prepare
from chairwright.search.space import Limit, Space
from chairwright.targets.target import Target
from chairwright.targets.verdict import broken
from chairwright.tolerance.sure import SureTest

MOST_ASKED = 400
"""Combinations of few choices that are looked at one by one before the search begins."""


class SureGoal(BestGoal):
    """As `BestGoal`, but a finished set-up is taken only when its musts hold with their spread.

    What misses a must as it stands misses it with its spread, and costs are the same: whatever
    `BestGoal` drops may be dropped here.

    Parameters
    ----------
    prepared : Prepared
    rules : Criteria
    test : SureTest
    """

    def __init__(self, prepared: Prepared, rules: Criteria, test: SureTest) -> None:
        super().__init__(prepared, rules)
        self._test = test

    def take(self, rows: Rows, bands: dict[str, Band]) -> None:
        """See ``Goal``: the first that is sure, the cheapest and then the line's order first."""
        if not len(rows):
            return
        keys = [rows.index[name] for name in reversed(CHOICES)]
        order = np.lexsort([*keys, rows[PRIORITY]])
        index = {name: rows.index[name][order] for name in CHOICES}
        first = self._test.first(index)
        if first is not None:
            self.cost = float(rows[PRIORITY][order[first]])
            self.index = {name: int(index[name][first]) for name in CHOICES}


def find_sure(
    space: Space | Prepared,
    targets: Sequence[Target],
    surroundings: Surroundings | None = None,
    only: Iterable[Target] | None = None,
) -> Best | None:
    """The best set-up of a space whose musts hold with their spread, proven.

    Parameters
    ----------
    space : Space or Prepared
    targets : sequence of Target
    surroundings : Surroundings or None
        Of the client: sizes of places can be off as well.
    only : iterable of Target or None
        Musts that must hold with their spread; None for all. The others must hold as they stand.

    Returns
    -------
    Best or None
        None when no set-up does.
    """
    rules = criteria(targets)
    sure = rules.musts if only is None else tuple(only)
    prepared = prepare(space).relevant(frozenset(rules.names)).under(rules.musts)
    if prepared.space.is_empty:
        return None
    test = SureTest(prepared.space.line, prepared.space.occupant, sure, surroundings)
    limits = [limit for must in sure for limit in _limit(prepared, must, test)]
    prepared = Prepared(narrowed(prepared.space, [*prepared.space.limits, *limits]), rules.musts)
    if prepared.space.is_empty:
        return None
    goal = SureGoal(prepared, rules, test)
    search = Search(prepared, goal)
    search.run()
    if goal.index is None:
        return None
    return Best(goal.index, goal.cost, search.looked_at)


def _limit(prepared: Prepared, must: Target, test: SureTest) -> list[Limit]:
    """Which options go together that a must on few choices holds with for sure."""
    ahead: LookAhead | None = prepared.look_ahead(must.figure)
    if ahead is None:
        return []
    holds = ~broken(must, ahead.values) & ahead.grid.marked_points()
    if holds.sum() > MOST_ASKED:
        return []
    rest = {name: int(options[0]) for name, options in prepared.space.allowed.items()}
    for at in np.nonzero(holds)[0]:
        point = {name: int(places[at]) for name, places in ahead.grid.index.items()}
        holds[at] = test.holds(must, {**rest, **point})
    return [Limit(ahead.depends, ahead.grid.marked(holds))]
