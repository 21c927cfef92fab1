"""What can be off of a place: a door's width, a ramp's slope, and what it does to margins."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import fields, replace
from typing import Any

from chairwright.places.kinds import Kerb, Ramp, Threshold
from chairwright.places.model import Place, Slope
from chairwright.tolerance.model import NO_SOURCE, Input

TAPE_MM = 5.0
STEP_MM = 2.0
RUN_SHARE = 0.02
SLOPE_DEG = 0.3
"""Half widths of a tape in a room, of a rule at a step, of a ramp's length and of a level."""

Moved = tuple[Input, Place, Place]
"""An input, and the place with one standard uncertainty more and less of it."""


def moved_places(place: Place) -> Iterator[Moved]:
    """Each size of a place a little larger and smaller.

    Parameters
    ----------
    place : Place

    Yields
    ------
    tuple of Input, Place and Place
    """
    if isinstance(place, Ramp):
        yield from _moved_ramp(place)
    half = STEP_MM if isinstance(place, Threshold | Kerb) else TAPE_MM
    for each in fields(place):
        value = getattr(place, each.name)
        if isinstance(value, Slope):
            yield _moved(place, each.name, SLOPE_DEG, "deg", _turned)
        elif each.name.endswith("_mm") and value is not None and each.name not in _RAMP:
            yield _moved(place, each.name, half, "mm", lambda size, by: size + by)


_RAMP = ("rise_mm", "run_mm")


def _moved_ramp(ramp: Ramp) -> Iterator[Moved]:
    """A ramp's slope where it was read on a level, else its rise and run."""
    if "slope" in ramp.typed:
        made = _input(ramp, "slope", SLOPE_DEG, "deg")
        ends = (_turned(ramp.slope, sign * made.standard) for sign in (1.0, -1.0))
        more, less = (replace(ramp, rise_mm=ramp.run_mm * end.ratio) for end in ends)
        yield made, more, less
        return
    yield _moved(ramp, "rise_mm", TAPE_MM, "mm", lambda size, by: size + by)
    yield _moved(ramp, "run_mm", RUN_SHARE * ramp.run_mm, "mm", lambda size, by: size + by)


def _moved(
    place: Place, name: str, half: float, unit: str, move: Callable[[Any, float], Any]
) -> Moved:
    made = _input(place, name, half, unit)
    value: Any = getattr(place, name)
    more, less = (
        replace(place, **{name: move(value, sign * made.standard)}) for sign in (1.0, -1.0)
    )
    return made, more, less


def _input(place: Place, name: str, half: float, unit: str) -> Input:
    what = name.removesuffix("_mm").replace("_", " ")
    again = f"Measure again: {what} of {place.name}."
    source = f"tape, rule or level at a place: {NO_SOURCE}"
    return Input(
        f"place.{place.name}.{name}", f"{what}, {place.name}", "place", half, unit, source, again
    )


def _turned(slope: Slope, by_deg: float) -> Slope:
    return Slope(max(math.tan(math.radians(slope.degrees + by_deg)), 0.0), slope.typed)
