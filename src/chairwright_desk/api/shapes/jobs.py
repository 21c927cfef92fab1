"""Work under way."""

from __future__ import annotations

from datetime import datetime
from typing import Any, Literal

from chairwright_desk.api.shapes.base import Given, Identifier, Many, Taken


class JobNew(Taken):
    """Work to begin: the trade-off front of a set-up's client on its line."""

    work: Literal["front"]
    client: Identifier
    setup: Identifier


class JobGiven(Given):
    """A piece of work: how far it is, and its result when it is done."""

    id: str
    work: str
    state: str
    done: int
    whole: int
    said: str
    trouble: str
    created: datetime
    finished: datetime | None
    result: Any


class JobsGiven(Many):
    """One's own work, newest first, without results."""

    jobs: list[JobGiven]
