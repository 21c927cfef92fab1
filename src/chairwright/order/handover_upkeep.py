"""Upkeep and review: what is due how often, and on which days after delivery."""

from __future__ import annotations

from collections.abc import Iterator

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
from chairwright.order.handover_days import MONTHS, Day, days_after, days_between, months_after

USUAL_WEEKS = 5
"""Boxes for a month of which the days are not known."""
FIRST_REVIEW, LAST_REVIEW = 6, 12
"""Months after which a first chair is reviewed."""


def upkeep(day: Day | None) -> tuple[Upkeep, ...]:
    """The works of upkeep with the day on which each is first due.

    Parameters
    ----------
    day : Day or None
        Of delivery.

    Returns
    -------
    tuple of Upkeep
    """
    week = "" if day is None else str(days_after(day, 7))
    month, year = ("" if day is None else str(months_after(day, n)) for n in (1, MONTHS))
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


def months(day: Day | None) -> tuple[Month, ...]:
    """The calendar of the first year.

    Parameters
    ----------
    day : Day or None
        Of delivery; without it the days are left to be written in.

    Returns
    -------
    tuple of Month
        Each with as many boxes as weekly works fall due in it.
    """
    return tuple(_months(day))


def _months(day: Day | None) -> Iterator[Month]:
    for number in range(1, MONTHS + 1):
        if day is None:
            yield Month(number, "", USUAL_WEEKS, number == MONTHS)
            continue
        begin, end = months_after(day, number - 1), months_after(day, number)
        weeks = days_between(day, end) // 7 - days_between(day, begin) // 7
        yield Month(number, str(end), weeks, number == MONTHS)


def review(day: Day | None) -> Review:
    """When the chair is reviewed.

    Parameters
    ----------
    day : Day or None
        Of delivery.
    """
    earliest, latest = (
        "" if day is None else str(months_after(day, each)) for each in (FIRST_REVIEW, LAST_REVIEW)
    )
    words = f"A first chair is reviewed after the first {FIRST_REVIEW} to {LAST_REVIEW} months"
    return Review(earliest, latest, words, MODULE_9)
