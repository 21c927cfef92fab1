"""A line from its text, read once."""

from __future__ import annotations

from functools import lru_cache
from importlib.resources import files

from chairwright.line.load import load_line
from chairwright.line.model import Line
from chairwright.reading import FileText

NAMED = "line.yaml"
"""What messages call the text; it is taken off them again."""


@lru_cache(maxsize=8)
def line_from(text: str) -> Line:
    """Read a line.

    Parameters
    ----------
    text : str
        Of a line that was checked.

    Raises
    ------
    InputError
        With every mistake, when it was not.
    """
    return load_line(FileText(NAMED, text))


@lru_cache(maxsize=8)
def shipped_text(name: str) -> str:
    """The file of a line that comes with the program.

    Parameters
    ----------
    name : str
        One of ``SHIPPED``.
    """
    place = files("chairwright.line") / "lines" / f"{name}.yaml"
    return place.read_text(encoding="utf-8")
