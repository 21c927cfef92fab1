"""Shown sequences of moves: round a corner, through a door, about turn.

Each function gives a route whose every moment keeps the margin from the walls, or None when
it found none. Where one steady arc or one turn on the spot is enough, it is built; otherwise
the fewest moves are searched for, coarsely first, then more finely. None is no proof that
there is no way: below ``corner.corner_free_mm`` there is none; above it the number of moves
grows without limit.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from chairwright.figures.turning import reach_mm
from chairwright.mass_points import FloatArray
from chairwright.places.arcs import RUN_UP, corner_arc, door_arc
from chairwright.places.clearance import route_clearance_mm
from chairwright.places.field import BoolArray, Field, Fineness, IntArray, Window
from chairwright.places.moves import Move, Pose, Route
from chairwright.places.outline import Outline
from chairwright.places.planner import Motion, Task, all_motions, fewest_moves
from chairwright.places.walls import (
    Walls,
    corner_walls,
    corridor_walls,
    door_walls,
    room_walls,
    tee_walls,
)

MARGIN = 5.0
"""Distance kept from walls unless another is asked for [mm] (common practice, no source)."""
LOOKS = (Fineness(200, 3.0), Fineness(300, 1.5))
"""Finenesses tried one after the other."""
FEW = 7
"""A route with so few moves is not looked for again more finely."""
MOST_MOVES = 14
LANE = 10.0
"""Distance between the places from which a search starts [mm]."""


def motions_of(outline: Outline) -> tuple[Motion, ...]:
    """Moves that are tried: straight, on the spot, about one wheel, and wider arcs."""
    return all_motions(tuple(outline.width * part for part in (0.45, 1.05, 2.25)))


@dataclass(frozen=True, eq=False)
class _Place:
    """Where a search starts, where it may go, and where it ends.

    ``lanes`` are the places x and y to start from; ``headings`` the first and the last [deg];
    ``strip`` the lines x = a, b between which the chair must stand at the end.
    """

    walls: Walls
    window: Window
    lanes: tuple[FloatArray, FloatArray]
    headings: tuple[float, float]
    strip: tuple[float, float] = (-np.inf, np.inf)

    def task(self, field: Field, margin: float) -> Task:
        x, y = (each.ravel() for each in np.meshgrid(*self.lanes))
        first, last = map(field.index, self.headings)
        placed = Pose(0.0, 0.0, self.headings[1]).place(field.outline.points)[:, 0]
        low = self.strip[0] + margin - float(placed.min())
        high = self.strip[1] - margin - float(placed.max())

        def there(x: FloatArray, y: FloatArray, turn: IntArray) -> BoolArray:
            return np.asarray((turn == last) & (x >= low) & (x <= high))

        starts = (x, y, np.full(len(x), first))
        return Task(starts, there, motions_of(field.outline), margin, MOST_MOVES)

    def route(
        self, outline: Outline, margin: float, looks: Sequence[Fineness] = LOOKS
    ) -> Route | None:
        best: Route | None = None
        for look in looks:
            field = Field(outline, self.walls, self.window, look)
            route = fewest_moves(field, self.task(field, margin))
            if route is not None and (best is None or len(route.moves) < len(best.moves)):
                best = route
            if best is not None and len(best.moves) <= FEW:
                break
        return best


def _lanes(low: float, high: float, apart: float = LANE) -> FloatArray:
    """Places between two walls, the middle among them."""
    half = np.arange(0.0, (high - low) / 2, apart)
    return np.concatenate([(low + high) / 2 - half[:0:-1], (low + high) / 2 + half])


def _up_to(route: Route | None, y_mm: float) -> Route | None:
    """The same route, driven straight on along +y to a line unless it is beyond."""
    if route is None or route.end.y_mm >= y_mm:
        return route
    return Route(route.outline, route.start, (*route.moves, Move(y_mm - route.end.y_mm)))


def corner_route(
    outline: Outline,
    corridor_in: float,
    corridor_out: float,
    *,
    margin: float = MARGIN,
    looks: Sequence[Fineness] = LOOKS,
) -> Route | None:
    """Moves that take a chair round a corner to the left, forwards.

    Parameters
    ----------
    outline : Outline
        For a corner to the right give it mirrored.
    corridor_in, corridor_out : float [mm]
    margin : float [mm]
        Least distance from the walls all the way.
    looks : sequence of Fineness

    Returns
    -------
    Route or None
        In the axes of ``walls.corner_walls``.

    Raises
    ------
    InputError
        When a width is not above zero.
    """
    walls = corner_walls(corridor_in, corridor_out)
    arc = corner_arc(outline, corridor_in, corridor_out, margin)
    if arc is not None or outline.width + 2 * margin > min(corridor_in, corridor_out):
        return arc
    far, reach = outline.ahead + RUN_UP, outline.reach
    window = Window(-far, corridor_out, -corridor_in, reach, -15, 105)
    lanes = (np.array([-far]), _lanes(-corridor_in, 0.0))
    place = _Place(walls, window, lanes, (0, 90), (0.0, corridor_out))
    return _up_to(place.route(outline, margin, looks), outline.behind + RUN_UP)


def door_route(
    outline: Outline,
    corridor: float,
    opening: float,
    thickness: float,
    *,
    margin: float = MARGIN,
) -> Route | None:
    """Moves that take a chair from a corridor through an opening in its left-hand wall.

    Parameters
    ----------
    outline : Outline
        For a door on the right give it mirrored.
    corridor, opening, thickness : float [mm]
        Width of the corridor, clear width of the opening, thickness of the wall.
    margin : float [mm]
        Least distance from the walls all the way.

    Returns
    -------
    Route or None
        In the axes of ``walls.door_walls``.

    Raises
    ------
    InputError
        When a size is not above zero.
    """
    walls = door_walls(corridor, opening, thickness)
    arc = door_arc(outline, corridor, opening, thickness, margin)
    if arc is not None or outline.width + 2 * margin > opening:
        return arc
    far = outline.ahead + RUN_UP
    north = thickness + outline.behind
    window = Window(-far, opening + outline.ahead, -corridor, north, -15, 120)
    lanes = (np.array([-far]), _lanes(-corridor, 0.0))
    place = _Place(walls, window, lanes, (0, 90), (0.0, opening))
    return _up_to(place.route(outline, margin), north + RUN_UP)


def on_the_spot(outline: Outline, walls: Walls, margin: float) -> Route | None:
    """Half turn to the left about the middle of the axle, midway between the walls.

    Parameters
    ----------
    outline : Outline
    walls : Walls
        ``walls.corridor_walls`` or ``walls.room_walls``.
    margin : float [mm]

    Returns
    -------
    Route or None
        None when the margin is not kept.
    """
    ahead = [corner for corner in outline.corners if float(corner[0]) >= 0]  # type: ignore[arg-type]
    behind = [corner for corner in outline.corners if float(corner[0]) <= 0]  # type: ignore[arg-type]
    front, rear = (float(reach_mm(each)[0]) if each else 0.0 for each in (ahead, behind))
    start = Pose(0.0, (rear - front) / 2, 0.0)
    route = Route(outline, start, (Move(turn_deg=180.0),))
    return route if route_clearance_mm(route, walls) >= margin else None


def half_turn_route(
    outline: Outline,
    width: float,
    *,
    margin: float = MARGIN,
) -> Route | None:
    """Moves that turn a chair about in a straight corridor, to the left.

    Parameters
    ----------
    outline : Outline
    width : float [mm]
    margin : float [mm]
        Least distance from the walls all the way.

    Returns
    -------
    Route or None
        In the axes of ``walls.corridor_walls``.

    Raises
    ------
    InputError
        When the width is not above zero.
    """
    walls, half = corridor_walls(width), width / 2
    window = Window(-outline.reach, outline.reach, -half, half, 0, 180)
    place = _Place(walls, window, (np.array([0.0]), _lanes(-half, half)), (0, 180))
    return on_the_spot(outline, walls, margin) or place.route(outline, margin)


def room_route(
    outline: Outline,
    depth: float,
    width: float,
    *,
    margin: float = MARGIN,
) -> Route | None:
    """Moves that turn a chair about in a closed room, to the left.

    Parameters
    ----------
    outline : Outline
    depth, width : float [mm]
        Along the way the chair looks at first, and across it.
    margin : float [mm]
        Least distance from the walls all the way.

    Returns
    -------
    Route or None
        In the axes of ``walls.room_walls``; it may begin and end anywhere in the room.

    Raises
    ------
    InputError
        When a size is not above zero.
    """
    walls, long, half = room_walls(depth, width), depth / 2, width / 2
    window = Window(-long, long, -half, half, 0, 180)
    lanes = (_lanes(-long, long, 2 * LANE), _lanes(-half, half, 2 * LANE))
    place = _Place(walls, window, lanes, (0, 180))
    return on_the_spot(outline, walls, margin) or place.route(outline, margin)


def tee_route(
    outline: Outline, arm: float, base: float, across: float, *, margin: float = MARGIN
) -> Route | None:
    """Moves that turn a chair about in a T: in from the base, into an arm, back, and out.

    Parameters
    ----------
    outline : Outline
    arm, base : float [mm]
        Width of the arms and of the base.
    across : float [mm]
        End to end of the arms.
    margin : float [mm]
        Least distance from the walls all the way.

    Returns
    -------
    Route or None
        In the axes of ``walls.tee_walls``; turns to the right, from heading 90 to -90.

    Raises
    ------
    InputError
        When a size is not above zero or the base is no narrower than the arms are long.
    """
    walls, half = tee_walls(arm, base, across), base / 2
    south = -outline.ahead - RUN_UP
    window = Window(-across / 2, across / 2, south, arm, -105, 105)
    lanes = (_lanes(-half, half), np.array([south + 1.0]))
    place = _Place(walls, window, lanes, (90, -90), (-half, half))
    return place.route(outline, margin)
