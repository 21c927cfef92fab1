"""Smallest sets, hitting sets, undominated rows and the staircase, against their definitions."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest

from chairwright.search.dominance import Staircase, undominated
from chairwright.search.reasons import hitting_sets, smallest_sets


def test_smallest_sets_by_hand() -> None:
    assert smallest_sets([0b111, 0b011, 0b100, 0b011]) == [0b100, 0b011]
    assert smallest_sets([0b101, 0]) == [0]
    assert smallest_sets([]) == []


def test_hitting_sets_by_hand() -> None:
    # {a, b} and {b, c}: b alone, or a with c.
    assert hitting_sets([0b011, 0b110]) == [0b010, 0b101]
    assert hitting_sets([]) == []


@pytest.mark.parametrize("seed", range(20))
def test_hitting_sets_are_all_the_smallest_ones(seed: int) -> None:
    rng = np.random.default_rng(seed)
    masks = [int(mask) for mask in rng.integers(1, 64, rng.integers(1, 7))]
    hits = [h for h in range(64) if all(h & mask for mask in masks)]
    wanted = [h for h in hits if not any(o != h and o & h == o for o in hits)]
    assert sorted(hitting_sets(masks)) == wanted


@pytest.mark.parametrize("seed", range(20))
def test_hitting_the_hitting_sets_gives_the_smallest_sets_back(seed: int) -> None:
    rng = np.random.default_rng(100 + seed)
    masks = smallest_sets(int(mask) for mask in rng.integers(1, 128, 6))
    assert sorted(hitting_sets(hitting_sets(masks))) == sorted(masks)


@pytest.mark.parametrize("objectives", [2, 3])
@pytest.mark.parametrize("seed", range(10))
def test_undominated_rows(seed: int, objectives: int) -> None:
    rng = np.random.default_rng(seed)
    grades = rng.integers(0, 7, (120, objectives)).astype(float)
    kept = undominated(grades)
    wanted = {
        tuple(row)
        for row in grades
        if not ((grades <= row).all(axis=1) & (grades < row).any(axis=1)).any()
    }
    assert {tuple(grades[place]) for place in kept} == wanted
    assert len(kept) == len(wanted)
    for place in kept:  # of equals, the first
        assert place == np.nonzero((grades == grades[place]).all(axis=1))[0][0]


@pytest.mark.parametrize("objectives", [2, 3])
@pytest.mark.parametrize("seed", range(10))
def test_staircase_covers_what_some_point_equals_or_beats(seed: int, objectives: int) -> None:
    rng = np.random.default_rng(seed)
    points = rng.integers(0, 8, (9, objectives)).astype(float)
    stairs = Staircase(points)
    tried = np.array(list(product(np.arange(-1.0, 9.0, 0.5), repeat=objectives)))
    wanted = [bool((points <= row).all(axis=1).any()) for row in tried]
    assert stairs.covers(tried).tolist() == wanted
