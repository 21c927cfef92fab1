"""A set-up target by target: what each figure hangs on, and what is against a better one."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.moved import change
from chairwright.fitting.one_change import OneChange, Step
from chairwright.mass_points import FloatArray
from chairwright.targets.target import Target
from chairwright.targets.verdict import penalty


@dataclass(frozen=True)
class Break:
    """A must that a set-up breaks: the value that it reaches; NaN when it has no such figure."""

    target: Target
    value: float


@dataclass(frozen=True)
class Nearer:
    """The one change that brings a missed preference nearest, and what is against it.

    Parameters
    ----------
    step : Step
    value : float
        The preference's figure then.
    breaks : tuple of Break
        Musts that it breaks.
    costs_more : float
        What all preferences together then cost more.
    """

    step: Step
    value: float
    breaks: tuple[Break, ...]
    costs_more: float


@dataclass(frozen=True)
class Reason:
    """One target of a set-up, with what decides it.

    Parameters
    ----------
    judged : Judged
    cost : float
        Of a missed preference; 0 otherwise.
    decided_by : Step or None
        The choice that moves the figure most when it alone is changed, with the option chosen;
        None when no allowed change moves it.
    nearer : Nearer or None
        Of a missed preference; None when no single change brings it nearer.
    """

    judged: Judged
    cost: float
    decided_by: Step | None
    nearer: Nearer | None


def cost_of(judged: Judged) -> float:
    """What a preference costs; 0 for a must."""
    if judged.target.must:
        return 0.0
    scale = FIGURES[judged.target.figure].scale
    return float(penalty(judged.target, np.array([judged.value]), scale)[0])


def reasons_of(setup: Described, changes: OneChange) -> tuple[Reason, ...]:
    """Every target of a set-up with what decides it.

    Parameters
    ----------
    setup : Described
    changes : OneChange
        From it, for its targets.

    Returns
    -------
    tuple of Reason
    """
    costs = np.array([cost_of(judged) for judged in setup.judged])
    return tuple(
        Reason(
            judged=judged,
            cost=float(costs[at]),
            decided_by=_decider(setup, judged, changes),
            nearer=_nearer(judged, at, costs, changes) if costs[at] > 0.0 else None,
        )
        for at, judged in enumerate(setup.judged)
    )


def _decider(setup: Described, judged: Judged, changes: OneChange) -> Step | None:
    """The choice with the change that moves a figure furthest, as it is printed."""
    figure = FIGURES[judged.target.figure]
    furthest, name = 0.0, ""
    for step, value in zip(changes.steps, changes.values[figure.name], strict=True):
        by = abs(change(figure, judged.value, float(value)))
        if by == 0.0:
            continue
        if by > furthest or not name:
            furthest, name = (0.0 if np.isnan(by) else by), step.choice
    return Step(name, setup.options[name]) if name else None


def _nearer(judged: Judged, at: int, costs: FloatArray, changes: OneChange) -> Nearer | None:
    """Of the changes that make a preference cheapest, the one that breaks and costs least."""
    figure = judged.target.figure
    total = changes.costs.sum(axis=1) - costs.sum()
    order = np.lexsort([total, changes.steps_outside(), changes.costs[:, at]])
    if not len(order) or changes.costs[order[0], at] >= costs[at]:
        return None
    best = int(order[0])
    value = float(changes.values[figure][best])
    return Nearer(changes.steps[best], value, breaks_of(changes, best), float(total[best]))


def breaks_of(changes: OneChange, row: int) -> tuple[Break, ...]:
    """The musts that one of the changes breaks."""
    return tuple(
        Break(target, float(changes.values[target.figure][row]))
        for target, lost in zip(changes.targets, changes.lost[row], strict=True)
        if lost
    )
