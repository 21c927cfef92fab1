"""Families of figures of a place's sizes: corner, door, step or slope behind a device, boot.

corner_free_mm    <mm>              width of the way in; any motion
corner_arc_mm     <mm>              width of the way in; one turn
door_turn_mm      <mm>              clear width of the door; one turn
device_spare_deg  slope_<deg> | step_<mm>
boot_missing_mm   <mm>x<mm>x<mm>_on | _off     width, height and depth; rear wheels
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from typing import Protocol

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.steps import STEPS
from chairwright.figures.anti_tip import contact_pitch_deg
from chairwright.figures.corner import ROUNDS, corner_best_arc_out_mm, corner_free_out_mm
from chairwright.figures.doors import door_corridor_mm
from chairwright.figures.family import NUMBER, Family, Made, number
from chairwright.figures.figure import PLACES, STEADY
from chairwright.figures.folded import missing_mm, stowed_box
from chairwright.figures.outline import corners_of
from chairwright.figures.steps_up import kerb_pitch_deg
from chairwright.figures.turning import Corner, stacked
from chairwright.mass_points import FloatArray

TURN = "First principles (theory: turning)"
STATICS = "First principles (theory: balance)"
GEAR = STEPS[0].choices
LAST_OF_OUTLINE = "anti_tip"
NO_DEVICE_DEG = 90.0
"""What is to spare where there is no device to ground, or where it can never touch."""

NEVER_MM = 99_999.0
"""What is needed where the chair is wider than the way in or the door: no corridor is enough."""


class Need(Protocol):
    """Room needed by outlines: way in or door of a width, least found in some golden sections."""

    def __call__(
        self, corners: Sequence[Corner], width: float, /, rounds: int = ROUNDS
    ) -> FloatArray:
        """Width of the way out or of the corridor, shape (n,) [mm]."""

    def __hash__(self) -> int:
        """Stand for the function where results are kept."""


def _by_outline(corners: Sequence[Corner], width: float, need: Need) -> FloatArray:
    """Work a need out once for each outline that several set-ups share."""
    x, y = stacked(corners)
    table = np.ascontiguousarray(np.concatenate([x, y]).T)
    if len(table) == 1:
        return np.array([_of_one(table.tobytes(), width, need)])
    keys = table.view(np.dtype((np.void, table.dtype.itemsize * table.shape[1]))).ravel()
    _, first, place = np.unique(keys, return_index=True, return_inverse=True)
    found = need([(a, b) for a, b in zip(x[:, first], y[:, first], strict=True)], width)
    return np.asarray(found[place])


@lru_cache(maxsize=1024)
def _of_one(outline: bytes, width: float, need: Need) -> float:
    """A need of one outline, all x and then all y; kept, for many changes of a chair leave it."""
    x, y = np.frombuffer(outline).reshape(2, -1, 1)
    return float(need(list(zip(x, y, strict=True)), width)[0])


def _outline_family(name: str, words: str) -> Family:
    def make(typed: str) -> Made | None:
        width = number(typed)
        if not width:
            return None

        def formula(rows: Rows, occupant: Occupant) -> FloatArray:
            return np.minimum(_by_outline(corners_of(rows), width, OUTLINE_NEEDS[name]), NEVER_MM)

        return Made(words.format(width), exact=formula, after=LAST_OF_OUTLINE)

    return Family(name, "mm", 0, 50.0, PLACES, TURN, "<mm>", make)


def _device_spare(typed: str) -> Made | None:
    found = re.fullmatch(rf"(slope|step)_({NUMBER})", typed)
    if found is None:
        return None
    kind, size = found[1], float(found[2])

    def formula(rows: Rows, occupant: Occupant) -> FloatArray:
        needed = kerb_pitch_deg(rows["wheelbase"], size) if kind == "step" else size
        spare = contact_pitch_deg(rows, occupant) - needed
        return np.where(np.isnan(spare), NO_DEVICE_DEG, spare)

    words = f"a step of {size:g} mm" if kind == "step" else f"the foot of a {size:.1f} deg slope"
    label = f"Pitch to spare before the anti-tip device grounds at {words}"
    return Made(label, exact=formula, touches=(*GEAR, "anti_tip"), after="anti_tip")


def _boot_missing(typed: str) -> Made | None:
    found = re.fullmatch(rf"({NUMBER})x({NUMBER})x({NUMBER})_(on|off)", typed)
    if found is None:
        return None
    width, height, depth = (float(found[place]) for place in (1, 2, 3))
    off = found[4] == "off"

    def formula(rows: Rows, occupant: Occupant) -> FloatArray:
        return missing_mm(stowed_box(rows, wheels_off=off), width, height, depth)

    label = f"Folded chair, wheels {found[4]}: what the boot lacks (below zero: to spare)"
    return Made(label, exact=formula, after="push_handle")


OUTLINE_NEEDS: dict[str, Need] = {
    "corner_free_mm": corner_free_out_mm,
    "corner_arc_mm": corner_best_arc_out_mm,
    "door_turn_mm": door_corridor_mm,
}
"""Families whose figure hangs on the outline in plan alone; none needs less for a larger one."""

ROOM_FAMILIES = (
    _outline_family(
        "corner_free_mm", "Way out of a corner needed, way in {:g} mm, moving to and fro"
    ),
    _outline_family("corner_arc_mm", "Way out of a corner needed, way in {:g} mm, in one turn"),
    _outline_family("door_turn_mm", "Corridor needed to turn into a door of {:g} mm, in one turn"),
    Family("device_spare_deg", "deg", 1, 1.0, STEADY, STATICS, "slope_<deg> | step_<mm>",
           _device_spare),
    Family("boot_missing_mm", "mm", 0, 20.0, PLACES, TURN, "<mm>x<mm>x<mm>_on | _off",
           _boot_missing),
)  # fmt: skip
"""Every family of this file, in the order of the reference page."""
