"""Seat heights of a line over wheels, axle holes, casters and fork holes, stems squared.

Heights of the chair as it stands empty on a level floor: the pose does not hang on who sits in
it. The formulas are those of every set-up (`chair.steps`, `figures.heights`).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import PITCH_RANGE_DEG, buildable
from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import IndexArray, Rows
from chairwright.chair.steps import STEPS
from chairwright.errors import InputError, Problem
from chairwright.figures import heights
from chairwright.fitting.empty_chair import NOBODY
from chairwright.fitting.heights_fixed import (
    CHOSEN,
    SQUARED,
    VARIED,
    HoleColumn,
    chosen_column,
    fixed_options,
    hole_columns,
    open_options,
)
from chairwright.fitting.heights_rules import NO_RULE, ChartRules
from chairwright.line.model import Line, Option
from chairwright.mass_points import FloatArray

REAR, FRONT = "seat_to_floor_rear_mm", "seat_to_floor_front_mm"
ANGLE, STEM = "seat_angle_deg", "caster_stem_angle_deg"
FORMULAS: Mapping[str, Callable[[Rows, Occupant], FloatArray]] = {
    REAR: heights.seat_to_floor_rear,
    FRONT: heights.seat_to_floor_front,
    ANGLE: heights.seat_angle,
    STEM: heights.caster_stem_angle,
    "caster_trail_mm": heights.caster_trail,
    "toe_deg": heights.toe,
    "wheelbase_mm": heights.wheelbase,
}
"""Figures of a chart; names, labels and digits are the registry's."""

SHOWN = tuple(FORMULAS)

DOWN, BACK, CANNOT, OUTSIDE, RULES = range(5)
"""Places of the reasons that are not the line's; those of its rules follow."""

NOSE_DOWN = f"would tilt nose-down by more than {-PITCH_RANGE_DEG[0]:g} degrees"
TILTS_BACK = f"would tilt back by more than {PITCH_RANGE_DEG[1]:g} degrees"
FALLS = "cannot stand: the casters do not come ahead of the rear axle"
STANDS = -1
SLACK_DEG = 1e-9

Masks = NDArray[np.bool_]


@dataclass(frozen=True)
class Ask:
    """What a chart is wanted for.

    Parameters
    ----------
    fixed : dict of str to str
        Codes of choices that stay the same; those left out get the line's usual options.
    column : str or None
        Column of axle holes that is printed; None for the middle one.
    only : dict of str to tuple of str
        Codes to which rear wheels, casters, forks or stem settings are narrowed.
    level_deg : tuple of two float or None [deg]
        Least and greatest seat angle; None for all that stand.
    """

    fixed: Mapping[str, str] = field(default_factory=dict)
    column: str | None = None
    only: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    level_deg: tuple[float, float] | None = None


@dataclass(frozen=True)
class HeightsChart:
    """A seat-height chart; every array has shape (wheels, axle holes, casters, fork holes).

    Parameters
    ----------
    line : Line
    fixed : dict of str to Option
        What stays the same.
    column : HoleColumn
        The column that is printed.
    columns : tuple of HoleColumn
        All of them.
    options : dict of str to tuple of int
        Positions along each axis, in the line's order.
    figures : dict of str to ndarray
        NaN where there is no such chair.
    setting : ndarray of int
        Position of the stem setting.
    why : ndarray of int
        Place of the reason in ``reasons`` where there is none; -1 where the chair stands.
    reasons : tuple of str
    level_deg : tuple of two float or None [deg]
        What the chart was narrowed to.
    """

    line: Line
    fixed: dict[str, Option]
    column: HoleColumn
    columns: tuple[HoleColumn, ...]
    options: dict[str, tuple[int, ...]]
    figures: dict[str, FloatArray]
    setting: IndexArray
    why: IndexArray
    reasons: tuple[str, ...]
    level_deg: tuple[float, float] | None

    def option(self, name: str, place: int) -> Option:
        """The option at a place along one axis."""
        return self.line.choices[name].options[self.options[name][place]]


def heights_chart(line: Line, ask: Ask) -> HeightsChart:
    """Work out a seat-height chart.

    Parameters
    ----------
    line : Line
    ask : Ask

    Returns
    -------
    HeightsChart
        In each cell the stem setting that brings the caster stem nearest to the vertical; of
        two that do so equally well the line's first.

    Raises
    ------
    InputError
        When a code or a column is not in the line, or the rules do not allow what is fixed.
    """
    own = (NOSE_DOWN, TILTS_BACK, FALLS, _level_words(ask.level_deg))
    fixed = fixed_options(line, ask.fixed)
    column = chosen_column(line, ask.column)
    options = {name: open_options(line, name, ask.only.get(name)) for name in (*VARIED, SQUARED)}
    rules = ChartRules(line, CHOSEN)
    wheels = [
        _one_wheel(line, fixed, {**options, VARIED[0]: (wheel,)}, rules, ask.level_deg)
        for wheel in options[VARIED[0]]
    ]
    return HeightsChart(
        line=line,
        fixed=fixed,
        column=column,
        columns=hole_columns(line),
        options=options,
        figures={name: np.concatenate([each.figures[name] for each in wheels]) for name in SHOWN},
        setting=np.concatenate([each.setting for each in wheels]),
        why=np.concatenate([each.why for each in wheels]),
        reasons=(*own, *rules.reasons),
        level_deg=ask.level_deg,
    )


def _level_words(level_deg: tuple[float, float] | None) -> str:
    """The reason for what lies outside; refuses a range upside down."""
    low, high = PITCH_RANGE_DEG if level_deg is None else level_deg
    if not low <= high:
        must = "the least seat angle comes first, then the greatest, both in degrees"
        raise InputError(Problem("--level", must, f"{low:g} {high:g}", "Write it like: 0 4."))
    return f"seat angle outside {low:g} to {high:g} degrees"


class _Wheel(NamedTuple):
    """One rear wheel's part of the chart."""

    figures: dict[str, FloatArray]
    setting: IndexArray
    why: IndexArray


def _one_wheel(
    line: Line,
    fixed: Mapping[str, Option],
    options: Mapping[str, tuple[int, ...]],
    rules: ChartRules,
    level_deg: tuple[float, float] | None,
) -> _Wheel:
    rows = _standing(line, fixed, options)
    shape = tuple(len(options[name]) for name in (*VARIED, SQUARED))
    broken = rules.broken(rows.index).reshape(-1, shape[-1])
    fine = (broken == NO_RULE) & buildable(rows).reshape(broken.shape)
    best = _squarest(rows["stem"].reshape(broken.shape), fine)
    cells = np.arange(len(best))
    shown = rows.take(cells * shape[-1] + best)
    why = np.where(fine[cells, best], STANDS, _why_not(rows["pitch"], broken))
    if level_deg is not None:
        why[(why == STANDS) & ~_within(np.degrees(shown["pitch"]), level_deg)] = OUTSIDE
    figures = {name: np.where(why == STANDS, _figure(name, shown), np.nan) for name in SHOWN}
    return _Wheel(
        {name: values.reshape(shape[:-1]) for name, values in figures.items()},
        shown.index[SQUARED].reshape(shape[:-1]),
        why.reshape(shape[:-1]),
    )


def _standing(
    line: Line, fixed: Mapping[str, Option], options: Mapping[str, tuple[int, ...]]
) -> Rows:
    """Rows of every combination, stem settings innermost, with all that the pose settles."""
    names = (*VARIED, SQUARED)
    axes = np.meshgrid(*(np.array(options[name]) for name in names), indexing="ij")
    index = {name: axis.ravel() for name, axis in zip(names, axes, strict=True)}
    count = len(index[SQUARED])
    for name, option in fixed.items():
        index[name] = np.full(count, line.choices[name].codes[option.code])
    rows = Rows(line, index)
    for step in STEPS:
        if not set(step.choices).isdisjoint(CHOSEN):
            step.follow(rows, NOBODY)
    return rows


def _squarest(stem_rad: FloatArray, fine: Masks) -> IndexArray:
    """The setting nearest to the vertical in each row; the line's first of equals."""
    off = np.where(fine, np.round(np.abs(stem_rad), 9), np.inf)
    return np.asarray(np.argmin(off, axis=1))


def _why_not(pitch_rad: FloatArray, broken: IndexArray) -> IndexArray:
    """A reason for each row: the rule, or the tilt with the setting nearest to standing."""
    low, high = np.radians(PITCH_RANGE_DEG)
    pitch = np.where(broken == NO_RULE, pitch_rad.reshape(broken.shape), np.nan)
    beyond = np.maximum(low - pitch, pitch - high)
    nearest = np.argmin(np.where(np.isnan(beyond), np.inf, beyond), axis=1)
    tilt = pitch[np.arange(len(pitch)), nearest]
    floor = np.where(np.isnan(tilt), CANNOT, np.where(tilt < low, DOWN, BACK))
    return np.where((broken == NO_RULE).any(axis=1), floor, RULES + broken[:, 0])


def _within(angle_deg: FloatArray, ends: tuple[float, float]) -> Masks:
    return np.asarray((angle_deg >= ends[0] - SLACK_DEG) & (angle_deg <= ends[1] + SLACK_DEG))


def _figure(name: str, rows: Rows) -> FloatArray:
    return np.asarray(FORMULAS[name](rows, NOBODY))
