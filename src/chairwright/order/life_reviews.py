"""When chair and client are looked at again: by the client's growth, and by common practice."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.order.handover import HOSPITAL, MODULE_9
from chairwright.order.handover_days import Day, months_after
from chairwright.order.handover_upkeep import FIRST_REVIEW, LAST_REVIEW
from chairwright.order.life import Life
from chairwright.order.states import MONTHS
from chairwright.person.client import Client
from chairwright.person.growth_table import GROWN_YEARS
from chairwright.targets.target import Target

CHILD_MONTHS = 6
PRACTICE = "common practice, no source"


@dataclass(frozen=True)
class ReviewDue:
    """One reason to look at chair and client again.

    Parameters
    ----------
    months : int
        From now.
    day : str
        Empty without a day of delivery.
    reason : str
    outcome : str
        What is to be expected then; empty when nothing is known.
    source : str
    by_growth : bool
        Whether it follows from the client's own figures.
    musts : tuple of Target
        That run out, when it does.
    """

    months: int
    day: str
    reason: str
    outcome: str
    source: str
    by_growth: bool = False
    musts: tuple[Target, ...] = ()


def reviews(life: Life, client: Client, delivered: Day | None = None) -> tuple[ReviewDue, ...]:
    """Every reason to look again, the soonest first: the first of them is when it is due.

    Parameters
    ----------
    life : Life
    client : Client
    delivered : Day or None
        Day of delivery, which counts as now.

    Returns
    -------
    tuple of ReviewDue
    """
    found = [
        _usual(FIRST_REVIEW, f"a first chair is reviewed after {FIRST_REVIEW} to {LAST_REVIEW} "
               "months", MODULE_9),
        _usual(MONTHS, "service by a professional, every year", HOSPITAL),
    ]  # fmt: skip
    if client.age_years is not None and client.age_years < GROWN_YEARS:
        found.append(_usual(CHILD_MONTHS, "a growing child is measured every half year", PRACTICE))
    if life.first_end is not None:
        found.append(_by_growth(life))
    found.sort(key=lambda each: (each.months, not each.by_growth))
    return tuple(_dated(each, delivered) for each in found)


def _usual(months: int, reason: str, source: str) -> ReviewDue:
    return ReviewDue(months, "", reason, "", source)


def _by_growth(life: Life) -> ReviewDue:
    """A month before the delivered setting first holds no longer."""
    end = life.first_end
    if end is None:
        message = "the delivered setting serves throughout"
        raise ValueError(message)
    outcome = "another setting of the same parts" if end.reset else "new parts"
    return ReviewDue(
        months=max(end.months - 1, 0),
        day="",
        reason=f"after this the setting may hold no longer ({end.track})",
        outcome=outcome,
        source="the client's measures and the range stated here",
        by_growth=True,
        musts=end.musts,
    )


def _dated(each: ReviewDue, delivered: Day | None) -> ReviewDue:
    if delivered is None:
        return each
    day = str(months_after(delivered, each.months))
    return ReviewDue(
        each.months, day, each.reason, each.outcome, each.source, each.by_growth, each.musts
    )
