"""Upkeep and review: what is due how often, and on which days after delivery."""

from __future__ import annotations

import calendar
from collections.abc import Iterator
from datetime import date, timedelta

from chairwright.errors import InputError, Problem
from chairwright.order.handover import (
    COMMON,
    GUIDE,
    HOSPITAL,
    MODULE_9,
    SCHOOL,
    Month,
    Review,
    Upkeep,
)

MONTHS = 12
USUAL_WEEKS = 5
"""Boxes for a month of which the days are not known."""
LAST_YEAR = 9990
FIRST_REVIEW, LAST_REVIEW = 6, 12
"""Months after which a first chair is reviewed."""


def day_of(delivered: str) -> date | None:
    """Read the day of delivery.

    Parameters
    ----------
    delivered : str
        ``2026-11-25``, or empty.

    Returns
    -------
    date or None
        None when it is empty.

    Raises
    ------
    InputError
        When it is no day of the calendar.
    """
    if not delivered:
        return None
    try:
        day = date.fromisoformat(delivered)
    except ValueError:
        day = date.min
    if delivered == day.isoformat() and 1 < day.year < LAST_YEAR:
        return day
    must = "it must be a day of the calendar as year-month-day"
    raise InputError(Problem("delivered", must, repr(delivered), "Write it like 2026-11-25."))


def months_after(day: date, months: int) -> date:
    """The same day some months later; the last of the month where it has no such day.

    Parameters
    ----------
    day : date
    months : int

    Returns
    -------
    date

    Examples
    --------
    >>> months_after(date(2026, 11, 30), 3).isoformat()
    '2027-02-28'
    """
    years, month = divmod(day.month - 1 + months, MONTHS)
    year = day.year + years
    last = calendar.monthrange(year, month + 1)[1]
    return date(year, month + 1, min(day.day, last))


def upkeep(day: date | None) -> tuple[Upkeep, ...]:
    """The works of upkeep with the day on which each is first due.

    Parameters
    ----------
    day : date or None
        Of delivery.

    Returns
    -------
    tuple of Upkeep
    """
    week = "" if day is None else (day + timedelta(days=7)).isoformat()
    month, year = ("" if day is None else months_after(day, n).isoformat() for n in (1, MONTHS))
    return (
        Upkeep("every day", "", "Cushion the right way round; look at your skin", COMMON),
        Upkeep("every week", week, "Tyre pressure, as marked on the side of the tyre", HOSPITAL),
        Upkeep("every month", month, "Look for wear and cracks, and at the tread of the tyres",
               HOSPITAL),
        Upkeep("every month", month, "Wheels, spokes, hand rims and brakes", SCHOOL),
        Upkeep("every year", year, "Service by a professional", HOSPITAL),
        Upkeep("when worn", "", "New tyres in pairs, never one alone", HOSPITAL),
        Upkeep("after every change", "", "Tip check in all directions, with a helper", GUIDE),
    )  # fmt: skip


def months(day: date | None) -> tuple[Month, ...]:
    """The calendar of the first year.

    Parameters
    ----------
    day : date or None
        Of delivery; without it the days are left to be written in.

    Returns
    -------
    tuple of Month
        Each with as many boxes as weekly works fall due in it.
    """
    return tuple(_months(day))


def _months(day: date | None) -> Iterator[Month]:
    for number in range(1, MONTHS + 1):
        if day is None:
            yield Month(number, "", USUAL_WEEKS, number == MONTHS)
            continue
        begin, end = months_after(day, number - 1), months_after(day, number)
        weeks = (end - day).days // 7 - (begin - day).days // 7
        yield Month(number, end.isoformat(), weeks, number == MONTHS)


def review(day: date | None) -> Review:
    """When the chair is reviewed.

    Parameters
    ----------
    day : date or None
        Of delivery.
    """
    earliest, latest = (
        "" if day is None else months_after(day, each).isoformat()
        for each in (FIRST_REVIEW, LAST_REVIEW)
    )
    words = f"A first chair is reviewed after the first {FIRST_REVIEW} to {LAST_REVIEW} months"
    return Review(earliest, latest, words, MODULE_9)
