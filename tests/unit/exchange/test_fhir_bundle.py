"""The FHIR bundle: valid by two validators, whole in itself, without a name, without a clock."""

from __future__ import annotations

import copy
import json
from typing import Any

import pytest

from chairwright.cli.payer import assessed
from chairwright.exchange.fhir_bundle import bundle, bundle_text
from chairwright.exchange.fhir_chair import set_up_code
from chairwright.order.payer_result import NO_PROMISE
from chairwright.person.measures import CATALOGUE

from .fhir import Resource, refusals
from .orders import NAMES, hostile_order, opened, order_of


def made(name: str = "avg-001", **more: Any) -> Resource:
    found = opened(name)
    return bundle(order_of(found), found.person.measures, **more)


def resources(whole: Resource, kind: str) -> list[Resource]:
    each = [entry["resource"] for entry in whole["entry"]]
    return [resource for resource in each if resource["resourceType"] == kind]


def observed(whole: Resource, code: str) -> list[Resource]:
    return [
        each
        for each in resources(whole, "Observation")
        if each["code"]["coding"][0]["code"] == code
    ]


@pytest.mark.parametrize("name", NAMES)
def test_every_example_is_valid(name: str) -> None:
    assert refusals(made(name, serial="SN-0001", measured="2026-11-20")) == []


def test_hostile_words_are_valid() -> None:
    whole = bundle(hostile_order(), opened().person.measures)
    assert refusals(whole) == []
    assert json.loads(bundle_text(whole)) == whole


@pytest.mark.parametrize(
    ("kind", "key", "value"),
    [
        ("Observation", "status", "done"),
        ("Observation", "valueQuantity", 176),
        ("DeviceRequest", "subject", None),
        ("DeviceRequest", "productCodeableConcept", {"text": "the name in a later release"}),
        ("Device", "serialNumber", 12),
        ("Patient", "nickname", "nobody"),
    ],
)
def test_the_validators_refuse_what_is_no_r4(kind: str, key: str, value: object) -> None:
    whole = copy.deepcopy(made())
    resource = resources(whole, kind)[0]
    if value is None:
        del resource[key]
    else:
        resource[key] = value
    assert refusals(whole) != []


def test_the_patient_is_an_identifier_and_nothing_else() -> None:
    (patient,) = resources(made(), "Patient")
    assert set(patient) == {"resourceType", "id", "text", "identifier"}
    assert [each["value"] for each in patient["identifier"]] == ["AVG-001"]


def test_the_clients_note_does_not_leave() -> None:
    note = opened().person.client.note
    assert len(note) > 20
    assert note[:20] not in bundle_text(made())


def test_height_and_mass_have_their_codes_and_units() -> None:
    # The average client: 176 cm, 78 kg. LOINC and UCUM: HL7 FHIR R4, vital signs profiles.
    whole = made()
    for code, value, unit in (("8302-2", 176, "cm"), ("29463-7", 78, "kg")):
        (found,) = observed(whole, code)
        assert found["code"]["coding"][0]["system"] == "http://loinc.org"
        assert found["valueQuantity"] == {
            "value": value, "unit": unit, "system": "http://unitsofmeasure.org", "code": unit
        }  # fmt: skip
        assert found["category"][0]["coding"][0]["code"] == "vital-signs"
        assert found["status"] == "final"


def test_other_measures_have_our_own_codes_with_the_standards_term() -> None:
    (hips,) = observed(made(), "hip_width")
    assert hips["code"]["coding"][0]["system"].startswith("https://chairwright.example/")
    assert hips["code"]["text"] == CATALOGUE["hip_width"].term
    assert hips["valueQuantity"]["value"] == 381  # 15 in
    legs = observed(made(), "lower_leg_length")
    assert [each["bodySite"]["text"] for each in legs] == ["left", "right"]
    assert all("bodySite" not in each for each in observed(made(), "hip_width"))


def test_an_estimate_is_marked_as_one() -> None:
    found = opened()
    kinds = {measure.name: measure.estimated for measure in found.person.measures}
    assert set(kinds.values()) == {True, False}
    whole = made(measured="2026-11-20")
    for name, estimated in kinds.items():
        code = {"stature": "8302-2", "body_mass": "29463-7"}.get(name, name)
        for each in observed(whole, code):
            assert each["method"]["text"] == ("estimated" if estimated else "measured")
            assert each["status"] == ("preliminary" if estimated else "final")
            assert ("effectiveDateTime" in each) == (not estimated)
            assert ("Nobody measured this" in each["note"][0]["text"]) == estimated


def test_without_a_day_it_is_said_that_it_is_not_known() -> None:
    (height,) = observed(made(), "8302-2")
    assert "effectiveDateTime" not in height
    assert height["_effectiveDateTime"]["extension"][0]["valueCode"] == "unknown"


def test_days_come_from_the_input_alone() -> None:
    found = opened()
    dated = made()
    assert dated["timestamp"] == "2026-11-25T00:00:00Z"
    assert resources(dated, "DeviceRequest")[0]["authoredOn"] == "2026-11-25"
    plain = bundle(order_of(found, dated=""), found.person.measures)
    assert "timestamp" not in plain
    assert "authoredOn" not in resources(plain, "DeviceRequest")[0]
    assert refusals(plain) == []


def test_the_same_order_gives_the_same_text_and_ids_follow_from_the_content() -> None:
    assert bundle_text(made()) == bundle_text(made())
    first, other = made(), made(serial="SN-2")
    assert first["id"] != other["id"]
    assert resources(first, "Patient") == resources(other, "Patient")
    assert resources(first, "Device")[0]["id"] != resources(other, "Device")[0]["id"]


def test_every_reference_leads_to_an_entry() -> None:
    whole = made()
    urls = [entry["fullUrl"] for entry in whole["entry"]]
    assert len(set(urls)) == len(urls)
    text = json.dumps(whole)
    named = {part.split('"')[0] for part in text.split('"reference": "')[1:]}
    assert named <= set(urls)
    (request,) = resources(whole, "DeviceRequest")
    kinds = {entry["fullUrl"]: entry["resource"] for entry in whole["entry"]}
    support = [kinds[each["reference"]] for each in request["supportingInfo"]]
    assert [each["code"]["coding"][0]["code"] for each in support] == ["8302-2", "29463-7"]


def test_without_a_payers_result_the_code_is_our_own() -> None:
    found = opened()
    (request,) = resources(made(), "DeviceRequest")
    (code,) = request["codeCodeableConcept"]["coding"]
    assert code["system"] == "https://chairwright.example/fhir/CodeSystem/set-up"
    assert code["code"] == set_up_code(order_of(found))
    assert code["code"].startswith("everyday:2026.2:SFL,W24,K3,E8,C6,FL-4,none,L4,NF2,")
    assert NO_PROMISE not in json.dumps(request)


def test_an_unsettled_class_gives_no_base_code() -> None:
    found = opened("hem-004")
    assessment = assessed(found, "us-hcpcs", {})
    settled = [group.settled for group in assessment.groups]
    whole = bundle(order_of(found), found.person.measures, assessment)
    (request,) = resources(whole, "DeviceRequest")
    codes = request["codeCodeableConcept"]["coding"]
    assert len(codes) == 1 + sum(each is not None for each in settled)
    assert NO_PROMISE in {note["text"] for note in request["note"]}
    assert refusals(whole) == []


def test_an_invented_scheme_has_a_system_of_our_own() -> None:
    found = opened()
    assessment = assessed(found, "demo", {})
    settled = [group for group in assessment.groups if group.settled is not None]
    assert settled
    whole = bundle(order_of(found), found.person.measures, assessment)
    (request,) = resources(whole, "DeviceRequest")
    first = request["codeCodeableConcept"]["coding"][0]
    assert first["system"] == "https://chairwright.example/fhir/CodeSystem/payer/demo"


def test_the_device_names_every_option_and_the_serial_number() -> None:
    found = opened()
    (device,) = resources(made(serial="SN-2026-7"), "Device")
    assert device["serialNumber"] == "SN-2026-7"
    options = {
        each["type"]["coding"][0]["code"]: each["valueCode"][0]["coding"][0]["code"]
        for each in device["property"]
    }
    assert options == found.setup.codes
    assert "serialNumber" not in resources(made(), "Device")[0]


def test_the_request_holds_the_ordered_sizes() -> None:
    (request,) = resources(made(), "DeviceRequest")
    sizes = {
        each["code"]["coding"][0]["code"]: each["valueQuantity"] for each in request["parameter"]
    }
    assert sizes["seat_width.width_mm"]["value"] == 400
    assert sizes["seat_width.width_mm"]["code"] == "mm"
    assert sizes["camber.angle_deg"]["value"] == 3
    assert sizes["camber.angle_deg"]["code"] == "deg"
