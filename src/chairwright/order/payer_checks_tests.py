"""Tests of a scheme file: one question each, of a fact that there is, with limits that can be."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.errors import Problem
from chairwright.order.payer_model import MEASURED
from chairwright.order.payer_schema import WrittenFact, WrittenScheme, WrittenTest
from chairwright.order.payer_walk import LIMITS, Placed, tests
from chairwright.reading import YamlSource
from chairwright.validation import place, shown, suggest
from chairwright.yaml_events import KeyPath

FORMS = {"all": "all_", "any": "any_", "not": "not_", "readings": "readings",
         "class": "class_", "fact": "fact"}  # fmt: skip
WORDED = {"is": "is_", "one_of": "one_of", "has": "has"}


def mistakes_of_tests(written: WrittenScheme, source: YamlSource) -> Iterator[Problem]:
    """What is wrong with the tests of a scheme file.

    Parameters
    ----------
    written : WrittenScheme
    source : YamlSource

    Yields
    ------
    Problem
    """
    for placed in tests(written):
        forms = [key for key, field in FORMS.items() if getattr(placed.test, field) is not None]
        if len(forms) != 1:
            must = f"a test must have exactly one of {', '.join(FORMS)}"
            got = " and ".join(forms) or "none of them"
            yield Problem(place(source, placed.at), must, got, "Write one test for each.")
            continue
        yield from _form(placed, forms[0], written, source)


def _form(
    placed: Placed, form: str, written: WrittenScheme, source: YamlSource
) -> Iterator[Problem]:
    given = _given(placed.test)
    if form == "fact":
        yield from _fact(placed, written, source)
    elif given:
        must = f"{given[0]} must stand beside a fact"
        yield Problem(place(source, (*placed.at, given[0])), must, f"it beside {form}",
                      "Move it into a test of its own.")  # fmt: skip
    if form == "class":
        yield from _classes(placed, written, source)
    if form in ("fact", "class") and not placed.has_source:
        must = "a test must have a source, its own or that of the test around it"
        yield Problem(place(source, placed.at), must, "none", "Add source: with a key of sources.")


def _given(test: WrittenTest) -> list[str]:
    fields = {**{key: key for key in LIMITS}, **WORDED}
    return [key for key, field in fields.items() if getattr(test, field) is not None]


def _classes(placed: Placed, written: WrittenScheme, source: YamlSource) -> Iterator[Problem]:
    codes = [each.code for group in written.groups for each in group.classes]
    at: KeyPath = (*placed.at, "class")
    if placed.of_class:
        must = "the test that makes a class must not ask for a class"
        yield Problem(place(source, at), must, "class", "Write the tests of the chair instead.")
    for number, code in enumerate(placed.test.class_ or ()):
        if code not in codes:
            must = "it must be a class of this scheme"
            yield Problem(place(source, (*at, number)), must, shown(code), suggest(code, codes))


def _fact(placed: Placed, written: WrittenScheme, source: YamlSource) -> Iterator[Problem]:
    name = placed.test.fact or ""
    fact = written.facts.get(name)
    if fact is None:
        must = "a test must ask for a fact that facts lists"
        where = place(source, (*placed.at, "fact"))
        yield Problem(where, must, shown(name), suggest(name, written.facts))
        return
    allowed = _allowed(fact)
    given = _given(placed.test)
    if not given:
        must = f"a test of {name} ({fact.kind}) must say what is wanted"
        yield Problem(place(source, placed.at), must, "nothing", f"Add {' or '.join(allowed)}.")
    for key in given:
        if key not in allowed:
            must = f"a test of {name} ({fact.kind}) must use {' or '.join(allowed)}"
            where = place(source, (*placed.at, key))
            yield Problem(where, must, key, "Correct the test, or the kind of the fact.")
    if fact.kind in MEASURED:
        yield from _limits(placed, fact, source)
    else:
        yield from _words(placed, fact, source)


def _allowed(fact: WrittenFact) -> tuple[str, ...]:
    if fact.kind in MEASURED:
        return LIMITS
    return {"words": ("has",), "word": ("is", "one_of")}.get(fact.kind, ("is",))


def _limits(placed: Placed, fact: WrittenFact, source: YamlSource) -> Iterator[Problem]:
    test = placed.test
    for one, other in (("above", "at_least"), ("below", "at_most")):
        if getattr(test, one) is not None and getattr(test, other) is not None:
            must = f"a test must have {one} or {other}, not both"
            where = place(source, (*placed.at, one))
            yield Problem(where, must, "both", "Keep the one that the source prints.")
    for key in LIMITS:
        limit = getattr(test, key)
        if limit is not None and round(limit, fact.digits) != limit:
            must = f"a limit must have at most as many digits as the fact ({fact.digits})"
            where = place(source, (*placed.at, key))
            yield Problem(where, must, str(limit), "Correct it, or raise digits of the fact.")
    yield from _empty(placed, source)


def _empty(placed: Placed, source: YamlSource) -> Iterator[Problem]:
    test = placed.test
    low = test.above if test.above is not None else test.at_least
    high = test.below if test.below is not None else test.at_most
    if low is None or high is None:
        return
    both_in = test.above is None and test.below is None
    if low > high or (low == high and not both_in):
        must = "the limits must leave something between them"
        got = f"{low} and {high}"
        yield Problem(place(source, placed.at), must, got, "Swap the two, or correct one.")


def _words(placed: Placed, fact: WrittenFact, source: YamlSource) -> Iterator[Problem]:
    known = ("yes", "no") if fact.kind == "yes or no" else tuple(fact.words or ())
    test = placed.test
    asked: list[tuple[KeyPath, str]] = [
        (("one_of", at), word) for at, word in enumerate(test.one_of or ())
    ]
    asked += [((key,), word) for key, word in (("is", test.is_), ("has", test.has)) if word]
    for at, word in asked:
        if word not in known:
            must = f"it must be one of the fact's words ({', '.join(known)})"
            where = place(source, (*placed.at, *at))
            yield Problem(where, must, shown(word), suggest(word, known))
