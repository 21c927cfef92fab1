"""Set-ups, what follows from them, and what a search finds."""

from __future__ import annotations

from datetime import datetime
from typing import Annotated

from pydantic import Field

from chairwright_desk.api.shapes.base import (
    Codes,
    Given,
    Line,
    Revision,
    Taken,
    may_be_left_out,
)

LineName = Annotated[Line, Field(description="As GET /api/lines lists it.", examples=["everyday"])]


class SetupGiven(Given):
    """One set-up of a client."""

    id: str
    client: str
    name: str
    line: str
    codes: dict[str, str]
    extras: list[str]
    present: bool
    revision: int
    changed_at: datetime


class SetupsGiven(Given):
    """Every set-up of a client."""

    setups: list[SetupGiven]


class SetupNew(Taken):
    """A new set-up; without codes it begins with the one that suits best."""

    name: Line
    line: LineName = "everyday"
    codes: Codes | None = None


class SetupChange(Revision):
    """What is to be changed of a set-up; choices that are left out stay."""

    name: Line = may_be_left_out()
    present: bool = may_be_left_out()
    codes: Codes = may_be_left_out()


class Tried(Taken):
    """Choices to be tried on a set-up; nothing is saved."""

    codes: Codes = Field(default_factory=dict)


class AskedGiven(Given):
    """What is asked of a figure, and whether it holds."""

    must: bool
    low: float | None
    high: float | None
    verdict: str
    margin: float | None
    reason: str
    source: str
    place: str


class FigureGiven(Given):
    """One figure in its own unit; no value where the set-up has none."""

    name: str
    label: str
    unit: str
    value: float | None
    spread: float | None
    verdict: str | None
    asked: list[AskedGiven]


class JudgedGiven(Given):
    """All that follows from a set-up; without figures there is no such chair."""

    codes: dict[str, str]
    against: list[str]
    figures: list[FigureGiven]


class Sought(Taken):
    """On which line to look for the best set-up."""

    line: LineName = "everyday"


class BestGiven(Given):
    """The best set-up, proven; no codes when none meets every must."""

    codes: dict[str, str] | None
    looked_among: str
    made_to_order: bool
