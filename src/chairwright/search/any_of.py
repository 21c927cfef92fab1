"""Whether any set-up of a space holds every must, and one that does."""

from __future__ import annotations

from collections.abc import Sequence

from chairwright.search.best import Best, BestGoal
from chairwright.search.criteria import Criteria
from chairwright.search.engine import Search
from chairwright.search.prepared import Prepared, prepare
from chairwright.search.space import Space
from chairwright.targets.target import Target


def find_any(space: Space | Prepared, targets: Sequence[Target]) -> Best | None:
    """Find one set-up that holds every must, whatever the preferences say.

    Parameters
    ----------
    space : Space or Prepared
    targets : sequence of Target
        Preferences among them are left out.

    Returns
    -------
    Best or None
        At no cost, since nothing is preferred; None when none holds every must, proven.
    """
    musts = tuple(target for target in targets if target.must)
    rules = Criteria(musts, ())
    prepared = prepare(space).relevant(frozenset(rules.names)).under(musts)
    if prepared.space.is_empty:
        return None
    goal = BestGoal(prepared, rules, any_will_do=True)
    search = Search(prepared, goal)
    search.run()
    return None if goal.index is None else Best(goal.index, 0.0, search.looked_at)
