"""How the files of one fitting are called, and whether their places are free."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from chairwright.errors import InputError, Problem

ENDINGS = ("setup.yaml", "sheet.pdf", "side.svg", "plan.svg", "polar.svg", "figures.json")
NEAREST = "-nearest"


def file_name(reference: str, line: str = "") -> str:
    """How the files of a client start: the reference, and the line's name when there are several.

    Parameters
    ----------
    reference, line : str

    Examples
    --------
    >>> file_name("WR-014"), file_name("WR-014", "light-rigid")
    ('wr-014', 'wr-014-light-rigid')
    """
    return "-".join(part.lower() for part in (reference, line) if part)


def check_free(folder: Path, names: Iterable[str]) -> None:
    """Refuse to start when a file of this client stands in the folder already.

    Parameters
    ----------
    folder : Path
    names : iterable of str
        How the files start, from `file_name`.

    Raises
    ------
    InputError
        With every file that is in the way.
    """
    paths = [
        folder / f"{name}{kind}-{end}"
        for name in names
        for kind in ("", NEAREST)
        for end in ENDINGS
    ]
    problems = [
        Problem(str(path), "the file must not exist yet", "a file", "Say --replace, or use "
                "another folder.")
        for path in paths
        if path.exists()
    ]  # fmt: skip
    if problems:
        raise InputError(*problems)
