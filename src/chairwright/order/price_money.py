"""Money in decimals.

Rounding rule: every price line, every discount, every surcharge and every tax is rounded by itself
to the currency's smallest unit, half a unit up (ROUND_HALF_UP). Sums are of rounded amounts, so
what is printed always adds up. Tax is worked out once for each rate, on the sum of its lines.
"""

from __future__ import annotations

from decimal import ROUND_HALF_UP, Decimal

ZERO = Decimal(0)
HUNDRED = Decimal(100)
USUAL_DIGITS = 2
"""Digits behind the point of a currency unless a price list says otherwise."""


def from_line(number: object) -> Decimal:
    """A price of a line file as the decimal that was written there.

    Parameters
    ----------
    number : number
        As the line holds it.

    Returns
    -------
    Decimal
        By way of the shortest text that means the number, so 12.5 is 12.5 and 0.1 is 0.1.

    Examples
    --------
    >>> from_line(677.1)
    Decimal('677.1')
    """
    return Decimal(str(number))


def rounded(amount: Decimal, digits: int) -> Decimal:
    """Round an amount, half a unit up.

    Parameters
    ----------
    amount : Decimal
    digits : int
        Behind the point.

    Returns
    -------
    Decimal

    Examples
    --------
    >>> rounded(Decimal("2.345"), 2), rounded(Decimal("2.5"), 0)
    (Decimal('2.35'), Decimal('3'))
    """
    return amount.quantize(Decimal(1).scaleb(-digits), rounding=ROUND_HALF_UP)


def share(amount: Decimal, percent: Decimal, digits: int) -> Decimal:
    """A percentage of an amount, rounded.

    Parameters
    ----------
    amount, percent : Decimal
    digits : int
        Behind the point.

    Returns
    -------
    Decimal

    Examples
    --------
    >>> share(Decimal("19.90"), Decimal("12.5"), 2)
    Decimal('2.49')
    """
    return rounded(amount * percent / HUNDRED, digits)


def total(amounts: list[Decimal], digits: int) -> Decimal:
    """A sum with its digits, even when there is nothing to add."""
    return rounded(sum(amounts, ZERO), digits)


def money_words(amount: Decimal, currency: str) -> str:
    """Write an amount: ``785.00 EUR``."""
    return f"{amount:f} {currency}"


def percent_words(percent: Decimal) -> str:
    """Write a percentage without idle noughts: ``7 %``, ``12.5 %``."""
    text = f"{percent:f}"
    return f"{text.rstrip('0').rstrip('.') if '.' in text else text} %"
