"""A payer's result as facts and sentences: class, tests of the client, what is missing.

Never a promise of payment: the payer decides.
"""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.order.justification import Evidence, Fact, Sentence
from chairwright.order.payer_logic import NOT_KNOWN, Step
from chairwright.order.payer_model import Scheme
from chairwright.order.payer_result import Assessment, Judged
from chairwright.order.payer_words import cited, class_words

RESULT = "payer result"
DECLARED = "facts for the payer"


def payer_facts(found: Assessment) -> Iterator[Fact]:
    """Facts of a payer's result.

    Parameters
    ----------
    found : Assessment

    Yields
    ------
    Fact
        For each group of classes what it comes to; each settled class and each accessory with
        a test of the client; the single tests behind them; what is still missing.
    """
    scheme = found.scheme
    for group in found.groups:
        file = f"{RESULT}, {scheme.name}"
        words = f"{class_words(group)}{' (declared)' if group.declared else ''}"
        key = f"payer.class.{group.group.name}"
        source = "; ".join(dict.fromkeys(cited(each.entry.backing) for each in group.possible))
        yield Fact(key, file, group.group.name, group.group.title.lower(), words,
                   note=f"{scheme.title}; {scheme.edition}", source=source)  # fmt: skip
        settled = group.settled
        if settled is not None:
            if settled.fits is not None:
                yield from _tests(f"payer.fits.{group.group.name}", settled.fits)
            yield from _cover(settled, scheme)
    yield from _general(found)
    for judged in _accessories(found):
        yield from _cover(judged, scheme)
    asked = scheme.asked
    for each in found.missing:
        fact = asked[each.name]
        file = f"{RESULT}, {scheme.name}"
        yield Fact(f"payer.missing.{each.name}", file, f"missing: {each.name}", each.name,
                   fact.label)  # fmt: skip


def _accessories(found: Assessment) -> tuple[Judged, ...]:
    every = {judged.entry.code: judged for line in found.lines for judged in line.codes}
    return tuple(each for each in every.values() if each.truth)


def _general(found: Assessment) -> Iterator[Fact]:
    """The test of the client that goes for every class, once it is known."""
    step = found.general
    if step is not None and step.truth is not None:
        yield Fact(
            key="payer.general",
            file=f"{RESULT}, {found.scheme.name}",
            field="test of the client for every class",
            label="every class",
            words="met" if step.truth else "not met",
            standing="holds" if step.truth else "fails",
        )
        yield from _tests("payer.general.tests", step)


def _cover(judged: Judged, scheme: Scheme) -> Iterator[Fact]:
    covered, code = judged.covered, judged.entry.code
    if covered is None or covered.truth is None:
        return
    yield Fact(
        key=f"payer.cover.{code}",
        file=f"{RESULT}, {scheme.name}",
        field=f"test of the client for {code}",
        label=f"{code} {judged.entry.title}",
        words="met" if covered.truth else "not met",
        source=cited(judged.entry.backing),
        standing="holds" if covered.truth else "fails",
    )
    yield from _tests(f"payer.tests.{code}", covered)


def _tests(prefix: str, step: Step) -> Iterator[Fact]:
    """The single tests that decide a step, each with its value."""
    said: dict[str, Fact] = {}
    for leaf in _deciding(step, step.truth):
        value, _, origin = leaf.value.removesuffix(")").partition(" (")
        because = f"({leaf.because}) " if leaf.because else ""
        asked = "" if value == leaf.wanted else f" (asked: {leaf.wanted})"
        words = f"{because}{leaf.label}: {value}{asked}"
        source = cited(leaf.backing) if leaf.backing is not None else ""
        said.setdefault(words, Fact(f"{prefix}.{len(said) + 1}", DECLARED, leaf.label, leaf.label,
                                    words, note=origin, source=source))  # fmt: skip
    yield from said.values()


def _deciding(step: Step, truth: bool | None) -> Iterator[Step]:
    if step.kind in ("fact", "class"):
        if step.truth is truth and step.value != NOT_KNOWN:
            yield step
        return
    for each in step.inside:
        if step.kind == "not":
            yield from _deciding(each, None if truth is None else not truth)
        elif each.truth is truth or step.kind in ("disputed", "reading"):
            yield from _deciding(each, truth)


def classes(evidence: Evidence) -> Iterator[Sentence]:
    """Which class the chair comes to, and by which tests of the chair.

    Parameters
    ----------
    evidence : Evidence

    Yields
    ------
    Sentence
    """
    for group in evidence.under("payer.class."):
        name = group.key.removeprefix("payer.class.")
        tests = evidence.under(f"payer.fits.{name}.")
        text = f"By the criteria held here ({group.note}) the {group.label} is {group.words}"
        why = f", by {'; '.join(fact.words for fact in tests)}" if tests else ""
        yield Sentence(f"{text}{why}.", (group, *tests))


def covers(evidence: Evidence) -> Iterator[Sentence]:
    """Whether the payer's test of the client is met, and by which facts."""
    general, tests = evidence.get("payer.general"), evidence.under("payer.general.tests.")
    if general is not None and tests:
        words = "; ".join(fact.words for fact in tests)
        text = f"The test of the client for {general.label} is {general.words}, by {words}."
        yield Sentence(text, (general, *tests))
    for judged in evidence.under("payer.cover."):
        code = judged.key.removeprefix("payer.cover.")
        tests = evidence.under(f"payer.tests.{code}.")
        if tests:
            words = "; ".join(fact.words for fact in tests)
            text = f"The test of the client for {judged.label} is {judged.words}"
            yield Sentence(f"{text}, by {words}.", (judged, *tests))


def missing(evidence: Evidence) -> Iterator[Sentence]:
    """What nobody has told yet that the payer's criteria ask for."""
    facts = evidence.under("payer.missing.")
    if facts:
        words = "; ".join(fact.words for fact in facts)
        yield Sentence(f"Still to be found out for these criteria: {words}.", facts)
