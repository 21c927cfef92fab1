"""The smallest room to turn round in, and the car of a lift."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from chairwright.figures.turning import Corner, half_turn_width_mm, pivot_diameter_mm
from chairwright.mass_points import FloatArray
from chairwright.places.moves import Move, Pose, Route
from chairwright.places.outline import Outline
from chairwright.places.routes import MARGIN, room_route
from chairwright.places.walls import positive

LOOKS = 15
"""Values tried of each of the three things that are free in a turn by three arcs."""
ROUNDS = 14
"""Rounds of closer looks; each is half as wide as the one before."""


def pivot_room_mm(corners: Sequence[Corner]) -> tuple[FloatArray, FloatArray]:
    """Room for a half turn on the spot: depth and width, shape (n,) each [mm].

    Depth is the way the chair looks at first and in the end: the turning diameter. Width is
    that of a corridor for a half turn.
    """
    return pivot_diameter_mm(corners), half_turn_width_mm(corners)


def _extent(points: FloatArray, turn: FloatArray) -> tuple[FloatArray, ...]:
    """Least and greatest x and y of points turned to the left about the origin.

    ``points`` of shape (..., k, 2), ``turn`` of shape (...,) in rad, at most pi.
    """
    x, y = points[..., 0], points[..., 1]
    away, first = np.hypot(x, y), np.arctan2(y, x)
    c, s = np.cos(turn)[..., None], np.sin(turn)[..., None]
    end_x, end_y = x * c - y * s, x * s + y * c

    def passes(angle: float) -> np.ndarray:
        return np.asarray(np.mod(angle - first, 2 * np.pi) <= turn[..., None])

    west = np.where(passes(np.pi), -away, np.minimum(x, end_x)).min(axis=-1)
    east = np.where(passes(0.0), away, np.maximum(x, end_x)).max(axis=-1)
    south = np.where(passes(-np.pi / 2), -away, np.minimum(y, end_y)).min(axis=-1)
    north = np.where(passes(np.pi / 2), away, np.maximum(y, end_y)).max(axis=-1)
    return west, east, south, north


def _rotated(points: FloatArray, angle: FloatArray) -> FloatArray:
    c, s = np.cos(angle)[..., None], np.sin(angle)[..., None]
    x, y = points[..., 0], points[..., 1]
    return np.stack([x * c - y * s, x * s + y * c], axis=-1)


def _three_arcs_side(
    points: FloatArray, radius: FloatArray, one: FloatArray, two: FloatArray
) -> FloatArray:
    """Side of the square that three arcs sweep: forward, back, forward, always to the left."""
    axle = np.zeros((*one.shape, 2))
    heading = np.zeros_like(one)
    least, most = np.full_like(axle, np.inf), np.full_like(axle, -np.inf)
    for arc, side in ((one, 1.0), (two, -1.0), (np.pi - one - two, 1.0)):
        to_left = np.stack([-np.sin(heading), np.cos(heading)], axis=-1)
        centre = axle + (side * radius)[..., None] * to_left
        placed = _rotated(np.broadcast_to(points, (*one.shape, *points.shape)), heading)
        west, east, south, north = _extent(placed + (axle - centre)[..., None, :], arc)
        least = np.minimum(least, centre + np.stack([west, south], axis=-1))
        most = np.maximum(most, centre + np.stack([east, north], axis=-1))
        turned = _rotated((axle - centre)[..., None, :], arc)[..., 0, :]
        axle, heading = centre + turned, heading + arc
    return np.asarray((most - least).max(axis=-1))


def three_arc_room(outline: Outline) -> tuple[float, Route]:
    """Smallest square room for a half turn by three arcs, and the arcs.

    Forward, back and forward again, all turning to the left and all of one radius; a turn on
    the spot (radius 0) and one with two arcs are among them. Walls stand square to the first
    heading. Found by looking ever closer, so it is a room that is enough; a slightly smaller
    one may be.

    Parameters
    ----------
    outline : Outline

    Returns
    -------
    side_mm : float [mm]
    route : Route
        In the axes of ``walls.room_walls``.
    """
    best = np.array([outline.width / 2, np.pi / 3, np.pi / 3])
    span = np.array([outline.width, np.pi / 2, np.pi / 2])
    least = np.inf
    for _ in range(ROUNDS):
        grid = best + span * np.linspace(-1.0, 1.0, LOOKS)[:, None]
        radius, one, two = np.meshgrid(*np.maximum(grid, 0.0).T, indexing="ij")
        two = np.minimum(two, np.maximum(np.pi - one, 0.0))
        one = np.minimum(one, np.pi)
        sides = _three_arcs_side(outline.points, radius, one, two)
        place = np.unravel_index(sides.argmin(), sides.shape)
        if sides[place] <= least:
            least = float(sides[place])
            best = np.array([radius[place], one[place], two[place]])
        span /= 2
    return least, _centred(_arcs_route(outline, *map(float, best)))


def _arcs_route(outline: Outline, radius: float, one: float, two: float) -> Route:
    turns = ((radius, one), (-radius, two), (radius, np.pi - one - two))
    moves = [Move(centre_mm=c, turn_deg=float(np.degrees(turn))) for c, turn in turns if turn > 0]
    return Route(outline, Pose(0.0, 0.0, 0.0), tuple(moves))


def _centred(route: Route) -> Route:
    """The same route with the middle of what it sweeps at the origin."""
    least, most = np.full(2, np.inf), np.full(2, -np.inf)
    for pose, move in route.steps():
        centre = pose.place(np.array([[0.0, move.centre_mm]]))[0]
        placed = pose.place(route.outline.points) - centre
        west, east, south, north = _extent(placed, np.asarray(np.radians(move.turn_deg)))
        least = np.minimum(least, centre + np.array([west, south]))
        most = np.maximum(most, centre + np.array([east, north]))
    x, y = -(least + most) / 2
    return Route(route.outline, Pose(float(x), float(y), 0.0), route.moves)


@dataclass(frozen=True, eq=False)
class LiftRide:
    """How a chair rides in a lift.

    Parameters
    ----------
    spare_door_mm, spare_width_mm, spare_depth_mm : float [mm]
        What door and car have more than the chair needs, margins counted; negative: missing.
    turn : Route or None
        Half turn inside, in the axes of ``walls.room_walls`` with the depth of the car along
        x; None when none was found, so the chair has to leave backwards.
    """

    spare_door_mm: float
    spare_width_mm: float
    spare_depth_mm: float
    turn: Route | None

    @property
    def goes_in(self) -> bool:
        """Whether the chair fits the car, driven straight in."""
        return min(self.spare_door_mm, self.spare_width_mm, self.spare_depth_mm) >= 0


def lift_ride(
    outline: Outline, door_width: float, width: float, depth: float, margin: float = MARGIN
) -> LiftRide:
    """Whether a chair fits the car of a lift, and whether it can turn round in it.

    Parameters
    ----------
    outline : Outline
    door_width, width, depth : float [mm]
        Clear, of the door and of the car; the depth is counted from the door.
    margin : float [mm]
        Least distance from the walls on every side.

    Returns
    -------
    LiftRide

    Raises
    ------
    InputError
        When a size is not above zero.
    """
    positive("lift", door_width=door_width, width=width, depth=depth)
    wide = outline.width + 2 * margin
    long = outline.ahead + outline.behind + 2 * margin
    turn = room_route(outline, depth, width, margin=margin) if wide <= width else None
    return LiftRide(door_width - wide, width - wide, depth - long, turn)
