"""What may be said of each kind of place, in the words of the form."""

from __future__ import annotations

import math
from dataclasses import dataclass

from chairwright.files.place_keys import CARER, COMMON, KEYS, OWN, PlaceKey
from chairwright.places.codes import CODES

KIND_WORDS = {
    "door": "Door",
    "corridor": "Corridor",
    "corner": "Corner of two corridors",
    "room": "Room to turn in",
    "ramp": "Ramp",
    "cross_slope": "Way that falls to one side",
    "threshold": "Threshold",
    "kerb": "Kerb",
    "table": "Table",
    "basin": "Basin",
    "bed": "Bed",
    "toilet": "Toilet",
    "seat": "Other seat",
    "car_seat": "Car seat",
    "boot": "Boot of a car",
    "lift": "Passenger lift",
}
CODE_WORDS = tuple((key, f"{code.title}, {code.country}") for key, code in CODES.items())
_OPTIONS = {
    "approach": {"straight": "head-on", "corridor": "along a corridor, with a quarter turn"},
    "approach_side": {"hinge": "the hinge side", "latch": "the latch side"},
    "swing": {
        "push": "is pushed open",
        "pull": "is pulled open",
        "slide": "slides",
        "none": "no door, an opening",
    },
    "use": {"room": "a room", "bath_or_bedroom": "bathroom or bedroom", "entrance": "the entrance"},
    "rails": {"none": "no handrail", "one": "on one side", "both": "on both sides"},
    "transfer": {
        "side": "to the side",
        "front": "forward",
        "standing": "by standing up",
        "hoist": "with a hoist",
    },
    "lifted_by": {"self": "the client", "carer": "the carer"},
    "reach_from": {"front": "facing it", "side": "beside it"},
    "limits": {"women": "published, for women", "men": "published, for men"},
    "site": {"new": "new", "existing": "existing"},
    "building": {"dwelling": "a dwelling", "public": "a public building"},
}
_LABELS = {
    "must": "How much it matters",
    "approach": "One comes",
    "approach_side": "One comes from",
    "swing": "The door",
    "use": "It leads to",
    "closer": "Closes by itself",
    "latch": "It has a latch",
    "turn_back": "The chair must turn round in it",
    "edges": "Edges keep a caster on it",
    "outside": "Outdoors",
    "turns": "Changes direction on a landing",
    "carer": "A carer pushes or helps here",
    "bevelled": "Its edge slopes 1:2 or less",
    "at_door": "Belongs to a doorway",
    "landings": "Landing length",
    "transfer": "The person moves over",
    "side": "Side of the chair",
    "wheels_off": "Wheels are taken off first",
    "lifted_by": "The chair is lifted in by",
    "reach_from": "How one sits when reaching",
    "limits": "Where no own limit is given",
    "push": "Push alone, at each hand rim",
    "lift": "Heaviest piece lifted",
    "push_start": "Push to start and stop",
    "push_keep": "Push to keep moving",
}
_FLAG_OWN = {"must": (("true", "it must be managed"), ("false", "it is a wish"))}
_LEFT_OUT = {
    "as at the top of the file": "see Carer and building",
    "with corridor its width, else not known": "the width of the corridor, else not known",
}
_MEANING = {
    "corridor outside, across; needed with corridor": (
        "width of the corridor outside; needed when one comes along it"
    ),
}
"""What the page says where the file's own words name a key or the file."""
INCH = 25.4
"""Millimetres (exact by definition)."""
_MARKS = str.maketrans("", "", "`")
_SORTS = {"length": "length", "mass": "mass", "force": "force", "slope": "slope"}


@dataclass(frozen=True)
class Key:
    """One field of the form of a place.

    Parameters
    ----------
    name, label, help : str
    sort : {"length", "slope", "force", "mass", "word", "flag"}
    needed : bool
    options : tuple of (str, str)
        Of a word or a flag: value and words; the empty value means left out.
    """

    name: str
    label: str
    help: str
    sort: str
    needed: bool
    options: tuple[tuple[str, str], ...] = ()


def keys_of(kind: str) -> tuple[Key, ...]:
    """Fields of one kind of place, the needed ones first.

    Parameters
    ----------
    kind : str
    """
    made = [_key(each) for each in KEYS[kind]]
    return tuple(sorted(made, key=lambda key: not key.needed))


def common_keys() -> tuple[Key, ...]:
    """Fields of every place."""
    return tuple(_key(each) for each in COMMON)


def carer_keys() -> tuple[Key, ...]:
    """Fields of the carer."""
    return tuple(_key(each) for each in CARER)


def own_keys() -> tuple[Key, ...]:
    """Fields of what the client manages alone."""
    return tuple(_key(each) for each in OWN)


def _key(key: PlaceKey) -> Key:
    label = _LABELS.get(key.name, key.name.replace("_", " ").capitalize())
    return Key(key.name, label, _help(key), key.sort, key.needed, _options(key))


def _help(key: PlaceKey) -> str:
    if key.sort in ("word", "flag"):
        return ""
    told = key.meaning.translate(_MARKS)
    meaning = _MEANING.get(told, told)
    rest = "" if key.needed else f" Without an entry: {_left_out(key)}."
    return f"{meaning[:1].upper()}{meaning[1:]}; {_limits(key)}.{rest}"


def _limits(key: PlaceKey) -> str:
    """What may stand; a length in inches as well, rounded to the inside of the limits."""
    told = key.limits.translate(_MARKS)
    if key.sort != "length":
        return told
    low = math.ceil(key.low / INCH * 10) / 10
    high = math.floor(key.high / INCH * 10) / 10
    return f"{told} ({low:g} to {high:g} in)"


def _left_out(key: PlaceKey) -> str:
    told = key.left_out.translate(_MARKS)
    return _LEFT_OUT.get(told, told)


def _options(key: PlaceKey) -> tuple[tuple[str, str], ...]:
    left = _left_out(key)
    if key.name in _FLAG_OWN:
        return _FLAG_OWN[key.name]
    if key.sort == "flag":
        usual = {"true": "yes", "false": "no"}.get(left, left)
        return (("", f"not said ({usual})"), ("true", "yes"), ("false", "no"))
    if key.sort != "word":
        return ()
    told = _OPTIONS.get(key.name, {})
    words = tuple((word, told.get(word, word)) for word in key.words)
    if key.needed:
        return (("", "choose"), *words)
    left = told.get(left, left)
    return (("", f"not said ({left})"), *words)
