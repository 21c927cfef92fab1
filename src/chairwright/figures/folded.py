"""The chair folded for a boot: a box, with its rear wheels on or taken off.

Cushion, hangers and footplates are off and the anti-tip device is turned up or off; arm supports
stay on (common practice, no source).
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import ArrayLike

from chairwright.chair.rows import Rows
from chairwright.figures.space import back_top, chair_width, push_handle, top_without_wheels
from chairwright.mass_points import FloatArray


def stowed_box(rows: Rows, *, wheels_off: bool) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Length, width and height of the folded chair.

    Parameters
    ----------
    rows : Rows, shape (n,)
    wheels_off : bool
        Whether quick-release wheels are taken off first.

    Returns
    -------
    tuple of ndarray, shape (n,) [mm]
        A frame that does not fold keeps its width.

    References
    ----------
    First principles (theory: space).
    """
    closed = np.where(
        rows["width"] <= rows.line.folds_to_width_mm, rows.line.folded_seat_mm, rows["width"]
    )
    grip, post = push_handle(rows), back_top(rows)
    behind = np.minimum.reduce([grip[0], post[0], np.zeros(len(rows))])
    height = top_without_wheels(rows)
    if wheels_off:
        caster = rows.line.caster_outset_mm + rows.option("caster", "width_mm") / 2
        beside = np.maximum(caster, rows["arm_outer"] - rows["width"] / 2)
        width = closed + 2 * np.maximum(beside, 0.0)
    else:
        behind = np.minimum(behind, -rows["rear_radius"])
        height = np.maximum(height, rows["rear_height"] + rows["rear_radius"])
        width = closed + chair_width(rows) - rows["width"]
    return rows["wheelbase"] + rows["caster_radius"] - behind, width, height


def missing_mm(
    box: tuple[ArrayLike, ArrayLike, ArrayLike],
    width: float,
    height: float,
    depth: float = math.inf,
) -> FloatArray:
    """How much the tightest size lacks for a box that goes in straight, shape (n,) [mm].

    Parameters
    ----------
    box : tuple of three array_like, shape (n,) [mm]
        Edges, for an array of chairs.
    width, height, depth : float [mm]
        Of the opening and behind it.

    Returns
    -------
    ndarray, shape (n,) [mm]
        Of the best of the six ways to lay it; negative is room to spare.
    """
    edges = np.sort(
        np.array(np.broadcast_arrays(*map(np.atleast_1d, box)), dtype=np.float64), axis=0
    )
    space = np.sort(np.array([width, height, depth], dtype=np.float64))
    return np.asarray(np.max(edges - space[:, None], axis=0))
