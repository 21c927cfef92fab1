"""The elbow, the overall length and the turning circle in the constraint model.

The elbow's distance from the rim is a sum of squares: in side view and across. The outline's
corners are placed by tables along and across; length and circle must hold every one of them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from typing import NamedTuple

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.chair.steps import HIP
from chairwright.figures.reach import rim_across, rim_top
from chairwright.figures.registry import FIGURES
from chairwright.figures.space import front_corners, rear_corners
from chairwright.targets.target import Target

from .cp_sat_axes import joined_axes
from .cp_sat_curves import Expression, at_least, ends, whole
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


def charge_outline(tables: Tables, targets: Sequence[Target]) -> None:
    """Charge targets on the elbow, the overall length and the turning circle.

    Parameters
    ----------
    tables : Tables
    targets : sequence of Target
    """
    elbow = [target for target in targets if target.figure == "elbow_angle_deg"]
    if elbow:
        _elbow(tables, elbow)
    for target in targets:
        if target.figure in LIMITED:
            if target.low is not None or target.high is None:
                message = f"{target.figure}: only an upper end"
                raise NotImplementedError(message)
            beyond = LIMITED[target.figure](tables, target.high)
            if target.must:
                tables.model.add(beyond <= 0)
            else:
                unit = target.weight / FIGURES[target.figure].scale
                tables.charge(unit, beyond, LENGTH)


class Arm(NamedTuple):
    """Upper arm and forearm to the grip [mm]; both arms alike."""

    upper: float
    fore: float

    def square(self, elbow_deg: float) -> int:
        """Square of the shoulder's distance to the grip, in whole numbers."""
        cosine = np.cos(np.radians(elbow_deg))
        square = self.upper**2 + self.fore**2 - 2 * self.upper * self.fore * cosine
        return round(float(square) * SQUARE)

    def bent(self, squares: Array) -> Array:
        """Elbow angle [deg] at squares of the distance [mm2]."""
        cosine = (self.upper**2 + self.fore**2 - squares) / (2 * self.upper * self.fore)
        return np.asarray(np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0))))


def _elbow(tables: Tables, targets: Sequence[Target]) -> None:
    """Elbow angle within a must, by the square of the shoulder's distance to the rim."""
    body = tables.tabulation.space.occupant.body
    ((upper, fore),) = set(
        zip(body.upper_arm_mm.values(), body.forearm_to_grip_mm.values(), strict=True)
    )
    (must,) = (target for target in targets if target.must)
    if upper is None or fore is None or must.low is None or must.high is None:
        raise NotImplementedError(ONE_ARM)
    arm, model = Arm(upper, fore), tables.model
    least, most = arm.square(must.low) - SQUARE, arm.square(must.high) + SQUARE
    distance = model.new_int_var(least, most, "reach")
    model.add(distance == _squared_reach(tables))
    between = [arm.square(each) for each in ends(np.array([must.low, must.high]), CHORD_DEG)]
    places = np.array([least, *between[1:-1], most]) / SQUARE
    for target in targets:
        unit = target.weight / FIGURES[target.figure].scale
        if target.high is not None and target.high < must.high:
            bent = at_least(model, distance, arm.bent, places, (SQUARE, DEGREE))
            tables.charge(unit, bent - round(target.high * DEGREE), DEGREE)
        if target.low is not None and target.low > must.low:
            less = at_least(model, distance, lambda s: -arm.bent(s), places, (SQUARE, DEGREE))
            tables.charge(unit, less + round(target.low * DEGREE), DEGREE)


ONE_ARM = "elbow_angle_deg: only with a must between two ends"


def _squared_reach(tables: Tables) -> Expression:
    rows = tables.tabulation.rows(SIDE_VIEW)
    along, up = rows.to_floor(rows["shoulder_x"], rows["shoulder_z"])
    side = along**2 + (up - rim_top(rows)) ** 2
    rows = tables.tabulation.rows(ACROSS)
    aside = rim_across(
        rows, tables.tabulation.space.occupant, rows["hub_half"], rows["rim_standoff"]
    )
    return (
        tables.columns(SIDE_VIEW, {"side view": whole(side, SQUARE)})["side view"]
        + tables.columns(ACROSS, {"across": whole(aside**2, SQUARE)})["across"]
    )


def _length(tables: Tables, high: float) -> Expression:
    """Foremost less rearmost corner, beyond a limit."""
    model = tables.model
    ahead, behind = model.new_int_var(0, 10**7, "ahead"), model.new_int_var(-(10**7), 0, "behind")
    for corner in CORNERS:
        (along,) = _placed(tables, corner, across=False)
        if corner.front:
            model.add(ahead >= along.value)
        else:
            model.add(behind <= along.value)
    return ahead - behind - round(high * LENGTH)


def _circle(tables: Tables, high: float) -> Expression:
    """Diameter of the circle that holds every corner, beyond a limit."""
    model = tables.model
    most = round(high * LENGTH)
    beyond = model.new_int_var(-most, 10**7, "circle")
    for corner in CORNERS:
        along, across = _placed(tables, corner, across=True)
        if 2 * np.hypot(along.most, across.most) <= high:
            continue
        sign = 1 if corner.front else -1
        for turn in _turns(along, across):
            cos, sin = round(np.cos(turn) * SHARE), round(np.sin(turn) * SHARE)
            reach = 2 * (sign * cos * along.value + sin * across.value)
            model.add(SHARE * (beyond + most) >= reach)
    return beyond


LIMITED: dict[str, Callable[[Tables, float], Expression]] = {
    "overall_length_mm": _length,
    "turning_diameter_mm": _circle,
}

OUTLINE = frozenset({"elbow_angle_deg", *LIMITED})


class Place(NamedTuple):
    """One coordinate of a corner, and the ends of its distance from the axle's middle [mm]."""

    value: Expression
    least: float
    most: float


def _turns(along: Place, across: Place) -> Array:
    """Directions in which a corner can lie, seen from the middle of the axle [rad]."""
    first = np.degrees(np.arctan2(across.least, along.most))
    last = np.degrees(np.arctan2(across.most, along.least))
    return np.asarray(np.radians(ends(np.array([first, last]), TANGENT_DEG)))


def _placed(tables: Tables, corner: Corner, *, across: bool) -> Iterator[Place]:
    """The corner's place along and, if wanted, across; tables are made once."""
    for axes, at in ((corner.along, 0), (corner.across, 1))[: 1 + across]:
        rows = tables.tabulation.rows(axes or ("seat_width",))
        places = _corner(rows, corner)[at]
        if not axes:
            yield Place(0, 0.0, 0.0)
            continue
        value = tables.columns(axes, {"corner": whole(places, LENGTH)})["corner"]
        yield Place(value, float(np.min(np.abs(places))), float(np.max(np.abs(places))))


def _corner(rows: Rows, corner: Corner) -> tuple[Array, Array]:
    corners = list(front_corners(rows) if corner.front else rear_corners(rows))
    return corners[corner.number]
