"""Show every figure of one set-up, with what is asked of it."""

from __future__ import annotations

import argparse
import json

from chairwright.errors import InputError, Problem
from chairwright.files.client import read_client
from chairwright.files.setup import SetupFile, read_setup
from chairwright.line.load import load_line
from chairwright.person.client import Client


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright figures``."""
    parser.add_argument("setup", metavar="SETUP", help="set-up file (YAML)")
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )


def run(args: argparse.Namespace) -> int:
    """Print the figures of one set-up."""
    setup = read_setup(args.setup)
    client, line = _client(setup), load_line(setup.line)
    from chairwright.cli.report_json import figures_data
    from chairwright.cli.report_setup import setup_sections
    from chairwright.fitting.described import describe
    from chairwright.fitting.fit import read_person
    from chairwright.fitting.setup import check_setup, index_of
    from chairwright.papers.cautions import PURPOSE
    from chairwright.papers.words import wrapped

    index = index_of(setup, line)
    person = read_person(client)
    check_setup(setup, line, person.occupant, index)
    described = describe(line, person.occupant, index, person.targets)
    if args.json:
        print(json.dumps(figures_data(described), indent=2, allow_nan=False))
        return 0
    head = f"{client.reference}: {line.title}, version {line.version}"
    sections = [head, *setup_sections(described, args.units, every=True), wrapped(PURPOSE)]
    print("\n\n".join(sections))
    return 0


def _client(setup: SetupFile) -> Client:
    if setup.client_path.exists():
        return read_client(setup.client_path)
    raise InputError(
        Problem(
            where=f"{setup.where['client']}: client",
            must="the set-up's client file must be there",
            got=f"no such file as {setup.client_path}",
            remedy="Correct the path; it counts from the set-up file's own folder.",
        )
    )
