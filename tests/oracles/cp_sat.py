"""The search's question put to a general constraint solver, CP-SAT.

How it is modelled
------------------
- Every choice is a whole-number variable over its open options. The running gear's nine choices
  are also one variable over the combinations that stand on their wheels, the four choices that
  place the hip another. The line's rules are clauses.
- A figure that depends on a few of these variables is one table over them: what breaks a must is
  left out of the table, what a preference costs is a column. The figures in the tables are the
  program's own (`cp_sat_axes`), so for them the model repeats the program's formulas and checks
  only the search. Heights, angles, clearances, widths, toe, trail and the anti-tip device's pitch
  are such figures.
- Mass, price and load margin are sums or one limit on each option; delivery is a greatest term.
- The centre of mass (`cp_sat_balance`): masses and first moments of every part are tables over
  the choices that bring and place it, and add up; the moments on the floor are products with the
  running gear's sine and cosine; a tipping angle is a ratio of two moments, one more product. The
  formulas of balance are written here anew.
- The elbow and the outline (`cp_sat_outline`): squares of distances add up, side view and
  across; a turning circle holds each of the outline's corners, each corner by tangents.
- Costs are whole numbers of a millionth. Arc tangent and arc cosine are chords of 0.2 degrees or
  less. Altogether a cost may be off by ``TOLERANCE``.
"""

from __future__ import annotations

import time
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from ortools.sat.python import cp_model

from chairwright.figures.terms import TERMS
from chairwright.search.space import Space
from chairwright.targets.target import Target

from .cp_sat_axes import NothingAllowed, Tabulation
from .cp_sat_figures import WEIGHED, charge_figures
from .cp_sat_outline import OUTLINE, charge_outline
from .cp_sat_space import cost_of
from .cp_sat_tables import COST, Tables

TOLERANCE = 1e-3

WORKERS = 8
"""Search strategies side by side; on two cores 8 proved sooner than 1, 2 or 4."""


@dataclass(frozen=True)
class Answer:
    """What the solver says.

    Parameters
    ----------
    proven : bool
        False when time ran out first.
    cost : float
        Of the best set-up found, as modelled; infinite when none was found.
    bound : float
        No set-up costs less, as far as proven.
    index : dict of str to int
        Option position of every choice; empty when none was found.
    seconds : float
        Solving alone; building the model is not counted.
    """

    proven: bool
    cost: float
    bound: float
    index: dict[str, int]
    seconds: float


def prove(space: Space, targets: Sequence[Target], seconds: float) -> Answer:
    """Model a space under its targets and prove the least cost.

    Parameters
    ----------
    space : Space
    targets : sequence of Target
    seconds : float
        After so long the solver gives up.
    """
    try:
        tables = build(space, targets)
    except NothingAllowed:
        return Answer(True, np.inf, np.inf, {}, 0.0)
    return solve(tables, seconds)


def solve(tables: Tables, seconds: float, workers: int = WORKERS) -> Answer:
    """Prove the least cost of a model.

    Parameters
    ----------
    tables : Tables
        From `build`.
    seconds : float
        After so long the solver gives up.
    workers : int
    """
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = workers
    solver.parameters.max_time_in_seconds = seconds
    start = time.perf_counter()
    status = solver.solve(tables.model)
    taken = time.perf_counter() - start
    if status == cp_model.MODEL_INVALID:
        raise ValueError(tables.model.validate())
    if status == cp_model.INFEASIBLE:
        return Answer(True, np.inf, np.inf, {}, taken)
    bound = solver.best_objective_bound / COST
    if status not in {cp_model.OPTIMAL, cp_model.FEASIBLE}:
        return Answer(False, np.inf, bound, {}, taken)
    allowed = tables.tabulation.space.allowed
    index = {name: int(allowed[name][solver.value(tables.at[name])]) for name in allowed}
    done = status == cp_model.OPTIMAL
    return Answer(done, solver.objective_value / COST, bound, index, taken)


def build(space: Space, targets: Sequence[Target]) -> Tables:
    """Build the model of a space under its targets.

    Parameters
    ----------
    space : Space
    targets : sequence of Target
    """
    tabulation = Tabulation(space, targets)
    tables = Tables(tabulation)
    _standing(tables)
    left = _tabulated(tables, targets)
    charge_outline(tables, [target for target in left if target.figure in OUTLINE])
    rest = [target for target in left if target.figure not in OUTLINE]
    charge_figures(tables, rest)
    tables.model.minimize(sum(tables.costs))
    return tables


def _standing(tables: Tables) -> None:
    """Footplates and anti-tip wheels stay out of the floor."""
    clearance = tables.tabulation.figure("footplate_clearance_mm", FEET)
    tables.tabulate(FEET, np.where(clearance < 0, np.inf, 0.0))
    rows = tables.tabulation.rows(DEVICE)
    low = rows["device_z"] < rows["device_radius"]
    tables.tabulate(DEVICE, np.where(low, np.inf, 0.0))


FEET = ("gear", "foot_supports", "hanger", "foot_plate", "leg_length")
DEVICE = ("gear", "anti_tip")


def _tabulated(tables: Tables, targets: Sequence[Target]) -> list[Target]:
    """Charge every figure that few axes settle; return the other targets."""
    together: dict[tuple[str, ...], list[Target]] = {}
    left = []
    for target in targets:
        if target.figure in {*TERMS, *WEIGHED, *OUTLINE}:
            left.append(target)
            continue
        axes = tables.tabulation.axes_of(target.figure)
        together.setdefault(axes, []).append(target)
    for axes, group in together.items():
        values = {t.figure: tables.tabulation.figure(t.figure, axes) for t in group}
        costs = [cost_of(target, values[target.figure]) for target in group]
        tables.tabulate(axes, np.sum(costs, axis=0))
    return left
