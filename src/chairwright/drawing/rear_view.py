"""Rear view of the occupied chair with widths, heights and the balance to the sides."""

from __future__ import annotations

from math import atan, degrees

from chairwright.chair.shape import Shape
from chairwright.drawing.compose import LegendEntry, View, compose, mass_mark
from chairwright.drawing.dimensions import Units
from chairwright.drawing.place_rear import rear_view
from chairwright.drawing.scene import Dimension, Group, Line
from chairwright.drawing.sheet import A5_PORTRAIT, Page, Sheet

_LEGEND = (
    LegendEntry("centre of mass", None),
    LegendEntry("to the wheel contacts", "tipping_rear"),
    LegendEntry("plumb line", "plumb"),
)


def rear_sheet(shape: Shape, units: Units = "mm", page: Page = A5_PORTRAIT) -> Sheet:
    """Lay the rear view out on a sheet in paper mm.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    units : {"mm", "in"}
    page : Page
        Largest sheet [mm].

    Returns
    -------
    Sheet
    """
    return compose(lambda scale: seen_from_behind(shape, scale), page, units)


def seen_from_behind(shape: Shape, scale: float) -> View:
    """The rear view in real mm: right of the person to the right, floor at zero.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    scale : float
        Real over paper length; marks keep their size on paper.
    """
    half = shape.overall_width_mm / 2.0 + 40.0
    floor = Group("floor", (Line((-half, 0.0), (half, 0.0)),))
    groups = (floor, *rear_view(shape), _balance(shape, scale))
    return View("Rear view", _description(shape), groups, _dimensions(shape), _LEGEND)


def _balance(shape: Shape, scale: float) -> Group:
    """Lines from the centre of mass to the rear wheels' contacts, and the plumb line."""
    at = (-shape.com[1], shape.com[2])
    half = shape.rear_track_mm / 2.0
    return Group(
        "balance",
        (
            Line(at, (-half, 0.0), "tipping_rear"),
            Line(at, (half, 0.0), "tipping_rear"),
            Line(at, (at[0], 0.0), "plumb"),
            *mass_mark(at, 2.0 * scale),
        ),
    )


def _dimensions(shape: Shape) -> tuple[Dimension, ...]:
    seat, track = shape.seat_width_mm / 2.0, shape.rear_track_mm / 2.0
    half, caster = shape.overall_width_mm / 2.0, shape.caster_track_mm / 2.0
    rear, handle = shape.seat_corner[1], shape.push_handle[1]
    return (
        Dimension("caster_track_mm", (-caster, 0.0), (caster, 0.0), 2 * caster, "casters", "below"),
        Dimension("rear_track_mm", (-track, 0.0), (track, 0.0), 2 * track, "rear track", "below"),
        Dimension("overall_width_mm", (-half, 0.0), (half, 0.0), 2 * half, "overall", "below"),
        Dimension("seat_width_mm", (-seat, rear), (seat, rear), 2 * seat, "seat width", "below"),
        Dimension("seat_to_floor_rear_mm", (-seat, 0.0), (-seat, rear), rear, "seat", "left"),
        Dimension("push_handle_height_mm", (seat, 0.0), (seat, handle), handle, "handles", "right"),
    )


def _description(shape: Shape) -> str:
    left, right = _leans_deg(shape)
    return (
        f"The occupied wheelchair from behind. Seat width {shape.seat_width_mm:.0f} mm, rear track "
        f"{shape.rear_track_mm:.0f} mm, overall width {shape.overall_width_mm:.0f} mm. Centre of "
        f"mass {shape.com[2]:.0f} mm above the floor; from the plumb line it is {left:.1f} degrees "
        f"to the contact of the left and {right:.1f} degrees to that of the right rear wheel."
    )


def _leans_deg(shape: Shape) -> tuple[float, float]:
    """Angles at the centre of mass from the plumb line to the rear wheels' contacts [deg]."""
    _, left, height = shape.com
    half = shape.rear_track_mm / 2.0
    return degrees(atan((half - left) / height)), degrees(atan((half + left) / height))
