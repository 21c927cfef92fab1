"""Take a client's body height and mass from a health record: a bundle of HL7 FHIR R4 (JSON)."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import OK, tell
from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.exchange.fhir_measures import Imported, Seen
    from chairwright.person.client import Client


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright import``."""
    parser.add_argument("bundle", metavar="BUNDLE", help="bundle of HL7 FHIR R4 (JSON)")
    parser.add_argument(
        "--client", metavar="FILE", help="client file that the values are compared with"
    )
    parser.add_argument(
        "--out",
        metavar="FILE",
        type=Path,
        help="write a client file: that of --client with the values of the bundle",
    )
    parser.add_argument("--replace", action="store_true", help="replace FILE when it is there")
    parser.add_argument("--json", action="store_true", help="print one JSON document")


def run(args: argparse.Namespace) -> int:
    """Print what the bundle says of height and mass, and write a client file when asked."""
    _check_out(args)
    from chairwright.exchange.fhir_measures import read_height_and_mass
    from chairwright.files.client import read_client

    client = None if args.client is None else read_client(args.client)
    found = read_height_and_mass(args.bundle)
    if args.json:
        print(json.dumps(_data(found, client), indent=2, allow_nan=False, ensure_ascii=False))
    else:
        print("\n".join(_lines(found, client)))
    if args.out is not None:
        _write(args, found)
    return OK


def _check_out(args: argparse.Namespace) -> None:
    if args.out is None:
        return
    if args.client is None:
        must = "a client file is needed that the values go into"
        raise InputError(Problem("--out", must, "no --client", "Say --client FILE as well."))
    if args.out.exists() and not args.replace:
        remedy = "Say --replace, or choose another name."
        raise InputError(Problem(str(args.out), "the file must not exist yet", "a file", remedy))


def _write(args: argparse.Namespace, found: Imported) -> None:
    from chairwright.exchange.client_text import with_measures
    from chairwright.files.writing import write_file

    write_file(args.out, with_measures(args.client, found.seen), overwrite=args.replace)
    tell([f"wrote {args.out}"])


def _lines(found: Imported, client: Client | None) -> list[str]:
    from chairwright.exchange.fhir_measures import line_of

    lines = ["measures:"]
    lines += [f"  {line_of(each)}  # {_from(each)}{_before(each, client)}" for each in found.seen]
    remarks = [*found.remarks, *_whose(found, client)]
    return [*lines, "", *remarks] if remarks else lines


def _from(each: Seen) -> str:
    day = "day not said" if each.when is None else each.when.text
    return day if each.status == "final" else f"{day}, {each.status}"


def _before(each: Seen, client: Client | None) -> str:
    if client is None:
        return ""
    old = next((one for one in client.measures if one.name == each.measure), None)
    if old is None:
        return "; not in the client file"
    same = old.value == each.quantity.value
    return "; as in the client file" if same else f"; client file: {old.quantity.typed}"


def _whose(found: Imported, client: Client | None) -> list[str]:
    known = ", ".join(found.patients) or "no identifier"
    if client is None:
        return [f"The bundle's patient: {known}."]
    if client.reference in found.patients:
        return []
    return [
        f"The bundle's patient: {known}; the client file: {client.reference}. Make sure that both "
        "are the same person."
    ]


def _data(found: Imported, client: Client | None) -> dict[str, object]:
    rows = [
        {
            "measure": each.measure,
            "value": each.quantity.value,
            "unit": each.quantity.unit,
            "typed": each.quantity.typed,
            "observed": None if each.when is None else each.when.text,
            "status": each.status,
            "where": each.where,
        }
        for each in found.seen
    ]
    return {
        "client": None if client is None else client.reference,
        "patient_identifiers": list(found.patients),
        "measures": rows,
        "remarks": [*found.remarks, *_whose(found, client)],
    }
