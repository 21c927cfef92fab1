"""Judge a chair as it was measured, and what a proposed set-up would change for its client."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.one_sheet import PAPERS, add_sheet_arguments, sheet_path
from chairwright.cli.report import OK, tell
from chairwright.cli.weighed import add_scales_argument, weighed_client
from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.files.measured import MeasuredFile
    from chairwright.fitting.person import Person
    from chairwright.fitting.weighed import WeighedClient
    from chairwright.measured.slips import Doubt
    from chairwright.papers.measured_words import Judgement, Proposed

SHEET = "measured-chair-sheet.pdf"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright measured``."""
    parser.add_argument("measured", metavar="FILE", help="measured-chair file (YAML)")
    parser.add_argument(
        "--setup", metavar="PROPOSED", help="set-up file: what the client would gain from it"
    )
    add_scales_argument(parser)
    add_sheet_arguments(parser, "measured-chair sheet (PDF)")
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )


def run(args: argparse.Namespace) -> int:
    """Print what is said of the measured chair, and write the sheet when a folder is named."""
    from chairwright.cli.report_measured import measured_text
    from chairwright.cli.report_measured_data import measured_data
    from chairwright.files.measured import read_measured

    found = _judged(read_measured(args.measured), args.setup, weighed_client(args.scales))
    path = sheet_path(args, found.person.client.reference, SHEET)
    if path is not None:
        _write(found, path, args)
    if args.json:
        print(json.dumps(measured_data(found), indent=2, allow_nan=False))
    else:
        print(measured_text(found, args.units))
    tell([] if path is None else [f"wrote {path}"])
    return OK


def _write(found: Judgement, path: Path, args: argparse.Namespace) -> None:
    from chairwright.files.writing import write_file
    from chairwright.papers.pack.measured_sheet import measured_sheet_pdf

    sheet = measured_sheet_pdf(found, PAPERS[args.paper], args.units)
    write_file(path, sheet, overwrite=args.replace)


def _judged(file: MeasuredFile, proposed: str | None, weighed: WeighedClient | None) -> Judgement:
    from chairwright.files.client import read_client
    from chairwright.fitting.person import read_person
    from chairwright.measured.stands import stands
    from chairwright.papers.measured_words import Judgement

    if not file.client_path.exists():
        must = "the measured chair's client file must be there"
        remedy = "Correct the path; it counts from the measured chair's own folder."
        got = f"no such file as {file.client_path}"
        raise InputError(Problem(f"{file.where['client']}: client", must, got, remedy))
    person = read_person(read_client(file.client_path), None, weighed)
    doubt = _checked(file, person)
    found = stands(
        file.values,
        file.tolerances,
        file.foot_supports,
        person.occupant,
        person.targets,
        name=file.name,
    )
    beside = None if proposed is None else _proposed(proposed, file, person)
    return Judgement(file, person, doubt, found, beside)


def _checked(file: MeasuredFile, person: Person) -> Doubt:
    """Look for slips; refuse a chair that cannot stand as measured, naming the likely slip."""
    from chairwright.measured.slips import check, outside_tolerances
    from chairwright.measured.stands import model_ahead, why_not
    from chairwright.papers.measured_words import doubt_lines

    more = outside_tolerances(
        person.occupant.load_kg, model_ahead(file.values, file.foot_supports, person.occupant)
    )
    doubt = check(file.readings, more)
    reason = why_not(file.values, file.foot_supports, person.occupant)
    if reason:
        named = doubt.named
        where = str(file.path) if named is None else named.reading.where
        remedy = " ".join(doubt_lines(doubt)) or "Measure seat heights, wheels and wheelbase again."
        must = "the measured chair must be one that stands on its wheels"
        raise InputError(Problem(where, must, reason, remedy))
    return doubt


def _proposed(path: str, file: MeasuredFile, person: Person) -> Proposed:
    from chairwright.cli.opened import open_setup
    from chairwright.fitting.compare import same_person
    from chairwright.papers.measured_words import Proposed

    opened = open_setup(path, weighed=person.weighed)
    if not same_person(opened.person.client, person.client):
        where = f"{opened.file.where['client']}: client"
        must = f"the set-up must be for the client of {file.path}, {person.client.reference}"
        got = f"{opened.person.client.reference}, or other measures or targets"
        raise InputError(Problem(where, must, got, "Name one client file in both."))
    return Proposed(opened.name, opened.setup)
