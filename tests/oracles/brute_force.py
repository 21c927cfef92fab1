"""The search's questions answered by looking at every set-up of a small line.

Nothing of the search room nor of the line room is used: options, rules, prices and days come from
the line file's own words; what can stand, musts, costs, dominance and the smallest sets are worked
out here from their definitions. The figures of a set-up are the program's own, apart from those
of price, days and load.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import chain, combinations

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.registry import FIGURES
from chairwright.line.choices import CHOICES
from chairwright.targets.target import Target

from .small_lines import Drawn
from .written import Index, said
from .written_rules import clauses, every_set_up, open_positions, order_terms

Array = NDArray[np.float64]
Mask = NDArray[np.bool_]

NEAR = 1e-9
"""Outside by less than this counts as inside."""
STEPS_FOR_NO_VALUE = 10.0
"""What a preference costs when the set-up has no such figure."""
COST_DIGITS = 9
PITCH_DEG = (-5.0, 20.0)


@dataclass(frozen=True)
class Everything:
    """All set-ups that the rules allow, and what can stand of them.

    ``count`` counts all; ``bare`` says that a choice has no option left at all.
    """

    count: int
    index: Index
    figures: dict[str, Array]
    bare: bool = False

    def setup(self, at: int) -> dict[str, int]:
        """Option position of every choice of one set-up."""
        return {name: int(self.index[name][at]) for name in CHOICES}

    def place(self, setup: Mapping[str, int]) -> int:
        """Where in the list one set-up stands."""
        same = np.ones(len(self.index["fork"]), dtype=bool)
        for name, position in setup.items():
            same &= self.index[name] == position
        (place,) = np.nonzero(same)[0]
        return int(place)

    def first(self, which: Mask) -> int:
        """Place of the set-up whose options the line lists first, choices in the line's order."""
        places = np.nonzero(which)[0]
        keys = [self.index[name][places] for name in reversed(CHOICES)]
        return int(places[np.lexsort(keys)[0]])


def look_at_everything(
    drawn: Drawn,
    occupant: Occupant,
    settled: Mapping[str, Collection[str]] | None = None,
    *,
    made_to_order: bool = False,
) -> Everything:
    """Multiply out a line and evaluate every figure of what the rules leave.

    Parameters
    ----------
    drawn : Drawn
    occupant : Occupant
    settled : mapping of str to collection of str
        Choices narrowed to some codes.
    made_to_order : bool
        Whether the sizes made to order are open as well.
    """
    options = said(drawn.written)
    for name, choice in drawn.line.choices.items():
        assert list(choice.codes) == [option.code for option in options[name]]
    allowed = open_positions(options, occupant, settled or {}, made_to_order=made_to_order)
    index = every_set_up(allowed, clauses(drawn.written, options))
    rows, _ = realise(drawn.line, occupant, index)
    figures = {name: np.array(v) for name, v in figures_of(rows, occupant).items()}
    for name, values in order_terms(drawn.written, options, occupant, index).items():
        assert np.allclose(figures[name], values, rtol=0.0, atol=1e-9)
    stands = standing(rows, figures)
    return Everything(
        len(stands),
        {name: array[stands] for name, array in index.items()},
        {name: values[stands] for name, values in figures.items()},
        bare=not all(allowed.values()),
    )


def standing(rows: Rows, figures: Mapping[str, Array]) -> Mask:
    """Which set-ups stand on their wheels with nothing in the floor."""
    pitch = figures["seat_angle_deg"]
    stands = (pitch >= PITCH_DEG[0]) & (pitch <= PITCH_DEG[1])
    stands &= ~(figures["footplate_clearance_mm"] < 0)
    return np.asarray(stands & ~(rows["device_z"] < rows["device_radius"]))


def excess(everything: Everything, target: Target) -> Array:
    """How far each set-up is outside a target's range; NaN without such a figure."""
    values = everything.figures[target.figure]
    far = np.where(np.isnan(values), np.nan, 0.0)
    if target.low is not None:
        far = np.where(target.low - values > NEAR, target.low - values, far)
    if target.high is not None:
        far = np.where(values - target.high > NEAR, values - target.high, far)
    return far


def steps(everything: Everything, target: Target) -> Array:
    """The same in steps of the figure's scale, no value counted as many steps."""
    far = excess(everything, target) / FIGURES[target.figure].scale
    return np.where(np.isnan(far), STEPS_FOR_NO_VALUE, far)


def broken(everything: Everything, musts: Sequence[Target]) -> Mask:
    """Which set-ups break which musts, shape (set-ups, musts)."""
    columns = [~(excess(everything, must) == 0) for must in musts]
    return np.stack(columns, 1) if columns else np.zeros((len(everything.index["fork"]), 0), bool)


def holding(everything: Everything, targets: Sequence[Target]) -> Mask:
    """Which set-ups hold every must."""
    return np.asarray(~broken(everything, [t for t in targets if t.must]).any(axis=1))


def best(everything: Everything, targets: Sequence[Target]) -> tuple[float, int] | None:
    """Least cost and the place of the first set-up that has it; None when the musts forbid all."""
    fine = holding(everything, targets)
    if not fine.any():
        return None
    cost = np.zeros(len(everything.index["fork"]))
    for target in targets:
        if not target.must:
            cost += target.weight * steps(everything, target)
    rounded = np.round(cost, COST_DIGITS)
    least = rounded[fine].min()
    return float(least), everything.first(fine & (rounded == least))


def front(
    everything: Everything, targets: Sequence[Target], aims: Sequence[tuple[str, str]]
) -> set[tuple[float, ...]]:
    """Printed vectors that no other printed vector beats, among set-ups that hold every must."""
    fine = holding(everything, targets)
    columns = []
    for name, sense in aims:
        printed = np.round(everything.figures[name][fine] / FIGURES[name].resolution)
        columns.append(-printed if sense == "max" else printed)
    vectors = np.stack(columns, axis=1)
    vectors = np.unique(vectors[~np.isnan(vectors).any(axis=1)], axis=0)
    kept = []
    for vector in vectors:
        no_worse, better = (vectors <= vector).all(axis=1), (vectors < vector).any(axis=1)
        if not (no_worse & better).any():
            kept.append(tuple(float(v) for v in vector))
    return set(kept)


def corrections(
    everything: Everything, musts: Sequence[Target]
) -> dict[frozenset[int], tuple[float, int]]:
    """Each smallest group of musts to give up: least total of steps, and the first set-up."""
    lost = broken(everything, musts)
    groups = {frozenset(np.nonzero(row)[0].tolist()) for row in np.unique(lost, axis=0)}
    smallest = {group for group in groups if not any(other < group for other in groups)}
    total = [steps(everything, must) for must in musts]
    answer = {}
    for group in smallest:
        within = (lost == [at in group for at in range(len(musts))]).all(axis=1)
        cost = np.round(
            sum((total[at] for at in sorted(group)), np.zeros(len(within))), COST_DIGITS
        )
        least = cost[within].min()
        answer[group] = (float(least), everything.first(within & (cost == least)))
    return answer


def shown(
    everything: Everything, targets: Sequence[Target], group: frozenset[int], reached: int
) -> int:
    """The set-up that shows a correction: the preferences' first of those that give no more.

    Parameters
    ----------
    everything : Everything
    targets : sequence of Target
    group : frozenset of int
        Which of the musts are given up.
    reached : int
        Place of a set-up that gives the least and has all the figures.
    """
    musts = [target for target in targets if target.must]
    wanted = [target for target in targets if not target.must]
    for at, must in enumerate(musts):
        value = float(everything.figures[must.figure][reached])
        if at not in group:
            wanted.append(must)
        else:
            low = None if must.low is None else min(must.low, value)
            high = None if must.high is None else max(must.high, value)
            wanted.append(replace(must, low=low, high=high))
    found = best(everything, wanted)
    assert found is not None
    return found[1]


def conflicts(everything: Everything, musts: Sequence[Target]) -> set[frozenset[int]]:
    """Each smallest group of musts that no set-up holds together, by trying every group."""
    lost = broken(everything, musts)
    every = range(len(musts))
    groups = chain.from_iterable(combinations(every, size) for size in range(len(musts) + 1))
    found: list[frozenset[int]] = []
    for group in map(frozenset, groups):
        if any(small <= group for small in found):
            continue
        if lost[:, sorted(group)].any(axis=1).all():
            found.append(group)
    return set(found)
