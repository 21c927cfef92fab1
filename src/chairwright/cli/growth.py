"""Plan for growth or change: what lasts without new parts, and when the next review is due."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import OK, tell
from chairwright.cli.weighed import add_scales_argument, weighed_client
from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.line.model import Line
    from chairwright.order.life_plan import Asked, LifePlan
    from chairwright.person.client import Client
    from chairwright.places.model import Surroundings

DEFAULT_LINE = "everyday"
LEAST_YEARS, MOST_YEARS = 0.5, 15.0
MOST_PERCENT = 50.0


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright growth``."""
    parser.add_argument("client", metavar="CLIENT", help="client file (YAML)")
    parser.add_argument(
        "--line", metavar="LINE",
        help="plain name of a shipped line, or the path of a line file (default: everyday)",
    )  # fmt: skip
    parser.add_argument(
        "--setup", metavar="SETUP", help="set-up file: how long this one lasts, instead of a search"
    )
    parser.add_argument(
        "--places", metavar="FILE", help="places file: the client's places must be managed too"
    )
    add_scales_argument(parser)
    parser.add_argument(
        "--years", type=float, metavar="N",
        help="how long the range is (default: the client file's over_years, or 5)",
    )  # fmt: skip
    parser.add_argument(
        "--lasts", type=float, metavar="N",
        help="plan for the best fit now of those that last N years, not for what lasts longest",
    )  # fmt: skip
    parser.add_argument(
        "--mass-change", type=float, metavar="PERCENT",
        help="a range of the body mass either way where the client file states none; 10 is common "
        "practice, without a source",
    )  # fmt: skip
    parser.add_argument("--delivered", metavar="DAY", help="day of delivery, like 2026-12-01")
    parser.add_argument(
        "--out", metavar="DIR", type=Path, help="write the set-up and the life sheet there"
    )
    parser.add_argument("--replace", action="store_true", help="replace files that are there")
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--paper", choices=("a4", "letter"), default="a4", help="paper of the sheet (default: a4)"
    )


def run(args: argparse.Namespace) -> int:
    """Print the plan, and write its files when a folder is named."""
    from chairwright.cli.report_growth import plan_data, plan_text
    from chairwright.files.client import read_client
    from chairwright.order.life_plan import plan_life

    _check(args)
    client = read_client(args.client)
    name, line, asked = _asked(args, client)
    paths = _paths(args, client)
    plan = plan_life(
        client,
        line,
        asked,
        _surroundings(args),
        lambda w: tell([f"{client.reference}: {w}"]),
        weighed_client(args.scales),
    )
    written = _write(plan, args, name, paths)
    if args.json:
        print(json.dumps(plan_data(plan), indent=2, allow_nan=False, ensure_ascii=False))
    else:
        print(plan_text(plan))
    tell([f"wrote {path}" for path in written])
    return OK


def _check(args: argparse.Namespace) -> None:
    problems = []
    for option, value in (("--years", args.years), ("--lasts", args.lasts)):
        if value is not None and not LEAST_YEARS <= value <= MOST_YEARS:
            must = f"it must lie between {LEAST_YEARS:g} and {MOST_YEARS:g} years"
            problems.append(Problem(option, must, f"{value:g}", "Say a number of years."))
    share = args.mass_change
    if share is not None and not 0.0 < share <= MOST_PERCENT:
        must = f"it must be more than 0 and at most {MOST_PERCENT:g} per cent"
        problems.append(Problem("--mass-change", must, f"{share:g}", "Say it like 10."))
    if args.setup is not None and (args.lasts is not None or args.line is not None):
        other = "--lasts" if args.lasts is not None else "--line"
        must = "a set-up that is named is taken as it is, with its own line"
        problems.append(Problem(other, must, "--setup as well", "Leave one of them away."))
    if problems:
        raise InputError(*problems)


def _asked(args: argparse.Namespace, client: Client) -> tuple[str, Line, Asked]:
    from chairwright.line.load import load_line
    from chairwright.order.life_plan import Asked

    index, name = None, args.line or DEFAULT_LINE
    if args.setup is None:
        line = load_line(name)
    else:
        from chairwright.files.setup import read_setup
        from chairwright.fitting.setup import index_of

        file = read_setup(args.setup)
        _same_client(file.client_path, client, args.setup)
        name, line = file.line, load_line(file.line)
        index = index_of(file, line)
    asked = Asked(
        years=args.years,
        mass_share=None if args.mass_change is None else args.mass_change / 100.0,
        lasts_years=args.lasts,
        setup=index,
        delivered=args.delivered or "",
    )
    return name, line, asked


def _same_client(path: Path, client: Client, setup: str) -> None:
    from chairwright.files.client import read_client

    found = read_client(path).reference
    if found != client.reference:
        must = f"the set-up must be of the client {client.reference}"
        raise InputError(Problem(setup, must, found, "Name a set-up of this client."))


def _surroundings(args: argparse.Namespace) -> Surroundings | None:
    if args.places is None:
        return None
    from chairwright.files.places import read_places

    return read_places(args.places)


def _paths(args: argparse.Namespace, client: Client) -> dict[str, Path]:
    """The files to be written, by kind; refused when one is in the way."""
    if args.out is None:
        return {}
    from chairwright.cli.file_names import file_name

    stem = f"{file_name(client.reference)}-life"
    paths = {"sheet": args.out / f"{stem}-sheet.pdf"}
    if args.setup is None:
        paths["setup"] = args.out / f"{stem}-setup.yaml"
    problems = [
        Problem(str(path), "the file must not exist yet", "a file", "Say --replace, or use another "
                "folder.")
        for path in paths.values()
        if path.exists() and not args.replace
    ]  # fmt: skip
    if args.out.is_file():
        must = "the files need a folder"
        problems = [Problem(str(args.out), must, "a file", "Choose another name.")]
    if problems:
        raise InputError(*problems)
    return paths


def _write(
    plan: LifePlan, args: argparse.Namespace, line: str, paths: dict[str, Path]
) -> list[Path]:
    if not paths:
        return []
    from chairwright.cli.output import PAPERS
    from chairwright.files.setup import write_setup
    from chairwright.files.writing import write_file
    from chairwright.papers.pack.life_sheet import life_sheet_pdf

    sheet = life_sheet_pdf(plan, PAPERS[args.paper])
    if "setup" in paths:
        extras = [extra.code for extra in plan.setup.extras]
        write_setup(
            paths["setup"], Path(args.client), line, plan.setup.codes,
            extras=extras, overwrite=args.replace,
        )  # fmt: skip
    write_file(paths["sheet"], sheet, overwrite=args.replace)
    return list(paths.values())
