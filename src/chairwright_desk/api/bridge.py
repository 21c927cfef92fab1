"""The way from the API to the engineering: figures as plain numbers, and its messages."""

from __future__ import annotations

import math
from typing import Any

from chairwright.errors import InputError, Problem
from chairwright.files.client import read_client
from chairwright.files.places import read_places
from chairwright.fitting.described import Judged
from chairwright.fitting.ledger import Row, ledger
from chairwright.line.load import load_line
from chairwright.line.model import Line
from chairwright.reading import FileText
from chairwright_desk.bench.bridge import State

__all__ = [
    "FileText",
    "InputError",
    "Problem",
    "check_client",
    "check_places",
    "figures_told",
    "line_told",
    "open_text",
]


def _number(value: float | None) -> float | None:
    """A number as JSON can hold it; None where there is none."""
    return None if value is None or not math.isfinite(value) else float(value)


def figures_told(state: State) -> list[dict[str, Any]]:
    """Every figure of a set-up, in its own unit; empty when there is no such chair.

    Parameters
    ----------
    state : State
    """
    return [] if state.setup is None else [_figure(row) for row in ledger(state.setup)]


def _figure(row: Row) -> dict[str, Any]:
    return {
        "name": row.figure.name,
        "label": row.figure.label,
        "unit": row.figure.unit,
        "value": _number(row.value),
        "spread": _number(row.spread),
        "verdict": row.word,
        "asked": [_asked(item) for item in row.asked],
    }


def _asked(item: Judged) -> dict[str, Any]:
    target = item.target
    return {
        "must": target.must,
        "low": _number(target.low),
        "high": _number(target.high),
        "verdict": item.verdict.word,
        "margin": _number(item.verdict.margin),
        "reason": target.reason,
        "source": target.source,
        "place": target.place,
    }


def check_client(text: str) -> None:
    """Refuse the text of a client file that cannot be read.

    Parameters
    ----------
    text : str

    Raises
    ------
    InputError
        With every problem, by line.
    """
    read_client(FileText("file", text))


def check_places(text: str) -> None:
    """Refuse the text of a places file that cannot be read.

    Parameters
    ----------
    text : str

    Raises
    ------
    InputError
        With every problem, by line.
    """
    read_places(FileText("file", text))


def open_text(name: str, text: str) -> Line:
    """Read a line from the text of a line file.

    Parameters
    ----------
    name, text : str
        As its messages name the file; what it holds.

    Raises
    ------
    InputError
        With every problem, by line.
    """
    return load_line(FileText(name, text))


def line_told(line: Line) -> dict[str, Any]:
    """A line's name and how many options each choice has.

    Parameters
    ----------
    line : Line
    """
    counts = {name: len(choice.options) for name, choice in line.choices.items()}
    return {"name": line.name, "options": counts}
