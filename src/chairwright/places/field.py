"""Where a chair of given outline can stand between walls, for a search over many poses."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, cos, hypot, radians

import numpy as np
from numpy.typing import NDArray

from chairwright.mass_points import FloatArray
from chairwright.places.outline import Outline, edge_normals
from chairwright.places.walls import Walls

IntArray = NDArray[np.int64]
BoolArray = NDArray[np.bool_]
SAMPLES = 48
"""Places along each side of the window at which lines and free floor are looked at."""
LARGEST_CELL = 60.0
"""Side of the largest cells of places [mm]."""


@dataclass(frozen=True)
class Fineness:
    """How finely a search looks.

    Parameters
    ----------
    cells : int
        About how many cells the free places of each heading are divided into.
    turn_deg : float [deg]
        Step of headings; divides 90.
    """

    cells: int
    turn_deg: float


@dataclass(frozen=True)
class Window:
    """Where the middle of the axle may go and which headings the chair may have.

    Parameters
    ----------
    west, east, south, north : float [mm]
    low_deg, high_deg : float [deg]
        Headings; multiples of the step are used.
    """

    west: float
    east: float
    south: float
    north: float
    low_deg: float
    high_deg: float

    def corners(self) -> list[tuple[float, float]]:
        """Four corners of the places [mm]."""
        return [(x, y) for x in (self.west, self.east) for y in (self.south, self.north)]


class Field:
    """Lines that can separate the chair from each wall, by heading.

    Parameters
    ----------
    outline : Outline
    walls : Walls
    window : Window
    fineness : Fineness

    Notes
    -----
    For heading t and the middle of the axle at p, ``slope[t] @ p + level[t]`` is the gap
    along each line; the chair is clear of a wall when one of its gaps is above zero. Lines
    are the edges of the wall and of the chair. Leaving lines out errs on the safe side.
    """

    def __init__(self, outline: Outline, walls: Walls, window: Window, fineness: Fineness) -> None:
        self.window, self.fineness, self.outline = window, fineness, outline
        step = fineness.turn_deg
        self.first = ceil(window.low_deg / step - 1e-9)
        count = int(np.floor(window.high_deg / step + 1e-9)) - self.first + 1
        self.headings = np.radians((np.arange(count) + self.first) * step)
        self.cosine, self.sine = np.cos(self.headings), np.sin(self.headings)
        x, y = np.meshgrid(
            np.linspace(window.west, window.east, SAMPLES),
            np.linspace(window.south, window.north, SAMPLES),
        )
        self._samples = np.stack([x.ravel(), y.ravel()])
        free = np.ones((count, SAMPLES**2), dtype=np.bool_)
        self.lines = [self._lines(each, free) for each in walls.blocks]
        floor = (window.east - window.west) * (window.north - window.south) * free.mean(axis=1)
        self.cell_mm = np.clip(np.sqrt(floor / fineness.cells), 1.0, LARGEST_CELL)
        self.farthest = max(
            hypot(x - a, y - b)
            for each in walls.blocks
            for a, b in each
            for x, y in window.corners()
        )

    def index(self, heading_deg: float) -> int:
        """Index of a heading that is a multiple of the step."""
        return round(heading_deg / self.fineness.turn_deg) - self.first

    def heading_deg(self, index: int) -> float:
        """Heading of an index [deg]."""
        return (index + self.first) * self.fineness.turn_deg

    def _turned(self, vectors: FloatArray) -> FloatArray:
        """Vectors of the chair at every heading, shape (t, k, 2)."""
        x, y = vectors[:, 0], vectors[:, 1]
        c, s = self.cosine[:, None], self.sine[:, None]
        return np.stack([x * c - y * s, x * s + y * c], axis=-1)

    def _lines(self, wall: FloatArray, free: BoolArray) -> tuple[FloatArray, ...]:
        normals, offsets = edge_normals(wall)
        placed = self._turned(self.outline.points)
        of_wall = np.min(np.einsum("tkc,mc->tmk", placed, normals), axis=2) - offsets
        edges, reach = edge_normals(self.outline.points)
        turned = self._turned(edges)
        of_chair = np.min(np.einsum("tkc,vc->tkv", turned, wall), axis=2) - reach
        whole = np.broadcast_to(normals, (len(self.headings), *normals.shape))
        slope = np.concatenate([whole, -turned], axis=1)
        level = np.concatenate([of_wall, of_chair], axis=1)
        clear = np.einsum("tjc,cs->tjs", slope, self._samples) + level[..., None] > 0
        kept = _fewest(clear.transpose(1, 0, 2).reshape(len(slope[0]), -1))
        free &= np.any(clear[:, kept], axis=1)
        columns = (slope[:, kept, 0].T, slope[:, kept, 1].T, level[:, kept].T)
        return tuple(map(np.ascontiguousarray, columns))

    def gaps(self, x: FloatArray, y: FloatArray, turn: IntArray) -> list[FloatArray]:
        """Gap along every line of every wall, each of shape (lines, n) [mm].

        Parameters
        ----------
        x, y : ndarray, shape (n,) [mm]
        turn : ndarray, shape (n,)
            Index of the heading.

        Returns
        -------
        list of ndarray
        """
        return [
            east.take(turn, axis=1) * x + north.take(turn, axis=1) * y + level.take(turn, axis=1)
            for east, north, level in self.lines
        ]

    def clear(self, gaps: list[FloatArray], margin: float) -> BoolArray:
        """Whether every wall is apart by the margin along one of its lines, shape (n,)."""
        apart = [each.max(axis=0) >= margin for each in gaps]
        return np.asarray(np.logical_and.reduce(apart))

    def inside(self, x: FloatArray, y: FloatArray, turn: IntArray) -> BoolArray:
        """Whether poses lie in the window, shape (n,).

        Parameters
        ----------
        x, y : ndarray, shape (n,) [mm]
        turn : ndarray, shape (n,)
            Index of the heading; may lie outside.

        Returns
        -------
        ndarray of bool
        """
        look = self.window
        within = (turn >= 0) & (turn < len(self.headings))
        across = (x >= look.west) & (x <= look.east)
        return np.asarray(within & across & (y >= look.south) & (y <= look.north))

    def bulge_mm(self, centre: float) -> float:
        """How far a point can leave the chord of one step of a turn at most [mm].

        Taken for the point of the walls farthest from anywhere in the window.
        """
        far = max(self.farthest, self.outline.reach) + abs(centre)
        return far * (1 - cos(radians(self.fineness.turn_deg) / 2))


def _fewest(clear: BoolArray) -> list[int]:
    """Few rows that together are true nearly wherever any row is: the greatest gain first."""
    open_still = np.any(clear, axis=0)
    least = 1e-4 * open_still.sum()
    kept: list[int] = []
    while True:
        gain = np.sum(clear & open_still, axis=1)
        best = int(np.argmax(gain))
        if kept and gain[best] <= least:
            return sorted(kept)
        kept.append(best)
        open_still &= ~clear[best]
