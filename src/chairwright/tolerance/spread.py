"""How far one number can be off: first order, or by Monte Carlo where it bends too much."""

from __future__ import annotations

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

import numpy as np

from chairwright.chair.weighed import COVERAGE
from chairwright.mass_points import FloatArray
from chairwright.tolerance.draws import FIRST_DRAWS
from chairwright.tolerance.model import Input

AGREES = 0.05
"""First order and Monte Carlo agree when their half widths differ by no more than this share."""

CHANCE = 3.0
"""So many standard errors of the first draws inside `AGREES`, the rest cannot part the two."""

NOTHING = 1e-9
"""A spread below this share of the value (or of one unit) is rounding."""


@dataclass(frozen=True)
class Spread:
    """How far one number can be off.

    Parameters
    ----------
    half : float
        Half width, two standard uncertainties; by Monte Carlo where ``linear`` is False.
    linear : bool
        Whether first order will do.
    first_order : float
        Half width by first order alone.
    up, down : ndarray, shape (inputs,)
        What one standard uncertainty more, and less, of each input adds.
    more : tuple of (Input, float, float)
        Inputs of a place, with what one standard uncertainty more and less of each adds.
    """

    half: float
    linear: bool
    first_order: float
    up: FloatArray = field(repr=False)
    down: FloatArray = field(repr=False)
    more: tuple[tuple[Input, float, float], ...] = ()


def slopes(up: FloatArray, down: FloatArray) -> FloatArray:
    """Central differences; one-sided where the other side has no value, 0 where none has.

    Parameters
    ----------
    up, down : ndarray
        Changes by one standard uncertainty more, and less.
    """
    both = (up - down) / 2.0
    one = np.where(np.isnan(up), -down, up)
    return np.nan_to_num(np.where(np.isnan(both), one, both))


def moves(value: float, spread: Spread) -> bool:
    """Whether a number's spread is more than the arithmetic's rounding."""
    return spread.half > NOTHING * max(1.0, abs(value))


def root_sum(parts: FloatArray) -> float:
    """Root of the sum of squares.

    References
    ----------
    JCGM 100:2008, formula (10), inputs independent of each other.
    """
    return float(np.sqrt(np.sum(np.square(parts))))


def root_mean(parts: FloatArray) -> float:
    """Root of the mean of squares."""
    return float(np.sqrt(np.mean(np.square(parts))))


def spread_of(
    value: float,
    up: FloatArray,
    down: FloatArray,
    drawn: Callable[[int], FloatArray],
    steps: Callable[[int], FloatArray],
) -> Spread:
    """Spread of one number, and whether first order will do.

    Parameters
    ----------
    value : float
    up, down : ndarray, shape (inputs,)
        Changes by one standard uncertainty of each input.
    drawn : callable
        The number on the first so many draws.
    steps : callable
        The draws themselves, shape (count, inputs).

    Returns
    -------
    Spread

    Notes
    -----
    Both are compared on the same draws: the straight line's own standard deviation there beside
    the number's, so that the draws' chance error falls out.

    References
    ----------
    JCGM 101:2008, clause 8 (validation of the first order by Monte Carlo) and 7.9 (fewer draws
    will do once their chance error, there twice the standard deviation, is small enough); both
    from memory, unverified.
    """
    rise = slopes(up, down)
    first = COVERAGE * root_sum(rise)
    ratio = _ratio(value, rise, drawn(FIRST_DRAWS), steps(FIRST_DRAWS))
    if ratio is None or abs(ratio.size - 1.0) + CHANCE * ratio.error <= AGREES:
        return Spread(first, True, first, up, down)
    count = len(steps(0))
    every, line = drawn(count), steps(count)
    ratio = _ratio(value, rise, every, line)
    if ratio is None or abs(ratio.size - 1.0) <= AGREES:
        return Spread(first, True, first, up, down)
    return Spread(COVERAGE * float(np.nanstd(every)), False, first, up, down)


class _Ratio(NamedTuple):
    """One standard deviation over another on the same draws, and its own standard error.

    The error is of first order (delta method): of the log, half that of the two variances' logs.
    """

    size: float
    error: float


def _ratio(value: float, rise: FloatArray, drawn: FloatArray, steps: FloatArray) -> _Ratio | None:
    """The number's standard deviation over its straight line's; None when it does not move."""
    there = ~np.isnan(drawn)
    if there.sum() < 2:
        return None
    moved = drawn[there] - np.mean(drawn[there])
    deviation = root_mean(moved)
    least = NOTHING * max(1.0, abs(value))
    if deviation <= least and root_sum(rise) <= least:
        return None
    line = (steps @ rise)[there]
    line -= np.mean(line)
    straight = root_mean(line)
    if min(deviation, straight) <= least:
        return _Ratio(np.inf if straight <= least else 0.0, np.inf)
    size = deviation / straight
    parts = np.square(moved / deviation) - np.square(line / straight)
    return _Ratio(size, size / 2.0 * root_mean(parts) / math.sqrt(len(parts)))


def with_more(spread: Spread, more: Sequence[tuple[Input, float, float]]) -> Spread:
    """The same number with the inputs of a place, which nothing else hangs on.

    Parameters
    ----------
    spread : Spread
    more : sequence of (Input, float, float)
        Each with what one standard uncertainty more, and less, adds.

    References
    ----------
    JCGM 100:2008, 5.1.2 with the note's second-order term: variance of a z + c z2 / 2 for a
    normal z is a2 + c2 / 2.
    """
    if not more:
        return spread
    variance = 0.0
    for _, up, down in more:
        rise, bend = (up - down) / 2.0, up + down
        variance += rise**2 + bend**2 / 2.0
    added = COVERAGE**2 * variance
    return Spread(
        float(np.sqrt(spread.half**2 + added)),
        spread.linear,
        float(np.sqrt(spread.first_order**2 + added)),
        spread.up,
        spread.down,
        (*spread.more, *more),
    )
