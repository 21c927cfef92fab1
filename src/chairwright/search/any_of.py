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
    return any_of_left(left_by(space, targets), targets)


def left_by(space: Space | Prepared, targets: Sequence[Target]) -> Prepared:
    """What musts leave of a space, as far as tables of few choices tell without a search.

    Parameters
    ----------
    space : Space or Prepared
    targets : sequence of Target
        Preferences among them are left out.

    Returns
    -------
    Prepared
        Some set-up of it holds the musts if one of the whole space does: when it is empty, none
        does.
    """
    rules = _musts(targets)
    return prepare(space).relevant(frozenset(rules.names)).under(rules.musts)


def any_of_left(left: Prepared, targets: Sequence[Target]) -> Best | None:
    """Find one set-up that holds every must in what `left_by` left for them.

    Parameters
    ----------
    left : Prepared
    targets : sequence of Target

    Returns
    -------
    Best or None
        As `find_any`.
    """
    if left.space.is_empty:
        return None
    goal = BestGoal(left, _musts(targets), any_will_do=True)
    search = Search(left, goal)
    search.run()
    return None if goal.index is None else Best(goal.index, 0.0, search.looked_at)


def _musts(targets: Sequence[Target]) -> Criteria:
    return Criteria(tuple(target for target in targets if target.must), ())
