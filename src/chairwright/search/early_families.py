"""Early ends of figures of a place's sizes, before the outline is complete."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.band import Band
from chairwright.figures.space import Corner
from chairwright.search.outline_ends import OutlineEnds

Corners = Callable[[Rows], Sequence[Corner]]

LOOKED_AFTER = ("leg_length", "arm_support", "foot_supports")
"""Choices that move the outline much, last made first: only then is it looked at anew, and the
low end is carried with the rows in between."""


def early_need(name: str, corners: Corners, ends: OutlineEnds) -> Callable[[Rows], Band]:
    """Early ends of what a corner or a door needs.

    Parameters
    ----------
    name : str
        ``family@parameters``.
    corners : callable
        Outermost points at their least.
    ends : OutlineEnds
    """

    def band(rows: Rows) -> Band:
        made = next((choice for choice in LOOKED_AFTER if choice in rows.index), None)
        if made is None:
            low = np.zeros(len(rows))
        else:
            key = f"early {name} {made}"
            if key not in rows.columns:
                rows[key] = np.maximum(ends.low(corners(rows)), 0.0)
            low = rows[key]
        return Band(low, np.full(len(rows), np.inf))

    return band
