"""The drawings in the sizes that the set-up sheet has room for, at true scale."""

from __future__ import annotations

from numpy.typing import ArrayLike

from chairwright.chair.shape import Shape
from chairwright.drawing.dimensions import Units
from chairwright.drawing.plan_view import plan_sheet
from chairwright.drawing.polar import polar_sheet
from chairwright.drawing.sheet import Page, Sheet
from chairwright.drawing.side_view import side_sheet
from chairwright.drawing.svg import to_svg
from chairwright.papers.payload import Drawing, Drawings

SIDE_ROOM = Page(112.0, 130.0)
PLAN_ROOM = Page(94.0, 120.0)
POLAR_MM = 68.0


def sheet_drawings(
    shape: Shape, directions_deg: ArrayLike, angles_deg: ArrayLike, units: Units = "mm"
) -> Drawings:
    """Draw side view, plan and polar chart for a set-up sheet.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    directions_deg, angles_deg : array_like, shape (n,) [deg]
        Tipping angle by direction, left positive.
    units : {"mm", "in"}

    Returns
    -------
    Drawings
        Each with its words for readers who cannot see it.

    Raises
    ------
    InputError
        When directions and angles do not match.
    """
    return Drawings(
        side=_drawing(side_sheet(shape, units, SIDE_ROOM), "side"),
        plan=_drawing(plan_sheet(shape, units, PLAN_ROOM), "plan"),
        polar=_drawing(polar_sheet(directions_deg, angles_deg, POLAR_MM), "polar"),
    )


def _drawing(sheet: Sheet, prefix: str) -> Drawing:
    words = f"{sheet.title}. {sheet.description}"
    return Drawing(to_svg(sheet, prefix), words, sheet.width_mm)
