"""Three-valued logic over facts: what holds, what does not, what nobody knows, and why.

``all`` fails when one test fails, whatever is not known of the others; ``any`` holds when one
holds; ``not`` of what is not known is not known (Kleene's strong logic, a textbook matter).
A rule that its sources give in several ways is known only where all ways agree.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal

from chairwright.order.payer_model import (
    Backing,
    ClassTest,
    Disputed,
    Fact,
    FactTest,
    Test,
    Truth,
)
from chairwright.order.payer_values import Known, value_words

NOT_KNOWN = "not known"


@dataclass(frozen=True)
class Standing:
    """Where one class of a group stands: alone, after others went before, and what is missing."""

    group: str
    alone: Truth
    truth: Truth
    missing: tuple[str, ...] = ()


@dataclass(frozen=True)
class Context:
    """What a test can look at.

    Parameters
    ----------
    asked : mapping of str to Fact
    facts : mapping of str to Known
        Only what is known.
    classes : mapping of str to Standing
        Classes that have been judged.
    """

    asked: Mapping[str, Fact]
    facts: Mapping[str, Known]
    classes: Mapping[str, Standing] = field(default_factory=dict)


@dataclass(frozen=True)
class Step:
    """One test answered.

    Parameters
    ----------
    truth : bool or None
    kind : {"fact", "class", "all", "any", "not", "disputed", "reading"}
    label : str
        What was asked about.
    value : str
        What it is, with its unit.
    wanted : str
        What must hold of it.
    because : str
        The payer's own name of the test.
    backing : Backing or None
        None where tests are only joined.
    missing : tuple of str
        Facts that are not known and would settle a single test.
    inside : tuple of Step
    """

    truth: Truth
    kind: Literal["fact", "class", "all", "any", "not", "disputed", "reading"]
    label: str = ""
    value: str = ""
    wanted: str = ""
    because: str = ""
    backing: Backing | None = None
    missing: tuple[str, ...] = ()
    inside: tuple[Step, ...] = ()


def every(truths: Iterable[Truth]) -> Truth:
    """Whether all hold: False when one fails, None when one is not known.

    Examples
    --------
    >>> every([True, None]), every([False, None]), every([])
    (None, False, True)
    """
    found = tuple(truths)
    if False in found:
        return False
    return None if None in found else True


def some(truths: Iterable[Truth]) -> Truth:
    """Whether one holds at least.

    Examples
    --------
    >>> some([True, None]), some([False, None]), some([])
    (True, None, False)
    """
    return opposite(every(opposite(truth) for truth in truths))


def opposite(truth: Truth) -> Truth:
    """The other truth; what is not known stays so."""
    return None if truth is None else not truth


def answer(test: Test, context: Context) -> Step:
    """Answer one test.

    Parameters
    ----------
    test : Test
    context : Context

    Returns
    -------
    Step
    """
    if isinstance(test, FactTest):
        return _fact(test, context)
    if isinstance(test, ClassTest):
        return _class(test, context)
    if isinstance(test, Disputed):
        return _disputed(test, context)
    inside = tuple(answer(each, context) for each in test.tests)
    return joined(test.kind, inside, test.because)


def joined(kind: Literal["all", "any", "not"], inside: tuple[Step, ...], because: str = "") -> Step:
    """Join steps that are answered.

    Parameters
    ----------
    kind : {"all", "any", "not"}
    inside : tuple of Step
    because : str

    Returns
    -------
    Step
    """
    truths = [step.truth for step in inside]
    if kind == "not":
        truth = opposite(truths[0])
    else:
        truth = every(truths) if kind == "all" else some(truths)
    return Step(truth, kind, because=because, inside=inside)


def _disputed(test: Disputed, context: Context) -> Step:
    inside = tuple(
        Step(
            (step := answer(reading.test, context)).truth,
            "reading",
            label=reading.name,
            backing=reading.backing,
            inside=(step,),
        )
        for reading in test.readings
    )
    truths = {step.truth for step in inside}
    truth = truths.pop() if len(truths) == 1 else None
    return Step(truth, "disputed", because=test.because, inside=inside)


def _fact(test: FactTest, context: Context) -> Step:
    fact, known = context.asked[test.fact], context.facts.get(test.fact)
    truth: Truth = None if known is None else _holds(test, known)
    value = NOT_KNOWN if known is None else value_words(fact, known.value)
    if known is not None and known.words:
        value = f"{value} ({known.words})"
    return Step(
        truth=truth,
        kind="fact",
        label=fact.label,
        value=value,
        wanted=wanted_words(test, fact),
        because=test.because,
        backing=test.backing,
        missing=(test.fact,) if truth is None else (),
    )


def _holds(test: FactTest, known: Known) -> Truth:
    value = known.value
    if isinstance(value, Decimal):
        return within(test, value)
    if isinstance(value, bool):
        return value == ("yes" in test.wanted)
    if isinstance(value, str):
        return value in test.wanted
    if set(test.wanted) & set(value):
        return True
    return False if known.whole else None


def within(test: FactTest, value: Decimal) -> bool:
    """Whether a number keeps the limits of a test, each end in or out as the test says.

    Parameters
    ----------
    test : FactTest
    value : Decimal
        In the fact's unit, as printed.
    """
    return (
        (test.above is None or value > test.above)
        and (test.at_least is None or value >= test.at_least)
        and (test.below is None or value < test.below)
        and (test.at_most is None or value <= test.at_most)
    )


def wanted_words(test: FactTest, fact: Fact) -> str:
    """What a test wants of its fact: ``at least 20 and below 24 in``, ``yes``.

    Parameters
    ----------
    test : FactTest
    fact : Fact
    """
    ends = [
        f"{words} {limit}"
        for words, limit in (
            ("above", test.above),
            ("at least", test.at_least),
            ("below", test.below),
            ("at most", test.at_most),
        )
        if limit is not None
    ]
    if ends:
        return f"{' and '.join(ends)} {fact.unit}".rstrip()
    words = fact.words or {}
    return " or ".join(words.get(word, word) for word in test.wanted)


def _class(test: ClassTest, context: Context) -> Step:
    named = {code: context.classes[code] for code in test.codes}
    groups = {each.group for each in named.values()}
    around = {code: each for code, each in context.classes.items() if each.group in groups}
    truth: Truth = None
    if some(each.truth for each in named.values()) is False:
        truth = False
    elif some(each.alone for each in named.values()) is True:
        outside = some(each.truth for code, each in around.items() if code not in named)
        truth = True if outside is False else None
    still = [code for code, each in around.items() if each.truth is not False]
    names = [name for code in still for name in around[code].missing] or sorted(groups)
    return Step(
        truth=truth,
        kind="class",
        label="class of the chair",
        value=" or ".join(still) or "none",
        wanted=" or ".join(test.codes),
        because=test.because,
        backing=test.backing,
        missing=tuple(dict.fromkeys(names)) if truth is None else (),
    )


def missing(step: Step) -> tuple[str, ...]:
    """Facts that are not known and would settle a step, in the order of its tests.

    Parameters
    ----------
    step : Step

    Returns
    -------
    tuple of str
        Empty when it is settled, or when its sources disagree on facts that are all known.
    """
    if step.truth is not None:
        return ()
    found = list(step.missing)
    for each in step.inside:
        found += missing(each)
    return tuple(dict.fromkeys(found))
