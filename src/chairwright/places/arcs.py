"""One steady arc between two straight ways, placed where it keeps farthest from the walls."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from chairwright.figures.doors import Turn, door_setback, turn_of
from chairwright.mass_points import FloatArray
from chairwright.places.moves import Move, Pose, Route
from chairwright.places.outline import Outline

RUN_UP = 200.0
"""How far before the place a route begins, and beyond it ends [mm]."""
RADII = 801
HALVINGS = 40
Spare = Callable[[Turn], FloatArray]


def _widest_margin(turn: Turn, spare: Spare, margin: float) -> tuple[float, int] | None:
    """Greatest margin with anything to spare, and the radius that has it; None below ``margin``."""
    if spare(turn.kept_off(margin)).max() < 0:
        return None
    low, high = margin, 2 * margin + 100.0
    while spare(turn.kept_off(high)).max() >= 0:
        low, high = high, 2 * high
    for _ in range(HALVINGS):
        kept = (low + high) / 2
        low, high = (kept, high) if spare(turn.kept_off(kept)).max() >= 0 else (low, kept)
    return low, int(spare(turn.kept_off(low)).argmax())


def _turns(outline: Outline, low: float) -> tuple[FloatArray, Turn]:
    """Radii worth trying, closer together where they are small, and the turns about them."""
    radius = low + 6 * outline.reach * np.linspace(0.0, 1.0, RADII) ** 2
    x, y = outline.points[:, :1], outline.points[:, 1:]
    return radius, turn_of(x, y, radius)


def _route(outline: Outline, radius: float, centre: tuple[float, float], end: float) -> Route:
    """Run up along +x, quarter turn to the left about a centre, and away along +y."""
    x, y = centre
    start = min(-outline.ahead, x) - RUN_UP
    last = max(end + outline.behind, y) + RUN_UP
    moves = (Move(x - start), Move(centre_mm=radius, turn_deg=90.0), Move(last - y))
    return Route(outline, Pose(start, y - radius, 0.0), moves)


def corner_arc(
    outline: Outline, corridor_in: float, corridor_out: float, margin: float
) -> Route | None:
    """Round a corner to the left by the arc that keeps farthest from the walls.

    Parameters
    ----------
    outline : Outline
    corridor_in, corridor_out : float [mm]
    margin : float [mm]
        Least distance from the walls.

    Returns
    -------
    Route or None
        In the axes of ``walls.corner_walls``; None when no one arc keeps the margin.
    """
    radius, turn = _turns(outline, float(outline.points[:, 1].max()))

    def spare(kept: Turn) -> FloatArray:
        return kept.inner - np.hypot(*_beyond(kept, corridor_in, corridor_out))

    found = _widest_margin(turn, spare, margin)
    if found is None:
        return None
    up, back = _beyond(turn.kept_off(found[0]), corridor_in, corridor_out)
    return _corner_route(outline, radius, up, back, found[1])


def corner_arc_that_hits(outline: Outline, corridor_in: float, corridor_out: float) -> Route:
    """Round a corner to the left, clear of both outer walls, least deep into the inner corner.

    Parameters
    ----------
    outline : Outline
    corridor_in, corridor_out : float [mm]

    Returns
    -------
    Route
        In the axes of ``walls.corner_walls``; for a drawing of why no one arc is enough. The
        straight ways before and after the arc keep clear if any such arc does.
    """
    radius, turn = _turns(outline, float(outline.points[:, 1].max()))
    up, back = _beyond(turn, corridor_in, corridor_out)
    straight = np.maximum(up, back) <= turn.inner
    usable = straight if straight.any() else np.ones_like(straight)
    spare = np.where(usable, turn.inner - np.hypot(up, back), -np.inf)
    return _corner_route(outline, radius, up, back, int(spare.argmax()))


def _beyond(turn: Turn, corridor_in: float, corridor_out: float) -> tuple[FloatArray, FloatArray]:
    """How far the centre must lie up and back from the inner corner to clear the outer walls."""
    up = np.maximum(turn.first - corridor_in, 0.0)
    return up, np.maximum(turn.second - corridor_out, 0.0)


def _corner_route(
    outline: Outline, radius: FloatArray, up: FloatArray, back: FloatArray, best: int
) -> Route:
    return _route(outline, float(radius[best]), (-float(back[best]), float(up[best])), 0.0)


def door_arc(
    outline: Outline, corridor: float, opening: float, thickness: float, margin: float
) -> Route | None:
    """Through a door on the left by the arc that keeps farthest from the walls.

    Parameters
    ----------
    outline : Outline
    corridor, opening, thickness : float [mm]
    margin : float [mm]
        Least distance from the walls.

    Returns
    -------
    Route or None
        In the axes of ``walls.door_walls``; None when no one arc keeps the margin.
    """
    radius, turn = _turns(outline, 0.0)
    known = np.full(len(radius), opening)

    def spare(kept: Turn) -> FloatArray:
        between = opening - outline.width - 2 * (turn.inner[0] - kept.inner[0])
        return np.asarray(np.minimum(corridor - kept.first - door_setback(kept, known), between))

    found = _widest_margin(turn, spare, margin)
    if found is None:
        return None
    kept = turn.kept_off(found[0])
    return _door_route(outline, float(radius[found[1]]), kept, found[1], (opening, thickness))


def door_arc_that_hits(
    outline: Outline, corridor: float, opening: float, thickness: float
) -> Route:
    """Through a door on the left, along the corridor's far wall, least deep into the far jamb.

    Parameters
    ----------
    outline : Outline
        No wider than the opening.
    corridor, opening, thickness : float [mm]

    Returns
    -------
    Route
        In the axes of ``walls.door_walls``; for a drawing of why no one arc is enough. It hits
        the corridor's far wall only where no arc keeps clear of it.
    """
    radius, turn = _turns(outline, 0.0)
    room = corridor - turn.first
    least = np.maximum(-turn.inner, 0.0)
    deep = turn.second - np.hypot(opening + turn.inner, np.maximum(room, least))
    best = int(np.where(room >= least, deep, 1e6 + least - room).argmin())
    down = max(float(room[best]), float(least[best]))
    return _route(outline, float(radius[best]), (-float(turn.inner[best]), -down), thickness)


def _door_route(
    outline: Outline, radius: float, kept: Turn, best: int, door: tuple[float, float]
) -> Route:
    """Route by the arc of one radius; ``door`` is opening and thickness."""
    opening, thickness = door
    down = float(door_setback(kept, np.full(len(kept.first), opening))[best])
    west = min(float(kept.inner[best]), max(float(kept.second[best]) - opening, 0.0))
    before = kept.inner[best] <= 0 or kept.second[best] > opening + kept.inner[best]
    x = -float(kept.inner[best]) if before else -west
    return _route(outline, radius, (x, -down), thickness)
