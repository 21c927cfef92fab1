"""Which figures differ between set-ups, and by how much, on the numbers as they are printed."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.described import Described


def printed(figure: Figure, value: float) -> float:
    """A value as it is printed; NaN when there is none.

    Examples
    --------
    >>> printed(FIGURES["seat_angle_deg"], 3.04)
    3.0
    """
    return value if math.isnan(value) else round(value, figure.digits) + 0.0


def change(figure: Figure, first: float, second: float) -> float:
    """How far the printed second value lies above the printed first.

    Parameters
    ----------
    figure : Figure
    first, second : float
        In the figure's unit.

    Returns
    -------
    float
        NaN when one of them has no value, 0 when neither has.

    Examples
    --------
    >>> change(FIGURES["tip_rear_locked_deg"], 10.04, 7.96)
    -2.0
    """
    if math.isnan(first) and math.isnan(second):
        return 0.0
    return printed(figure, printed(figure, second) - printed(figure, first))


def moves(figure: Figure, first: float, second: float) -> bool:
    """Whether a figure prints differently, or is there in one set-up only.

    Parameters
    ----------
    figure : Figure
    first, second : float
        In the figure's unit.
    """
    return change(figure, first, second) != 0.0


def moved_figures(base: Described, others: Sequence[Described]) -> tuple[Figure, ...]:
    """The figures that some other set-up prints differently, in the order of the registry."""
    return tuple(
        figure
        for name, figure in FIGURES.items()
        if any(moves(figure, base.figures[name], other.figures[name]) for other in others)
    )


def direction(figure: Figure, values: Sequence[float]) -> int:
    """Which way a figure goes along a run.

    Parameters
    ----------
    figure : Figure
    values : sequence of float
        In the order of the run; NaN is left out.

    Returns
    -------
    int
        1 when the printed values never fall and rise at least once, -1 the other way round,
        0 when they do neither or both.
    """
    shown = [printed(figure, value) for value in values if not math.isnan(value)]
    steps = [second - first for first, second in pairwise(shown)]
    if any(step > 0 for step in steps) and all(step >= 0 for step in steps):
        return 1
    if any(step < 0 for step in steps) and all(step <= 0 for step in steps):
        return -1
    return 0
