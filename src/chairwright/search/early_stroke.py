"""Ends of the hand's stroke, the fingertips and the push handles before their choices are made."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property

import numpy as np

from chairwright.chair.occupant import LimbSide
from chairwright.chair.rows import Rows
from chairwright.chair.steps import HIP
from chairwright.figures.band import Band, corner_band
from chairwright.figures.floor_ends import floor_height
from chairwright.figures.reach import knee_joint
from chairwright.figures.stroke import (
    FARTHEST_ON_RIM_DEG,
    arm_spans_mm,
    fingertip_span_mm,
    heel_of,
)
from chairwright.mass_points import FloatArray
from chairwright.search.grid import EndsTable
from chairwright.search.space import Space

Place = Callable[[Rows], tuple[Band, Band]]
"""Ends of a place ahead of the axle and above the floor [mm]."""

GRIP = ("back_angle", "back_height", "push_handle")


class EarlyStroke:
    """Early ends of figures of arms and handles.

    Parameters
    ----------
    space : Space
    shoulder : callable
        Ends of the shoulder joint's place.
    hub : callable
        Ends of the rim's wheel plane, at the hub, outward of the shoulder joint [mm].
    """

    def __init__(self, space: Space, shoulder: Place, hub: Callable[[Rows], Band]) -> None:
        self._space, self._occupant = space, space.occupant
        self._shoulder, self._hub = shoulder, hub

    @cached_property
    def _grip(self) -> EndsTable:
        """Grip of the push handles in frame axes [mm]; made when first asked for."""
        table = EndsTable(self._space, GRIP)
        rows = table.grid.realised(self._space)
        for name in ("grip_x", "grip_z"):
            table.tabulate(name, rows[name])
        return table

    @cached_property
    def _knees(self) -> dict[LimbSide, EndsTable]:
        """Knees in frame axes [mm]; made when first asked for."""
        tables = {}
        for side in {*self._occupant.feet_that_push, *self._occupant.knee_above_joint_mm}:
            tables[side] = table = EndsTable(self._space, HIP)
            rows = table.grid.realised(self._space)
            for axis, place in zip("xz", knee_joint(rows, self._occupant, side), strict=True):
                table.tabulate(f"knee_{axis}", place)
        return tables

    def handles(self, rows: Rows) -> Band:
        """Push-handle grip above the floor [mm]."""
        ends = (Band(*self._grip.ends(name, rows.index)) for name in ("grip_x", "grip_z"))
        return floor_height(rows, *ends)

    def heels(self, rows: Rows) -> Band:
        """Heel of the pushing foot ahead of its knee [mm]; no value when it can reach no floor."""
        low = high = np.full(len(rows), np.inf)
        for side in self._occupant.feet_that_push:
            table = self._knees[side]
            ends = (Band(*table.ends(f"knee_{axis}", rows.index)) for axis in "xz")
            knee = floor_height(rows, *ends)
            high = np.minimum(high, heel_of(self._occupant, side, knee.low))
            low = np.minimum(low, np.nan_to_num(heel_of(self._occupant, side, knee.high)))
        return Band(low, high)

    def knee_tops(self, rows: Rows) -> Band:
        """Top of the higher knee above the floor [mm]."""
        low = high = np.full(len(rows), -np.inf)
        for side, above in self._occupant.knee_above_joint_mm.items():
            table = self._knees[side]
            ends = (Band(*table.ends(f"knee_{axis}", rows.index)) for axis in "xz")
            knee = floor_height(rows, *ends)
            low, high = np.maximum(low, knee.low + above), np.maximum(high, knee.high + above)
        return Band(low, high)

    def fingertips(self, rows: Rows) -> Band:
        """Fingertips of the hanging arm above the axle [mm]."""
        span = fingertip_span_mm(self._occupant)
        height = self._shoulder(rows)[1]
        return corner_band(lambda up: up - span - rows["rear_height"], height)

    def arc(self, rows: Rows) -> Band:
        """At most the arc that the arm's length leaves on the rim, held however near [deg]."""
        ahead, height = self._shoulder(rows)
        outward, lean = self._hub(rows), np.radians(rows["camber"])
        above = Band(height.low - rows["rear_height"], height.high - rows["rear_height"])
        sin, cos = np.sin(lean), np.cos(lean)
        up = Band(above.low * cos + outward.low * sin, above.high * cos + outward.high * sin)
        off = Band(above.low * sin - outward.high * cos, above.high * sin - outward.low * cos)
        near, far = (np.hypot(pick(ahead), pick(up)) for pick in (_nearest, _farthest))
        square = np.square(_nearest(off)) + np.square(rows["rim_radius"])
        longest = np.full(len(rows), 2.0 * FARTHEST_ON_RIM_DEG)
        for _, most in arm_spans_mm(self._occupant):
            longest = np.minimum(longest, _widest(near, far, square - most**2, rows["rim_radius"]))
        return Band(np.zeros(len(rows)), longest)


def _widest(near: FloatArray, far: FloatArray, rest: FloatArray, rim: FloatArray) -> FloatArray:
    """Widest arc, both sides, of a point between two distances in the rim's plane [deg].

    The cosine of half of it, (p2 + rest) / (2 p rim), is least at p2 = rest or at an end.
    """
    best = np.clip(np.sqrt(np.maximum(rest, 0.0)), near, far)
    with np.errstate(invalid="ignore", divide="ignore"):
        cosine = np.minimum.reduce([(at**2 + rest) / (2.0 * at * rim) for at in (near, best, far)])
    return np.asarray(2.0 * np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0))))


def _nearest(span: Band) -> FloatArray:
    return np.maximum(np.maximum(span.low, -span.high), 0.0)


def _farthest(span: Band) -> FloatArray:
    return np.maximum(np.abs(span.low), np.abs(span.high))
