"""The exact search by itself: whole spaces, and spaces of growing size."""

from __future__ import annotations

from functools import partial

from chairwright.fitting.trade import usual_objectives
from chairwright.search.best import find_best
from chairwright.search.front import find_front
from chairwright.search.reasons import find_reasons
from tests.bench.clients import FITTED, best_of, whole_space
from tests.bench.machine import Table, once, timed
from tests.oracles.restricted import restricted

SIZES = tuple(10**power for power in (5, 6, 7, 8, 9, 10, 12, 14))
LARGEST = "avg-001"


def by_client() -> Table:
    """Best set-up and trade-off front of three figures of every example client."""
    rows = []
    for name in FITTED:
        space, targets, occupant = whole_space(name)
        aims = usual_objectives(occupant)
        best = timed(partial(find_best, space, targets), 3)
        front = timed(partial(find_front, space, targets, aims), 3)
        rows.append([name.upper(), f"{space.count:.1e}", f"{best:.2f}", f"{front:.2f}"])
    space, targets, _ = whole_space("not-008")
    reasons = once(partial(find_reasons, space, targets))
    rows.append(["NOT-008: all reasons", f"{space.count:.1e}", f"{reasons:.2f}", ""])
    return Table(["client", "set-ups", "best, s", "front of three, s"], rows)


def by_size() -> Table:
    """Cost against the size of the space, options taken away from the average client's."""
    whole, targets, occupant = whole_space(LARGEST)
    aims = usual_objectives(occupant)
    rows = []
    for most in (*SIZES, None):
        space = whole if most is None else restricted(whole, most, best_of(LARGEST).index)
        best = timed(partial(find_best, space, targets), 3)
        front = timed(partial(find_front, space, targets, aims), 3)
        rows.append([f"{space.count:.1e}", f"{best:.3f}", f"{front:.3f}"])
    return Table(["set-ups", "best, s", "front of three, s"], rows)
