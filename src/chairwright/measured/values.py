"""All values that a chair's figures need: measured, worked out of others, assumed, or not known."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from chairwright.chair.pose import rear_axle_height, track_growth
from chairwright.chair.weighed import CentreWeighed
from chairwright.figures.spread import FORE_AFT_MM, HEIGHT_MM
from chairwright.files.chair_measures import CHAIR_MEASURES

MODEL: dict[str, tuple[float, float]] = {
    "chair_caster_share": (0.36, 0.12),
    "chair_above_axle": (60.0, 50.0),
    "wheel_gyration": (0.9, 0.1),
    "occupant_ahead": (0.0, FORE_AFT_MM),
    "occupant_up": (0.0, HEIGHT_MM),
}
"""Value and half width of what no tape reads: the empty chair's share on its casters, its centre of
mass above the axle, the rear wheels' radius of gyration over their radius (common practice, no
source); how far the occupant's centre of mass
lies from the posture model's."""

ASSUMED = {
    name: (kind.assumed, kind.assumed_by)
    for name, kind in CHAIR_MEASURES.items()
    if not math.isnan(kind.assumed)
}

UNKNOWN = (
    "seat_width", "back_angle", "back_height", "hand_rim_diameter", "hand_rim_standoff",
    "rear_track", "caster_track", "camber", "caster_trail", "axle_ahead_of_post", "cushion_front",
    "cushion_rear", "leg_support_length", "hanger_angle", "footplate_ahead_of_post", "chair_mass",
)  # fmt: skip
"""Measures without which the figures that hang on them are left out."""


@dataclass(frozen=True)
class Known:
    """Values of one chair.

    Parameters
    ----------
    values : dict of str to float [mm, kg or deg]
        What was measured, and what is assumed or lies in the middle of its bounds.
    spreads : dict of str to float
        Half width of what was measured or is assumed.
    assumed : tuple of str
        Not measured; a usual value stands in.
    unknown : tuple of str
        Not measured and not assumed.
    """

    values: dict[str, float]
    spreads: dict[str, float]
    assumed: tuple[str, ...]
    unknown: tuple[str, ...]


def known(
    values: Mapping[str, float],
    tolerances: Mapping[str, float],
    feet: str,
    weighed: CentreWeighed | None = None,
) -> Known:
    """Complete what was measured.

    Parameters
    ----------
    values, tolerances : mapping of str to float [mm, kg or deg]
        What was measured and its half widths.
    feet : {"both", "left", "right", "none"}
        Foot supports.
    weighed : CentreWeighed or None
        How sure scales are of the occupant's place; None leaves it to the model.

    Returns
    -------
    Known
    """
    held, spreads = dict(values), dict(tolerances)
    assumed = [name for name in ASSUMED if name not in held and _matters(name, held, feet)]
    for name, (middle, half) in {**ASSUMED, **_model(weighed)}.items():
        if name not in held:
            held[name], spreads[name] = middle, half
    unknown = tuple(name for name in UNKNOWN if name not in derived(values, feet))
    for name in unknown:
        kind = CHAIR_MEASURES[name]
        held[name] = (kind.low + kind.high) / 2.0
    return Known(held, spreads, tuple(assumed), unknown)


def _model(weighed: CentreWeighed | None) -> dict[str, tuple[float, float]]:
    """Value and half width of what no tape reads.

    The frame's axes lean a few degrees on the floor's; that is left out of the half widths.
    """
    if weighed is None:
        return MODEL
    _, ahead, _, up = weighed.half_widths
    return MODEL | {"occupant_ahead": (0.0, ahead), "occupant_up": (0.0, up)}


FOOT_MEASURES = (
    "leg_support_length", "hanger_angle", "footplate_ahead_of_post", "footplate_length",
    "footplate_inset",
)  # fmt: skip


def _matters(name: str, values: Mapping[str, float], feet: str) -> bool:
    if name in FOOT_MEASURES:
        return feet != "none"
    if name == "push_handle_behind_post":
        return "push_handle_height" in values
    if name == "anti_tip_wheel_diameter":
        return "anti_tip_behind_axle" in values
    return True


def derived(values: Mapping[str, float], feet: str = "both") -> frozenset[str]:
    """Names of measures that are there, can be worked out of others, or do not matter.

    Parameters
    ----------
    values : mapping of str to float
        What was measured.
    feet : {"both", "left", "right", "none"}
    """
    found = set(values)
    if "caster_ahead_of_post" in values:
        found.add("axle_ahead_of_post")
    if values.get("hand_rim_diameter") == 0.0:
        found.add("hand_rim_standoff")
    if {"overall_width", "rear_track", "hand_rim_diameter"} <= found:
        found.add("hand_rim_standoff")
    if {"overall_length", "axle_ahead_of_post"} <= found:
        found.add("footplate_ahead_of_post")
    if {"empty_on_rear", "empty_on_casters"} <= found:
        found.add("chair_mass")
    if {"footplate_clearance", "leg_support_length"} <= found:
        found.add("hanger_angle")
    if feet == "none":
        found |= set(FOOT_MEASURES)
    return frozenset(found)


def axle_ahead(values: Mapping[str, float]) -> float:
    """Rear axle ahead of the back post [mm], measured or from the caster's place."""
    if "axle_ahead_of_post" not in values:
        return values["caster_ahead_of_post"] - values["wheelbase"]
    return values["axle_ahead_of_post"]


def axle_height(values: Mapping[str, float]) -> float:
    """Rear axle above the floor [mm]."""
    radius = np.array(values["rear_wheel_diameter"] / 2.0)
    return float(rear_axle_height(radius, np.array(values["camber"])))


def hub_half(values: Mapping[str, float]) -> float:
    """Wheel plane at the hub from the mid-plane [mm]."""
    radius = np.array(values["rear_wheel_diameter"] / 2.0)
    growth = track_growth(radius, np.array(values["camber"]))
    return float((values["rear_track"] - growth) / 2.0)


def rim_standoff(values: Mapping[str, float]) -> float:
    """Hand rim outward of the wheel plane [mm], measured or from the overall width."""
    if "hand_rim_standoff" in values:
        return values["hand_rim_standoff"]
    if values["hand_rim_diameter"] == 0.0 or "overall_width" not in values:
        return 0.0
    lean = math.radians(values["camber"])
    rim = values["hand_rim_diameter"] / 2.0 * math.sin(lean)
    out = (values["overall_width"] / 2.0 - hub_half(values) - rim) / math.cos(lean)
    return max(out, 0.0)


def pitch_deg(values: Mapping[str, float]) -> float:
    """Seat rail to the level, front up positive [deg]."""
    rise = values["seat_to_floor_front"] - values["seat_to_floor_rear"]
    return math.degrees(math.asin(max(-1.0, min(1.0, rise / values["seat_depth"]))))


def footplate_tip(values: Mapping[str, float]) -> float:
    """Footplate tip ahead of the back post [mm], measured or from the overall length.

    The rear tyres count as the chair's rearmost place.
    """
    if "footplate_ahead_of_post" in values:
        return values["footplate_ahead_of_post"]
    return values["overall_length"] - values["rear_wheel_diameter"] / 2.0 + axle_ahead(values)


def hanger_deg(values: Mapping[str, float]) -> float:
    """Hanger to the level [deg], measured or from the footplate's height."""
    if "hanger_angle" in values:
        return values["hanger_angle"]
    top = values["seat_to_floor_front"] + values["cushion_front"]
    down = (top - values["footplate_clearance"] - PLATE_MM) / values["leg_support_length"]
    return math.degrees(math.asin(max(-1.0, min(1.0, down))))


PLATE_MM = 10.0
"""Thickness of a footplate (common practice, no source)."""


def chair_mass(values: Mapping[str, float]) -> float:
    """Mass of the empty chair [kg], weighed whole or on its axles."""
    if "chair_mass" not in values:
        return values["empty_on_rear"] + values["empty_on_casters"]
    return values["chair_mass"]
