"""Check a line file: what is wrong, where, and what to do."""

from __future__ import annotations

import argparse
import json
from collections.abc import Sequence
from dataclasses import asdict
from typing import TYPE_CHECKING

from chairwright.cli.report import BAD_INPUT, OK
from chairwright.line.load import load_line

if TYPE_CHECKING:
    from chairwright.fitting.line_checks.finding import Finding
    from chairwright.line.model import Line


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright line check``."""
    parser.add_argument(
        "line",
        metavar="LINE",
        help="plain name of a shipped line, or the path of a line file",
    )
    parser.add_argument("--json", action="store_true", help="print one JSON document")


def run(args: argparse.Namespace) -> int:
    """Print the findings; a mistake makes the exit code 2, a remark does not."""
    line = load_line(args.line)
    from chairwright.fitting.line_checks.check import check_line

    found = check_line(line)
    mistakes = sum(finding.severity == "mistake" for finding in found)
    if args.json:
        print(json.dumps(_data(line, found, mistakes), indent=2, allow_nan=False))
    else:
        print("\n".join([*(_words(finding) for finding in found), _summary(line, found, mistakes)]))
    return BAD_INPUT if mistakes else OK


def _words(finding: Finding) -> str:
    return f"{finding.severity}: {finding.problem}"


def _summary(line: Line, found: Sequence[Finding], mistakes: int) -> str:
    remarks = len(found) - mistakes
    return (
        f"{line.title}, version {line.version}: {_counted(mistakes, 'mistake')}, "
        f"{_counted(remarks, 'remark')}"
    )


def _counted(number: int, what: str) -> str:
    return f"{number or 'no'} {what}{'' if number == 1 else 's'}"


def _data(line: Line, found: Sequence[Finding], mistakes: int) -> dict[str, object]:
    return {
        "line": {"name": line.name, "title": line.title, "version": line.version},
        "mistakes": mistakes,
        "remarks": len(found) - mistakes,
        "findings": [
            {"severity": finding.severity, **asdict(finding.problem)} for finding in found
        ],
    }
