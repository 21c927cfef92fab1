"""Reading a places file; the format is described in docs/reference/places-file.md."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import MISSING
from dataclasses import fields as dataclass_fields
from pathlib import Path
from typing import Any, cast, get_args

from chairwright.files.fields import Fields, open_file
from chairwright.files.place_checks import check_place
from chairwright.files.place_keys import CARER, COMMON, KEYS, OWN, PlaceKey
from chairwright.files.place_values import read_force, read_length, read_mass, read_slope
from chairwright.places.codes import CODES
from chairwright.places.kinds import KINDS, Boot
from chairwright.places.model import Building, Carer, OwnLimits, Place, Site, Surroundings
from chairwright.reading import FileText, read_yaml
from chairwright.validation import shown, suggest

FORMAT = "chairwright places 1"
REFERENCE = "docs/reference/places-file.md"
LIMIT_BYTES = 200_000
MOST_PLACES = 200
LONGEST_NOTE = 4000
TOP_KEYS = ("format", "reference", "note", "site", "building", "codes", "carer", "own", "places")
_REFERENCE_NUMBER = re.compile(r"(?=.*[0-9])[A-Za-z0-9][A-Za-z0-9._-]{0,39}")
_PRIVATE = "Take it out: a places file holds a reference number, and measures of places."
_HINTS = {
    "client": "Write reference: with the client's number.",
    **dict.fromkeys(("name", "address", "street", "phone", "diagnosis"), _PRIVATE),
}
_OTHER_WORDS = {
    "curb": "kerb", "sink": "basin", "washbasin": "basin", "elevator": "lift", "trunk": "boot",
    "hallway": "corridor", "hall": "corridor", "step": "kerb", "desk": "table", "chair": "seat",
    "armchair": "seat", "car": "car_seat", "cross_fall": "cross_slope", "wc": "toilet",
}  # fmt: skip
_KEY_HINTS = {"width": "clear_width", "gradient": "slope", "length": "run"}
_READERS: dict[str, Callable[[Fields, str, float, float], Any]] = {
    "length": read_length,
    "mass": read_mass,
    "force": read_force,
    "slope": read_slope,
}


def read_places(path: Path | str | FileText) -> Surroundings:
    """Read one places file.

    Parameters
    ----------
    path : Path or str or FileText

    Returns
    -------
    Surroundings
        Lengths in mm, slopes as rise by run, forces in N; every place with its ``file:line``
        and with its values as they were typed.

    Raises
    ------
    InputError
        With every problem of the file, by line.
    """
    fields = open_file(read_yaml(path, LIMIT_BYTES), FORMAT, REFERENCE)
    fields.check_keys(*TOP_KEYS, hints=_HINTS)
    carer = _carer(fields)
    surroundings = Surroundings(
        reference=_reference(fields),
        places=tuple(_places(fields, carer is not None)),
        codes=tuple(_codes(fields)),
        carer=carer,
        own=_own(fields),
        note=fields.text("note", longest=LONGEST_NOTE) or "",
        where={str(key): fields.where(key) for key in fields.data},
    )
    fields.findings.raise_any()
    return surroundings


def _reference(fields: Fields) -> str:
    text = fields.text("reference", example="WR-014", longest=40) or ""
    if text and not _REFERENCE_NUMBER.fullmatch(text):
        must = "reference must be a number such as WR-014 (letters, digits, . _ -), never a name"
        fields.refuse("reference", must, repr(text), "Use the client's number.")
    return text


def _codes(fields: Fields) -> list[str]:
    value = fields.data.get("codes")
    if value is None:
        return []
    words = value if isinstance(value, list) else [value]
    holder = fields.inside("codes", words) if isinstance(value, list) else fields
    found: list[str] = []
    for at, word in enumerate(words):
        key = at if isinstance(value, list) else "codes"
        if not isinstance(word, str) or word not in CODES:
            must = "it must be a code that is held here"
            holder.refuse(key, must, shown(word), suggest(word, CODES))
        elif word in found:
            holder.refuse(key, "each code must stand once", repr(word), "Take one out.")
        else:
            found.append(word)
    return found


def _carer(fields: Fields) -> Carer | None:
    inner = _inside(fields, "carer", CARER, "limits: women or men")
    if inner is None:
        return None
    values = _values(inner, CARER)
    start, keep = values.get("push_start_n"), values.get("push_keep_n")
    if start is not None and keep is not None and keep > start:
        must = "push_keep must not be above push_start"
        inner.refuse("push_keep", must, f"{keep:g} and {start:g} N", "Swap or correct them.")
    return Carer(**values, where={str(key): inner.where(key) for key in inner.data})


def _own(fields: Fields) -> OwnLimits:
    inner = _inside(fields, "own", OWN, "push: 60 N")
    if inner is None:
        return OwnLimits()
    where = {str(key): inner.where(key) for key in inner.data}
    return OwnLimits(**_values(inner, OWN), where=where)


def _inside(fields: Fields, name: str, keys: Iterable[PlaceKey], example: str) -> Fields | None:
    """Keys and values under a top-level key; None when it is not there."""
    if name not in fields.data:
        return None
    if fields.data[name] is None:
        remedy = f"Write {example} under it, or take it out."
        fields.refuse(name, f"{name} must hold keys and values", "nothing", remedy)
    inner = fields.child(name)
    if inner is not None:
        inner.check_keys(*(key.name for key in keys))
    return inner


def _places(fields: Fields, helped: bool) -> list[Place]:
    site = cast(Site, fields.choice("site", get_args(Site), default="existing"))
    building = cast(Building, fields.choice("building", get_args(Building), default="dwelling"))
    entries = fields.children("places")
    if not fields.data.get("places"):
        remedy = "Add places: and under it entries such as - {kind: door, name: ..., ...}."
        fields.refuse("places", "at least one place must be given", "none", remedy)
    if len(entries) > MOST_PLACES:
        must = f"a file must hold at most {MOST_PLACES} places"
        fields.refuse("places", must, str(len(entries)), "Leave out what a chair never meets.")
        return []
    found: list[Place] = []
    taken: set[str] = set()
    for entry in entries:
        place = _place(entry, {"site": site, "building": building})
        _check_name(entry, taken)
        _check_helper(entry, helped)
        if place is not None:
            found.append(place)
    return found


def _place(entry: Fields, usual: dict[str, Any]) -> Place | None:
    kind = _kind(entry)
    if kind is None:
        return None
    keys = (*COMMON, *KEYS[kind])
    names = [key.name for key in keys]
    entry.check_keys("kind", "name", "reason", *names, hints=_hints(names))
    values = _values(entry, keys)
    name = entry.text("name", example="bathroom door", longest=60)
    reason = entry.text("reason", longest=400) or ""
    check_place(kind, entry, values)
    make = KINDS[kind]
    if name is None or not _complete(make, values):
        return None
    common = {"name": name, "reason": reason, "where": entry.where("kind"), **usual}
    return make(**common | values, typed=_typed(entry, keys))


def _hints(names: list[str]) -> dict[str, str]:
    return {word: f"Did you mean {meant}?" for word, meant in _KEY_HINTS.items() if meant in names}


def _kind(entry: Fields) -> str | None:
    word = entry.data.get("kind")
    meant = _OTHER_WORDS.get(word) if isinstance(word, str) else None
    if meant is None:
        return entry.choice("kind", KINDS)
    must = "it must be a kind of place that is known"
    entry.refuse("kind", must, repr(word), f"Did you mean {meant}?")
    return None


def _values(entry: Fields, keys: Iterable[PlaceKey]) -> dict[str, Any]:
    """Read what is there; what is left out keeps the dataclass's own value."""
    found: dict[str, Any] = {}
    for key in keys:
        value = _value(entry, key)
        if value is not None:
            found[key.attribute] = value
    return found


def _value(entry: Fields, key: PlaceKey) -> Any:
    if key.name not in entry.data:
        if key.needed:
            must, remedy = f"{key.name} must be given", f"Add {key.name}: {_example(key)}"
            entry.refuse(key.name, must, "nothing", remedy)
        return None
    if key.sort == "word":
        return entry.choice(key.name, key.words)
    if key.sort == "flag":
        return entry.flag(key.name)
    return _READERS[key.sort](entry, key.name, key.low, key.high)


def _example(key: PlaceKey) -> str:
    if key.sort == "word":
        return " or ".join(key.words)
    return {"length": "82 cm", "slope": "1:12"}[key.sort]


def _complete(make: type[Place], values: dict[str, Any]) -> bool:
    """Whether everything without a value of its own is there (its absence has been noted)."""
    needed = {each.name for each in dataclass_fields(make) if each.default is MISSING}
    return needed - {"name", "typed"} <= set(values)


def _typed(entry: Fields, keys: Iterable[PlaceKey]) -> dict[str, str]:
    source = entry.findings.source
    return {
        key.attribute: source.text_of((*entry.at, key.name)).strip()
        for key in keys
        if entry.has(key.name)
    }


def _check_name(entry: Fields, taken: set[str]) -> None:
    name = str(entry.data.get("name")).strip()
    if entry.has("name") and name in taken:
        must = "each place must have a name of its own"
        entry.refuse("name", must, f"{name!r} a second time", "Add where it is.")
    taken.add(name)


def _check_helper(entry: Fields, helped: bool) -> None:
    """Somebody who pushes or lifts must be described, or their limits are not known."""
    lifted = entry.data.get("kind") == Boot.kind and entry.data.get("lifted_by") == "carer"
    if helped or not (lifted or entry.data.get("carer") is True):
        return
    must = "a carer who helps must be described"
    remedy = "Add carer: at the top of the file, with limits: women or men under it."
    entry.refuse("lifted_by" if lifted else "carer", must, "no carer:", remedy)
