"""The exact trade-off between what a change takes and how well the chair then fits.

What is traded off: sums over the choices, such as money and minutes, each least first, and last
the cost of the preferences that are missed. Musts always hold. As in `search.front`, dominance
is judged on printed numbers.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray, Rows
from chairwright.figures.band import Band
from chairwright.line.choices import CHOICES
from chairwright.mass_points import FloatArray
from chairwright.search.criteria import Judge, criteria
from chairwright.search.dominance import Grades, Staircase, merged
from chairwright.search.engine import PRIORITY, Search
from chairwright.search.prepared import Prepared
from chairwright.search.relevance import relevant_space
from chairwright.search.space import Space
from chairwright.search.sums import Sum
from chairwright.targets.target import Target

COST_STEP = 0.1
"""Step in which the cost of preferences is told apart and printed: a tenth of a figure's scale."""

ROUNDING = 1e-6
"""Taken off an unfinished set-up's grade, in printed steps, so that rounding drops nothing."""

OTHER = "cost beyond the tables"
FIRST_PIECE = 1500
"""Unfinished set-ups of a block that are finished before any others are looked at."""


@dataclass(frozen=True)
class Traded:
    """One sum that is traded off.

    Parameters
    ----------
    name : str
    sum : Sum
    step : float
        In which it is told apart and printed.
    worth : float
        How much one step counts where the search looks first; it changes no answer.
    """

    name: str
    sum: Sum
    step: float
    worth: float = 1.0


@dataclass(frozen=True)
class ChangePoint:
    """One trade-off: the printed sums, the printed cost, and a set-up that reaches them."""

    index: dict[str, int]
    sums: dict[str, float]
    cost: float


@dataclass(frozen=True)
class ChangeFront:
    """The whole front, in the order of its sums.

    Parameters
    ----------
    points : tuple of ChangePoint
        Empty when no set-up holds every must.
    looked_at : int
        Unfinished and finished set-ups that the proof took.
    """

    points: tuple[ChangePoint, ...]
    looked_at: int


class ChangeGoal:
    """Keeps what no point found so far equals or beats."""

    def __init__(
        self, prepared: Prepared, targets: Sequence[Target], traded: Sequence[Traded]
    ) -> None:
        rules = criteria(targets)
        self._judge = Judge(prepared, rules)
        self._traded = tuple(traded)
        self._allowed = prepared.space.allowed
        self.first_piece = FIRST_PIECE
        self.any_will_do = False
        self.names = rules.names
        self.hard = rules.musts
        self.asked = (*rules.musts, *rules.preferences)
        self.grades: Grades = np.empty((0, len(self._traded) + 1))
        self.indices: list[dict[str, int]] = []
        self._stairs: Staircase | None = None

    @property
    def sieve_choices(self) -> frozenset[str]:
        """See ``Goal``."""
        return self._judge.tabled_choices

    @property
    def found(self) -> bool:
        """See ``Goal``."""
        return len(self.grades) > 0

    def sieve(
        self, rows: Rows, parent: IndexArray, index: dict[str, IndexArray], choice: str
    ) -> NDArray[np.bool_]:
        """Tell which children no point found so far equals or beats.

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
        fine = self._judge.possible(index, choice)
        cost = rows[OTHER][parent] + self._judge.tabled_cost(index)
        cost += self._judge.tried_cost(rows, parent, index[choice], choice)
        fine &= cost < np.inf
        if self._stairs is None:
            return fine
        made = frozenset(rows.index) | {choice}
        sums = [
            rows[f"made {each.name}"][parent]
            + each.sum.added(rows.index, parent, choice, index[choice])
            + each.sum.still(made, self._allowed)
            for each in self._traded
        ]
        return np.asarray(fine & ~self._stairs.covers(self._graded(sums, cost, finished=False)))

    def judge(self, rows: Rows, bands: dict[str, Band]) -> NDArray[np.bool_]:
        """See ``Goal``: the priority joins the best grades still reachable."""
        made = frozenset(rows.index)
        rows[OTHER] = self._judge.other_cost(rows, bands)
        cost = rows[OTHER] + self._judge.tabled_cost(rows.index)
        for each in self._traded:
            rows[f"made {each.name}"] = each.sum.made(rows.index)
        sums = [
            rows[f"made {each.name}"] + each.sum.still(made, self._allowed) for each in self._traded
        ]
        finished = len(made) == len(CHOICES)
        self._store(rows, self._graded(sums, cost, finished=finished))
        lost = np.logical_or.reduce([~np.isfinite(cost), *self._judge.broken(rows, bands)])
        fine = np.asarray(~lost & self.still(rows))
        legs = self._judge.legs_cost(rows, fine)
        if not legs.any():
            return fine
        fine &= np.isfinite(legs)
        more = cost + np.where(np.isfinite(legs), legs, 0.0)
        self._store(rows, self._graded(sums, more, finished=finished))
        return np.asarray(fine & self.still(rows))

    def _store(self, rows: Rows, grades: Grades) -> None:
        """Keep the grades with the rows, and what is looked at first."""
        for number in range(grades.shape[1]):
            rows[f"grade {number}"] = grades[:, number]
        worth = [each.worth for each in self._traded]
        rows[PRIORITY] = grades @ np.array([*worth, 1.0])

    def _graded(self, sums: Sequence[FloatArray], cost: FloatArray, *, finished: bool) -> Grades:
        """Printed grades, those of unfinished set-ups never too high, shape (n, sums + 1)."""
        steps = [each.step for each in self._traded]
        columns = [total / step for total, step in zip(sums, steps, strict=True)]
        exact = np.stack([*columns, cost / COST_STEP], axis=1)
        return np.asarray(np.round(exact if finished else exact - ROUNDING))

    def _grades(self, rows: Rows) -> Grades:
        return np.stack([rows[f"grade {n}"] for n in range(len(self._traded) + 1)], axis=1)

    def still(self, rows: Rows) -> NDArray[np.bool_]:
        """See ``Goal``."""
        if self._stairs is None:
            return np.ones(len(rows), dtype=bool)
        return ~self._stairs.covers(self._grades(rows))

    def take(self, rows: Rows, bands: dict[str, Band]) -> None:
        """See ``Goal``."""
        if not len(rows):
            return
        new = self._grades(rows)
        kept = merged(self.grades, new)
        held = len(self.grades)
        self.indices = [
            self.indices[place]
            if place < held
            else {name: int(rows.index[name][place - held]) for name in CHOICES}
            for place in kept
        ]
        self.grades = np.concatenate([self.grades, new])[kept]
        self._stairs = Staircase(self.grades)


def find_change_front(
    space: Space, targets: Sequence[Target], traded: Sequence[Traded]
) -> ChangeFront:
    """The exact trade-off between sums and the cost of the preferences, under every must.

    Parameters
    ----------
    space : Space
    targets : sequence of Target
    traded : sequence of Traded
        At least one.

    Returns
    -------
    ChangeFront
        Empty when no set-up holds every must.
    """
    rules = criteria(targets)
    sums = [each.sum for each in traded]
    relevant = relevant_space(space, frozenset(rules.names), sums)
    prepared = Prepared(relevant).under(rules.musts)
    if prepared.space.is_empty:
        return ChangeFront((), 0)
    goal = ChangeGoal(prepared, targets, traded)
    search = Search(prepared, goal)
    search.run()
    order = np.lexsort(goal.grades.T[::-1])
    points = tuple(_point(goal, int(at), traded) for at in order)
    return ChangeFront(points, search.looked_at)


def _point(goal: ChangeGoal, at: int, traded: Sequence[Traded]) -> ChangePoint:
    *sums, cost = (float(grade) for grade in goal.grades[at])
    printed = {
        each.name: round(grade * each.step, 6) for each, grade in zip(traded, sums, strict=True)
    }
    return ChangePoint(goal.indices[at], printed, round(cost * COST_STEP, 6))
