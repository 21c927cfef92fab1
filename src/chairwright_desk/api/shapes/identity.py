"""Who a client is."""

from __future__ import annotations

from datetime import date, datetime
from typing import Annotated

from pydantic import Field, StringConstraints

from chairwright_desk.api.shapes.base import PRINTED, Given, Revision
from chairwright_desk.api.shapes.clients import Day


class IdentityGiven(Given):
    """Who a client is; texts are empty and the birth is null where nothing is entered."""

    name: str
    born: date | None
    diagnosis: str
    revision: int
    changed_at: datetime | None


class IdentityPut(Revision):
    """All of it, each perhaps empty: what is left out cannot be emptied by mistake."""

    name: Annotated[str, StringConstraints(max_length=120, pattern=f"^$|{PRINTED}")]
    born: Annotated[Day | None, Field(description="Date of birth, not after today.")]
    diagnosis: Annotated[str, StringConstraints(max_length=2000, pattern=r"^[^\u0000]*$")]
