"""Seat, back and support dimensions, and the attitude of casters and wheels."""

from __future__ import annotations

import numpy as np

from chairwright.chair.occupant import SIDES, Occupant
from chairwright.chair.pose import toe_out_deg
from chairwright.chair.rows import Rows
from chairwright.mass_points import FloatArray


def seat_to_floor_rear(rows: Rows, occupant: Occupant) -> FloatArray:
    """Top of the seat rail above the floor at the back post [mm]."""
    return rows.to_floor(0.0, 0.0)[1]


def seat_to_floor_front(rows: Rows, occupant: Occupant) -> FloatArray:
    """Top of the seat rail above the floor at the seat's front edge [mm]."""
    return rows.to_floor(rows["depth"], 0.0)[1]


def cushion_to_floor_front(rows: Rows, occupant: Occupant) -> FloatArray:
    """Loaded cushion top above the floor at the seat's front edge [mm]."""
    return rows.to_floor(rows["depth"], rows["cushion_front"])[1]


def seat_angle(rows: Rows, occupant: Occupant) -> FloatArray:
    """Seat rail to the horizontal, front up positive [deg]."""
    return np.degrees(rows["pitch"])


def back_angle(rows: Rows, occupant: Occupant) -> FloatArray:
    """Back support to the vertical, leaning back positive [deg]."""
    return np.degrees(rows["lean"] + rows["pitch"])


def seat_to_back_angle(rows: Rows, occupant: Occupant) -> FloatArray:
    """Inner angle between loaded cushion top and back support [deg]."""
    return 90.0 + np.degrees(rows["lean"] - rows["seat_slope"])


def seat_width(rows: Rows, occupant: Occupant) -> FloatArray:
    """Seat width [mm]."""
    return rows["width"]


def seat_depth(rows: Rows, occupant: Occupant) -> FloatArray:
    """Effective seat depth: loaded back surface to the seat's front edge [mm]."""
    return rows["depth"] + rows["behind_post"]


def back_height(rows: Rows, occupant: Occupant) -> FloatArray:
    """Top of the back support above the loaded cushion, along the post [mm]."""
    return rows["back_height"] - rows["cushion_rear"]


def arm_height(rows: Rows, occupant: Occupant) -> FloatArray:
    """Arm pad above the loaded cushion at the back [mm]."""
    return rows["pad_height"] - rows["cushion_rear"]


def leg_support_length(rows: Rows, occupant: Occupant) -> FloatArray:
    """Loaded cushion's front edge to the footplate, along the hanger [mm]."""
    along, down = np.cos(rows["hanger"]), np.sin(rows["hanger"])
    pivot_x = rows.option("side_frame", "hanger_x_mm") - rows["depth"]
    pivot_z = rows.option("side_frame", "hanger_z_mm") - rows["cushion_front"]
    return np.asarray(rows.option("leg_length", "length_mm") + pivot_x * along - pivot_z * down)


def foot_reach(rows: Rows, occupant: Occupant) -> FloatArray:
    """How much longer the pushing lower leg, shoe on, is than the cushion front is high [mm]."""
    if not occupant.feet_that_push:
        return np.full(len(rows), np.nan)
    legs = [occupant.lower_leg_mm[side] for side in occupant.feet_that_push]
    return np.asarray(np.minimum.reduce(legs) - cushion_to_floor_front(rows, occupant))


def wheelbase(rows: Rows, occupant: Occupant) -> FloatArray:
    """Rear axle to caster contact, casters trailing [mm]."""
    return rows["wheelbase"]


def rear_track(rows: Rows, occupant: Occupant) -> FloatArray:
    """Distance of the rear tyre contacts [mm]."""
    return rows["rear_track"]


def caster_track(rows: Rows, occupant: Occupant) -> FloatArray:
    """Distance of the caster contacts [mm]."""
    return rows["caster_track"]


def caster_stem_angle(rows: Rows, occupant: Occupant) -> FloatArray:
    """Caster stem off the vertical, top leaning back positive [deg]; zero is the aim."""
    return np.degrees(rows["stem"])


def caster_trail(rows: Rows, occupant: Occupant) -> FloatArray:
    """Caster trail on the floor [mm]."""
    return rows["trail"]


def toe(rows: Rows, occupant: Occupant) -> FloatArray:
    """Toe of each rear wheel, out positive [deg]."""
    return toe_out_deg(rows["camber"], rows["pitch"])


def footplate_clearance(rows: Rows, occupant: Occupant) -> FloatArray:
    """Lowest point of the footplates above the floor [mm]; NaN without footplates."""
    ends = (
        rows.to_floor(rows["plate_x"] + ahead, rows["plate_z"] - rows["sole_plate_thickness"])[1]
        for ahead in (0.0, rows["sole_plate_length"])
    )
    fitted = np.logical_or.reduce([rows[f"plate_{side}"] > 0 for side in SIDES])
    return np.where(fitted, np.minimum(*ends), np.nan)
