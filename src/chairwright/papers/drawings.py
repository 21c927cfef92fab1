"""The drawings in the sizes that the set-up sheet has room for, at true scale."""

from __future__ import annotations

from numpy.typing import ArrayLike

from chairwright.chair.shape import Shape
from chairwright.drawing.plan_view import plan_sheet
from chairwright.drawing.polar import polar_sheet
from chairwright.drawing.sheet import Page, Sheet
from chairwright.drawing.side_view import side_sheet
from chairwright.drawing.svg import to_svg
from chairwright.papers.payload import Drawing, Drawings

SIDE_WIDTH_MM = 109.5
PLAN_WIDTH_MM = 67.5
HIGHEST_MM = 118.0
POLAR_MM = 62.0


def sheet_drawings(
    shape: Shape,
    directions_deg: ArrayLike,
    angles_deg: ArrayLike,
    highest_mm: float = HIGHEST_MM,
) -> Drawings:
    """Draw side view, plan and polar chart for a set-up sheet.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    directions_deg, angles_deg : array_like, shape (n,) [deg]
        Tipping angle by direction, left positive.
    highest_mm : float [mm]
        Room on paper for the side view, which stands beside the plan.

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
        side=_drawing(side_sheet(shape, page=Page(SIDE_WIDTH_MM, highest_mm)), "side"),
        plan=_drawing(plan_sheet(shape, page=Page(PLAN_WIDTH_MM, highest_mm)), "plan"),
        polar=_drawing(polar_sheet(directions_deg, angles_deg, POLAR_MM), "polar"),
    )


def _drawing(sheet: Sheet, prefix: str) -> Drawing:
    words = f"{sheet.title}. {sheet.description}"
    return Drawing(to_svg(sheet, prefix), words, sheet.width_mm)
