"""The exact search beside full enumeration and beside a general constraint solver."""

from __future__ import annotations

import time
from collections.abc import Sequence
from functools import partial

import numpy as np

from chairwright.search.best import find_best
from chairwright.search.space import Space
from chairwright.targets.target import Target
from tests.bench.clients import best_of, whole_space
from tests.bench.machine import Table, once, timed
from tests.oracles.cp_sat import Answer, build, solve
from tests.oracles.cp_sat_space import look_at_all
from tests.oracles.restricted import restricted

NAME = "avg-001"
ENUMERATED = (10**5, 10**6, 10**7)
SOLVED = (10**5, 10**6, 10**7, 10**8, 10**9, 10**10, 10**11)
WORKERS = (2, 8)
GIVES_UP_S = 60.0


def against_enumeration() -> Table:
    """Least cost by looking at every set-up with the same vectorised formulas."""
    rows = []
    for most in ENUMERATED:
        space, targets, exact, cost = _ours(most)
        start = time.perf_counter()
        every = look_at_all(space, targets)
        taken = time.perf_counter() - start
        costs = f"{cost:.6f}, {every.cost:.6f}"
        rows.append(
            [f"{space.count:.1e}", f"{exact:.3f}", f"{taken:.2f}", f"{taken / exact:.0f}", costs]
        )
    return Table(["set-ups", "search, s", "enumeration, s", "ratio", "costs"], rows)


def against_solver() -> Table:
    """Least cost proven by CP-SAT; of several numbers of workers the quickest is taken."""
    rows = []
    for most in SOLVED:
        space, targets, exact, cost = _ours(most)
        building = once(partial(build, space, targets))
        answers = {each: _solved(space, targets, each) for each in WORKERS}
        workers = min(answers, key=lambda each: answers[each].seconds)
        answer = answers[workers]
        ratio = f"{'' if answer.proven else 'over '}{answer.seconds / exact:.0f}"
        rows.append(
            [
                f"{space.count:.1e}",
                f"{exact:.3f}",
                f"{answer.seconds:.2f}",
                ratio,
                f"{workers}",
                f"{building:.2f}",
                f"{cost:.4f}, {answer.cost:.4f}",
            ]
        )
    heads = ["set-ups", "search, s", "CP-SAT, s", "ratio", "workers", "its model, s", "costs"]
    return Table(heads, rows)


def _solved(space: Space, targets: Sequence[Target], workers: int) -> Answer:
    return solve(build(space, targets), GIVES_UP_S, workers)


def _ours(most: int) -> tuple[Space, Sequence[Target], float, float]:
    whole, targets, _ = whole_space(NAME)
    space = restricted(whole, most, best_of(NAME).index)
    found = find_best(space, targets)
    cost = np.inf if found is None else found.cost
    return space, targets, timed(partial(find_best, space, targets), 5), cost
