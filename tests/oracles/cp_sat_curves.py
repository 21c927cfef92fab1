"""Whole numbers and curves for the constraint model."""

from __future__ import annotations

from collections.abc import Callable, Sequence

import numpy as np
from ortools.sat.python import cp_model

from .cp_sat_space import Array, Whole

Number = cp_model.IntVar | int
Expression = cp_model.LinearExpr | int

SLOPE = 10**5
"""Slopes of chords are whole numbers in this part."""


def whole(values: Array | float, scale: float) -> Whole:
    """Round scaled values to whole numbers; 0 where there is none, which no table may use."""
    rounded: Whole = np.round(np.nan_to_num(np.asarray(values)) * scale).astype(np.int64)
    return rounded


def at_least(
    model: cp_model.CpModel,
    x: cp_model.IntVar,
    curve: Callable[[Array], Array],
    places: Array,
    scales: tuple[float, float],
) -> cp_model.IntVar:
    """A variable that is at least a curve of another one, by chords between given places.

    A convex curve needs only its chords' lines; any other one picks the chord by its segment.

    Parameters
    ----------
    model : CpModel
    x : IntVar
    curve : callable
        From x to the value, both in their own units.
    places : ndarray
        Ends of the chords in x's unit; x is kept between the first and the last.
    scales : tuple of float
        Whole numbers for one unit of x and of the value.
    """
    at, height = whole(places, scales[0]), whole(curve(places), scales[1])
    model.add_linear_constraint(x, int(at[0]), int(at[-1]))
    value = model.new_int_var(int(height.min()) - 2, int(height.max()) + 2, "curve")
    slope = np.round(np.diff(height) / np.diff(at) * SLOPE).astype(np.int64)
    convex = bool((np.diff(slope) >= -SLOPE_ERROR).all())
    chosen = [] if convex else _segments(model, x, at)
    for number, each in enumerate(slope):
        start, end = int(at[number]), int(height[number])
        line = model.add(SLOPE * (value - end) >= int(each) * (x - start) - SLOPE)
        if not convex:
            line.only_enforce_if(chosen[number])
    return value


SLOPE_ERROR = 2
"""Rounding of two neighbouring slopes."""


def _segments(model: cp_model.CpModel, x: cp_model.IntVar, at: Whole) -> Sequence[cp_model.IntVar]:
    """One literal for each stretch between neighbouring places; exactly one of them is true."""
    chosen = [model.new_bool_var("") for _ in at[1:]]
    model.add_exactly_one(chosen)
    for literal, low, high in zip(chosen, at[:-1], at[1:], strict=True):
        model.add_linear_constraint(x, int(low), int(high)).only_enforce_if(literal)
    return chosen


def product(model: cp_model.CpModel, one: Number, other: Number) -> Expression:
    """The product of two variables; only that of what they vary by is a constraint of its own.

    Parameters
    ----------
    model : CpModel
    one, other : IntVar or int
    """
    (least, most), (low, high) = domain(one), domain(other)
    straight = least * other + low * one - least * low
    if least == most or low == high:
        return straight
    varying = model.new_int_var(0, (most - least) * (high - low), "product")
    model.add_multiplication_equality(varying, [one - least, other - low])
    return straight + varying


def domain(number: Number) -> tuple[int, int]:
    """Least and greatest value of a variable or a constant."""
    if isinstance(number, int):
        return number, number
    ends = list(number.proto.domain)
    return ends[0], ends[-1]


def ends(places: Array, step: float) -> Array:
    """Evenly spaced places from the least to the greatest of some, at most a step apart."""
    low, high = float(np.min(places)), float(np.max(places))
    return np.linspace(low, high, max(2, int(np.ceil((high - low) / step)) + 1))
