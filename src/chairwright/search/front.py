"""The exact trade-off front: every printed trade-off that no other set-up beats, and nothing else.

Dominance is judged on figures rounded to the digits that are printed: smaller differences mean
nothing to anybody. Each distinct point of the front comes with one set-up that reaches it, the
first in the search's fixed order.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray, Rows
from chairwright.figures.band import Band, known
from chairwright.figures.registry import FIGURES
from chairwright.line.choices import CHOICES
from chairwright.search.criteria import Criteria, Judge
from chairwright.search.dominance import Grades, Staircase, merged
from chairwright.search.engine import PRIORITY, Search
from chairwright.search.look_ahead import LookAhead
from chairwright.search.prepared import Prepared, prepare
from chairwright.search.space import Space
from chairwright.targets.target import Target

GRADE = "grade "


@dataclass(frozen=True)
class Objective:
    """A figure to trade off.

    Parameters
    ----------
    figure : str
    sense : {"min", "max"}
    """

    figure: str
    sense: Literal["min", "max"]


@dataclass(frozen=True)
class FrontPoint:
    """One trade-off: the figures as printed, and a set-up that reaches them."""

    index: dict[str, int]
    values: dict[str, float]


@dataclass(frozen=True)
class Front:
    """The whole front, in the order of its first objective.

    Parameters
    ----------
    points : tuple of FrontPoint
    looked_at : int
        Unfinished and finished set-ups that the proof took.
    """

    points: tuple[FrontPoint, ...]
    looked_at: int


FIRST_PIECE = 3000


class FrontGoal:
    """Keeps what no front point found so far equals or beats."""

    def __init__(
        self, prepared: Prepared, musts: tuple[Target, ...], aims: Sequence[Objective]
    ) -> None:
        self._judge = Judge(prepared, Criteria(musts, ()))
        self._aims = tuple(aims)
        self.hard = musts
        self.first_piece = FIRST_PIECE
        self.any_will_do = False
        aimed = {aim.figure for aim in aims}
        self.asked = tuple(must for must in musts if must.figure not in aimed)
        self.names = tuple(dict.fromkeys([t.figure for t in musts] + [a.figure for a in aims]))
        self._tables = {
            number: _graded(table, aim)
            for number, aim in enumerate(self._aims)
            if (table := prepared.look_ahead(aim.figure)) is not None
        }
        self.grades: Grades = np.empty((0, len(self._aims)))
        self.indices: list[dict[str, int]] = []
        self._stairs: Staircase | None = None

    @property
    def sieve_choices(self) -> frozenset[str]:
        """See ``Goal``."""
        choices = (table.depends for table in self._tables.values())
        return self._judge.tabled_choices.union(*choices)

    @property
    def found(self) -> bool:
        """See ``Goal``."""
        return len(self.grades) > 0

    def sieve(
        self, rows: Rows, parent: IndexArray, index: dict[str, IndexArray], choice: str
    ) -> NDArray[np.bool_]:
        """Tell which children no front point found so far equals or beats.

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
        fine &= self._judge.tried_cost(rows, parent, index[choice], choice) < np.inf
        if self._stairs is None or all(choice not in t.depends for t in self._tables.values()):
            return fine
        grades = self._grades(rows)[parent]
        for number, table in self._tables.items():
            grades[:, number] = table.least(f"{GRADE}{self._aims[number]}", index)
        return np.asarray(fine & ~self._stairs.covers(grades))

    def judge(self, rows: Rows, bands: dict[str, Band]) -> NDArray[np.bool_]:
        """See ``Goal``: the priority is the sum of the best grades still reachable.

        A grade that is infinite or NaN tells that the set-up has no such figure.
        """
        for number, aim in enumerate(self._aims):
            table = self._tables.get(number)
            rows[f"{GRADE}{number}"] = (
                table.least(f"{GRADE}{aim}", rows.index)
                if table is not None
                else _grade(aim, bands.get(aim.figure), len(rows))
            )
        grades = self._grades(rows)
        rows[PRIORITY] = np.where(np.isfinite(grades), grades, 0.0).sum(axis=1)
        lost = np.logical_or.reduce(
            [~(grades < np.inf).all(axis=1), *self._judge.broken(rows, bands)]
        )
        fine = np.asarray(~lost & self.still(rows))
        return np.asarray(fine & np.isfinite(self._judge.legs_cost(rows, fine)))

    def _grades(self, rows: Rows) -> Grades:
        return np.stack([rows[f"{GRADE}{n}"] for n in range(len(self._aims))], axis=1)

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


def _grade(aim: Objective, band: Band | None, count: int) -> NDArray[np.float64]:
    """Best printed grade still reachable, in steps of the figure's resolution."""
    if band is None:
        return np.full(count, -np.inf)
    step = FIGURES[aim.figure].resolution
    best = -band.high if aim.sense == "max" else band.low
    certain = band.low is band.high
    return np.round(best / step) if certain else np.round(best / step - ROUNDING)


def _graded(table: LookAhead, aim: Objective) -> LookAhead:
    table.tabulate(f"{GRADE}{aim}", _grade(aim, known(table.values), len(table.values)))
    return table


ROUNDING = 1e-6
"""Taken off an unfinished set-up's grade, in printed steps, so that rounding drops nothing."""


def find_front(
    space: Space | Prepared, targets: Sequence[Target], objectives: Sequence[Objective]
) -> Front:
    """The exact trade-off front of a space under its musts.

    Parameters
    ----------
    space : Space or Prepared
    targets : sequence of Target
        Preferences are ignored.
    objectives : sequence of Objective
        Two or more figures; a set-up without one of them is left out.

    Returns
    -------
    Front
        Empty when no set-up holds every must.
    """
    musts = tuple(target for target in targets if target.must)
    names = frozenset([must.figure for must in musts] + [aim.figure for aim in objectives])
    prepared = prepare(space).relevant(names).under(musts)
    if prepared.space.is_empty:
        return Front((), 0)
    goal = FrontGoal(prepared, musts, objectives)
    search = Search(prepared, goal)
    search.run()
    points = tuple(
        FrontPoint(index, _values(goal_grades, objectives))
        for index, goal_grades in zip(goal.indices, goal.grades, strict=True)
    )
    return Front(points, search.looked_at)


def _values(grades: NDArray[np.float64], objectives: Sequence[Objective]) -> dict[str, float]:
    return {
        aim.figure: round(
            float(-grade if aim.sense == "max" else grade) * FIGURES[aim.figure].resolution,
            FIGURES[aim.figure].digits,
        )
        for aim, grade in zip(objectives, grades, strict=True)
    }
