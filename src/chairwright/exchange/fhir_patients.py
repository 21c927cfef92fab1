"""Whom a bundle is about: one patient, or it is refused."""

from __future__ import annotations

from collections.abc import Sequence

from chairwright.errors import InputError, Problem
from chairwright.exchange.fhir_reading import Found


def one_patient(found: Sequence[Found], observed: Sequence[Found]) -> tuple[str, ...]:
    """Make sure that some observations are about one and the same patient.

    Parameters
    ----------
    found : sequence of Found
        Every resource of the bundle.
    observed : sequence of Found
        The observations; at least one.

    Returns
    -------
    tuple of str
        Identifiers of the patient, as far as the bundle has them.

    Raises
    ------
    InputError
        When they name several patients.
    """
    names = _names(found)
    subjects = {_subject(each, names): each for each in reversed(observed)}
    if len(subjects) > 1:
        one, other, *_ = subjects
        must = "height and mass in the bundle must be of one patient"
        got = f"{len(subjects)}, such as {one[:60]!r} and {other[:60]!r}"
        where = f"{observed[0].where}.subject"
        raise InputError(Problem(where, must, got, "Export the bundle of one client."))
    (subject,) = subjects
    patient = next((each for each in found if _is(each, subject)), None)
    return () if patient is None else tuple(_identifiers(patient))


def _names(found: Sequence[Found]) -> dict[str, str]:
    """Each way to refer to a patient of the bundle, and the one that stands for all."""
    names = {}
    for each in found:
        if each.data["resourceType"] == "Patient":
            own = f"Patient/{each.data.get('id', '')}"
            names[own] = own
            if each.url:
                names[each.url] = own
    return names


def _subject(each: Found, names: dict[str, str]) -> str:
    subject = each.data.get("subject")
    if not isinstance(subject, dict):
        return ""
    written = subject.get("reference")
    if isinstance(written, str):
        return names.get(written, written)
    identifier = subject.get("identifier")
    return str(identifier.get("value", "")) if isinstance(identifier, dict) else ""


def _is(each: Found, subject: str) -> bool:
    data = each.data
    return data["resourceType"] == "Patient" and f"Patient/{data.get('id', '')}" == subject


def _identifiers(patient: Found) -> list[str]:
    listed = patient.data.get("identifier")
    return [
        str(each["value"])[:80]
        for each in (listed if isinstance(listed, list) else [])
        if isinstance(each, dict) and isinstance(each.get("value"), str)
    ]
