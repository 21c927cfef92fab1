"""Values of facts: exact decimals in the scheme's unit, to the digits in which it prints them.

A value is compared as it is printed: rounded half up to the fact's digits in the fact's unit, by
decimal arithmetic (1 in = 25.4 mm, 1 lb = 0.45359237 kg exactly). What a reader sees is what was
compared, and a rated load of 113.4 kg counts as the 250.0 lb that it stands for.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import ROUND_HALF_UP, Decimal, InvalidOperation
from typing import Literal, cast

from chairwright.errors import InputError, Problem
from chairwright.order.payer_model import Fact, FactKind
from chairwright.units import Dimension, parse_quantity
from chairwright.validation import suggest

Value = Decimal | bool | str | tuple[str, ...]
How = Literal["declared", "set-up", "client", "unless told"]

UNITS: dict[str, dict[str, Decimal]] = {
    "length": {"mm": Decimal(1), "cm": Decimal(10), "in": Decimal("25.4")},
    "mass": {"kg": Decimal(1), "lb": Decimal("0.45359237")},
    "angle": {"deg": Decimal(1)},
}
"""Units of each kind, in mm, kg or degrees."""
BASE_UNITS = {"length": "mm", "mass": "kg", "angle": "deg"}
LARGEST = Decimal(1_000_000)
LONGEST = 200
COMPUTED_DIGITS = 6
"""Digits of a computed figure that are kept: the rest is rounding of the arithmetic."""


@dataclass(frozen=True)
class Known:
    """What is known of one fact.

    Parameters
    ----------
    value : Decimal, bool, str or tuple of str
    how : {"declared", "set-up", "client", "unless told"}
    words : str
        Where it comes from, for people.
    whole : bool
        False when a list of words may lack some.
    """

    value: Value
    how: How
    words: str = ""
    whole: bool = True


def in_unit(base: float, kind: FactKind, unit: str, digits: int) -> Decimal:
    """Turn a figure into the scheme's unit, as printed.

    Parameters
    ----------
    base : float [mm, kg, degrees or the figure's own unit]
    kind : FactKind
    unit : str
    digits : int
        Digits after the point.

    Returns
    -------
    Decimal

    Examples
    --------
    >>> in_unit(508.0, "length", "in", 2), in_unit(113.4, "mass", "lb", 1)
    (Decimal('20.00'), Decimal('250.0'))
    """
    exact = Decimal(str(round(base, COMPUTED_DIGITS)))
    factor = UNITS[kind][unit] if kind in UNITS else Decimal(1)
    return as_printed(exact / factor, digits)


def as_printed(value: Decimal, digits: int) -> Decimal:
    """Round half up to some digits after the point."""
    return value.quantize(Decimal(1).scaleb(-digits), rounding=ROUND_HALF_UP)


def declared(
    typed: str, kind: FactKind, unit: str, digits: int, words: tuple[str, ...], where: str
) -> Value:
    """Read what somebody declares.

    Parameters
    ----------
    typed : str
        ``yes`` or ``no``; a word; words with commas; a number in the fact's unit, or one with
        a unit of its own.
    kind : FactKind
    unit : str
    digits : int
    words : tuple of str
        What a word can be.
    where : str
        For messages.

    Returns
    -------
    Decimal, bool, str or tuple of str

    Raises
    ------
    InputError
    """
    typed = typed.strip()
    if kind == "yes or no":
        return _one_word(typed.lower(), ("yes", "no"), where) == "yes"
    if kind == "word":
        return _one_word(typed, words, where)
    if kind == "words":
        several = [each.strip() for each in typed.split(",")] if typed else []
        return tuple(dict.fromkeys(_one_word(each, words, where) for each in several))
    return as_printed(_number(typed, kind, unit, where), digits)


def _one_word(typed: str, words: tuple[str, ...], where: str) -> str:
    if typed in words:
        return typed
    must = f"it must be one of {', '.join(words)}"
    raise InputError(Problem(where, must, repr(typed[:LONGEST]), suggest(typed, words)))


def _number(typed: str, kind: FactKind, unit: str, where: str) -> Decimal:
    try:
        number = Decimal(typed) if "_" not in typed else Decimal("NaN")
    except InvalidOperation:
        if kind in UNITS:
            quantity = parse_quantity(typed, cast("Dimension", kind), where)
            number = Decimal(str(quantity.value)) / UNITS[kind][unit]
        else:
            number = Decimal("NaN")
    if number.is_finite() and 0 <= number <= LARGEST:
        return number
    must = f"it must be a number in {unit}, not negative"
    remedy = "Write the number, such as 2 or 2.5."
    raise InputError(Problem(where, must, repr(typed[:LONGEST]), remedy))


def value_words(fact: Fact, value: Value) -> str:
    """Write a value with its unit: ``33.90 lb``, ``yes``, ``tray, bag``.

    Parameters
    ----------
    fact : Fact
    value : Decimal, bool, str or tuple of str
    """
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, Decimal):
        return f"{value} {fact.unit}".strip()
    if isinstance(value, str):
        return (fact.words or {}).get(value, value)
    return ", ".join(value) or "none"
