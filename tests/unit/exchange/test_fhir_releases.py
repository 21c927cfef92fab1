"""R4 against R4B: for what is written here the two releases have the same elements.

The schema is HL7's of R4 (4.0.1); the model classes are of R4B (4.3.0). The schema does not look
at the type of a complex value, the classes not at lists of codes: a bundle has to pass both.
"""

from __future__ import annotations

from importlib import import_module

import pytest

from .fhir import r4_schema

WRITTEN = (
    "Bundle", "Bundle_Entry", "Patient", "Observation", "Device", "Device_DeviceName",
    "Device_Property", "Device_Version", "DeviceRequest", "DeviceRequest_Parameter", "Annotation",
    "CodeableConcept", "Coding", "Identifier", "Narrative", "Quantity", "Reference",
)  # fmt: skip


def elements_of_r4b(name: str) -> set[str]:
    module = import_module(f"fhir.resources.R4B.{name.partition('_')[0].lower()}")
    return set(getattr(module, name.replace("_", "")).elements_sequence())


@pytest.mark.parametrize("name", WRITTEN)
def test_a_type_has_the_same_elements_in_both_releases(name: str) -> None:
    properties = r4_schema().schema["definitions"][name]["properties"]
    r4 = {key for key in properties if not key.startswith("_")} - {"resourceType"}
    assert r4 == elements_of_r4b(name)


def test_an_extension_has_only_more_types_in_r4b() -> None:
    properties = r4_schema().schema["definitions"]["Extension"]["properties"]
    r4 = {key for key in properties if not key.startswith("_")}
    # The two types that R4B has over R4; what is written here is valueCode.
    assert elements_of_r4b("Extension") - r4 == {"valueCodeableReference", "valueRatioRange"}
    assert "valueCode" in r4


@pytest.mark.parametrize("name", ["Patient", "Observation", "Device", "DeviceRequest", "Bundle"])
def test_the_schema_knows_no_other_elements(name: str) -> None:
    definition = r4_schema().schema["definitions"][name]
    assert definition["additionalProperties"] is False
