"""Moves that a chair steered by its two rear wheels can make, and a shown sequence of them.

It can drive straight on or back, turn on the spot, or drive an arc; the instant centre lies
on the axle line (`TU` in the theory page: docs/theory/turning.md). It cannot move sideways.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from itertools import pairwise
from math import cos, hypot, radians, sin
from typing import Literal

import numpy as np

from chairwright.mass_points import FloatArray
from chairwright.places.outline import Outline

Direction = Literal["forward", "back", "on the spot"]
Side = Literal["left", "right", ""]


@dataclass(frozen=True)
class Pose:
    """Where the chair stands: middle of the rear axle and heading, in the place's axes.

    Parameters
    ----------
    x_mm, y_mm : float [mm]
    heading_deg : float [deg]
        From +x, counter-clockwise.
    """

    x_mm: float
    y_mm: float
    heading_deg: float

    def place(self, points: FloatArray) -> FloatArray:
        """Points of the chair in the place's axes, shape (k, 2)."""
        q = radians(self.heading_deg)
        turn = np.array([[cos(q), sin(q)], [-sin(q), cos(q)]])
        return np.asarray(points @ turn + [self.x_mm, self.y_mm])

    def to_chair(self, points: FloatArray) -> FloatArray:
        """Points of the place in the chair's axes, shape (k, 2)."""
        q = radians(self.heading_deg)
        turn = np.array([[cos(q), -sin(q)], [sin(q), cos(q)]])
        return np.asarray((points - [self.x_mm, self.y_mm]) @ turn)


@dataclass(frozen=True)
class Move:
    """One steady move: straight, or a turn about a point of the axle line.

    Parameters
    ----------
    length_mm : float [mm]
        Way of a straight move, back negative; 0 for a turn.
    centre_mm : float [mm]
        Instant centre, left of the middle of the axle; 0 turns on the spot.
    turn_deg : float [deg]
        Left positive; 0 for a straight move.
    """

    length_mm: float = 0.0
    centre_mm: float = 0.0
    turn_deg: float = 0.0

    @property
    def travel_mm(self) -> float:
        """Way of the middle of the axle, back negative [mm]."""
        return self.length_mm + self.centre_mm * radians(self.turn_deg)

    @property
    def direction(self) -> Direction:
        """Whether the middle of the axle goes forward, back, or stays."""
        if self.travel_mm == 0:
            return "on the spot"
        return "forward" if self.travel_mm > 0 else "back"

    @property
    def side(self) -> Side:
        """Side to which the heading turns."""
        if self.turn_deg == 0:
            return ""
        return "left" if self.turn_deg > 0 else "right"

    def part(self, fraction: float) -> Move:
        """First part of the move."""
        return replace(self, length_mm=self.length_mm * fraction, turn_deg=self.turn_deg * fraction)

    def after(self, pose: Pose) -> Pose:
        """Pose at the end of the move."""
        q, end = radians(pose.heading_deg), radians(pose.heading_deg + self.turn_deg)
        x = pose.x_mm + self.length_mm * cos(q) + self.centre_mm * (sin(end) - sin(q))
        y = pose.y_mm + self.length_mm * sin(q) - self.centre_mm * (cos(end) - cos(q))
        return Pose(x, y, pose.heading_deg + self.turn_deg)


@dataclass(frozen=True)
class Route:
    """A sequence of moves from a first pose.

    Parameters
    ----------
    outline : Outline
        The chair that makes them.
    start : Pose
    moves : tuple of Move
    """

    outline: Outline
    start: Pose
    moves: tuple[Move, ...]

    @property
    def poses(self) -> tuple[Pose, ...]:
        """Pose before the first move and after each move."""
        found = [self.start]
        for move in self.moves:
            found.append(move.after(found[-1]))
        return tuple(found)

    @property
    def end(self) -> Pose:
        """Pose after the last move."""
        return self.poses[-1]

    @property
    def reversals(self) -> int:
        """How often the chair changes between forward and back."""
        ways = [each.direction for each in self.moves if each.direction != "on the spot"]
        return sum(one != two for one, two in pairwise(ways))

    @property
    def travel_mm(self) -> float:
        """Way of the middle of the axle in all [mm]."""
        return sum(abs(move.travel_mm) for move in self.moves)

    def steps(self) -> Iterator[tuple[Pose, Move]]:
        """Each move with the pose in which it begins."""
        return zip(self.poses, self.moves, strict=False)

    def shown(self, chord_mm: float = 20.0) -> tuple[Pose, ...]:
        """Poses close enough together to draw.

        Every point of the outline moves by ``chord_mm`` at most from one to the next.
        """
        found = [self.start]
        for pose, move in self.steps():
            far = np.hypot(self.outline.points[:, 0], self.outline.points[:, 1] - move.centre_mm)
            way = hypot(move.length_mm, radians(move.turn_deg) * float(far.max()))
            count = max(1, int(np.ceil(way / chord_mm)))
            found += [move.part(i / count).after(pose) for i in range(1, count + 1)]
        return tuple(found)
