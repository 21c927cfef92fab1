"""What a set-up looks like: side view, plan, rear view and tipping chart as SVG text."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.drawing.compose import View
from chairwright.drawing.plan_view import seen_from_above
from chairwright.drawing.polar import polar_sheet
from chairwright.drawing.rear_view import seen_from_behind
from chairwright.drawing.sheet import Sheet
from chairwright.drawing.side_view import seen_from_side
from chairwright.drawing.svg import to_svg
from chairwright.drawing.window import Rows, windowed
from chairwright_desk.bench.bridge.opened import State, Units

SCALE = 15.0
"""One scale for the three views, so that they can be read beside each other."""

SIDE_ROWS, PLAN_ROWS, REAR_ROWS = Rows(1, 3, 3), Rows(3, 0, 2), Rows(1, 1, 4)


@dataclass(frozen=True)
class Picture:
    """One drawing.

    Parameters
    ----------
    name, words : str
        Title and description, as they stand in the drawing too.
    svg : str
        Safe to be put into a page: it is made here, of numbers and of known words.
    """

    name: str
    words: str
    svg: str


@dataclass(frozen=True)
class Pictures:
    """The views of one set-up at one scale, and its tipping chart."""

    side: Picture
    plan: Picture
    rear: Picture
    polar: Picture


def pictures_of(state: State, units: Units, prefix: str = "") -> Pictures | None:
    """Draw a set-up.

    Parameters
    ----------
    state : State
    units : {"mm", "in"}
        ``"in"`` adds inches after the millimetres.
    prefix : str
        Start of every id, where several set-ups stand on one page.

    Returns
    -------
    Pictures or None
        None when there is no such chair.
    """
    setup = state.setup
    if setup is None:
        return None
    shape = setup.shape
    return Pictures(
        side=_drawn(seen_from_side(shape, SCALE), units, SIDE_ROWS, f"{prefix}side"),
        plan=_drawn(seen_from_above(shape, SCALE, units), units, PLAN_ROWS, f"{prefix}plan"),
        rear=_drawn(seen_from_behind(shape, SCALE), units, REAR_ROWS, f"{prefix}rear"),
        polar=picture(polar_sheet(setup.directions_deg, setup.angles_deg), f"{prefix}polar"),
    )


def _drawn(view: View, units: Units, rows: Rows, prefix: str) -> Picture:
    return picture(windowed(view, SCALE, units, rows), prefix)


def picture(sheet: Sheet, prefix: str) -> Picture:
    """A sheet as a picture.

    Parameters
    ----------
    sheet : Sheet
    prefix : str
        Start of every id.
    """
    return Picture(sheet.title, sheet.description, to_svg(sheet, prefix, screen=True))
