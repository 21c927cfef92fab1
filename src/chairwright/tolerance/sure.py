"""Which set-ups of many hold musts with their spread: each question asked once."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import IndexArray
from chairwright.figures.registry import FIGURES
from chairwright.figures.terms import TERMS
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.places.model import Surroundings
from chairwright.targets.target import Target
from chairwright.targets.verdict import verdict_of_ends
from chairwright.tolerance.of_setup import tolerance_of


class SureTest:
    """Tells of complete set-ups whether musts hold with their spread.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    musts : sequence of Target
    surroundings : Surroundings or None

    Notes
    -----
    The word is that of a set-up looked at by itself. A must whose figure hangs on few choices is
    looked at once for each of their combinations, and such musts first.
    """

    def __init__(
        self,
        line: Line,
        occupant: Occupant,
        musts: Sequence[Target],
        surroundings: Surroundings | None = None,
    ) -> None:
        self._line = line
        self._occupant = occupant
        self._surroundings = surroundings
        touching = {must: _touching(must, line) for must in musts}
        self._touching = dict(sorted(touching.items(), key=lambda each: len(each[1])))
        self._known: dict[tuple[Target, tuple[int, ...]], bool] = {}

    def of(self, index: Mapping[str, IndexArray]) -> NDArray[np.bool_]:
        """Which set-ups hold every must with its spread, shape (n,).

        Parameters
        ----------
        index : mapping of str to ndarray of int, shape (n,)
            Option position of every choice; each set-up is buildable.
        """
        fine = np.ones(len(next(iter(index.values()))), dtype=bool)
        for must, choices in self._touching.items():
            left = np.nonzero(fine)[0]
            if not len(left):
                break
            fine[left] = self._must(must, choices, {n: each[left] for n, each in index.items()})
        return fine

    def first(self, index: Mapping[str, IndexArray]) -> int | None:
        """The first set-up, in the order given, that holds every must; None when none does."""
        count = len(next(iter(index.values())))
        start, size = 0, 1
        while start < count:
            found = self.of({name: each[start : start + size] for name, each in index.items()})
            if found.any():
                return start + int(np.argmax(found))
            start, size = start + size, min(size * 4, 4096)
        return None

    def holds(self, must: Target, row: Mapping[str, int]) -> bool:
        """Whether one set-up holds one must with its spread."""
        tolerance = tolerance_of(self._line, self._occupant, row, (), [must], self._surroundings)
        value = tolerance.values[must.figure]
        if math.isnan(value):
            return False
        return verdict_of_ends(must, value, tolerance.halves(0)).word == "holds"

    def _must(
        self, must: Target, choices: tuple[str, ...], index: Mapping[str, IndexArray]
    ) -> NDArray[np.bool_]:
        if not choices:
            first = {name: int(each[0]) for name, each in index.items()}
            return np.full(len(index["fork"]), self._ask(must, (), first))
        table = np.stack([index[name] for name in choices], axis=1)
        combinations, where, which = np.unique(
            table, axis=0, return_index=True, return_inverse=True
        )
        found = [
            self._ask(
                must, tuple(int(at) for at in each), {n: int(a[row]) for n, a in index.items()}
            )
            for each, row in zip(combinations, where, strict=True)
        ]
        return np.array(found)[which.reshape(-1)]

    def _ask(self, must: Target, key: tuple[int, ...], row: Mapping[str, int]) -> bool:
        asked = must, key
        if asked not in self._known:
            self._known[asked] = self.holds(must, row)
        return self._known[asked]


def _touching(must: Target, line: Line) -> tuple[str, ...]:
    """Choices that can change a figure or its spread, in the line's order."""
    term = TERMS.get(must.figure)
    if term is not None:
        return tuple(n for n in CHOICES if len(np.unique(line.column(n, term.key))) > 1)
    figure = FIGURES[must.figure]
    touched = frozenset(CHOICES) if figure.exact is None else figure.touched_by
    return tuple(name for name in CHOICES if name in touched)
