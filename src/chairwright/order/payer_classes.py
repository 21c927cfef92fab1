"""In which class of each group a chair is: tests, classes that go before others, declarations."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import product

from chairwright.order.payer_logic import (
    Context,
    Standing,
    Step,
    answer,
    every,
    joined,
    missing,
    opposite,
    some,
)
from chairwright.order.payer_model import Entry, Group, Scheme, Truth
from chairwright.order.payer_result import GroupResult, Judged
from chairwright.order.payer_values import Known

MOST_OPEN = 6
"""Most yes-or-no facts of which both answers are tried."""


def classes_of(
    scheme: Scheme, facts: Mapping[str, Known]
) -> tuple[Step | None, tuple[GroupResult, ...], Context]:
    """Judge every class of a scheme.

    Parameters
    ----------
    scheme : Scheme
    facts : mapping of str to Known

    Returns
    -------
    general : Step or None
        The payer's test of the client that goes for every class.
    groups : tuple of GroupResult
    context : Context
        With where each class stands, for the tests of accessories.
    """
    context = Context(scheme.asked, facts)
    alone = tuple(_group(group, context) for group in scheme.groups)
    standings = {
        each.entry.code: Standing(
            group.group.name,
            each.truth if group.declared or each.fits is None else each.fits.truth,
            each.truth,
            () if each.fits is None else missing(each.fits),
        )
        for group in alone
        for each in group.classes
    }
    context = Context(scheme.asked, facts, standings)
    general = None if scheme.covered is None else answer(scheme.covered, context)
    return general, tuple(_with_cover(group, general, context) for group in alone), context


def _group(group: Group, context: Context) -> GroupResult:
    known = context.facts.get(group.name)
    declared = str(known.value) if known is not None else ""
    fits = _fits(group, context)
    truths = _over_yes_and_no(group, fits, context)
    make = _declared if declared else _judged
    classes = tuple(make(entry, group, fits, truths, declared) for entry in group.classes)
    return GroupResult(group, classes, declared)


def _declared(
    entry: Entry,
    group: Group,
    fits: Mapping[str, Step | None],
    truths: Mapping[str, Truth],
    declared: str,
) -> Judged:
    is_it = declared == entry.code
    differs = is_it and truths[entry.code] is not True
    remark = "declared; the tests of the chair held here do not show it" if differs else ""
    return Judged(entry, fits[entry.code], is_it, None, remark=remark)


def _judged(
    entry: Entry,
    group: Group,
    fits: Mapping[str, Step | None],
    truths: Mapping[str, Truth],
    declared: str,
) -> Judged:
    before = tuple(
        each.code
        for each in group.classes
        if entry.code in each.goes_before and truths[each.code] is not False
    )
    return Judged(entry, fits[entry.code], truths[entry.code], None, before)


def _fits(group: Group, context: Context) -> dict[str, Step | None]:
    return {
        entry.code: None if entry.when is None else answer(entry.when, context)
        for entry in group.classes
    }


def _alone(fits: Mapping[str, Step | None]) -> dict[str, Truth]:
    """Each class by its own tests; what is left over when no other holds."""
    others = some(step.truth for step in fits.values() if step is not None)
    return {code: opposite(others) if step is None else step.truth for code, step in fits.items()}


def _kept(group: Group, alone: Mapping[str, Truth]) -> dict[str, Truth]:
    """Each class after those that go before it."""
    before: dict[str, list[str]] = {entry.code: [] for entry in group.classes}
    for entry in group.classes:
        for code in entry.goes_before:
            before[code].append(entry.code)
    return {
        code: every((alone[code], *(opposite(alone[each]) for each in earlier)))
        for code, earlier in before.items()
    }


def _over_yes_and_no(
    group: Group, fits: Mapping[str, Step | None], context: Context
) -> dict[str, Truth]:
    """Truths of the classes; where a yes-or-no fact is not known, those that both answers give.

    So of two classes that differ by one such fact, one holds, and what is left over does not.
    """
    asked = dict.fromkeys(name for step in fits.values() if step for name in missing(step))
    names = [name for name in asked if context.asked[name].kind == "yes or no"][:MOST_OPEN]
    found = []
    for answers in product((True, False), repeat=len(names)):
        told = {name: Known(each, "declared") for name, each in zip(names, answers, strict=True)}
        tried = Context(context.asked, {**context.facts, **told})
        found.append(_kept(group, _alone(_fits(group, tried))))
    return {
        code: truth if all(each[code] is truth for each in found) else None
        for code, truth in found[0].items()
    }


def _with_cover(group: GroupResult, general: Step | None, context: Context) -> GroupResult:
    classes = []
    for each in group.classes:
        own = None if each.entry.covered is None else answer(each.entry.covered, context)
        steps = tuple(step for step in (general, own) if step is not None)
        covered = joined("all", steps) if steps else None
        classes.append(
            Judged(each.entry, each.fits, each.truth, covered, each.overtaken_by, each.remark)
        )
    return GroupResult(group.group, tuple(classes), group.declared)
