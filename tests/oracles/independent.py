"""Sums and geometry of a chair worked out again, apart from the program's own."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import Rows
from chairwright.mass_points import MassPoints

Array = NDArray[np.float64]


class OnFloor(NamedTuple):
    """Every point mass of many chairs in floor axes, shape (n, points); mm and kg.

    ``rear_wheel`` marks the points that turn with the rear wheels, shape (points,).
    """

    mass: Array
    x: Array
    y: Array
    z: Array
    rear_wheel: NDArray[np.bool_]

    def com(self, *, without_wheels: bool = False) -> tuple[Array, Array, Array, Array]:
        """Mass and centre of mass, shape (n,) each."""
        use = ~self.rear_wheel if without_wheels else np.ones_like(self.rear_wheel)
        mass = self.mass[:, use]
        total = mass.sum(axis=1)
        x, y, z = (np.einsum("ij,ij->i", mass, a[:, use]) for a in (self.x, self.y, self.z))
        return total, x / total, y / total, z / total


def on_floor(rows: Rows, points: list[MassPoints]) -> OnFloor:
    """Turn the frame's points by a rotation matrix about the rear axle, and lift them.

    Parameters
    ----------
    rows : Rows
        Used for the pitch, the axle's place and its height only.
    points : list of MassPoints
        In frame axes.
    """
    count = len(rows)

    def table(values: list[object]) -> Array:
        return np.stack([np.broadcast_to(np.asarray(v, dtype=float), count) for v in values], 1)

    mass = table([p.mass_kg for p in points])
    x = table([p.x_mm for p in points]) - rows["axle_x"][:, None]
    z = table([p.z_mm for p in points]) - rows["axle_z"][:, None]
    turn = np.exp(1j * rows["pitch"])[:, None]
    turned = (x + 1j * z) * turn
    wheel = np.array([p.moves_with == "rear_wheels" for p in points])
    return OnFloor(
        mass,
        turned.real,
        table([p.y_mm for p in points]),
        turned.imag + rows["rear_height"][:, None],
        wheel,
    )


def contacts(rows: Rows) -> Array:
    """Tyre contacts in plan, shape (n, 4, 2) [mm]: rear left, rear right, front left, right."""
    zero = np.zeros(len(rows))
    rear, front = rows["rear_track"] / 2, rows["caster_track"] / 2
    length = rows["wheelbase"]
    corners = [(zero, rear), (zero, -rear), (length, front), (length, -front)]
    return np.stack([np.stack(pair, axis=1) for pair in corners], axis=1)
