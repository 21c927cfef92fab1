"""Records and interchange: codes and rules as their publishers print them."""

from __future__ import annotations

import csv
import io
from typing import Any

import pytest

from chairwright.cli.opened import Opened, open_setup
from chairwright.cli.payer import assessed
from chairwright.exchange.csv_text import csv_text
from chairwright.exchange.fhir_bundle import bundle
from chairwright.exchange.order_tables import Table
from chairwright.order.order import Heading, make_order
from chairwright.order.price_list import makers_prices
from tests.laws.example_sweeps import SETUPS
from tests.unit.exchange.fhir import refusals

HCPCS = "http://www.cms.gov/Medicare/Coding/HCPCSReleaseCodeSets"


def opened() -> Opened:
    return open_setup(SETUPS / "avg-001.yaml")


def request_with(base: str) -> tuple[dict[str, Any], dict[str, Any]]:
    found = opened()
    order = make_order(Heading("avg-001"), found.person, found.setup, makers_prices(found.line))
    whole = bundle(order, found.person.measures, assessed(found, "us-hcpcs", {"base": base}))
    (request,) = [
        entry["resource"]
        for entry in whole["entry"]
        if entry["resource"]["resourceType"] == "DeviceRequest"
    ]
    return whole, request


@pytest.mark.parametrize("base", ["K0005", "K0004", "K0001"])
def test_a_request_has_the_base_code_in_the_system_of_hcpcs(base: str) -> None:
    # HL7 FHIR: its example of a DeviceRequest codes a wheelchair with HCPCS in this system; the
    # element is codeCodeableConcept in R4 (HL7 FHIR R4, DeviceRequest).
    whole, request = request_with(base)
    first = request["codeCodeableConcept"]["coding"][0]
    assert (first["system"], first["code"]) == (HCPCS, base)
    assert request["intent"] == "order"
    assert "productCodeableConcept" not in request
    assert refusals(whole) == []


@pytest.mark.parametrize(
    ("loinc", "unit"),
    [("8302-2", "cm"), ("29463-7", "kg")],  # HL7 FHIR R4, body height and body weight profiles
)
def test_height_and_weight_have_the_profiles_codes(loinc: str, unit: str) -> None:
    whole, _ = request_with("K0005")
    found = [
        entry["resource"]
        for entry in whole["entry"]
        if {"system": "http://loinc.org", "code": loinc}.items()
        <= entry["resource"].get("code", {}).get("coding", [{}])[0].items()
    ]
    assert len(found) == 1
    assert found[0]["valueQuantity"]["code"] == unit
    assert found[0]["valueQuantity"]["system"] == "http://unitsofmeasure.org"


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\0"])
def test_a_cell_that_begins_like_a_formula_is_escaped(start: str) -> None:
    # OWASP ASVS 5.0.0, 1.2.10: =, +, -, @, tab and NUL at the start of a cell.
    table = Table("some", ("what",), ((f"{start}1+1",),))
    (_, (cell,)) = csv.reader(io.StringIO(csv_text(table), newline=""))
    assert cell == f"'{start}1+1"
