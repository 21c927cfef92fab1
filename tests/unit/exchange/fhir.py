"""The two validators of FHIR, and small bundles as other programs write them."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

from fhir.resources.R4B.bundle import Bundle
from jsonschema import Draft6Validator
from pydantic import ValidationError

Resource = dict[str, Any]

DATA = Path(__file__).parent / "data"
UCUM = "http://unitsofmeasure.org"
LOINC = "http://loinc.org"
HEIGHT, MASS = "8302-2", "29463-7"


@cache
def r4_schema() -> Draft6Validator:
    """HL7's own JSON schema of R4 (4.0.1)."""
    schema = json.loads((DATA / "fhir-r4.schema.json").read_text("utf-8"))
    Draft6Validator.check_schema(schema)
    return Draft6Validator(schema)


def refusals(bundle: Resource) -> list[str]:
    """What the schema of R4 and the model classes of R4B have against a bundle."""
    found = [error.message for error in r4_schema().iter_errors(bundle)]
    try:
        Bundle.model_validate(bundle)
    except ValidationError as error:
        found.append(str(error))
    return found


def observation(
    code: str, value: object, unit: str, when: str | None = "2026-03-01", **more: Any
) -> Resource:
    found: Resource = {
        "resourceType": "Observation",
        "status": "final",
        "code": {"coding": [{"system": LOINC, "code": code}]},
        "subject": {"reference": "Patient/p1"},
        "valueQuantity": {"value": value, "unit": unit, "system": UCUM, "code": unit},
    }
    if when is not None:
        found["effectiveDateTime"] = when
    return found | more


def bundle_of(*resources: Resource) -> Resource:
    patient = {"resourceType": "Patient", "id": "p1", "identifier": [{"value": "H-2211"}]}
    entries = [{"resource": each} for each in (patient, *resources)]
    return {"resourceType": "Bundle", "type": "searchset", "entry": entries}


def written(folder: Path, content: object, name: str = "bundle.json") -> Path:
    path = folder / name
    text = content if isinstance(content, str) else json.dumps(content)
    path.write_text(text, encoding="utf-8")
    return path
