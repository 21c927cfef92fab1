"""Values as people type them, made into what the engineering reads; what it means stays the same.

A number alone takes the unit that the form says; a comma is a decimal point; inch signs and
written fractions are spelled out. What cannot be told is left for the engineering to refuse.
"""

from __future__ import annotations

import re
from typing import Literal

Alone = Literal["mm", "cm", "in"]
ALONE: tuple[tuple[Alone, str], ...] = (
    ("mm", "mm and kg"),
    ("cm", "cm and kg"),
    ("in", "inches and pounds"),
)
"""What a number without a unit means, and how it is said."""

_UNITS: dict[str, dict[str, str]] = {
    "length": {"mm": "mm", "cm": "cm", "in": "in"},
    "mass": {"mm": "kg", "cm": "kg", "in": "lb"},
    "force": {"mm": "N", "cm": "N", "in": "lbf"},
}
_FRACTIONS = {
    "½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8",
    "⅓": "1/3", "⅔": "2/3",
}  # fmt: skip
_INCH_MARKS = re.compile(r"\s*(?:\"|″|”|''|\binch(?:es)?\b|\bins?\b\.?)\s*$", re.IGNORECASE)
_WORDS = {
    "mm": "mm", "cm": "cm", "m": "m", "kg": "kg", "kgs": "kg", "g": "g", "lb": "lb", "lbs": "lb",
    "n": "N", "lbf": "lbf", "kgf": "kgf",
}  # fmt: skip
_ALONE = re.compile(r"[-+]?(?:\d+(?:\.\d+)?|\d+/\d+|\d+ \d+/\d+)")
_LAST_WORD = re.compile(r"([\d/])\s*([A-Za-z]+)\.?$")


def with_unit(typed: str, dimension: str, alone: str) -> str:
    """Return a value with its unit written out; empty for nothing.

    Parameters
    ----------
    typed : str
        As it stands in the form.
    dimension : str
        ``"length"``, ``"mass"`` or ``"force"``.
    alone : str
        What a number alone means: a key of `ALONE`.

    Examples
    --------
    >>> with_unit("16 1/4", "length", "in"), with_unit('16¼"', "length", "mm")
    ('16 1/4 in', '16 1/4 in')
    >>> with_unit("42,5cm", "length", "mm"), with_unit("72.5", "mass", "cm")
    ('42.5 cm', '72.5 kg')
    """
    text = tidied(typed)
    if not text:
        return ""
    inches = _INCH_MARKS.sub(" in", text)
    if inches != text:
        text = inches
    found = _LAST_WORD.search(text)
    if found and found[2].lower() in _WORDS:
        text = f"{text[: found.end(1)]} {_WORDS[found[2].lower()]}"
    if _ALONE.fullmatch(text):
        unit = _UNITS.get(dimension, {}).get(alone, "")
        text = f"{text} {unit}".rstrip()
    return text


def tidied(typed: str) -> str:
    """Return what was typed with plain blanks, fractions and decimal point.

    Examples
    --------
    >>> tidied("16-1/4"), tidied(" 42,5  cm"), tidied("16½")
    ('16 1/4', '42.5 cm', '16 1/2')
    """
    text = " ".join(typed.replace("\N{NO-BREAK SPACE}", " ").split())
    for sign, words in _FRACTIONS.items():
        text = text.replace(sign, f" {words}")
    text = text.replace("\N{FRACTION SLASH}", "/").replace("\N{MINUS SIGN}", "-")
    text = re.sub(r"(\d)\s*-\s*(\d+/\d+)", r"\1 \2", text)
    text = re.sub(r"(\d)\s*,\s*(\d{1,2})(?!\d)", r"\1.\2", text)
    return " ".join(text.split())


def plain_number(typed: str) -> float | None:
    """Return a number that stands alone; None for anything else."""
    text = tidied(typed).removesuffix("%").strip()
    return float(text) if re.fullmatch(r"-?\d+(?:\.\d+)?", text) else None
