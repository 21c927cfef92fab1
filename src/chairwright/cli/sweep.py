"""Show what one choice does to every figure of a set-up: all its options, everything else kept."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import tell

if TYPE_CHECKING:
    from chairwright.cli.opened import Opened
    from chairwright.fitting.sweep import Sweep

TELL_EACH = 10


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright sweep``."""
    parser.add_argument("setup", metavar="SETUP", help="set-up file (YAML)")
    parser.add_argument("choice", metavar="CHOICE", help="what to vary, such as axle_hole")
    parser.add_argument(
        "--options",
        metavar="CODE,CODE",
        help="only these options; a part's code means each of its holes or heights",
    )
    parser.add_argument(
        "--run",
        dest="which",
        metavar="RUN",
        choices=("fore-aft", "up-down", "settings", "parts", "every"),
        help="one row of options: fore-aft or up-down for holes in a plane, settings or parts for "
        "parts with several settings, every for all (default: the first two that apply)",
    )
    parser.add_argument(
        "--keep",
        action="store_true",
        help="keep an anti-tip device that would stand in the floor instead of raising it",
    )
    parser.add_argument("--all", action="store_true", help="show figures that do not move as well")
    parser.add_argument(
        "--out", metavar="FILE.pdf", type=Path, help="write a lesson sheet of one page there"
    )
    parser.add_argument("--replace", action="store_true", help="replace FILE.pdf when it is there")
    shape = parser.add_mutually_exclusive_group()
    shape.add_argument("--json", action="store_true", help="print one JSON document")
    shape.add_argument("--csv", action="store_true", help="print one row an option, for a sheet")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )
    parser.add_argument(
        "--paper", choices=("a4", "letter"), default="a4", help="paper of the sheet (default: a4)"
    )


def run(args: argparse.Namespace) -> int:
    """Sweep one choice, print what moves, and write the lesson sheet when a file is named."""
    from chairwright.cli.opened import check_pdf, open_setup

    if args.out is not None:
        check_pdf(args.out, replace=args.replace)
    opened = open_setup(args.setup)
    swept = _swept(opened, args)
    content = b"" if args.out is None else _sheet(opened, swept, args)
    _show(opened, swept, args)
    if args.out is not None:
        from chairwright.files.writing import write_file

        write_file(args.out, content, overwrite=args.replace)
        tell([f"wrote {args.out}"])
    return 0


def _swept(opened: Opened, args: argparse.Namespace) -> Sweep:
    from chairwright.fitting.runs import known_choice, named_run, runs_of
    from chairwright.fitting.sweep import sweep

    name = known_choice(args.choice)
    choice, present = opened.line.choices[name], opened.setup.index[name]
    if args.options is None:
        runs = runs_of(choice, present, args.which)
    else:
        codes = [code.strip() for code in args.options.split(",") if code.strip()]
        runs = (named_run(choice, present, codes),)

    def progress(done: int, count: int) -> None:
        if done % TELL_EACH == 0:
            tell([f"{name}: {done} of {count} options"])

    return sweep(opened.person, opened.setup, name, runs, keep=args.keep, progress=progress)


def _show(opened: Opened, swept: Sweep, args: argparse.Namespace) -> None:
    if args.json:
        from chairwright.cli.report_sweep_data import sweep_data

        print(json.dumps(sweep_data(swept, every=args.all), indent=2, allow_nan=False))
    elif args.csv:
        from chairwright.cli.report_sweep_data import sweep_csv

        print(sweep_csv(swept, every=args.all), end="")
    else:
        from chairwright.cli.report_sweep import sweep_text

        print(sweep_text(swept, opened.name, args.units, every=args.all))


def _sheet(opened: Opened, swept: Sweep, args: argparse.Namespace) -> bytes:
    from chairwright.cli.output import PAPERS
    from chairwright.errors import InputError, Problem
    from chairwright.papers.lesson_from_sweep import lesson_of
    from chairwright.papers.lesson_pdf import lesson_pdf

    if all(len(each.standing) < 2 for each in swept.runs):
        reasons = {why for each in swept.runs for tried in each.tried for why in tried.reasons}
        raise InputError(
            Problem(
                where=f"--out {args.out}",
                must=f"a lesson about {swept.choice} needs another option that stands",
                got="; ".join(sorted(reasons)) or f"only {swept.option.code} in the line",
                remedy="Leave --out away to see each option's reason, or sweep another choice.",
            )
        )
    paper = PAPERS[args.paper]
    return lesson_pdf(lesson_of(swept, opened.name, args.units, paper), paper)
