"""The shape of one occupied chair in floor axes, for drawings and clearances."""

from __future__ import annotations

from dataclasses import dataclass, field

Point = tuple[float, float]


@dataclass(frozen=True)
class Hole:
    """One hole of the axle plate in floor axes [mm]."""

    code: str
    at: Point
    chosen: bool


@dataclass(frozen=True)
class FootSupport:
    """One hanger with its footplate, side view in floor axes [mm]; ``side`` is left or right."""

    side: str
    pivot: Point
    plate_rear: Point
    plate_front: Point
    y_inner_mm: float
    y_outer_mm: float


@dataclass(frozen=True)
class Figurine:
    """The seated occupant as joints, side view in floor axes [mm]; None for a lost part."""

    hip: Point
    shoulder: Point
    head_centre: Point
    head_radius_mm: float
    elbow: dict[str, Point | None]
    hand: dict[str, Point | None]
    knee: dict[str, Point | None]
    ankle: dict[str, Point | None]
    heel: dict[str, Point | None]
    toe: dict[str, Point | None]
    half_shoulder_mm: float
    half_hip_mm: float


@dataclass(frozen=True)
class Contact:
    """A tyre contact on the floor [mm], casters trailing."""

    name: str
    x_mm: float
    y_mm: float


@dataclass(frozen=True)
class Shape:
    """Everything a drawing needs, in floor axes [mm].

    Origin on the floor under the middle of the rear-axle line, x forward, y left, z up.
    Pairs are ``(x, z)`` in side view unless a name says plan (then ``(x, y)``).
    """

    seat_corner: Point
    seat_front: Point
    cushion_rear: Point
    cushion_front: Point
    back_bottom: Point
    back_top: Point
    push_handle: Point
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
    foot_supports: tuple[FootSupport, ...]
    arm_pad: tuple[Point, Point] | None
    anti_tip_wheel: Point | None
    anti_tip_radius_mm: float
    anti_tip_mount: Point | None
    figurine: Figurine
    com: tuple[float, float, float]
    total_mass_kg: float
    contacts: tuple[Contact, ...]
    wheelbase_mm: float
    seat_width_mm: float
    seat_depth_mm: float
    hub_half_mm: float
    rear_track_mm: float
    caster_track_mm: float
    overall_width_mm: float
    plan_outline: tuple[Point, ...] = field(default=())
