"""Product lines for tests: the shipped one as written, and variations of it."""

from __future__ import annotations

import copy
import tempfile
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML

from chairwright.line.load import load_line
from chairwright.line.model import Line

Written = dict[str, Any]


@cache
def everyday() -> Line:
    """Load the shipped line once."""
    return load_line("everyday")


@cache
def _everyday_as_written() -> Written:
    text = (files("chairwright.line") / "lines" / "everyday.yaml").read_text(encoding="utf-8")
    data: Written = YAML(typ="safe").load(text)
    return data


def everyday_as_written() -> Written:
    """Return a copy of the shipped line's file that a test may change.

    Without its fasteners: they move no figure, and name parts that a test may take out.
    """
    data = copy.deepcopy(_everyday_as_written())
    del data["fasteners"]
    return data


def line_from(data: Written) -> Line:
    """Write a line file and load it as any user would."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "line.yaml"
        writer: Any = YAML(typ="safe")
        writer.sort_base_mapping_type_on_output = False  # the file's order breaks ties
        with path.open("w", encoding="utf-8") as stream:
            writer.dump(data, stream)
        return load_line(str(path))
