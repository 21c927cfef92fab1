"""Arrays of (partly) chosen set-ups: option positions and what follows from them."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.pose import turned
from chairwright.line.model import Line
from chairwright.mass_points import FloatArray, MassPoints

IndexArray = NDArray[np.intp]
Columns = dict[str, FloatArray]


@dataclass
class Rows:
    """A table of set-ups; every array has shape (n,).

    Parameters
    ----------
    line : Line
    index : dict of str to ndarray of int
        Option position of each choice made so far.
    columns : dict of str to ndarray
        What follows from the choices, in mm, kg and rad; frame axes unless a name says floor.
    """

    line: Line
    index: dict[str, IndexArray]
    columns: Columns = field(default_factory=dict)

    def __len__(self) -> int:
        """Return the number of set-ups."""
        for array in self.index.values():
            return len(array)
        return 0

    def __getitem__(self, name: str) -> FloatArray:
        """One column, shape (n,)."""
        return self.columns[name]

    def __setitem__(self, name: str, values: FloatArray) -> None:
        """Set one column."""
        self.columns[name] = values

    def option(self, choice: str, key: str) -> FloatArray:
        """One figure of the chosen options, shape (n,)."""
        return self.line.column(choice, key)[self.index[choice]]

    def take(self, rows: IndexArray | NDArray[np.bool_]) -> Rows:
        """Some of the rows, in the given order."""
        places = np.flatnonzero(rows) if rows.dtype == bool else rows
        return Rows(
            self.line,
            {name: array.take(places) for name, array in self.index.items()},
            {name: array.take(places) for name, array in self.columns.items()},
        )

    def alike(self) -> Rows:
        """The same set-ups with columns of their own to add to."""
        return Rows(self.line, self.index, dict(self.columns))

    def tried(self, choice: str, option: int) -> Rows:
        """The same rows with one option of one more choice; columns are shared until set."""
        trial = Rows(self.line, dict(self.index), dict(self.columns))
        trial.index[choice] = np.full(len(self), option)
        return trial

    def to_floor(self, x_mm: Any, z_mm: Any) -> tuple[FloatArray, FloatArray]:
        """Frame axes to floor axes, side view [mm]."""
        along, up = turned(
            x_mm - self["axle_x"], z_mm - self["axle_z"], self["sin_pitch"], self["cos_pitch"]
        )
        return along, up + self["rear_height"]

    def load(self, points: list[MassPoints]) -> None:
        """Add point masses in frame axes to the rows' sums.

        Rear wheels count apart: their place is the axle, and the frame tips without them.
        """
        zero = np.zeros(len(self))
        for point in points:
            mass = zero + point.mass_kg
            if point.moves_with == "rear_wheels":
                self._add("wheel_mass", mass)
                continue
            self._add("frame_mass", mass)
            self._add("frame_mass_x", mass * point.x_mm)
            self._add("frame_mass_y", mass * point.y_mm)
            self._add("frame_mass_z", mass * point.z_mm)

    def _add(self, name: str, values: FloatArray) -> None:
        held = self.columns.get(name)
        self.columns[name] = values if held is None else held + values
