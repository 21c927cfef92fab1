"""What a scheme file can get wrong beyond its form: names that lead nowhere, classes that clash."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator

from chairwright.errors import Problem
from chairwright.line.choices import CHOICES
from chairwright.order.payer_checks_facts import mistakes_of_facts
from chairwright.order.payer_checks_tests import mistakes_of_tests
from chairwright.order.payer_schema import WrittenClass, WrittenScheme
from chairwright.order.payer_walk import documents_named, entries, sources_named, tests
from chairwright.reading import YamlSource
from chairwright.validation import place, shown, suggest
from chairwright.yaml_events import KeyPath

EXTRAS = "extras"
CHAIR = "chair"
USE_IT = "Name it where it belongs, or take it out."


def mistakes(written: WrittenScheme, source: YamlSource) -> list[Problem]:
    """Everything wrong with a scheme file whose form is right.

    Parameters
    ----------
    written : WrittenScheme
    source : YamlSource

    Returns
    -------
    list of Problem
        In the order of the checks.
    """
    return [
        *_names(written, source),
        *_unused(written, source),
        *_codes(written, source),
        *_order_of_classes(written, source),
        *_lines(written, source),
        *_parts(written, source),
        *mistakes_of_facts(written, source),
        *mistakes_of_tests(written, source),
    ]


def _names(written: WrittenScheme, source: YamlSource) -> Iterator[Problem]:
    for at, key in sources_named(written):
        yield from _known(at, key, written.sources, "a source must be one of sources", source)
    for at, key in documents_named(written):
        yield from _known(at, key, written.documents, "a paper must be one of documents", source)


def _known(
    at: KeyPath, name: str, known: Collection[str], must: str, source: YamlSource
) -> Iterator[Problem]:
    if name not in known:
        yield Problem(place(source, at), must, shown(name), suggest(name, known))


def _unused(written: WrittenScheme, source: YamlSource) -> Iterator[Problem]:
    asked = {placed.test.fact for placed in tests(written)}
    named = {key for _, key in sources_named(written)}
    papers = {key for _, key in documents_named(written)}
    for what, keys, used in (
        ("facts", written.facts, asked),
        ("sources", written.sources, named),
        ("documents", written.documents, papers),
    ):
        for key in keys:
            if key not in used:
                must = f"each of {what} must be used"
                yield Problem(place(source, (what, key)), must, f"nothing names {key}", USE_IT)


def _codes(written: WrittenScheme, source: YamlSource) -> Iterator[Problem]:
    first: dict[tuple[str, str], KeyPath] = {}
    for at, entry in entries(written):
        if at[0] == "not_listed":
            continue
        key = (entry.code, str(getattr(entry, "line", "")))
        earlier = first.setdefault(key, at)
        if earlier != at:
            line = source.line_of(earlier).rpartition(":")[2]
            got = f"{entry.code} a second time (first on line {line})"
            must = "a code must stand once for each line"
            yield Problem(place(source, (*at, "code")), must, got, "Join the two, or correct one.")


def _order_of_classes(written: WrittenScheme, source: YamlSource) -> Iterator[Problem]:
    for number, group in enumerate(written.groups):
        at: KeyPath = ("groups", number)
        if group.name in written.facts:
            must = "a group must not have the name of a fact: it is a fact itself"
            yield Problem(place(source, (*at, "name")), must, group.name, "Rename one of the two.")
        yield from _left_over(group.classes, at, source)
        before = {each.code: each.goes_before for each in group.classes}
        for place_in, each in enumerate(group.classes):
            here = (*at, "classes", place_in)
            for name_at, code in enumerate(each.goes_before):
                must = "goes_before must name classes of the same group"
                yield from _known((*here, "goes_before", name_at), code, before, must, source)
            if each.code in _reached(each.code, before):
                must = "no class may go before itself, by others or directly"
                got = f"{each.code} goes before {', '.join(each.goes_before)}"
                remedy = "Take one of them out of the circle."
                yield Problem(place(source, (*here, "goes_before")), must, got, remedy)


def _left_over(
    classes: Iterable[WrittenClass], at: KeyPath, source: YamlSource
) -> Iterator[Problem]:
    seen = ""
    for number, each in enumerate(classes):
        here = (*at, "classes", number)
        if (each.when is None) == (not each.otherwise):
            got = "neither" if each.when is None else "both"
            must = f"class {each.code} must have either when or otherwise"
            yield Problem(
                place(source, here), must, got, "Write when, with the tests of the chair."
            )
        if each.otherwise and seen:
            must = "one class of a group at most may be otherwise: true"
            got = f"{seen} and {each.code}"
            yield Problem(
                place(source, (*here, "otherwise")), must, got, "Give one of them a when."
            )
        seen = each.code if each.otherwise else seen


def _reached(code: str, before: dict[str, list[str]]) -> set[str]:
    found: set[str] = set()
    waiting = list(before[code])
    while waiting:
        each = waiting.pop()
        if each not in found:
            found.add(each)
            waiting += before.get(each, [])
    return found


def _lines(written: WrittenScheme, source: YamlSource) -> Iterator[Problem]:
    must = "a line must be a choice of a chair, extras or chair"
    known = (*CHOICES, EXTRAS, CHAIR)
    for at, accessory in enumerate(written.accessories):
        yield from _known(("accessories", at, "line"), accessory.line, known, must, source)
    must = "included must name choices of a chair"
    for number, included in enumerate(written.included):
        for at, name in enumerate(included.choices):
            here = ("included", number, "choices", at)
            yield from _known(here, name, tuple(CHOICES), must, source)


def _parts(written: WrittenScheme, source: YamlSource) -> Iterator[Problem]:
    words: dict[str, Collection[str]] = {}
    for fact in written.facts.values():
        if fact.from_ is not None and fact.words is not None:
            name = EXTRAS if fact.from_.known == EXTRAS else fact.from_.part
            words |= {name: fact.words} if name else {}
    for line, choices in written.parts.items():
        for name, codes in choices.items():
            at: KeyPath = ("parts", line, name)
            must = "parts must stand under a choice that a fact is read from"
            if name not in words:
                yield from _known(at, name, words, must, source)
                continue
            for code, word in codes.items():
                must = f"a part of {name} must be one of the fact's words"
                yield from _known((*at, code), word, words[name], must, source)
