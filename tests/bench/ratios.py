"""The exact search beside full enumeration and beside a general constraint solver."""

from __future__ import annotations

import time
from collections.abc import Sequence
from functools import partial

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import buildable
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.registry import FIGURES
from chairwright.line.choices import CHOICES
from chairwright.search.best import find_best
from chairwright.search.space import Space, obeyed
from chairwright.targets.target import Target
from chairwright.targets.verdict import broken, penalty
from tests.bench.clients import best_of, whole_space
from tests.bench.machine import Table, timed
from tests.oracles.cp_sat import build, solve
from tests.oracles.restricted import restricted

NAME = "avg-001"
ENUMERATED = (1_000_000, 10_000_000)
SOLVED = (100_000, 10_000_000, 1_000_000_000)
CHUNK = 200_000
GIVES_UP_S = 600.0
COLUMNS = ["set-ups", "search, s", "alternative, s", "ratio", "costs"]


def against_enumeration() -> Table:
    """Least cost by looking at every set-up with the same vectorised formulas."""
    rows = []
    for most in ENUMERATED:
        space, targets, exact, cost = _ours(most)
        start = time.perf_counter()
        every = enumerate_all(space, targets)
        taken = time.perf_counter() - start
        rows.append(_row(space.count, exact, taken, cost, every, proven=True))
    return Table(COLUMNS, rows)


def against_solver() -> Table:
    """Least cost proven by CP-SAT on two cores; building its model is not counted."""
    rows = []
    for most in SOLVED:
        space, targets, exact, cost = _ours(most)
        answer = solve(build(space, targets), GIVES_UP_S, workers=2)
        rows.append(
            _row(space.count, exact, answer.seconds, cost, answer.cost, proven=answer.proven)
        )
    return Table(COLUMNS, rows)


def _ours(most: int) -> tuple[Space, Sequence[Target], float, float]:
    whole, targets, _ = whole_space(NAME)
    space = restricted(whole, most, best_of(NAME).index)
    found = find_best(space, targets)
    cost = np.inf if found is None else found.cost
    return space, targets, timed(partial(find_best, space, targets), 5), cost


def _row(
    count: int, exact: float, other: float, cost: float, its: float, *, proven: bool
) -> list[str]:
    ratio = f"{other / exact:.0f}" if proven else f"over {other / exact:.0f}"
    return [f"{count:.1e}", f"{exact:.3f}", f"{other:.1f}", ratio, f"{cost:.4f}, {its:.4f}"]


def enumerate_all(space: Space, targets: Sequence[Target]) -> float:
    """Least cost of all set-ups, each looked at; infinite when none holds every must."""
    sizes = [len(space.allowed[name]) for name in CHOICES]
    least = np.inf
    for start in range(0, int(np.prod(sizes)), CHUNK):
        numbers = np.arange(start, min(start + CHUNK, int(np.prod(sizes))))
        places = np.unravel_index(numbers, sizes)
        index = {n: space.allowed[n][p] for n, p in zip(CHOICES, places, strict=True)}
        fine = obeyed(space.line, space.line.rules, index)
        if fine.any():
            kept = {name: array[fine] for name, array in index.items()}
            least = min(least, float(costs(space, targets, kept).min(initial=np.inf)))
    return least


def costs(
    space: Space, targets: Sequence[Target], index: dict[str, NDArray[np.intp]]
) -> NDArray[np.float64]:
    """Cost of each set-up; infinite where a must is broken or nothing stands."""
    rows, _ = realise(space.line, space.occupant, index)
    found = figures_of(rows, space.occupant, {target.figure for target in targets})
    total = np.where(buildable(rows), 0.0, np.inf)
    for target in targets:
        values = found[target.figure]
        if target.must:
            total = np.where(broken(target, values), np.inf, total)
        else:
            total = total + penalty(target, values, FIGURES[target.figure].scale)
    return total
