"""How far a chair as built can lie from its drawing.

A line file states no tolerances, so the half widths are working values (common practice, no
source) unless a source is named: limits inside which every value is as likely as another.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from chairwright.chair.rows import Columns, IndexArray, Rows
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.mass_points import FloatArray
from chairwright.tolerance.model import NO_SOURCE, Input

MASS_SHARE = 0.05
ROLLING_SHARE = 0.15
ASIDE = "sling, foam and play under load"

Number = tuple[str, str]
"""Choice, and the key of one of its numbers."""


@dataclass(frozen=True)
class _Build:
    label: str
    half: float
    note: str = ""
    share: bool = False


SIZES: Mapping[Number, _Build] = {
    ("side_frame", "caster_tube_x_mm"): _Build("caster tube of the frame, ahead", 2.0),
    ("side_frame", "hanger_x_mm"): _Build("hanger pivot, ahead", 2.0),
    ("side_frame", "hanger_z_mm"): _Build("hanger pivot, up", 2.0),
    ("rear_wheel", "radius_mm"): _Build("radius of the rear wheel with tyre", 3.0, "pressure"),
    ("rear_wheel", "hand_rim_radius_mm"): _Build("radius of the hand rim", 1.0),
    ("rear_wheel", "rolling_mm"): _Build("rolling length, rear", ROLLING_SHARE, share=True),
    ("camber", "angle_deg"): _Build("camber", 0.3),
    ("axle_hole", "x_mm"): _Build("axle hole, ahead", 1.5),
    ("axle_hole", "z_mm"): _Build("axle hole, up", 1.5),
    ("caster", "radius_mm"): _Build("radius of the caster", 1.0),
    ("caster", "rolling_mm"): _Build("rolling length, casters", ROLLING_SHARE, share=True),
    ("fork", "trail_mm"): _Build("trail of the fork", 1.0),
    ("fork", "drop_mm"): _Build("fork hole below the crown", 1.0),
    ("caster_housing", "ahead_mm"): _Build("caster housing, ahead", 2.0),
    ("caster_housing", "z_mm"): _Build("caster housing, up", 1.5),
    ("stem_setting", "angle_deg"): _Build("stem squared to the floor", 0.5),
    ("hand_rim", "standoff_mm"): _Build("hand rim outward of the wheel", 2.0),
    ("seat_width", "width_mm"): _Build("seat width", 3.0),
    ("arm_support", "hub_outset_mm"): _Build("hub outward of the seat, each side", 2.0),
    ("arm_support", "outer_outset_mm"): _Build("arm support outward of the seat, each side", 2.0),
    ("arm_support", "pad_height_mm"): _Build("arm pad height", 3.0),
    ("seat_depth", "depth_mm"): _Build("seat depth", 3.0),
    ("cushion", "rear_mm"): _Build("loaded cushion top, back", 8.0, ASIDE),
    ("cushion", "front_mm"): _Build("loaded cushion top, front", 8.0, ASIDE),
    ("back_angle", "angle_deg"): _Build("back angle", 1.0),
    ("back_support", "behind_post_mm"): _Build("loaded back surface", 8.0, ASIDE),
    ("hanger", "angle_deg"): _Build("hanger angle", 1.0),
    ("foot_plate", "length_mm"): _Build("length of the footplate", 2.0),
    ("foot_plate", "thickness_mm"): _Build("thickness of the footplate", 1.0),
    ("foot_plate", "behind_tube_mm"): _Build("footplate behind its tube", 2.0),
    ("leg_length", "length_mm"): _Build("hanger length", 3.0),
    ("back_height", "height_mm"): _Build("back height", 3.0),
    ("push_handle", "above_mm"): _Build("push handle above the back", 3.0),
    ("push_handle", "behind_mm"): _Build("push handle behind the back", 3.0),
    ("anti_tip", "x_mm"): _Build("anti-tip wheel, ahead", 3.0),
    ("anti_tip", "z_mm"): _Build("anti-tip wheel, up", 3.0),
}
"""Half widths in mm and degrees; of rolling lengths, a share of the value."""

MASSES = tuple(name for name in CHOICES if name not in {"stem_setting", "finish", "back_angle"})
"""Choices whose parts can have a mass: each to within `MASS_SHARE`, by itself."""


class DrawnRows(Rows):
    """Set-ups as built: numbers of the options a little off, one set-up a row.

    Parameters
    ----------
    line : Line
    index : dict of str to ndarray of int, shape (n,)
    columns : dict of str to ndarray
    off : mapping of (choice, key) to ndarray, shape (n,)
        What is added to a number.
    """

    def __init__(
        self,
        line: Line,
        index: dict[str, IndexArray],
        columns: Columns,
        off: Mapping[Number, FloatArray],
    ) -> None:
        super().__init__(line, index, columns)
        self.off = off

    def option(self, choice: str, key: str) -> FloatArray:
        """One figure of the chosen options as built, shape (n,)."""
        drawn = super().option(choice, key)
        off = self.off.get((choice, key))
        return drawn if off is None else drawn + off

    def alike(self) -> DrawnRows:
        """The same set-ups with columns of their own to add to."""
        return DrawnRows(self.line, self.index, dict(self.columns), self.off)


def chair_inputs(line: Line) -> dict[Number, Input]:
    """What can be off of a chair of a line, by the number that it moves.

    Parameters
    ----------
    line : Line

    Returns
    -------
    dict of (choice, key) to Input
        Only numbers that some option of the line has.
    """
    found = {number: _size_input(number, build) for number, build in SIZES.items()}
    for name in MASSES:
        found[name, "mass_kg"] = Input(
            f"chair.{name}.mass_kg",
            f"mass: {line.choices[name].label.lower()}",
            "chair",
            MASS_SHARE,
            "",
            f"part masses as built: {NO_SOURCE}",
            "Weigh the built chair.",
            "limits",
        )
    return {number: each for number, each in found.items() if _is_there(line, number)}


def offs(
    line: Line, index: Mapping[str, IndexArray], inputs: Mapping[Number, Input], steps: FloatArray
) -> dict[Number, FloatArray]:
    """What is added to each number.

    Parameters
    ----------
    line : Line
    index : mapping of str to ndarray of int, shape (n,)
    inputs : mapping of (choice, key) to Input
        From `chair_inputs`.
    steps : ndarray, shape (n, inputs)
        In standard uncertainties.
    """
    found = {}
    for at, ((choice, key), each) in enumerate(inputs.items()):
        size: FloatArray | float = 1.0
        if not each.unit:
            size = line.column(choice, key)[index[choice]]
        found[choice, key] = steps[:, at] * each.standard * size
    return found


def _size_input(number: Number, build: _Build) -> Input:
    choice, key = number
    unit = "" if build.share else ("deg" if key.endswith("_deg") else "mm")
    note = f", {build.note}" if build.note else ""
    return Input(
        f"chair.{choice}.{key}",
        build.label,
        "chair",
        build.half,
        unit,
        f"chair as built{note}: {NO_SOURCE}",
        "" if build.share else f"Measure on the built chair: {build.label}.",
        "limits",
    )


def _is_there(line: Line, number: Number) -> bool:
    column = line.column(*number)
    if number[1] == "angle_deg":
        return bool(len(column))
    return bool((np.nan_to_num(column) != 0.0).any())
