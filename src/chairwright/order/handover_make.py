"""From an order to the papers of its handover."""

from __future__ import annotations

import math

from chairwright.fitting.person import Person
from chairwright.order.handover import Handover
from chairwright.order.handover_checks import check_groups, measured
from chairwright.order.handover_client import advice, taught
from chairwright.order.handover_days import day_of
from chairwright.order.handover_places import own_places
from chairwright.order.handover_upkeep import months, review, upkeep
from chairwright.order.order import Order
from chairwright.places.model import Surroundings


def make_handover(
    order: Order, person: Person, surroundings: Surroundings | None = None, delivered: str = ""
) -> Handover:
    """Work out what is checked, trained and told at the handover of an order.

    Parameters
    ----------
    order : Order
    person : Person
        Of the order.
    surroundings : Surroundings or None
        The client's places; their ramps, slopes and steps are listed.
    delivered : str
        Day of delivery as ``2026-11-25``; without it no day is printed.

    Returns
    -------
    Handover

    Raises
    ------
    InputError
        When the day of delivery is no day of the calendar.
    """
    day, line, rated = day_of(delivered), order.setup.line, order.load.rated_kg
    return Handover(
        reference=order.client_reference,
        set_up=order.heading.name,
        line_title=line.title,
        line_version=line.version,
        order_number=order.heading.number,
        revision=order.revision,
        delivered=delivered,
        rated=f"{rated:g} kg" if math.isfinite(rated) else "",
        settings=order.settings,
        measured=measured(order),
        groups=check_groups(order, person, surroundings),
        taught=taught(order, person),
        advice=advice(order, person),
        places=own_places(order.setup, surroundings),
        upkeep=upkeep(day, line.upkeep),
        months=months(day, line.upkeep),
        review=review(day),
    )
