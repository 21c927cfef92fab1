"""Figures of few choices, tabulated once: what an unfinished set-up can still reach of them."""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np

from chairwright.chair.rows import IndexArray, Rows
from chairwright.chair.steps import STEPS
from chairwright.figures.band import Band, known
from chairwright.figures.evaluate import figures_of
from chairwright.figures.registry import FIGURES
from chairwright.mass_points import FloatArray
from chairwright.search.grid import Grid
from chairwright.search.space import Space


class LookAhead:
    """One figure over the grid of the choices it depends on.

    Parameters
    ----------
    space : Space
    name : str
        A figure whose ``depends`` is not empty.
    """

    def __init__(self, space: Space, name: str) -> None:
        self.grid = Grid(space, FIGURES[name].depends)
        rows = self.grid.realised(space)
        self.values = figures_of(rows, space.occupant, [name])[name]
        """The figure at the grid points."""

    @property
    def depends(self) -> tuple[str, ...]:
        """Choices that the figure depends on."""
        return self.grid.choices

    def tabulate(self, key: str, costs: FloatArray) -> None:
        """Store a cost for each grid point, shape (grid points,)."""
        self.grid.tabulate(key, costs)

    def least(self, key: str, index: Mapping[str, IndexArray]) -> FloatArray:
        """Least cost that set-ups can still reach, shape (n,).

        Parameters
        ----------
        key : str
        index : mapping of str to ndarray of int, shape (n,)
            Choices made.
        """
        return self.grid.least(key, index)


class OptionLookAhead:
    """Least cost over the options of one open choice, tried one by one on the rows themselves.

    For figures that wait for nothing but that choice once the rows have come far enough.

    Parameters
    ----------
    space : Space
    name : str
        The figure.
    """

    def __init__(self, space: Space, name: str) -> None:
        self._space = space
        self._choice = FIGURES[name].after
        self._step = next(step for step in STEPS if step.choices == (self._choice,))
        formula = FIGURES[name].exact
        if formula is None:
            raise ValueError(name)
        self._formula = formula

    def least(self, rows: Rows, cost: Callable[[Band], FloatArray], key: str) -> FloatArray:
        """Least cost that rows can still reach.

        Parameters
        ----------
        rows : Rows, shape (n,)
        cost : callable
            From a band of the figure to its cost, shape (n,).
        key : str
            Column under which the answer is carried with the rows.

        Returns
        -------
        ndarray, shape (n,)
        """
        if self._choice in rows.index:
            return cost(known(self._formula(rows, self._space.occupant)))
        if key not in rows.columns:
            least = np.full(len(rows), np.inf)
            for option in self._space.allowed[self._choice]:
                trial = rows.tried(self._choice, int(option))
                self._step.follow(trial, self._space.occupant)
                value = self._formula(trial, self._space.occupant)
                least = np.minimum(least, cost(known(value)))
            rows[key] = least
        return rows[key]
