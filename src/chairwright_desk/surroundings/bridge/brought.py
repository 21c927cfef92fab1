"""Places out of a places file."""

from __future__ import annotations

from typing import Any

from chairwright.errors import InputError
from chairwright.places.model import Place
from chairwright_desk.surroundings.bridge.keys import carer_keys, common_keys, keys_of, own_keys
from chairwright_desk.surroundings.bridge.read import places_in

Spots = list[tuple[str, str, dict[str, str]]]
_NAMES = {"landing_length_mm": "landings", "edge_protection": "edges", "helped": "carer"}


def places_brought(raw: bytes) -> tuple[dict[str, str], Spots, list[str]]:
    """Read a places file.

    Parameters
    ----------
    raw : bytes

    Returns
    -------
    around : dict of str to str
        What holds for every place.
    spots : list of (kind, name, fields)
    troubles : list of str
        Why it cannot be taken; everything else is empty then.
    """
    try:
        found = places_in(raw.decode("utf-8-sig"))
    except UnicodeDecodeError:
        return {}, [], ["The file must be text in UTF-8. Save it so and send it again."]
    except InputError as error:
        return {}, [], [str(each) for each in error.problems]
    around = {"note": found.note, "codes": " ".join(found.codes)}
    if found.carer is not None:
        around |= {"helper": "yes", **_limits(found.carer, "carer_", carer_keys())}
    around |= _limits(found.own, "own_", own_keys())
    spots = [(place.kind, place.name, _fields(place)) for place in found.places]
    return {name: value for name, value in around.items() if value}, spots, []


_UNITS = {"length": ("_mm", "mm"), "mass": ("_kg", "kg"), "force": ("_n", "N")}


def _limits(held: Any, before: str, keys: Any) -> dict[str, str]:
    told = {}
    for key in keys:
        ending, unit = _UNITS.get(key.sort, ("", ""))
        value = getattr(held, f"{key.name}{ending}", None)
        if value is not None:
            told[before + key.name] = f"{value:.10g} {unit}" if unit else str(value)
    return told


def _fields(place: Place) -> dict[str, str]:
    known = {key.name for key in (*keys_of(place.kind), *common_keys())}
    told = {}
    for attribute, typed in place.typed.items():
        name = _NAMES.get(attribute, attribute.removesuffix("_mm"))
        if name in known and typed:
            told[name] = typed
    for name in ("site", "building"):
        told.setdefault(name, getattr(place, name))
    return told | ({"reason": place.reason} if place.reason else {})
