"""What is adjusted after the running gear: housings squared, then the anti-tip device.

Order of adjustment: axle first, then the caster housings squared to the floor again, then wheel
locks, then the height of the anti-tip device (common practice of the trade; squaring after any
axle move: NSW, read in the source).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from chairwright.chair.buildable import buildable
from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.evaluate import realise
from chairwright.figures.registry import FIGURES
from chairwright.line.choices import NONE
from chairwright.line.model import Line
from chairwright.search.space import obeyed

STEM = "caster_stem_angle_deg"
SETTING = "stem_setting"
DEVICE = "anti_tip"


@dataclass(frozen=True)
class Squared:
    """The step of re-squaring that brings the caster stem nearest to the vertical.

    Parameters
    ----------
    code, name : str
        The stem setting.
    stem_deg : float
        Caster stem off vertical with it [deg], top leaning back positive.
    """

    code: str
    name: str
    stem_deg: float


def squared(
    line: Line, occupant: Occupant, index: Mapping[str, int], stem_deg: float
) -> Squared | None:
    """Find the stem setting that squares the casters best with everything else kept.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : mapping of str to int
        Option position of every choice; the set-up stands.
    stem_deg : float
        Caster stem off vertical as it is [deg].

    Returns
    -------
    Squared or None
        None when no setting brings the stem visibly nearer to the vertical.
    """
    rows = _with_each(line, occupant, index, SETTING)
    angle = np.degrees(rows["stem"])
    off = np.where(_may_be(line, rows), np.abs(angle), np.inf)
    best = int(np.argmin(off))
    if abs(stem_deg) - off[best] < FIGURES[STEM].resolution:
        return None
    option = line.choices[SETTING].options[int(rows.index[SETTING][best])]
    return Squared(option.code, option.name, float(angle[best]))


def cleared(line: Line, occupant: Occupant, index: Mapping[str, int], gap_mm: float) -> int | None:
    """Find a hole that lifts an anti-tip device out of the floor, on the tube that is fitted.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : mapping of str to int
        Option position of every choice; allowed, but it does not stand.
    gap_mm : float
        Gap from the device to the floor before the change [mm]: the hole nearest to it is taken.

    Returns
    -------
    int or None
        Position of the anti-tip option; None when no hole of that tube makes the set-up stand.
    """
    device = line.choices[DEVICE].options[index[DEVICE]]
    if device.code == NONE:
        return None
    rows = _with_each(line, occupant, index, DEVICE)
    same = [option.part == device.part for option in line.choices[DEVICE].options]
    fine = _may_be(line, rows) & np.array(same)
    if not fine.any():
        return None
    gap = rows["device_z"] - rows["device_radius"]
    nearest = np.where(fine, np.abs(gap - gap_mm), np.inf)
    return int(rows.index[DEVICE][int(np.argmin(nearest))])


def device_gap_mm(line: Line, occupant: Occupant, index: Mapping[str, int]) -> float:
    """Gap from the anti-tip device to the floor [mm].

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : mapping of str to int
        Option position of every choice.

    Returns
    -------
    float
        NaN when none is fitted.
    """
    rows = realise(line, occupant, {name: np.array([at]) for name, at in index.items()})[0]
    return float(rows["device_z"][0] - rows["device_radius"][0])


def _with_each(line: Line, occupant: Occupant, index: Mapping[str, int], name: str) -> Rows:
    """The set-up with each option of one choice, as rows."""
    count = len(line.choices[name].options)
    rows = {each: np.full(count, at) for each, at in index.items()}
    rows[name] = np.arange(count)
    return realise(line, occupant, rows)[0]


def _may_be(line: Line, rows: Rows) -> np.ndarray[tuple[int, ...], np.dtype[np.bool_]]:
    return buildable(rows) & obeyed(line, line.rules, rows.index)
