"""Why no set-up meets every must: the smallest corrections with amounts, the smallest conflicts."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Sequence
from concurrent.futures import Executor, Future
from dataclasses import dataclass, replace

import numpy as np

from chairwright.figures.evaluate import figures_of, realise
from chairwright.mass_points import FloatArray
from chairwright.search.amounts import find_least
from chairwright.search.any_of import find_any, left_by
from chairwright.search.best import Best, find_best
from chairwright.search.prepared import Prepared, prepare
from chairwright.search.space import Space
from chairwright.targets.target import Target
from chairwright.targets.verdict import broken, outside

MOST_AHEAD = 3
"""Corrections worked out side by side, where there are processes for that."""

Show = Callable[[Prepared, Sequence[Target]], Best | None]


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
    apart: Executor | None = None,
    show: Show = find_best,
    first: Callable[[Correction], None] = lambda _: None,
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
    apart : Executor or None
        Where the amounts of the corrections are worked out side by side.
    show : callable
        Finds the set-up that shows a correction, once the musts given up are eased.
    first : callable
        Told the first correction of the answer while the others may still be worked out.

    Returns
    -------
    Reasons
        No correction and no conflict when the musts can be met, or when nothing is buildable.

    References
    ----------
    Duality of corrections and conflicts (Reiter 1987, from memory): the smallest corrections are
    the smallest groups that share a must with every smallest conflict. So one that shares a must
    with every conflict found so far either is a correction, or what it leaves holds a further
    conflict.
    """
    prepared = prepare(space)
    musts = tuple(target for target in targets if target.must)
    asked = _Asked(prepared, musts)
    if asked.can_hold(asked.everything) or not asked.can_hold(0):
        return Reasons((), ())
    corrections: dict[int, Correction] = {}
    conflicts: list[int] = []
    trials = _Trials(prepared, tuple(targets), show, apart)
    while untried := [each for each in _groups(conflicts) if each not in corrections]:
        if len(corrections) == most:
            break
        room = MOST_AHEAD if most is None else min(MOST_AHEAD, most - len(corrections))
        trials.begin(mask for mask in untried[:room] if asked.may_hold(asked.everything & ~mask))
        given, held = untried[0], asked.everything & ~untried[0]
        correction = trials.of(given) if asked.may_hold(held) else None
        if correction is None:
            conflicts.append(asked.conflict_within(held))
            continue
        asked.learn_held(held)
        corrections[given] = correction
        progress(len(corrections))
        if len(corrections) == 1:
            first(correction)
    shown = tuple(corrections[mask] for mask in smallest_sets(corrections))
    found = tuple(_chosen(musts, mask) for mask in smallest_sets(conflicts))
    return Reasons(shown, found, complete=not untried)


def _groups(conflicts: Sequence[int]) -> list[int]:
    """Groups of musts to try to give up: at first none at all."""
    return hitting_sets(conflicts) or [0]


class _Trials:
    """Works out what groups of musts would have to give, the likely ones ahead where it can.

    Parameters
    ----------
    prepared : Prepared
    targets : tuple of Target
    show : callable
    apart : Executor or None
    """

    def __init__(
        self, prepared: Prepared, targets: tuple[Target, ...], show: Show, apart: Executor | None
    ) -> None:
        self._prepared = prepared
        self._targets = targets
        self._show = show
        self._apart = apart
        self._begun: dict[int, Future[Correction | None]] = {}

    def begin(self, masks: Iterable[int]) -> None:
        """Begin these groups apart, the first first, and end what was begun of others."""
        if self._apart is None:
            return
        idle = set(self._begun)
        for mask in masks:
            idle.discard(mask)
            if mask not in self._begun:
                task = self._prepared, self._targets, self._given(mask), self._show
                self._begun[mask] = self._apart.submit(_correction, *task)
        for mask in idle:
            self._begun.pop(mask).cancel()

    def of(self, mask: int) -> Correction | None:
        """What a group would have to give; None when the other musts cannot hold."""
        if mask in self._begun:
            return self._begun.pop(mask).result()
        return _correction(self._prepared, self._targets, self._given(mask), self._show)

    def _given(self, mask: int) -> tuple[Target, ...]:
        return _chosen(tuple(target for target in self._targets if target.must), mask)


class _Asked:
    """Asks which musts can be held together, each question once, and never one that follows.

    Parameters
    ----------
    prepared : Prepared
    musts : tuple of Target
    """

    def __init__(self, prepared: Prepared, musts: tuple[Target, ...]) -> None:
        self._prepared = prepared
        self._musts = musts
        self.everything = (1 << len(musts)) - 1
        self._held: list[int] = []
        self._never: list[int] = []
        self._unknown: set[int] = set()

    def can_hold(self, mask: int) -> bool:
        """Whether some set-up holds these musts.

        Parameters
        ----------
        mask : int
            A bit for each must.
        """
        if any(mask & held == mask for held in self._held):
            return True
        if any(mask & never == never for never in self._never):
            return False
        found = find_any(self._prepared, _chosen(self._musts, mask))
        if found is None:
            self._never.append(mask)
        else:
            self._held.append(self._held_by(found.index))
        return found is not None

    def may_hold(self, mask: int) -> bool:
        """Whether what is known and the tables leave it possible that these musts hold.

        Parameters
        ----------
        mask : int
        """
        if mask in self._unknown or any(mask & held == mask for held in self._held):
            return True
        if any(mask & never == never for never in self._never):
            return False
        if left_by(self._prepared, _chosen(self._musts, mask)).space.is_empty:
            self._never.append(mask)
            return False
        self._unknown.add(mask)
        return True

    def learn_held(self, mask: int) -> None:
        """Keep that these musts can be held together, found elsewhere."""
        self._held.append(mask)

    def _held_by(self, index: dict[str, int]) -> int:
        found = _figures(self._prepared, index, [target.figure for target in self._musts])
        lost = (broken(target, found[target.figure])[0] for target in self._musts)
        return sum(1 << bit for bit, each in enumerate(lost) if not each)

    def conflict_within(self, mask: int) -> int:
        """A smallest group of musts, among some that cannot be held, that cannot be held.

        References
        ----------
        Junker 2004 (QuickXplain), from memory: halves are left out as a whole.
        """
        return self._explained(0, 0, mask)

    def _explained(self, kept: int, added: int, open_still: int) -> int:
        """What of ``open_still`` is needed beside ``kept``; ``added`` was kept just now."""
        if added and not self.can_hold(kept):
            return 0
        if open_still.bit_count() == 1:
            return open_still
        bits = [1 << bit for bit in range(open_still.bit_length()) if open_still >> bit & 1]
        first, second = sum(bits[: len(bits) // 2]), sum(bits[len(bits) // 2 :])
        of_second = self._explained(kept | first, first, second)
        return of_second | self._explained(kept | of_second, of_second, first)


def _figures(
    prepared: Prepared, index: dict[str, int], names: Sequence[str]
) -> dict[str, FloatArray]:
    places = {name: np.array([place]) for name, place in index.items()}
    rows, _ = realise(prepared.space.line, prepared.space.occupant, places)
    return figures_of(rows, prepared.space.occupant, names)


def _chosen(musts: tuple[Target, ...], mask: int) -> tuple[Target, ...]:
    return tuple(target for bit, target in enumerate(musts) if mask >> bit & 1)


def _correction(
    prepared: Prepared, targets: Sequence[Target], given: tuple[Target, ...], show: Show
) -> Correction | None:
    """The least that a group must give, and of the set-ups that give so little the best.

    Wishes of places have no part in what is best then. None when no set-up holds the other musts.
    """
    kept = [target for target in targets if target.must and target not in given]
    least = find_least(prepared, kept, given)
    if least is None:
        return None
    reached = _figures(prepared, least, [target.figure for target in given])
    gives = tuple(_give(target, float(reached[target.figure][0])) for target in given)
    if any(math.isnan(give.value) for give in gives):
        return Correction(gives, least)
    eased = [_eased(give) for give in gives]
    preferred = [target for target in targets if not (target.must or target.place)]
    best = show(prepared, [*kept, *eased, *preferred])
    if best is None:
        raise AssertionError(LOST)
    return Correction(gives, best.index)


def _give(target: Target, value: float) -> Give:
    return Give(target, value, float(outside(target, np.array([value]))[0]))


def _eased(give: Give) -> Target:
    """The must with its range opened as far as the figure that was reached."""
    low, high = give.target.low, give.target.high
    low = low if low is None else min(low, give.value)
    return replace(give.target, low=low, high=high if high is None else max(high, give.value))


LOST = "a set-up that breaks these musts was found before and must be found again"
