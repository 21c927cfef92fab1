"""A set-up made real, choice by choice: each step adds what follows from its choices.

The same steps serve one set-up and millions: they work on ``Rows`` of any length. Each step
returns the point masses that its choices bring, in frame axes.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from chairwright.chair.occupant import SIDES, LimbSide, Occupant, hip_place, pushing_shank_rad
from chairwright.chair.pose import (
    caster_axle,
    floor_trail,
    rear_axle_height,
    settle,
    swing_radius,
    track_growth,
)
from chairwright.chair.rows import Rows
from chairwright.mass_points import FloatArray, MassPoints
from chairwright.person.posture import Joint, leg_points, upper_body_points

BACK_SUPPORT_HEIGHT_MM = 220.0
"""Height of the back upholstery's mass along the post (common practice, no source)."""

HANGER_MASS_SHARE = 0.45
"""Where a hanger's mass lies along it, footplate not included (common practice, no source)."""

NO_FOOT = "the {side} foot cannot push: it is lost"


@dataclass(frozen=True)
class Step:
    """One step: the choices it makes and what follows from them, or from some made before.

    Parameters
    ----------
    choices : tuple of str
        Empty when what is to follow had to wait for other choices.
    follow : callable
        Sets columns of the rows and returns the point masses that the choices bring.
    places : tuple of str
        Choices on which those masses and their places in frame axes depend; empty when the
        step brings none.
    on_floor : bool
        True when the places depend on the pose as well.
    """

    choices: tuple[str, ...]
    follow: Callable[[Rows, Occupant], list[MassPoints]]
    places: tuple[str, ...] = ()
    on_floor: bool = False


def wheels_on_floor(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Frame, wheels and casters: the pose on the floor and the masses of the running gear."""
    rows["load"] = np.full(len(rows), occupant.load_kg)
    rows["hands"] = np.full(len(rows), float(len(occupant.hands_that_push)))
    _place_axles(rows)
    pose = settle(
        rows["caster_x"] - rows["axle_x"],
        rows["caster_z"] - rows["axle_z"],
        rows["rear_height"],
        rows["caster_radius"],
    )
    rows["pitch"], rows["wheelbase"] = pose
    rows["sin_pitch"], rows["cos_pitch"] = np.sin(pose.pitch_rad), np.cos(pose.pitch_rad)
    _caster_on_floor(rows)
    return [*_running_gear(rows), *_fixed_parts(rows), *occupant.carried_points()]


def _place_axles(rows: Rows) -> None:
    rows["rear_radius"] = rows.option("rear_wheel", "radius_mm")
    rows["rim_radius"] = rows.option("rear_wheel", "hand_rim_radius_mm")
    rows["camber"] = rows.option("camber", "angle_deg")
    rows["rear_height"] = rear_axle_height(rows["rear_radius"], rows["camber"])
    rows["axle_x"] = rows.option("axle_hole", "x_mm")
    rows["axle_z"] = rows.option("axle_hole", "z_mm")
    rows["caster_radius"] = rows.option("caster", "radius_mm")
    rows["stem_set"] = np.radians(rows.option("stem_setting", "angle_deg"))
    rows["crown_x"] = rows.option("side_frame", "caster_tube_x_mm") + rows.option(
        "caster_housing", "ahead_mm"
    )
    rows["crown_z"] = rows.option("caster_housing", "z_mm")
    trail = rows.option("fork", "trail_mm")
    drop = rows.option("fork", "drop_mm") + rows.option("stem_spacer", "height_mm")
    place = caster_axle(rows["crown_x"], rows["crown_z"], trail, drop, rows["stem_set"])
    rows["caster_x"], rows["caster_z"] = place


def _caster_on_floor(rows: Rows) -> None:
    rows["stem"] = rows["stem_set"] + rows["pitch"]
    trail = rows.option("fork", "trail_mm")
    rows["trail"] = floor_trail(trail, rows["caster_radius"], rows["stem"])
    rows["swing"] = swing_radius(trail, rows["caster_radius"], rows.option("caster", "width_mm"))


def _running_gear(rows: Rows) -> list[MassPoints]:
    crown = (rows["crown_x"], 0.0, rows["crown_z"])
    axle = (rows["axle_x"], 0.0, rows["axle_z"])
    caster = (rows["caster_x"], 0.0, rows["caster_z"])
    middle = ((crown[0] + caster[0]) / 2, 0.0, (crown[2] + caster[2]) / 2)
    frame = (rows.option("side_frame", "x_mm"), 0.0, rows.option("side_frame", "z_mm"))
    mass = rows.option
    return [
        MassPoints("side frames", mass("side_frame", "mass_kg"), *frame),
        MassPoints("rear wheels", mass("rear_wheel", "mass_kg"), *axle, "rear_wheels"),
        MassPoints("axle plates", mass("axle_hole", "mass_kg"), *axle),
        MassPoints("camber tube", mass("camber", "mass_kg"), *axle),
        MassPoints("casters", mass("caster", "mass_kg"), *caster, "casters"),
        MassPoints("caster forks", mass("fork", "mass_kg"), *middle, "casters"),
        MassPoints("stem spacers", mass("stem_spacer", "mass_kg"), *crown, "casters"),
        MassPoints("caster housings", mass("caster_housing", "mass_kg"), *crown),
    ]


def _fixed_parts(rows: Rows) -> list[MassPoints]:
    return [
        MassPoints(part.name, part.mass_kg, part.x_mm, 0.0, part.z_mm)
        for part in rows.line.fixed_parts
    ]


def hand_rims(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Hand rims: how far out they stand. Their mass at the axle turns no chair over it."""
    rows["rim_standoff"] = rows.option("hand_rim", "standoff_mm")
    rows["rim_radius"] = rows["rim_radius"] * rows.option("hand_rim", "fitted")
    place = rows.option("axle_hole", "x_mm"), 0.0, rows.option("axle_hole", "z_mm")
    return [MassPoints("hand rims", rows.option("hand_rim", "mass_kg"), *place)]


def seat_rails(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Seat width: cross-brace and caster track."""
    rows["width"] = rows.option("seat_width", "width_mm")
    rows["caster_track"] = rows["width"] + 2 * rows.line.caster_outset_mm
    place = (rows.option("seat_width", "x_mm"), 0.0, rows.option("seat_width", "z_mm"))
    return [MassPoints("cross-brace", rows.option("seat_width", "mass_kg"), *place)]


def arm_supports(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Arm supports: they set how far out the hubs stand."""
    pad = rows.option("arm_support", "pad_height_mm")
    rows["pad_height"] = pad
    hub = rows.option("arm_support", "hub_outset_mm") + rows.option("camber", "hub_extra_mm")
    rows["hub_half"] = rows["width"] / 2 + hub
    growth = track_growth(rows["rear_radius"], rows["camber"])
    rows["rear_track"] = 2 * rows["hub_half"] + growth
    rows["arm_outer"] = rows["width"] / 2 + rows.option("arm_support", "outer_outset_mm")
    mass = rows.option("arm_support", "mass_kg")
    return [MassPoints("arm supports", mass, 150.0, 0.0, 0.6 * np.nan_to_num(pad))]


def seat_sling(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Seat depth: where the seat's front edge comes."""
    depth = rows.option("seat_depth", "depth_mm")
    rows["depth"] = depth
    return [MassPoints("seat sling", rows.option("seat_depth", "mass_kg"), depth / 2, 0.0, 0.0)]


def cushion(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Cushion: the loaded top above the seat rail."""
    rear, front = rows.option("cushion", "rear_mm"), rows.option("cushion", "front_mm")
    rows["cushion_rear"], rows["cushion_front"] = rear, front
    rows["seat_slope"] = np.arctan((front - rear) / rows["depth"])
    height = (rear + front) / 4
    mass = rows.option("cushion", "mass_kg")
    return [MassPoints("cushion", mass, rows["depth"] / 2, 0.0, height)]


def back_posts(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Back angle: the post behind square to the seat rail."""
    rows["back_set"] = np.radians(rows.option("back_angle", "angle_deg"))
    return []


def back_surface(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Back support, sling or solid: the hip against it, the trunk, head and arms."""
    behind = rows.option("back_support", "behind_post_mm")
    rows["behind_post"] = behind
    rows["lean"] = rows["back_set"] + np.radians(rows.option("back_support", "tilt_deg"))
    hip = hip_place(occupant.body, rows["lean"], rows["seat_slope"], behind, rows["cushion_rear"])
    rows["hip_x"], rows["hip_z"] = hip
    body, joints = upper_body_points(occupant.body, *hip, rows["lean"])
    points = occupant.as_weighed(body)
    rows["shoulder_x"], rows["shoulder_z"] = (np.asarray(place) for place in joints.shoulder)
    along = BACK_SUPPORT_HEIGHT_MM
    mass = rows.option("back_support", "mass_kg")
    x_mm, z_mm = -along * np.sin(rows["back_set"]), along * np.cos(rows["back_set"])
    points.append(MassPoints("back upholstery", mass, x_mm, 0.0, z_mm))
    return points


def _pushing_leg(rows: Rows, occupant: Occupant, side: LimbSide) -> list[MassPoints]:
    body = occupant.body
    thigh, shank = body.thigh_mm[side], body.shank_mm[side]
    if thigh is None or shank is None:
        raise ValueError(NO_FOOT.format(side=side))
    knee_x = rows["hip_x"] + thigh * np.cos(rows["seat_slope"])
    knee_z = rows["hip_z"] + thigh * np.sin(rows["seat_slope"])
    _, knee_height = rows.to_floor(knee_x, knee_z)
    lean = pushing_shank_rad(knee_height, shank, body.ankle_height_mm)
    angles = (rows["seat_slope"], lean - rows["pitch"], -rows["pitch"])
    rows[f"shank_{side}"], rows[f"sole_{side}"] = angles[1], angles[2]
    points, joints = leg_points(body, side, rows["hip_x"], rows["hip_z"], *angles)
    _note_toe(rows, side, joints.toe)
    return occupant.as_weighed(points)


def _note_toe(rows: Rows, side: LimbSide, toe: Joint | None) -> None:
    for axis, place in zip("xz", toe or (np.nan, np.nan), strict=True):
        rows[f"toe_{axis}_{side}"] = np.broadcast_to(np.asarray(place, dtype=float), len(rows))


def footplates(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Which sides have a foot support; the legs that push on the floor."""
    for side in SIDES:
        rows[f"plate_{side}"] = rows.option("foot_supports", side)
    legs = (_pushing_leg(rows, occupant, side) for side in occupant.feet_that_push)
    return [point for leg in legs for point in leg]


def hangers(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Hanger angle: the legs that rest on foot supports, and those that hang."""
    down = np.radians(rows.option("hanger", "angle_deg"))
    rows["hanger"] = down
    points: list[MassPoints] = []
    for side in SIDES:
        if side not in occupant.feet_that_push:
            fitted = rows[f"plate_{side}"] > 0
            shank = np.where(fitted, np.pi / 2 - down, 0.0)
            rows[f"shank_{side}"], rows[f"sole_{side}"] = shank, np.zeros(len(rows))
            points.extend(_resting_leg(rows, occupant, side, shank))
    return points


def _resting_leg(
    rows: Rows, occupant: Occupant, side: LimbSide, shank: FloatArray
) -> list[MassPoints]:
    hip = rows["hip_x"], rows["hip_z"]
    points, joints = leg_points(occupant.body, side, *hip, rows["seat_slope"], shank)
    _note_toe(rows, side, joints.toe)
    return occupant.as_weighed(points)


def plates(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Footplate: its size and how it hangs on the tube."""
    for name in ("length", "behind_tube", "thickness", "outer_inset", "width"):
        rows[f"sole_plate_{name}"] = rows.option("foot_plate", f"{name}_mm")
    return []


def hanger_lengths(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Hanger length: where the footplates come, and the masses of hangers and footplates."""
    length = rows.option("leg_length", "length_mm")
    along, down = np.cos(rows["hanger"]), -np.sin(rows["hanger"])
    pivot_x = rows.option("side_frame", "hanger_x_mm")
    pivot_z = rows.option("side_frame", "hanger_z_mm")
    rows["plate_x"] = pivot_x + length * along - rows["sole_plate_behind_tube"]
    rows["plate_z"] = pivot_z + length * down
    rows["hanger_x"] = pivot_x + HANGER_MASS_SHARE * length * along
    rows["hanger_z"] = pivot_z + HANGER_MASS_SHARE * length * down
    return [point for side in SIDES for point in _one_side(rows, side)]


def hanger_pair_kg(rows: Rows) -> FloatArray:
    """Mass of a pair of hangers [kg]; a length made to order may add to it."""
    longer = np.nan_to_num(rows.option("leg_length", "mass_kg"))
    return np.asarray(rows.option("hanger", "mass_kg") + longer)


def _one_side(rows: Rows, side: LimbSide) -> list[MassPoints]:
    fitted = rows[f"plate_{side}"] > 0
    across = rows["width"] / 2 - rows["sole_plate_outer_inset"] - rows["sole_plate_width"] / 2
    outward = np.where(fitted, across if side == "left" else -across, 0.0)

    def point(name: str, pair_kg: FloatArray, x_mm: FloatArray, z_mm: FloatArray) -> MassPoints:
        mass = np.where(fitted, pair_kg / 2, 0.0)
        place = np.where(fitted, x_mm, 0.0), outward, np.where(fitted, z_mm, 0.0)
        return MassPoints(f"{side} {name}", mass, *place)

    middle = rows["plate_x"] + rows["sole_plate_length"] / 2
    return [
        point("hanger", hanger_pair_kg(rows), rows["hanger_x"], rows["hanger_z"]),
        point("footplate", rows.option("foot_plate", "mass_kg"), middle, rows["plate_z"]),
    ]


def back_top(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Back height: the posts' upper part."""
    height = rows.option("back_height", "height_mm")
    rows["back_height"] = height
    x_mm, z_mm = -height / 2 * np.sin(rows["back_set"]), height / 2 * np.cos(rows["back_set"])
    return [MassPoints("back posts", rows.option("back_height", "mass_kg"), x_mm, 0.0, z_mm)]


def push_handles(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Push handles: where the grips come."""
    up = rows["back_height"] + rows.option("push_handle", "above_mm")
    sin, cos = np.sin(rows["back_set"]), np.cos(rows["back_set"])
    rows["grip_x"] = -up * sin - rows.option("push_handle", "behind_mm")
    rows["grip_z"] = up * cos
    mass = rows.option("push_handle", "mass_kg")
    return [MassPoints("push handles", mass, rows["grip_x"], 0.0, rows["grip_z"])]


def wheel_locks(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Wheel locks."""
    place = rows.option("wheel_lock", "x_mm"), 0.0, rows.option("wheel_lock", "z_mm")
    return [MassPoints("wheel locks", rows.option("wheel_lock", "mass_kg"), *place)]


def anti_tip_devices(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Anti-tip device: where its wheel comes on the floor side."""
    x_mm, z_mm = rows.option("anti_tip", "x_mm"), rows.option("anti_tip", "z_mm")
    rows["device_x"], rows["device_z"] = rows.to_floor(x_mm, z_mm)
    rows["device_radius"] = rows.option("anti_tip", "wheel_radius_mm")
    mass = rows.option("anti_tip", "mass_kg")
    place = np.nan_to_num(x_mm * 0.75), 0.0, np.nan_to_num(z_mm * 0.85)
    return [MassPoints("anti-tip device", mass, *place)]


def belts(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Belt or harness."""
    place = rows.option("belt", "x_mm"), 0.0, rows.option("belt", "z_mm")
    return [MassPoints("belt", rows.option("belt", "mass_kg"), *place)]


def chosen(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """A choice that changes price and delivery only, or whose consequences come later."""
    return []


HIP = ("seat_depth", "cushion", "back_angle", "back_support")
"""Choices that place the hip in the frame."""

STEPS: tuple[Step, ...] = (
    Step(
        (
            "side_frame",
            "rear_wheel",
            "camber",
            "axle_hole",
            "caster",
            "fork",
            "stem_spacer",
            "caster_housing",
            "stem_setting",
        ),
        wheels_on_floor,
    ),
    Step(("hanger",), chosen),
    Step(("seat_depth",), seat_sling, ("seat_depth",)),
    Step(("cushion",), cushion, ("seat_depth", "cushion")),
    Step(("back_angle",), back_posts),
    Step(("back_support",), back_surface, HIP),
    Step(("foot_supports",), footplates, ("foot_supports",), on_floor=True),
    Step((), hangers, (*HIP, "foot_supports", "hanger")),
    Step(("hand_rim",), hand_rims, ("axle_hole", "hand_rim")),
    Step(("seat_width",), seat_rails, ("seat_width",)),
    Step(("arm_support",), arm_supports, ("arm_support",)),
    Step(("foot_plate",), plates),
    Step(
        ("leg_length",),
        hanger_lengths,
        ("side_frame", "seat_width", "foot_supports", "hanger", "foot_plate", "leg_length"),
    ),
    Step(("back_height",), back_top, ("back_angle", "back_height")),
    Step(("push_handle",), push_handles, ("back_angle", "back_height", "push_handle")),
    Step(("wheel_lock",), wheel_locks, ("wheel_lock",)),
    Step(("anti_tip",), anti_tip_devices, ("anti_tip",)),
    Step(("belt",), belts, ("belt",)),
    Step(("finish",), chosen),
)
