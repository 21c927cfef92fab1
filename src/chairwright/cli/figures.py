"""Show every figure of one set-up, with what is asked of it."""

from __future__ import annotations

import argparse
import json

from chairwright.cli.weighed import add_scales_argument, weighed_client


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright figures``."""
    parser.add_argument("setup", metavar="SETUP", help="set-up file (YAML)")
    add_scales_argument(parser)
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )


def run(args: argparse.Namespace) -> int:
    """Print the figures of one set-up."""
    from chairwright.cli.opened import open_setup
    from chairwright.cli.report_fit import weighed_sections
    from chairwright.cli.report_json import figures_data
    from chairwright.cli.report_setup import setup_sections
    from chairwright.papers.cautions import PURPOSE
    from chairwright.papers.words import wrapped

    opened = open_setup(args.setup, weighed=weighed_client(args.scales))
    if args.json:
        print(json.dumps(figures_data(opened.setup), indent=2, allow_nan=False))
        return 0
    line = opened.line
    head = f"{opened.person.client.reference}: {line.title}, version {line.version}"
    sections = [head, *weighed_sections(opened.person)]
    sections += [*setup_sections(opened.setup, args.units, every=True), wrapped(PURPOSE)]
    print("\n\n".join(sections))
    return 0
