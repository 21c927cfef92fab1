"""Why no set-up meets every must: the smallest corrections with amounts, the smallest conflicts."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

import numpy as np

from chairwright.figures.evaluate import figures_of, realise
from chairwright.mass_points import FloatArray
from chairwright.search.best import BestGoal, find_best
from chairwright.search.criteria import Criteria
from chairwright.search.engine import Search
from chairwright.search.prepared import Prepared, prepare
from chairwright.search.space import Space
from chairwright.targets.target import Target
from chairwright.targets.verdict import broken, outside


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
        Of the set-ups that give no more than these amounts, the one that the preferences rank
        first; where the least is to go without a figure, the first of those that give least.
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
    complete : bool
        False when the search was stopped at the number of corrections asked for: what is listed
        is right, but there is more.
    """

    corrections: tuple[Correction, ...]
    conflicts: tuple[tuple[Target, ...], ...]
    complete: bool = True


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


def find_reasons(
    space: Space | Prepared,
    targets: Sequence[Target],
    most: int | None = None,
    progress: Callable[[int], None] = lambda _: None,
) -> Reasons:
    """Why a space holds no set-up that meets every must.

    Parameters
    ----------
    space : Space or Prepared
    targets : sequence of Target
        Preferences choose among the set-ups that give equally little.
    most : int or None
        Stop after this many corrections; None for all.
    progress : callable
        Told the number of corrections found so far.

    Returns
    -------
    Reasons
        No correction and no conflict when the musts can be met, or when nothing is buildable.

    References
    ----------
    Duality of corrections and conflicts (Reiter 1987, from memory): a group of musts that shares
    a member with every smallest correction, and that no set-up meets, is a smallest conflict;
    if some set-up meets it, that set-up shows a further correction.
    """
    prepared = prepare(space)
    musts = tuple(target for target in targets if target.must)
    everything = (1 << len(musts)) - 1
    if _some_set_up(prepared, musts, everything) is not None:
        return Reasons((), ())
    corrections: list[int] = []
    proven: set[int] = set()
    while untried := [each for each in _groups(corrections) if each not in proven]:
        if len(corrections) == most:
            break
        lost = _some_set_up(prepared, musts, held=untried[0])
        if lost is None:
            proven.add(untried[0])
        else:
            corrections.append(_fewer(prepared, musts, lost))
            progress(len(corrections))
    ordered = smallest_sets(corrections)
    groups = [_chosen(musts, mask) for mask in ordered]
    shown = tuple(_correction(prepared, targets, given) for given in groups)
    conflicts = tuple(_chosen(musts, mask) for mask in smallest_sets(proven) if mask)
    return Reasons(shown, conflicts, complete=not untried)


def _groups(corrections: Sequence[int]) -> list[int]:
    """Groups of musts to try to hold: at first none at all."""
    return hitting_sets(corrections) or [0]


def _fewer(prepared: Prepared, musts: tuple[Target, ...], lost: int) -> int:
    """A smallest correction within the musts that some set-up breaks: none of it can be held."""
    everything = (1 << len(musts)) - 1
    for bit in range(len(musts)):
        if lost >> bit & 1:
            with_it = _some_set_up(prepared, musts, everything & ~lost | 1 << bit)
            lost = lost if with_it is None else with_it
    return lost


def _some_set_up(prepared: Prepared, musts: tuple[Target, ...], held: int) -> int | None:
    """The musts that some set-up breaks which holds the given ones; None without such a set-up.

    The set-up is sought among those that break few, but need not break the fewest.
    """
    kept, rest = _chosen(musts, held), _chosen(musts, ~held)
    small = prepared.relevant(frozenset(target.figure for target in kept)).under(kept)
    if small.space.is_empty:
        return None
    index = _first(BestGoal(small, Criteria(kept, ()), enough=np.inf), small, None)
    if index is None:
        return None
    whole = prepared.under(kept)
    fewer = BestGoal(whole, Criteria(kept, rest), enough=np.inf, hint=rest)
    index = _first(fewer, whole, PATIENCE) or index
    found = _figures(prepared, index, [target.figure for target in musts])
    lost = (broken(target, found[target.figure])[0] for target in musts)
    return sum(1 << bit for bit, each in enumerate(lost) if each)


PATIENCE = 30_000
"""Set-ups looked at for one that breaks few musts, when one that breaks more is at hand."""


def _first(goal: BestGoal, prepared: Prepared, patience: int | None) -> dict[str, int] | None:
    Search(prepared, goal, patience).run()
    return goal.index


def _figures(
    prepared: Prepared, index: dict[str, int], names: Sequence[str]
) -> dict[str, FloatArray]:
    places = {name: np.array([place]) for name, place in index.items()}
    rows, _ = realise(prepared.space.line, prepared.space.occupant, places)
    return figures_of(rows, prepared.space.occupant, names)


def _chosen(musts: tuple[Target, ...], mask: int) -> tuple[Target, ...]:
    return tuple(target for bit, target in enumerate(musts) if mask >> bit & 1)


def _correction(
    prepared: Prepared, targets: Sequence[Target], given: tuple[Target, ...]
) -> Correction:
    """The least that a group must give, and of the set-ups that give so little the best.

    Wishes of places have no part in what is best then.
    """
    kept = [target for target in targets if target.must and target not in given]
    asked = [replace(target, must=False, weight=1.0) for target in given]
    least = _sure_best(prepared, [*kept, *asked])
    reached = _figures(prepared, least, [target.figure for target in given])
    gives = tuple(_give(target, float(reached[target.figure][0])) for target in given)
    if any(math.isnan(give.value) for give in gives):
        return Correction(gives, least)
    eased = [_eased(give) for give in gives]
    preferred = [target for target in targets if not (target.must or target.place)]
    return Correction(gives, _sure_best(prepared, [*kept, *eased, *preferred]))


def _sure_best(prepared: Prepared, targets: Sequence[Target]) -> dict[str, int]:
    best = find_best(prepared, targets)
    if best is None:
        raise AssertionError(LOST)
    return best.index


def _give(target: Target, value: float) -> Give:
    return Give(target, value, float(outside(target, np.array([value]))[0]))


def _eased(give: Give) -> Target:
    """The must with its range opened as far as the figure that was reached."""
    low, high = give.target.low, give.target.high
    low = low if low is None else min(low, give.value)
    return replace(give.target, low=low, high=high if high is None else max(high, give.value))


LOST = "a set-up that breaks these musts was found before and must be found again"
