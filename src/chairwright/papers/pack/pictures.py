"""Which drawing of holes shows which choices, as a template takes it."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from chairwright.drawing.hole_back import back_angle_sheet, back_height_sheet
from chairwright.drawing.hole_fork import fork_sheet, housing_sheet
from chairwright.drawing.hole_marks import Codes
from chairwright.drawing.hole_plate import axle_plate_sheet
from chairwright.drawing.sheet import Sheet
from chairwright.drawing.svg import to_svg
from chairwright.papers.words import Units

Picture = dict[str, Any]

SHOWS: dict[str, frozenset[str]] = {
    "back-angle": frozenset({"back_angle"}),
    "back-height": frozenset({"back_height", "push_handle"}),
    "plate-left": frozenset({"axle_hole"}),
    "plate-right": frozenset({"axle_hole"}),
    "fork": frozenset({"fork", "stem_spacer"}),
    "housing": frozenset({"caster_housing", "stem_setting"}),
}
"""Drawings with the choices that they show."""


def pictures(
    codes: Codes,
    choices: Collection[str],
    prefix: str,
    units: Units,
    without: Collection[str] = (),
) -> list[Picture]:
    """Every drawing that shows one of some choices.

    Parameters
    ----------
    codes : Codes
        What is marked.
    choices : collection of str
    prefix : str
        Start of every id within the drawings.
    units : {"mm", "in"}
    without : collection of str
        Drawings that are not wanted.

    Returns
    -------
    list of dict
        SVG, its words for readers who cannot see it, its width at true scale [mm].
    """
    named = (name for name, shown in SHOWS.items() if shown & set(choices))
    wanted = (name for name in named if name not in without)
    return [picture(_sheet(name, codes, units), f"{prefix}-{name}") for name in wanted]


def picture(sheet: Sheet, prefix: str) -> Picture:
    """A drawing as a template takes it."""
    alt = f"{sheet.title}. {sheet.description}"
    return {"svg": to_svg(sheet, prefix), "alt": alt, "width_mm": sheet.width_mm}


def _sheet(name: str, codes: Codes, units: Units) -> Sheet:
    match name:
        case "plate-left":
            return axle_plate_sheet(codes, "left", units=units)
        case "plate-right":
            return axle_plate_sheet(codes, "right", units=units)
        case "fork":
            return fork_sheet(codes, units=units)
        case "housing":
            return housing_sheet(codes, units=units)
        case "back-height":
            return back_height_sheet(codes, units=units)
        case _:
            return back_angle_sheet(codes, units=units)
