"""Which class and codes a payer's criteria give a chair, what they do not cover, what is missing.

Never a promise of payment: the payer decides. What is said here is what a scheme's tests say of
the facts on file.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from chairwright.order.payer_classes import classes_of
from chairwright.order.payer_facts import EXTRAS, OTHER
from chairwright.order.payer_lines import CHAIR, OrderLine, declared_extras
from chairwright.order.payer_logic import Context, answer, missing
from chairwright.order.payer_model import Document, Entry, FactTest, Joined, Scheme, Test
from chairwright.order.payer_result import (
    Assessment,
    GroupResult,
    Judged,
    LineResult,
    MissingFact,
)
from chairwright.order.payer_values import Known


def assess(
    scheme: Scheme,
    facts: Mapping[str, Known],
    lines: tuple[OrderLine, ...] = (),
    foot_supports: int = 2,
) -> Assessment:
    """Judge a chair and its client by a scheme.

    Parameters
    ----------
    scheme : Scheme
    facts : mapping of str to Known
        What is known, from `payer_facts.facts_of` or `payer_facts.told_facts`.
    lines : tuple of OrderLine
        From `payer_lines.order_lines`.
    foot_supports : int
        How many are fitted.

    Returns
    -------
    Assessment
    """
    general, groups, context = classes_of(scheme, facts)
    accessories = tuple(_accessory(entry, context) for entry in scheme.accessories)
    known = facts.get(EXTRAS)
    if known is not None and known.how == "declared" and isinstance(known.value, tuple):
        lines = declared_extras(scheme, known.value, lines)
    return Assessment(
        scheme=scheme,
        facts=facts,
        general=general,
        groups=groups,
        accessories=accessories,
        lines=tuple(_line(line, scheme, accessories, foot_supports) for line in lines),
        missing=tuple(_missing(scheme, groups, accessories)),
        documents=_documents(scheme, groups, accessories),
    )


def _accessory(entry: Entry, context: Context) -> Judged:
    fits = None if entry.when is None else answer(entry.when, context)
    covered = None if entry.covered is None else answer(entry.covered, context)
    return Judged(entry, fits, None if fits is None else fits.truth, covered)


def _line(
    line: OrderLine, scheme: Scheme, accessories: tuple[Judged, ...], foot_supports: int
) -> LineResult:
    mine = [each for each in accessories if _belongs(each.entry, line)]
    if line.line == EXTRAS and line.word is None:
        return LineResult(line, "depends")
    holds = tuple(each for each in mine if each.truth is True)
    opens = tuple(each for each in mine if each.truth is None)
    quantity = {each.entry.code: each.entry.quantity or foot_supports for each in mine}
    if holds:
        return LineResult(line, "coded", (*holds, *opens), quantity)
    if opens:
        return LineResult(line, "depends", opens, quantity)
    if line.line in scheme.included or line.line == CHAIR:
        return LineResult(line, "in the class")
    if scheme.not_listed is not None:
        return LineResult(line, "not listed")
    return LineResult(line, "no code held here")


def _belongs(entry: Entry, line: OrderLine) -> bool:
    if entry.line != line.line:
        return False
    return line.line != EXTRAS or line.word in extras_of(entry.when)


def extras_of(test: Test | None) -> frozenset[str]:
    """Words of extras that a test asks for.

    Parameters
    ----------
    test : Test or None

    Returns
    -------
    frozenset of str
        Without the word for what has no code.
    """
    if isinstance(test, FactTest) and test.fact == EXTRAS:
        return frozenset(test.wanted) - {OTHER}
    if isinstance(test, Joined):
        return frozenset(word for each in test.tests for word in extras_of(each))
    return frozenset()


def _missing(
    scheme: Scheme, groups: tuple[GroupResult, ...], accessories: tuple[Judged, ...]
) -> Iterator[MissingFact]:
    decides: dict[str, list[str]] = {}
    for group in groups:
        for each in group.possible:
            for name in _open(each):
                decides.setdefault(name, []).append(each.entry.code)
        if not group.settled and not any(_open_fits(each) for each in group.possible):
            codes = [each.entry.code for each in group.possible or group.classes]
            decides.setdefault(group.group.name, []).extend(codes)
    for each in accessories:
        for name in _open(each) if each.truth is not False else ():
            decides.setdefault(name, []).append(each.entry.code)
    for name in scheme.asked:
        if name in decides:
            yield MissingFact(name, tuple(dict.fromkeys(decides[name])))


def _open_fits(judged: Judged) -> tuple[str, ...]:
    return () if judged.fits is None else missing(judged.fits)


def _open(judged: Judged) -> tuple[str, ...]:
    covered = () if judged.covered is None else missing(judged.covered)
    return tuple(dict.fromkeys((*_open_fits(judged), *covered)))


def _documents(
    scheme: Scheme, groups: tuple[GroupResult, ...], accessories: tuple[Judged, ...]
) -> tuple[Document, ...]:
    found = list(scheme.always)
    for each in (*(one for group in groups for one in group.possible), *accessories):
        if each.truth is True or (each.truth is None and each.entry.line == ""):
            found += each.entry.documents
    return tuple(dict.fromkeys(found))
