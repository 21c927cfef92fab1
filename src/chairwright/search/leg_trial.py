"""The legs' length tried early: what is asked of it and of the footplates, taken together.

Each target on its own may still be met by some length, and yet no length meet them all: one keeps
the soles at the right place, the other keeps the plates off the floor.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.band import Band
from chairwright.mass_points import FloatArray
from chairwright.search.look_ahead import LookAhead
from chairwright.search.prepared import Prepared
from chairwright.targets.target import Target

CHOICE = "leg_length"
LENGTH = "leg_support_length_mm"
PLATES = ("footplate_clearance_mm", "caster_foot_clearance_mm")
MADE = ("side_frame", "hanger", "seat_depth", "cushion")
"""What the footplates hang on besides their own form: from the last of them on it is worth it."""

Score = Callable[[Target, Band], FloatArray]


class LegTrial:
    """Tries every allowed length on unfinished set-ups.

    Parameters
    ----------
    prepared : Prepared
    targets : mapping of Target to str
        Musts and preferences, each with its key in the tables.
    table : LookAhead
        Of the legs' length.
    score : callable
        Cost of a target; at least 0.5 where a must is certainly broken.
    """

    def __init__(
        self, prepared: Prepared, targets: Mapping[Target, str], table: LookAhead, score: Score
    ) -> None:
        self._options = prepared.space.allowed[CHOICE]
        self._table = table
        self._lengths = [(each, key) for each, key in targets.items() if each.figure == LENGTH]
        early = {name: prepared.early.of(name) for name in PLATES}
        self._plates = [
            (target, ends)
            for target in targets
            if target.must and (ends := early.get(target.figure)) is not None
        ]
        self._score = score

    @property
    def useful(self) -> bool:
        """Whether both the length and the plates have targets."""
        return bool(self._lengths and self._plates)

    def ready(self, rows: Rows) -> bool:
        """Whether it can be tried on these rows, and is still to be chosen."""
        return CHOICE not in rows.index and all(name in rows.index for name in MADE)

    def added(self, rows: Rows) -> FloatArray:
        """What the targets on the length cost more than each on its own, shape (n,).

        Parameters
        ----------
        rows : Rows, shape (n,)
            `ready`.

        Returns
        -------
        ndarray, shape (n,)
            Infinite where no length holds every must.
        """
        least = np.full(len(rows), np.inf)
        for option in self._options:
            least = np.minimum(least, self._cost(rows.tried(CHOICE, int(option))))
        alone = self._wishes(rows)
        with np.errstate(invalid="ignore"):
            return np.where(np.isfinite(least), np.maximum(least - alone, 0.0), np.inf)

    def _cost(self, trial: Rows) -> FloatArray:
        cost = self._wishes(trial)
        for target, key in self._lengths:
            if target.must:
                cost = np.where(self._table.least(key, trial.index) > 0.5, np.inf, cost)
        for target, ends in self._plates:
            cost = np.where(self._score(target, ends(trial)) > 0.5, np.inf, cost)
        return cost

    def _wishes(self, rows: Rows) -> FloatArray:
        wishes = (key for target, key in self._lengths if not target.must)
        return sum((self._table.least(key, rows.index) for key in wishes), np.zeros(len(rows)))
