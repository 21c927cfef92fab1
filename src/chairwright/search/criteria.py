"""Musts and preferences as arrays: what an unfinished set-up certainly breaks, and must cost."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray, Rows
from chairwright.figures.band import Band, known
from chairwright.figures.registry import FIGURES
from chairwright.mass_points import FloatArray
from chairwright.search.leg_trial import LENGTH, LegTrial
from chairwright.search.prepared import Prepared
from chairwright.targets.target import Target
from chairwright.targets.verdict import COST_OF_NO_VALUE, SLACK

LEGS = "legs cost"


def outside(target: Target, band: Band) -> FloatArray:
    """How far a figure certainly lies outside a target's range, in the figure's unit.

    Parameters
    ----------
    target : Target
    band : Band, shape (n,)

    Returns
    -------
    ndarray, shape (n,)
        0 when it may be inside; NaN when the set-up has no such figure.
    """
    low, high = target.low, target.high
    if low is not None and high is not None:
        distance = np.maximum(low - band.high, band.low - high)
    elif low is not None:
        distance = low - band.high
    elif high is not None:
        distance = band.low - high
    else:
        distance = np.zeros(len(band.low))
    distance[distance <= SLACK] = 0.0
    if band.low is not band.high or (low is None and high is None):
        distance[np.isnan(band.low) | np.isnan(band.high)] = np.nan
    return distance


def broken(target: Target, band: Band) -> NDArray[np.bool_]:
    """Which set-ups certainly miss a target; a figure without a value misses it."""
    return np.asarray(~(outside(target, band) == 0.0))


def cost(target: Target, band: Band) -> FloatArray:
    """Least cost of a preference: weight x distance outside / scale, shape (n,).

    A set-up that is not finished may still come to have no such figure, which costs
    ``COST_OF_NO_VALUE`` steps and no more.
    """
    steps = outside(target, band) / FIGURES[target.figure].scale
    if band.low is not band.high:
        steps = np.minimum(steps, COST_OF_NO_VALUE)
    return target.weight * np.where(np.isnan(steps), COST_OF_NO_VALUE, steps)


@dataclass(frozen=True)
class Criteria:
    """The musts and preferences of one search.

    Parameters
    ----------
    musts, preferences : sequence of Target
    """

    musts: tuple[Target, ...]
    preferences: tuple[Target, ...]

    @property
    def names(self) -> tuple[str, ...]:
        """Figures that the criteria need."""
        both = (*self.musts, *self.preferences)
        return tuple(dict.fromkeys(target.figure for target in both))


def criteria(targets: Sequence[Target]) -> Criteria:
    """Split targets into musts and preferences of some weight, order kept."""
    return Criteria(
        tuple(target for target in targets if target.must),
        tuple(target for target in targets if not target.must and target.weight > 0),
    )


class Judge:
    """Applies criteria to unfinished set-ups, looking ahead where a figure has few choices.

    Parameters
    ----------
    prepared : Prepared
    rules : Criteria
    """

    def __init__(self, prepared: Prepared, rules: Criteria) -> None:
        self.rules = rules
        self._space = prepared.space
        tables = {name: prepared.look_ahead(name) for name in rules.names}
        trials = {name: prepared.option_look_ahead(name) for name in rules.names}
        self._tables = {name: table for name, table in tables.items() if table is not None}
        self._tried = {name: trial for name, trial in trials.items() if trial is not None}
        both = (*rules.musts, *rules.preferences)
        self._keys = {target: f"ahead {target}" for target in both}
        for target in both:
            if target.figure in self._tables:
                table = self._tables[target.figure]
                table.tabulate(self._keys[target], _score(target, known(table.values)))
        lengths = self._tables.get(LENGTH)
        legs = lengths and LegTrial(prepared, self._keys, lengths, _score)
        self._legs = legs if legs and legs.useful else None

    def possible(self, index: Mapping[str, IndexArray], choice: str) -> NDArray[np.bool_]:
        """Whether tabled musts that hang on a choice can still hold, shape (n,)."""
        fine = np.ones(len(index[choice]), dtype=bool)
        for target in self.rules.musts:
            table = self._tables.get(target.figure)
            if table is not None and choice in table.depends:
                fine &= table.least(self._keys[target], index) < 0.5
        return fine

    @property
    def tabled_choices(self) -> frozenset[str]:
        """Choices that some table hangs on."""
        tables = self._tables.values()
        return frozenset(choice for table in tables for choice in table.depends)

    def broken(self, rows: Rows, bands: dict[str, Band]) -> list[NDArray[np.bool_]]:
        """For each must, which rows certainly break it, shape (n,) each."""
        return [self._broken(rows, bands, target) for target in self.rules.musts]

    def _broken(self, rows: Rows, bands: dict[str, Band], target: Target) -> NDArray[np.bool_]:
        ahead = self._ahead(rows, target)
        if ahead is not None:
            return ahead > 0.5
        band = bands.get(target.figure)
        return np.zeros(len(rows), dtype=bool) if band is None else broken(target, band)

    def _ahead(self, rows: Rows, target: Target) -> FloatArray | None:
        key = self._keys[target]
        if target.figure in self._tables:
            return self._tables[target.figure].least(key, rows.index)
        if target.figure in self._tried:
            return self._least_trial(rows, target)
        return None

    def _least_trial(self, rows: Rows, target: Target) -> FloatArray:
        """Least score over the options of the one choice that a figure waits for, shape (n,).

        It is carried with the rows until the choice is made.
        """
        tried, key = self._tried[target.figure], self._keys[target]
        if tried.choice in rows.index:
            figure = FIGURES[target.figure].exact
            assert figure is not None  # noqa: S101  (only such figures are tried)
            return _score(target, known(figure(rows, self._space.occupant)))
        if key not in rows.columns:
            for each, scores in self.trials(rows, target.figure):
                rows[self._keys[each]] = scores.min(axis=1)
        return rows[key]

    def trials(self, rows: Rows, figure: str) -> Iterator[tuple[Target, FloatArray]]:
        """Score of every target on a figure with every option of the choice it waits for.

        Parameters
        ----------
        rows : Rows, shape (n,)
        figure : str

        Yields
        ------
        tuple of Target and ndarray, shape (n, all options of the choice)
            Infinite where the chair would not stand or the option is not allowed.
        """
        values, stands = self._tried[figure].values(rows)
        for target in self._keys:
            if target.figure == figure:
                yield target, np.where(stands, _score(target, known(values)), np.inf)

    def tried_cost(
        self, rows: Rows, parent: IndexArray, option: IndexArray, choice: str
    ) -> FloatArray:
        """What a newly made choice adds to the least cost by the figures that waited for it.

        Parameters
        ----------
        rows : Rows, shape (m,)
            The parents, judged before.
        parent, option : ndarray of int, shape (n,)
            Row of each child's parent; its option of the choice.
        choice : str

        Returns
        -------
        ndarray, shape (n,)
            Infinite where a must is broken or the chair does not stand.
        """
        added = np.zeros(len(parent))
        for figure, tried in self._tried.items():
            if tried.choice != choice:
                continue
            for target, scores in self.trials(rows, figure):
                score = scores[parent, option]
                if target in self.rules.musts:
                    added[score > 0.5] = np.inf
                else:
                    added += score - rows[self._keys[target]][parent]
        return added

    def legs_cost(self, rows: Rows, fine: NDArray[np.bool_]) -> FloatArray:
        """What the legs' length adds because several targets hang on it, shape (n,).

        Worked out once, where ``fine``, and carried with the rows until the length is chosen.

        Parameters
        ----------
        rows : Rows, shape (n,)
        fine : ndarray of bool, shape (n,)

        Returns
        -------
        ndarray, shape (n,)
            Infinite where no length holds every must.
        """
        if self._legs is None or not self._legs.ready(rows):
            return np.zeros(len(rows))
        if LEGS not in rows.columns:
            rows[LEGS] = np.zeros(len(rows))
            rows[LEGS][fine] = self._legs.added(rows.take(fine))
        return rows[LEGS]

    def tabled_cost(self, index: Mapping[str, IndexArray]) -> FloatArray:
        """Part of the least cost that the tables tell from option positions alone, shape (n,)."""
        total = np.zeros(len(next(iter(index.values()))))
        for target in self.rules.preferences:
            table = self._tables.get(target.figure)
            if table is not None:
                total += table.least(self._keys[target], index)
        return total

    def other_cost(self, rows: Rows, bands: dict[str, Band]) -> FloatArray:
        """The rest of the least cost of the preferences, shape (n,)."""
        total = np.zeros(len(rows))
        for target in self.rules.preferences:
            if target.figure in self._tried:
                total += self._least_trial(rows, target)
            elif target.figure in bands and target.figure not in self._tables:
                total += _score(target, bands[target.figure])
        return total


def _score(target: Target, band: Band) -> FloatArray:
    return broken(target, band).astype(float) if target.must else cost(target, band)
