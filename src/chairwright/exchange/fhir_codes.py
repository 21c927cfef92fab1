"""Code systems and small building stones of HL7 FHIR R4 (4.0.1).

References
----------
HL7 FHIR R4, body height and body weight profiles: LOINC 8302-2 and 29463-7, UCUM units (read).
HCPCS as the system of a DeviceRequest's code: HL7's own example (read in the R6 ballot; the name
of the element, ``codeCodeableConcept``, is that of R4). SNOMED CT 58938008: a national guide.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from html import escape
from typing import Any
from uuid import NAMESPACE_URL, uuid5

Resource = dict[str, Any]

OURS = "https://chairwright.example/fhir"
"""Our own names; the address is one that nobody can own, and nothing is to be found there."""

CLIENT_REFERENCE = f"{OURS}/client-reference"
ORDER_NUMBER = f"{OURS}/order-number"
MEASURE = f"{OURS}/CodeSystem/measure"
SIDE = f"{OURS}/CodeSystem/side"
METHOD = f"{OURS}/CodeSystem/how-known"
SET_UP = f"{OURS}/CodeSystem/set-up"
CHOICE = f"{OURS}/CodeSystem/choice"
OPTION = f"{OURS}/CodeSystem/option"
DIMENSION = f"{OURS}/CodeSystem/dimension"
PAYER = f"{OURS}/CodeSystem/payer"

LOINC = "http://loinc.org"
UCUM = "http://unitsofmeasure.org"
HCPCS = "http://www.cms.gov/Medicare/Coding/HCPCSReleaseCodeSets"
SNOMED = "http://snomed.info/sct"
CATEGORY = "http://terminology.hl7.org/CodeSystem/observation-category"
DATA_ABSENT = "http://hl7.org/fhir/StructureDefinition/data-absent-reason"

BODY_HEIGHT = "8302-2"
BODY_WEIGHT = "29463-7"
WHEELCHAIR = "58938008"


def concept(system: str, code: str, display: str) -> Resource:
    """A concept with one coding; its text is the display, or the code when that is empty.

    Parameters
    ----------
    system, code, display : str

    Returns
    -------
    dict
    """
    return {"coding": [coding(system, code, display)], "text": display.strip() or code}


def coding(system: str, code: str, display: str) -> Resource:
    """One code of one system, without blanks, as the format asks of codes.

    Parameters
    ----------
    system, code, display : str

    Returns
    -------
    dict
    """
    found = {"system": system, "code": "_".join(code.split())}
    return found | ({"display": display.strip()} if display.strip() else {})


def quantity(value: float, unit: str) -> Resource:
    """A value with its UCUM unit; whole numbers without a point.

    Examples
    --------
    >>> quantity(176.0, "cm")["value"]
    176
    """
    short = round(value, 3)
    whole = int(short) if short == int(short) else short
    return {"value": whole, "unit": unit, "system": UCUM, "code": unit}


def narrative(words: str) -> Resource:
    """What a person reads who sees nothing but the resource's text."""
    div = f'<div xmlns="http://www.w3.org/1999/xhtml">{escape(words)}</div>'
    return {"status": "generated", "div": div}


def identified(resource: Mapping[str, Any]) -> Resource:
    """The resource with an id that follows from its content alone.

    Parameters
    ----------
    resource : mapping
        Without an id.

    Returns
    -------
    dict
        The same content has the same id, on every machine and on every day.
    """
    content = json.dumps(resource, sort_keys=True, ensure_ascii=True)
    name = str(uuid5(NAMESPACE_URL, f"{OURS}/{content}"))
    kind = resource["resourceType"]
    return {"resourceType": kind, "id": name, **resource}


def reference(resource: Mapping[str, Any]) -> Resource:
    """A reference to another resource of the same bundle."""
    return {"reference": full_url(resource)}


def full_url(resource: Mapping[str, Any]) -> str:
    """Where a resource of a bundle is found: its id as a URN."""
    return f"urn:uuid:{resource['id']}"
