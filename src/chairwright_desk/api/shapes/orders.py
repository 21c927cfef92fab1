"""Orders, their steps and papers."""

from __future__ import annotations

from datetime import date, datetime
from typing import Annotated

from pydantic import Field, StringConstraints

from chairwright_desk.api.shapes.base import PRINTED, Given, Identifier, Line, Many, Revision, Taken
from chairwright_desk.api.shapes.clients import Day
from chairwright_desk.orders.statuses import Status

Printed40 = Annotated[str, StringConstraints(max_length=40, pattern=f"^$|{PRINTED}")]


class OrderGiven(Given):
    """An order as it stands; ``latest`` is the revision that is printed on its papers."""

    id: str
    client: str
    number: str
    status: str
    latest: int
    setup_name: str
    line: str
    dated: date
    total: str
    currency: str
    days: int
    waiting: int
    promised: date | None
    delivered: date | None
    review_due: date | None
    serial: str
    steps: list[str]
    papers: list[str]
    revision: int
    changed_at: datetime


class OrdersGiven(Many):
    """Orders, newest first."""

    orders: list[OrderGiven]


class OrderNew(Taken):
    """A new order of a client, from one of its set-ups; without a number it gets the next."""

    setup: Identifier
    number: (
        Annotated[str, StringConstraints(min_length=1, max_length=40, pattern=PRINTED)] | None
    ) = None
    dated: Day | None = None
    prices: Annotated[Line | None, Field(description="Name of a price list of the team.")] = None


class StepTaken(Revision):
    """A step of an order: to which status, with the day and the number that it asks for."""

    to: Status
    day: Day | None = None
    serial: Printed40 = ""
