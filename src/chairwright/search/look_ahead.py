"""Figures of few choices, tabulated once: what an unfinished set-up can still reach of them."""

from __future__ import annotations

from collections.abc import Hashable, Iterator, Mapping

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import buildable
from chairwright.chair.rows import IndexArray, Rows
from chairwright.chair.steps import STEPS
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
    known : dict
        Values worked out before on grids of the same options, for the same line and occupant.
    """

    def __init__(self, space: Space, name: str, known: dict[Hashable, FloatArray]) -> None:
        self.grid = Grid(space, FIGURES[name].depends)
        key = (name, *(space.allowed[choice].tobytes() for choice in self.grid.choices))
        if key not in known:
            rows = self.grid.realised(space)
            known[key] = figures_of(rows, space.occupant, [name])[name]
        self.values = known[key]
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
    """A figure that waits for one late choice alone, tried option by option on the rows.

    Parameters
    ----------
    space : Space
    name : str
        The figure.
    """

    def __init__(self, space: Space, name: str) -> None:
        self._space = space
        self.choice = FIGURES[name].after
        """The choice that the figure waits for."""
        self._step = next(step for step in STEPS if step.choices == (self.choice,))
        formula = FIGURES[name].exact
        if formula is None:
            raise ValueError(name)
        self._formula = formula
        self._size = len(space.line.choices[self.choice].options)

    def trials(self, rows: Rows) -> Iterator[tuple[int, Rows, FloatArray, NDArray[np.bool_]]]:
        """Try each allowed option of the choice on all rows.

        Parameters
        ----------
        rows : Rows, shape (n,)

        Yields
        ------
        tuple
            The option's position, the rows with it, the figure, and whether the chair stands.
        """
        for option in self._space.allowed[self.choice]:
            trial = rows.tried(self.choice, int(option))
            self._step.follow(trial, self._space.occupant)
            yield int(option), trial, self._formula(trial, self._space.occupant), buildable(trial)

    def values(self, rows: Rows) -> tuple[FloatArray, NDArray[np.bool_]]:
        """The figure with every option, and whether the chair then stands.

        Parameters
        ----------
        rows : Rows, shape (n,)

        Returns
        -------
        tuple of ndarray, shape (n, all options of the choice) each
            Options that are not allowed do not stand.
        """
        figure = np.full((len(rows), self._size), np.nan)
        stands = np.zeros(figure.shape, dtype=bool)
        for option, _, values, fine in self.trials(rows):
            figure[:, option], stands[:, option] = values, fine
        return figure, stands
