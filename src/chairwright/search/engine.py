"""Branch and bound over choices, in blocks of arrays: exact, with bounded memory.

Set-ups grow choice by choice. After each choice a goal drops every unfinished set-up that it can
prove useless from the ends of its figures. Nothing is sampled: what is not dropped is finished.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable
from typing import Any, Protocol

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import buildable
from chairwright.chair.rows import IndexArray, Rows
from chairwright.chair.steps import STEPS
from chairwright.figures.band import Band
from chairwright.figures.registry import FIGURES
from chairwright.search.bands import Bands
from chairwright.search.criteria import broken
from chairwright.search.geometry import running_gears
from chairwright.search.prepared import Prepared
from chairwright.search.space import obeyed
from chairwright.targets.target import Target

LARGEST_GROWN = 200_000
FEW = 4000
"""So few unfinished set-ups grow on unjudged: to judge them costs more than to take them along.
Of 1000 to 8000, what the example clients took the least time with."""
PRIORITY = "priority"
RANK = "rank"
"""Place of an unfinished set-up in the line's order: among equals the first is taken first, so
that the winner of ties is found early and the rest falls at once."""

Progress = Callable[[int, int], None]


class Goal(Protocol):
    """What a search is after."""

    names: tuple[str, ...]
    first_piece: int
    """Unfinished set-ups of a block that are finished before any others are looked at."""
    hard: tuple[Target, ...]
    """Musts that may be cut at once; empty when broken musts are themselves of interest."""
    any_will_do: bool
    """Whether the first finished set-up ends the search."""
    asked: tuple[Target, ...]
    """Targets that are all the goal wants to know of their figures; other figures are wanted
    themselves."""

    @property
    def sieve_choices(self) -> frozenset[str]:
        """Choices that ``sieve`` wants to see."""

    @property
    def found(self) -> bool:
        """Whether a finished set-up has been accepted, so that whole blocks can be dropped."""

    def sieve(
        self, rows: Rows, parent: IndexArray, index: dict[str, IndexArray], choice: str
    ) -> NDArray[np.bool_]:
        """Tell by option positions alone which children of ``rows`` may still matter.

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

    def judge(self, rows: Rows, bands: dict[str, Band]) -> NDArray[np.bool_]:
        """Set ``rows[PRIORITY]`` (least first) and tell which rows may still matter."""

    def still(self, rows: Rows) -> NDArray[np.bool_]:
        """Tell again, by what ``judge`` stored, which rows may still matter."""

    def take(self, rows: Rows, bands: dict[str, Band]) -> None:
        """Accept finished set-ups."""


class Search:
    """One run of the engine for one goal.

    Parameters
    ----------
    prepared : Prepared
    goal : Goal
    """

    def __init__(self, prepared: Prepared, goal: Goal) -> None:
        self._prepared = prepared
        self._space = prepared.space
        self._goal = goal
        self._sizes = {name: len(c.options) for name, c in prepared.space.line.choices.items()}
        self._bands = Bands(prepared, goal.names, goal.asked, goal.hard)
        self._telling = {level for level in range(len(STEPS)) if self._tells(level)}
        self.looked_at = 0
        """Unfinished and finished set-ups evaluated."""

    def run(self) -> None:
        """Look at everything that can matter."""
        any_will_do = self._goal.any_will_do
        gears = running_gears(self._space, self._goal.hard, few=any_will_do)
        begun = (self._judged(rows, 0) for rows in gears)
        worth: Iterable[Rows] = (rows for rows in begun if len(rows))
        if not any_will_do:
            worth = sorted(worth, key=lambda rows: float(rows[PRIORITY].min()))
        for rows in worth:
            self._descend(0, rows)
            if any_will_do and self._goal.found:
                return

    def _judged(self, rows: Rows, level: int) -> Rows:
        self.looked_at += len(rows)
        if level == 0:
            self._rank(rows)
        rows, quick = self._sifted(rows, level)
        if not len(rows):
            return rows
        bands = self._bands.of(rows, level, quick)
        keep = self._goal.judge(rows, bands)
        if level == len(STEPS) - 1:
            self._goal.take(_only(rows, keep), {n: _sift(b, keep) for n, b in bands.items()})
        return _only(rows, keep)

    def _sifted(self, rows: Rows, level: int) -> tuple[Rows, dict[str, Band]]:
        """Drop what cannot stand or breaks a hard must, before dearer figures are worked out."""
        bands = self._bands.quick(rows, level)
        keep = buildable(rows)
        for must in self._goal.hard:
            if must.figure in bands:
                keep &= ~broken(must, bands[must.figure])
        if keep.all():
            return rows, bands
        return rows.take(keep), {name: _sift(band, keep) for name, band in bands.items()}

    def _rank(self, rows: Rows) -> None:
        place: NDArray[Any] = np.zeros(len(rows), dtype=np.int64)
        for name in STEPS[0].choices:
            place = _ranked(place, rows.index[name], self._sizes[name])
        rows.columns[RANK] = place

    def _descend(self, level: int, rows: Rows) -> None:
        if level == len(STEPS) - 1:
            return
        order = np.lexsort((rows.columns[RANK], rows[PRIORITY]))
        start, size = 0, self._goal.first_piece
        largest = max(1, LARGEST_GROWN // self._branches(level + 1))
        while start < len(rows):
            part = order[start : start + size]
            start, size = start + size, min(size * 8, largest)
            part = part[self._goal.still(rows)[part]]
            if len(part):
                reached, grown = self._grow(level + 1, rows.take(part))
                if len(grown):
                    self._descend(reached, grown)

    def _branches(self, level: int) -> int:
        """Children of one unfinished set-up."""
        return math.prod(len(self._space.allowed[name]) for name in STEPS[level].choices)

    def _grow(self, level: int, rows: Rows) -> tuple[int, Rows]:
        """Make the next choice, and those after it that leave nothing to choose or to tell."""
        while True:
            step = STEPS[level]
            if step.choices:
                rows = self._children(rows, step.choices[0])
            if not len(rows):
                return level, rows
            rows.load(step.follow(rows, self._space.occupant))
            if level in self._telling and self._worth_judging(rows, level):
                return level, self._judged(rows, level)
            level += 1

    @staticmethod
    def _worth_judging(rows: Rows, level: int) -> bool:
        """Whether rows are many; always where no choice is made, and once they are finished."""
        return len(rows) > FEW or not STEPS[level].choices or level == len(STEPS) - 1

    def _tells(self, level: int) -> bool:
        """Whether there is a choice at a level, or something is settled by it."""
        step, last = STEPS[level], len(STEPS) - 1
        settled = any(FIGURES[name].after in step.choices for name in self._goal.names)
        return settled or self._branches(level) > 1 or not step.choices or level == last

    def _children(self, rows: Rows, choice: str) -> Rows:
        """Each row with each option of a choice that may still matter."""
        options = self._space.allowed[choice]
        parent = np.repeat(np.arange(len(rows)), len(options))
        option = np.tile(options, len(rows))
        keep = self._sieve(rows, parent, option, choice)
        parent, option = parent[keep], option[keep]
        grown = rows.take(parent)
        grown.index[choice] = option
        grown.columns[RANK] = _ranked(rows.columns[RANK][parent], option, self._sizes[choice])
        return grown

    def _sieve(
        self, rows: Rows, parent: IndexArray, option: IndexArray, choice: str
    ) -> NDArray[np.bool_]:
        """Rules and tabled musts that the new choice settles, before any column is copied."""
        made = {*rows.index, choice}
        rules = [
            rule
            for rule in self._space.line.rules
            if rule.choices <= made and choice in rule.choices
        ]
        limits = [
            limit
            for limit in self._space.limits
            if choice in limit.choices and made.issuperset(limit.choices)
        ]
        needed = frozenset[str]().union(
            self._goal.sieve_choices,
            *(rule.choices for rule in rules),
            *(limit.choices for limit in limits),
        )
        index = {name: rows.index[name][parent] for name in needed & set(rows.index)}
        index[choice] = option
        fine = self._goal.sieve(rows, parent, index, choice)
        for limit in limits:
            fine &= limit.of(index)
        return fine & obeyed(self._space.line, rules, index)


def _ranked(place: NDArray[Any], option: IndexArray, size: int) -> NDArray[Any]:
    return np.asarray(place * size + option, dtype=np.int64)


def _only(rows: Rows, keep: NDArray[np.bool_]) -> Rows:
    return rows if keep.all() else rows.take(keep)


def _sift(band: Band, keep: NDArray[np.bool_]) -> Band:
    low = band.low[keep]
    return Band(low, low if band.low is band.high else band.high[keep])
