"""Find the centre of mass of an occupied chair from scales under its wheels."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import OK
from chairwright.cli.weighed import (
    Weighed,
    carries_over,
    opened_for,
    realised,
    weighed_with_setup,
)

if TYPE_CHECKING:
    from chairwright.cli.report_scales import Onto


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright scales``."""
    parser.add_argument("scales", metavar="FILE", help="scales file (YAML)")
    parser.add_argument(
        "--onto", metavar="SETUP", type=Path,
        help="another set-up of the client: its balance with the occupant as weighed",
    )  # fmt: skip
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )


def run(args: argparse.Namespace) -> int:
    """Print what was measured, and what follows from it."""
    from chairwright.cli.report_scales import scales_text
    from chairwright.cli.report_scales_data import scales_data
    from chairwright.files.scales import read_scales

    file = read_scales(args.scales)
    weighed = weighed_with_setup(file)
    onto = None if args.onto is None else _onto(weighed, args.onto)
    if args.json:
        print(json.dumps(scales_data(weighed, onto), indent=2, allow_nan=False))
    else:
        print(scales_text(weighed, onto, args.units))
    return OK


def _onto(weighed: Weighed, path: Path) -> Onto:
    from chairwright.cli.report_scales import Onto
    from chairwright.scales.carried import carried_over

    shift, _ = carries_over(weighed)
    opened = opened_for(weighed.file, path, str(path))
    rows, points = realised(opened)
    there = carried_over(rows, points, opened.person.occupant, shift)
    return Onto(opened.name, opened.setup, there)
