"""The line file as written: field names, types and limits, checked by pydantic.

Lengths in mm, masses in kg (a pair counts as one mass), angles in degrees, places in frame axes.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

Code = Annotated[str, Field(pattern=r"^[A-Z][A-Z0-9]{0,11}$")]
Codes = Annotated[list[str], Field(min_length=1)]
Hole = Annotated[int, Field(ge=1, le=99)]
Column = Annotated[str, Field(pattern=r"^[A-Z]$")]
Words = Annotated[str, Field(min_length=1, max_length=160)]
Mass = Annotated[float, Field(ge=0, le=40)]
Size = Annotated[float, Field(gt=0, le=1500)]
Place = Annotated[float, Field(ge=-1500, le=1500)]
Angle = Annotated[float, Field(ge=-45, le=120)]
At = Annotated[list[Place], Field(min_length=2, max_length=2)]


class Written(BaseModel):
    """Base: unknown keys, NaN and infinity are refused."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False, strict=False)


class SideFrame(Written):
    """A pair of side frames."""

    code: Code
    name: Words
    caster_tube_x_mm: Place
    hanger_pivot_mm: At
    depth_from_mm: Size
    depth_to_mm: Size
    rated_load_kg: Annotated[float, Field(gt=0, le=500)]
    mass_kg: Mass
    at_mm: At


class RearWheel(Written):
    """A pair of rear wheels with tyres and hand rims."""

    code: Code
    name: Words
    bead_seat_mm: Size
    tyre_width_mm: Size
    hand_rim_diameter_mm: Size
    hand_rim_standoff_mm: Size
    spin_inertia_kgm2: Annotated[float, Field(ge=0, le=2)]
    mass_kg: Mass


class Camber(Written):
    """A camber setting: the everyday magnitude, tops leaning in."""

    code: Code
    name: Words
    angle_deg: Annotated[float, Field(ge=0, le=20)]
    hub_extra_mm: Annotated[float, Field(ge=0, le=100)]


class AxlePlate(Written):
    """The plates' holes: columns fore-aft (x), rows up-down (z)."""

    mass_kg: Mass
    columns_mm: Annotated[dict[Column, Place], Field(min_length=1)]
    rows_mm: Annotated[dict[Hole, Place], Field(min_length=1)]
    closed: list[str] = []


class Caster(Written):
    """A pair of caster wheels."""

    code: Code
    name: Words
    diameter_mm: Size
    width_mm: Size
    mass_kg: Mass


class Fork(Written):
    """A pair of caster forks; holes give the axle's drop below the crown."""

    code: Code
    name: Words
    trail_mm: Annotated[float, Field(ge=0, le=120)]
    largest_caster_mm: Size
    mass_kg: Mass
    holes_mm: Annotated[dict[Hole, Size], Field(min_length=1)]


class CasterHousings(Written):
    """Caster housings: bolted ahead of the frame tube (leading) or behind it (trailing)."""

    mass_kg: Mass
    outset_mm: Annotated[float, Field(ge=-100, le=150)]
    ahead_of_tube_mm: Annotated[dict[Literal["leading", "trailing"], Place], Field(min_length=1)]
    rows_mm: Annotated[dict[Hole, Place], Field(min_length=1)]
    stem_settings_deg: Annotated[list[Angle], Field(min_length=1)]
    crown_gap_mm: Annotated[float, Field(ge=0, le=60)]


class SeatWidth(Written):
    """A seat width with what the width adds to cross-brace and sling."""

    code: Code
    width_mm: Size
    mass_kg: Mass


class SeatDepth(Written):
    """A seat depth."""

    code: Code
    depth_mm: Size
    mass_kg: Mass


class Cushion(Written):
    """A cushion; heights are of its loaded top above the seat rail."""

    code: Code
    name: Words
    loaded_rear_mm: Place
    loaded_front_mm: Place
    mass_kg: Mass


class BackAngle(Written):
    """A fixed back angle: the post behind square to the seat rail."""

    code: Code
    angle_deg: Angle


class BackSupport(Written):
    """Back upholstery; the loaded surface lies behind the post's front face."""

    code: Code
    name: Words
    behind_post_mm: Place
    mass_kg: Mass


class BackHeight(Written):
    """A back post height above the seat rail."""

    code: Code
    height_mm: Size
    mass_kg: Mass


class ArmSupport(Written):
    """A pair of arm supports; outsets count from the seat's edge."""

    code: Code
    name: Words
    hub_outset_mm: Size
    outer_outset_mm: Size
    mass_kg: Mass
    pad_heights_mm: Annotated[list[Size], Field(min_length=1)]


class Hanger(Written):
    """A pair of hangers; the angle is the tube's below the seat rail."""

    code: Code
    name: Words
    angle_deg: Annotated[float, Field(ge=30, le=110)]
    mass_kg: Mass


class FootSupports(Written):
    """Hanger lengths and the footplates."""

    lengths_mm: Annotated[list[Size], Field(min_length=1)]
    plate_length_mm: Size
    plate_behind_tube_mm: Place
    plate_thickness_mm: Size
    plate_outer_inset_mm: Place
    plate_width_mm: Size


class WheelLock(Written):
    """A pair of wheel locks."""

    code: Code
    name: Words
    mass_kg: Mass
    at_mm: At


class AntiTip(Written):
    """A pair of anti-tip devices; holes give the wheel centre's height in frame axes."""

    code: Code
    name: Words
    wheel_x_mm: Place
    wheel_radius_mm: Size
    mass_kg: Mass
    holes_mm: Annotated[dict[Hole, Place], Field(min_length=1)]


class Folding(Written):
    """What is left of the seat width when the chair is folded."""

    folded_seat_mm: Size


class PushHandles(Written):
    """Grip places relative to the top of the back post."""

    behind_mm: Place
    above_mm: Place


class Part(Written):
    """A part that every chair has."""

    code: Code
    name: Words
    mass_kg: Mass
    at_mm: At


class WrittenRule(Written):
    """If every ``when`` is met, every ``need`` must be met."""

    when: Annotated[dict[str, Codes], Field(min_length=1)]
    need: Annotated[dict[str, Codes], Field(min_length=1)]
    because: Words


class WrittenLine(Written):
    """The whole file."""

    format: Literal["chairwright line 1"]
    name: Annotated[str, Field(pattern=r"^[a-z][a-z0-9-]{0,40}$")]
    title: Words
    maker: Words
    version: Words
    side_frames: Annotated[list[SideFrame], Field(min_length=1)]
    rear_wheels: Annotated[list[RearWheel], Field(min_length=1)]
    cambers: Annotated[list[Camber], Field(min_length=1)]
    axle_plate: AxlePlate
    casters: Annotated[list[Caster], Field(min_length=1)]
    forks: Annotated[list[Fork], Field(min_length=1)]
    caster_housings: CasterHousings
    seat_depths: Annotated[list[SeatDepth], Field(min_length=1)]
    cushions: Annotated[list[Cushion], Field(min_length=1)]
    back_angles: Annotated[list[BackAngle], Field(min_length=1)]
    back_supports: Annotated[list[BackSupport], Field(min_length=1)]
    seat_widths: Annotated[list[SeatWidth], Field(min_length=1)]
    arm_supports: Annotated[list[ArmSupport], Field(min_length=1)]
    hangers: Annotated[list[Hanger], Field(min_length=1)]
    foot_supports: FootSupports
    back_heights: Annotated[list[BackHeight], Field(min_length=1)]
    wheel_locks: Annotated[list[WheelLock], Field(min_length=1)]
    anti_tips: Annotated[list[AntiTip], Field(min_length=1)]
    push_handles: PushHandles
    folding: Folding
    fixed_parts: Annotated[list[Part], Field(min_length=1)]
    rules: Annotated[list[WrittenRule], Field(max_length=200)] = []
