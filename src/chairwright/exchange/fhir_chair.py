"""The chair for a health record: what is asked for, and the thing itself."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.exchange.fhir_codes import (
    CHOICE,
    DIMENSION,
    HCPCS,
    OPTION,
    ORDER_NUMBER,
    PAYER,
    SET_UP,
    SNOMED,
    WHEELCHAIR,
    Resource,
    coding,
    concept,
    identified,
    narrative,
    quantity,
    reference,
)
from chairwright.line.choices import CHOICES
from chairwright.order.order import Order
from chairwright.order.payer_result import NO_PROMISE, Assessment
from chairwright.order.payer_words import class_words

HCPCS_SCHEME = "us-hcpcs"


def set_up_code(order: Order) -> str:
    """Every option code of a set-up with its line and version, in one word.

    Parameters
    ----------
    order : Order

    Returns
    -------
    str
        Such as ``everyday:2026.2:SFL,W24,...`` in the order of the choices; extras after ``+``.
    """
    line = order.setup.line
    codes = ",".join(order.setup.codes[name] for name in CHOICES)
    extras = "".join(f"+{extra.code}" for extra in order.setup.extras)
    return "".join(f"{line.name}:{line.version}:{codes}{extras}".split())


def device(order: Order, subject: Resource, serial: str = "") -> Resource:
    """The chair: its line, every option, and its serial number when it has one.

    Parameters
    ----------
    order : Order
    subject : dict
        The Patient.
    serial : str
        Empty for a chair that is not built yet.

    Returns
    -------
    dict
    """
    line = order.setup.line
    title = line.title or line.name
    found: Resource = {
        "resourceType": "Device",
        "text": narrative(f"Manual wheelchair, {title}, version {line.version}"),
        "manufacturer": line.maker or None,
        "serialNumber": serial or None,
        "deviceName": [{"name": title, "type": "model-name"}],
        "modelNumber": line.name,
        "type": concept(SNOMED, WHEELCHAIR, "Wheelchair"),
        "version": [{"value": line.version}],
        "property": list(_properties(order)),
        "patient": reference(subject),
    }
    return identified({key: value for key, value in found.items() if value is not None})


def _properties(order: Order) -> Iterator[Resource]:
    for name, option in order.setup.options.items():
        yield {
            "type": concept(CHOICE, name, CHOICES[name].label),
            "valueCode": [concept(OPTION, option.code, option.name)],
        }
    for extra in order.setup.extras:
        yield {
            "type": concept(CHOICE, "extras", "Extra"),
            "valueCode": [concept(OPTION, extra.code, extra.name)],
        }


def device_request(
    order: Order,
    subject: Resource,
    support: tuple[Resource, ...] = (),
    found: Assessment | None = None,
) -> Resource:
    """What is asked for: the chair by its base code and its set-up, with the sizes ordered.

    Parameters
    ----------
    order : Order
        One that is not refused.
    subject : dict
        The Patient.
    support : tuple of dict
        Observations that the order rests on.
    found : Assessment or None
        What a payer's scheme says; its settled class gives the base code.

    Returns
    -------
    dict
    """
    request: Resource = {
        "resourceType": "DeviceRequest",
        "text": narrative(f"{_title(order)}: manual wheelchair, {order.setup.line.title}"),
        "identifier": _identifiers(order) or None,
        "status": "active",
        "intent": "order",
        "codeCodeableConcept": _code(order, found),
        "parameter": list(_parameters(order)),
        "subject": reference(subject),
        "authoredOn": order.heading.dated or None,
        "supportingInfo": [reference(each) for each in support] or None,
        "note": [{"text": text} for text in _notes(order, found)],
    }
    return identified({key: value for key, value in request.items() if value is not None})


def _title(order: Order) -> str:
    number = f" {order.heading.number}" if order.heading.number else ""
    return f"Order{number}, revision {order.revision}"


def _identifiers(order: Order) -> list[Resource]:
    number = order.heading.number
    return [{"system": ORDER_NUMBER, "value": f"{number}, revision {order.revision}"}] if (
        number) else []  # fmt: skip


def _code(order: Order, found: Assessment | None) -> Resource:
    codings = [] if found is None else list(_base_codes(found))
    line = order.setup.line
    ours = coding(SET_UP, set_up_code(order), f"{line.title or line.name}, as set up")
    return {"coding": [*codings, ours], "text": "Manual wheelchair"}


def _base_codes(found: Assessment) -> Iterator[Resource]:
    scheme = found.scheme.name
    system = HCPCS if scheme == HCPCS_SCHEME else f"{PAYER}/{scheme}"
    for group in found.groups:
        if group.settled is not None:
            entry = group.settled.entry
            yield coding(system, entry.code, entry.title)


def _parameters(order: Order) -> Iterator[Resource]:
    for each in order.dimensions:
        if each.origin == "ordered":
            yield {
                "code": concept(DIMENSION, each.name, each.label),
                "valueQuantity": quantity(round(each.value, each.digits), each.unit),
            }


def _notes(order: Order, found: Assessment | None) -> Iterator[str]:
    yield f"{_title(order)}; delivery in {order.lead.days} days after the order."
    if found is not None:
        for group in found.groups:
            yield (
                f"{found.scheme.title}, {group.group.title.lower()}: {class_words(group)} "
                f"({found.scheme.edition})."
            )
        yield NO_PROMISE
    for each in order.unmet:
        if each.accepted is not None:
            yield (
                f"{each.figure.label}: what must hold is missed; accepted by {each.accepted.by} "
                f"in revision {each.accepted.revision}: {each.accepted.reason_told}"
            )
