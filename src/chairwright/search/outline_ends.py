"""Ends of what a corner or a door needs, from outlines rounded to a grid and worked out once.

A chair whose outline lies inside another's never needs more room. So the outline rounded towards
the middle of the axle gives a low end, and rounded away from it a high one; rounded outlines are
few, and each is worked out once.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from chairwright.figures.band import Band
from chairwright.figures.families_room import NEVER_MM, OUTLINE_NEEDS
from chairwright.figures.family import number
from chairwright.figures.space import Corner
from chairwright.figures.turning import stacked
from chairwright.mass_points import FloatArray

GRIDS_MM = (80.0, 20.0)
"""The second only where the first leaves open on which side of a bound the need lies."""

GUARD_MM = 1.0
"""Kept off both ends: far more than the least over a radius or an angle is found short by."""

ROUNDS = 14
"""Golden sections: enough for a part of `GUARD_MM`."""

MOST_KEPT = 200_000
"""Needs kept before all are forgotten and worked out anew."""


def outline_ends(name: str) -> OutlineEnds | None:
    """Ends of one figure of a family; None when it is not a need of an outline.

    Parameters
    ----------
    name : str
        ``family@parameters``.
    """
    family, _, typed = name.partition("@")
    width = number(typed)
    return OutlineEnds(family, width) if family in OUTLINE_NEEDS and width else None


class OutlineEnds:
    """Ends of one need.

    Parameters
    ----------
    family : str
        Key of ``figures.families_room.OUTLINE_NEEDS``.
    width : float [mm]
        Of the way in, or of the door.
    """

    def __init__(self, family: str, width: float) -> None:
        self._need = OUTLINE_NEEDS[family]
        self._width = width
        self._known: dict[bytes, float] = {}

    def low(self, corners: Sequence[Corner]) -> FloatArray:
        """Low end for outlines, or for what is sure of them, shape (n,) [mm].

        Parameters
        ----------
        corners : sequence of Corner
            The same number at every call.
        """
        x, y = stacked(corners)
        return self._rounded(x, y, GRIDS_MM[-1], outward=False)

    def band(self, corners: Sequence[Corner], bounds: Sequence[float]) -> Band:
        """Both ends for whole outlines, closer where a bound lies between them.

        Parameters
        ----------
        corners : sequence of Corner
            The same number at every call.
        bounds : sequence of float [mm]

        Returns
        -------
        Band, shape (n,) [mm]
        """
        x, y = stacked(corners)
        low, high = np.zeros(x.shape[1]), np.full(x.shape[1], np.inf)
        for grid_mm in GRIDS_MM:
            unsure = np.nonzero(straddles(low, high, bounds))[0]
            if len(unsure):
                part = x[:, unsure], y[:, unsure]
                low[unsure] = self._rounded(*part, grid_mm, outward=False)
                high[unsure] = self._rounded(*part, grid_mm, outward=True)
        return Band(low, high)

    def _rounded(
        self, x: FloatArray, y: FloatArray, grid_mm: float, *, outward: bool
    ) -> FloatArray:
        """Need of the outlines rounded to a grid, guarded."""
        places = np.concatenate([x, y]) / grid_mm
        whole = np.copysign(np.ceil(np.abs(places)), places) if outward else np.trunc(places)
        table = np.ascontiguousarray((whole + 0.0).T.astype(np.int16))
        keys = table.view(np.dtype((np.void, table.dtype.itemsize * table.shape[1]))).ravel()
        _, first, place = np.unique(keys, return_index=True, return_inverse=True)
        needs = self._of(table[first], grid_mm)
        return np.asarray((needs + (GUARD_MM if outward else -GUARD_MM))[place])

    def _of(self, table: NDArray[np.int16], grid_mm: float) -> FloatArray:
        """Needs of different rounded outlines, shape (n,) [mm], remembered."""
        names = [row.tobytes() + bytes([int(grid_mm)]) for row in table]
        new = [at for at, name in enumerate(names) if name not in self._known]
        if new:
            if len(self._known) > MOST_KEPT:
                self._known.clear()
                return self._of(table, grid_mm)
            x, y = np.split(table[new].T.astype(np.float64) * grid_mm, 2)
            found = np.minimum(
                self._need(list(zip(x, y, strict=True)), self._width, ROUNDS), NEVER_MM
            )
            self._known.update(zip((names[at] for at in new), found.tolist(), strict=True))
        return np.array([self._known[name] for name in names])


def straddles(low: FloatArray, high: FloatArray, bounds: Sequence[float]) -> NDArray[np.bool_]:
    """Whether some bound lies between the ends.

    Parameters
    ----------
    low, high : ndarray, shape (n,)
    bounds : sequence of float

    Returns
    -------
    ndarray of bool, shape (n,)
    """
    between = np.zeros(len(low), dtype=bool)
    for bound in bounds:
        between |= (low <= bound) & (high > bound)
    return between
