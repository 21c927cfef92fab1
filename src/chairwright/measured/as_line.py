"""A measured chair as a product line of one set-up, so that every formula serves it as it is."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Choice, Line, Option
from chairwright.measured.values import (
    PLATE_MM,
    axle_ahead,
    axle_height,
    chair_mass,
    footplate_tip,
    hanger_deg,
    hub_half,
    pitch_deg,
    rim_standoff,
)

Numbers = dict[str, float]
CODE = "measured"
NOT_PRICED = {"price": math.nan, "surcharge": math.nan, "extra_days": math.nan}


@dataclass(frozen=True)
class Frame:
    """Turns places on the level into frame axes.

    Parameters
    ----------
    pitch_rad : float [rad]
    axle_up : float [mm]
        Rear axle above the seat corner, level.
    axle_ahead : float [mm]
        Rear axle ahead of the seat corner, level.
    """

    pitch_rad: float
    axle_up: float
    axle_ahead: float

    def place(self, ahead_mm: float, up_mm: float) -> tuple[float, float]:
        """From ahead of and above the seat corner, level, to frame axes [mm]."""
        sin, cos = math.sin(self.pitch_rad), math.cos(self.pitch_rad)
        return ahead_mm * cos + up_mm * sin, up_mm * cos - ahead_mm * sin

    def from_axle(self, ahead_mm: float, above_mm: float) -> tuple[float, float]:
        """From ahead of and above the rear axle, level, to frame axes [mm]."""
        return self.place(self.axle_ahead + ahead_mm, self.axle_up + above_mm)


def as_line(values: Mapping[str, float], feet: str, name: str) -> Line:
    """A line whose only set-up is the measured chair.

    Parameters
    ----------
    values : mapping of str to float [mm, kg or deg]
        From `values.known`.
    feet : {"both", "left", "right", "none"}
        Foot supports.
    name : str

    Returns
    -------
    Line
        Without prices and delivery times.
    """
    frame = Frame(
        math.radians(pitch_deg(values)),
        axle_height(values) - values["seat_to_floor_rear"],
        axle_ahead(values),
    )
    numbers: dict[str, Numbers] = {choice: {} for choice in CHOICES}
    numbers |= _running_gear(values, frame)
    numbers |= _seat(values, frame)
    numbers |= _feet(values, feet, frame)
    numbers |= _rest(values, frame)
    numbers["side_frame"] |= _masses(values, frame) | _hanger_place(values)
    return _line(numbers, values, name)


def _line(numbers: dict[str, Numbers], values: Mapping[str, float], name: str) -> Line:
    limits = dict.fromkeys(CHOICES, math.inf) | {"finish": values.get("rated_load", math.nan)}
    choices = {
        choice: Choice(choice, kind.label, (_option(choice, numbers[choice], limits[choice]),))
        for choice, kind in CHOICES.items()
    }
    return Line(
        name="measured", title=name, maker="", version="as measured", choices=choices,
        rules=(), fixed_parts=(), extras=(),
        caster_outset_mm=(values["caster_track"] - values["seat_width"]) / 2.0,
        crown_gap_mm=0.0, folded_seat_mm=math.nan, folds_to_width_mm=0.0,
        currency="", base_price=math.nan, build_days=0,
    )  # fmt: skip


def _option(choice: str, numbers: Numbers, limit: float) -> Option:
    fitted = numbers.pop("fitted_here", 1.0) > 0
    weightless = {"mass_kg": 0.0, "x_mm": 0.0, "z_mm": 0.0}
    held = {**weightless, **NOT_PRICED, "load_limit_kg": limit, **numbers}
    return Option(CODE if fitted else NONE, "as measured", held)


def _running_gear(values: Mapping[str, float], frame: Frame) -> dict[str, Numbers]:
    axle = frame.place(frame.axle_ahead, frame.axle_up)
    caster_up = values["caster_diameter"] / 2.0 - axle_height(values)
    caster = frame.from_axle(values["wheelbase"], caster_up)
    stem = math.radians(values["caster_stem_angle"]) - frame.pitch_rad
    trail = values["caster_trail"]
    return {
        "side_frame": {"caster_tube_x_mm": caster[0] + trail * math.cos(stem)},
        "caster_housing": {"ahead_mm": 0.0, "z_mm": caster[1] + trail * math.sin(stem)},
        "rear_wheel": {
            "radius_mm": values["rear_wheel_diameter"] / 2.0,
            "tyre_width_mm": values["tyre_width"],
            "hand_rim_radius_mm": values["hand_rim_diameter"] / 2.0,
            "spin_inertia_kgm2": _spin_kgm2(values),
            "rolling_mm": math.nan,
            "mass_kg": 2.0 * values["rear_wheel_mass"],
        },
        "camber": {"angle_deg": values["camber"], "hub_extra_mm": 0.0},
        "axle_hole": {"x_mm": axle[0], "z_mm": axle[1]},
        "caster": {
            "radius_mm": values["caster_diameter"] / 2.0,
            "width_mm": values["caster_width"],
            "spin_inertia_kgm2": 0.0,
            "rolling_mm": math.nan,
        },
        "fork": {"trail_mm": trail, "drop_mm": 0.0},
        "stem_spacer": {"height_mm": 0.0},
        "stem_setting": {"angle_deg": math.degrees(stem)},
        "hand_rim": {
            "fitted": float(values["hand_rim_diameter"] > 0),
            "standoff_mm": rim_standoff(values),
        },
    }


def _spin_kgm2(values: Mapping[str, float]) -> float:
    """Of both rear wheels about the axle."""
    gyration = values["wheel_gyration"] * values["rear_wheel_diameter"] / 2000.0
    return 2.0 * values["rear_wheel_mass"] * gyration**2


def _seat(values: Mapping[str, float], frame: Frame) -> dict[str, Numbers]:
    width = values["seat_width"]
    back = values["back_angle"] - math.degrees(frame.pitch_rad)
    return {
        "seat_width": {"width_mm": width},
        "arm_support": {
            "pad_height_mm": values.get("arm_pad_height", math.nan),
            "hub_outset_mm": hub_half(values) - width / 2.0,
            "outer_outset_mm": 0.0,
        },
        "seat_depth": {"depth_mm": values["seat_depth"]},
        "cushion": {"rear_mm": values["cushion_rear"], "front_mm": values["cushion_front"]},
        "back_angle": {"angle_deg": back},
        "back_support": {"behind_post_mm": values["back_behind_post"], "tilt_deg": 0.0},
        "back_height": {"height_mm": values["back_height"]},
    }


def _hanger_place(values: Mapping[str, float]) -> Numbers:
    return {"hanger_x_mm": values["seat_depth"], "hanger_z_mm": values["cushion_front"]}


def _feet(values: Mapping[str, float], feet: str, frame: Frame) -> dict[str, Numbers]:
    sides = {side: float(feet in {side, "both"}) for side in ("left", "right")}
    if feet == "none":
        return {
            "foot_supports": sides,
            "hanger": {"angle_deg": math.nan},
            "foot_plate": dict.fromkeys(PLATE_KEYS, math.nan),
            "leg_length": {"length_mm": math.nan},
        }
    angle = hanger_deg(values) + math.degrees(frame.pitch_rad)
    length, along = values["leg_support_length"], math.cos(math.radians(angle))
    plate = values["footplate_length"]
    down = values["cushion_front"] - length * math.sin(math.radians(angle))
    level = footplate_tip(values)
    tip = (level + down * math.sin(frame.pitch_rad)) / math.cos(frame.pitch_rad)
    behind = values["seat_depth"] + length * along - (tip - plate)
    sizes = (plate, behind, PLATE_MM, values["footplate_inset"], PLATE_WIDTH_MM)
    return {
        "foot_supports": sides,
        "hanger": {"angle_deg": angle},
        "foot_plate": dict(zip(PLATE_KEYS, sizes, strict=True)),
        "leg_length": {"length_mm": length},
    }


PLATE_KEYS = ("length_mm", "behind_tube_mm", "thickness_mm", "outer_inset_mm", "width_mm")
PLATE_WIDTH_MM = 150.0
"""No figure hangs on it: the footplates' mass is counted with the chair's."""


def _rest(values: Mapping[str, float], frame: Frame) -> dict[str, Numbers]:
    return {
        "push_handle": _push_handles(values),
        "anti_tip": _anti_tip(values, frame),
        "wheel_lock": {"fitted_here": 0.0},
        "belt": {"fitted_here": 0.0},
    }


def _push_handles(values: Mapping[str, float]) -> Numbers:
    if "push_handle_height" not in values:
        return {"behind_mm": 0.0, "above_mm": 0.0, "fitted_here": 0.0}
    behind, sin = values["push_handle_behind_post"], math.sin(math.radians(pitch_deg(values)))
    rise = values["push_handle_height"] - values["seat_to_floor_rear"] + behind * sin
    along = rise / math.cos(math.radians(values["back_angle"]))
    return {"behind_mm": behind, "above_mm": along - values["back_height"]}


def _anti_tip(values: Mapping[str, float], frame: Frame) -> Numbers:
    if "anti_tip_behind_axle" not in values:
        return {"x_mm": math.nan, "z_mm": math.nan, "wheel_radius_mm": math.nan, "fitted_here": 0.0}
    radius = values["anti_tip_wheel_diameter"] / 2.0
    above = values.get("anti_tip_clearance", math.nan) + radius - axle_height(values)
    x_mm, z_mm = frame.from_axle(-values["anti_tip_behind_axle"], above)
    return {"x_mm": x_mm, "z_mm": z_mm, "wheel_radius_mm": radius}


def _masses(values: Mapping[str, float], frame: Frame) -> Numbers:
    """All but the rear wheels, where the whole chair's centre of mass wants it."""
    whole, wheels = chair_mass(values), 2.0 * values["rear_wheel_mass"]
    rest = whole - wheels
    ahead = values["wheelbase"] * caster_share(values)
    x_mm, z_mm = frame.from_axle(ahead * whole / rest, values["chair_above_axle"] * whole / rest)
    return {"mass_kg": rest, "x_mm": x_mm, "z_mm": z_mm}


def caster_share(values: Mapping[str, float]) -> float:
    """Share of the empty chair on its casters: weighed, or as of usual chairs."""
    if {"empty_on_rear", "empty_on_casters"} <= values.keys():
        casters = values["empty_on_casters"]
        return casters / (casters + values["empty_on_rear"])
    return values["chair_caster_share"]
