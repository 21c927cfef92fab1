"""Find the best set-up for a client on one line or several; when nothing fits, say why."""

from __future__ import annotations

import argparse
import json
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import tell
from chairwright.cli.weighed import add_scales_argument, weighed_client
from chairwright.errors import InputError, Problem
from chairwright.line.model import Line  # with numpy: what a process beside this one starts from

if TYPE_CHECKING:
    from chairwright.fitting.fit import Fit
    from chairwright.fitting.lines import SideBySide
    from chairwright.person.client import Client
    from chairwright.places.model import Surroundings
    from chairwright.search.front import Objective

DEFAULT_LINE = "everyday"


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright fit``."""
    parser.add_argument("client", metavar="CLIENT", help="client file (YAML)")
    parser.add_argument(
        "--line",
        metavar="LINE",
        action="append",
        dest="lines",
        help="plain name of a shipped line, or the path of a line file (default: everyday); said "
        "several times: the lines side by side",
    )
    parser.add_argument(
        "--places", metavar="FILE", help="places file: the set-up must manage the client's places"
    )
    add_scales_argument(parser)
    parser.add_argument(
        "--made-to-order",
        dest="to_order",
        choices=("when-needed", "always", "never"),
        default="when-needed",
        help="when to look at sizes made to order: when-needed, if no standard set-up meets every "
        "must, for the least surcharge; always, like standard sizes; never (default: when-needed)",
    )
    parser.add_argument(
        "--all-reasons",
        action="store_true",
        help="when nothing fits, find every smallest group to give up (can take minutes)",
    )
    parser.add_argument(
        "--why",
        metavar="SETUP",
        nargs="?",
        const="",
        help="explain the best set-up target by target and choice by choice; with a set-up file: "
        "say what stands against that set-up",
    )
    parser.add_argument(
        "--sure", action="store_true",
        help="the best set-up whose musts hold with their spread, not on nominal values only",
    )  # fmt: skip
    front = parser.add_mutually_exclusive_group()
    front.add_argument(
        "--trade",
        metavar="FIGURE,FIGURE",
        help="two to four figures that the trade-off is about, such as "
        "price,chair_mass_kg,tip_rear_locked_deg; =least or =most says which way is better",
    )
    front.add_argument("--no-front", action="store_true", help="leave the trade-off out")
    _add_output_arguments(parser)


def _add_output_arguments(parser: argparse.ArgumentParser) -> None:
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


def run(args: argparse.Namespace) -> int:
    """Fit one client, print the result, and write its files when a folder is named."""
    names = list(dict.fromkeys(args.lines or [DEFAULT_LINE]))
    _refuse_together(args, len(names))
    if args.why:
        return _run_why(args, _client(args), names[0] if args.lines else None)
    if len(names) > 1:
        return _run_several(args, _client(args), {name: _line(name) for name in names})
    return _run_one(args, names[0])


def _objectives(args: argparse.Namespace) -> tuple[Objective, ...] | None:
    """What the front trades off: as asked, as usual, or None for no front."""
    from chairwright.fitting.trade import read_objectives

    if args.no_front or args.why is not None:
        return None
    return () if args.trade is None else read_objectives(args.trade)


def _client(args: argparse.Namespace) -> Client:
    from chairwright.files.client import read_client

    return read_client(args.client)


def _line(name: str) -> Line:
    from chairwright.line.load import load_line

    return load_line(name)


def _run_one(args: argparse.Namespace, name: str) -> int:
    files, fit = _fit_one(args, name)
    if args.sure:
        from chairwright.fitting.sure import surest

        fit = surest(fit, _progress(fit.person.client))
    written = _written(args, {name: fit}, files)
    _show(fit, args)
    tell([f"wrote {path}" for path in written])
    return 0


def _fit_one(args: argparse.Namespace, name: str) -> tuple[dict[str, str], Fit]:
    """Names of the files to write, and the fit; the line is read beside what is loaded here."""
    from chairwright.cli.aside import processes_aside

    with processes_aside() as apart:
        reading = apart.submit(_line, name)
        client = _client(args)
        from chairwright.cli.file_names import file_name
        from chairwright.fitting.fit import fit_person
        from chairwright.fitting.person import read_person

        surroundings, weighed = _surroundings(args), weighed_client(args.scales)
        person = read_person(client, surroundings, weighed)
        line = reading.result()
        objectives = _objectives(args)
        files = {name: file_name(client.reference)}
        _check_free(args, files)
        fit = fit_person(
            person,
            line,
            objectives=objectives,
            to_order=args.to_order,
            most_corrections=_most(args),
            alone=True,
            progress=_progress(client),
            apart=apart,
        )
        return files, fit


def _run_why(args: argparse.Namespace, client: Client, named: str | None) -> int:
    """Say what stands against a set-up."""
    from chairwright.cli.fit_why import read_rejected, show_rejected
    from chairwright.fitting.fit import fit_person
    from chairwright.fitting.person import read_person

    file = read_rejected(args.why, named)
    line = _line(file.line)
    fit = fit_person(
        read_person(client, _surroundings(args), weighed_client(args.scales)),
        line,
        objectives=None,
        to_order=args.to_order,
        most_corrections=0,
        progress=_progress(client),
    )
    show_rejected(fit, line, file, Path(args.client), as_json=args.json)
    return 0


def _run_several(args: argparse.Namespace, client: Client, lines: dict[str, Line]) -> int:
    from chairwright.cli.file_names import file_name
    from chairwright.fitting.lines import fit_lines

    files = {name: file_name(client.reference, line.name) for name, line in lines.items()}
    if len(set(files.values())) < len(files):
        called = ", ".join(line.name for line in lines.values())
        must = "the lines must have different names"
        raise InputError(Problem("--line", must, called, "Change the name in one line file."))
    _check_free(args, files)
    found = fit_lines(
        client,
        list(lines.values()),
        surroundings=_surroundings(args),
        weighed=weighed_client(args.scales),
        to_order=args.to_order,
        most_corrections=_most(args),
        progress=_progress(client),
    )
    pairs = zip(lines, found.results, strict=True)
    fits = {name: each.fit for name, each in pairs if each.fit is not None}
    written = _written(args, fits, files)
    _show_several(found, args)
    tell([f"wrote {path}" for path in written])
    return 0


def _surroundings(args: argparse.Namespace) -> Surroundings | None:
    if args.places is None:
        return None
    from chairwright.files.places import read_places

    return read_places(args.places)


def _refuse_together(args: argparse.Namespace, lines: int) -> None:
    """Refuse options that do not go together."""
    problems = []
    if lines > 1:
        typed = {
            "--trade": args.trade is not None,
            "--why": args.why is not None,
            "--sure": args.sure,
        }
        problems += [
            Problem(option, "it must go with one line", f"{lines} lines", "Name one --line.")
            for option, given in typed.items()
            if given
        ]
    if args.why is not None and args.trade is not None:
        must = "an explanation has no trade-off"
        problems.append(Problem("--trade", must, args.trade, "Leave --why or --trade away."))
    if args.why is not None and args.sure:
        must = "an explanation is of the best set-up on nominal values"
        problems.append(Problem("--sure", must, "--sure", "Leave --why or --sure away."))
    if args.why and args.out is not None:
        must = "files must be of the best set-up, and --why SETUP explains another one"
        problems.append(Problem("--out", must, str(args.out), "Leave --out away."))
    if problems:
        raise InputError(*problems)


def _check_free(args: argparse.Namespace, files: dict[str, str]) -> None:
    if args.out is not None and not args.replace:
        from chairwright.cli.file_names import check_free

        check_free(args.out, files.values())


def _most(args: argparse.Namespace) -> int | None:
    from chairwright.fitting.fit import MOST_CORRECTIONS

    return None if args.all_reasons else MOST_CORRECTIONS


def _progress(client: Client) -> Callable[[str], None]:
    return lambda words: tell([f"{client.reference}: {words}"])


def _written(args: argparse.Namespace, fits: dict[str, Fit], files: dict[str, str]) -> list[Path]:
    """Write the files of every fit when a folder is named."""
    if args.out is None:
        return []
    from chairwright.cli.output import write_files

    written: list[Path] = []
    for line, fit in fits.items():
        written += write_files(
            fit, Path(args.client), line, args.out, args.paper, args.units,
            name=files[line], overwrite=args.replace,
        )  # fmt: skip
    return written


def _show(fit: Fit, args: argparse.Namespace) -> None:
    if args.why is not None:
        from chairwright.cli.fit_why import show_best

        progress = _progress(fit.person.client)
        show_best(fit, args.units, progress, as_json=args.json)
        return
    if args.json:
        from chairwright.cli.report_json import fit_data

        print(json.dumps(fit_data(fit), indent=2, allow_nan=False))
        return
    from chairwright.cli.report_fit import fit_text

    print(fit_text(fit, args.units))


def _show_several(found: SideBySide, args: argparse.Namespace) -> None:
    if args.json:
        from chairwright.cli.report_lines import lines_data

        print(json.dumps(lines_data(found), indent=2, allow_nan=False))
        return
    from chairwright.cli.report_lines import lines_text

    print(lines_text(found, args.units))
