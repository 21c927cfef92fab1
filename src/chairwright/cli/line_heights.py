"""Print a line's seat heights: rear wheel, axle hole, caster and fork hole, stems squared."""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import tell
from chairwright.errors import InputError, Problem
from chairwright.line.load import load_line

if TYPE_CHECKING:
    from chairwright.fitting.heights_chart import Ask, HeightsChart

SAME = ("side_frame", "camber", "stem_spacer", "caster_housing", "seat_depth")
NARROWED = ("rear_wheel", "caster", "fork", "stem_setting")


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright line heights``."""
    parser.add_argument(
        "line",
        metavar="LINE",
        help="plain name of a shipped line, or the path of a line file",
    )
    same = parser.add_argument_group("what stays the same (default: the line's usual options)")
    for name in SAME:
        same.add_argument(_flag(name), metavar="CODE", help=f"the {_plain(name)}")
    same.add_argument(
        "--axle-column",
        metavar="LETTER",
        help="column of axle holes to print (default: the middle one); a CSV holds every column",
    )
    narrowed = parser.add_argument_group("what is shown (default: all)")
    for name in NARROWED:
        narrowed.add_argument(
            _flag(name), metavar="CODE,CODE", help=f"only these options of {_plain(name)}"
        )
    narrowed.add_argument(
        "--level",
        nargs=2,
        type=float,
        metavar=("LEAST", "GREATEST"),
        help="only seat angles in this range, degrees",
    )
    _add_outputs(parser)


def _add_outputs(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("--out", metavar="FILE.pdf", type=Path, help="write the chart to print")
    parser.add_argument(
        "--csv", metavar="FILE.csv", type=Path, help="write every combination and figure"
    )
    parser.add_argument("--replace", action="store_true", help="replace files that are there")
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units",
        choices=("mm", "in", "both"),
        help="of the table that is printed here (default: the line's own); files hold both",
    )
    parser.add_argument(
        "--paper", choices=("a4", "letter"), default="a4", help="paper of the PDF (default: a4)"
    )


def _flag(name: str) -> str:
    return "--" + name.replace("_", "-")


def _plain(name: str) -> str:
    return name.replace("_", " ")


def run(args: argparse.Namespace) -> int:
    """Work the chart out, print it, and write the files that are named."""
    _check_files(args)
    line = load_line(args.line)
    from chairwright.fitting.heights_chart import heights_chart

    chart = heights_chart(line, _ask(args))
    _check_any(chart)
    contents = _contents(chart, args)
    _show(chart, args)
    for path, content in contents.items():
        from chairwright.files.writing import write_file

        write_file(path, content, overwrite=args.replace)
        tell([f"wrote {path}"])
    return 0


def _ask(args: argparse.Namespace) -> Ask:
    from chairwright.fitting.heights_chart import Ask

    given = {name: getattr(args, name) for name in (*SAME, *NARROWED)}
    return Ask(
        fixed={name: given[name] for name in SAME if given[name] is not None},
        column=args.axle_column,
        only={name: _codes(name, given[name]) for name in NARROWED if given[name] is not None},
        level_deg=None if args.level is None else (args.level[0], args.level[1]),
    )


def _codes(name: str, text: str) -> tuple[str, ...]:
    codes = tuple(code.strip() for code in text.split(",") if code.strip())
    if not codes:
        must = "it must name at least one code"
        raise InputError(Problem(_flag(name), must, repr(text), "Write it like CODE,CODE."))
    return codes


def _check_files(args: argparse.Namespace) -> None:
    """Refuse files of the wrong kind, or that are there already, before any work is done."""
    problems = []
    for flag, path, ending in (("--out", args.out, ".pdf"), ("--csv", args.csv, ".csv")):
        if path is not None and path.suffix.lower() != ending:
            must, remedy = f"the file must end in {ending}", f"Name it like heights{ending}."
            problems.append(Problem(flag, must, repr(str(path)), remedy))
        elif path is not None and path.exists() and not args.replace:
            must, remedy = "the file must not exist yet", "Say --replace, or choose another name."
            problems.append(Problem(str(path), must, "a file", remedy))
    if problems:
        raise InputError(*problems)


def _check_any(chart: HeightsChart) -> None:
    """Refuse a chart of dashes: say why nothing stands, most frequent reason first."""
    import numpy as np

    from chairwright.fitting.heights_chart import STANDS
    from chairwright.papers.heights_blocks import printed_holes

    why = chart.why[:, printed_holes(chart)]
    if (why == STANDS).any():
        return
    reasons, counts = np.unique(why, return_counts=True)
    first = [chart.reasons[at] for at in reasons[np.argsort(-counts, kind="stable")]]
    raise InputError(
        Problem(
            where="chairwright line heights",
            must=f"something must stand with axle holes of column {chart.column.label}",
            got=f"no combination that does ({'; '.join(first[:3])})",
            remedy="Choose another side frame, caster housing or axle column, or a wider --level.",
        )
    )


def _contents(chart: HeightsChart, args: argparse.Namespace) -> dict[Path, str | bytes]:
    made: dict[Path, str | bytes] = {}
    if args.csv is not None:
        from chairwright.cli.line_heights_data import chart_csv

        made[args.csv] = chart_csv(chart)
    if args.out is not None:
        from chairwright.cli.output import PAPERS
        from chairwright.papers.heights_sheet import heights_pdf

        made[args.out] = heights_pdf(chart, PAPERS[args.paper])
    return made


def _show(chart: HeightsChart, args: argparse.Namespace) -> None:
    if args.json:
        from chairwright.cli.line_heights_data import chart_data

        print(json.dumps(chart_data(chart), indent=2, allow_nan=False))
        return
    from chairwright.cli.line_heights_text import chart_text

    print(chart_text(chart, args.units or chart.line.typed_in))
