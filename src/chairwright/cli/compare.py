"""Show two to four set-ups side by side: choices, figures and verdicts that differ."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import tell
from chairwright.cli.weighed import add_scales_argument, weighed_client

if TYPE_CHECKING:
    from chairwright.fitting.compare import Comparison


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright compare``."""
    parser.add_argument(
        "setups", metavar="SETUP", nargs="+", help="set-up files (YAML), two to four"
    )
    add_scales_argument(parser)
    parser.add_argument("--all", action="store_true", help="show what is alike as well")
    parser.add_argument(
        "--out", metavar="FILE.pdf", type=Path, help="write a sheet with both drawn over each other"
    )
    parser.add_argument("--replace", action="store_true", help="replace FILE.pdf when it is there")
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )
    parser.add_argument(
        "--paper", choices=("a4", "letter"), default="a4", help="paper of the sheet (default: a4)"
    )


def run(args: argparse.Namespace) -> int:
    """Compare set-ups, print what differs, and write the sheet when a file is named."""
    from chairwright.cli.opened import check_pdf

    if args.out is not None:
        check_pdf(args.out, replace=args.replace)
    comparison = _compared(args.setups, args.scales)
    content = b"" if args.out is None else _sheet(comparison, args)
    if args.json:
        from chairwright.cli.report_compare import compare_data

        print(json.dumps(compare_data(comparison), indent=2, allow_nan=False))
    else:
        from chairwright.cli.report_compare import compare_text

        print(compare_text(comparison, args.units, every=args.all))
    if args.out is not None:
        from chairwright.files.writing import write_file

        write_file(args.out, content, overwrite=args.replace)
        tell([f"wrote {args.out}"])
    return 0


def _compared(paths: list[str], scales: str | None) -> Comparison:
    from chairwright.cli.opened import open_setup
    from chairwright.errors import InputError, Problem
    from chairwright.fitting.compare import FEWEST, MOST, Side, compare

    if not FEWEST <= len(paths) <= MOST:
        must = f"a comparison needs {FEWEST} to {MOST} set-ups"
        raise InputError(Problem("SETUP", must, str(len(paths)), "Name as many set-up files."))
    weighed = weighed_client(scales)
    opened = [open_setup(path, weighed=weighed) for path in paths]
    names = [each.name for each in opened]
    if len(set(names)) < len(names):
        names = [str(each.file.path) for each in opened]
    sides = [Side(name, each.person, each.setup) for name, each in zip(names, opened, strict=True)]
    return compare(sides)


def _sheet(comparison: Comparison, args: argparse.Namespace) -> bytes:
    from chairwright.cli.output import PAPERS
    from chairwright.papers.lesson_compare import compare_pdf, compare_sheet

    return compare_pdf(compare_sheet(comparison, args.units), PAPERS[args.paper])
