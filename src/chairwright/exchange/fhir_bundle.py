"""A collection of resources of HL7 FHIR R4 for one order: who, what was measured, what is asked."""

from __future__ import annotations

import json

from chairwright.exchange.cells import whole_text
from chairwright.exchange.fhir_chair import device, device_request
from chairwright.exchange.fhir_codes import Resource, full_url, identified
from chairwright.exchange.fhir_person import VITAL, observations, patient
from chairwright.order.order import Order
from chairwright.order.payer_result import Assessment
from chairwright.person.estimates import MeasureSet


def bundle(
    order: Order,
    measures: MeasureSet,
    found: Assessment | None = None,
    *,
    serial: str = "",
    measured: str = "",
) -> Resource:
    """Put one order and its client into a bundle.

    Parameters
    ----------
    order : Order
        One that is not refused.
    measures : MeasureSet
        Of the client.
    found : Assessment or None
        What a payer's scheme says of the set-up.
    serial : str
        Of the chair, when it has one.
    measured : str
        Day on which the client was measured, such as ``2026-11-25``; empty when not known.

    Returns
    -------
    dict
        ``Bundle`` of the type collection: Patient, Observations, Device, DeviceRequest. Its
        timestamp is the order's day at midnight UTC; without a day it has none.
    """
    subject = patient(order.client_reference)
    seen = observations(measures, subject, measured)
    vital = tuple(
        each for each, measure in zip(seen, measures, strict=True) if measure.name in VITAL
    )
    chair = device(order, subject, serial)
    request = device_request(order, subject, vital, found)
    whole: Resource = {"resourceType": "Bundle", "type": "collection"}
    if order.heading.dated:
        whole["timestamp"] = f"{order.heading.dated}T00:00:00Z"
    whole["entry"] = [
        {"fullUrl": full_url(each), "resource": each} for each in (subject, *seen, chair, request)
    ]
    return identified(whole)


def bundle_text(whole: Resource) -> str:
    """A bundle as JSON text.

    Parameters
    ----------
    whole : dict

    Returns
    -------
    str
        Indented, UTF-8, with a line feed at its end; the same bundle gives the same text.
    """
    return whole_text(json.dumps(whole, indent=2, ensure_ascii=False, allow_nan=False)) + "\n"
