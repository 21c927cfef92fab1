"""Find the best set-up of a line for a client; when nothing fits, say why."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import tell
from chairwright.files.client import read_client
from chairwright.line.load import load_line

if TYPE_CHECKING:
    from chairwright.fitting.fit import Fit


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright fit``."""
    parser.add_argument("client", metavar="CLIENT", help="client file (YAML)")
    parser.add_argument(
        "--line",
        default="everyday",
        help="plain name of a shipped line, or the path of a line file (default: everyday)",
    )
    parser.add_argument(
        "--out", metavar="DIR", type=Path, help="write set-up, sheet, drawings and figures there"
    )
    parser.add_argument(
        "--replace", action="store_true", help="replace files of the same names in DIR"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--paper", choices=("a4", "letter"), default="a4", help="paper of the sheet (default: a4)"
    )
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )
    parser.add_argument(
        "--front",
        action=argparse.BooleanOptionalAction,
        default=True,
        help="trace the trade-off front (default: yes)",
    )
    parser.add_argument(
        "--all-reasons",
        action="store_true",
        help="when nothing fits, find every smallest group to give up (can take minutes)",
    )


def _show(fit: Fit, args: argparse.Namespace) -> None:
    if args.json:
        from chairwright.cli.report_json import fit_data

        print(json.dumps(fit_data(fit), indent=2, allow_nan=False))
        return
    from chairwright.cli.report_fit import fit_text

    print(fit_text(fit, args.units))


def run(args: argparse.Namespace) -> int:
    """Fit one client, print the result, and write its files when a folder is named."""
    client, line = read_client(args.client), load_line(args.line)
    from chairwright.cli.output import check_free, write_files
    from chairwright.fitting.fit import MOST_CORRECTIONS, fit_client

    if args.out is not None and not args.replace:
        check_free(args.out, client.reference)
    fit = fit_client(
        client,
        line,
        front=args.front,
        most_corrections=None if args.all_reasons else MOST_CORRECTIONS,
        progress=lambda words: tell([f"{client.reference}: {words}"]),
    )
    written = []
    if args.out is not None:
        written = write_files(
            fit, Path(args.client), args.line, args.out, args.paper, args.units,
            overwrite=args.replace,
        )  # fmt: skip
    _show(fit, args)
    tell([f"wrote {path}" for path in written])
    return 0
