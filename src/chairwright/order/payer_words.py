"""What a scheme's tests say, in words: for screens and papers alike."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from chairwright.order.payer_logic import NOT_KNOWN, Step, missing
from chairwright.order.payer_model import CERTAINTY, Backing, Fact, Truth
from chairwright.order.payer_result import GroupResult, Judged

TRUTH: dict[Truth, str] = {True: "holds", False: "fails", None: "not known"}


def cited(backing: Backing) -> str:
    """Name a source with how certain the test is in it.

    Examples
    --------
    >>> from chairwright.order.payer_model import Source
    >>> cited(Backing(Source("a", "Article 1", "read"), "memory"))
    'Article 1 (from memory, unverified)'
    """
    return f"{backing.source.citation} ({CERTAINTY[backing.certainty]})"


def leaf_words(step: Step) -> str:
    """A single test with its answer: ``weight capacity 286.6 lb, must be above 250 lb: holds``.

    Parameters
    ----------
    step : Step
        Of kind fact or class.
    """
    because = f"{step.because}: " if step.because else ""
    value = "" if step.value == NOT_KNOWN else f" {step.value}"
    return f"{because}{step.label}{value}, must be {step.wanted}: {TRUTH[step.truth]}"


def reason(step: Step, *, brief: bool = False) -> str:
    """Why a step holds, fails or is not known, in one line.

    Parameters
    ----------
    step : Step
    brief : bool
        Without where its facts come from.

    Returns
    -------
    str
        The single tests that decide, joined; of a disputed rule what each reading says.
    """
    return "; ".join(dict.fromkeys(_reasons(step, brief=brief)))


def _reasons(step: Step, *, brief: bool) -> Iterator[str]:
    if step.kind in ("fact", "class", "disputed"):
        yield _decisive(step, brief=brief)
    elif step.kind == "not":
        inside = "; ".join(_reasons(step.inside[0], brief=brief))
        yield f"not wanted: ({inside})"
    else:
        for each in step.inside:
            if each.truth is step.truth:
                yield from _reasons(each, brief=brief)


def _decisive(step: Step, *, brief: bool) -> str:
    because = f"{step.because}: " if step.because else ""
    if step.kind == "disputed":
        ways = ", ".join(f"'{each.label}' {TRUTH[each.truth]}" for each in step.inside)
        return f"{because}by the reading {ways}"
    value = step.value.partition(" (")[0] if brief else step.value
    must = "must be" if step.truth is not True else "is"
    return f"{because}{step.label} {value}, {must} {step.wanted}"


def backings(steps: Iterable[Step]) -> Iterator[Backing]:
    """Every source that some steps rest on, with what is in them.

    Parameters
    ----------
    steps : iterable of Step

    Yields
    ------
    Backing
    """
    for step in steps:
        if step.backing is not None:
            yield step.backing
        yield from backings(step.inside)


def class_words(group: GroupResult) -> str:
    """Which class the chair has: ``K0006 heavy duty``; ``K0004 or K0005``; or none.

    Parameters
    ----------
    group : GroupResult
    """
    settled = group.settled
    if settled is not None:
        return f"{settled.entry.code} {settled.entry.title}"
    possible = [each.entry.code for each in group.possible]
    if not possible:
        return "none of the classes held here"
    if all(each.truth for each in group.possible):
        named = " and ".join(possible)
        return f"{named}: the tests of each hold, no source here says which goes first"
    return " or ".join(possible)


def client_words(judged: Judged) -> str:
    """What the payer's test of the client says of one code, in a few words.

    Parameters
    ----------
    judged : Judged
    """
    if judged.covered is None:
        return "no test held here"
    if judged.covered.truth is None:
        count = len(missing(judged.covered))
        if count == 0:
            return "not known: its sources disagree"
        return f"not known: {count} fact{'s' if count > 1 else ''} missing"
    return TRUTH[judged.covered.truth]


def answers(fact: Fact, likely: Sequence[str] = ()) -> str:
    """How a fact can be answered: ``yes or no``, ``a number, lb``, or its words.

    Parameters
    ----------
    fact : Fact
    likely : sequence of str
        Of many words, those that are named; the rest is only mentioned.
    """
    if fact.kind == "yes or no":
        return "yes or no"
    words = list(fact.words or ())
    named = [word for word in likely if word in words]
    if named:
        return f"{', '.join(named)} or another code"
    return ", ".join(words) if words else f"a number, {fact.unit}"
