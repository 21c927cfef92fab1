"""One complete set-up with its occupant as a shape in floor axes, for the drawings."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypedDict

import numpy as np

from chairwright.chair.occupant import SIDES, LimbSide, Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.shape import Contact, Figurine, FootSupport, Hole, Point, Shape
from chairwright.line.choices import NONE
from chairwright.person.posture import Joint, leg_points, upper_body_points

ARM_PAD_MM = (20.0, 270.0)
"""Rear and front end of the arm pad ahead of the back post (common practice, no source)."""

TUBE_BEYOND_MM = 32.0
"""How far the caster tube reaches beyond its first and last hole (drawing only)."""

STEM_MM = 75.0
"""Length of the stem in its housing (drawing only)."""

OnFloor = Callable[[float, float], Point]


class _Seat(TypedDict):
    seat_corner: Point
    seat_front: Point
    cushion_rear: Point
    cushion_front: Point
    back_bottom: Point
    back_top: Point
    push_handle: Point
    arm_pad: tuple[Point, Point] | None


class _RunningGear(TypedDict):
    rear_axle: Point
    rear_radius_mm: float
    rear_tyre_width_mm: float
    hand_rim_radius_mm: float
    camber_deg: float
    axle_holes: tuple[Hole, ...]
    caster_tube_top: Point
    caster_tube_bottom: Point
    stem_top: Point
    fork_crown: Point
    caster_axle: Point
    caster_radius_mm: float
    caster_width_mm: float
    caster_swing_radius_mm: float
    hub_half_mm: float


def shape_of(
    rows: Rows,
    occupant: Occupant,
    figures: Mapping[str, float],
    plan_outline: tuple[Point, ...],
) -> Shape:
    """The shape of one occupied chair.

    Parameters
    ----------
    rows : Rows, shape (1,)
        A complete set-up, from ``figures.evaluate.realise``.
    occupant : Occupant
    figures : mapping of str to float
        The set-up's figures, from ``figures.evaluate.figures_of``.
    plan_outline : tuple of Point [mm]
        The corners that the length and turning figures are taken from, floor axes, plan.

    Returns
    -------
    Shape
        Floor axes [mm].
    """

    def at(x_mm: float, z_mm: float) -> Point:
        along, up = rows.to_floor(x_mm, z_mm)
        return _one(along), _one(up)

    row = {name: _one(array) for name, array in rows.columns.items()}
    device, mount = _anti_tip(rows, row, at)
    return Shape(
        **_seat(rows, row, at),
        **_running_gear(rows, row, at),
        foot_supports=tuple(_foot_supports(rows, row, at)),
        anti_tip_wheel=device,
        anti_tip_radius_mm=0.0 if device is None else row["device_radius"],
        anti_tip_mount=mount,
        figurine=figurine(occupant, row, at),
        com=(figures["com_x_mm"], figures["com_y_mm"], figures["com_z_mm"]),
        total_mass_kg=figures["total_mass_kg"],
        contacts=contacts(figures),
        wheelbase_mm=figures["wheelbase_mm"],
        seat_width_mm=figures["seat_width_mm"],
        seat_depth_mm=figures["seat_depth_mm"],
        rear_track_mm=figures["rear_track_mm"],
        caster_track_mm=figures["caster_track_mm"],
        overall_width_mm=figures["overall_width_mm"],
        plan_outline=plan_outline,
    )


def contacts(figures: Mapping[str, float]) -> tuple[Contact, ...]:
    """Tyre contacts on the floor, casters trailing, going round the support area.

    Parameters
    ----------
    figures : mapping of str to float
        With wheelbase, rear and caster track [mm].

    Returns
    -------
    tuple of Contact
    """
    rear, front = figures["rear_track_mm"] / 2, figures["caster_track_mm"] / 2
    ahead = figures["wheelbase_mm"]
    return (
        Contact("rear left", 0.0, rear),
        Contact("rear right", 0.0, -rear),
        Contact("caster right", ahead, -front),
        Contact("caster left", ahead, front),
    )


def figurine(occupant: Occupant, row: Mapping[str, float], at: OnFloor) -> Figurine:
    """The occupant's joints, in the posture that the masses were placed in.

    Parameters
    ----------
    occupant : Occupant
    row : mapping of str to float
        What follows from the choices, one value each.
    at : callable
        Frame axes to floor axes, side view [mm].

    Returns
    -------
    Figurine
        Floor axes [mm]; None for a lost joint.
    """
    hip = row["hip_x"], row["hip_z"]
    _, upper = upper_body_points(occupant.body, *hip, row["lean"])

    def placed(joint: Joint | None) -> Point | None:
        return None if joint is None else at(_one(joint[0]), _one(joint[1]))

    legs = {side: _leg(occupant, row, side) for side in SIDES}
    return Figurine(
        hip=at(*hip),
        shoulder=at(_one(upper.shoulder[0]), _one(upper.shoulder[1])),
        head_centre=at(_one(upper.head_centre[0]), _one(upper.head_centre[1])),
        head_radius_mm=upper.head_radius_mm,
        elbow={side: placed(upper.elbow[side]) for side in SIDES},
        hand={side: placed(upper.hand[side]) for side in SIDES},
        knee={side: placed(legs[side][0]) for side in SIDES},
        ankle={side: placed(legs[side][1]) for side in SIDES},
        heel={side: placed(legs[side][2]) for side in SIDES},
        toe={side: placed(legs[side][3]) for side in SIDES},
        half_shoulder_mm=occupant.body.half_shoulder_mm,
        half_hip_mm=occupant.body.half_hip_mm,
    )


def _leg(occupant: Occupant, row: Mapping[str, float], side: LimbSide) -> tuple[Joint | None, ...]:
    angles = row["seat_slope"], row[f"shank_{side}"], row[f"sole_{side}"]
    _, leg = leg_points(occupant.body, side, row["hip_x"], row["hip_z"], *angles)
    return leg.knee, leg.ankle, leg.heel, leg.toe


def _one(value: object) -> float:
    return float(np.ravel(np.asarray(value, dtype=float))[0])


def _seat(rows: Rows, row: Mapping[str, float], at: OnFloor) -> _Seat:
    up, lean = row["back_height"], row["back_set"]
    pad = row["pad_height"]
    return {
        "seat_corner": at(0.0, 0.0),
        "seat_front": at(row["depth"], 0.0),
        "cushion_rear": at(0.0, row["cushion_rear"]),
        "cushion_front": at(row["depth"], row["cushion_front"]),
        "back_bottom": at(0.0, 0.0),
        "back_top": at(-up * np.sin(lean), up * np.cos(lean)),
        "push_handle": at(row["grip_x"], row["grip_z"]),
        "arm_pad": None if np.isnan(pad) else (at(ARM_PAD_MM[0], pad), at(ARM_PAD_MM[1], pad)),
    }


def _running_gear(rows: Rows, row: Mapping[str, float], at: OnFloor) -> _RunningGear:
    option = rows.option
    tube = _one(option("side_frame", "caster_tube_x_mm"))
    housings = rows.line.column("caster_housing", "z_mm")
    stem = row["stem_set"]
    crown = row["crown_x"], row["crown_z"]
    return {
        "rear_axle": (0.0, row["rear_height"]),
        "rear_radius_mm": row["rear_radius"],
        "rear_tyre_width_mm": _one(option("rear_wheel", "tyre_width_mm")),
        "hand_rim_radius_mm": row["rim_radius"],
        "camber_deg": row["camber"],
        "axle_holes": tuple(_axle_holes(rows, at)),
        "caster_tube_top": at(tube, float(housings.max()) + TUBE_BEYOND_MM),
        "caster_tube_bottom": at(tube, float(housings.min()) - TUBE_BEYOND_MM),
        "stem_top": at(crown[0] - STEM_MM * np.sin(stem), crown[1] + STEM_MM * np.cos(stem)),
        "fork_crown": at(*crown),
        "caster_axle": at(row["caster_x"], row["caster_z"]),
        "caster_radius_mm": row["caster_radius"],
        "caster_width_mm": _one(option("caster", "width_mm")),
        "caster_swing_radius_mm": row["swing"],
        "hub_half_mm": row["hub_half"],
    }


def _axle_holes(rows: Rows, at: OnFloor) -> list[Hole]:
    """Holes of the chosen plate as it is mounted."""
    chosen = int(rows.index["axle_hole"][0])
    options = rows.line.choices["axle_hole"].options
    plate = options[chosen].mounting
    return [
        Hole(option.code, at(option.numbers["x_mm"], option.numbers["z_mm"]), place == chosen)
        for place, option in enumerate(options)
        if option.mounting == plate
    ]


def _foot_supports(rows: Rows, row: Mapping[str, float], at: OnFloor) -> list[FootSupport]:
    found = []
    start = at(
        _one(rows.option("side_frame", "hanger_x_mm")),
        _one(rows.option("side_frame", "hanger_z_mm")),
    )
    outer = row["width"] / 2 - row["sole_plate_outer_inset"]
    for side, sign in (("left", 1.0), ("right", -1.0)):
        if row[f"plate_{side}"] > 0:
            bottom = row["plate_z"] - row["sole_plate_thickness"]
            ends = at(row["plate_x"], bottom), at(row["plate_x"] + row["sole_plate_length"], bottom)
            inner = outer - row["sole_plate_width"]
            found.append(FootSupport(side, start, *ends, sign * inner, sign * outer))
    return found


def _anti_tip(
    rows: Rows, row: Mapping[str, float], at: OnFloor
) -> tuple[Point | None, Point | None]:
    chosen = rows.line.choices["anti_tip"].options[int(rows.index["anti_tip"][0])]
    if chosen.code == NONE:
        return None, None
    lowest = float(rows.line.column("axle_hole", "z_mm").min())
    return (row["device_x"], row["device_z"]), at(0.0, lowest)
