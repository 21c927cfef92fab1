"""What a chair is between two steps: on its wheels or off them, and what a tape would read."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from chairwright.chair.buildable import buildable, reason_not
from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.evaluate import figures_of, realise
from chairwright.fitting.allowed import broken_rules, rule_words
from chairwright.line.model import Line
from chairwright.mass_points import FloatArray

Status = Literal["on its wheels", "off its wheels"]
ON: Status = "on its wheels"
OFF: Status = "off its wheels"

IN_FRAME = (
    "seat_width_mm", "seat_depth_mm", "back_height_mm", "arm_height_mm", "seat_to_back_angle_deg",
    "leg_support_length_mm", "rear_track_mm",
)  # fmt: skip
"""Figures that a tape or an angle gauge reads in the frame, whether or not it stands."""

ON_FLOOR = (
    "seat_to_floor_rear_mm", "seat_to_floor_front_mm", "seat_angle_deg", "back_angle_deg",
    "cushion_to_floor_front_mm", "caster_stem_angle_deg", "footplate_clearance_mm",
    "caster_foot_clearance_mm", "caster_tyre_clearance_mm", "toe_deg", "wheelbase_mm",
    "overall_height_mm", "pitch_to_anti_tip_deg",
)  # fmt: skip
"""Figures that are read on the floor, so only while the chair stands on its wheels."""

DEVICE_GAP = "device_gap_mm"
TYRE_FRONT = "tyre_front_mm"
TYRE_OUT = "tyre_out_mm"
"""Anti-tip wheel above the floor; front of the rear tyre at the wheel lock's height, ahead of the
seat corner; middle of the hub out from the seat's edge."""


@dataclass(frozen=True)
class State:
    """A chair after a step.

    Parameters
    ----------
    index : dict of str to int
        Option position of every choice.
    status : {"on its wheels", "off its wheels"}
    reasons : tuple of str
        Why it must stay off its wheels: parts that do not go together, or how it would stand.
    values : dict of str to float
        What can be read, by the figure's name; what cannot be read now is left out.
    """

    index: dict[str, int]
    status: Status
    reasons: tuple[str, ...]
    values: dict[str, float]

    @property
    def stands(self) -> bool:
        """Whether it may be put down."""
        return self.status == ON


def states(
    line: Line, occupant: Occupant, indexes: Sequence[Mapping[str, int]], lock_z_mm: float
) -> tuple[State, ...]:
    """Work out what several set-ups are, one after the other on the way from one to another.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    indexes : sequence of mapping of str to int
        Option position of every choice.
    lock_z_mm : float
        Height of the wheel lock in frame axes, at which the tyre is looked at.

    Returns
    -------
    tuple of State
    """
    index = {name: np.array([each[name] for each in indexes]) for name in indexes[0]}
    rows = realise(line, occupant, index)[0]
    values = figures_of(rows, occupant, [*IN_FRAME, *ON_FLOOR])
    values |= _more(rows, lock_z_mm)
    stands = buildable(rows)
    return tuple(
        _state(line, dict(each), rows.take(np.array([at])), bool(stands[at]),
               {name: float(column[at]) for name, column in values.items()})
        for at, each in enumerate(indexes)
    )  # fmt: skip


def _more(rows: Rows, lock_z_mm: float) -> dict[str, FloatArray]:
    """Readings that are no figures."""
    radius, up = rows["rear_radius"], lock_z_mm - rows["axle_z"]
    with np.errstate(invalid="ignore"):
        front = rows["axle_x"] + np.sqrt(radius**2 - up**2)
    return {
        DEVICE_GAP: rows["device_z"] - rows["device_radius"],
        TYRE_FRONT: front,
        TYRE_OUT: rows["hub_half"] - rows["width"] / 2,
    }


def _state(
    line: Line, index: dict[str, int], row: Rows, stands: bool, values: dict[str, float]
) -> State:
    broken = dict.fromkeys(rule_words(line, rule, index) for rule in broken_rules(line, index))
    reasons = (*broken, *([] if stands else [reason_not(row).partition(";")[0]]))
    status = OFF if reasons else ON
    readable = {*IN_FRAME, TYRE_FRONT, TYRE_OUT, *((*ON_FLOOR, DEVICE_GAP) if status == ON else ())}
    kept = {
        name: value for name, value in values.items() if name in readable and not math.isnan(value)
    }
    return State(index, status, reasons, kept)
