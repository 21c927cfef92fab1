"""An anti-tip device that would stand in the floor goes into another hole of its tube."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from chairwright.chair.buildable import buildable
from chairwright.figures.evaluate import realise
from chairwright.fitting.follow_up import DEVICE, device_gap_mm
from chairwright.line.choices import NONE
from chairwright.search.space import obeyed
from chairwright_desk.bench.bridge.opened import State

__all__ = ["DEVICE", "lifts"]


def lifts(state: State, pairs: Sequence[tuple[str, int]]) -> dict[tuple[str, int], int]:
    """For changes that drive the device into the floor, the hole that clears it.

    Parameters
    ----------
    state : State
    pairs : sequence of (str, int)
        Choice and option position of each change.

    Returns
    -------
    dict of (str, int) to int
        Position of the device's option: on the same tube, with the gap to the floor nearest to
        the present one. A change that no hole makes stand is absent.
    """
    line, index = state.bench.line, state.index
    device = line.choices[DEVICE].options[index[DEVICE]]
    wanted = [pair for pair in pairs if pair[0] != DEVICE]
    if device.code == NONE or not wanted:
        return {}
    options = line.choices[DEVICE].options
    holes = [at for at, option in enumerate(options) if option.part == device.part]
    count = len(wanted) * len(holes)
    rows = {name: np.full(count, at, dtype=np.intp) for name, at in index.items()}
    rows[DEVICE] = np.tile(np.array(holes, dtype=np.intp), len(wanted))
    for row, (name, at) in enumerate(wanted):
        rows[name][row * len(holes) : (row + 1) * len(holes)] = at
    made, _ = realise(line, state.bench.person.occupant, rows)
    fine = buildable(made) & obeyed(line, line.rules, rows)
    away = np.abs(made["device_z"] - made["device_radius"] - _gap_mm(state))
    nearest = np.where(fine, away, np.inf).reshape(len(wanted), len(holes))
    best = nearest.argmin(axis=1)
    return {
        pair: holes[int(at)]
        for pair, at, row in zip(wanted, best, nearest, strict=True)
        if np.isfinite(row[at])
    }


def _gap_mm(state: State) -> float:
    shape = None if state.setup is None else state.setup.shape
    if shape is not None and shape.anti_tip_wheel is not None:
        return shape.anti_tip_wheel[1] - shape.anti_tip_radius_mm
    return device_gap_mm(state.bench.line, state.bench.person.occupant, state.index)
