"""The text of a places file, from what the desk holds of a client."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from chairwright_desk.measures.lines import Written, key_at, quoted
from chairwright_desk.measures.text import safe_reference
from chairwright_desk.measures.typed import with_unit
from chairwright_desk.surroundings.bridge import (
    KIND_WORDS,
    Key,
    carer_keys,
    common_keys,
    keys_of,
    own_keys,
)

Fields = Mapping[str, str]


def written(reference: str, around: Fields, spots: Iterable[tuple[str, str, Fields]]) -> Written:
    """Write a places file.

    Parameters
    ----------
    reference : str
    around : mapping of str to str
        What holds for every place.
    spots : iterable of (kind, name, fields)
    """
    to = Written()
    to.put(0, "format: chairwright places 1")
    to.put(0, f"reference: {quoted(safe_reference(reference))}", "reference")
    for name in ("note", "site", "building"):
        to.text_of(0, name, around.get(name, ""), name)
    codes = around.get("codes", "").split()
    if codes:
        to.put(0, "codes: [" + ", ".join(quoted(code) for code in codes) + "]", "codes")
    _carer(to, around)
    _under(to, "own", own_keys(), around)
    for at, (kind, name, fields) in enumerate(spots):
        if at == 0:
            to.put(0, "places:", "places")
        to.put(1, "-", "kind")
        to.text_of(2, "kind", kind, "kind")
        to.text_of(2, "name", name, "name")
        to.text_of(2, "reason", fields.get("reason", ""), "reason")
        for key in (*common_keys(), *keys_of(kind)):
            _value(to, 2, key, fields.get(key.name, ""), key.name)
    return to


def _carer(to: Written, around: Fields) -> None:
    """A carer who is only named has the published limits."""
    if around.get("helper") == "yes":
        to.put(0, "carer:", "helper")
        to.text_of(1, "limits", around.get("carer_limits") or "women", "carer_limits")
        for key in carer_keys():
            if key.name != "limits":
                _value(to, 1, key, around.get(f"carer_{key.name}", ""), f"carer_{key.name}")


def _under(to: Written, name: str, keys: Iterable[Key], around: Fields) -> None:
    given = [key for key in keys if around.get(f"{name}_{key.name}")]
    if given:
        to.put(0, f"{name}:", name)
    for key in given:
        _value(to, 1, key, around[f"{name}_{key.name}"], f"{name}_{key.name}")


def _value(to: Written, depth: int, key: Key, value: str, name: str) -> None:
    if key.sort == "flag":
        if value in ("true", "false"):
            to.put(depth, f"{key.name}: {value}", name)
        return
    to.text_of(depth, key.name, value, name)


def field_at(to: Written, where: str) -> str:
    """Return the field that ``places:12: places.clear_width`` is about; empty for none.

    Parameters
    ----------
    to : Written
        The text that holds only one place.
    where : str
    """
    key = key_at(where)
    found = to.field_at(where)
    return key if found == "kind" and key and key not in KIND_WORDS else found


def units_written(
    keys: Iterable[Key], fields: Fields, alone: str, before: str = ""
) -> dict[str, str]:
    """Return what was typed with the unit of every number written out, empty ones left out.

    Parameters
    ----------
    keys : iterable of Key
    fields : mapping of str to str
    alone : str
        What a number alone means.
    before : str
        Start of the fields' names.
    """
    told = {}
    for key in keys:
        typed = fields.get(before + key.name, "").strip()
        if typed and key.sort in ("length", "mass", "force"):
            typed = with_unit(typed, key.sort, alone)
        if typed:
            told[before + key.name] = typed
    return told
