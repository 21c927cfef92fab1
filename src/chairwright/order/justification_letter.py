"""From a person and an order to the draft of a letter of justification."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.fitting.person import Person
from chairwright.order.justification import Builder, Evidence, Fact, Letter, written
from chairwright.order.justification_body import carries, limbs, moves, note, sized, who
from chairwright.order.justification_client import client_facts
from chairwright.order.justification_needs import (
    anti_tip,
    extras,
    load,
    marks,
    missed,
    own_targets,
    settled,
    steady,
)
from chairwright.order.justification_order import order_facts
from chairwright.order.justification_payer import classes, covers, missing, payer_facts
from chairwright.order.justification_places import place_facts, places
from chairwright.order.justification_words import Units
from chairwright.order.order import Order
from chairwright.order.payer_result import Assessment
from chairwright.places.model import Surroundings

PLAN: dict[str, tuple[Builder, ...]] = {
    "The client": (who, limbs, moves, carries, note),
    "What the client needs of the chair": (own_targets,),
    "How the chair is sized to the body": (sized,),
    "Steady, and within what it bears": (steady, anti_tip, load),
    "What was chosen": (settled, extras, marks),
    "Where the chair misses what is asked": (missed,),
    "Where the chair is used": (places,),
    "What the payer's criteria ask": (classes, covers, missing),
}
"""Headings with the builders of their sentences."""


def make_letter(
    person: Person,
    order: Order,
    payer: Assessment | None = None,
    surroundings: Surroundings | None = None,
    units: Units = "mm",
) -> Letter:
    """Draft a letter of justification.

    Parameters
    ----------
    person : Person
    order : Order
        Of the person.
    payer : Assessment or None
        What a payer's scheme says of the set-up; None leaves the payer's section out.
    surroundings : Surroundings or None
        The client's places; None leaves them out.
    units : {"mm", "in"}
        ``in`` adds inches to lengths.

    Returns
    -------
    Letter
        Every sentence with the facts that it follows from.
    """
    evidence = evidence_of(person, order, payer, surroundings, units)
    return written(heading_of(order, payer), evidence, PLAN)


def evidence_of(
    person: Person,
    order: Order,
    payer: Assessment | None = None,
    surroundings: Surroundings | None = None,
    units: Units = "mm",
) -> Evidence:
    """Gather every fact on file.

    Parameters
    ----------
    person : Person
    order : Order
    payer : Assessment or None
    surroundings : Surroundings or None
    units : {"mm", "in"}

    Returns
    -------
    Evidence
    """

    def every() -> Iterator[Fact]:
        yield from client_facts(person, order.setup, units)
        yield from order_facts(person, order, units)
        if surroundings is not None:
            yield from place_facts(surroundings, units)
        if payer is not None:
            yield from payer_facts(payer)

    return Evidence({fact.key: fact for fact in every()})


def heading_of(order: Order, payer: Assessment | None = None) -> Letter:
    """A letter with its heading only.

    Parameters
    ----------
    order : Order
    payer : Assessment or None

    Returns
    -------
    Letter
    """
    line = order.setup.line
    return Letter(
        reference=order.client_reference,
        set_up=order.heading.name,
        line_title=line.title,
        line_version=line.version,
        order_number=order.heading.number,
        revision=order.revision,
        dated=order.heading.dated,
        sections=(),
        status=_status(order),
        payer="" if payer is None else payer.scheme.title,
    )


def _status(order: Order) -> str:
    if not order.refused:
        return ""
    count = len(order.open)
    musts = "one must that is" if count == 1 else f"{count} musts that are"
    return f"Not to be sent: the order is refused because of {musts} missed and not accepted."
