"""First stage: every way to hang wheels and casters on a frame, in blocks."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import PITCH_RANGE_DEG
from chairwright.chair.pose import caster_axle, rear_axle_height
from chairwright.chair.rows import IndexArray, Rows
from chairwright.chair.steps import STEPS
from chairwright.search.space import Space, obeyed
from chairwright.targets.target import Target

FRONT = ("side_frame", "caster", "fork", "stem_spacer", "caster_housing", "stem_setting")
REAR = ("rear_wheel", "camber", "axle_hole")
ANGLES = ("seat_angle_deg", "caster_stem_angle_deg")
BLOCK = 400_000


def running_gears(space: Space, musts: tuple[Target, ...], *, few: bool = False) -> Iterator[Rows]:
    """Rows of the first step that the rules allow and that stand on their wheels.

    Parameters
    ----------
    space : Space
    musts : tuple of Target
        Those on the seat angle and the stem angle are applied at once; the rest are ignored.
    few : bool
        In smaller blocks, for who may stop early.

    Yields
    ------
    Rows
        In a fixed order, empty blocks left out.
    """
    first = STEPS[0]
    rules = [rule for rule in space.line.rules if rule.choices <= set(first.choices)]
    front = _front_units(space)
    rear = _grid(space, REAR)
    front_x, front_z, front_radius, front_stem = _front_places(space, front)
    heights, axle_x, axle_z = _rear_places(space, rear)
    size = max(1, (BLOCK // 4 if few else BLOCK) // max(1, len(front_x)))
    for start in range(0, len(heights), size):
        part = slice(start, start + size)
        pitch = _pitches(
            front_x - axle_x[part, None],
            front_z - axle_z[part, None],
            front_radius - heights[part, None],
        )
        rear_at, front_at = np.nonzero(_within(pitch, front_stem, musts))
        index = {name: front[name][front_at] for name in FRONT}
        index.update({name: rear[name][part][rear_at] for name in REAR})
        index = {name: index[name] for name in first.choices}
        keep = obeyed(space.line, rules, index) if len(front_at) else np.zeros(0, dtype=bool)
        for limit in space.limits:
            if set(limit.choices) <= set(first.choices):
                keep &= limit.of(index)
        if keep.any():
            rows = Rows(space.line, {name: array[keep] for name, array in index.items()})
            rows.load(first.follow(rows, space.occupant))
            yield rows


def _grid(space: Space, names: tuple[str, ...]) -> dict[str, IndexArray]:
    axes = np.meshgrid(*(space.allowed[name] for name in names), indexing="ij")
    return {name: axis.ravel() for name, axis in zip(names, axes, strict=True)}


def _front_units(space: Space) -> dict[str, IndexArray]:
    grid = _grid(space, FRONT)
    rules = [rule for rule in space.line.rules if rule.choices <= set(FRONT)]
    keep = obeyed(space.line, rules, grid)
    return {name: array[keep] for name, array in grid.items()}


def _front_places(space: Space, front: dict[str, IndexArray]) -> tuple[NDArray[np.float64], ...]:
    def option(choice: str, key: str) -> NDArray[np.float64]:
        return space.line.column(choice, key)[front[choice]]

    stem = np.radians(option("stem_setting", "angle_deg"))
    trail = option("fork", "trail_mm")
    drop = option("fork", "drop_mm") + option("stem_spacer", "height_mm")
    tube = option("side_frame", "caster_tube_x_mm") + option("caster_housing", "ahead_mm")
    x_mm, z_mm = caster_axle(tube, option("caster_housing", "z_mm"), trail, drop, stem)
    return x_mm, z_mm, option("caster", "radius_mm"), stem


def _rear_places(space: Space, rear: dict[str, IndexArray]) -> tuple[NDArray[np.float64], ...]:
    def option(choice: str, key: str) -> NDArray[np.float64]:
        return space.line.column(choice, key)[rear[choice]]

    radius, camber = option("rear_wheel", "radius_mm"), option("camber", "angle_deg")
    axle_x, axle_z = option("axle_hole", "x_mm"), option("axle_hole", "z_mm")
    return rear_axle_height(radius, camber), axle_x, axle_z


def _pitches(
    ahead: NDArray[np.float64], above: NDArray[np.float64], rise: NDArray[np.float64]
) -> NDArray[np.float64]:
    with np.errstate(invalid="ignore", divide="ignore"):
        pitch = np.arcsin(rise / np.sqrt(ahead * ahead + above * above))
        pitch -= np.arctan2(above, ahead)
    return np.asarray(np.where(ahead > 0, pitch, np.nan))


def _within(
    pitch: NDArray[np.float64], stem: NDArray[np.float64], musts: tuple[Target, ...]
) -> NDArray[np.bool_]:
    low, high = np.radians(PITCH_RANGE_DEG)
    fine = (pitch >= low) & (pitch <= high)
    for target in musts:
        if target.figure in ANGLES:
            angle = pitch if target.figure == "seat_angle_deg" else pitch + stem
            if target.low is not None:
                fine &= angle >= np.radians(target.low) - SLACK_RAD
            if target.high is not None:
                fine &= angle <= np.radians(target.high) + SLACK_RAD
    return np.asarray(fine)


SLACK_RAD = 1e-9
"""This cut is a first sieve; the exact judgement follows on what it leaves."""
