"""Ends of the heaviest part while choices are open: the parts' masses add up."""

from __future__ import annotations

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.band import Band
from chairwright.line.choices import CHOICES
from chairwright.mass_points import FloatArray
from chairwright.search.space import Space

PAIRS = (("rear_wheel", "hand_rim"), ("arm_support",), ("hanger", "foot_plate", "leg_length"))
"""Taken off for lifting, one at a time."""

WHOLE = ("cushion",)
"""Taken off as it is."""

OFF = frozenset(name for names in (*PAIRS, WHOLE) for name in names)


class EarlyHeaviest:
    """Low and high end of the heaviest part.

    Parameters
    ----------
    space : Space
    """

    def __init__(self, space: Space) -> None:
        self._space = space
        self._fixed = sum(part.mass_kg for part in space.line.fixed_parts)
        self._ends = {
            name: (float(masses.min()), float(masses.max()))
            for name, options in space.allowed.items()
            for masses in [self._masses(name)[options]]
        }

    def _masses(self, name: str) -> FloatArray:
        return np.nan_to_num(self._space.line.column(name, "mass_kg"))

    def __call__(self, rows: Rows) -> Band:
        """Ends for unfinished set-ups, shape (n,) each."""
        frame = self._sum(rows, tuple(name for name in CHOICES if name not in OFF))
        cushion = self._sum(rows, WHOLE)
        wheel, arm, hanger = (self._sum(rows, names) for names in PAIRS)
        # Where there is no foot support no hanger counts: it may raise the high end only.
        return Band(
            np.maximum.reduce([frame.low + self._fixed, cushion.low, wheel.low / 2, arm.low / 2]),
            np.maximum.reduce(
                [frame.high + self._fixed, cushion.high]
                + [pair.high / 2 for pair in (wheel, arm, hanger)]
            ),
        )

    def _sum(self, rows: Rows, names: tuple[str, ...]) -> Band:
        low, high = np.zeros(len(rows)), np.zeros(len(rows))
        for name in names:
            if name in rows.index:
                mass = self._masses(name)[rows.index[name]]
                low, high = low + mass, high + mass
            else:
                least, most = self._ends[name]
                low, high = low + least, high + most
        return Band(low, high)
