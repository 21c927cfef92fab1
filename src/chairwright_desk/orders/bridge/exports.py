"""An order as files for other programs."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from chairwright.cli.report_order_data import order_data
from chairwright.drawing.plan_view import plan_sheet
from chairwright.drawing.side_view import side_sheet
from chairwright.exchange.cells import whole_text
from chairwright.exchange.csv_text import csv_text
from chairwright.exchange.dxf import dxf_text
from chairwright.exchange.fhir_bundle import bundle, bundle_text
from chairwright.exchange.order_tables import order_tables
from chairwright.exchange.workbook import workbook_bytes
from chairwright.order.payer_result import Assessment
from chairwright_desk.bench.bridge import Units
from chairwright_desk.orders.bridge.worked import Worked

Files = Mapping[str, bytes]
"""Ending of the name (``-parts.csv``, ``.xlsx``) to content."""


@dataclass(frozen=True)
class Export:
    """One kind of file.

    Parameters
    ----------
    words : str
        As the page has it.
    type : str
        Media type of a single file.
    clinical : bool
        Whether it holds what a workshop must not see.
    make : callable
    """

    words: str
    type: str
    clinical: bool
    make: Callable[[Worked, Units, Assessment | None, str], Files]


def _json(worked: Worked, units: Units, payer: Assessment | None, serial: str) -> Files:
    text = json.dumps(order_data(worked.order), indent=2, allow_nan=False, ensure_ascii=False)
    return {".json": f"{whole_text(text)}\n".encode()}


def _csv(worked: Worked, units: Units, payer: Assessment | None, serial: str) -> Files:
    tables = order_tables(worked.order)
    return {f"-{each.name}.csv": csv_text(each, mark=False).encode() for each in tables}


def _parts(worked: Worked, units: Units, payer: Assessment | None, serial: str) -> Files:
    tables = (each for each in order_tables(worked.order) if each.name in WORKSHOP_TABLES)
    return {f"-{each.name}.csv": csv_text(each, mark=False).encode() for each in tables}


def _xlsx(worked: Worked, units: Units, payer: Assessment | None, serial: str) -> Files:
    order, heading = worked.order, worked.order.heading
    title = f"Order {heading.number}, {order.client_reference}"
    digits = order.quote.prices.digits
    return {".xlsx": workbook_bytes(order_tables(order), title, heading.dated, digits)}


def _dxf(worked: Worked, units: Units, payer: Assessment | None, serial: str) -> Files:
    shape = worked.order.setup.shape
    sheets = {"side": side_sheet(shape, units), "plan": plan_sheet(shape, units)}
    return {f"-{view}.dxf": dxf_text(sheet).encode() for view, sheet in sheets.items()}


def _fhir(worked: Worked, units: Units, payer: Assessment | None, serial: str) -> Files:
    whole = bundle(worked.order, worked.person.measures, payer, serial=serial)
    return {".fhir.json": bundle_text(whole).encode()}


WORKSHOP_TABLES = ("parts", "settings", "dimensions", "delivery")
_SHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
EXPORTS: dict[str, Export] = {
    "xlsx": Export("Workbook (XLSX)", _SHEET, clinical=True, make=_xlsx),
    "csv": Export("Tables (CSV)", "text/csv", clinical=True, make=_csv),
    "parts": Export("Parts and sizes (CSV)", "text/csv", clinical=False, make=_parts),
    "dxf": Export("Drawings (DXF)", "image/vnd.dxf", clinical=False, make=_dxf),
    "json": Export("Everything (JSON)", "application/json", clinical=True, make=_json),
    "fhir": Export("HL7 FHIR R4", "application/fhir+json", clinical=True, make=_fhir),
}
"""Every kind by the name in its address; tables and JSON hold why each must is asked."""
