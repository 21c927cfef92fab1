"""Write a set-up or an order for other programs: JSON, CSV, XLSX, DXF, or HL7 FHIR R4.

One file for json, xlsx and fhir; a folder of files for csv and dxf. An order that is refused is
not written; its drawings are.
"""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.ordering import (
    acceptances_of,
    add_order_arguments,
    asked_of,
    check_free,
    order_of,
    tell_refused,
)
from chairwright.cli.report import BAD_INPUT, OK, tell
from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.cli.opened import Opened
    from chairwright.drawing.dimensions import Units
    from chairwright.order.order import Order
    from chairwright.order.payer_result import Assessment

FOLDERS = ("csv", "dxf")
ONLY_WITH = {
    "byte_order_mark": ("csv",),
    "units": ("dxf",),
    "scheme": ("fhir",),
    "facts": ("fhir",),
    "serial": ("fhir",),
    "measured": ("fhir",),
}
LONGEST_SERIAL = 80


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright export``."""
    add_order_arguments(parser)
    parser.add_argument(
        "--to", choices=("json", "csv", "xlsx", "dxf", "fhir"), required=True, help="what to write"
    )
    parser.add_argument(
        "--out", metavar="PATH", type=Path, required=True,
        help="the file to write; for csv and dxf the folder of the files",
    )  # fmt: skip
    parser.add_argument("--replace", action="store_true", help="replace files that are there")
    parser.add_argument(
        "--byte-order-mark", action="store_true",
        help="csv: begin with the mark by which some spreadsheet programs know UTF-8",
    )  # fmt: skip
    parser.add_argument("--units", choices=("mm", "in"), help="dxf: in adds inches to dimensions")
    parser.add_argument(
        "--scheme", metavar="NAME|FILE", help="fhir: payer's scheme that gives the base code"
    )
    parser.add_argument(
        "--fact", metavar="NAME=VALUE", dest="facts", nargs="+", action="extend",
        help="fhir: facts that the scheme asks for, as with chairwright payer",
    )  # fmt: skip
    parser.add_argument("--serial", metavar="TEXT", help="fhir: serial number of the chair")
    parser.add_argument(
        "--measured", metavar="DAY", help="fhir: day on which the client was measured"
    )


def run(args: argparse.Namespace) -> int:
    """Write the files; exit code 2 when the order is refused."""
    said = acceptances_of(args)
    _check(args)
    asked = asked_of(args)
    order = order_of(args, asked, said)
    if order.refused and args.to != "dxf":
        tell_refused(order, args.out)
        return BAD_INPUT
    files = _contents(order, asked.opened, args)
    check_free(files, replace=args.replace)
    from chairwright.files.writing import write_file

    for path, content in files.items():
        write_file(path, content, overwrite=args.replace)
        tell([f"wrote {path}"])
    return OK


def _check(args: argparse.Namespace) -> None:
    """Everything that is wrong with the arguments alone."""
    from chairwright.files.order_fields import is_date

    problems = []
    for name, formats in ONLY_WITH.items():
        if getattr(args, name) and args.to not in formats:
            option = "--fact" if name == "facts" else f"--{name.replace('_', '-')}"
            must = f"it goes with --to {formats[0]}"
            problems.append(Problem(option, must, f"--to {args.to}", "Leave it out."))
    if args.facts and not args.scheme:
        remedy = "Say --scheme us-hcpcs as well."
        problems.append(Problem("--fact", "a scheme must be named", "no --scheme", remedy))
    serial = args.serial or ""
    if serial and not (serial.strip() and serial.isprintable() and len(serial) <= LONGEST_SERIAL):
        must = f"a serial number must be one line of 1 to {LONGEST_SERIAL} characters"
        problems.append(Problem("--serial", must, f"{len(serial)}", "Shorten it."))
    if args.measured and not is_date(args.measured):
        must = "it must be a day of the calendar as year-month-day"
        problems.append(Problem("--measured", must, repr(args.measured), "Like 2026-11-25."))
    wrong = args.out.is_dir() if args.to not in FOLDERS else args.out.is_file()
    if wrong:
        kinds = ("a folder", "a file") if args.to in FOLDERS else ("a file", "a folder")
        must = f"--to {args.to} needs {kinds[0]}"
        problems.append(Problem(str(args.out), must, kinds[1], "Choose another name."))
    if problems:
        raise InputError(*problems)


def _contents(order: Order, opened: Opened, args: argparse.Namespace) -> dict[Path, str | bytes]:
    match args.to:
        case "csv":
            return _csv(order, args.out, mark=args.byte_order_mark)
        case "dxf":
            return _dxf(order, args)
        case "xlsx":
            return {args.out: _xlsx(order)}
        case "fhir":
            return {args.out: _fhir(order, opened, args)}
    from chairwright.cli.report_order_data import order_data
    from chairwright.exchange.cells import whole_text

    text = json.dumps(order_data(order), indent=2, allow_nan=False, ensure_ascii=False)
    return {args.out: whole_text(text) + "\n"}


def _csv(order: Order, folder: Path, *, mark: bool) -> dict[Path, str | bytes]:
    from chairwright.exchange.csv_text import csv_text
    from chairwright.exchange.order_tables import order_tables

    return {
        folder / f"{order.heading.name}-{table.name}.csv": csv_text(table, mark=mark)
        for table in order_tables(order)
    }


def _xlsx(order: Order) -> bytes:
    from chairwright.exchange.order_tables import order_tables
    from chairwright.exchange.workbook import workbook_bytes

    heading, digits = order.heading, order.quote.prices.digits
    title = f"Order {heading.number}".strip() + f", {order.client_reference}"
    return workbook_bytes(order_tables(order), title, heading.dated, digits)


def _dxf(order: Order, args: argparse.Namespace) -> dict[Path, str | bytes]:
    from chairwright.drawing.plan_view import plan_sheet
    from chairwright.drawing.side_view import side_sheet
    from chairwright.exchange.dxf import dxf_text

    shape = order.setup.shape
    units: Units = "in" if args.units == "in" else "mm"
    sheets = {"side": side_sheet(shape, units), "plan": plan_sheet(shape, units)}
    name = order.heading.name
    return {args.out / f"{name}-{view}.dxf": dxf_text(sheet) for view, sheet in sheets.items()}


def _fhir(order: Order, opened: Opened, args: argparse.Namespace) -> str:
    from chairwright.exchange.fhir_bundle import bundle, bundle_text

    found = None
    if args.scheme:
        from chairwright.cli.payer import assessed, told_by

        found = assessed(opened, args.scheme, told_by(args.facts or ()))
        _tell_unsettled(found)
    serial, measured = args.serial or "", args.measured or ""
    measures = opened.person.measures
    return bundle_text(bundle(order, measures, found, serial=serial, measured=measured))


def _tell_unsettled(found: Assessment) -> None:
    for group in found.groups:
        if group.settled is None:
            codes = " or ".join(each.entry.code for each in group.possible) or "no class at all"
            tell([
                f"{group.group.title}: not settled ({codes}), so no code of it is written; "
                f"'chairwright payer' asks for what is missing."
            ])  # fmt: skip
