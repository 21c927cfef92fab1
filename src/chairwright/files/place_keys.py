"""What each kind of place may say in a places file: keys, limits, and what leaving out means.

The limits keep out slips of the pen (working values, common practice, no source).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Any, Literal, get_args

from chairwright.places.kinds import (
    Approach,
    DoorSide,
    DoorUse,
    LiftedBy,
    Rails,
    ReachFrom,
    Surface,
    Swing,
    TransferSide,
    TransferWay,
)
from chairwright.places.model import Building, Limits, Site

Sort = Literal["length", "slope", "force", "mass", "word", "flag"]
UNKNOWN = "not known"


@dataclass(frozen=True)
class PlaceKey:
    """One key of a kind of place.

    Parameters
    ----------
    name : str
        In the file.
    attribute : str
        Of the kind's dataclass.
    sort : {"length", "slope", "force", "mass", "word", "flag"}
    low, high : float [mm, rise by run, N or kg]
        Both ends are allowed.
    words : tuple of str
        Words that may stand; empty for a value.
    left_out : str
        What it means when the key is left out; ``needed`` when it must be given.
    meaning : str
        For people.
    """

    name: str
    attribute: str
    sort: Sort
    low: float
    high: float
    words: tuple[str, ...]
    left_out: str
    meaning: str

    @property
    def needed(self) -> bool:
        """Whether the key must be given."""
        return self.left_out == "needed"

    @property
    def limits(self) -> str:
        """What may stand, in words."""
        if self.sort == "word":
            return ", ".join(f"`{word}`" for word in self.words)
        if self.sort == "flag":
            return "`true`, `false`"
        if self.sort == "slope":
            return f"up to 1:{1 / self.high:g}"
        unit = {"length": "mm", "force": "N", "mass": "kg"}[self.sort]
        return f"{self.low:g} to {self.high:g} {unit}"


def _length(name: str, low: float, high: float, left_out: str, meaning: str) -> PlaceKey:
    return PlaceKey(name, f"{name}_mm", "length", low, high, (), left_out, meaning)


def _slope(name: str, high: float, left_out: str, meaning: str) -> PlaceKey:
    return PlaceKey(name, name, "slope", 0.0, high, (), left_out, meaning)


def _word(name: str, words: Any, left_out: str, meaning: str, attribute: str = "") -> PlaceKey:
    return PlaceKey(name, attribute or name, "word", 0, 0, get_args(words), left_out, meaning)


def _flag(name: str, left_out: str, meaning: str, attribute: str = "") -> PlaceKey:
    return PlaceKey(name, attribute or name, "flag", 0, 0, (), left_out, meaning)


COMMON = (
    _flag("must", "`true`", "`false`: a wish; the chair is not refused when it does not manage it"),
    _word("site", Site, "as at the top of the file", "what is built anew has stricter codes"),
    _word("building", Building, "as at the top of the file", "whose code rows apply"),
)
"""Keys of every place, besides kind, name and reason."""

_HELPED = _flag(
    "carer", "as the client moves", "whether a carer pushes or helps here", attribute="helped"
)
_SURFACE = _word("surface", Surface, "`hard`", "what one rolls on")
_DOOR = (
    _length("clear_width", 300, 3000, "needed", "free width with the door open at 90 degrees"),
    _word("approach", Approach, "`straight`", "head-on, or along a corridor with a quarter turn"),
    _length(
        "corridor_width", 300, 10000, UNKNOWN, "corridor outside, across; needed with `corridor`"
    ),
    _word("approach_side", DoorSide, UNKNOWN, "side from which one comes along the corridor"),
    _word("swing", Swing, "`none`", "what one does to the door; `none` is an opening"),
    _length(
        "depth",
        0,
        20000,
        "with `corridor` its width, else not known",
        "free floor in front, square to the door",
    ),
    _length("latch_space", 0, 5000, UNKNOWN, "free wall beside the opening, latch side"),
    _length("hinge_space", 0, 5000, UNKNOWN, "free wall beside the opening, hinge side"),
    _flag("closer", UNKNOWN, "closes by itself"),
    _flag("latch", UNKNOWN, "latches"),
    _length("recess", 0, 2000, "none", "depth of a recess in which the door stands"),
    _length("opening_depth", 0, 3000, "a usual wall", "depth of the opening"),
    _word("use", DoorUse, "`room`", "what it leads to"),
)
_RAMP = (
    _length("rise", 5, 3000, "from `run` and `slope`", "height; two of rise, run and slope"),
    _length("run", 20, 60000, "from `rise` and `slope`", "horizontal length"),
    _slope("slope", 0.5, "from `rise` and `run`", "running slope"),
    _slope("cross_slope", 0.25, f"{UNKNOWN}, level for the chair", "fall to the side"),
    _SURFACE,
    _length("width", 300, 10000, UNKNOWN, "between the rails, else between the edges"),
    PlaceKey("landings", "landing_length_mm", "length", 0, 20000, (), UNKNOWN,
             "length of the smaller landing"),
    _length("landing_width", 0, 20000, UNKNOWN, "width of the smaller landing"),
    _flag("turns", "`false`", "the way changes its direction on a landing"),
    _word("rails", Rails, UNKNOWN, "handrails"),
    _flag("edges", UNKNOWN, "something keeps a caster on the ramp", "edge_protection"),
    _flag("outside", UNKNOWN, "outdoors"),
    _HELPED,
)  # fmt: skip
_TOP = (
    _length(
        "clear_height", 300, 1500, "needed", "floor to the lowest edge under the top, in front"
    ),
    _length("knee_depth", 0, 2000, UNKNOWN, "free depth just below that edge"),
    _length("foot_depth", 0, 2000, UNKNOWN, "free depth 230 mm (9 in) above the floor"),
    _length("toe_depth", 0, 2000, UNKNOWN, "free depth at the floor"),
    _length("width", 200, 6000, UNKNOWN, "free width between legs or cupboards"),
    _length("top_height", 300, 1600, UNKNOWN, "floor to the upper face"),
    _length("reach_height", 0, 2500, "nothing is reached", "height of what is reached beyond it"),
    _length("reach_over", 0, 1500, UNKNOWN, "depth of what is reached over"),
    _word("reach_from", ReachFrom, "`front`", "how one sits when reaching"),
)
_TRANSFER = (
    _length("height", 150, 1200, "needed", "floor to its top, pressed in as under the person"),
    _word("transfer", TransferWay, "needed", "how the person moves over"),
    _word("side", TransferSide, UNKNOWN, "side of the chair, for a transfer to the side"),
)
KEYS: Mapping[str, tuple[PlaceKey, ...]] = MappingProxyType(
    {
        "door": _DOOR,
        "corridor": (
            _length("width", 300, 10000, "needed", "at its narrowest"),
            _flag("turn_back", "`false`", "the chair must turn round in it"),
            _length("narrow_length", 10, 10000, "the whole corridor", "how long it is so narrow"),
            _SURFACE,
        ),
        "corner": (
            _length("width_in", 300, 10000, "needed", "corridor by which one comes"),
            _length("width_out", 300, 10000, "needed", "corridor by which one leaves"),
        ),
        "room": (
            _length("width", 300, 30000, "needed", "free floor, one way"),
            _length("depth", 300, 30000, "needed", "free floor, the other way"),
        ),
        "ramp": _RAMP,
        "cross_slope": (
            _slope("slope", 0.25, "needed", "fall to the side"),
            _SURFACE,
            _HELPED,
        ),
        "threshold": (
            _length("height", 1, 100, "needed", "height of the low step"),
            _flag("bevelled", UNKNOWN, "its edge slopes 1:2 or less"),
            _flag("at_door", "`true`", "belongs to a doorway"),
            _HELPED,
        ),
        "kerb": (_length("height", 5, 400, "needed", "height of the step"), _HELPED),
        "table": _TOP,
        "basin": _TOP,
        "bed": _TRANSFER,
        "toilet": _TRANSFER,
        "seat": _TRANSFER,
        "car_seat": _TRANSFER,
        "boot": (
            _length("opening_width", 200, 3000, "needed", "opening, across"),
            _length("opening_height", 200, 2500, "needed", "opening, upright"),
            _length("depth", 100, 4000, "needed", "from the opening inwards"),
            _word("lifted_by", LiftedBy, "needed", "who lifts the chair in"),
            _flag("wheels_off", "`true`", "quick-release wheels are taken off first"),
            _length("sill_height", 0, 1500, UNKNOWN, "floor to the edge it is lifted over"),
        ),
        "lift": (
            _length("door_width", 300, 3000, "needed", "free width of its door"),
            _length("width", 300, 4000, "needed", "inside, across"),
            _length("depth", 300, 6000, "needed", "inside, front to back"),
        ),
    }
)  # fmt: skip
"""Keys of each kind, in the order of the reference page."""

CARER = (
    _length("shoulder_height", 900, 1800, UNKNOWN, "floor to shoulder, everyday shoes"),
    _word("limits", Limits, "`women`", "published limits where no own limit is given"),
    PlaceKey("push_start", "push_start_n", "force", 10, 1000, (), "the published limit",
             "own limit to start and stop"),
    PlaceKey("push_keep", "push_keep_n", "force", 5, 800, (), "the published limit",
             "own limit to keep moving"),
    PlaceKey("lift", "lift_kg", "mass", 0.5, 60, (), "the published limit",
             "heaviest piece that they lift"),
)  # fmt: skip
"""Keys under ``carer``."""

OWN = (
    PlaceKey("push", "push_n", "force", 5, 400, (), UNKNOWN,
             "at each hand rim, mean of a stroke, kept up along a ramp"),
    PlaceKey("lift", "lift_kg", "mass", 0.5, 60, (), UNKNOWN, "heaviest piece lifted alone"),
)  # fmt: skip
"""Keys under ``own``."""
