"""Walking through a scheme file as written: every test, every name that it uses, with its place."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from chairwright.order.payer_schema import WrittenEntry, WrittenScheme, WrittenTest
from chairwright.yaml_events import KeyPath

LIMITS = ("above", "at_least", "below", "at_most")


@dataclass(frozen=True)
class Placed:
    """A test with its place in the file.

    Parameters
    ----------
    at : tuple
        Keys and list positions from the top.
    test : WrittenTest
    has_source : bool
        Whether it or something around it names a source.
    of_class : bool
        Whether it says which class a chair is in.
    """

    at: KeyPath
    test: WrittenTest
    has_source: bool
    of_class: bool


def entries(written: WrittenScheme) -> Iterator[tuple[KeyPath, WrittenEntry]]:
    """Every code of the scheme: classes, accessories, and what is not listed.

    Parameters
    ----------
    written : WrittenScheme

    Yields
    ------
    tuple of KeyPath and WrittenEntry
    """
    for at, group in enumerate(written.groups):
        for number, entry in enumerate(group.classes):
            yield ("groups", at, "classes", number), entry
    for at, accessory in enumerate(written.accessories):
        yield ("accessories", at), accessory
    if written.not_listed is not None:
        yield ("not_listed",), written.not_listed


def tests(written: WrittenScheme) -> Iterator[Placed]:
    """Every test of the scheme, the outer before what is in it.

    Parameters
    ----------
    written : WrittenScheme

    Yields
    ------
    Placed
    """
    if written.covered is not None:
        yield from _inside(Placed(("covered",), written.covered, has_source=False, of_class=False))
    for at, entry in entries(written):
        for key in ("when", "covered"):
            test = getattr(entry, key, None)
            if test is not None:
                of_class = key == "when" and at[0] == "groups"
                yield from _inside(Placed((*at, key), test, has_source=True, of_class=of_class))


def children(test: WrittenTest) -> Iterator[tuple[KeyPath, WrittenTest, str | None]]:
    """The tests directly in a test, each with its place in it and the source around it.

    Parameters
    ----------
    test : WrittenTest

    Yields
    ------
    tuple of KeyPath, WrittenTest, and source or None
    """
    for key, several in (("all", test.all_), ("any", test.any_)):
        for at, each in enumerate(several or ()):
            yield (key, at), each, None
    if test.not_ is not None:
        yield ("not",), test.not_, None
    for at, reading in enumerate(test.readings or ()):
        yield ("readings", at, "test"), reading.test, reading.source


def _inside(placed: Placed) -> Iterator[Placed]:
    has = placed.has_source or placed.test.source is not None
    here = Placed(placed.at, placed.test, has, placed.of_class)
    yield here
    for at, test, source in children(placed.test):
        covered = has or source is not None
        yield from _inside(Placed((*placed.at, *at), test, covered, placed.of_class))


def sources_named(written: WrittenScheme) -> Iterator[tuple[KeyPath, str]]:
    """Every place that names a source.

    Parameters
    ----------
    written : WrittenScheme

    Yields
    ------
    tuple of KeyPath and str
    """
    for at, entry in entries(written):
        yield (*at, "source"), entry.source
    for name, fact in written.facts.items():
        if fact.source is not None:
            yield ("facts", name, "source"), fact.source
    for key, document in written.documents.items():
        yield ("documents", key, "source"), document.source
    for number, included in enumerate(written.included):
        yield ("included", number, "source"), included.source
    for placed in tests(written):
        if placed.test.source is not None:
            yield (*placed.at, "source"), placed.test.source
        for number, reading in enumerate(placed.test.readings or ()):
            if reading.source is not None:
                yield (*placed.at, "readings", number, "source"), reading.source


def documents_named(written: WrittenScheme) -> Iterator[tuple[KeyPath, str]]:
    """Every place that names a document.

    Parameters
    ----------
    written : WrittenScheme

    Yields
    ------
    tuple of KeyPath and str
    """
    for number, key in enumerate(written.always):
        yield ("always", number), key
    for at, entry in entries(written):
        for number, key in enumerate(entry.documents):
            yield (*at, "documents", number), key
