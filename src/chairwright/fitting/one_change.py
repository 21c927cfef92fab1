"""A set-up with one choice changed and everything else kept: every open option, at once."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import buildable
from chairwright.chair.rows import IndexArray
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.registry import FIGURES
from chairwright.line.model import Option
from chairwright.mass_points import FloatArray
from chairwright.search.space import Space, obeyed
from chairwright.targets.target import Target
from chairwright.targets.verdict import broken, outside, penalty


@dataclass(frozen=True)
class Step:
    """One option in the place of the present one.

    Parameters
    ----------
    choice : str
    option : Option
    """

    choice: str
    option: Option


@dataclass(frozen=True)
class OneChange:
    """All set-ups that lie one change away, are allowed and stand on their wheels.

    Parameters
    ----------
    steps : tuple of Step
        n changes, in the order of the choices and of the line's options.
    targets : tuple of Target
        t targets.
    values : dict of str to ndarray, shape (n,)
        Figures of the targets.
    lost : ndarray of bool, shape (n, t)
        Which musts each change breaks; False for preferences.
    costs : ndarray, shape (n, t)
        What each preference then costs; 0 for musts.
    """

    steps: tuple[Step, ...]
    targets: tuple[Target, ...]
    values: dict[str, FloatArray]
    lost: NDArray[np.bool_]
    costs: FloatArray

    def of(self, choice: str) -> list[int]:
        """Places of the changes of one choice."""
        return [at for at, step in enumerate(self.steps) if step.choice == choice]

    def steps_outside(self) -> FloatArray:
        """How far each change breaks the musts, in steps of their figures' scales, shape (n,)."""
        total = np.zeros(len(self.steps))
        for at, target in enumerate(self.targets):
            if target.must:
                off = outside(target, self.values[target.figure]) / FIGURES[target.figure].scale
                total += np.where(self.lost[:, at], np.nan_to_num(off, nan=np.inf), 0.0)
        return total


def one_change(space: Space, index: Mapping[str, int], targets: Sequence[Target]) -> OneChange:
    """Change one choice at a time to each other option that is open.

    Parameters
    ----------
    space : Space
    index : mapping of str to int
        Option position of every choice.
    targets : sequence of Target

    Returns
    -------
    OneChange
    """
    steps, rows = _changed(space, index)
    names = list(dict.fromkeys(target.figure for target in targets))
    made, _ = realise(space.line, space.occupant, rows)
    stands = buildable(made)
    found = figures_of(made, space.occupant, names)
    values = {name: np.asarray(found[name])[stands] for name in names}
    lost = [_lost(target, values[target.figure]) for target in targets]
    costs = [_cost(target, values[target.figure]) for target in targets]
    return OneChange(
        steps=tuple(step for step, fine in zip(steps, stands, strict=True) if fine),
        targets=tuple(targets),
        values=values,
        lost=np.stack(lost, axis=1),
        costs=np.stack(costs, axis=1),
    )


def _changed(space: Space, index: Mapping[str, int]) -> tuple[list[Step], dict[str, IndexArray]]:
    """Every change that the rules allow."""
    pairs = [
        (name, int(at))
        for name, options in space.allowed.items()
        for at in options
        if at != index[name]
    ]
    rows = {name: np.full(len(pairs), at, dtype=np.intp) for name, at in index.items()}
    for row, (name, at) in enumerate(pairs):
        rows[name][row] = at
    keep = obeyed(space.line, space.line.rules, rows) if pairs else np.zeros(0, dtype=bool)
    steps = [
        Step(name, space.line.choices[name].options[at])
        for (name, at), fine in zip(pairs, keep, strict=True)
        if fine
    ]
    return steps, {name: array[keep] for name, array in rows.items()}


def _lost(target: Target, values: FloatArray) -> NDArray[np.bool_]:
    return broken(target, values) if target.must else np.zeros(len(values), dtype=bool)


def _cost(target: Target, values: FloatArray) -> FloatArray:
    if target.must:
        return np.zeros(len(values))
    return penalty(target, values, FIGURES[target.figure].scale)
