"""Judging a figure against a target, one value in words or many in arrays."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from chairwright.mass_points import FloatArray
from chairwright.targets.target import Target

Word = Literal["holds", "holds on nominal values", "fails", "not known"]

SLACK = 1e-9
"""A figure this near outside its range counts as inside (rounding of the arithmetic)."""

COST_OF_NO_VALUE = 10.0
"""Steps of the figure's scale that a preference costs when the set-up has no such figure
(a working value: no source)."""


@dataclass(frozen=True)
class Verdict:
    """What is said of one figure.

    Parameters
    ----------
    word : {"holds", "holds on nominal values", "fails", "not known"}
    margin : float
        Distance to the nearer end, in the figure's unit: positive inside, negative
        outside; infinite when both ends are open, NaN when the figure has no value.
    breaks : bool
        True when it refuses the set-up: a must that fails or is not known.
    """

    word: Word
    margin: float
    breaks: bool


def verdict(target: Target, value: float, spread: float = 0.0) -> Verdict:
    """Judge one value of a figure.

    Parameters
    ----------
    target : Target
    value : float
        In the figure's unit; NaN when the set-up has no such figure.
    spread : float
        Half width of the figure's own spread, in its unit; the target's tolerance is
        added to it (worst case, not root sum of squares).

    Returns
    -------
    Verdict
        ``holds`` when the whole spread lies inside the range, ``holds on nominal values``
        when only the value does, ``fails`` when the value lies outside. A must on a figure
        without a value is ``not known`` and refuses the set-up: targets that do not apply
        to a client are never made in the first place.
    """
    if math.isnan(value):
        return Verdict("not known", math.nan, target.must)
    margin = _margin(target, value)
    if margin < -SLACK:
        return Verdict("fails", margin, target.must)
    sure = margin + SLACK >= spread + target.tolerance
    return Verdict("holds" if sure else "holds on nominal values", margin, breaks=False)


def verdict_of_ends(target: Target, value: float, halves: tuple[float, float]) -> Verdict:
    """Judge one value of a figure by how far its margin to each end can be off.

    Parameters
    ----------
    target : Target
    value : float
        In the figure's unit; NaN when the set-up has no such figure.
    halves : tuple of float
        Half width of the margin to the low end and to the high end, in the figure's unit.

    Returns
    -------
    Verdict
        As `verdict`; ``holds`` when each margin is at least its half width.
    """
    found = verdict(target, value)
    if not found.word.startswith("holds"):
        return found
    low = target.low is None or value - target.low + SLACK >= halves[0]
    high = target.high is None or target.high - value + SLACK >= halves[1]
    return Verdict("holds" if low and high else "holds on nominal values", found.margin, False)


def outside(target: Target, values: FloatArray) -> FloatArray:
    """How far values lie outside a target's range.

    Parameters
    ----------
    target : Target
    values : ndarray, shape (n,)
        In the figure's unit.

    Returns
    -------
    ndarray, shape (n,)
        0 inside the range, NaN where the figure has no value.
    """
    distance = np.where(np.isnan(values), np.nan, 0.0)
    if target.low is not None:
        distance = np.maximum(distance, target.low - values)
    if target.high is not None:
        distance = np.maximum(distance, values - target.high)
    return np.where(distance <= SLACK, 0.0, distance)


def broken(target: Target, values: FloatArray) -> NDArray[np.bool_]:
    """Which values miss a target; a figure without a value misses it, shape (n,)."""
    return np.asarray(~(outside(target, values) == 0.0))


def penalty(target: Target, values: FloatArray, scale: float) -> FloatArray:
    """Cost of a preference: weight x distance outside the range / scale.

    Parameters
    ----------
    target : Target
    values : ndarray, shape (n,)
        In the figure's unit.
    scale : float
        A difference that matters to a fitter (``FIGURES[figure].scale``).

    Returns
    -------
    ndarray, shape (n,)
        Where the figure has no value: weight x `COST_OF_NO_VALUE`.
    """
    steps = outside(target, values) / scale
    return np.asarray(target.weight * np.where(np.isnan(steps), COST_OF_NO_VALUE, steps))


def _margin(target: Target, value: float) -> float:
    to_low = math.inf if target.low is None else value - target.low
    to_high = math.inf if target.high is None else target.high - value
    return min(to_low, to_high)
