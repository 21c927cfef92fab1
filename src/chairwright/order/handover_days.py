"""Days of the calendar, and days some time after them; what day today is, nobody asks here."""

from __future__ import annotations

from calendar import monthrange
from dataclasses import dataclass

from chairwright.errors import InputError, Problem
from chairwright.files.order_fields import is_date

MONTHS = 12
FIRST_YEAR, LAST_YEAR = 1900, 2999


@dataclass(frozen=True, order=True)
class Day:
    """A day of the Gregorian calendar."""

    year: int
    month: int
    day: int

    def __str__(self) -> str:
        """Return the day as ``2026-11-25``."""
        return f"{self.year:04d}-{self.month:02d}-{self.day:02d}"


def day_of(typed: str) -> Day | None:
    """Read the day of delivery.

    Parameters
    ----------
    typed : str
        ``2026-11-25``, or empty.

    Returns
    -------
    Day or None
        None when it is empty.

    Raises
    ------
    InputError
        When it is no day of the calendar from 1900 to 2999.
    """
    if not typed:
        return None
    if is_date(typed) and FIRST_YEAR <= int(typed[:4]) <= LAST_YEAR:
        return Day(*(int(part) for part in typed.split("-")))
    must = "it must be a day of the calendar as year-month-day"
    raise InputError(Problem("delivered", must, repr(typed), "Write it like 2026-11-25."))


def months_after(day: Day, months: int) -> Day:
    """The same day some months later; the last of the month where it has no such day.

    Parameters
    ----------
    day : Day
    months : int
        Not negative.

    Returns
    -------
    Day

    Examples
    --------
    >>> str(months_after(Day(2026, 11, 30), 3))
    '2027-02-28'
    """
    years, month = divmod(day.month - 1 + months, MONTHS)
    year = day.year + years
    return Day(year, month + 1, min(day.day, monthrange(year, month + 1)[1]))


def days_after(day: Day, days: int) -> Day:
    """The day some days later.

    Parameters
    ----------
    day : Day
    days : int
        Not negative.

    Returns
    -------
    Day

    Examples
    --------
    >>> str(days_after(Day(2026, 12, 28), 7))
    '2027-01-04'
    """
    left = day.day + days
    at = Day(day.year, day.month, 1)
    while left > (length := monthrange(at.year, at.month)[1]):
        left -= length
        at = months_after(at, 1)
    return Day(at.year, at.month, left)


def days_between(first: Day, last: Day) -> int:
    """How many days the last lies after the first.

    Parameters
    ----------
    first, last : Day
        In this order.

    Examples
    --------
    >>> days_between(Day(2027, 12, 1), Day(2028, 12, 1))
    366
    """
    count, at = last.day - first.day, Day(first.year, first.month, 1)
    while (at.year, at.month) < (last.year, last.month):
        count += monthrange(at.year, at.month)[1]
        at = months_after(at, 1)
    return count
