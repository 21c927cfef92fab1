"""Sets of measures beside each other: what is in use, what it was before, and by how much."""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from dataclasses import dataclass

from chairwright_desk.measures.bridge import Beside, Kind, Understood, kind_groups
from chairwright_desk.measures.bridge.changed import change_between
from chairwright_desk.measures.models import Measuring


@dataclass(frozen=True)
class Column:
    """One set."""

    taken_on: dt.date
    measuring: Measuring


@dataclass(frozen=True)
class Line:
    """One measure (of one side) through all sets, the newest first."""

    kind: Kind
    side: str
    cells: tuple[str, ...]
    changed: str
    estimated: tuple[Beside, ...]
    remarks: tuple[Beside, ...]


def columns_of(sets: Sequence[Measuring]) -> list[Column]:
    """Return the sets as columns."""
    return [Column(each.taken_on, each) for each in sets]


def rows_of(sets: Sequence[Measuring], told: Understood, units: str) -> list[Line]:
    """Return every measure that somebody took or that is estimated.

    Parameters
    ----------
    sets : sequence of Measuring
        The newest first.
    told : Understood
        Of the newest.
    units : {"mm", "in"}
    """
    lines = []
    for group in kind_groups():
        for kind in group.kinds:
            lines += _lines(kind, sets, told, units)
    return lines


def _lines(kind: Kind, sets: Sequence[Measuring], told: Understood, units: str) -> list[Line]:
    found: list[Line] = []
    said = told.beside.get(kind.name, [])
    remarks = tuple(each for each in said if each.kind != "estimated")
    guesses = tuple(each for each in said if each.kind == "estimated")
    for side, name in kind.fields:
        cells = tuple(each.fields.get(name, "") for each in sets)
        if any(cells):
            gap = (
                change_between(cells[1], cells[0], kind.dimension, units) if len(cells) > 1 else ""
            )
            mine = tuple(g for g in guesses if not cells[0] and g.words.startswith(side))
            found.append(Line(kind, side, cells, gap, mine, () if found else remarks))
    if not found:
        blank = ("",) * len(sets)
        found.append(Line(kind, "", blank, "", guesses, remarks))
    return found
