"""Lengths, masses and angles as people type them, stored once in SI-based units.

1 in = 25.4 mm and 1 lb = 0.45359237 kg exactly (international yard and pound agreement, 1959).
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from chairwright.errors import InputError, Problem

MM_PER_INCH = 25.4
KG_PER_POUND = 0.45359237
LONGEST = 40

Dimension = Literal["length", "mass", "angle"]

_FACTORS: dict[Dimension, dict[str, float]] = {
    "length": {"mm": 1.0, "cm": 10.0, "m": 1000.0, "in": MM_PER_INCH},
    "mass": {"kg": 1.0, "g": 0.001, "lb": KG_PER_POUND},
    "angle": {"deg": 1.0},
}
_BASE_UNIT: dict[Dimension, str] = {"length": "mm", "mass": "kg", "angle": "deg"}
_EXAMPLE: dict[Dimension, str] = {
    "length": "'430 mm', '43 cm' or '16 1/2 in'",
    "mass": "'72.5 kg' or '160 lb'",
    "angle": "'8 deg'",
}
_TYPED = re.compile(
    r"""^\s*(?P<sign>[-+]?)\s*
    (?:(?P<whole>\d+)\s+(?P<num1>\d+)/(?P<den1>\d+)
      |(?P<num2>\d+)/(?P<den2>\d+)
      |(?P<decimal>\d+(?:\.\d+)?))
    \s*(?P<unit>[A-Za-z]*)\s*$""",
    re.VERBOSE,
)


@dataclass(frozen=True)
class Quantity:
    """A value in its base unit together with the way it was typed.

    Parameters
    ----------
    value : float
        The value in mm, kg or degrees.
    typed : str
        The text as the user wrote it, unit included.
    dimension : {"length", "mass", "angle"}
    """

    value: float
    typed: str
    dimension: Dimension

    @property
    def unit(self) -> str:
        """Base unit of ``value``."""
        return _BASE_UNIT[self.dimension]


def parse_quantity(text: object, dimension: Dimension, where: str) -> Quantity:
    """Read a typed value with its unit.

    Parameters
    ----------
    text : object
        What was typed, for example ``"16 1/2 in"``; anything but text is refused.
    dimension : {"length", "mass", "angle"}
    where : str
        ``file:line`` or field, for the message.

    Returns
    -------
    Quantity
        Value in mm, kg or degrees, with the typed text kept.

    Raises
    ------
    InputError
        When the text is not a number with a unit of this dimension.

    Examples
    --------
    >>> parse_quantity("16 1/2 in", "length", "hip_width").value
    419.1
    """
    match = _TYPED.match(text) if isinstance(text, str) and len(text) <= LONGEST else None
    unit = match["unit"] if match else ""
    factor = _FACTORS[dimension].get(unit)
    if match is None or factor is None or _divides_by_zero(match):
        raise InputError(_unit_problem(text, dimension, where))
    number = _number(match)
    sign = -1.0 if match["sign"] == "-" else 1.0
    return Quantity(round(sign * number * factor, 9), str(text).strip(), dimension)


def _divides_by_zero(match: re.Match[str]) -> bool:
    return any(text is not None and int(text) == 0 for text in (match["den1"], match["den2"]))


def _number(match: re.Match[str]) -> float:
    if match["decimal"]:
        return float(match["decimal"])
    if match["num2"]:
        return float(Fraction(int(match["num2"]), int(match["den2"])))
    return int(match["whole"]) + float(Fraction(int(match["num1"]), int(match["den1"])))


def _unit_problem(text: object, dimension: Dimension, where: str) -> Problem:
    units = ", ".join(_FACTORS[dimension])
    return Problem(
        where=where,
        must=f"a {dimension} must be a number with a unit ({units})",
        got=repr(text),
        remedy=f"Write it like {_EXAMPLE[dimension]}.",
    )


def inches_text(length_mm: float, denominator: int = 8) -> str:
    """Show a length in inches to the nearest fraction.

    Parameters
    ----------
    length_mm : float [mm]
    denominator : int
        Finest fraction, a power of two.

    Returns
    -------
    str
        For example ``"16 1/2 in"``.

    Examples
    --------
    >>> inches_text(419.1)
    '16 1/2 in'
    """
    parts = round(abs(length_mm) / MM_PER_INCH * denominator)
    whole, rest = divmod(parts, denominator)
    fraction = Fraction(rest, denominator)
    shown = f"{whole} {fraction}" if whole and rest else str(fraction if rest else whole)
    return f"{'-' if length_mm < 0 and parts else ''}{shown} in"
