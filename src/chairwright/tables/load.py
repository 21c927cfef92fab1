"""Reading the published tables that ship with chairwright."""

from __future__ import annotations

import csv
import tomllib
from functools import cache
from importlib.resources import files
from types import MappingProxyType
from typing import Any

Row = MappingProxyType[str, str]


@cache
def load_table(topic: str, name: str) -> tuple[Row, ...]:
    """Read one published table, as printed.

    Parameters
    ----------
    topic : str
        Folder under ``chairwright/tables``, for example ``"body"``.
    name : str
        File name without ``.csv``, for example ``"de_leva1996_segments"``.

    Returns
    -------
    tuple of read-only mapping
        One mapping of column name to printed text for each row, in printed order.

    Raises
    ------
    FileNotFoundError
        When the package holds no such table.

    Examples
    --------
    >>> load_table("body", "osterkamp1995_amputation")[0]["mass_pct_of_intact_body"]
    '0.7'
    """
    place = files("chairwright.tables").joinpath(topic, f"{name}.csv")
    lines = place.read_text(encoding="utf-8").splitlines()
    return tuple(MappingProxyType(row) for row in csv.DictReader(lines))


@cache
def load_sidecar(topic: str, name: str) -> MappingProxyType[str, Any]:
    """Read the citation of one table.

    Parameters
    ----------
    topic, name : str
        As for `load_table`.

    Returns
    -------
    read-only mapping
        Keys title, source, citation, place, tag, units, sample, precision, how_read, notes.
    """
    place = files("chairwright.tables").joinpath(topic, f"{name}.toml")
    return MappingProxyType(tomllib.loads(place.read_text(encoding="utf-8")))


@cache
def load_sources() -> MappingProxyType[str, str]:
    """Return the full citation of every short source name.

    Returns
    -------
    read-only mapping
        Short name, as in the sidecars, to citation.
    """
    place = files("chairwright.tables").joinpath("sources.toml")
    return MappingProxyType(tomllib.loads(place.read_text(encoding="utf-8")))


def find_row(topic: str, name: str, /, **keys: str) -> Row:
    """Return the one row whose columns hold the given texts.

    Parameters
    ----------
    topic, name : str
        As for `load_table`.
    **keys : str
        Column name to the text that it must hold.

    Returns
    -------
    read-only mapping
        The row.

    Raises
    ------
    LookupError
        When no row, or more than one, fits.
    """
    rows = [r for r in load_table(topic, name) if all(r[k] == v for k, v in keys.items())]
    if len(rows) != 1:
        msg = f"{topic}/{name} must hold one row with {keys}; got {len(rows)}"
        raise LookupError(msg)
    return rows[0]
