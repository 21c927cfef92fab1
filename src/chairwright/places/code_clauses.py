"""Public access codes as dated data: codes, single clauses, and what a clause says of a value.

Codes are written for buildings, not for one person's chair. They are shown beside the chair's
own verdict; they never decide a set-up.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from types import MappingProxyType
from typing import Literal, cast

from chairwright.places.model import Building, Place, Site
from chairwright.tables.load import Row, load_table
from chairwright.units import MM_PER_INCH

Word = Literal["holds", "fails", "not known"]
Sense = Literal["at_most", "at_least", "needed"]

SLACK = 1e-6
"""A value this near to a limit keeps it (rounding of the arithmetic, mm or slope)."""

CERTAINTY = {
    "R": "read in the source",
    "R2": "restated by a secondary source",
    "R/R2": "read in the source or restated by a secondary source",
    "M": "from memory, unverified",
}
_MM = {"mm": 1.0, "m": 1000.0, "in": MM_PER_INCH}


@dataclass(frozen=True)
class Code:
    """One public code in one edition.

    Parameters
    ----------
    key : str
        As written in a places file.
    title, country, edition, dated, status, meant_for, source, tag, note : str
        ``dated`` is the day or year of the edition that was read.
    """

    key: str
    title: str
    country: str
    edition: str
    dated: str
    status: str
    meant_for: str
    source: str
    tag: str
    note: str


@dataclass(frozen=True)
class Clause:
    """One limit of one code.

    Parameters
    ----------
    key, code, number, item : str
        Key of the table, key of the code, clause as printed, and what is limited.
    sense : {"at_most", "at_least", "needed"}
    limit : float or None
        In mm, or rise by run; None when a thing is asked for and not a number.
    printed : str
        The limit as printed, with its unit.
    tag, note : str
    """

    key: str
    code: str
    number: str
    item: str
    sense: Sense
    limit: float | None
    printed: str
    tag: str
    note: str = ""

    @property
    def asked(self) -> str:
        """What must hold, with the printed number and, where that is not metric, mm."""
        if self.limit is None:
            return f"{self.item} needed"
        metric = f" ({self.limit:.5g} mm)" if self.printed.endswith(" in") else ""
        words = "at most" if self.sense == "at_most" else "at least"
        return f"{self.item} {words} {self.printed}{metric}"


@dataclass(frozen=True)
class Ruling:
    """What one clause says of one place.

    Parameters
    ----------
    code, clause, item : str
    word : {"holds", "fails", "not known"}
    asked : str
        What must hold, with numbers.
    found : str
        What is there, with numbers; ``not measured`` when it is not known.
    tag, note : str
        Certainty of the clause as the reference tags it, and what else it says.
    """

    code: str
    clause: str
    item: str
    word: Word
    asked: str
    found: str
    tag: str
    note: str = ""

    @property
    def certainty(self) -> str:
        """The tag in words."""
        return CERTAINTY[self.tag]


@cache
def _codes() -> Mapping[str, Code]:
    rows = load_table("access", "access_codes")
    return MappingProxyType({row["key"]: Code(**row) for row in rows})


CODES = _codes()
"""Every code that is held, by its key."""


@cache
def _clauses() -> Mapping[str, tuple[Clause, Row]]:
    rows = load_table("access", "access_clauses")
    return MappingProxyType({row["key"]: (_clause(row), row) for row in rows})


def _clause(row: Row) -> Clause:
    value, unit = row["value"], row["unit"]
    printed = value if unit == "ratio" else f"{value} {unit}"
    limit = read_limit(value, unit) if value else None
    sense = cast(Sense, row["sense"])
    names = (row["key"], row["code"], row["clause"], row["item"])
    return Clause(*names, sense, limit, printed.strip(), row["tag"], row["note"])


def read_limit(printed: str, unit: str) -> float:
    """Return a printed limit as a number.

    Parameters
    ----------
    printed : str
        ``1/2``, ``30`` or, for a slope, ``1:12``.
    unit : str
        ``mm``, ``m``, ``in``, ``ratio`` or ``lbf``.

    Returns
    -------
    float
        In mm for a length, rise by run for a slope, else as printed.

    Examples
    --------
    >>> read_limit("1/2", "in")
    12.7
    """
    return float(Fraction(printed.replace(":", "/"))) * _MM.get(unit, 1.0)


def clause(key: str) -> Clause:
    """Return one clause by its key in the table.

    Raises
    ------
    KeyError
    """
    return _clauses()[key][0]


def applies(key: str, site: Site, building: Building) -> bool:
    """Return whether a clause counts on a site and for a building.

    Parameters
    ----------
    key : str
    site : {"new", "existing"}
    building : {"dwelling", "public"}
    """
    row = _clauses()[key][1]
    return row["site"] in ("any", site) and row["building"] in ("any", building)


def length(value: float | None, place: Place | None = None, attribute: str = "") -> str:
    """Return a length in words: as typed where it was typed, and in mm.

    Parameters
    ----------
    value : float or None [mm]
    place : Place, optional
        The place that has it.
    attribute : str
        Name of the place's attribute.
    """
    if value is None:
        return "not measured"
    shown = f"{value:.5g} mm"
    typed = "" if place is None else place.typed.get(attribute, "")
    return shown if typed in ("", shown) else f"{typed} ({shown})"


def slope(ratio: float | None) -> str:
    """Return a slope in words, for example ``1:12`` or ``1:7.9``."""
    if ratio is None:
        return "not measured"
    return "level" if ratio == 0 else f"1:{1 / ratio:.4g}"


def ruling(key: str, value: float | None, found: str, note: str = "") -> Ruling:
    """Judge a value by one clause.

    Parameters
    ----------
    key : str
        Key of the clause.
    value : float or None [mm or rise by run]
        None when it was not measured.
    found : str
        The value in words.
    note : str
        Takes the place of the clause's own note when it is given.
    """
    each = clause(key)
    word: Word = "not known"
    if value is not None and each.limit is not None:
        inside = value - each.limit if each.sense == "at_least" else each.limit - value
        word = "holds" if inside >= -SLACK else "fails"
    return stated(each, word, found, note)


def stated(each: Clause, word: Word, found: str, note: str = "", asked: str = "") -> Ruling:
    """Return a ruling of a clause that was judged elsewhere.

    Parameters
    ----------
    each : Clause
    word : {"holds", "fails", "not known"}
    found, note, asked : str
        Note and asked are the clause's own when they are left out.
    """
    asked, note = asked or each.asked, note or each.note
    return Ruling(each.code, each.number, each.item, word, asked, found, each.tag, note)


def from_flag(flag: bool | None) -> Word:
    """Return the word for something that is there, is not, or was not looked at."""
    if flag is None:
        return "not known"
    return "holds" if flag else "fails"
