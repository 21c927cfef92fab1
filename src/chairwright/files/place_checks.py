"""What one place of a places file says against itself."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from chairwright.files.fields import Fields
from chairwright.places.model import Slope

Values = dict[str, Any]
STEEPEST = 0.5


def check_place(kind: str, entry: Fields, values: Values) -> None:
    """Note contradictions of one place and settle what follows from the rest.

    Parameters
    ----------
    kind : str
        Word of the kind.
    entry : Fields
        The place in the file.
    values : dict
        Attribute to value, as far as it could be read; changed in place.
    """
    _CHECKS.get(kind, _nothing)(entry, values)


def _nothing(entry: Fields, values: Values) -> None:
    """Most kinds cannot contradict themselves."""


def _door(entry: Fields, values: Values) -> None:
    corridor = values.get("approach", "straight") == "corridor"
    if corridor and not entry.has("corridor_width"):
        must = "corridor_width must be given where one comes along a corridor"
        entry.refuse("approach", must, "none", "Add corridor_width: or write approach: straight.")
    if entry.has("approach_side") and not corridor:
        must = "approach_side must stand only with approach: corridor"
        entry.refuse("approach_side", must, "approach: straight", "Take it out.")
    if values.get("swing", "none") != "none":
        return
    for key in ("closer", "latch"):
        if values.get(key):
            must = f"an opening without a door must have no {key}"
            entry.refuse(key, must, "true", "Write swing: push, pull or slide, or take it out.")


def _ramp(entry: Fields, values: Values) -> None:
    given = [key for key in ("rise", "run", "slope") if key in entry.data]
    slope = values.pop("slope", None)
    if len(given) != 2:
        must = "a ramp must have two of rise, run and slope"
        remedy = "Add one of them." if len(given) < 2 else "Take one out."
        entry.refuse(given[-1] if given else "kind", must, " and ".join(given) or "none", remedy)
        return
    rise, run = values.get("rise_mm"), values.get("run_mm")
    if isinstance(slope, Slope):
        _from_slope(entry, values, slope)
    elif rise is not None and run is not None and rise > STEEPEST * run:
        must = f"a ramp must not be steeper than 1:{1 / STEEPEST:g}"
        entry.refuse("run", must, f"rise {rise:g} mm on {run:g} mm", "Check both numbers.")


def _from_slope(entry: Fields, values: Values, slope: Slope) -> None:
    if slope.ratio == 0:
        entry.refuse("slope", "a ramp must rise", slope.typed, "Write a slope such as 1:12.")
    elif values.get("rise_mm") is not None:
        values["run_mm"] = values["rise_mm"] / slope.ratio
    elif values.get("run_mm") is not None:
        values["rise_mm"] = values["run_mm"] * slope.ratio


def _top(entry: Fields, values: Values) -> None:
    top, clear = values.get("top_height_mm"), values.get("clear_height_mm")
    if top is not None and clear is not None and top < clear:
        must = "top_height must not be below clear_height"
        got = f"{top:g} and {clear:g} mm"
        entry.refuse("top_height", must, got, "Swap or correct them.")
    if entry.has("reach_over") and not entry.has("reach_height"):
        must = "reach_height must be given with reach_over"
        entry.refuse("reach_over", must, "none", "Add reach_height: or take reach_over out.")


def _transfer(entry: Fields, values: Values) -> None:
    way = values.get("transfer")
    if entry.has("side") and way is not None and way != "side":
        must = "side must stand only with transfer: side"
        entry.refuse("side", must, f"transfer: {way}", "Take side out, or write transfer: side.")


def _lift(entry: Fields, values: Values) -> None:
    door, width, depth = (values.get(f"{key}_mm") for key in ("door_width", "width", "depth"))
    if door is not None and width is not None and depth is not None and door > max(width, depth):
        must = "the door must not be wider than the lift"
        got = f"{door:g} mm in a lift of {width:g} by {depth:g} mm"
        entry.refuse("door_width", must, got, "Correct one of them.")


_CHECKS: dict[str, Callable[[Fields, Values], None]] = {
    "door": _door,
    "ramp": _ramp,
    "table": _top,
    "basin": _top,
    "bed": _transfer,
    "toilet": _transfer,
    "seat": _transfer,
    "car_seat": _transfer,
    "lift": _lift,
}
