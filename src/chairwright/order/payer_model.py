"""A payer's scheme as the program uses it: facts, tests, classes, accessories, sources.

A truth has three values: True, False, and None for what is not known.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

Truth = bool | None
Certainty = Literal["read", "restated", "memory", "derived", "common practice", "invented"]
FactKind = Literal["length", "mass", "angle", "number", "yes or no", "word", "words"]
Provided = Literal[
    "bare chair mass",
    "rated load",
    "folds",
    "extras",
    "client mass",
    "client pushes",
    "client's feet push",
    "carer pushes",
]
"""What the program works out of a set-up and its client besides figures, sizes and parts."""

CERTAINTY: dict[Certainty, str] = {
    "read": "read in the source",
    "restated": "restated by a secondary source",
    "memory": "from memory, unverified",
    "derived": "derived",
    "common practice": "common practice, no source",
    "invented": "invented for demonstration",
}
MEASURED: tuple[FactKind, ...] = ("length", "mass", "angle", "number")
"""Kinds of facts that are numbers."""


@dataclass(frozen=True)
class Source:
    """Where a rule was found.

    Parameters
    ----------
    key : str
        As tests name it.
    citation : str
    certainty : Certainty
    dated : str
        Year or day of the edition; empty when it is not known.
    note : str
    """

    key: str
    citation: str
    certainty: Certainty
    dated: str = ""
    note: str = ""


@dataclass(frozen=True)
class Backing:
    """The source of one test, and how certain that test is in it."""

    source: Source
    certainty: Certainty


@dataclass(frozen=True)
class Origin:
    """Where a fact comes from when nobody declares it.

    Parameters
    ----------
    kind : {"figure", "size", "part", "positions", "known"}
    name : str
        Figure, choice, or one of `Provided`.
    """

    kind: Literal["figure", "size", "part", "positions", "known"]
    name: str


@dataclass(frozen=True)
class Fact:
    """One fact that tests can ask about.

    Parameters
    ----------
    name : str
        As it is declared: ``name=value``.
    kind : FactKind
    label, ask : str
        What it is, and the question to a person.
    unit : str
        In which it is compared and printed; empty for what is no number.
    digits : int
        Digits after the point to which it is compared and printed.
    words : dict of str to str
        What a word or words can be, with what each means.
    origin : Origin or None
        None when only a person knows it.
    unless_told : str
        Taken when nobody says otherwise; empty for none.
    backing : Backing or None
        Why it is measured so.
    """

    name: str
    kind: FactKind
    label: str
    ask: str
    unit: str = ""
    digits: int = 0
    words: dict[str, str] | None = None
    origin: Origin | None = None
    unless_told: str = ""
    backing: Backing | None = None


@dataclass(frozen=True)
class FactTest:
    """What is asked of one fact.

    Parameters
    ----------
    fact : str
    above, at_least, below, at_most : Decimal or None
        Limits in the fact's unit: the first and third exclude their value.
    wanted : tuple of str
        Words of which one must be the fact's, or be among its words; ``yes`` or ``no``.
    backing : Backing
    because : str
        The payer's own name of the test, such as its letter.
    """

    fact: str
    above: Decimal | None
    at_least: Decimal | None
    below: Decimal | None
    at_most: Decimal | None
    wanted: tuple[str, ...]
    backing: Backing
    because: str = ""


@dataclass(frozen=True)
class ClassTest:
    """Whether the chair is in one of some classes."""

    codes: tuple[str, ...]
    backing: Backing
    because: str = ""


@dataclass(frozen=True)
class Joined:
    """Tests that must all hold, of which one must, or of which the one must not."""

    kind: Literal["all", "any", "not"]
    tests: tuple[Test, ...]
    because: str = ""


@dataclass(frozen=True)
class Reading:
    """One way in which a disputed rule is read."""

    name: str
    test: Test
    backing: Backing


@dataclass(frozen=True)
class Disputed:
    """A rule that its sources give in several ways: known only where all ways agree."""

    readings: tuple[Reading, ...]
    because: str = ""


Test = FactTest | ClassTest | Joined | Disputed


@dataclass(frozen=True)
class Document:
    """One paper that the payer asks for."""

    key: str
    title: str
    backing: Backing


@dataclass(frozen=True)
class Entry:
    """One code of the scheme: a class, or an accessory beside it.

    Parameters
    ----------
    code, title : str
    backing : Backing
        Of the code and its title.
    when : Test or None
        The chair has what the code is for; None for what is left when no other class holds.
    covered : Test or None
        The payer's test of the client; None when none is held here.
    documents : tuple of Document
    note : str
    where : str
        ``file:line``.
    goes_before : tuple of str
        Classes that this one is taken instead of when both hold.
    line : str
        Choice, ``extras`` or ``chair`` that an accessory is for.
    quantity : int
        Pieces of an accessory; 0 for one for each foot support that is fitted.
    """

    code: str
    title: str
    backing: Backing
    when: Test | None
    covered: Test | None
    documents: tuple[Document, ...] = ()
    note: str = ""
    where: str = ""
    goes_before: tuple[str, ...] = ()
    line: str = ""
    quantity: int = 1


@dataclass(frozen=True)
class Group:
    """Classes of which a chair has one; its name is also the fact that settles it."""

    name: str
    title: str
    ask: str
    classes: tuple[Entry, ...]


@dataclass(frozen=True)
class Scheme:
    """A whole scheme in one edition.

    Parameters
    ----------
    name, title, payer, country, edition, dated, note : str
        ``dated`` is the year or the day of the edition.
    sources : dict of str to Source
    facts : dict of str to Fact
    groups : tuple of Group
    accessories : tuple of Entry
    covered : Test or None
        The payer's test of the client that goes for every class.
    always : tuple of Document
        Papers asked for whatever is ordered.
    included : dict of str to Backing
        Choices whose parts are in the class's own code.
    not_listed : Entry or None
        Code of what has no code of its own.
    parts : dict
        Line name, then choice or ``extras``, then part code, to a word of the scheme.
    path : str
    """

    name: str
    title: str
    payer: str
    country: str
    edition: str
    dated: str
    note: str
    sources: dict[str, Source]
    facts: dict[str, Fact]
    groups: tuple[Group, ...]
    accessories: tuple[Entry, ...] = ()
    covered: Test | None = None
    always: tuple[Document, ...] = ()
    included: dict[str, Backing] = field(default_factory=dict)
    not_listed: Entry | None = None
    parts: dict[str, dict[str, dict[str, str]]] = field(default_factory=dict)
    path: str = ""

    @property
    def asked(self) -> dict[str, Fact]:
        """Every fact that can be declared: those of the file, and the class of each group."""
        return self.facts | {
            group.name: Fact(
                name=group.name,
                kind="word",
                label=group.title,
                ask=group.ask,
                words={entry.code: entry.title for entry in group.classes},
            )
            for group in self.groups
        }
