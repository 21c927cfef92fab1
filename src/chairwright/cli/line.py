"""Look at a product line: check its file, count its set-ups, chart its seat heights."""

from __future__ import annotations

import argparse

from chairwright.cli import line_check, line_count, line_heights

WHAT = {
    "check": (line_check, "find what is wrong in a line file, with line and remedy"),
    "count": (line_count, "count the set-ups that the rules allow, exactly"),
    "heights": (line_heights, "print the seat heights of wheels, axle holes, casters and forks"),
}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add ``check``, ``count`` and ``heights`` under ``chairwright line``."""
    parts = parser.add_subparsers(metavar="WHAT", required=True, dest="what")
    for name, (module, summary) in WHAT.items():
        sub = parts.add_parser(name, help=summary, description=module.__doc__, allow_abbrev=False)
        module.add_arguments(sub)


def run(args: argparse.Namespace) -> int:
    """Run what was asked for."""
    module, _ = WHAT[args.what]
    code: int = module.run(args)
    return code
