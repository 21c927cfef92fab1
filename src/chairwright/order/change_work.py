"""Minutes of work on a chair in use, where a line states none.

All values are working values: common practice, no source. A line file states its own under
``later``. Both sides of the chair are meant, by one pair of hands with the tools at hand.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.order.steps import GEAR, TYRE

SOURCE = "working values of the program: common practice, no source"

MINUTES = {
    "foot_supports": 5.0, "hanger": 5.0, "foot_plate": 10.0, "leg_length": 6.0,
    "side_frame": 0.0, "seat_width": 35.0, "seat_depth": 25.0, "cushion": 2.0,
    "arm_support": 8.0, "back_angle": 10.0, "back_height": 10.0, "back_support": 12.0,
    "push_handle": 10.0, "rear_wheel": 4.0, "hand_rim": 20.0, "camber": 12.0, "axle_hole": 14.0,
    "caster": 10.0, "fork": 14.0, "stem_spacer": 10.0, "caster_housing": 16.0,
    "stem_setting": 6.0, "wheel_lock": 12.0, "anti_tip": 4.0, "belt": 8.0, "finish": 60.0,
}  # fmt: skip
"""Work on a choice once the chair is open for it, whether a hole is moved or a part changed."""

EXTRA_MINUTES = 5.0
"""Putting an accessory on, or taking it off."""

FRAME_MINUTES = 150.0
"""Moving everything over to a new frame."""


@dataclass(frozen=True)
class SharedWork:
    """Work that is done once, however many of its choices change.

    Parameters
    ----------
    name : str
        By which a line file may state its minutes.
    words : str
    choices : frozenset of str
    minutes : float
    """

    name: str
    words: str
    choices: frozenset[str]
    minutes: float


SHARED = (
    SharedWork("wheels_off", "frame on blocks, rear wheels off and on again",
               frozenset({"rear_wheel", "hand_rim", "camber", "axle_hole"}), 4.0),
    SharedWork("front_up", "front on blocks and down again",
               frozenset({"caster", "fork", "stem_spacer", "caster_housing"}), 3.0),
    SharedWork("stance", "caster housings squared to the floor, anti-tip height read", GEAR, 8.0),
    SharedWork("locks", "wheel locks set to the tyres again", TYRE | {"wheel_lock"}, 6.0),
    SharedWork("last_check", "last check on a level floor", frozenset(CHOICES), 10.0),
)  # fmt: skip
"""Frame, seat and tyre as in the order of adjustment (`order.steps`)."""


def minutes_of(line: Line, choice: str) -> float:
    """Minutes of work on a choice: the line's, else the working value."""
    return line.later.minutes.get(choice, MINUTES[choice])


def shared_minutes(line: Line, work: SharedWork) -> float:
    """Minutes of shared work: the line's, else the working value."""
    return line.later.minutes.get(work.name, work.minutes)


def frame_minutes(line: Line) -> float:
    """Minutes of moving over to a new frame: the line's, else the working value."""
    stated = line.later.frame_minutes
    return FRAME_MINUTES if math.isnan(stated) else stated
