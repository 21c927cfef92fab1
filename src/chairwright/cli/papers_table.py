"""The papers of an order: one row for each, made only when it is asked for."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace

from chairwright.fitting.described import Described
from chairwright.fitting.person import Person
from chairwright.order.order import Order
from chairwright.order.payer_result import Assessment
from chairwright.papers.typeset import Paper
from chairwright.papers.words import Units
from chairwright.places.model import Surroundings

ACCEPTED = "Not every must is met. Each that is missed is accepted by name, with a reason, in"
"""On the set-up sheet, in place of the warning that nothing has been decided."""


@dataclass(frozen=True)
class Pack:
    """What the papers of one order are made from.

    Parameters
    ----------
    order : Order
    person : Person
        Of the order.
    paper : {"a4", "us-letter"}
    units : {"mm", "in"}
    first : Described or None
        The chair as it is, for the adjust sheet.
    first_name : str
        Name of its set-up.
    surroundings : Surroundings or None
    payer : Assessment or None
    serial, gtin, delivered : str
        Empty when not said.
    """

    order: Order
    person: Person
    paper: Paper
    units: Units
    first: Described | None = None
    first_name: str = ""
    surroundings: Surroundings | None = None
    payer: Assessment | None = None
    serial: str = ""
    gtin: str = ""
    delivered: str = ""


def quotation(pack: Pack) -> bytes:
    """What is offered, and what it costs."""
    from chairwright.papers.pack.quotation import quotation_pdf

    return quotation_pdf(pack.order, pack.paper)


def order(pack: Pack) -> bytes:
    """What the maker gets."""
    from chairwright.papers.pack.order_paper import order_pdf

    return order_pdf(pack.order, pack.paper, pack.units)


def build_sheet(pack: Pack) -> bytes:
    """What the workshop builds from."""
    from chairwright.papers.pack.build_sheet import build_sheet_pdf

    return build_sheet_pdf(pack.order, pack.paper, pack.units)


def letter(pack: Pack) -> bytes:
    """The draft of the letter of justification."""
    from chairwright.order.justification_letter import make_letter
    from chairwright.papers.pack.letter import letter_pdf

    made = make_letter(pack.person, pack.order, pack.payer, pack.surroundings, pack.units)
    return letter_pdf(made, pack.paper)


def handover(pack: Pack) -> bytes:
    """The check at delivery and the page to take home."""
    from chairwright.order.handover_make import make_handover
    from chairwright.papers.pack.handover import handover_pdf

    made = make_handover(pack.order, pack.person, pack.surroundings, pack.delivered)
    return handover_pdf(made, pack.paper, pack.units)


def label(pack: Pack) -> bytes:
    """The label of the chair."""
    from chairwright.papers.pack.label import label_of, label_pdf

    return label_pdf(label_of(pack.order, pack.serial, pack.gtin))


def set_up_sheet(pack: Pack) -> bytes:
    """The sheet of the set-up with every figure."""
    from chairwright.fitting.described import describe
    from chairwright.fitting.person import read_person
    from chairwright.papers.from_fit import sheet_of
    from chairwright.papers.sheet import setup_sheet_pdf

    order, heading = pack.order, pack.order.heading
    person, setup = pack.person, order.setup
    if pack.surroundings is not None:
        person = read_person(person.client, pack.surroundings, person.weighed)
        setup = describe(
            setup.line, person.occupant, setup.index, person.targets, person.surroundings
        )
    payload = sheet_of(person, setup, heading.name, pack.units, pack.paper)
    status = f"{ACCEPTED} {_name(order)}." if order.unmet else payload.status
    dated = replace(payload, date=heading.dated, revision=str(order.revision), status=status)
    return setup_sheet_pdf(dated, pack.paper)


def _name(order: Order) -> str:
    number = f"order {order.heading.number}" if order.heading.number else "the order"
    return f"{number}, revision {order.revision}"


def adjust_sheet(pack: Pack) -> bytes:
    """From the chair as it is to the ordered one.

    Raises
    ------
    ValueError
        When the pack does not say what the chair is.
    """
    from chairwright.order.adjust import adjust
    from chairwright.papers.pack.adjust_sheet import adjust_sheet_pdf

    if pack.first is None:
        message = "an adjust sheet needs the chair as it is"
        raise ValueError(message)
    order = pack.order
    found = adjust(pack.first, order.setup, pack.person.occupant)
    names = pack.first_name, order.heading.name
    return adjust_sheet_pdf(found, *names, pack.paper, pack.units, order)


ADJUST = "adjust-sheet"
"""The paper that needs the chair as it is."""

PAPERS: dict[str, Callable[[Pack], bytes]] = {
    "quotation": quotation,
    "order": order,
    "build-sheet": build_sheet,
    "letter": letter,
    "handover": handover,
    "label": label,
    "set-up-sheet": set_up_sheet,
    ADJUST: adjust_sheet,
}
"""Every paper by the name that ``--only`` and the file have, in the order of their use."""
