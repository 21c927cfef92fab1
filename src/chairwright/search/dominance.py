"""Which of many grades no other one beats, and which some point of a front equals or beats.

A grade is a row of numbers of which less is better, in every column.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray

Grades = NDArray[np.float64]
"""Objectives in printed steps, less is better, shape (n, objectives)."""

CHUNK = 256
"""Rows compared with each other at once."""

MOST_CELLS = 2_000_000
"""Cells of a staircase's table; where there would be more, its axes are thinned."""

MOST_COMPARED = 4_000_000
"""Grades times points that are compared at once."""


def undominated(grades: Grades) -> IndexArray:
    """Positions of the distinct rows that no other row beats; of equals, the first.

    Parameters
    ----------
    grades : ndarray, shape (n, objectives)
        Less is better.

    Returns
    -------
    ndarray of int
        In lexicographic order of their grades.
    """
    distinct, first = np.unique(grades, axis=0, return_index=True)
    kept = np.zeros(len(distinct), dtype=bool)
    for start in range(0, len(distinct), CHUNK):
        part = np.arange(start, min(start + CHUNK, len(distinct)))
        # What beats a row comes before it in lexicographic order.
        part = part[~_covered(distinct[part], distinct[:start][kept[:start]])]
        rows = distinct[part]
        beaten = (rows[None, :, :] <= rows[:, None, :]).all(axis=2).sum(axis=1) > 1
        kept[part[~beaten]] = True
    return np.asarray(first[kept], dtype=np.intp)


def merged(held: Grades, new: Grades) -> IndexArray:
    """Which rows stay of a front and of what is to join it.

    Parameters
    ----------
    held : ndarray, shape (n, objectives)
        Distinct rows of which none beats another.
    new : ndarray, shape (m, objectives)
        Rows that no row of ``held`` equals or beats.

    Returns
    -------
    ndarray of int
        Positions in ``held`` followed by ``new``, in lexicographic order of their grades; of
        equals, the first.
    """
    joins = undominated(new)
    stays = np.nonzero(~_covered(held, new[joins]))[0]
    place = np.concatenate([stays, joins + len(held)])
    grades = np.concatenate([held[stays], new[joins]])
    return np.asarray(place[np.lexsort(grades.T[::-1])], dtype=np.intp)


def _covered(grades: Grades, points: Grades) -> NDArray[np.bool_]:
    """Which grades some point equals or beats, each compared with each, shape (n,)."""
    found = np.zeros(len(grades), dtype=bool)
    size = max(1, MOST_COMPARED // max(1, points.size))
    for start in range(0, len(grades), size):
        part = slice(start, start + size)
        beaten = np.ones((len(grades[part]), len(points)), dtype=bool)
        for axis in range(grades.shape[1]):
            beaten &= points[None, :, axis] <= grades[part, None, axis]
        found[part] = beaten.any(axis=1)
    return found


class Staircase:
    """Answers quickly whether some front point is at least as good as a grade.

    A table over all columns but one holds the least of that one among the points that are at
    least as good in the others. Its axes are the values that the points have. Where that makes
    too large a table, every so many values are taken for one step: then a table that moves the
    points up to the next step tells which grades are surely covered, one that moves them down
    which surely are not, and the few between are compared with the points themselves.

    Parameters
    ----------
    grades : ndarray, shape (points, objectives)
        At least one point.
    """

    def __init__(self, grades: Grades) -> None:
        values = [np.unique(column) for column in grades.T]
        self._order = np.argsort([len(each) for each in values], kind="stable")
        self._points = grades[:, self._order]
        axes = [values[number] for number in self._order[:-1]]
        self._axes = _thinned(axes)
        whole = all(len(a) == len(b) for a, b in zip(axes, self._axes, strict=True))
        self._surely = self._table("left")
        self._perhaps = None if whole else self._table("right")

    def _table(self, side: str) -> Grades:
        table = np.full(tuple(len(axis) + 1 for axis in self._axes), np.inf)
        place = tuple(
            np.searchsorted(axis, self._points[:, number], side="left") + 1
            if side == "left"
            else np.searchsorted(axis, self._points[:, number], side="right")
            for number, axis in enumerate(self._axes)
        )
        np.minimum.at(table, place, self._points[:, -1])
        for number in range(table.ndim):
            np.minimum.accumulate(table, axis=number, out=table)
        return table

    def covers(self, grades: Grades) -> NDArray[np.bool_]:
        """Which grades some point of the front equals or beats, shape (n,)."""
        tried = grades[:, self._order]
        place = tuple(
            np.searchsorted(axis, tried[:, number], side="right")
            for number, axis in enumerate(self._axes)
        )
        covered = np.asarray(self._surely[place] <= tried[:, -1])
        if self._perhaps is not None:
            open_still = np.nonzero(~covered & (self._perhaps[place] <= tried[:, -1]))[0]
            covered[open_still] = _covered(tried[open_still], self._points)
        return covered


def _thinned(axes: list[Grades]) -> list[Grades]:
    """The axes of a table, every so many values left out, the last one kept."""
    steps = [1] * len(axes)

    def count(number: int) -> int:
        return -(-len(axes[number]) // steps[number]) + 1

    while np.prod([float(count(number)) for number in range(len(axes))]) > MOST_CELLS:
        steps[max(range(len(axes)), key=count)] += 1
    return [axis[::-1][::step][::-1] for axis, step in zip(axes, steps, strict=True)]
