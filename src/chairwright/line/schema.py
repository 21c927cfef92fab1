"""The line file as written: the whole, its made-to-order ranges and its rules.

Units as in `chairwright.line.parts`.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Discriminator, Field, Tag

from chairwright.line.model import Often
from chairwright.line.parts import (
    AntiTip,
    ArmSupport,
    AxlePlate,
    BackAngle,
    BackHeight,
    BackSupport,
    Belt,
    Camber,
    Caster,
    CasterHousings,
    Codes,
    Cushion,
    Days,
    Extra,
    Finish,
    Folding,
    FootPlate,
    Fork,
    HandRim,
    Hanger,
    LegLengths,
    Load,
    Mass,
    Minutes,
    Part,
    Pieces,
    Price,
    PushHandle,
    RearWheel,
    SeatDepth,
    SeatWidth,
    SideFrame,
    Size,
    StemSpacer,
    Step,
    Torque,
    WheelLock,
    Words,
    Written,
    shape_of_value,
)


class CustomSizes(Written):
    """Sizes made to order: a range in steps, with what each costs more and how long it takes.

    ``mass_kg`` is given at the range's two ends and runs straight between them.
    """

    from_mm: Size
    to_mm: Size
    step_mm: Step
    mass_kg: tuple[Mass, Mass] = (0.0, 0.0)
    surcharge: Price
    days: Days
    load_limit_kg: Load | None = None


class Customs(Written):
    """The choices that can be made to order."""

    seat_width: CustomSizes | None = None
    seat_depth: CustomSizes | None = None
    back_height: CustomSizes | None = None
    leg_length: CustomSizes | None = None


class SizeRange(Written):
    """Options whose main size lies in a range, both ends included; mm or degrees."""

    from_: Annotated[float | None, Field(alias="from")] = None
    to: float | None = None


Meant = Annotated[
    Annotated[Codes, Tag("list")] | Annotated[SizeRange, Tag("keys")],
    Discriminator(shape_of_value),
]


class WrittenRule(Written):
    """If every ``when`` is met, every ``need`` must be met."""

    when: Annotated[dict[str, Meant], Field(min_length=1)]
    need: Annotated[dict[str, Meant], Field(min_length=1)]
    because: Words


class WrittenFastener(Written):
    """What holds a part or a setting, the tool for it and how tight it is made.

    ``of`` are option or part codes of the choice; left out, all of them. ``pieces`` are those of
    one part: a left and a right one have twice as many.
    """

    choice: str
    of: Codes | None = None
    what: Words
    pieces: Pieces = 1
    tool: Words
    torque_nm: Torque | None = None
    note: Words | None = None
    source: Words


class WrittenLater(Written):
    """What it takes to change a chair that is in use: prices of parts bought later, minutes.

    ``part_prices`` come on top of the part's price with a new chair. Minutes are those of a choice
    once the chair is open for it, or of work that several choices share.
    """

    frame: Annotated[list[str], Field(min_length=1)]
    frame_price: Price
    frame_minutes: Minutes | None = None
    part_prices: dict[str, Price] | None = None
    minutes: dict[str, Minutes] | None = None
    source: Words


class WrittenUpkeep(Written):
    """One work of upkeep that the maker asks for."""

    often: Often
    work: Words
    source: Words


class WrittenLine(Written):
    """The whole file."""

    format: Literal["chairwright line 2"]
    name: Annotated[str, Field(pattern=r"^[a-z][a-z0-9-]{0,40}$")]
    title: Words
    maker: Words
    version: Words
    currency: Annotated[str, Field(pattern=r"^[A-Z]{3}$")]
    base_price: Price
    build_days: Days
    typed_in: Literal["mm", "in"] = "mm"
    side_frames: Annotated[list[SideFrame], Field(min_length=1)]
    rear_wheels: Annotated[list[RearWheel], Field(min_length=1)]
    cambers: Annotated[list[Camber], Field(min_length=1)]
    axle_plates: Annotated[list[AxlePlate], Field(min_length=1)]
    casters: Annotated[list[Caster], Field(min_length=1)]
    forks: Annotated[list[Fork], Field(min_length=1)]
    stem_spacers: Annotated[list[StemSpacer], Field(default_factory=list)]
    caster_housings: CasterHousings
    hand_rims: Annotated[list[HandRim], Field(default_factory=list)]
    seat_widths: Annotated[list[SeatWidth], Field(min_length=1)]
    arm_supports: Annotated[list[ArmSupport], Field(min_length=1)]
    seat_depths: Annotated[list[SeatDepth], Field(min_length=1)]
    cushions: Annotated[list[Cushion], Field(min_length=1)]
    back_angles: Annotated[list[BackAngle], Field(min_length=1)]
    back_supports: Annotated[list[BackSupport], Field(min_length=1)]
    hangers: Annotated[list[Hanger], Field(min_length=1)]
    foot_plates: Annotated[list[FootPlate], Field(min_length=1)]
    leg_lengths: LegLengths
    back_heights: Annotated[list[BackHeight], Field(min_length=1)]
    push_handles: Annotated[list[PushHandle], Field(default_factory=list)]
    wheel_locks: Annotated[list[WheelLock], Field(min_length=1)]
    anti_tips: Annotated[list[AntiTip], Field(default_factory=list)]
    anti_tip_required: bool
    belts: Annotated[list[Belt], Field(default_factory=list)]
    finishes: Annotated[list[Finish], Field(min_length=1)]
    extras: Annotated[list[Extra], Field(default_factory=list)]
    custom_sizes: Customs = Customs()
    folding: Folding | None = None
    fixed_parts: Annotated[list[Part], Field(min_length=1)]
    fasteners: Annotated[list[WrittenFastener], Field(max_length=200, default_factory=list)]
    later: WrittenLater | None = None
    upkeep: Annotated[list[WrittenUpkeep], Field(max_length=20, default_factory=list)]
    rules: Annotated[list[WrittenRule], Field(max_length=200, default_factory=list)]
