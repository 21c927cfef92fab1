"""Money, percentages, days and dates of the files that an order is made of."""

from __future__ import annotations

import re
from decimal import Decimal

from chairwright.files.fields import Fields
from chairwright.validation import shown
from chairwright.yaml_events import Key

_DECIMAL = re.compile(r"\d{1,9}(?:\.\d{1,9})?")
_DATE = re.compile(r"(\d{4})-(\d{2})-(\d{2})")
_DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)
MOST_DAYS = 400
MOST_MONEY = Decimal(1_000_000)


def decimal(fields: Fields, key: Key, high: Decimal, digits: int) -> Decimal | None:
    """Read a number as it was typed, digit by digit; None when it is not there or is wrong.

    Parameters
    ----------
    fields : Fields
    key : str or int
    high : Decimal
        Most that it may be; it is never below zero.
    digits : int
        Most digits behind the point.

    Returns
    -------
    Decimal or None
    """
    value = fields.data.get(key)
    if value is None:
        return None
    typed = fields.findings.source.text_of((*fields.at, key)).strip()
    if not isinstance(value, bool) and _DECIMAL.fullmatch(typed):
        number = Decimal(typed)
        if number <= high and _digits(typed) <= digits:
            return number
    behind = f"at most {digits} digits behind the point" if digits else "no digits behind a point"
    must = f"it must be a plain number from 0 to {high:,f}, with {behind}"
    fields.refuse(key, must, shown(value), "Correct the number; leave out any unit.")
    return None


def _digits(typed: str) -> int:
    return len(typed.partition(".")[2])


def whole(fields: Fields, key: Key, high: int = MOST_DAYS) -> int | None:
    """Read a whole number from 0; None when it is not there or is wrong.

    Parameters
    ----------
    fields : Fields
    key : str or int
    high : int
        Most that it may be.
    """
    value = fields.data.get(key)
    if value is None:
        return None
    if isinstance(value, int) and not isinstance(value, bool) and 0 <= value <= high:
        return value
    must = f"it must be a whole number from 0 to {high}"
    fields.refuse(key, must, shown(value), "Correct the number; leave out any unit.")
    return None


def is_date(text: str) -> bool:
    """Whether a text is a day of the calendar written as ``2026-11-25``.

    Examples
    --------
    >>> is_date("2024-02-29"), is_date("2026-02-29"), is_date("25.11.2026")
    (True, False, False)
    """
    match = _DATE.fullmatch(text)
    if match is None:
        return False
    year, month, day = (int(part) for part in match.groups())
    leap = year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)
    return 1 <= month <= 12 and 1 <= day <= _DAYS[month - 1] + (leap and month == 2)


def date(fields: Fields, key: Key, example: str = "") -> str:
    """Read a day as it was typed; empty when it is not there or is wrong.

    Parameters
    ----------
    fields : Fields
    key : str or int
    example : str
        Shown when it is missing; empty makes it optional.
    """
    text = fields.text(key, example=example, longest=20) or ""
    if text and not is_date(text):
        must = "it must be a day of the calendar as year-month-day"
        fields.refuse(key, must, repr(text), "Write it like 2026-11-25.")
        return ""
    return text
