"""Reading a line file: every mistake with its line and what to do."""

from __future__ import annotations

import re
from importlib.resources import files
from pathlib import Path

from chairwright.errors import InputError, Problem
from chairwright.line import schema
from chairwright.line.checks import mistakes, unreachable
from chairwright.line.expand import build_line
from chairwright.line.model import Line
from chairwright.line.options import expand_choices
from chairwright.reading import FileText, read_yaml
from chairwright.validation import check_model

SHIPPED = ("everyday", "heavy-duty", "light-rigid")


def load_line(name_or_path: str | FileText) -> Line:
    """A shipped line by its plain name, or a line file by its path.

    Parameters
    ----------
    name_or_path : str or FileText
        For example ``"everyday"`` or ``"ours/line.yaml"``.

    Returns
    -------
    Line

    Raises
    ------
    InputError
        With ``file:line`` for each mistake in the file.
    """
    if isinstance(name_or_path, FileText):
        return _read(name_or_path)
    if name_or_path in SHIPPED:
        return _read(Path(str(files("chairwright.line") / "lines" / f"{name_or_path}.yaml")))
    if "/" not in name_or_path and "." not in name_or_path:
        raise InputError(_unknown(name_or_path))
    return _read(Path(name_or_path))


def _read(path: Path | FileText) -> Line:
    source = read_yaml(path)
    written = check_model(schema.WrittenLine, source)
    choices = expand_choices(written, source)
    _refuse(mistakes(written, choices, source))
    line = build_line(written, choices, source)
    _refuse(unreachable(line))
    return line


def _refuse(problems: list[Problem]) -> None:
    if problems:
        raise InputError(*sorted(problems, key=_line_number))


def _line_number(problem: Problem) -> int:
    found = re.search(r":(\d+)(?:: |$)", problem.where)
    return int(found[1]) if found else 0


def _unknown(name: str) -> Problem:
    return Problem(
        where="--line",
        must=f"the line must be a shipped one ({', '.join(SHIPPED)}) or the path of a line file",
        got=repr(name),
        remedy="A path needs a slash or a dot, for example ./mine.yaml.",
    )
