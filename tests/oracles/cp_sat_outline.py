"""The elbow, the overall length and the turning circle in the constraint model.

The elbow's distance from the rim is a sum of squares: in side view and across. The outline's
corners are placed by tables along and across; length and circle must hold every one of them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

import numpy as np
from ortools.sat.python import cp_model

from chairwright.chair.rows import Rows
from chairwright.chair.steps import HIP
from chairwright.figures.reach import rim_across, rim_top
from chairwright.figures.registry import FIGURES
from chairwright.figures.space import chair_width, front_corners, rear_corners
from chairwright.targets.target import Target

from .cp_sat_axes import joined_axes
from .cp_sat_curves import at_least, ends, whole
from .cp_sat_space import Array
from .cp_sat_tables import Tables

SQUARE, DEGREE, LENGTH, SHARE = 10**2, 10**6, 10**3, 10**6
CHORD_DEG = 0.2
TANGENT_DEG = 0.2

SIDE_VIEW = ("gear", "hip")
ACROSS = ("rear_wheel", "camber", "hand_rim", "seat_width", "arm_support")
TOE = joined_axes(("axle_hole", "rear_wheel", "caster", *HIP, "foot_supports", "hanger"))
TIP = ("gear", "foot_supports", "hanger", "foot_plate", "leg_length")
BESIDE_FOOT = ("seat_width", "foot_plate")


class Corner(NamedTuple):
    """Where the program finds a corner, and the axes that settle its two places."""

    front: bool
    number: int
    along: tuple[str, ...]
    across: tuple[str, ...]


CORNERS = (
    Corner(True, 0, TOE, BESIDE_FOOT),
    Corner(True, 1, TOE, BESIDE_FOOT),
    Corner(True, 2, TIP, BESIDE_FOOT),
    Corner(True, 3, TIP, BESIDE_FOOT),
    Corner(True, 4, ("gear",), ("caster", "seat_width")),
    Corner(True, 5, ("rear_wheel", "hand_rim"), ACROSS),
    Corner(True, 6, (), ACROSS),
    Corner(False, 0, ("rear_wheel",), ("rear_wheel", "camber", "seat_width", "arm_support")),
    Corner(False, 1, ("rear_wheel", "hand_rim"), ACROSS),
    Corner(False, 2, ("gear", "anti_tip"), ("seat_width",)),
    Corner(False, 3, ("gear", "back_angle", "back_height", "push_handle"), ("seat_width",)),
    Corner(False, 4, (), ACROSS),
)
"""The corners in the order in which the program lists them, ahead of the axle and behind it."""
