"""What tables, basins and transfers ask of a chair."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.places.kinds import TransferPlace, UnderTop
from chairwright.targets.place_asks import Asking
from chairwright.targets.target import Target

KNEE_SPARE_MM = 15.0
"""Air between knees and the underside of a table (common practice, no source)."""

LEVEL_MM = 30.0
"""A transfer to the side is level when the heights differ by no more (common practice, no
source)."""


def under_top_targets(top: UnderTop, asking: Asking) -> Iterator[Target]:
    """Knees go under it.

    Parameters
    ----------
    top : UnderTop
    asking : Asking

    Yields
    ------
    Target
        Nothing for a client without a whole leg.
    """
    if asking.knees:
        yield asking.ask(
            "knee_top_mm",
            f"knees go under {top.clear_height_mm:g} mm with {KNEE_SPARE_MM:g} mm to spare",
            high=top.clear_height_mm - KNEE_SPARE_MM,
        )


def transfer_targets(place: TransferPlace, asking: Asking) -> Iterator[Target]:
    """A seat about as high as the other, where one slides over.

    Parameters
    ----------
    place : TransferPlace
    asking : Asking

    Yields
    ------
    Target
        Always a wish: no published limit is held. Nothing for a hoist, nor for standing up,
        for which what the person manages counts.
    """
    if place.transfer in ("side", "front"):
        yield asking.ask(
            "cushion_to_floor_front_mm",
            f"{place.height_mm:g} mm high; level to within {LEVEL_MM:g} mm for sliding over",
            low=place.height_mm - LEVEL_MM,
            high=place.height_mm + LEVEL_MM,
            wish=True,
            weight=0.25,
        )
