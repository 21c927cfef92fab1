"""Costs, distances and broken musts in the words that explanations share."""

from __future__ import annotations

import math

from chairwright.figures.registry import FIGURES
from chairwright.fitting.moved import change
from chairwright.fitting.target_reasons import Break
from chairwright.line.model import Line
from chairwright.papers.words import measured_words, target_words
from chairwright.targets.target import Target

LEAST_TOLD = 0.005
"""Costs below this print as nothing."""


def cost_words(cost: float) -> str:
    """Write a cost, never shown as nothing; empty for none."""
    if cost <= 0.0:
        return ""
    return f"{cost:.2f}" if cost >= LEAST_TOLD else "under 0.01"


def distance(target: Target, value: float) -> float:
    """Distance from a value to the nearer end of a range, both as they are printed.

    Parameters
    ----------
    target : Target
    value : float
        In the figure's unit.
    """
    ends = [end for end in (target.low, target.high) if end is not None]
    nearer = min(ends, key=lambda end: abs(end - value))
    return abs(change(FIGURES[target.figure], nearer, value))


def side_words(target: Target, value: float) -> str:
    """Say on which side of its range a value lies outside: ``short`` or ``over``."""
    return "short" if target.low is not None and value < target.low else "over"


def break_words(each: Break, line: Line) -> str:
    """Say which must is broken and by how much.

    Parameters
    ----------
    each : Break
    line : Line

    Returns
    -------
    str
    """
    target, figure = each.target, FIGURES[each.target.figure]
    asked = target_words(target, line, each.value)
    if math.isnan(each.value):
        return f"{asked} (the set-up has no such figure)"
    by = distance(target, each.value)
    words = measured_words(figure, by or figure.resolution, line)
    return f"{asked} (by {words})" if by else f"{asked} (by under {words})"
