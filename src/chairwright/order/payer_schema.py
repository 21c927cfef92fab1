"""A payer's scheme file as written: field names, types and limits, checked by pydantic.

A scheme is dated data: facts that it asks about, classes with the tests of chair and client, codes
of accessories, documents, sources with how certain each is. No rule of a payer stands in code.
"""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from chairwright.order.payer_model import Certainty, FactKind, Provided

Code = Annotated[str, Field(pattern=r"^[A-Z][A-Z0-9]{0,11}$")]
Key = Annotated[str, Field(pattern=r"^[a-z][a-z0-9_]{0,39}$")]
Word = Annotated[str, Field(pattern=r"^[a-z][a-z0-9 -]{0,39}$")]
Words = Annotated[str, Field(min_length=1, max_length=160)]
Text = Annotated[str, Field(min_length=1, max_length=600)]
Day = Annotated[str, Field(pattern=r"^\d{4}(-(0[1-9]|1[0-2])(-(0[1-9]|[12]\d|3[01]))?)?$")]
Limit = Annotated[Decimal, Field(ge=-10_000, le=10_000)]
Count = Annotated[int, Field(ge=1, le=8)]


class Written(BaseModel):
    """Base: unknown keys, NaN and infinity are refused."""

    model_config = ConfigDict(extra="forbid", frozen=True, allow_inf_nan=False)


class WrittenSource(Written):
    """Where a rule was found, and how it was seen there."""

    citation: Text
    certainty: Certainty
    dated: Day | None = None
    note: Text | None = None


class WrittenFrom(Written):
    """Where a fact comes from when nobody declares it; exactly one key."""

    figure: str | None = None
    size: str | None = None
    part: str | None = None
    positions: str | None = None
    known: Provided | None = None


class WrittenFact(Written):
    """One fact that tests can ask about."""

    kind: FactKind
    label: Words
    ask: Text
    unit: Annotated[str, Field(min_length=1, max_length=20)] | None = None
    digits: Annotated[int, Field(ge=0, le=3)] = 0
    words: Annotated[dict[Word, Words], Field(min_length=1)] | None = None
    from_: Annotated[WrittenFrom | None, Field(alias="from")] = None
    unless_told: str | Decimal | None = None
    source: str | None = None
    certainty: Certainty | None = None


class WrittenReading(Written):
    """One way in which a disputed rule is read."""

    name: Words
    source: str | None = None
    certainty: Certainty | None = None
    test: WrittenTest


class WrittenTest(Written):
    """One test: exactly one of ``all``, ``any``, ``not``, ``readings``, ``class`` or ``fact``.

    A test of a fact has its limits beside it. A test without a source has that of what is
    around it.
    """

    all_: Annotated[list[WrittenTest] | None, Field(alias="all", min_length=1)] = None
    any_: Annotated[list[WrittenTest] | None, Field(alias="any", min_length=1)] = None
    not_: Annotated[WrittenTest | None, Field(alias="not")] = None
    readings: Annotated[list[WrittenReading] | None, Field(min_length=2)] = None
    class_: Annotated[list[Code] | None, Field(alias="class", min_length=1)] = None
    fact: str | None = None
    above: Limit | None = None
    at_least: Limit | None = None
    below: Limit | None = None
    at_most: Limit | None = None
    is_: Annotated[str | None, Field(alias="is")] = None
    one_of: Annotated[list[str] | None, Field(min_length=1)] = None
    has: str | None = None
    because: Words | None = None
    source: str | None = None
    certainty: Certainty | None = None


class WrittenEntry(Written):
    """What classes and accessories have alike."""

    code: Code
    title: Words
    source: str
    certainty: Certainty | None = None
    covered: WrittenTest | None = None
    documents: list[str] = []
    note: Text | None = None


class WrittenClass(WrittenEntry):
    """One class: the chair is in it when ``when`` holds; ``otherwise`` when nothing else does."""

    when: WrittenTest | None = None
    otherwise: bool = False
    goes_before: list[Code] = []


class WrittenGroup(Written):
    """Classes of which a chair has one."""

    name: Key
    title: Words
    ask: Text
    classes: Annotated[list[WrittenClass], Field(min_length=1)]


class WrittenAccessory(WrittenEntry):
    """One code beside the class; ``line`` is the choice, ``extras`` or ``chair`` that it is for."""

    line: str
    when: WrittenTest
    quantity: Count | Literal["foot supports"] = 1


class WrittenIncluded(Written):
    """Choices whose parts are in the class's own code."""

    choices: list[str]
    source: str


class WrittenDocument(Written):
    """One paper that the payer asks for."""

    title: Text
    source: str
    certainty: Certainty | None = None


class WrittenScheme(Written):
    """The whole file."""

    format: Literal["chairwright payer scheme 1"]
    name: Annotated[str, Field(pattern=r"^[a-z][a-z0-9-]{0,40}$")]
    title: Words
    payer: Words
    country: Words
    edition: Words
    dated: Day
    note: Text
    sources: Annotated[dict[Key, WrittenSource], Field(min_length=1)]
    facts: Annotated[dict[Key, WrittenFact], Field(min_length=1)]
    documents: dict[Key, WrittenDocument] = {}
    always: list[str] = []
    covered: WrittenTest | None = None
    groups: Annotated[list[WrittenGroup], Field(min_length=1)]
    accessories: list[WrittenAccessory] = []
    included: list[WrittenIncluded] = []
    not_listed: WrittenEntry | None = None
    parts: dict[str, dict[str, dict[str, str]]] = {}
