"""What a corner or a door needs, only as closely as the targets on it ask."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import Rows
from chairwright.chair.steps import STEPS
from chairwright.figures.band import Band, known
from chairwright.figures.outline import corners_of
from chairwright.figures.registry import FIGURES
from chairwright.search.outline_ends import OutlineEnds
from chairwright.search.prepared import Prepared
from chairwright.targets.target import Target

LAST = len(STEPS) - 1


class OutlineBands:
    """Ends of one need; finished set-ups get the value wherever a target hangs on it.

    Parameters
    ----------
    prepared : Prepared
    name : str
    ends : OutlineEnds
    targets : tuple of Target
        All that is asked of the figure.
    """

    def __init__(
        self, prepared: Prepared, name: str, ends: OutlineEnds, targets: tuple[Target, ...]
    ) -> None:
        self._occupant = prepared.space.occupant
        self._name = name
        self._ends = ends
        self._targets = targets
        both = (end for target in targets for end in (target.low, target.high))
        self._bounds = tuple(end for end in both if end is not None)

    def of(self, rows: Rows, level: int) -> Band:
        """Ends of the need, shape (n,) [mm]; carried with the rows.

        Parameters
        ----------
        rows : Rows
            With the whole outline settled.
        level : int
            Place of the last step taken in ``chair.steps.STEPS``.
        """
        low_key, high_key = f"low {self._name}", f"high {self._name}"
        if low_key not in rows.columns:
            band = self._ends.band(corners_of(rows), self._bounds)
            rows[low_key], rows[high_key] = band.low, band.high
        band = Band(rows[low_key], rows[high_key])
        return self._settled(rows, band) if level == LAST else band

    def _settled(self, rows: Rows, band: Band) -> Band:
        """The need where it is asked for; elsewhere its low end, which the targets judge alike."""
        hanging = np.nonzero(~self._told(band))[0]
        if not len(hanging):
            return known(band.low)
        formula = FIGURES[self._name].exact
        assert formula is not None  # noqa: S101  (every need of an outline is exact)
        values = band.low.copy()
        values[hanging] = formula(rows.take(hanging), self._occupant)
        return known(values)

    def _told(self, band: Band) -> NDArray[np.bool_]:
        """Where the ends say all that the targets ask, shape (n,)."""
        told = np.ones(len(band.low), dtype=bool)
        for target in self._targets:
            low = -np.inf if target.low is None else target.low
            high = np.inf if target.high is None else target.high
            inside = (band.low >= low) & (band.high <= high)
            outside = (band.high < low) | (band.low > high)
            told &= inside | outside if target.must else inside
        return told


def outline_bands(prepared: Prepared, asked: Iterable[Target]) -> dict[str, OutlineBands]:
    """The needs of outlines of which only the side of some targets is asked.

    Parameters
    ----------
    prepared : Prepared
    asked : iterable of Target

    Returns
    -------
    dict of str to OutlineBands
        By the figure's name.
    """
    by_name: dict[str, list[Target]] = {}
    for target in asked:
        by_name.setdefault(target.figure, []).append(target)
    ends = {name: prepared.outline_ends(name) for name in by_name}
    return {
        name: OutlineBands(prepared, name, each, tuple(by_name[name]))
        for name, each in ends.items()
        if each is not None
    }
