"""Count the set-ups that a line's rules allow, exactly, and the options of each choice."""

from __future__ import annotations

import argparse
import json
from typing import TYPE_CHECKING

from chairwright.cli.table import text_table
from chairwright.line.load import load_line

if TYPE_CHECKING:
    from chairwright.fitting.line_counts import LineCounts
    from chairwright.line.model import Line

ROWS = {
    "standard": "standard range",
    "made_to_order": "with sizes made to order",
    "on_request": "with options on request",
    "every": "with both",
}


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright line count``."""
    parser.add_argument(
        "line",
        metavar="LINE",
        help="plain name of a shipped line, or the path of a line file",
    )
    parser.add_argument("--json", action="store_true", help="print one JSON document")


def run(args: argparse.Namespace) -> int:
    """Print how many set-ups there are."""
    line = load_line(args.line)
    from chairwright.fitting.line_counts import line_counts

    counts = line_counts(line)
    if args.json:
        print(json.dumps(_data(line, counts), indent=2, allow_nan=False))
    else:
        print("\n\n".join([f"{line.title}, version {line.version}", *_tables(counts)]))
    return 0


def _tables(counts: LineCounts) -> list[str]:
    totals = [[words, f"{getattr(counts, name):,}"] for name, words in ROWS.items()]
    options = [[each.label, *(str(n or "") for n in each.options)] for each in counts.choices]
    return [
        text_table(["range", "set-ups"], totals, "lr"),
        text_table(["options of", "standard", "made to order", "on request"], options, "lrrr"),
    ]


def _data(line: Line, counts: LineCounts) -> dict[str, object]:
    return {
        "line": {"name": line.name, "title": line.title, "version": line.version},
        "set_ups": {name: getattr(counts, name) for name in ROWS},
        "choices": [
            {
                "name": each.choice,
                "label": each.label,
                **dict(zip(("standard", "made_to_order", "on_request"), each.options, strict=True)),
            }
            for each in counts.choices
        ],
    }
