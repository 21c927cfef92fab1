"""The trade-off front of four figures against every set-up of a small line.

The front must hold every printed vector that no other one beats, and nothing else; each point's
set-up must hold every must and reach the point's figures.
"""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures.registry import FIGURES
from chairwright.search import dominance
from chairwright.search.front import Objective, find_front
from chairwright.targets.target import Target

from . import brute_force, drawn_targets
from .cases import PIECES, Case, draw, in_pieces

CELLS = (10, 200, 2_000_000)
"""Sizes of the table of the front: small ones thin its axes, as a long front does."""


@pytest.mark.parametrize("seed", range(2000, 2060))
def test_front_of_four_figures(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    in_pieces(monkeypatch, PIECES[seed % len(PIECES)])
    monkeypatch.setattr(dominance, "MOST_CELLS", CELLS[seed % len(CELLS)])
    case = draw(seed)
    targets = drawn_targets.targets(case.rng, case.everything, int(case.rng.integers(0, 3)), 1)
    aims = drawn_targets.aims(case.rng, case.everything, 4)
    assert len(aims) == 4
    same_front(case, targets, aims)


def test_four_figures_that_pull_apart_make_a_long_front() -> None:
    case = draw(2102)
    aims = [("tip_rear_locked_deg", "max"), ("tip_forward_deg", "max"),
            ("turning_diameter_mm", "min"), ("chair_mass_kg", "min")]  # fmt: skip
    assert same_front(case, [], aims) > 100


def same_front(case: Case, targets: list[Target], aims: list[tuple[str, str]]) -> int:
    """Compare both fronts; return the number of points."""
    objectives = [Objective(name, sense) for name, sense in aims]  # type: ignore[arg-type]
    points = find_front(case.space, targets, objectives).points
    wanted = brute_force.front(case.everything, targets, aims)
    found = [
        tuple(
            float(np.round(point.values[name] / FIGURES[name].resolution))
            * (-1.0 if sense == "max" else 1.0)
            for name, sense in aims
        )
        for point in points
    ]
    assert len(set(found)) == len(found)
    assert set(found) == wanted
    holding = brute_force.holding(case.everything, targets)
    for point in points:
        at = case.everything.place(point.index)
        assert holding[at]
        for name, value in point.values.items():
            half = 0.5001 * FIGURES[name].resolution
            assert value == pytest.approx(case.everything.figures[name][at], abs=half)
    return len(points)
