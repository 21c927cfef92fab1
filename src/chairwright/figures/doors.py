"""Doors: straight through, and from a corridor by one steady arc, on arrays of chairs.

The opening is in the side wall of the corridor. The chair comes along the corridor, turns
through 90 degrees about one point of the axle line, and drives straight through. The wall
may have any thickness: the turn is over before the chair is between the jambs, or keeps clear
of walls of any thickness. Theory: docs/theory/turning.md.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import ArrayLike

from chairwright.figures.corner import ROUNDS, beside, least_over
from chairwright.figures.turning import Corner, stacked
from chairwright.mass_points import FloatArray

RADII = 241


def door_straight_mm(corners: Sequence[Corner], hands: ArrayLike = 0.0) -> FloatArray:
    """Clear width that the chair needs straight through, shape (n,) [mm].

    ``hands`` [mm] is the room on each side for hands on the rims, if they are to stay there.
    """
    _, y = stacked(corners)
    return np.asarray(2 * np.max(y, axis=0) + 2 * np.asarray(hands))


@dataclass(frozen=True, eq=False)
class Turn:
    """A quarter turn to the left about a point of the axle line, as a place sees it.

    Parameters
    ----------
    first, second : ndarray [mm]
        Reach from the centre towards the outer wall of the way in and of the way out.
    inner : ndarray [mm]
        From the centre to the line along the chair's near side; negative when the centre is
        under the chair.
    """

    first: FloatArray
    second: FloatArray
    inner: FloatArray

    def kept_off(self, margin: float) -> Turn:
        """The same with a margin all round."""
        return Turn(self.first + margin, self.second + margin, self.inner - margin)


def turn_of(x: FloatArray, y: FloatArray, radius: FloatArray) -> Turn:
    """Turn of an outline about (0, radius).

    Parameters
    ----------
    x, y : ndarray, shape (k, n) [mm]
        Corners, y to the left; a point to the right counts negative.
    radius : ndarray, shape (n,) [mm]

    Returns
    -------
    Turn
    """
    across = np.maximum(radius - y, 0.0)
    first = np.max(np.hypot(np.minimum(x, 0.0), across), axis=0)
    second = np.max(np.hypot(np.maximum(x, 0.0), across), axis=0)
    return Turn(first, second, radius - np.max(y, axis=0))


def door_setback(turn: Turn, opening: FloatArray) -> FloatArray:
    """How far before the wall's face the centre of the turn must lie [mm].

    The chair's near side grazes the near jamb at the end of the turn. The far jamb has to lie
    outside the circle of the front corner; negative when the opening is so wide that the
    centre may lie inside the wall.
    """
    across = opening + turn.inner
    before = np.sqrt(np.maximum(turn.second**2 - across**2, 0.0))
    into = turn.inner**2 - np.maximum(turn.second - opening, 0.0) ** 2
    inside = np.where(turn.inner > 0, -np.sqrt(np.maximum(into, 0.0)), -turn.inner)
    return np.where(turn.second > across, np.maximum(before, -turn.inner), inside)


def door_corridor_mm(
    corners: Sequence[Corner], opening: ArrayLike, rounds: int = ROUNDS
) -> FloatArray:
    """Corridor in which one steady arc takes the chair through a door in its side wall [mm].

    Parameters
    ----------
    corners : sequence of Corner
    opening : array_like, shape (n,) [mm]
        Clear width.
    rounds : int
        Golden sections of the least over the radius.

    Returns
    -------
    ndarray, shape (n,) [mm]
        Least over the radius, from turning about the middle of the axle up; infinite when the
        chair is wider than the opening. More moves can do with less: ``routes.door_route``.
    """
    x, y, known = beside(corners, opening)
    aside, nearest = y[:, None, :], np.max(y, axis=0)
    squares = [ends[:, None, :] ** 2 for ends in (np.minimum(x, 0.0), np.maximum(x, 0.0))]
    span = 4 * (np.max(np.hypot(x, y), axis=0) + known)

    def need(part: FloatArray) -> FloatArray:
        radius = span * part**2
        away = np.square(radius + aside)  # of each pair of corners the one on the far side counts
        first, second = (np.sqrt(np.max(away + x2, axis=0)) for x2 in squares)
        turn = Turn(first, second, radius - nearest)
        return np.asarray(turn.first + door_setback(turn, known))

    least = least_over(need, np.zeros_like(span), np.ones_like(span), RADII, rounds)
    return np.where(known < 2 * nearest, np.inf, least)
