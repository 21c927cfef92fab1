"""Say how sure every figure of a set-up is, and what is worth measuring again."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import OK, tell
from chairwright.cli.weighed import add_scales_argument, weighed_client
from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.cli.opened import Opened


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright tolerance``."""
    parser.add_argument("client", metavar="CLIENT", type=Path, help="client file (YAML)")
    parser.add_argument("--setup", metavar="SETUP", required=True, help="set-up file (YAML)")
    parser.add_argument(
        "--figure", metavar="NAME", help="show what counts for this figure, the most first"
    )
    parser.add_argument("--places", metavar="FILE", help="places file of the client (YAML)")
    add_scales_argument(parser)
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--out", metavar="DIR", type=Path,
        help="write tornado charts (SVG): of the figure, or of each must that is not sure",
    )  # fmt: skip
    parser.add_argument("--replace", action="store_true", help="replace charts that are there")


def run(args: argparse.Namespace) -> int:
    """Print the spreads, and draw the charts when a folder is named."""
    from chairwright.cli.report_tolerance import tolerance_sections
    from chairwright.cli.report_tolerance_data import tolerance_data

    opened = _opened(args)
    figure = _figure(args.figure, opened)
    charts = _charts(args, opened, figure)
    if args.json:
        print(json.dumps(tolerance_data(opened, figure), indent=2, allow_nan=False))
    else:
        print("\n\n".join(tolerance_sections(opened, figure)))
    for path, svg in charts.items():
        from chairwright.files.writing import write_file

        write_file(path, svg, overwrite=args.replace)
        tell([f"wrote {path}"])
    return OK


def _opened(args: argparse.Namespace) -> Opened:
    """The set-up, judged for the client that is named."""
    from dataclasses import replace

    from chairwright.cli.opened import open_file
    from chairwright.files.client import read_client
    from chairwright.files.places import read_places
    from chairwright.files.setup import read_setup

    surroundings = None if args.places is None else read_places(args.places)
    client, file = read_client(args.client), read_setup(args.setup)
    if file.client_path.exists():
        theirs = read_client(file.client_path).reference
        if theirs != client.reference:
            must = f"the client must be the set-up's, {theirs}"
            remedy = "Name the client file of this set-up."
            raise InputError(Problem(str(args.client), must, client.reference, remedy))
    weighed = weighed_client(args.scales)
    return open_file(replace(file, client_path=args.client), surroundings, weighed)


def _figure(name: str | None, opened: Opened) -> str | None:
    from chairwright.validation import suggest

    spreads = opened.setup.tolerance.figures
    if name is None or name in spreads:
        return name
    must = "the figure must be one that has a spread for this set-up"
    raise InputError(Problem("--figure", must, repr(name), suggest(name, list(spreads))))


def _charts(args: argparse.Namespace, opened: Opened, figure: str | None) -> dict[Path, str]:
    if args.out is None:
        return {}
    from chairwright.cli.report_tolerance import figure_chart, must_charts
    from chairwright.drawing.tornado import tornado_chart

    made = must_charts(opened) if figure is None else {figure: figure_chart(opened, figure)}
    name = opened.name.lower()
    paths = {
        args.out / f"{name}-tornado-{key.replace('@', '-').replace('.', '-')}.svg": chart
        for key, chart in made.items()
    }
    taken = [path for path in paths if path.exists() and not args.replace]
    if taken:
        must, remedy = "the file must not exist yet", "Say --replace, or use another folder."
        raise InputError(*(Problem(str(path), must, "a file", remedy) for path in taken))
    return {path: tornado_chart(chart) for path, chart in paths.items()}
