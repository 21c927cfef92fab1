"""The proven best set-up: every must held, least total cost of the preferences."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray, Rows
from chairwright.figures.band import Band, known
from chairwright.figures.evaluate import figures_of, realise
from chairwright.line.choices import CHOICES
from chairwright.mass_points import FloatArray
from chairwright.search.criteria import LEGS, Criteria, Judge, broken, cost, criteria
from chairwright.search.engine import PRIORITY, Search
from chairwright.search.leg_trial import CHOICE
from chairwright.search.prepared import Prepared, prepare
from chairwright.search.space import Space
from chairwright.targets.target import Target

COST_DIGITS = 9
"""Costs that agree to this many digits are ties: the option that the line lists first wins,
choices taken in the order of ``line.choices.CHOICES``."""

FIRST_PIECE = 1500

ANY_PIECE = 200
"""A first piece where the first finished set-up ends the search."""

OTHER = "cost beyond the tables"

ROOM = 1e-6
"""Added to a cost known beforehand, which may be summed in another order: all ties stay in."""

CAUTION = 1e-11
"""Taken off the bound of an unfinished set-up: more than the arithmetic's rounding, and less than
what would make a tie look better."""


@dataclass(frozen=True)
class Best:
    """The best set-up.

    Parameters
    ----------
    index : dict of str to int
        Option position of every choice.
    cost : float
        Total cost of the preferences it misses.
    looked_at : int
        Unfinished and finished set-ups that the proof took.
    """

    index: dict[str, int]
    cost: float
    looked_at: int


class BestGoal:
    """Keeps what can still be at least as good as the best finished set-up.

    Parameters
    ----------
    prepared : Prepared
    rules : Criteria
        A must among the preferences counts 1 when it is broken.
    any_will_do : bool
        End at the first set-up found, whatever it costs.
    at_most : float
        A cost that some set-up is known to have.
    """

    def __init__(
        self,
        prepared: Prepared,
        rules: Criteria,
        *,
        any_will_do: bool = False,
        at_most: float = np.inf,
    ) -> None:
        self.any_will_do = any_will_do
        self.first_piece = ANY_PIECE if any_will_do else FIRST_PIECE
        self._judge = Judge(prepared, rules)
        self.names = rules.names
        self.hard = rules.musts
        self.asked = (*rules.musts, *rules.preferences)
        self.cost = at_most + ROOM
        self.index: dict[str, int] | None = None

    @property
    def sieve_choices(self) -> frozenset[str]:
        """See ``Goal``."""
        return self._judge.tabled_choices

    @property
    def found(self) -> bool:
        """See ``Goal``."""
        return self.index is not None

    def sieve(
        self, rows: Rows, parent: IndexArray, index: dict[str, IndexArray], choice: str
    ) -> NDArray[np.bool_]:
        """Tell which children may still win: what a parent costs beyond the tables, they do too.

        Parameters
        ----------
        rows : Rows, shape (m,)
            The parents.
        parent : ndarray of int, shape (n,)
            Row of each child's parent.
        index : dict of str to ndarray of int, shape (n,)
            The children's option positions of `sieve_choices` and of the rules' choices.
        choice : str
            The choice just made.

        Returns
        -------
        ndarray of bool, shape (n,)
        """
        least = rows[OTHER][parent] + self._judge.tabled_cost(index) - CAUTION
        least += self._judge.tried_cost(rows, parent, index[choice], choice)
        if LEGS in rows.columns and choice != CHOICE and CHOICE not in rows.index:
            least += rows[LEGS][parent]
        cost = np.round(least, COST_DIGITS)
        return np.asarray(self._judge.possible(index, choice) & self._may_win(cost))

    def judge(self, rows: Rows, bands: dict[str, Band]) -> NDArray[np.bool_]:
        """See ``Goal``: the priority is the least cost still reachable."""
        unfinished = len(rows.index) < len(CHOICES)
        rows[OTHER] = self._judge.other_cost(rows, bands)
        cost = rows[OTHER] + self._judge.tabled_cost(rows.index)
        rows[PRIORITY] = np.round(cost - (CAUTION if unfinished else 0.0), COST_DIGITS)
        lost = np.logical_or.reduce(
            [np.zeros(len(rows), dtype=bool), *self._judge.broken(rows, bands)]
        )
        fine = np.asarray(~lost & self.still(rows))
        legs = self._judge.legs_cost(rows, fine)
        if not legs.any():
            return fine
        rows[PRIORITY] = np.round(cost + legs - CAUTION, COST_DIGITS)
        return np.asarray(fine & self.still(rows))

    def still(self, rows: Rows) -> NDArray[np.bool_]:
        """See ``Goal``."""
        cost = rows[PRIORITY]
        fine = self._may_win(cost)
        tie = cost == self.cost
        if self.index is None or self.any_will_do or not tie.any():
            return fine
        return np.asarray(fine & (~tie | _listed_before(rows, self.index)))

    def _may_win(self, cost: FloatArray) -> NDArray[np.bool_]:
        """By cost alone: nothing once there is one and any will do."""
        if self.any_will_do and self.index is not None:
            return np.zeros(len(cost), dtype=bool)
        return (cost <= self.cost) & np.isfinite(cost)

    def take(self, rows: Rows, bands: dict[str, Band]) -> None:
        """See ``Goal``."""
        if not len(rows):
            return
        cheapest = np.nonzero(rows[PRIORITY] == rows[PRIORITY].min())[0]
        order = np.lexsort([rows.index[name][cheapest] for name in reversed(CHOICES)])
        winner = cheapest[order[0]]
        self.cost = float(rows[PRIORITY][winner])
        self.index = {name: int(rows.index[name][winner]) for name in CHOICES}


def _listed_before(rows: Rows, index: dict[str, int]) -> NDArray[np.bool_]:
    """Rows whose first completion is listed before ``index``."""
    before = np.zeros(len(rows), dtype=bool)
    level = np.ones(len(rows), dtype=bool)
    for name in CHOICES:
        place = rows.index.get(name)
        if place is None:
            return before | level
        before |= level & (place < index[name])
        level &= place == index[name]
    return before


def find_best(
    space: Space | Prepared, targets: Sequence[Target], at_most: float = np.inf
) -> Best | None:
    """The best set-up of a space, proven.

    Parameters
    ----------
    space : Space or Prepared
        Prepared when several searches share a space.
    targets : sequence of Target
    at_most : float
        What some set-up that holds every must is known to cost, see `cost_of`: then the proof
        is shorter.

    Returns
    -------
    Best or None
        None when no set-up holds every must, or none costs so little.
    """
    rules = criteria(targets)
    prepared = prepare(space).relevant(frozenset(rules.names)).under(rules.musts)
    if prepared.space.is_empty:
        return None
    goal = BestGoal(prepared, rules, at_most=at_most)
    search = Search(prepared, goal)
    search.run()
    if goal.index is None:
        return None
    return Best(goal.index, goal.cost, search.looked_at)


def cost_of(space: Space, index: Mapping[str, int], targets: Sequence[Target]) -> float:
    """What the preferences that a set-up misses cost.

    Parameters
    ----------
    space : Space
    index : mapping of str to int
        Option position of every choice.
    targets : sequence of Target

    Returns
    -------
    float
        Infinite when the set-up misses a must.
    """
    rules = criteria(targets)
    places = {name: np.array([place]) for name, place in index.items()}
    rows, _ = realise(space.line, space.occupant, places)
    figures = figures_of(rows, space.occupant, rules.names)
    if any(broken(must, known(figures[must.figure])).any() for must in rules.musts):
        return math.inf
    costs = (cost(wish, known(figures[wish.figure])) for wish in rules.preferences)
    return float(sum(float(each[0]) for each in costs))
