"""What was typed, as the texts that the engineering reads; each value comes back to its field."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any

from django import forms

from chairwright_desk.measures.lines import Written, quoted
from chairwright_desk.measures.typed import Alone, tidied, with_unit

Fields = Mapping[str, str]

LENGTHS = {
    "wheelbase": "Wheelbase, rear axle to caster axle",
    "rear_axle_height": "Rear axle above the floor",
    "caster_axle_height": "Caster axle above the floor",
    "rear_track": "Rear track at the floor",
    "caster_track": "Caster track at the floor",
}
PADS = {
    "rear_left": "Rear left",
    "rear_right": "Rear right",
    "caster_left": "Caster left",
    "caster_right": "Caster right",
    "rear": "Both rear wheels",
    "casters": "Both casters",
    "total": "All wheels together",
}
FINE = {"scale_step": ("mass", "Step of the scales' display"),
        "tape": ("length", "How finely the tape is read")}  # fmt: skip
METHODS = {
    "four pads": "four pads, one under each wheel",
    "two pads": "two pads, rear wheels and casters",
    "one axle": "one axle at a time, and all wheels together",
}
_WHERE = re.compile(r"^(?:[^:]+:\d+:\s*)?([A-Za-z_.]+)$")
_KEY = re.compile(r"\b[a-z]+(?:_[a-z]+)+\b")


def scale_readings() -> dict[str, tuple[str, str]]:
    """Every reading of a weighing: field to dimension and label."""
    found = {name: ("length", label) for name, label in LENGTHS.items()}
    found |= FINE
    for state in ("", "empty_"):
        found |= {f"{state}level_{pad}": ("mass", label) for pad, label in PADS.items()}
        found[f"{state}raised_block"] = ("length", "Height of the block")
        found[f"{state}raised_casters"] = ("mass", "Both casters, on the block")
    return found


def united(typed: str, dimension: str, alone: Alone) -> str:
    """A value with its unit written out; empty for nothing.

    Parameters
    ----------
    typed : str
    dimension : {"length", "mass", "angle"}
    alone : {"mm", "cm", "in"}
        What a number alone means.

    Examples
    --------
    >>> united("4,5", "angle", "mm"), united("4 °", "angle", "mm"), united("359", "length", "mm")
    ('4.5 deg', '4 deg', '359 mm')
    """
    if dimension != "angle":
        return with_unit(typed, dimension, alone)
    text = re.sub(r"\s*(°|degrees?|deg)\s*$", "", tidied(typed))
    return f"{text} deg" if text else ""


def scales_text(fields: Fields, reference: str, dated: str, setup: str) -> str:
    """What a scales file would hold.

    Parameters
    ----------
    fields : mapping of str to str
        Readings with their units, ``method``, and ``loads_on`` ("yes" or "no").
    reference, dated, setup : str
        The client's, the day, and the name of the set-up on the pads.
    """
    to = Written()
    to.put(0, "format: chairwright scales 1")
    to.put(0, f"client: {quoted(reference)}")
    to.put(0, f"dated: {quoted(dated)}")
    to.put(0, f"setup: {quoted(setup)}")
    to.put(0, f"loads_on: {'true' if fields.get('loads_on') == 'yes' else 'false'}")
    to.put(0, f"method: {quoted(fields.get('method', ''))}")
    for name in (*LENGTHS, *FINE):
        to.text_of(0, name, fields.get(name, ""))
    _loads(to, fields, "", 0)
    if any(fields.get(f"empty_{n}") for n in (*_names("level"), *_names("raised"))):
        to.put(0, "empty:")
        _loads(to, fields, "empty_", 1)
    return to.text


def _names(state: str) -> list[str]:
    pads = ["block", "casters"] if state == "raised" else list(PADS)
    return [f"{state}_{pad}" for pad in pads]


def _loads(to: Written, fields: Fields, before: str, depth: int) -> None:
    for state in ("level", "raised"):
        names = _names(state)
        if any(fields.get(before + name) for name in names):
            to.put(depth, f"{state}:")
            for name in names:
                key = name.removeprefix(f"{state}_")
                to.text_of(depth + 1, key, fields.get(before + name, ""))


def measured_text(fields: Fields, names: Iterable[str], name: str) -> str:
    """What a measured-chair file would hold.

    Parameters
    ----------
    fields : mapping of str to str
        Readings with their units, and ``foot_supports``.
    names : iterable of str
        Every reading that there can be.
    name : str
        Of the chair.
    """
    to = Written()
    to.put(0, "format: chairwright measured chair 1")
    to.put(0, 'client: "on file"')
    to.put(0, f"name: {quoted(name)}")
    to.put(0, f"foot_supports: {quoted(fields.get('foot_supports', ''))}")
    to.put(0, "measures:")
    for each in names:
        to.text_of(1, each, fields.get(each, ""))
    return to.text


def field_of(where: str) -> str:
    """The form's field that ``scales:14: level.rear_left`` is about; empty for none.

    Examples
    --------
    >>> field_of("scales:14: level.rear_left"), field_of("measured:7: measures.camber")
    ('level_rear_left', 'camber')
    """
    found = _WHERE.match(where)
    return found[1].removeprefix("measures.").replace(".", "_") if found else ""


def problem_words(problem: Any) -> str:
    """A problem of the engineering as a remark beside its field."""
    must = problem.must[:1].upper() + problem.must[1:]
    told = f"{must}; got {problem.got}. {problem.remedy}"
    return _KEY.sub(lambda found: found[0].replace("_", " "), told)


def put_problems(form: forms.Form, problems: Iterable[Any], renamed: Mapping[str, str]) -> None:
    """Put every problem beside its field; what belongs to none, above the form.

    Parameters
    ----------
    form : Form
        Bound.
    problems : iterable of Problem
    renamed : mapping of str to str
        Where a field has another name than its key.
    """
    for problem in problems:
        name = field_of(problem.where)
        name = renamed.get(name, name)
        form.add_error(name if name in form.fields else None, problem_words(problem))
