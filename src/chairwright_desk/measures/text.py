"""The text of a client file, from what the desk holds of a client."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field

from chairwright_desk.measures.bridge import LIMBS, Kind, has_share, kinds, lost_fields
from chairwright_desk.measures.lines import Written, quoted
from chairwright_desk.measures.typed import with_unit

Fields = Mapping[str, str]
MOST_ROWS = 12
"""Most loads, settled choices and expected ranges that a form has rows for."""


@dataclass(frozen=True)
class Parts:
    """Everything typed about one client.

    Parameters
    ----------
    reference : str
    body : mapping of str to str
        The newest set of measures: sex, age, lost limbs and every measure.
    abilities : mapping of str to str
        How the client moves, loads, wishes, what is expected, the note.
    rule_set : str
        Empty for the usual one.
    targets : tuple of mapping
        Own targets: figure, at_least, at_most, must, weight, reason; ``key`` names it.
    weights : mapping of str to str
        Figure to weight.
    """

    reference: str
    body: Fields
    abilities: Fields = field(default_factory=dict)
    rule_set: str = ""
    targets: tuple[Fields, ...] = ()
    weights: Fields = field(default_factory=dict)


def can_be_seated(body: Fields) -> bool:
    """Whether enough is measured for everything else to be estimated."""
    tall = body.get("stature") or body.get("sitting_height")
    return bool(body.get("sex") and body.get("body_mass") and tall)


def safe_reference(reference: str) -> str:
    """Return a reference number as a client file may hold it."""
    kept = re.sub(r"[^A-Za-z0-9._-]+", "-", reference).strip("-._")[:38] or "CLIENT"
    return kept if any(each.isdigit() for each in kept) else f"{kept}-0"


def written(parts: Parts) -> Written:
    """Write the client file.

    Parameters
    ----------
    parts : Parts

    Returns
    -------
    Written
        Measures of a lost part are left out, and ranges of what is not measured.
    """
    to, body, able = Written(), parts.body, parts.abilities
    to.put(0, "format: chairwright client 1")
    to.put(0, f"reference: {quoted(safe_reference(parts.reference))}", "reference")
    to.text_of(0, "sex", body.get("sex", ""), "sex")
    to.number_of(0, "age", body.get("age", ""), "age")
    to.text_of(0, "note", able.get("note", ""), "note")
    to.text_of(0, "propulsion", able.get("propulsion", ""), "propulsion")
    to.text_of(0, "rule_set", parts.rule_set, "rule_set")
    to.number_of(0, "leg_mass_factor", body.get("leg_mass_factor", ""), "leg_mass_factor")
    measured = _measures(to, body)
    _limbs(to, body)
    _carries(to, able)
    _targets(to, parts)
    _choices(to, able)
    _expected(to, able, measured)
    return to


def body_written(body: Fields) -> Written:
    """Write the body alone, for estimates: nothing else of the client can be against it.

    Parameters
    ----------
    body : mapping of str to str
    """
    sex = body.get("sex") or "female"
    return written(Parts("X-1", {**body, "sex": sex}, {"propulsion": "carer"}))


def _measures(to: Written, body: Fields) -> set[str]:
    lost, started, found = lost_fields(body), False, set()
    for kind in kinds().values():
        given = [(side, name) for side, name in kind.fields if body.get(name) and name not in lost]
        if not given:
            continue
        if not started:
            to.put(0, "measures:", "measures")
            started = True
        found.add(kind.name)
        _measure(to, kind, given, body)
    return found


def _measure(to: Written, kind: Kind, given: list[tuple[str, str]], body: Fields) -> None:
    to.put(1, f"{kind.name}:", given[0][1])
    for side, name in given:
        to.text_of(2, side or "value", body[name], name)
    spread = f"{kind.name}_give"
    to.text_of(2, "tolerance", body.get(spread, ""), spread)


def _limbs(to: Written, body: Fields) -> None:
    lost = [limb for limb in LIMBS if body.get(limb)]
    if lost:
        to.put(0, "amputations:")
    for limb in lost:
        to.put(1, "-", limb)
        to.text_of(2, "side", limb.partition("_")[0], limb)
        to.text_of(2, "level", body[limb], limb)
        if has_share(body[limb]):
            to.number_of(2, "residual", body.get(f"{limb}_share", ""), f"{limb}_share")


def _rows(able: Fields, start: str, keys: tuple[str, ...]) -> list[int]:
    return [at for at in range(MOST_ROWS) if any(able.get(f"{start}_{k}_{at}") for k in keys)]


def _carries(to: Written, able: Fields) -> None:
    rows = _rows(able, "load", ("name", "mass"))
    if rows:
        to.put(0, "carries:")
    for at in rows:
        to.put(1, "-", f"load_name_{at}")
        for key in ("name", "mass", "place"):
            to.text_of(2, key, able.get(f"load_{key}_{at}", ""), f"load_{key}_{at}")


def _targets(to: Written, parts: Parts) -> None:
    if parts.targets:
        to.put(0, "targets:")
    for each in parts.targets:
        key = f"target:{each['key']}"
        to.put(1, "-", key)
        to.text_of(2, "figure", each["figure"], key)
        to.end_of(2, "at_least", each.get("at_least", ""), f"{key}:at_least")
        to.end_of(2, "at_most", each.get("at_most", ""), f"{key}:at_most")
        to.put(2, f"must: {'true' if each.get('must') else 'false'}", key)
        to.number_of(2, "weight", each.get("weight", ""), f"{key}:weight")
        to.text_of(2, "reason", each.get("reason", ""), f"{key}:reason")
    if parts.weights:
        to.put(0, "weights:")
    for figure, weight in parts.weights.items():
        to.number_of(1, figure, weight, f"weight:{figure}")


def _choices(to: Written, able: Fields) -> None:
    rows = _rows(able, "settled", ("choice", "codes"))
    if rows:
        to.put(0, "choices:")
    for at in rows:
        codes = able.get(f"settled_codes_{at}", "").replace(",", " ").split()
        listed = ", ".join(quoted(code) for code in codes)
        choice = able.get(f"settled_choice_{at}") or "-"
        to.put(1, f"{quoted(choice)}: [{listed}]", f"settled_codes_{at}")
    extras = able.get("extras", "").replace(",", " ").split()
    if extras:
        to.put(0, "extras: [" + ", ".join(quoted(code) for code in extras) + "]", "extras")


def _expected(to: Written, able: Fields, measured: set[str]) -> None:
    rows = [
        at
        for at in _rows(able, "range", ("measure", "least", "most"))
        if not able.get(f"range_measure_{at}") or able[f"range_measure_{at}"] in measured
    ]
    if not rows and not able.get("over_years") and not able.get("expected_reason"):
        return
    to.put(0, "expected:", "expected_reason")
    to.number_of(1, "over_years", able.get("over_years", ""), "over_years")
    for at in rows:
        name = able.get(f"range_measure_{at}") or "-"
        ends = ", ".join(quoted(able.get(f"range_{end}_{at}", "")) for end in ("least", "most"))
        to.put(1, f"{quoted(name)}: [{ends}]", f"range_least_{at}")
    to.text_of(1, "reason", able.get("expected_reason", ""), "expected_reason")


def units_written(fields: Fields, alone: str) -> dict[str, str]:
    """Return the fields of a form with the unit of every number written out, empty ones left out.

    Parameters
    ----------
    fields : mapping of str to str
    alone : str
        What a number alone means.
    """
    known = kinds()
    told = {}
    for name, typed in fields.items():
        kind = known.get(_measure_of(name, fields))
        text = typed.strip()
        if kind is not None:
            text = with_unit(text, kind.dimension, alone)
        elif name.startswith("load_mass_"):
            text = with_unit(text, "mass", alone)
        if text:
            told[name] = text
    return told


def _measure_of(name: str, fields: Fields) -> str:
    for ending in ("_give", "_left", "_right"):
        if name.removesuffix(ending) in kinds():
            return name.removesuffix(ending)
    if name.startswith(("range_least_", "range_most_")):
        return fields.get(f"range_measure_{name.rpartition('_')[2]}", "")
    return name
