"""The client for a health record: a reference without a name, and one observation a measure."""

from __future__ import annotations

from collections.abc import Iterable

from chairwright.exchange.fhir_codes import (
    BODY_HEIGHT,
    BODY_WEIGHT,
    CATEGORY,
    CLIENT_REFERENCE,
    DATA_ABSENT,
    LOINC,
    MEASURE,
    METHOD,
    SIDE,
    Resource,
    concept,
    identified,
    narrative,
    quantity,
    reference,
)
from chairwright.person.client import Measure
from chairwright.person.measures import BODY_MASS, CATALOGUE, STATURE

MM_PER_CM = 10.0
VITAL = {
    STATURE: (BODY_HEIGHT, "Body height"),
    BODY_MASS: (BODY_WEIGHT, "Body weight"),
}
"""Measures with a LOINC code and the name that LOINC has for it; all others have ours."""


def patient(client_reference: str) -> Resource:
    """The client: an identifier and nothing else.

    Parameters
    ----------
    client_reference : str

    Returns
    -------
    dict
    """
    return identified({
        "resourceType": "Patient",
        "text": narrative(f"Client {client_reference}"),
        "identifier": [{"system": CLIENT_REFERENCE, "value": client_reference}],
    })  # fmt: skip


def observations(
    measures: Iterable[Measure], subject: Resource, measured: str = ""
) -> tuple[Resource, ...]:
    """One observation for each measure, estimates among them and marked as such.

    Parameters
    ----------
    measures : iterable of Measure
    subject : dict
        The Patient.
    measured : str
        Day on which they were taken, such as ``2026-11-25``; empty when it is not known.

    Returns
    -------
    tuple of dict
    """
    return tuple(_observation(measure, subject, measured) for measure in measures)


def _observation(measure: Measure, subject: Resource, measured: str) -> Resource:
    vital = measure.name in VITAL
    found: Resource = {
        "resourceType": "Observation",
        "text": narrative(_words(measure)),
        "status": "preliminary" if measure.estimated else "final",
        "category": [_category(vital=vital)],
        "code": _code(measure),
        "subject": reference(subject),
        **_effective(measure, measured),
        "valueQuantity": _value(measure),
        "note": [{"text": _note(measure)}],
        "method": _method(measure),
    }
    if measure.side != "middle":
        found["bodySite"] = concept(SIDE, measure.side, measure.side)
    return identified(found)


def _category(*, vital: bool) -> Resource:
    return concept(CATEGORY, "vital-signs", "Vital Signs") if vital else concept(
        CATEGORY, "exam", "Exam")  # fmt: skip


def _code(measure: Measure) -> Resource:
    kind = CATALOGUE[measure.name]
    if measure.name in VITAL:
        return concept(LOINC, *VITAL[measure.name])
    return concept(MEASURE, measure.name, kind.label) | {"text": kind.term}


def _effective(measure: Measure, measured: str) -> Resource:
    """When it was measured; that this is not known is said in so many words."""
    if measured and not measure.estimated:
        return {"effectiveDateTime": measured}
    absent = "not-applicable" if measure.estimated else "unknown"
    return {"_effectiveDateTime": {"extension": [{"url": DATA_ABSENT, "valueCode": absent}]}}


def _value(measure: Measure) -> Resource:
    if measure.name == STATURE:
        return quantity(measure.value / MM_PER_CM, "cm")
    return quantity(round(measure.value, 1 if measure.estimated else 3), measure.quantity.unit)


def _method(measure: Measure) -> Resource:
    word = "estimated" if measure.estimated else "measured"
    return concept(METHOD, word, word)


def _note(measure: Measure) -> str:
    spread = f"give or take {measure.tolerance:g} {measure.quantity.unit}"
    if measure.estimated:
        return f"Nobody measured this. Estimated, {spread}: {measure.basis}"
    return f"As typed: {measure.quantity.typed}; {spread}."


def _words(measure: Measure) -> str:
    side = "" if measure.side == "middle" else f", {measure.side}"
    digits = 0 if measure.quantity.unit == "mm" else 1
    state = "estimated" if measure.estimated else "measured"
    label = CATALOGUE[measure.name].label
    return f"{label}{side}: {measure.value:.{digits}f} {measure.quantity.unit}, {state}"
