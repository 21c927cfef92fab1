"""Ends of the footplates' place and of the clearances inside the chair, before they are settled."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from chairwright.chair.pose import track_growth
from chairwright.chair.rows import Rows
from chairwright.figures.band import Band
from chairwright.figures.floor_ends import floor_along, floor_height
from chairwright.figures.space import caster_tyre_gap, foot_gap, plate_tips, stem_foot
from chairwright.mass_points import FloatArray
from chairwright.search.grid import EndsTable, Known
from chairwright.search.once import Once
from chairwright.search.space import Space

PLATE = ("side_frame", "seat_depth", "cushion", "hanger", "foot_plate", "leg_length")
"""Choices that place the footplates in the frame, and the seat's, to which musts tie them."""


class EarlyPlates:
    """Where the footplates of feet that rest can still come.

    Parameters
    ----------
    space : Space
        With at least one foot that rests: then every set-up has a footplate.
    once : Once
    known : dict
        What was worked out before for spaces of the same line and occupant.
    """

    def __init__(self, space: Space, once: Once, known: Known) -> None:
        self._once = once
        self._table = EndsTable(space, PLATE)
        self._table.tabulate_all(space, "plates", _plates, known)

    def tips(self, rows: Rows) -> list[FloatArray]:
        """Least places of the footplates' tips ahead of the axle [mm]."""
        if "plate_x" in rows.columns:
            return list(plate_tips(rows))
        along = self._floor(rows, 0, "tip_x", "top_z")
        return [np.maximum(np.nan_to_num(along.low), 0.0)]

    def clearance(self, rows: Rows) -> Band:
        """Ends of the footplates' lowest point above the floor [mm]."""
        rear, tip = (self._floor(rows, 1, key, "bottom_z") for key in ("rear_x", "tip_x"))
        return Band(np.minimum(rear.low, tip.low), np.minimum(rear.high, tip.high))

    def caster_foot(self, rows: Rows) -> Band:
        """Ends of the gap from the caster's swing circle to the footplates [mm]."""
        rear, tip = (self._floor(rows, 0, key, "bottom_z") for key in ("rear_x", "tip_x"))
        inset, height = self._band(rows, "inset"), self.clearance(rows)
        stem = stem_foot(rows)
        ends = (
            foot_gap(rows, rear.low - stem, stem - tip.high, inset.low, height.low),
            foot_gap(rows, rear.high - stem, stem - tip.low, inset.high, height.high),
        )
        return Band(*ends)

    def _band(self, rows: Rows, key: str) -> Band:
        return Band(*self._table.ends(key, rows.index))

    def _floor(self, rows: Rows, axis: int, x_key: str, z_key: str) -> Band:
        key = f"plate {axis} {x_key} {z_key}"
        return self._once.of(rows, key, lambda _: self._on_floor(rows, axis, x_key, z_key))

    def _on_floor(self, rows: Rows, axis: int, x_key: str, z_key: str) -> Band:
        x_mm, z_mm = self._band(rows, x_key), self._band(rows, z_key)
        return (floor_along, floor_height)[axis](rows, x_mm, z_mm)


def _plates(rows: Rows) -> dict[str, FloatArray]:
    return {
        "rear_x": rows["plate_x"],
        "tip_x": rows["plate_x"] + rows["sole_plate_length"],
        "top_z": rows["plate_z"],
        "bottom_z": rows["plate_z"] - rows["sole_plate_thickness"],
        "inset": rows["sole_plate_outer_inset"],
    }


def early_caster_tyre(space: Space) -> Callable[[Rows], Band]:
    """Gap from the caster's swing circle to the rear tyre while the arm supports are open.

    Parameters
    ----------
    space : Space

    Returns
    -------
    callable
        From rows to a band [mm]. The seat's width moves tyre and caster alike.
    """
    outsets = space.line.column("arm_support", "hub_outset_mm")[space.allowed["arm_support"]]
    ends = float(outsets.min()), float(outsets.max())

    def band(rows: Rows) -> Band:
        growth = track_growth(rows["rear_radius"], rows["camber"])
        fixed = rows.option("camber", "hub_extra_mm") + growth / 2 - rows.line.caster_outset_mm
        return Band(*(caster_tyre_gap(rows, fixed + outset) for outset in ends))

    return band
