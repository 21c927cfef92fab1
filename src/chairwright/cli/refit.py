"""Fit a chair again: the smallest changes that meet the client's targets of today."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import OK, tell
from chairwright.cli.weighed import add_scales_argument, weighed_client

if TYPE_CHECKING:
    from chairwright.fitting.person import Person
    from chairwright.order.refit import Refit
    from chairwright.papers.typeset import Paper

PAPERS: dict[str, Paper] = {"a4": "a4", "letter": "us-letter"}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright refit``."""
    parser.add_argument("client", metavar="CLIENT", help="client file with today's measures")
    parser.add_argument(
        "--from", metavar="SETUP", dest="present", required=True,
        help="set-up file of the chair as it is, or measured-chair file of another maker's",
    )  # fmt: skip
    parser.add_argument(
        "--line", metavar="LINE", default=None,
        help="with a measured chair: the line of which a new one is bought (default: everyday)",
    )  # fmt: skip
    parser.add_argument(
        "--keep", metavar="CHOICE=CODE", action="append", default=[],
        help="with a measured chair: a part that goes on the new one, such as cushion=Q75",
    )  # fmt: skip
    parser.add_argument("--places", metavar="FILE", help="places file: the chair must manage them")
    add_scales_argument(parser)
    parser.add_argument(
        "--choose", metavar="N", type=int, default=1,
        help="row of the trade-off that is described and written (default: 1, the smallest change)",
    )  # fmt: skip
    parser.add_argument(
        "--out", metavar="DIR", type=Path,
        help="write set-up, re-fit sheet and adjust sheet there",
    )  # fmt: skip
    parser.add_argument("--replace", action="store_true", help="replace files that are there")
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--paper", choices=tuple(PAPERS), default="a4", help="paper of the sheets (default: a4)"
    )
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )


def run(args: argparse.Namespace) -> int:
    """Print the re-fit, and write its files when a folder is named."""
    from chairwright.cli.refit_files import check_free, write_files
    from chairwright.cli.report_refit import refit_text
    from chairwright.cli.report_refit_data import refit_data
    from chairwright.order.refit_chosen import choose

    person = _person(args)
    if args.out is not None:
        check_free(args.out, person.client.reference, replace=args.replace)
    told = choose(_refit(args, person), args.choose)
    written: list[Path] = []
    if args.out is not None:
        paper = PAPERS[args.paper]
        written = write_files(
            told, Path(args.client), args.out, paper, args.units, overwrite=args.replace
        )
    if args.json:
        print(json.dumps(refit_data(told), indent=2, allow_nan=False, ensure_ascii=False))
    else:
        print(refit_text(told, args.units))
    tell([f"wrote {path}" for path in written])
    return OK


def _person(args: argparse.Namespace) -> Person:
    from chairwright.files.client import read_client
    from chairwright.files.places import read_places
    from chairwright.fitting.person import read_person

    places = None if args.places is None else read_places(args.places)
    return read_person(read_client(args.client), places, weighed_client(args.scales))


def _refit(args: argparse.Namespace, person: Person) -> Refit:
    from chairwright.cli.refit_present import present_chair
    from chairwright.order.refit import refit

    return refit(person, present_chair(args.present, person, args.line, args.keep))
