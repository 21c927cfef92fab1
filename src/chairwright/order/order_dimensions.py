"""Every dimension of an order with its unit, its two reference points and a tolerance."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described
from chairwright.line.choices import NONE

Origin = Literal["ordered", "follows"]

MADE_TOLERANCE_MM = 2.0
LENGTH_TOLERANCE_MM = 5.0
HEIGHT_TOLERANCE_MM = 10.0
ANGLE_TOLERANCE_DEG = 1.0
MASS_TOLERANCE_KG = 0.5
TOLERANCE_SOURCE = "working values: common practice, no source"
"""Holes and what the maker buys in; sizes of the frame; heights and clearances above the floor,
which tyre pressure and the cushion move; angles; mass."""


@dataclass(frozen=True)
class Dimension:
    """One dimension.

    Parameters
    ----------
    name : str
        Choice and number, or figure.
    label : str
    value : float
    unit : {"mm", "deg", "kg"}
    digits : int
        Digits behind the point when printed.
    from_, to : str
        Reference points.
    tolerance : float
        As delivered, either way, in the unit.
    origin : {"ordered", "follows"}
        A size that is chosen, or one that follows from all the choices together.
    """

    name: str
    label: str
    value: float
    unit: str
    digits: int
    from_: str
    to: str
    tolerance: float
    origin: Origin


@dataclass(frozen=True)
class _Size:
    """A number of an option that is a dimension."""

    choice: str
    key: str
    label: str
    from_: str
    to: str


_CORNER = "seat corner"
_LEVEL = "level floor"
MADE = frozenset({"rear_wheel", "axle_hole", "caster", "fork", "stem_spacer", "anti_tip"})
"""Choices whose sizes are those of a drilled hole or of a part that is bought in."""

SIZES = (
    _Size("rear_wheel", "bead_seat_mm", "Rear wheel, bead seat", "rim seat of the tyre",
          "the same across the wheel"),
    _Size("rear_wheel", "tyre_width_mm", "Rear tyre width", "side of the tyre", "other side"),
    _Size("camber", "angle_deg", "Camber", "vertical",
          "wheel plane, tops leaning in (ISO 7176-26 counts that negative)"),
    _Size("axle_hole", "x_mm", "Axle ahead of the seat corner", _CORNER,
          "middle of the axle, along the rail, forward positive"),
    _Size("axle_hole", "z_mm", "Axle above the seat corner", _CORNER,
          "middle of the axle, square to the rail, up positive"),
    _Size("caster", "diameter_mm", "Caster diameter", "tread", "tread across"),
    _Size("fork", "drop_mm", "Caster axle below the crown", "underside of the fork crown",
          "middle of the caster axle"),
    _Size("stem_spacer", "height_mm", "Stem spacer", "underside of the housing", "fork crown"),
    _Size("seat_width", "width_mm", "Seat width", "left edge of the seat", "right edge"),
    _Size("arm_support", "pad_height_mm", "Arm pad above the rail", "top of the seat rail",
          "top of the arm pad"),
    _Size("seat_depth", "depth_mm", "Seat depth of the frame", "front face of the back post",
          "front edge of the seat"),
    _Size("back_angle", "angle_deg", "Back post angle", "square to the seat rail",
          "back post, leaning back positive"),
    _Size("hanger", "angle_deg", "Hanger angle", "seat rail", "hanger tube, downward"),
    _Size("leg_length", "length_mm", "Hanger length", "hanger pivot",
          "footplate, along the hanger"),
    _Size("back_height", "height_mm", "Back post height", "top of the seat rail",
          "top of the back post, along it"),
    _Size("anti_tip", "z_mm", "Anti-tip wheel above the seat corner", _CORNER,
          "middle of the device's wheel, up positive"),
)  # fmt: skip

FOLLOWS: dict[str, tuple[str, str, float]] = {
    "seat_to_floor_rear_mm": (_LEVEL, "top of the seat rail at the back post", HEIGHT_TOLERANCE_MM),
    "seat_to_floor_front_mm": (
        _LEVEL, "top of the seat rail at the seat's front edge", HEIGHT_TOLERANCE_MM,
    ),
    "cushion_to_floor_front_mm": (
        _LEVEL, "loaded cushion top at the seat's front edge", HEIGHT_TOLERANCE_MM,
    ),
    "seat_angle_deg": (_LEVEL, "seat rail, front up positive", ANGLE_TOLERANCE_DEG),
    "back_angle_deg": ("vertical", "back support, leaning back positive", ANGLE_TOLERANCE_DEG),
    "seat_to_back_angle_deg": ("loaded cushion top", "back support", ANGLE_TOLERANCE_DEG),
    "seat_depth_mm": (
        "loaded back surface", "front edge of the seat", LENGTH_TOLERANCE_MM,
    ),
    "back_height_mm": (
        "loaded cushion top at the back", "top of the back support, along the post",
        HEIGHT_TOLERANCE_MM,
    ),
    "arm_height_mm": (
        "loaded cushion top at the back", "top of the arm pad", HEIGHT_TOLERANCE_MM,
    ),
    "leg_support_length_mm": (
        "loaded cushion's front edge", "footplate, along the hanger", HEIGHT_TOLERANCE_MM,
    ),
    "footplate_clearance_mm": (_LEVEL, "lowest point of the footplates", HEIGHT_TOLERANCE_MM),
    "caster_stem_angle_deg": ("vertical", "caster stem, top back positive", ANGLE_TOLERANCE_DEG),
    "wheelbase_mm": ("rear axle", "caster contact, casters trailing", LENGTH_TOLERANCE_MM),
    "overall_width_mm": ("outermost point left", "outermost point right", LENGTH_TOLERANCE_MM),
    "overall_length_mm": (
        "rearmost point", "foremost point, feet included", HEIGHT_TOLERANCE_MM,
    ),
    "overall_height_mm": (_LEVEL, "highest point of the chair", HEIGHT_TOLERANCE_MM),
    "folded_width_mm": (
        "outermost point left, folded", "outermost point right", HEIGHT_TOLERANCE_MM,
    ),
    "chair_mass_kg": ("nothing on it", "the chair ready to ride", MASS_TOLERANCE_KG),
}  # fmt: skip

LABELS = {"chair_mass_kg": "Mass of the chair"}
"""Labels of figures that need more words outside the ledger."""


def dimensions_of(setup: Described) -> tuple[Dimension, ...]:
    """Every dimension of a set-up: the sizes that are ordered, then those that follow.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    tuple of Dimension
        What the set-up does not have is left out.
    """
    return (*_ordered(setup), *_following(setup))


def _ordered(setup: Described) -> Iterator[Dimension]:
    for size in SIZES:
        option = setup.options[size.choice]
        value = option.numbers.get(size.key, math.nan)
        if option.code == NONE or math.isnan(value):
            continue
        angle = size.key.endswith("_deg")
        yield Dimension(
            name=f"{size.choice}.{size.key}",
            label=size.label,
            value=value,
            unit="deg" if angle else "mm",
            digits=1 if angle or not value.is_integer() else 0,
            from_=size.from_,
            to=size.to,
            tolerance=_tolerance(size),
            origin="ordered",
        )


def _tolerance(size: _Size) -> float:
    if size.key.endswith("_deg"):
        return ANGLE_TOLERANCE_DEG
    return MADE_TOLERANCE_MM if size.choice in MADE else LENGTH_TOLERANCE_MM


def _following(setup: Described) -> Iterator[Dimension]:
    for name, (start, end, tolerance) in FOLLOWS.items():
        figure, value = FIGURES[name], setup.figures[name]
        if not math.isnan(value):
            yield Dimension(
                name=name,
                label=LABELS.get(name, figure.label),
                value=value,
                unit=figure.unit,
                digits=figure.digits,
                from_=start,
                to=end,
                tolerance=tolerance,
                origin="follows",
            )
