"""The drawing that goes with a kind of place, if there is one."""

from __future__ import annotations

from chairwright.drawing.dimensions import Units
from chairwright.drawing.place_corner import corner_sheet
from chairwright.drawing.place_cross import cross_slope_sheet
from chairwright.drawing.place_door import door_sheet
from chairwright.drawing.place_ramp import ramp_sheet
from chairwright.drawing.sheet import A5_PORTRAIT, Page, Sheet
from chairwright.fitting.described import Described
from chairwright.places.kinds import Corner, CrossSlope, Door, Ramp
from chairwright.places.model import Place


def place_sheet(
    setup: Described,
    place: Place,
    *,
    moves: bool = False,
    units: Units = "mm",
    page: Page = A5_PORTRAIT,
) -> Sheet | None:
    """Draw a set-up in a place.

    Parameters
    ----------
    setup : Described
    place : Place
    moves : bool
        Whether moves to and fro are looked for where one turn is not enough; about a second each.
    units : {"mm", "in"}
    page : Page
        Largest sheet [mm].

    Returns
    -------
    Sheet or None
        None for a kind of place that has no drawing.
    """
    shape, spreads = setup.shape, setup.spreads
    if isinstance(place, Corner):
        return corner_sheet(shape, place, moves=moves, units=units, page=page)
    if isinstance(place, Door):
        return door_sheet(shape, place, moves=moves, units=units, page=page)
    if isinstance(place, Ramp):
        return ramp_sheet(shape, place, facing="worse", spreads=spreads, units=units, page=page)
    if isinstance(place, CrossSlope):
        return cross_slope_sheet(
            shape, place, falls="worse", spreads=spreads, units=units, page=page
        )
    return None
