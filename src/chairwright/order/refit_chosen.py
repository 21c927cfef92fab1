"""One row of a re-fit, chosen: its set-up with everything that is said of it, and the steps."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.errors import InputError, Problem
from chairwright.fitting.described import Described
from chairwright.order.adjust import Adjustment, adjust
from chairwright.order.refit import Refit, RefitPoint, described


@dataclass(frozen=True)
class ChosenRefit:
    """A re-fit with one of its rows chosen.

    Parameters
    ----------
    refit : Refit
    point : RefitPoint or None
        None when there is no row.
    setup : Described or None
        The set-up of the row.
    steps : Adjustment or None
        From the chair as it is to it; None where nothing changes.
    """

    refit: Refit
    point: RefitPoint | None = None
    setup: Described | None = None
    steps: Adjustment | None = None


def choose(found: Refit, number: int = 1) -> ChosenRefit:
    """Choose one row of the trade-off.

    Parameters
    ----------
    found : Refit
    number : int
        From 1, the smallest change.

    Returns
    -------
    ChosenRefit
        Without a point when the re-fit has none.

    Raises
    ------
    InputError
        When there is no such row.
    """
    if not found.points and number == 1:
        return ChosenRefit(found)
    if not 1 <= number <= len(found.points):
        must = f"it must be a row of the trade-off, 1 to {len(found.points)}"
        if not found.points:
            must = "there must be a row to choose"
        raise InputError(Problem("--choose", must, str(number), "Leave it out."))
    point = found.points[number - 1]
    setup = described(found, point.change)
    steps = None
    if point.change.items and not found.new_chair:
        steps = adjust(found.present.setup, setup, found.person.occupant)
    return ChosenRefit(found, point, setup, steps)
