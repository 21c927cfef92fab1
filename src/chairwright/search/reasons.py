"""Why no set-up meets every must: the smallest corrections with amounts, the smallest conflicts."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray, Rows
from chairwright.figures.band import Band
from chairwright.figures.evaluate import figures_of, realise
from chairwright.search.best import find_best
from chairwright.search.criteria import Criteria, Judge
from chairwright.search.engine import PRIORITY, Search
from chairwright.search.prepared import Prepared, prepare
from chairwright.search.space import Space
from chairwright.targets.target import Target
from chairwright.targets.verdict import outside

BROKEN = "certainly broken"


@dataclass(frozen=True)
class Give:
    """One must that a correction gives up.

    Parameters
    ----------
    target : Target
    value : float
        The figure that the correction's set-up reaches.
    by : float
        How far that lies outside the must's range; NaN when the set-up has no such figure.
    """

    target: Target
    value: float
    by: float


@dataclass(frozen=True)
class Correction:
    """A smallest group of musts that could be given up together, with a set-up that shows it.

    Parameters
    ----------
    gives : tuple of Give
        The amounts, least in total when each counts in steps of its figure's scale.
    index : dict of str to int
    """

    gives: tuple[Give, ...]
    index: dict[str, int]


@dataclass(frozen=True)
class Reasons:
    """All smallest corrections and all smallest groups of musts that cannot hold together.

    Parameters
    ----------
    corrections : tuple of Correction
        Empty when the line builds nothing at all for the client.
    conflicts : tuple of tuple of Target
    """

    corrections: tuple[Correction, ...]
    conflicts: tuple[tuple[Target, ...], ...]


class BrokenSetsGoal:
    """Collects the smallest sets of musts that finished set-ups break, as bit masks."""

    def __init__(self, prepared: Prepared, musts: tuple[Target, ...]) -> None:
        self._judge = Judge(prepared, Criteria(musts, ()))
        self.names = tuple(dict.fromkeys(target.figure for target in musts))
        self.hard: tuple[Target, ...] = ()
        self.sieve_choices: frozenset[str] = frozenset()
        self.smallest: list[int] = []

    @property
    def found(self) -> bool:
        """See ``Goal``."""
        return bool(self.smallest)

    def sieve(
        self, rows: Rows, parent: IndexArray, index: dict[str, IndexArray], choice: str
    ) -> NDArray[np.bool_]:
        """See ``Goal``."""
        return np.ones(len(parent), dtype=bool)

    def judge(self, rows: Rows, bands: dict[str, Band]) -> NDArray[np.bool_]:
        """See ``Goal``: the priority is the number of musts certainly broken."""
        masks = np.zeros(len(rows), dtype=np.int64)
        count = np.zeros(len(rows))
        for bit, lost in enumerate(self._judge.broken(rows, bands)):
            masks |= lost.astype(np.int64) << bit
            count += lost
        rows.columns[BROKEN] = masks.astype(float)
        rows[PRIORITY] = count
        return self.still(rows)

    def still(self, rows: Rows) -> NDArray[np.bool_]:
        """See ``Goal``."""
        masks = rows[BROKEN].astype(np.int64)
        fresh = np.ones(len(rows), dtype=bool)
        for small in self.smallest:
            fresh &= (masks & small) != small
        return fresh

    def take(self, rows: Rows, bands: dict[str, Band]) -> None:
        """See ``Goal``."""
        found = {int(mask) for mask in np.unique(rows[BROKEN])}
        self.smallest = smallest_sets(found.union(self.smallest))


def smallest_sets(masks: Iterable[int]) -> list[int]:
    """Those of the bit masks that contain no other, fewest bits first, then by value."""
    kept: list[int] = []
    for mask in sorted(set(masks), key=lambda each: (each.bit_count(), each)):
        if not any(mask & small == small for small in kept):
            kept.append(mask)
    return kept


def hitting_sets(masks: Sequence[int]) -> list[int]:
    """Smallest bit masks that share a bit with every given one.

    Parameters
    ----------
    masks : sequence of int

    Returns
    -------
    list of int
        Fewest bits first, then by value; empty when there are no masks.

    References
    ----------
    Berge's multiplication: extend each partial hitting set by each bit of the next mask and
    keep the smallest.
    """
    partial = [0] if masks else []
    for mask in masks:
        bits = [1 << place for place in range(mask.bit_length()) if mask >> place & 1]
        grown = [hit for hit in partial if hit & mask]
        grown += [hit | bit for hit in partial if not hit & mask for bit in bits]
        partial = smallest_sets(grown)
    return partial


def find_reasons(space: Space | Prepared, targets: Sequence[Target]) -> Reasons:
    """Why a space holds no set-up that meets every must.

    Parameters
    ----------
    space : Space or Prepared
    targets : sequence of Target
        Preferences are ignored. At most 52 musts.

    Returns
    -------
    Reasons
        No correction and no conflict when the musts can be met, or when nothing is buildable.

    Raises
    ------
    ValueError
        When there are more than 52 musts.
    """
    musts = tuple(target for target in targets if target.must)
    if len(musts) > MOST_MUSTS:
        raise ValueError(TOO_MANY.format(most=MOST_MUSTS, got=len(musts)))
    prepared = prepare(space)
    goal = BrokenSetsGoal(prepared, musts)
    Search(prepared, goal).run()
    broken = [mask for mask in goal.smallest if mask]
    if len(broken) < len(goal.smallest):
        return Reasons((), ())
    corrections = tuple(_correction(prepared, musts, mask) for mask in broken)
    conflicts = tuple(_chosen(musts, mask) for mask in hitting_sets(broken))
    return Reasons(corrections, conflicts)


MOST_MUSTS = 52
"""Bit masks are carried as floating-point numbers, exact to 52 bits."""

TOO_MANY = "reasons can be found for at most {most} musts; got {got}"


def _chosen(musts: tuple[Target, ...], mask: int) -> tuple[Target, ...]:
    return tuple(target for bit, target in enumerate(musts) if mask >> bit & 1)


def _correction(prepared: Prepared, musts: tuple[Target, ...], mask: int) -> Correction:
    given = _chosen(musts, mask)
    kept = [target for target in musts if target not in given]
    asked = [replace(target, must=False, weight=1.0) for target in given]
    best = find_best(prepared, [*kept, *asked])
    if best is None:
        raise AssertionError(LOST)
    index = {name: np.array([place]) for name, place in best.index.items()}
    space = prepared.space
    rows, _ = realise(space.line, space.occupant, index)
    found = figures_of(rows, space.occupant, [target.figure for target in given])
    gives = tuple(
        Give(target, float(value[0]), float(outside(target, value)[0]))
        for target in given
        for value in [found[target.figure]]
    )
    return Correction(gives, best.index)


LOST = "a set-up that breaks these musts was found before and must be found again"
