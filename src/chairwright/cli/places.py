"""Judge a set-up by the client's places: verdict, reason, and the cheapest change that helps."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import OK, tell
from chairwright.cli.weighed import add_scales_argument, weighed_client
from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.cli.opened import Opened
    from chairwright.fitting.place_helps import PlaceHelp
    from chairwright.places.model import Surroundings


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright places``."""
    parser.add_argument("places", metavar="FILE", help="places file (YAML)")
    parser.add_argument(
        "--setup", metavar="SETUP", required=True, help="set-up file of the chair to be judged"
    )
    add_scales_argument(parser)
    parser.add_argument(
        "--moves", action="store_true",
        help="look for moves to and fro where one turn is not enough (some seconds a place)",
    )  # fmt: skip
    parser.add_argument(
        "--out", metavar="DIR", type=Path, help="write a drawing of each place that has one (SVG)"
    )
    parser.add_argument("--replace", action="store_true", help="replace drawings that are there")
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: inches on the drawings"
    )


def run(args: argparse.Namespace) -> int:
    """Print the verdicts, and draw the places when a folder is named."""
    from chairwright.cli.opened import open_setup
    from chairwright.files.places import read_places
    from chairwright.fitting.place_helps import place_helps

    surroundings = read_places(args.places)
    opened = open_setup(args.setup, surroundings, weighed_client(args.scales))
    drawings = _drawings(args, surroundings, opened)
    helps = place_helps(opened.person, opened.line, opened.setup, _progress(opened))
    _show(args, surroundings, opened, helps)
    for path, svg in drawings.items():
        from chairwright.files.writing import write_file

        write_file(path, svg, overwrite=args.replace)
        tell([f"wrote {path}"])
    return OK


def _progress(opened: Opened) -> Callable[[str], None]:
    return lambda words: tell([f"{opened.person.client.reference}: {words}"])


def _drawings(
    args: argparse.Namespace, surroundings: Surroundings, opened: Opened
) -> dict[Path, str]:
    """Every drawing by the path that it gets; refused when a file is in the way."""
    if args.out is None:
        return {}
    from chairwright.drawing.place_sheets import place_sheet
    from chairwright.drawing.svg import to_svg

    sheets = {}
    for at, place in enumerate(surroundings.places, 1):
        sheet = place_sheet(opened.setup, place, moves=args.moves, units=args.units)
        if sheet is not None:
            path = args.out / f"{opened.name}-place-{at:02}-{place.kind.replace('_', '-')}.svg"
            sheets[path] = to_svg(sheet, f"place-{at}")
    problems = [
        Problem(str(path), "the file must not exist yet", "a file", "Say --replace, or use another "
                "folder.")
        for path in sheets
        if path.exists() and not args.replace
    ]  # fmt: skip
    if problems:
        raise InputError(*problems)
    return sheets


def _show(
    args: argparse.Namespace,
    surroundings: Surroundings,
    opened: Opened,
    helps: tuple[PlaceHelp, ...],
) -> None:
    from chairwright.cli.report_place_helps import helps_data, helps_text

    if args.json:
        data = helps_data(surroundings, opened.setup, helps)
        print(json.dumps(data, indent=2, allow_nan=False, ensure_ascii=False))
    else:
        print(helps_text(opened.name, surroundings, opened.setup, helps))
