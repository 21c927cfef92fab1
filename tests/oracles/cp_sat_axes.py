"""Axes of the constraint model: single choices, the running gear as a whole, the hip as a whole.

A table of the model runs over a few axes. Its numbers are the program's own figures, evaluated
with every choice outside the axes at a first option that stands.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import PITCH_RANGE_DEG
from chairwright.chair.rows import Rows
from chairwright.chair.steps import HIP, STEPS
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.registry import FIGURES
from chairwright.line.choices import CHOICES
from chairwright.mass_points import MassPoints
from chairwright.search.space import Space
from chairwright.targets.target import Target

from .cp_sat_space import Array, Index, certain, cost_of, obeys

GEAR = STEPS[0].choices
Positions = NDArray[np.intp]
JOINED = {"gear": GEAR, "hip": HIP}
LARGEST_TABLE = 1_000_000


class NothingAllowed(Exception):
    """Already a table shows that no set-up holds every must."""


@dataclass(frozen=True)
class Axis:
    """One axis: a choice, or several joined into one list of combinations.

    Parameters
    ----------
    name : str
    choices : tuple of str
    positions : ndarray of int, shape (combinations, choices)
        Option positions in the line.
    """

    name: str
    choices: tuple[str, ...]
    positions: Positions

    def __len__(self) -> int:
        """Return the number of combinations."""
        return len(self.positions)


class Tabulation:
    """Tables of one space.

    Parameters
    ----------
    space : Space
    targets : sequence of Target
        Those that the running gear alone settles cut its list of combinations.
    """

    def __init__(self, space: Space, targets: Sequence[Target]) -> None:
        self.space = certain(space)
        self.axes = {n: Axis(n, (n,), o[:, None]) for n, o in self.space.allowed.items()}
        self.axes["hip"] = self._joined("hip")
        self.axes["gear"] = self._joined("gear")
        self.axes["gear"] = self._standing(targets)
        if not all(map(len, self.axes.values())):
            raise NothingAllowed

    def _joined(self, name: str) -> Axis:
        choices = JOINED[name]
        grid = np.meshgrid(*(self.space.allowed[each] for each in choices), indexing="ij")
        index = {n: axis.ravel() for n, axis in zip(choices, grid, strict=True)}
        keep = obeys(self.space.line, index, choices)
        return Axis(name, choices, np.stack([index[n][keep] for n in choices], axis=1))

    def _standing(self, targets: Sequence[Target]) -> Axis:
        gear = self.axes["gear"]
        rows = self.rows(("gear",))
        pitch = np.degrees(rows["pitch"])
        fine = (pitch >= PITCH_RANGE_DEG[0]) & (pitch <= PITCH_RANGE_DEG[1])
        for target in targets:
            if target.must and self.axes_of(target.figure) == ("gear",):
                values = figures_of(rows, self.space.occupant, [target.figure])[target.figure]
                fine &= cost_of(target, values) == 0.0
        return Axis(gear.name, gear.choices, gear.positions[fine])

    def axes_of(self, figure: str) -> tuple[str, ...]:
        """Axes over which an exact figure can be tabulated; see `joined_axes`."""
        return joined_axes(FIGURES[figure].touched_by)

    def grid(self, axes: Sequence[str]) -> Positions:
        """All combinations of some axes, shape (n, axes): positions along each axis."""
        sizes = [len(self.axes[name]) for name in axes]
        if math.prod(sizes) > LARGEST_TABLE:
            message = f"table over {axes} has {math.prod(sizes):,} rows"
            raise ValueError(message)
        places = np.meshgrid(*(np.arange(size) for size in sizes), indexing="ij")
        return np.stack([each.ravel() for each in places], axis=1)

    def index(self, axes: Sequence[str]) -> Index:
        """Option positions of every choice over the grid of some axes."""
        grid = self.grid(axes)
        first = self._first
        index = {name: np.full(len(grid), first[name]) for name in CHOICES}
        for number, name in enumerate(axes):
            axis = self.axes[name]
            for column, choice in enumerate(axis.choices):
                index[choice] = axis.positions[grid[:, number], column]
        return index

    @cached_property
    def _first(self) -> dict[str, int]:
        first = {name: int(options[0]) for name, options in self.space.allowed.items()}
        rows, _ = realise(self.space.line, self.space.occupant, self._with_gear(first))
        stands = np.nonzero(np.isfinite(rows["pitch"]))[0][0]
        gear = self.axes["gear"]
        return {**first, **dict(zip(gear.choices, gear.positions[stands].tolist(), strict=True))}

    def _with_gear(self, first: dict[str, int]) -> Index:
        gear = self.axes["gear"]
        index = {name: np.full(len(gear), place) for name, place in first.items()}
        index.update({n: gear.positions[:, at] for at, n in enumerate(gear.choices)})
        return index

    def rows(self, axes: Sequence[str]) -> Rows:
        """Complete set-ups over the grid of some axes."""
        return realise(self.space.line, self.space.occupant, self.index(axes))[0]

    def figure(self, name: str, axes: Sequence[str]) -> Array:
        """One figure over the grid of some axes."""
        rows = self.rows(axes)
        return np.array(figures_of(rows, self.space.occupant, [name])[name])

    def brought(self, step: int, axes: Sequence[str]) -> dict[str, Array]:
        """Mass [kg] and first moments [kg mm] in frame axes that one step brings.

        ``wheels`` is the mass of the rear wheels, which is not in ``mass``.
        """
        rows = Rows(self.space.line, self.index(axes))
        points: list[MassPoints] = []
        for each in STEPS[: step + 1]:
            points = each.follow(rows, self.space.occupant)
        zero = np.zeros(len(rows))
        sums = dict.fromkeys(("mass", "x", "y", "z", "wheels"), zero)
        for point in points:
            if point.moves_with == "rear_wheels":
                sums["wheels"] = sums["wheels"] + point.mass_kg
                continue
            sums["mass"] = sums["mass"] + point.mass_kg
            for axis in "xyz":
                sums[axis] = sums[axis] + point.mass_kg * getattr(point, f"{axis}_mm")
        return sums


def joined_axes(choices: Iterable[str]) -> tuple[str, ...]:
    """Axes for a table that depends on some choices.

    Several choices of the running gear become the running gear; several of the hip, the hip.

    Parameters
    ----------
    choices : iterable of str
    """
    left = set(choices)
    axes = []
    for name, members in JOINED.items():
        inside = left & set(members)
        if len(inside) > MOST_SINGLE[name]:
            axes.append(name)
            left -= inside
    return (*axes, *(name for name in CHOICES if name in left))


MOST_SINGLE = {"gear": 2, "hip": 1}
"""A table on more of an axis's choices than this runs over the whole axis."""
