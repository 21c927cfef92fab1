"""Reasons worked out side by side in processes are those found one after the other.

The latter are held against brute force (`test_search_exact`).
"""

from __future__ import annotations

import pytest

from chairwright.cli.aside import processes_aside
from chairwright.search.reasons import Correction, find_reasons

from . import drawn_targets
from .cases import draw


@pytest.mark.parametrize("most", [None, 2])
@pytest.mark.parametrize("seed", range(20))
def test_side_by_side_and_one_by_one(seed: int, most: int | None) -> None:
    case = draw(seed + 700)
    targets = drawn_targets.targets(case.rng, case.everything, 6, 2)
    wanted = find_reasons(case.space, targets, most)
    first: list[Correction] = []
    counts: list[int] = []
    with processes_aside() as apart:
        found = find_reasons(
            case.space, targets, most, progress=counts.append, apart=apart, first=first.append
        )
    assert repr(found) == repr(wanted), "as words: a missing value equals no other"
    assert repr(first) == repr(list(wanted.corrections[:1]))
    assert counts == list(range(1, len(wanted.corrections) + 1))
