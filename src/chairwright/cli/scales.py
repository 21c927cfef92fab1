"""Find the centre of mass of an occupied chair from scales under its wheels."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.one_sheet import PAPERS, add_sheet_arguments, sheet_path
from chairwright.cli.report import OK, tell
from chairwright.cli.weighed import carries_over, opened_for, realised, weighed_with_setup

if TYPE_CHECKING:
    from chairwright.papers.scales_words import Onto, Weighed

SHEET = "weighing-sheet.pdf"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright scales``."""
    parser.add_argument("scales", metavar="FILE", help="scales file (YAML)")
    parser.add_argument(
        "--onto", metavar="SETUP", type=Path,
        help="another set-up of the client: its balance with the occupant as weighed",
    )  # fmt: skip
    add_sheet_arguments(parser, "weighing sheet (PDF)")
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )


def run(args: argparse.Namespace) -> int:
    """Print what was measured and what follows, and write the sheet when a folder is named."""
    from chairwright.cli.report_scales import scales_text
    from chairwright.cli.report_scales_data import scales_data
    from chairwright.files.scales import read_scales

    file = read_scales(args.scales)
    path = sheet_path(args, file.client, SHEET)
    weighed = weighed_with_setup(file)
    onto = None if args.onto is None else _onto(weighed, args.onto)
    if path is not None:
        _write(weighed, onto, path, args)
    if args.json:
        print(json.dumps(scales_data(weighed, onto), indent=2, allow_nan=False))
    else:
        print(scales_text(weighed, onto, args.units))
    tell([] if path is None else [f"wrote {path}"])
    return OK


def _write(weighed: Weighed, onto: Onto | None, path: Path, args: argparse.Namespace) -> None:
    from chairwright.files.writing import write_file
    from chairwright.papers.pack.weighing_sheet import weighing_sheet_pdf

    sheet = weighing_sheet_pdf(weighed, onto, PAPERS[args.paper], args.units)
    write_file(path, sheet, overwrite=args.replace)


def _onto(weighed: Weighed, path: Path) -> Onto:
    from chairwright.papers.scales_words import Onto
    from chairwright.scales.carried import carried_over

    shift, _ = carries_over(weighed)
    opened = opened_for(weighed.file, path, str(path))
    rows, points = realised(opened)
    there = carried_over(rows, points, opened.person.occupant, shift)
    return Onto(opened.name, opened.setup, there)
