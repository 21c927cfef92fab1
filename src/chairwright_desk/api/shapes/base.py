"""Bases of every shape: unknown fields are refused, types are not guessed."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, StringConstraints

PRINTED = r"^[!-~\u00a1-\ud7ff]([ -~\u00a1-\ud7ff]*[!-~\u00a1-\ud7ff])?$"
"""One line of printed characters, no blank at its ends."""


def _whole(value: Any) -> Any:
    """1.0 is the whole number 1, as JSON has it."""
    return int(value) if isinstance(value, float) and value.is_integer() else value


WHOLE = BeforeValidator(_whole)
"""Stands last: what is written after it would not come into the document."""
Identifier = Annotated[
    str, StringConstraints(pattern=r"^[2-9a-z]{16}$"), Field(examples=["k3m9x2abcdefgh45"])
]
Line = Annotated[str, StringConstraints(min_length=1, max_length=80, pattern=PRINTED)]
Text = Annotated[str, StringConstraints(max_length=200_000, pattern=r"^[^\u0000]*$")]
Codes = Annotated[
    dict[
        Annotated[str, StringConstraints(max_length=40)],
        Annotated[str, StringConstraints(max_length=24)],
    ],
    Field(max_length=100, description="Code of each choice, as the line names it."),
]


def _without_default(shape: dict[str, Any]) -> None:
    shape.pop("default", None)


def may_be_left_out() -> Any:
    """Return the default of a field that stays as it is when it is left out, and is never null."""
    return Field(default=None, json_schema_extra=_without_default)


class Taken(BaseModel):
    """Something that is sent to the desk."""

    model_config = ConfigDict(extra="forbid", strict=True)


class Given(BaseModel):
    """Something that the desk answers."""

    model_config = ConfigDict(extra="forbid", from_attributes=True)


class Revision(Taken):
    """Something that is changed: which revision the change was made from."""

    revision: Annotated[
        int,
        Field(ge=0, le=2_000_000_000, description="As the record had when it was read."),
        WHOLE,
    ]


class Many(Given):
    """A page of a list."""

    page: int
    pages: int


class WrongGiven(Given):
    """One thing that is wrong with what was sent."""

    where: str
    must: str
    got: str
    remedy: str


class FaultGiven(Given):
    """A call that was refused."""

    error: str
    what: str
    remedy: str
    problems: list[WrongGiven] = []


class OvertakenGiven(FaultGiven):
    """Somebody else saved first: both versions; without them something else is in the way."""

    saved: dict[str, Any] | None = None
    yours: dict[str, Any] | None = None
