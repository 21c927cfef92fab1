"""A few choices tabulated once: what holds of an unfinished set-up, whatever is still chosen."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Mapping

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray, Rows
from chairwright.figures.evaluate import realise
from chairwright.line.choices import CHOICES
from chairwright.mass_points import FloatArray
from chairwright.search.space import Limit, Space, obeyed

Columns = Mapping[str, FloatArray]
Known = dict[Hashable, Columns]


class Grid:
    """The grid over all allowed options of a few choices.

    Parameters
    ----------
    space : Space
    choices : iterable of str
    """

    def __init__(self, space: Space, choices: Iterable[str]) -> None:
        wanted = frozenset(choices)
        self.choices = tuple(name for name in CHOICES if name in wanted)
        self._shape = tuple(len(space.line.choices[name].options) for name in self.choices)
        self._allowed = tuple(space.allowed[name] for name in self.choices)
        axes = np.meshgrid(*self._allowed, indexing="ij")
        self._place = tuple(axis.ravel() for axis in axes)
        self.index = dict(zip(self.choices, self._place, strict=True))
        rules = [rule for rule in space.line.rules if rule.choices <= wanted]
        self._open = obeyed(space.line, rules, self.index)
        for limit in space.limits:
            self._open &= self._within(limit)
        self._least: dict[tuple[str, tuple[str, ...]], FloatArray] = {}
        self._values: dict[str, FloatArray] = {}
        self._asked: tuple[list[IndexArray], IndexArray] = [], np.empty(0, dtype=np.intp)

    def __len__(self) -> int:
        """Return the number of grid points."""
        return len(self._open)

    def _within(self, limit: Limit) -> NDArray[np.bool_]:
        """Grid points that go with some option of a limit's other choices."""
        shared = [name for name in limit.choices if name in self.index]
        if not shared:
            return np.ones(len(self._open), dtype=bool)
        rest = tuple(at for at, name in enumerate(limit.choices) if name not in shared)
        holds = np.asarray(limit.holds.any(axis=rest))
        return np.asarray(holds[tuple(self.index[name] for name in shared)])

    def marked(self, holds: NDArray[np.bool_]) -> NDArray[np.bool_]:
        """Grid points that are open and marked, over all options of the choices.

        Parameters
        ----------
        holds : ndarray of bool, shape (grid points,)
        """
        table = np.zeros(self._shape, dtype=bool)
        table[self._place] = self._open & holds
        return table

    def marked_points(self) -> NDArray[np.bool_]:
        """Grid points that rules and limits leave, shape (grid points,)."""
        return self._open.copy()

    def realised(self, space: Space) -> Rows:
        """Set-ups at the grid points, every other choice at its first allowed option."""
        rest = {name: np.full(len(self), options[0]) for name, options in space.allowed.items()}
        rows, _ = realise(space.line, space.occupant, {**rest, **self.index})
        return rows

    def tabulate(self, key: str, values: FloatArray) -> None:
        """Store one value for each grid point under a key.

        Parameters
        ----------
        key : str
        values : ndarray, shape (grid points,)
            NaN marks a point without a value; it counts as impossible.
        """
        kept = np.where(self._open & ~np.isnan(values), values, np.inf)
        self._values[key] = kept.reshape([len(options) for options in self._allowed])

    def least(self, key: str, index: Mapping[str, IndexArray]) -> FloatArray:
        """Least value that set-ups can still reach; infinite when none is possible.

        Parameters
        ----------
        key : str
        index : mapping of str to ndarray of int, shape (n,)
            Choices made.

        Returns
        -------
        ndarray, shape (n,)
        """
        made = tuple(name for name in self.choices if name in index)
        reduced = self._least.get((key, made))
        if reduced is None:
            reduced = self._least[(key, made)] = self._reduced(key, made)
        if not made:
            return np.full(len(next(iter(index.values()))), float(reduced[0]))
        return reduced.take(self._cells(index, made))

    def _cells(self, index: Mapping[str, IndexArray], names: tuple[str, ...]) -> IndexArray:
        """Flat place in the tables over the choices made; the last is kept for the next table."""
        places = [index[name] for name in names]
        asked, cells = self._asked
        if len(asked) == len(places) and all(a is b for a, b in zip(asked, places, strict=True)):
            return cells
        sizes = [self._shape[self.choices.index(name)] for name in names]
        cells = places[0]
        for place, size in zip(places[1:], sizes[1:], strict=True):
            cells = cells * size + place
        self._asked = places, cells
        return cells

    def _reduced(self, key: str, made: tuple[str, ...]) -> FloatArray:
        """Least over the open choices, over all options of the choices made, as one flat table."""
        still = tuple(at for at, name in enumerate(self.choices) if name not in made)
        least = np.asarray(self._values[key].min(axis=still))
        kept = [at for at in range(len(self.choices)) if at not in still]
        if not kept:
            return least.ravel()
        table = np.full([self._shape[at] for at in kept], np.inf)
        table[np.ix_(*(self._allowed[at] for at in kept))] = least
        return table.ravel()


class EndsTable:
    """Low and high end of some columns over a grid.

    Parameters
    ----------
    space : Space
    choices : iterable of str
    """

    def __init__(self, space: Space, choices: Iterable[str]) -> None:
        self.grid = Grid(space, choices)

    def tabulate_all(
        self, space: Space, what: Hashable, columns: Callable[[Rows], Columns], known: Known
    ) -> None:
        """Store the columns that follow at the grid points.

        Parameters
        ----------
        space : Space
        what : hashable
            What the columns are, in ``known``.
        columns : callable
            From the set-ups at the grid points to columns by key, shape (grid points,) each;
            they hang on the grid's choices alone.
        known : dict
            Columns worked out before on grids of the same options, for the same line and
            occupant.
        """
        key = (what, *(space.allowed[choice].tobytes() for choice in self.grid.choices))
        if key not in known:
            known[key] = columns(self.grid.realised(space))
        for name, values in known[key].items():
            self.tabulate(name, values)

    def tabulate(self, key: str, values: FloatArray) -> None:
        """Store one column, shape (grid points,)."""
        self.grid.tabulate(f"{key} low", values)
        self.grid.tabulate(f"{key} high", -values)

    def ends(self, key: str, index: Mapping[str, IndexArray]) -> tuple[FloatArray, FloatArray]:
        """Low and high end of a column for unfinished set-ups, shape (n,) each.

        Parameters
        ----------
        key : str
        index : mapping of str to ndarray of int, shape (n,)

        Returns
        -------
        tuple of ndarray
            NaN where nothing is possible any more.
        """
        low = self.grid.least(f"{key} low", index)
        high = -self.grid.least(f"{key} high", index)
        possible = np.isfinite(low)
        if possible.all():
            return low, high
        return np.where(possible, low, np.nan), np.where(possible, high, np.nan)
