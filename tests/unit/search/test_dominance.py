"""Undominated rows of four columns, joining a front, and staircases whose axes are thinned."""

from __future__ import annotations

import numpy as np
import pytest
from numpy.typing import NDArray

from chairwright.search import dominance
from chairwright.search.dominance import Staircase, merged, undominated

Rows = NDArray[np.float64]


def drawn(seed: int, count: int, columns: int, most: int = 6) -> Rows:
    """Whole numbers, so that equals are common."""
    return np.random.default_rng(seed).integers(0, most, (count, columns)).astype(float)


def best_rows(grades: Rows) -> set[tuple[float, ...]]:
    """The rows that no other one beats, by the definition."""
    return {
        tuple(row)
        for row in grades
        if not ((grades <= row).all(axis=1) & (grades < row).any(axis=1)).any()
    }


@pytest.mark.parametrize("chunk", [3, 7, 256])
@pytest.mark.parametrize("seed", range(6))
def test_undominated_rows_of_four_columns_in_pieces(
    seed: int, chunk: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(dominance, "CHUNK", chunk)
    grades = drawn(seed, 150, 4)
    kept = undominated(grades)
    assert {tuple(row) for row in grades[kept]} == best_rows(grades)
    assert len(kept) == len(best_rows(grades))
    assert [tuple(row) for row in grades[kept]] == sorted(best_rows(grades))
    for place in kept:  # of equals, the first
        assert place == np.nonzero((grades == grades[place]).all(axis=1))[0][0]


@pytest.mark.parametrize("columns", [2, 3, 4])
@pytest.mark.parametrize("seed", range(6))
def test_joining_a_front_is_the_front_of_both(seed: int, columns: int) -> None:
    first, second = drawn(seed, 40, columns), drawn(100 + seed, 40, columns)
    held = first[undominated(first)]
    new = second[[not (held <= row).all(axis=1).any() for row in second]]
    both = np.concatenate([held, new])
    kept = both[merged(held, new)]
    assert [tuple(row) for row in kept] == sorted(best_rows(np.concatenate([first, second])))


def test_joining_nothing_and_joining_to_nothing() -> None:
    held, nothing = np.array([[1.0, 2.0], [2.0, 1.0]]), np.empty((0, 2))
    assert merged(held, nothing).tolist() == [0, 1]
    assert merged(nothing, held[::-1]).tolist() == [1, 0]


@pytest.mark.parametrize("cells", [8, 30, 150, 10**6])
@pytest.mark.parametrize("columns", [2, 3, 4])
@pytest.mark.parametrize("seed", range(4))
def test_a_thinned_staircase_answers_as_the_points_themselves(
    seed: int, columns: int, cells: int, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(dominance, "MOST_CELLS", cells)
    monkeypatch.setattr(dominance, "MOST_COMPARED", 50)
    points = drawn(seed, 25, columns, 20)
    tried = np.concatenate([drawn(50 + seed, 400, columns, 22) - 0.5, points, points - 1.0])
    tried[::37, 0] = -np.inf  # nothing known yet of a figure
    wanted = [bool((points <= row).all(axis=1).any()) for row in tried]
    assert 0 < sum(wanted) < len(wanted)
    assert Staircase(points).covers(tried).tolist() == wanted


def test_axes_are_thinned_only_as_far_as_the_table_needs(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(dominance, "MOST_CELLS", 30)
    # Ten and four values and the value column: 11 x 5 cells are too many, 6 x 5 are not.
    many = np.arange(10.0)
    points = np.stack([many, many % 4, np.arange(100.0, 110.0)], axis=1)
    points = np.vstack([points, points + np.array([0.0, 0.0, 0.5])])
    sizes = [len(axis) for axis in Staircase(points)._axes]
    assert sorted(sizes) == [4, 5]
