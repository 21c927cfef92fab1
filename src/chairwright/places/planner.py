"""Search for the fewest moves that take an outline from one pose to another between walls.

Layer by layer: from every pose reached with m moves, every kind of move is driven on in small
steps until it would come too close to a wall; each new pose is kept with the way it was
reached. Headings lie on a lattice, so turns are exact; places are exact numbers, and only
one pose is kept in each cell of a grid. A step counts as clear only when one line separates
chair and wall at both its ends, with a reserve for the bulge of the arc between; so what is
found is valid. What is not found may still exist: the search is of a stated fineness.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from chairwright.mass_points import FloatArray
from chairwright.places.field import BoolArray, Field, IntArray
from chairwright.places.moves import Move, Pose, Route

Nodes = NDArray[Any]
Goal = Callable[[FloatArray, FloatArray, IntArray], BoolArray]
NODE = np.dtype(
    [
        ("x", "f8"),
        ("y", "f8"),
        ("travel", "f8"),
        ("amount", "f8"),
        ("turn", "i8"),
        ("parent", "i8"),
        ("motion", "i8"),
    ]
)
"""A pose kept: place, way so far, index of the heading, and how it was reached."""


@dataclass(frozen=True)
class Motion:
    """One kind of move, driven on step by step.

    Parameters
    ----------
    forward : int
        +1 or -1 for a straight move, 0 for a turn.
    centre_mm : float [mm]
        Instant centre of a turn, left of the middle of the axle.
    side : int
        +1 turns left, -1 right, 0 straight.
    """

    forward: int = 0
    centre_mm: float = 0.0
    side: int = 0

    def shift(self, field: Field) -> tuple[FloatArray, FloatArray]:
        """Shift of the middle of the axle in one step, by heading, shape (t,) each [mm]."""
        if self.side == 0:
            length = self.forward * field.cell_mm
            return length * field.cosine, length * field.sine
        end = field.headings + self.side * np.radians(field.fineness.turn_deg)
        across, along = np.sin(end) - field.sine, field.cosine - np.cos(end)
        return self.centre_mm * across, self.centre_mm * along

    def step(self, field: Field) -> FloatArray:
        """Size of one step by heading, shape (t,): [mm] of a straight move, [deg] of a turn."""
        if self.side == 0:
            return np.asarray(self.forward * field.cell_mm)
        return np.full(len(field.headings), self.side * field.fineness.turn_deg)

    def move(self, amount: float) -> Move:
        """The move of a given size [mm or deg]."""
        if self.side == 0:
            return Move(length_mm=amount)
        return Move(centre_mm=self.centre_mm, turn_deg=amount)


def all_motions(radii: tuple[float, ...]) -> tuple[Motion, ...]:
    """Straight on and back, turns on the spot, and arcs of every radius to both sides."""
    straight = tuple(Motion(forward=way) for way in (1, -1))
    centres = [0.0, *(radius * side for radius in radii for side in (1.0, -1.0))]
    return straight + tuple(Motion(centre_mm=c, side=side) for c in centres for side in (1, -1))


class _Search:
    """One search: the poses kept, layer by layer, and the cells taken."""

    def __init__(self, field: Field, motions: tuple[Motion, ...], margin: float) -> None:
        self.field, self.motions, self.margin = field, motions, margin
        look = field.window
        self.columns = ((look.east - look.west) / field.cell_mm).astype(np.int64) + 1
        rows = ((look.north - look.south) / field.cell_mm).astype(np.int64) + 1
        ends = np.cumsum(self.columns * rows)
        self.first_cell = ends - self.columns * rows
        self.taken = np.zeros(ends[-1], dtype=np.bool_)
        self.layers: list[Nodes] = []

    def count(self) -> int:
        """Poses kept so far."""
        return sum(map(len, self.layers))

    def keep_new(self, nodes: Nodes) -> Nodes:
        """Those that lie in a cell not taken yet, one for each cell; takes the cells."""
        look, turn = self.field.window, nodes["turn"]
        cell = self.field.cell_mm[turn]
        column = ((nodes["x"] - look.west) / cell).astype(np.int64)
        row = ((nodes["y"] - look.south) / cell).astype(np.int64)
        key = self.first_cell[turn] + row * self.columns[turn] + column
        fresh = np.flatnonzero(~self.taken[key])
        _, first = np.unique(key[fresh], return_index=True)
        chosen = fresh[np.sort(first)]
        self.taken[key[chosen]] = True
        return np.asarray(nodes[chosen])

    def start(self, x: FloatArray, y: FloatArray, turn: IntArray) -> None:
        """Begin from all given poses that are clear."""
        clear = self.field.clear(self.field.gaps(x, y, turn), self.margin)
        nodes = np.zeros(int(clear.sum()), dtype=NODE)
        nodes["x"], nodes["y"], nodes["turn"] = x[clear], y[clear], turn[clear]
        nodes["parent"] = -1
        self.layers = [self.keep_new(nodes)]

    def drive(self, nodes: Nodes, first: int, number: int) -> Iterator[Nodes]:
        """Drive one motion on from every node as far as the walls allow.

        Parameters
        ----------
        nodes : ndarray of NODE
            The last layer.
        first : int
            Number of its first node.
        number : int
            Number of the motion.

        Yields
        ------
        ndarray of NODE
            The poses after each step.
        """
        field, motion = self.field, self.motions[number]
        need = self.margin + (field.bulge_mm(motion.centre_mm) if motion.side else 0.0)
        shift_x, shift_y = motion.shift(field)
        step = motion.step(field)
        way = np.abs(np.radians(step) * motion.centre_mm if motion.side else step)
        moving = nodes.copy()
        moving["parent"] = np.arange(first, first + len(nodes))
        moving["motion"], moving["amount"] = number, 0.0
        gaps = field.gaps(moving["x"], moving["y"], moving["turn"])
        while len(moving):
            turn = moving["turn"].copy()
            moving["x"] += shift_x[turn]
            moving["y"] += shift_y[turn]
            moving["amount"] += step[turn]
            moving["travel"] += way[turn]
            moving["turn"] += motion.side
            inside = field.inside(moving["x"], moving["y"], moving["turn"])
            moving, gaps = moving[inside], [each[:, inside] for each in gaps]
            fresh = field.gaps(moving["x"], moving["y"], moving["turn"])
            both = [np.minimum(one, two) for one, two in zip(gaps, fresh, strict=True)]
            clear = field.clear(both, need)
            moving, gaps = moving[clear], [each[:, clear] for each in fresh]
            yield moving

    def next_layer(self, allowed: tuple[int, ...]) -> None:
        """Drive every allowed motion from the last layer."""
        last = self.layers[-1]
        first = self.count() - len(last)
        found = [last[:0]]
        for number in allowed:
            found += [self.keep_new(each) for each in self.drive(last, first, number)]
        self.layers.append(np.concatenate(found))

    def route(self, node: int) -> Route:
        """The way to a node."""
        every = np.concatenate(self.layers)
        moves: list[Move] = []
        while every["parent"][node] >= 0:
            motion = self.motions[int(every["motion"][node])]
            moves.append(motion.move(float(every["amount"][node])))
            node = int(every["parent"][node])
        heading = self.field.heading_deg(int(every["turn"][node]))
        start = Pose(float(every["x"][node]), float(every["y"][node]), heading)
        return Route(self.field.outline, start, tuple(reversed(moves)))


@dataclass(frozen=True)
class Task:
    """What a search is to find.

    Parameters
    ----------
    starts : tuple of ndarray
        Places x, y [mm] and headings as indices; those too close to a wall fall away.
    goal : callable
        From x, y [mm] and index of the heading to whether the pose will do.
    motions : tuple of Motion
    margin_mm : float [mm]
        Least distance from the walls.
    most_moves, most_poses : int
        Where the search gives up.
    """

    starts: tuple[FloatArray, FloatArray, IntArray]
    goal: Goal
    motions: tuple[Motion, ...]
    margin_mm: float
    most_moves: int = 12
    most_poses: int = 400_000


def fewest_moves(field: Field, task: Task) -> Route | None:
    """Route with the fewest moves that the search can see; of these, the shortest.

    Parameters
    ----------
    field : Field
    task : Task

    Returns
    -------
    Route or None
        None when none was found with the moves and poses allowed. The distance kept from the
        walls is at least ``margin_mm``.
    """
    search = _Search(field, task.motions, task.margin_mm)
    search.start(*task.starts)
    every = tuple(range(len(task.motions)))
    for _ in range(task.most_moves + 1):
        last = search.layers[-1]
        done = np.flatnonzero(task.goal(last["x"], last["y"], last["turn"]))
        if len(done):
            best = done[np.argmin(last["travel"][done])]
            return search.route(search.count() - len(last) + int(best))
        if not len(last) or search.count() > task.most_poses:
            return None
        search.next_layer(every)
    return None
