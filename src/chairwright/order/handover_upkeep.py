"""Upkeep and review: what is due how often, and on which days after delivery."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.line.model import LineUpkeep
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

MAKER = "maker"
USUAL_WEEKS = 5
"""Boxes for a month of which the days are not known."""
FIRST_REVIEW, LAST_REVIEW = 6, 12
"""Months after which a first chair is reviewed."""


DAYS, MONTHS_LATER = {"every week": 7}, {
    "every month": 1, "every 3 months": 3, "every 6 months": 6, "every year": MONTHS,
}  # fmt: skip
"""When a work of upkeep is first due after delivery; the others have no day."""


def upkeep(day: Day | None, makers: Sequence[LineUpkeep] = ()) -> tuple[Upkeep, ...]:
    """The works of upkeep with the day on which each is first due.

    Parameters
    ----------
    day : Day or None
        Of delivery.
    makers : sequence of LineUpkeep
        What the line file states; it stands in place of the common intervals.

    Returns
    -------
    tuple of Upkeep
    """
    usual = (
        ("every week", "Tyre pressure, as marked on the side of the tyre", HOSPITAL),
        ("every month", "Look for wear and cracks, and at the tread of the tyres", HOSPITAL),
        ("every month", "Wheels, spokes, hand rims and brakes", SCHOOL),
        ("every year", "Service by a professional", HOSPITAL),
        ("when worn", "New tyres in pairs, never one alone", HOSPITAL),
    )
    told = tuple(
        (each.often, each.work[:1].upper() + each.work[1:], f"{MAKER}: {each.source}")
        for each in makers
    )
    works = (
        ("every day", "Cushion the right way round; look at your skin", COMMON),
        *(told or usual),
        ("after every change", "Tip check in all directions, with a helper", GUIDE),
    )
    return tuple(Upkeep(often, _first(often, day), work, source) for often, work, source in works)


def _first(often: str, day: Day | None) -> str:
    """Day on which a work is first due; empty when it has none or delivery is not known."""
    if day is None:
        return ""
    if often in DAYS:
        return str(days_after(day, DAYS[often]))
    return str(months_after(day, MONTHS_LATER[often])) if often in MONTHS_LATER else ""


def months(day: Day | None, makers: Sequence[LineUpkeep] = ()) -> tuple[Month, ...]:
    """The calendar of the first year.

    Parameters
    ----------
    day : Day or None
        Of delivery; without it the days are left to be written in.
    makers : sequence of LineUpkeep
        What the line file states; works that are due every few months have a box of service.

    Returns
    -------
    tuple of Month
        Each with as many boxes as weekly works fall due in it.
    """
    return tuple(_months(day, _service(makers)))


def _service(makers: Sequence[LineUpkeep]) -> frozenset[int]:
    """Numbers of the months at whose end a service is due."""
    apart = {MONTHS_LATER.get(each.often, 1) for each in makers} - {1} or {MONTHS}
    return frozenset(
        number for number in range(1, MONTHS + 1) if any(number % each == 0 for each in apart)
    )


def _months(day: Day | None, service: frozenset[int]) -> Iterator[Month]:
    for number in range(1, MONTHS + 1):
        if day is None:
            yield Month(number, "", USUAL_WEEKS, number in service)
            continue
        begin, end = months_after(day, number - 1), months_after(day, number)
        weeks = days_between(day, end) // 7 - days_between(day, begin) // 7
        yield Month(number, str(end), weeks, number in service)


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
