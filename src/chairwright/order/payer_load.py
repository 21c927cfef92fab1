"""Reading a payer's scheme file: every mistake with its line and what to do."""

from __future__ import annotations

import re
from functools import cache
from importlib.resources import files
from pathlib import Path

from chairwright.errors import InputError, Problem
from chairwright.order.payer_build import build_scheme
from chairwright.order.payer_checks import mistakes
from chairwright.order.payer_model import Scheme
from chairwright.order.payer_schema import WrittenScheme
from chairwright.reading import read_yaml
from chairwright.validation import check_model, suggest

SHIPPED = ("us-hcpcs", "demo")
LIMIT_BYTES = 1_000_000


def load_scheme(name_or_path: str) -> Scheme:
    """A shipped scheme by its plain name, or a scheme file by its path.

    Parameters
    ----------
    name_or_path : str
        For example ``"us-hcpcs"`` or ``"ours/scheme.yaml"``.

    Returns
    -------
    Scheme

    Raises
    ------
    InputError
        With ``file:line`` for each mistake in the file.
    """
    if name_or_path in SHIPPED:
        return _shipped(name_or_path)
    if "/" not in name_or_path and "." not in name_or_path:
        raise InputError(_unknown(name_or_path))
    return _read(Path(name_or_path))


@cache
def _shipped(name: str) -> Scheme:
    return _read(Path(str(files("chairwright.order") / "schemes" / f"{name}.yaml")))


def _read(path: Path) -> Scheme:
    source = read_yaml(path, LIMIT_BYTES)
    written = check_model(WrittenScheme, source)
    problems = mistakes(written, source)
    if problems:
        raise InputError(*sorted(problems, key=_line_number))
    return build_scheme(written, source)


def _line_number(problem: Problem) -> int:
    found = re.search(r":(\d+)(?:: |$)", problem.where)
    return int(found[1]) if found else 0


def _unknown(name: str) -> Problem:
    return Problem(
        where="--scheme",
        must=f"the scheme must be a shipped one ({', '.join(SHIPPED)}) or a scheme file's path",
        got=repr(name),
        remedy=f"{suggest(name, SHIPPED)} A path needs a slash or a dot, such as ./ours.yaml.",
    )
