"""Adjust a chair from one set-up to another: only what changes and what follows from it."""

from __future__ import annotations

import argparse
import json


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright adjust``."""
    parser.add_argument("first", metavar="FROM", help="set-up file of the chair as it is")
    parser.add_argument("last", metavar="TO", help="set-up file of the chair as it shall be")
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )


def run(args: argparse.Namespace) -> int:
    """Print the steps from one set-up to the other."""
    from chairwright.cli.opened import open_setup
    from chairwright.order.adjust import adjust

    first, last = open_setup(args.first), open_setup(args.last)
    found = adjust(first.setup, last.setup, last.person.occupant)
    if args.json:
        from chairwright.cli.report_adjust import adjust_data

        print(json.dumps(adjust_data(found), indent=2, allow_nan=False, ensure_ascii=False))
        return 0
    from chairwright.cli.report_adjust import adjust_report

    print(adjust_report(found, first.name, last.name, args.units))
    return 0
