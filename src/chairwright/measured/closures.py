"""Measures that must fit one another: what one of them leaves over against the others.

A closure holds when what is left over is within what the readings' half widths can make
together (worst case), so that honest readings never fail one.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.measured.values import axle_height, hub_half

Values = Mapping[str, float]


@dataclass(frozen=True)
class Closure:
    """One way in which measures check each other.

    Parameters
    ----------
    words : str
        What should come out alike.
    uses : tuple of str
        Measures; the closure speaks only when all were taken.
    left_over : callable
        Difference that should be 0, or 0 inside a usual range [mm, kg or deg].
    allowed : float
        Left over that no reading explains.
    """

    words: str
    uses: tuple[str, ...]
    left_over: Callable[[Values], float]
    allowed: float = 0.0


def _seat_height(v: Values) -> float:
    return v["seat_to_floor_rear"] - axle_height(v) - v["axle_below_seat"]


def _seat_angle(v: Values) -> float:
    rise = v["seat_depth"] * math.sin(math.radians(v["seat_angle"]))
    return v["seat_to_floor_front"] - v["seat_to_floor_rear"] - rise


def _wheelbase(v: Values) -> float:
    return v["caster_ahead_of_post"] - v["axle_ahead_of_post"] - v["wheelbase"]


def _diagonal(v: Values) -> float:
    across = (v["rear_track"] + v["caster_track"]) / 2.0
    return v["diagonal"] - math.hypot(v["wheelbase"], across)


def _length(v: Values) -> float:
    foremost = v["footplate_ahead_of_post"] - v["axle_ahead_of_post"]
    caster = v["wheelbase"] + v["caster_diameter"] / 2.0
    behind = v["rear_wheel_diameter"] / 2.0
    return v["overall_length"] - max(foremost, caster) - behind


def _width(v: Values) -> float:
    lean = math.radians(v["camber"])
    if v["hand_rim_diameter"] == 0.0:
        return v["overall_width"] - v["rear_track"] - v["tyre_width"] * math.cos(lean)
    rim = v["hand_rim_standoff"] * math.cos(lean) + v["hand_rim_diameter"] / 2.0 * math.sin(lean)
    foot = v["rear_track"] / 2.0 + v["tyre_width"] / 2.0 * math.cos(lean)
    return v["overall_width"] - 2.0 * max(hub_half(v) + rim, foot)


def _height(v: Values) -> float:
    back = v["back_height"] * math.cos(math.radians(v["back_angle"]))
    top = max(v["seat_to_floor_rear"] + back, axle_height(v) + v["rear_wheel_diameter"] / 2.0)
    return v["overall_height"] - max(top, v["push_handle_height"])


def _footplate(v: Values) -> float:
    down = v["leg_support_length"] * math.sin(math.radians(v["hanger_angle"]))
    return v["seat_to_floor_front"] + v["cushion_front"] - down - v["footplate_clearance"]


def _outside(value: float, low: float, high: float) -> float:
    return value - low if value < low else max(value - high, 0.0)


def _hub_gap(v: Values) -> float:
    return _outside(hub_half(v) - v["seat_width"] / 2.0, 15.0, 110.0)


def _caster_gap(v: Values) -> float:
    return _outside(v["caster_track"] - v["seat_width"], -60.0, 120.0)


def _rim_gap(v: Values) -> float:
    if v["hand_rim_diameter"] == 0.0:
        return 0.0
    return _outside(v["rear_wheel_diameter"] - v["hand_rim_diameter"], 25.0, 120.0)


def _caster_room(v: Values) -> float:
    return _outside(v["rear_wheel_diameter"] - v["caster_diameter"], 60.0, 620.0)


def _folded(v: Values) -> float:
    opened = v["overall_width"] - v["seat_width"]
    return _outside(v["folded_width"] - opened, 0.0, 180.0)


def _handles(v: Values) -> float:
    back = v["back_height"] * math.cos(math.radians(v["back_angle"]))
    return _outside(v["push_handle_height"] - v["seat_to_floor_rear"] - back, -120.0, 200.0)


def _cushion(v: Values) -> float:
    return _outside(v["cushion_front"] - v["cushion_rear"], -15.0, 45.0)


def _arms(v: Values) -> float:
    return _outside(v["arm_pad_height"] - v["cushion_rear"], 90.0, 330.0)


def _empty(v: Values) -> float:
    return v["chair_mass"] - v["empty_on_rear"] - v["empty_on_casters"]


def _empty_share(v: Values) -> float:
    share = v["empty_on_casters"] / (v["empty_on_casters"] + v["empty_on_rear"])
    return _outside(share, 0.10, 0.65)


def _occupied(v: Values) -> float:
    return v["occupied_on_rear"] + v["occupied_on_casters"] - v["chair_mass"] - v["load"]


def _weighed(v: Values) -> float:
    whole = v["occupied_on_casters"] + v["occupied_on_rear"]
    return v["com_ahead_of_axle"] - v["wheelbase"] * v["occupied_on_casters"] / whole


def _model(v: Values) -> float:
    whole = v["occupied_on_casters"] + v["occupied_on_rear"]
    return v["model_ahead"] - v["wheelbase"] * v["occupied_on_casters"] / whole


def _piece(v: Values) -> float:
    return _outside(v["heaviest_piece"] / v["chair_mass"], 0.25, 1.0)


def _wheel(v: Values) -> float:
    return _outside(2.0 * v["rear_wheel_mass"] / v["chair_mass"], 0.07, 0.50)


def _range(name: str) -> Closure:
    kind = CHAIR_MEASURES[name]

    def left_over(v: Values) -> float:
        if name == "hand_rim_diameter" and v[name] == 0.0:
            return 0.0
        return _outside(v[name], kind.low, kind.high)

    words = f"{kind.label} lies from {kind.low:g} to {kind.high:g} {kind.unit}"
    return Closure(words, (name,), left_over)


PLATE_MM = 18.0
"""Thickness of a footplate, and how much lower than the tube it hangs (no source)."""

POSTURE_MM = 60.0
"""How far a client's centre of mass may lie from the posture model's (no source)."""

CLOSURES: tuple[Closure, ...] = (
    *(_range(name) for name in CHAIR_MEASURES),
    Closure(
        "Seat height at the back is the axle's height, camber counted, and the seat above it",
        ("seat_to_floor_rear", "axle_below_seat", "rear_wheel_diameter", "camber"),
        _seat_height,
    ),
    Closure(
        "Seat heights, depth and seat angle go together",
        ("seat_to_floor_front", "seat_to_floor_rear", "seat_depth", "seat_angle"),
        _seat_angle,
    ),
    Closure(
        "Wheelbase is from the axle's place to the caster's",
        ("wheelbase", "axle_ahead_of_post", "caster_ahead_of_post"),
        _wheelbase,
    ),
    Closure(
        "The diagonal closes with wheelbase and both tracks",
        ("diagonal", "wheelbase", "rear_track", "caster_track"),
        _diagonal,
    ),
    Closure(
        "Overall length is from the rear tyre to the footplate or the caster",
        (
            "overall_length", "footplate_ahead_of_post", "axle_ahead_of_post", "wheelbase",
            "rear_wheel_diameter", "caster_diameter",
        ),
        _length,
    ),
    Closure(
        "Overall width goes with rear track, camber and hand rims",
        (
            "overall_width", "rear_track", "camber", "rear_wheel_diameter", "hand_rim_diameter",
            "hand_rim_standoff", "tyre_width",
        ),
        _width,
    ),
    Closure(
        "Overall height is that of the back or the push handles",
        (
            "overall_height", "seat_to_floor_rear", "back_height", "back_angle",
            "push_handle_height", "rear_wheel_diameter", "camber",
        ),
        _height,
    ),
    Closure(
        "Footplate height is the seat's less the hanger",
        (
            "footplate_clearance", "seat_to_floor_front", "cushion_front", "leg_support_length",
            "hanger_angle",
        ),
        lambda v: _outside(_footplate(v), 0.0, PLATE_MM),
    ),
    Closure(
        "The hubs stand a little outside the seat",
        ("rear_track", "seat_width", "rear_wheel_diameter", "camber"),
        _hub_gap,
    ),
    Closure("The casters stand about as wide as the seat", ("caster_track", "seat_width"),
            _caster_gap),
    Closure("The hand rim is a little smaller than the wheel",
            ("hand_rim_diameter", "rear_wheel_diameter"), _rim_gap),
    Closure("The caster is smaller than the rear wheel",
            ("caster_diameter", "rear_wheel_diameter"), _caster_room),
    Closure("Folded, the chair loses the seat's width",
            ("folded_width", "overall_width", "seat_width"), _folded),
    Closure(
        "Push handles are near the top of the back",
        ("push_handle_height", "seat_to_floor_rear", "back_height", "back_angle"),
        _handles,
    ),
    Closure("The cushion is about as high in front as behind",
            ("cushion_front", "cushion_rear"), _cushion),
    Closure("Arm pads are above the cushion", ("arm_pad_height", "cushion_rear"), _arms),
    Closure("The empty chair weighs what its wheels carry",
            ("chair_mass", "empty_on_rear", "empty_on_casters"), _empty),
    Closure("The empty chair's casters carry the lesser share",
            ("empty_on_casters", "empty_on_rear"), _empty_share),
    Closure(
        "The occupied chair weighs what chair and client do",
        ("occupied_on_rear", "occupied_on_casters", "chair_mass", "load"),
        _occupied,
    ),
    Closure(
        "Centre of mass goes with wheelbase and wheel loads",
        ("com_ahead_of_axle", "wheelbase", "occupied_on_casters", "occupied_on_rear"),
        _weighed,
    ),
    Closure(
        "Wheel loads and wheelbase put the client near where the posture model does",
        ("occupied_on_casters", "occupied_on_rear", "wheelbase", "model_ahead"),
        _model,
        POSTURE_MM,
    ),
    Closure("The heaviest piece is a part of the chair", ("heaviest_piece", "chair_mass"),
            _piece, 0.01),
    Closure("Two rear wheels are a part of the chair", ("rear_wheel_mass", "chair_mass"), _wheel),
)  # fmt: skip
"""Those that only say what is usual: common practice, no source."""


def limit(closure: Closure, values: Values, tolerances: Values) -> float:
    """Most that honest readings can leave over: each at the worse end of its half width.

    Parameters
    ----------
    closure : Closure
    values, tolerances : mapping of str to float
    """
    middle, total = closure.left_over(values), closure.allowed
    for name in closure.uses:
        half = tolerances.get(name, 0.0)
        if half > 0.0:
            moved = (closure.left_over({**values, name: values[name] + s * half}) for s in (-1, 1))
            total += max(abs(end - middle) for end in moved)
    return total * ROOM + 1e-6


ROOM = 1.05
"""For what first order leaves out."""
