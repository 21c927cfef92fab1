"""Overall sizes, turning, and the clearances inside the chair.

The outline is taken at the points that can be outermost: tyres, rims, toes, footplates,
casters, push handles, anti-tip wheels. Casters count as trailing.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import numpy as np

from chairwright.chair.occupant import SIDES, Occupant
from chairwright.chair.rows import Rows
from chairwright.mass_points import FloatArray

Corner = tuple[FloatArray, FloatArray]


def rim_beyond_hub(rows: Rows) -> FloatArray:
    """Outermost place of the hand rim beyond the hub's wheel plane [mm]: at its foot, cambered."""
    lean = np.radians(rows["camber"])
    standoff = rows["rim_standoff"] * np.cos(lean)
    return np.asarray(standoff + rows["rim_radius"] * np.sin(lean))


def rim_outer(rows: Rows) -> FloatArray:
    """Outermost place of the hand rim from the mid-plane [mm]."""
    return rows["hub_half"] + rim_beyond_hub(rows)


def overall_width(rows: Rows, occupant: Occupant) -> FloatArray:
    """Widest of tyres at the floor, hand rims and arm supports [mm]; hands not counted."""
    return chair_width(rows)


def chair_width(rows: Rows) -> FloatArray:
    """Overall width [mm], for other figures."""
    tyre = rows.option("rear_wheel", "tyre_width_mm") / 2
    foot = rows["rear_track"] / 2 + tyre * np.cos(np.radians(rows["camber"]))
    return np.asarray(2 * np.maximum.reduce([foot, rim_outer(rows), rows["arm_outer"]]))


def folded_width(rows: Rows, occupant: Occupant) -> FloatArray:
    """Width when folded [mm]: overall width less what the seat rails close up.

    NaN when a rigid bar or a rigid frame keeps the chair from folding.
    """
    closed = chair_width(rows) - (rows["width"] - rows.line.folded_seat_mm)
    return np.where(rows["width"] <= rows.line.folds_to_width_mm, closed, np.nan)


def push_handle(rows: Rows) -> Corner:
    """Push-handle grip in floor axes, side view [mm]."""
    return rows.to_floor(rows["grip_x"], rows["grip_z"])


def back_top(rows: Rows) -> Corner:
    """Top of the back post in floor axes, side view [mm]."""
    up = rows["back_height"]
    return rows.to_floor(-up * np.sin(rows["back_set"]), up * np.cos(rows["back_set"]))


def overall_height(rows: Rows, occupant: Occupant) -> FloatArray:
    """Highest part of the chair, the head not counted [mm]."""
    pad = rows.to_floor(150.0, np.nan_to_num(rows["pad_height"]))[1]
    wheel = rows["rear_height"] + rows["rear_radius"]
    return np.asarray(np.maximum.reduce([push_handle(rows)[1], back_top(rows)[1], pad, wheel]))


def toe_places(rows: Rows) -> Iterator[FloatArray]:
    """Toes ahead of the axle of the feet placed so far [mm]; 0 for a lost one."""
    for side in SIDES:
        if f"toe_x_{side}" in rows.columns:
            toe, _ = rows.to_floor(rows[f"toe_x_{side}"], rows[f"toe_z_{side}"])
            yield np.nan_to_num(toe)


def plate_tips(rows: Rows) -> Iterator[FloatArray]:
    """Footplate tips ahead of the axle, if placed [mm]; 0 on a side without one."""
    if "plate_x" in rows.columns:
        tip, _ = rows.to_floor(rows["plate_x"] + rows["sole_plate_length"], rows["plate_z"])
        for side in SIDES:
            yield np.where(rows[f"plate_{side}"] > 0, tip, 0.0)


def front_corners(rows: Rows) -> Iterator[Corner]:
    """Outline points ahead of the axle, plan view (x, distance from the mid-plane) [mm]."""
    outer = rows["width"] / 2 - np.nan_to_num(rows["sole_plate_outer_inset"])
    for place in (*toe_places(rows), *plate_tips(rows)):
        yield place, outer
    caster = rows.option("caster", "width_mm") / 2
    yield rows["wheelbase"] + rows["caster_radius"], rows["caster_track"] / 2 + caster
    yield rows["rim_radius"], rim_outer(rows)
    yield np.zeros(len(rows)), chair_width(rows) / 2


def rear_corners(rows: Rows) -> Iterator[Corner]:
    """Outline points behind the axle, plan view (x, distance from the mid-plane) [mm]."""
    tyre = rows.option("rear_wheel", "tyre_width_mm") / 2
    yield -rows["rear_radius"], rows["hub_half"] + tyre
    yield -rows["rim_radius"], rim_outer(rows)
    yield np.nan_to_num(rows["device_x"] - rows["device_radius"]), rows["width"] / 2
    yield np.minimum(push_handle(rows)[0], 0.0), rows["width"] / 2
    yield np.zeros(len(rows)), chair_width(rows) / 2


def overall_length(rows: Rows, occupant: Occupant) -> FloatArray:
    """Rearmost to foremost point, feet included [mm]."""
    ahead = np.maximum.reduce([x for x, _ in front_corners(rows)])
    behind = np.minimum.reduce([x for x, _ in rear_corners(rows)])
    return np.asarray(ahead - behind)


def farthest(corners: Iterable[Corner]) -> FloatArray:
    """Distance of the farthest corner from the middle of the axle [mm]."""
    return np.asarray(np.maximum.reduce([np.hypot(x, y) for x, y in corners]))


def turning_diameter(rows: Rows, occupant: Occupant) -> FloatArray:
    """Circle swept when turning about the middle of the axle, feet included [mm]."""
    ahead = farthest(front_corners(rows))
    return 2 * np.maximum(ahead, farthest(rear_corners(rows)))


def half_turn_width(rows: Rows, occupant: Occupant) -> FloatArray:
    """Width between walls for a half turn on the spot [mm]."""
    return farthest(front_corners(rows)) + farthest(rear_corners(rows))


def _stem_foot(rows: Rows) -> FloatArray:
    return rows["wheelbase"] + rows["trail"]


def caster_foot_clearance(rows: Rows, occupant: Occupant) -> FloatArray:
    """Gap from the caster's swing circle to the footplates [mm]; NaN without footplates.

    The larger of the gap in plan and the gap above the caster's top: either one is enough.
    """
    length, bottom = rows["sole_plate_length"], rows["plate_z"] - rows["sole_plate_thickness"]
    rear, height = rows.to_floor(rows["plate_x"], bottom)
    tip, tip_height = rows.to_floor(rows["plate_x"] + length, bottom)
    stem = _stem_foot(rows)
    along = np.maximum.reduce([rear - stem, stem - tip, np.zeros(len(rows))])
    inset = rows.line.caster_outset_mm + rows["sole_plate_outer_inset"]
    across = np.maximum(inset, 0.0)
    in_plan = np.hypot(along, across) - rows["swing"]
    above = np.minimum(height, tip_height) - 2 * rows["caster_radius"]
    fitted = np.logical_or.reduce([rows[f"plate_{side}"] > 0 for side in SIDES])
    return np.where(fitted, np.maximum(in_plan, above), np.nan)


def caster_tyre_clearance(rows: Rows, occupant: Occupant) -> FloatArray:
    """Gap in plan from the caster's swing circle to the rear tyre at caster height [mm]."""
    radius, top = rows["rear_radius"], 2 * rows["caster_radius"]
    up = np.minimum(top, radius)
    tyre_front = np.sqrt(radius**2 - (radius - up) ** 2)
    inner = rows["rear_track"] / 2 - rows.option("rear_wheel", "tyre_width_mm") / 2
    across = np.maximum(inner - rows["caster_track"] / 2, 0.0)
    along = np.maximum(_stem_foot(rows) - tyre_front, 0.0)
    return np.asarray(np.hypot(along, across) - rows["swing"])
