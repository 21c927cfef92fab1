"""Overall sizes, turning, and the clearances inside the chair.

The outline is taken at the points that can be outermost: tyres, rims, toes, footplates,
casters, push handles, anti-tip wheels. Casters count as trailing.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import numpy as np

from chairwright.chair.occupant import SIDES, LimbSide, Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.turning import half_turn_free_mm
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
    wheel = rows["rear_height"] + rows["rear_radius"]
    return np.asarray(np.maximum(top_without_wheels(rows), wheel))


def top_without_wheels(rows: Rows) -> FloatArray:
    """Highest of push handles, back posts and arm pads above the floor [mm]."""
    pad = rows.to_floor(150.0, np.nan_to_num(rows["pad_height"]))[1]
    return np.asarray(np.maximum.reduce([push_handle(rows)[1], back_top(rows)[1], pad]))


def toe_places(rows: Rows, sides: Iterable[LimbSide] = SIDES) -> Iterator[FloatArray]:
    """Toes ahead of the axle of the feet placed so far [mm]; 0 for a lost one."""
    for side in sides:
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


def half_turn_free(rows: Rows, occupant: Occupant) -> FloatArray:
    """Width between walls in which a half turn is possible at all, moving to and fro [mm]."""
    return half_turn_free_mm([*front_corners(rows), *rear_corners(rows)])


def stem_foot(rows: Rows) -> FloatArray:
    """Where the caster stem's axis meets the floor, ahead of the axle [mm]."""
    return rows["wheelbase"] + rows["trail"]


def foot_gap(
    rows: Rows, ahead: FloatArray, behind: FloatArray, inset: FloatArray, height: FloatArray
) -> FloatArray:
    """Gap from the caster's swing circle to a footplate [mm].

    The larger of the gap in plan and the gap above the caster's top: either one is enough.

    Parameters
    ----------
    rows : Rows, shape (n,)
    ahead, behind : ndarray [mm]
        How far the plate's rear edge lies ahead of the caster stem, its tip behind it.
    inset : ndarray [mm]
        Outer edge of the footplate from the inside of the frame.
    height : ndarray [mm]
        Lowest point of the footplate above the floor.

    Returns
    -------
    ndarray [mm]
        The greater, the greater any of the four is.
    """
    along = np.maximum(np.maximum(ahead, behind), 0.0)
    across = np.maximum(rows.line.caster_outset_mm + inset, 0.0)
    in_plan = np.hypot(along, across) - rows["swing"]
    return np.asarray(np.maximum(in_plan, height - 2 * rows["caster_radius"]))


def caster_foot_clearance(rows: Rows, occupant: Occupant) -> FloatArray:
    """Gap from the caster's swing circle to the footplates [mm]; NaN without footplates."""
    length, bottom = rows["sole_plate_length"], rows["plate_z"] - rows["sole_plate_thickness"]
    rear, height = rows.to_floor(rows["plate_x"], bottom)
    tip, tip_height = rows.to_floor(rows["plate_x"] + length, bottom)
    stem, lowest = stem_foot(rows), np.minimum(height, tip_height)
    gap = foot_gap(rows, rear - stem, stem - tip, rows["sole_plate_outer_inset"], lowest)
    fitted = np.logical_or.reduce([rows[f"plate_{side}"] > 0 for side in SIDES])
    return np.where(fitted, gap, np.nan)


def caster_tyre_gap(rows: Rows, apart: FloatArray) -> FloatArray:
    """Gap in plan from the caster's swing circle to the rear tyre at caster height [mm].

    Parameters
    ----------
    rows : Rows, shape (n,)
    apart : ndarray [mm]
        Wheel plane at the floor outward of the caster stem.

    Returns
    -------
    ndarray [mm]
        The greater, the greater ``apart`` is.
    """
    radius, top = rows["rear_radius"], 2 * rows["caster_radius"]
    up = np.minimum(top, radius)
    tyre_front = np.sqrt(radius**2 - (radius - up) ** 2)
    across = np.maximum(apart - rows.option("rear_wheel", "tyre_width_mm") / 2, 0.0)
    along = np.maximum(stem_foot(rows) - tyre_front, 0.0)
    return np.asarray(np.hypot(along, across) - rows["swing"])


def caster_tyre_clearance(rows: Rows, occupant: Occupant) -> FloatArray:
    """Gap in plan from the caster's swing circle to the rear tyre at caster height [mm]."""
    return caster_tyre_gap(rows, (rows["rear_track"] - rows["caster_track"]) / 2)
