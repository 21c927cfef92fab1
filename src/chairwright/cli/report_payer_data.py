"""What a payer's scheme says of a set-up, as data for JSON."""

from __future__ import annotations

from typing import Any

from chairwright.order.payer_logic import Step
from chairwright.order.payer_model import Backing, Scheme
from chairwright.order.payer_result import (
    NO_PROMISE,
    Assessment,
    GroupResult,
    Judged,
    LineResult,
)
from chairwright.order.payer_values import Known, Value
from chairwright.order.payer_words import TRUTH, class_words


def payer_data(found: Assessment, reference: str, line: str) -> dict[str, Any]:
    """Everything that a scheme says of one set-up.

    Parameters
    ----------
    found : Assessment
    reference : str
        The client's.
    line : str

    Returns
    -------
    dict
        Numbers of facts are text, as printed: they are exact decimals.
    """
    return {
        "notice": NO_PROMISE,
        "client": reference,
        "line": line,
        "scheme": _scheme(found.scheme),
        "classes": [_group(group) for group in found.groups],
        "lines": [_line(result) for result in found.lines],
        "not_covered": [each.entry.code for each in found.not_covered],
        "missing_facts": [
            {
                "name": each.name,
                "ask": found.scheme.asked[each.name].ask,
                "kind": found.scheme.asked[each.name].kind,
                "unit": found.scheme.asked[each.name].unit,
                "words": found.scheme.asked[each.name].words,
                "decides": list(each.decides),
            }
            for each in found.missing
        ],
        "facts": {
            name: _fact(known, found.scheme.asked[name].unit) for name, known in found.facts.items()
        },
        "documents": [{"title": each.title, **_backing(each.backing)} for each in found.documents],
    }


def _scheme(scheme: Scheme) -> dict[str, Any]:
    return {
        "name": scheme.name,
        "title": scheme.title,
        "payer": scheme.payer,
        "country": scheme.country,
        "edition": scheme.edition,
        "dated": scheme.dated,
        "note": scheme.note,
        "sources": {
            key: {
                "citation": each.citation,
                "certainty": each.certainty,
                "dated": each.dated,
                "note": each.note,
            }
            for key, each in scheme.sources.items()
        },
    }


def _group(group: GroupResult) -> dict[str, Any]:
    settled = group.settled
    return {
        "name": group.group.name,
        "title": group.group.title,
        "class": None if settled is None else settled.entry.code,
        "words": class_words(group),
        "declared": group.declared or None,
        "possible": [each.entry.code for each in group.possible],
        "tests": [_judged(each) for each in group.classes],
    }


def _judged(each: Judged) -> dict[str, Any]:
    return {
        "code": each.entry.code,
        "title": each.entry.title,
        "chair": TRUTH[each.truth],
        "client": None if each.covered is None else TRUTH[each.covered.truth],
        "both": TRUTH[each.met],
        "overtaken_by": list(each.overtaken_by),
        "remark": each.remark,
        "note": each.entry.note,
        "where": each.entry.where,
        **_backing(each.entry.backing),
        "chair_path": None if each.fits is None else _step(each.fits),
        "client_path": None if each.covered is None else _step(each.covered),
    }


def _line(result: LineResult) -> dict[str, Any]:
    return {
        "line": result.line.line,
        "part": result.line.part,
        "name": result.line.name,
        "standing": result.standing,
        "codes": [
            {"pieces": result.quantity[each.entry.code], **_judged(each)} for each in result.codes
        ],
    }


def _fact(known: Known, unit: str) -> dict[str, Any]:
    return {"value": _value(known.value), "unit": unit, "how": known.how, "words": known.words}


def _value(value: Value) -> Any:
    if isinstance(value, bool):
        return value
    return list(value) if isinstance(value, tuple) else str(value)


def _step(step: Step) -> dict[str, Any]:
    found: dict[str, Any] = {"kind": step.kind, "verdict": TRUTH[step.truth]}
    words = {"label": step.label, "value": step.value, "wanted": step.wanted}
    found |= {key: text for key, text in (*words.items(), ("because", step.because)) if text}
    if step.backing is not None:
        found |= _backing(step.backing)
    if step.missing:
        found["missing"] = list(step.missing)
    if step.inside:
        found["tests"] = [_step(each) for each in step.inside]
    return found


def _backing(backing: Backing) -> dict[str, str]:
    return {"source": backing.source.key, "certainty": backing.certainty}
