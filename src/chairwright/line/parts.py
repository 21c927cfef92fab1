"""The parts of a line file as written: field names, types and limits, checked by pydantic.

Lengths in mm, masses in kg (a pair counts as one mass), angles in degrees, places in frame axes,
prices in the line's currency, days as whole days.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Discriminator, Field, Tag

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
Step = Annotated[float, Field(ge=1, le=500)]
Price = Annotated[float, Field(ge=0, le=100_000)]
Days = Annotated[int, Field(ge=0, le=400)]
Load = Annotated[float, Field(gt=0, le=500)]
Torque = Annotated[float, Field(gt=0, le=200)]
Minutes = Annotated[float, Field(ge=0, le=600)]
Pieces = Annotated[int, Field(ge=1, le=40)]
SpinInertia = Annotated[float, Field(ge=0, le=2)]
RollingLength = Annotated[float, Field(gt=0, le=20)]


def shape_of_value(value: object) -> str:
    """Which of two ways a value is written in: a list, or keys and values."""
    return "keys" if isinstance(value, dict | BaseModel) else "list"


class Written(BaseModel):
    """Base: unknown keys, NaN and infinity are refused."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False, strict=False)


class Priced(Written):
    """What every part can have: a price, days that it adds to the delivery, a load limit.

    ``on_request`` takes the part out of the search unless the clinician names it.
    """

    price: Price = 0.0
    days: Days = 0
    load_limit_kg: Load | None = None
    on_request: bool = False


class Steps(Written):
    """Sizes from one to another in equal steps, the last one included when a step meets it."""

    from_mm: Size
    to_mm: Size
    step_mm: Step

    @property
    def values(self) -> list[float]:
        """The sizes in mm, rising; empty when the range is upside down."""
        count = int((self.to_mm - self.from_mm) / self.step_mm + 1e-9) + 1
        return [round(self.from_mm + at * self.step_mm, 6) for at in range(max(count, 0))]


Sizes = Annotated[
    Annotated[list[Size], Field(min_length=1), Tag("list")] | Annotated[Steps, Tag("keys")],
    Discriminator(shape_of_value),
]


def sizes_of(written: list[float] | Steps) -> list[float]:
    """The sizes of a list or of a stepped range, in mm."""
    return written.values if isinstance(written, Steps) else written


class SideFrame(Priced):
    """A pair of side frames; ``load_limit_kg`` is the build's rated load."""

    code: Code
    name: Words
    caster_tube_x_mm: Place
    hanger_pivot_mm: At
    depth_from_mm: Size
    depth_to_mm: Size
    load_limit_kg: Load
    mass_kg: Mass
    at_mm: At


class RearWheel(Priced):
    """A pair of rear wheels with tyres; the hand rim that fits has the diameter given.

    ``rolling_mm`` is the rolling length on a hard floor: the coefficient is this over the radius.
    """

    code: Code
    name: Words
    bead_seat_mm: Size
    tyre_width_mm: Size
    tyre: Literal["air", "solid"] = "air"
    hand_rim_diameter_mm: Size
    spin_inertia_kgm2: SpinInertia | None = None
    rolling_mm: RollingLength | None = None
    mass_kg: Mass


class HandRim(Priced):
    """A pair of hand rims; the standoff is the rim's outermost place from the wheel plane."""

    code: Code
    name: Words
    standoff_mm: Size
    mass_kg: Mass


class Camber(Priced):
    """A camber setting or tube: the everyday magnitude, tops leaning in."""

    code: Code
    name: Words
    angle_deg: Annotated[float, Field(ge=0, le=20)]
    hub_extra_mm: Annotated[float, Field(ge=0, le=100)]
    mass_kg: Mass = 0.0


class AxlePlate(Priced):
    """A pair of plates' holes: columns fore-aft (x), rows up-down (z).

    A reversible plate can be turned round about ``turned_about_x_mm``; its holes then carry an R.
    """

    code: Code
    name: Words
    mass_kg: Mass
    columns_mm: Annotated[dict[Column, Place], Field(min_length=1)]
    rows_mm: Annotated[dict[Hole, Place], Field(min_length=1)]
    turned_about_x_mm: Place | None = None
    closed: tuple[str, ...] = ()


class Caster(Priced):
    """A pair of caster wheels; ``rolling_mm`` as of a rear wheel."""

    code: Code
    name: Words
    diameter_mm: Size
    width_mm: Size
    spin_inertia_kgm2: SpinInertia | None = None
    rolling_mm: RollingLength | None = None
    mass_kg: Mass


class Fork(Priced):
    """A pair of caster forks; holes give the axle's drop below the crown."""

    code: Code
    name: Words
    trail_mm: Annotated[float, Field(ge=0, le=120)]
    largest_caster_mm: Size
    mass_kg: Mass
    holes_mm: Annotated[dict[Hole, Size], Field(min_length=1)]


class StemSpacer(Priced):
    """A pair of spacers on the stems: the fork crowns come that much lower."""

    code: Code
    name: Words
    height_mm: Annotated[float, Field(gt=0, le=80)]
    mass_kg: Mass


class CasterHousings(Priced):
    """Caster housings: bolted ahead of the frame tube (leading) or behind it (trailing)."""

    code: Code
    name: Words
    mass_kg: Mass
    outset_mm: Annotated[float, Field(ge=-100, le=150)]
    ahead_of_tube_mm: Annotated[dict[Literal["leading", "trailing"], Place], Field(min_length=1)]
    rows_mm: Annotated[dict[Hole, Place], Field(min_length=1)]
    stem_settings_deg: Annotated[list[Angle], Field(min_length=1)]
    crown_gap_mm: Annotated[float, Field(ge=0, le=60)]


class SeatWidth(Priced):
    """A seat width with what the width adds to cross-brace and sling."""

    code: Code
    width_mm: Size
    mass_kg: Mass


class SeatDepth(Priced):
    """A seat depth."""

    code: Code
    depth_mm: Size
    mass_kg: Mass


class Cushion(Priced):
    """A cushion; heights are of its loaded top above the seat rail."""

    code: Code
    name: Words
    loaded_rear_mm: Place
    loaded_front_mm: Place
    mass_kg: Mass


class BackAngle(Priced):
    """A back angle: the post behind square to the seat rail."""

    code: Code
    angle_deg: Angle


class BackSetting(Written):
    """One way to hang a solid back: how far behind the post, and how far leaning back of it."""

    behind_post_mm: Place
    tilt_deg: Annotated[float, Field(ge=-20, le=30)] = 0.0


class BackSupport(Priced):
    """Back upholstery or solid back; the loaded surface lies behind the post's front face.

    A sling has one place (``behind_post_mm``), a solid back several numbered ``settings``.
    """

    code: Code
    name: Words
    behind_post_mm: Place | None = None
    settings: Annotated[dict[Hole, BackSetting], Field(min_length=1)] | None = None
    mass_kg: Mass


class BackHeight(Priced):
    """A back post height above the seat rail."""

    code: Code
    height_mm: Size
    mass_kg: Mass


class ArmSupport(Priced):
    """A pair of arm supports or side guards; outsets count from the seat's edge.

    Side guards have no ``pad_heights_mm``.
    """

    code: Code
    name: Words
    hub_outset_mm: Size
    outer_outset_mm: Size
    mass_kg: Mass
    pad_heights_mm: Sizes | None = None


class Hanger(Priced):
    """A pair of hangers; the angle is the tube's below the seat rail.

    An elevating one has several ``angles_deg`` at which it can be set.
    """

    code: Code
    name: Words
    angle_deg: Annotated[float, Field(ge=0, le=110)] | None = None
    angles_deg: (
        Annotated[list[Annotated[float, Field(ge=0, le=110)]], Field(min_length=1)] | None
    ) = None
    swings: Literal["no", "out", "out and in"] = "no"
    mass_kg: Mass


class FootPlate(Priced):
    """A pair of footplates, or one board when ``width_mm`` reaches across.

    ``behind_tube_mm`` is how far the rear edge lies behind the hanger tube.
    """

    code: Code
    name: Words
    length_mm: Size
    width_mm: Size
    thickness_mm: Size
    behind_tube_mm: Place
    outer_inset_mm: Place
    mass_kg: Mass


class LegLengths(Written):
    """Footplate along the hanger from its pivot."""

    lengths_mm: Sizes


class WheelLock(Priced):
    """A pair of wheel locks, or a wheel lock with its lever extension."""

    code: Code
    name: Words
    mass_kg: Mass
    at_mm: At


class AntiTip(Priced):
    """A pair of anti-tip devices; holes give the wheel centre's height in frame axes."""

    code: Code
    name: Words
    wheel_x_mm: Place
    wheel_radius_mm: Size
    mass_kg: Mass
    flips_up: bool = False
    holes_mm: Annotated[dict[Hole, Place], Field(min_length=1)]


class Folding(Written):
    """What is left of the seat width when folded, and the widest seat that still folds."""

    folded_seat_mm: Size
    folds_to_width_mm: Size


class PushHandle(Priced):
    """A pair of push handles: grip places relative to the top of the back post."""

    code: Code
    name: Words
    behind_mm: Place
    above_mm: Place
    mass_kg: Mass


class Belt(Priced):
    """A belt or harness."""

    code: Code
    name: Words
    mass_kg: Mass
    at_mm: At


class Finish(Priced):
    """A frame finish."""

    code: Code
    name: Words


class Extra(Priced):
    """An accessory that is fitted only when it is asked for."""

    code: Code
    name: Words
    mass_kg: Mass
    at_mm: At


class Part(Priced):
    """A part that every chair has."""

    code: Code
    name: Words
    mass_kg: Mass
    at_mm: At
