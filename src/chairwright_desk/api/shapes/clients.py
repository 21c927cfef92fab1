"""Clients, teams and the person who asks."""

from __future__ import annotations

from datetime import date, datetime
from typing import Annotated

from pydantic import AfterValidator, Field, StringConstraints, WithJsonSchema

from chairwright_desk.api.shapes.base import (
    PRINTED,
    WHOLE,
    Given,
    Identifier,
    Many,
    Revision,
    Taken,
    may_be_left_out,
)

Reference = Annotated[
    str,
    StringConstraints(min_length=1, max_length=40, pattern=PRINTED),
    Field(description="Says nothing of the person.", examples=["AVG-001"]),
]


def _sensible(day: date) -> date:
    if not 1900 <= day.year <= 2999:
        msg = "must lie between 1900 and 2999"
        raise ValueError(msg)
    return day


Day = Annotated[
    date,
    AfterValidator(_sensible),
    WithJsonSchema(
        {
            "type": "string",
            "format": "date",
            "pattern": "^(19|2[0-9])[0-9][0-9]-[0-9][0-9]-[0-9][0-9]$",
        }
    ),
]


class TeamGiven(Given):
    """A team and what the person is in it."""

    id: str
    name: str
    roles: list[str]


class PersonGiven(Given):
    """The person who asks."""

    id: str
    shown: str
    units: str
    teams: list[TeamGiven]


class ClientGiven(Given):
    """A client; who it is stands in a call of its own (identity)."""

    id: str
    reference: str
    team: str
    created: datetime
    keep_until: date | None
    revision: int
    changed_at: datetime


class ClientsGiven(Many):
    """Clients of the person's teams, by reference."""

    clients: list[ClientGiven]


class ClientNew(Taken):
    """A new client."""

    reference: Reference
    team: Identifier
    keep_until: Day | None = None


class ClientChange(Revision):
    """What is to be changed of a client; what is left out stays."""

    reference: Reference = may_be_left_out()
    keep_until: Day | None = None


class ClientSearch(Taken):
    """Part of a reference; sent, never written in an address."""

    holds: Annotated[str, StringConstraints(min_length=1, max_length=40, pattern=PRINTED)]
    page: Annotated[int, Field(ge=1, le=100_000), WHOLE] = 1
