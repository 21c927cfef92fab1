"""Body height and mass from a bundle of HL7 FHIR R4: the newest of each that can be relied on."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from chairwright.errors import InputError, Problem
from chairwright.exchange.fhir_codes import BODY_HEIGHT, BODY_WEIGHT, LOINC, METHOD
from chairwright.exchange.fhir_dates import Stretch, stretch
from chairwright.exchange.fhir_patients import one_patient
from chairwright.exchange.fhir_reading import Found, read_bundle
from chairwright.exchange.fhir_values import quantity_of
from chairwright.person.client import Measure
from chairwright.person.measures import BODY_MASS, STATURE, check_limits
from chairwright.units import Quantity

CODES = {
    STATURE: (BODY_HEIGHT, "3137-7", "8306-3", "8308-9"),
    BODY_MASS: (BODY_WEIGHT,),
}
"""LOINC: body height, measured, lying, standing; body weight."""

NAMES = {STATURE: "body height", BODY_MASS: "body mass"}
TAKEN = ("final", "amended", "corrected", "preliminary")
"""Statuses of an observation that can be relied on; the rest is left out and told."""


@dataclass(frozen=True)
class Seen:
    """One observation that was taken.

    Parameters
    ----------
    measure : str
        ``stature`` or ``body_mass``.
    quantity : Quantity
        In mm or kg; as a client file writes it beside that.
    when : Stretch or None
        None when the bundle does not say.
    where : str
    status : str
    """

    measure: str
    quantity: Quantity
    when: Stretch | None
    where: str
    status: str


@dataclass(frozen=True)
class Imported:
    """What a bundle says of height and mass.

    Parameters
    ----------
    seen : tuple of Seen
        Height, then mass; what the bundle does not have is left out.
    patients : tuple of str
        Identifiers of the one patient that it is about.
    remarks : tuple of str
        What was left out, and why.
    """

    seen: tuple[Seen, ...]
    patients: tuple[str, ...]
    remarks: tuple[str, ...]


def read_height_and_mass(path: Path | str) -> Imported:
    """Read body height and mass from a bundle.

    Parameters
    ----------
    path : Path or str

    Returns
    -------
    Imported
        At least one of the two.

    Raises
    ------
    InputError
        When the file is no bundle, is about several patients or has neither height nor mass;
        when the newest has no value, a unit that is not known or a value that no adult can have;
        when it cannot be told which of several values is the newest.
    """
    found = read_bundle(path)
    remarks: list[str] = []
    by_measure = {name: list(_relied_on(found, name, remarks)) for name in CODES}
    every = [each for group in by_measure.values() for each in group]
    if not every:
        raise InputError(_nothing(path, remarks))
    patients = one_patient(found, every)
    seen: list[Seen] = []
    problems: list[Problem] = []
    for name, group in by_measure.items():
        try:
            if group:
                seen.append(_newest(name, group, remarks))
        except InputError as error:
            problems += error.problems
    if problems:
        raise InputError(*problems)
    remarks += [f"The bundle has no {NAMES[name]}." for name, group in by_measure.items()
                if not group]  # fmt: skip
    return Imported(tuple(seen), patients, tuple(remarks))


def _nothing(path: Path | str, remarks: Sequence[str]) -> Problem:
    must = f"the bundle must have a body height (LOINC {BODY_HEIGHT}) or mass ({BODY_WEIGHT})"
    got = " ".join(remarks) if remarks else "neither"
    return Problem(str(path), must, got.rstrip("."), "Measure the client, or export it again.")


def _relied_on(found: Sequence[Found], name: str, remarks: list[str]) -> Iterator[Found]:
    for each in found:
        data = each.data
        if data["resourceType"] != "Observation" or not _codes(data) & set(CODES[name]):
            continue
        status = data.get("status")
        if status not in TAKEN:
            remarks.append(f"{each.where}: {NAMES[name]} left out, its status is {status!s:.40}.")
        elif "estimated" in _codings(data.get("method"), METHOD):
            remarks.append(f"{each.where}: {NAMES[name]} left out, it is an estimate.")
        else:
            yield each


def _codes(data: dict[str, Any]) -> set[str]:
    return _codings(data.get("code"), LOINC)


def _codings(concept: object, system: str) -> set[str]:
    listed = concept.get("coding") if isinstance(concept, dict) else None
    return {
        str(each.get("code"))
        for each in (listed if isinstance(listed, list) else [])
        if isinstance(each, dict) and each.get("system") == system
    }


def _when(each: Found) -> Stretch | None:
    data, period = each.data, each.data.get("effectivePeriod")
    written = {name: data.get(name) for name in ("effectiveDateTime", "effectiveInstant")}
    if isinstance(period, dict):
        written |= {f"effectivePeriod.{end}": period.get(end) for end in ("end", "start")}
    for name, text in written.items():
        at = stretch(text)
        if at is not None:
            return at
        if text is not None:
            must = "a day must be written as FHIR writes it, such as 2026-11-25"
            raise InputError(Problem(f"{each.where}.{name}", must, f"{text!r:.60}",
                                     "Export it again."))  # fmt: skip
    return None


def _newest(name: str, group: Sequence[Found], remarks: list[str]) -> Seen:
    """The one that is later than all others for sure; those of the same value may be as late."""
    dated = [(each, _when(each)) for each in group]
    first, when = max(dated, key=lambda pair: -1 if pair[1] is None else pair[1].starts)
    chosen = _read(name, first, when)
    rest = [(each, at) for each, at in dated if each is not first]
    for other, at in rest:
        if at is not None and when is not None and when.after(at):
            continue
        if at is None and when is not None:
            continue
        if _read(name, other, at).quantity.value != chosen.quantity.value:
            raise InputError(_unclear(name, first, when, other, at))
    if rest:
        day = "not dated" if when is None else f"of {when.text}"
        remarks.append(f"{len(group)} values of {NAMES[name]}: the newest is taken, {day}.")
    return chosen


def _unclear(
    name: str, first: Found, when: Stretch | None, other: Found, at: Stretch | None
) -> Problem:
    days = [each.text if each else "no day" for each in (when, at)]
    must = f"it must be clear which {NAMES[name]} is the newest"
    got = f"{days[0]} here and {days[1]} at {other.where.partition(': ')[2]}, with another value"
    return Problem(first.where, must, got, "Export only the newest, or measure once more.")


def _read(name: str, each: Found, when: Stretch | None) -> Seen:
    quantity = quantity_of(each, "length" if name == STATURE else "mass")
    problem = check_limits(Measure(name, "middle", quantity, 0.0, where=_value_at(each)))
    if problem is not None:
        raise InputError(problem)
    return Seen(name, quantity, when, each.where, str(each.data["status"]))


def _value_at(each: Found) -> str:
    return f"{each.where}.valueQuantity"


def line_of(seen: Seen) -> str:
    """A measure as it stands in a client file.

    Examples
    --------
    >>> line_of(Seen("stature", Quantity(1760.0, "176 cm", "length"), None, "", "final"))
    'stature: 176 cm'
    """
    return f"{seen.measure}: {seen.quantity.typed}"
