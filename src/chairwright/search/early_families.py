"""Early ends of figures of a place's sizes, before the outline is complete."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.figures.band import Band
from chairwright.figures.corner import out_needed_at_mm
from chairwright.figures.family import number
from chairwright.figures.space import Corner

Corners = Callable[[Rows], Sequence[Corner]]
TRIED_DEG = 45.0
"""Angle at which an unfinished outline is held in the corner; any angle gives a low end."""

LOOKED_AFTER = ("leg_length", "arm_support", "foot_supports")
"""Choices that move the outline much, last made first: only then is it held in the corner anew, and
the low end is carried with the rows in between."""

CORNERS = ("corner_free_mm", "corner_arc_mm")
"""A turn is a motion, so what any motion needs is a low end of both."""


def early_of_family(name: str, corners: Corners) -> Callable[[Rows], Band] | None:
    """Early ends of one figure of a family; None where there are none.

    Parameters
    ----------
    name : str
        ``family@parameters``.
    corners : callable
        Outermost points at their least.
    """
    family, _, typed = name.partition("@")
    width = number(typed)
    if family in CORNERS and width:
        return _corner(corners, width)
    return None


def _corner(corners: Corners, width: float) -> Callable[[Rows], Band]:
    def band(rows: Rows) -> Band:
        made = next((choice for choice in LOOKED_AFTER if choice in rows.index), None)
        if made is None:
            low = np.zeros(len(rows))
        else:
            key = f"early corner {width} {made}"
            if key not in rows.columns:
                rows[key] = np.maximum(out_needed_at_mm(corners(rows), width, TRIED_DEG), 0.0)
            low = rows[key]
        return Band(low, np.full(len(rows), np.inf))

    return band
