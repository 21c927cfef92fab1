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
        outline = corners(rows)
        low = np.maximum(out_needed_at_mm(outline, width, TRIED_DEG), 0.0)
        return Band(low, np.full(len(rows), np.inf))

    return band
