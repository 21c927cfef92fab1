"""Growth and change of one client: what lasts, the life of one set-up, and the reviews."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from chairwright.errors import InputError, Problem
from chairwright.fitting.extras import with_extras
from chairwright.fitting.weighed import WeighedClient
from chairwright.line.model import Line
from chairwright.order.chosen import Chosen, chosen
from chairwright.order.handover_days import day_of
from chairwright.order.lasting import STEP_MONTHS, Found, Lasting, find_lasting, how_long
from chairwright.order.life import Life, life_of, months_words
from chairwright.order.life_reviews import ReviewDue, reviews
from chairwright.order.states import MONTHS, Index, States
from chairwright.person.client import Client
from chairwright.person.growth import Growth, expected_growth
from chairwright.person.growth_table import SOURCE
from chairwright.places.model import Surroundings
from chairwright.search.any_of import find_any
from chairwright.search.best import find_best

CHILD_STEP_MONTHS = 3
"""The grid for a child, who grows through a seat's size in a year or two."""
NO_CHANGE = "Nothing is expected to change: the client file states no range."


@dataclass(frozen=True)
class Asked:
    """What is asked about the years to come.

    Parameters
    ----------
    years : float or None
        How long the range is; None takes the client file's.
    mass_share : float or None
        A range of this share of the body mass either way, where the file states none.
    lasts_years : float or None
        How long the set-up shall last: of those the best fit now. None takes what lasts longest.
    setup : dict of str to int, or None
        A set-up that is there already; None looks for one.
    delivered : str
        Day of delivery, ``2026-12-01``; empty leaves days out.
    """

    years: float | None = None
    mass_share: float | None = None
    lasts_years: float | None = None
    setup: Index | None = None
    delivered: str = ""


@dataclass(frozen=True)
class LifePlan:
    """All that is said of the years to come.

    Parameters
    ----------
    growth : Growth
    line : Line
        With the client's extras.
    step : int
        Of the grid [months].
    found : Found
        The trade-off between the fit now and how long a set-up lasts; one point for a set-up that
        was named.
    life : Life
        Of the set-up that is planned for.
    reviews : tuple of ReviewDue
        The soonest first: that is when the next review is due.
    made_to_order : bool
        Whether sizes made to order had to be looked at.
    named : bool
        Whether the set-up was named rather than found.
    weighed : WeighedClient or None
        Today's weighing, carried over to later days; None leaves the estimate.
    """

    growth: Growth
    line: Line
    step: int
    found: Found
    life: Life
    reviews: tuple[ReviewDue, ...]
    made_to_order: bool = False
    named: bool = False
    weighed: WeighedClient | None = None

    @property
    def lasting(self) -> Lasting:
        """The set-up that is planned for."""
        return self.life.lasting

    @property
    def setup(self) -> Chosen:
        """The same with its parts."""
        return chosen(self.line, self.lasting.index)

    @property
    def throughout(self) -> bool:
        """Whether it lasts to the end of the range."""
        return self.lasting.months == round(self.growth.years * MONTHS)

    @property
    def due(self) -> ReviewDue:
        """The next review."""
        return self.reviews[0]


def plan_life(
    client: Client,
    line: Line,
    asked: Asked,
    surroundings: Surroundings | None = None,
    progress: Callable[[str], None] = lambda _: None,
    weighed: WeighedClient | None = None,
) -> LifePlan:
    """Plan the years to come of one client on one line.

    Parameters
    ----------
    client : Client
    line : Line
    asked : Asked
    surroundings : Surroundings or None
        Of the client: what its places ask must hold throughout.
    progress : callable
        Told in a few words what is being done.
    weighed : WeighedClient or None
        Of the client today: the centre of mass as measured, carried over to later days.

    Returns
    -------
    LifePlan

    Raises
    ------
    InputError
        When nothing holds every must now, the named set-up does not, nothing lasts as long as is
        asked, or another client or other measures were weighed.
    """
    delivered = day_of(asked.delivered)
    growth = expected_growth(client, asked.years, asked.mass_share)
    step = CHILD_STEP_MONTHS if SOURCE in growth.sources.values() else STEP_MONTHS
    line = with_extras(line, client.extras, client.where)
    states, made_to_order = _states(growth, line, surroundings, weighed, asked)
    if asked.setup is not None:
        _check_holds(states, asked.setup, client)
    if asked.setup is None:
        found = find_lasting(states, step, progress)
        lasting = _wanted(found, asked.lasts_years, client)
    else:
        lasting = how_long(states, asked.setup, _cost(states, asked.setup), step)
        found = Found((lasting,), 0)
    progress("following it month by month")
    life = life_of(states, lasting)
    due = reviews(life, client, delivered)
    named = asked.setup is not None
    return LifePlan(growth, line, step, found, life, due, made_to_order, named, weighed)


def _states(
    growth: Growth,
    line: Line,
    surroundings: Surroundings | None,
    weighed: WeighedClient | None,
    asked: Asked,
) -> tuple[States, bool]:
    """The standard range, or with sizes made to order when that has nothing that holds now."""
    standard = States(growth, line, surroundings, weighed)
    if asked.setup is None and _any_now(standard):
        return standard, False
    extended = States(growth, line, surroundings, weighed, made_to_order=True)
    if asked.setup is None and not _any_now(extended):
        client = growth.client
        where = client.where.get("reference", client.reference)
        must = f"some set-up of the line {line.name} must hold every must now"
        remedy = f"See the reasons: chairwright fit of this client, --line {line.name}."
        raise InputError(Problem(where, must, "none", remedy))
    return extended, asked.setup is None


def _any_now(states: States) -> bool:
    return find_any(states.now.space, states.now.musts) is not None


def _cost(states: States, index: Index) -> float:
    """What one set-up misses of the preferences now; not a number when it misses a must."""
    one = states.now.within({name: np.array([at]) for name, at in index.items()})
    best = None if one.is_empty else find_best(one, states.now.person.targets)
    return float("nan") if best is None else best.cost


def _wanted(found: Found, years: float | None, client: Client) -> Lasting:
    if years is None:
        return found.longest
    for point in found.points:
        if point.months >= years * MONTHS:
            return point
    where = f"client {client.reference}: how long it shall last"
    must = f"some set-up of the line must last {years:g} years"
    got = f"{months_words(found.longest.months)} at most"
    raise InputError(Problem(where, must, got, "Ask for less, or plan for new parts."))


def _check_holds(states: States, index: Index, client: Client) -> None:
    if states.now.holds(index):
        return
    missed = ", ".join(each.figure for each in states.now.missed(index))
    where = f"client {client.reference}: set-up"
    must = "the set-up must hold every must now"
    remedy = "Fit the chair again first: chairwright refit."
    raise InputError(Problem(where, must, missed or "it does not stand", remedy))
