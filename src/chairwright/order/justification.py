"""The draft of a letter of justification: sentences that follow from facts on file, and show them.

A sentence without a fact is never made; what the letter says besides is the fixed text of the form.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Literal

Standing = Literal[
    "", "measured", "estimated", "holds", "holds on nominal values", "fails", "not known"
]


@dataclass(frozen=True)
class Fact:
    """One fact on file.

    Parameters
    ----------
    key : str
        Unique, such as ``client.measures.hip_width``.
    file, field : str
        Where it stands, for people: ``client file`` and ``measures: hip_width``.
    label : str
        What it is, as a sentence calls it.
    words : str
        Its value, as a sentence says it.
    note : str
        More on the value, for the list of facts only.
    source : str
        Where a target or a formula comes from, with its certainty.
    standing : str
        How a measure was taken, or how a target is met; empty when neither is asked.
    reason : str
        Why, as written on file; empty for none.
    values : tuple of float
        The numbers behind the words, where sentences compare them: a figure and its spread, or
        what a place leaves, in the order of the figures that it stands beside.
    behind : tuple of str
        Keys of the measures that a target starts from.
    """

    key: str
    file: str
    field: str
    label: str
    words: str
    note: str = ""
    source: str = ""
    standing: Standing = ""
    reason: str = ""
    values: tuple[float, ...] = ()
    behind: tuple[str, ...] = ()


@dataclass(frozen=True)
class Sentence:
    """One sentence, and all the facts that it says."""

    text: str
    facts: tuple[Fact, ...]

    def __post_init__(self) -> None:
        """Refuse a sentence without a fact."""
        if not self.facts:
            message = f"a sentence must follow from a fact; got none for {self.text!r}"
            raise ValueError(message)


@dataclass(frozen=True)
class Evidence:
    """Every fact on file of one client, one order, and what goes with them.

    Parameters
    ----------
    facts : mapping of str to Fact
        By key, in the order in which they were read.
    """

    facts: Mapping[str, Fact]

    def get(self, key: str) -> Fact | None:
        """Return a fact, or None when it is not on file."""
        return self.facts.get(key)

    def every(self, *keys: str) -> tuple[Fact, ...] | None:
        """Return all of some facts; None when one of them is not on file."""
        found = tuple(self.facts[key] for key in keys if key in self.facts)
        return found if len(found) == len(keys) else None

    def under(self, prefix: str) -> tuple[Fact, ...]:
        """Return the facts whose key starts with a prefix, in their order."""
        return tuple(fact for key, fact in self.facts.items() if key.startswith(prefix))

    def without(self, key: str) -> Evidence:
        """Return the same evidence, one fact taken out."""
        return Evidence({name: fact for name, fact in self.facts.items() if name != key})


Builder = Callable[[Evidence], Iterator[Sentence]]
"""Makes the sentences that follow from the evidence, and no others."""


@dataclass(frozen=True)
class Section:
    """Sentences under one heading."""

    title: str
    sentences: tuple[Sentence, ...]


@dataclass(frozen=True)
class Letter:
    """A draft letter.

    Parameters
    ----------
    reference : str
        The client's number, never a name.
    set_up, line_title, line_version : str
    order_number : str
        Empty when the order has none.
    revision : int
        Of the order.
    dated : str
        Day of the order; empty when not said.
    sections : tuple of Section
        Only those that have a sentence.
    status : str
        Why it must not be sent; empty when nothing stands against it.
    payer : str
        Whose criteria were looked at; empty for none.
    """

    reference: str
    set_up: str
    line_title: str
    line_version: str
    order_number: str
    revision: int
    dated: str
    sections: tuple[Section, ...]
    status: str = ""
    payer: str = ""

    @property
    def sentences(self) -> tuple[Sentence, ...]:
        """Every sentence, in order."""
        return tuple(sentence for section in self.sections for sentence in section.sentences)

    @property
    def facts(self) -> tuple[Fact, ...]:
        """The facts used, in the order in which they are first used."""
        used = (fact for sentence in self.sentences for fact in sentence.facts)
        return tuple({fact.key: fact for fact in used}.values())

    @property
    def numbers(self) -> dict[str, int]:
        """Number of each fact used, by its key."""
        return {fact.key: number for number, fact in enumerate(self.facts, 1)}


def written(letter: Letter, evidence: Evidence, plan: Mapping[str, tuple[Builder, ...]]) -> Letter:
    """Fill a letter with what follows from the evidence.

    Parameters
    ----------
    letter : Letter
        With its heading; its sections are replaced.
    evidence : Evidence
    plan : mapping of str to tuple of Builder
        Headings in their order.

    Returns
    -------
    Letter
    """
    sections = (
        Section(title, tuple(sentence for build in builders for sentence in build(evidence)))
        for title, builders in plan.items()
    )
    return replace(letter, sections=tuple(each for each in sections if each.sentences))
