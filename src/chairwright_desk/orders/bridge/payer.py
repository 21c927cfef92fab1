"""What a payer's scheme says of an order, and what it still asks for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from chairwright.order.payer import assess
from chairwright.order.payer_facts import facts_of
from chairwright.order.payer_lines import feet_fitted, order_lines
from chairwright.order.payer_load import SHIPPED as SCHEMES
from chairwright.order.payer_load import load_scheme
from chairwright.order.payer_model import CERTAINTY, Fact
from chairwright.order.payer_result import Assessment, GroupResult
from chairwright.order.payer_words import TRUTH, backings, class_words, client_words, reason
from chairwright_desk.orders.bridge.payer_path import PathShown, path_shown, why_words
from chairwright_desk.orders.bridge.worked import Worked

Cells = tuple[str, ...]


@dataclass(frozen=True)
class FactAsked:
    """One fact to be asked for.

    Parameters
    ----------
    name : str
    ask : str
        The question.
    options : tuple of (str, str)
        Answers with their words; empty for a number or several words.
    several : bool
        Whether more than one word may be the answer.
    unit : str
    decides : tuple of str
        Codes that hang on it.
    """

    name: str
    ask: str
    options: tuple[tuple[str, str], ...]
    several: bool
    unit: str
    decides: tuple[str, ...]


@dataclass(frozen=True)
class ClassShown:
    """One group of a scheme: which class of it the chair has, and by which figures.

    Parameters
    ----------
    title : str
        Of the group: ``Base code``.
    words : str
        The class, or the classes that are possible.
    why : str
        The rule with the figures compared.
    certainty : str
        How certain these rules are, such as ``read in the source``; empty without one.
    rows : tuple of tuple of str
        Code, title, the chair, the client.
    """

    title: str
    words: str
    why: str
    certainty: str
    rows: tuple[Cells, ...]


@dataclass(frozen=True)
class SchemeShown:
    """What one payer's scheme comes to, in a line for each of its groups."""

    title: str
    classes: tuple[ClassShown, ...]


@dataclass(frozen=True)
class PayerShown:
    """A scheme's answer in words."""

    title: str
    edition: str
    settled: bool
    groups: tuple[ClassShown, ...]
    path: PathShown
    codes: tuple[Cells, ...]
    inside: str
    not_covered: tuple[str, ...]
    documents: tuple[str, ...]
    missing: tuple[FactAsked, ...]
    known: tuple[FactAsked, ...]
    note: str


def scheme_names() -> tuple[tuple[str, str], ...]:
    """Name and words of every scheme that can be chosen."""
    return tuple((name, load_scheme(name).title) for name in SCHEMES)


def assessed(worked: Worked, scheme: str, told: Mapping[str, str]) -> Assessment:
    """What a scheme says.

    Parameters
    ----------
    worked : Worked
    scheme : str
    told : mapping of str to str
        Facts as typed.

    Raises
    ------
    InputError
        For a fact that cannot be so.
    """
    read, person, setup = load_scheme(scheme), worked.person, worked.order.setup
    facts = facts_of(read, setup, person.client, person.measures, told)
    return assess(read, facts, order_lines(read, setup), feet_fitted(setup))


def payer_shown(found: Assessment, told: Mapping[str, str]) -> PayerShown:
    """Say a scheme's answer in words.

    Parameters
    ----------
    found : Assessment
    told : mapping of str to str
        Facts as typed: they can be changed.
    """
    asked = found.scheme.asked
    open_ = [_asked(asked[each.name], each.decides) for each in found.missing]
    names = {each.name for each in found.missing}
    return PayerShown(
        title=f"{found.scheme.title}: {found.scheme.payer}, {found.scheme.country}",
        edition=found.scheme.edition,
        settled=all(group.settled is not None for group in found.groups),
        groups=tuple(_groups(found)),
        path=path_shown(found),
        codes=tuple(_codes(found)),
        inside=", ".join(
            f"{each.line.label.lower()} {each.line.part}"
            for each in found.lines
            if each.standing == "in the class" and each.line.line != "chair"
        ),
        not_covered=tuple(
            f"{each.entry.code} {each.entry.title}: "
            f"{'' if each.covered is None else reason(each.covered)}"
            for each in found.not_covered
        ),
        documents=tuple(each.title for each in found.documents),
        missing=tuple(open_),
        known=tuple(_asked(asked[n], ()) for n in told if n in asked and n not in names),
        note=found.scheme.note,
    )


def schemes_shown(worked: Worked, scheme: str, told: Mapping[str, str]) -> tuple[SchemeShown, ...]:
    """What every payer's scheme comes to; what was found out counts for the one it was told for.

    Parameters
    ----------
    worked : Worked
    scheme : str
        The order's own.
    told : mapping of str to str
        Facts as typed.
    """
    return tuple(_scheme(assessed(worked, each, told if each == scheme else {}))
                 for each in SCHEMES)  # fmt: skip


def _scheme(found: Assessment) -> SchemeShown:
    return SchemeShown(f"{found.scheme.title}: {found.scheme.payer}", tuple(_groups(found)))


def _asked(fact: Fact, decides: tuple[str, ...]) -> FactAsked:
    options: tuple[tuple[str, str], ...] = ()
    if fact.kind == "yes or no":
        options = (("yes", "yes"), ("no", "no"))
    elif fact.words:
        options = tuple((word, f"{word}: {means}") for word, means in fact.words.items())
    several = fact.kind == "words"
    return FactAsked(fact.name, fact.ask, options, several, fact.unit, decides)


def _groups(found: Assessment) -> Iterator[ClassShown]:
    for group in found.groups:
        rows = tuple(
            (each.entry.code, each.entry.title, TRUTH[each.truth], client_words(each))
            for each in group.possible
        )
        declared = " (declared)" if group.declared else ""
        words = f"{class_words(group)}{declared}"
        yield ClassShown(group.group.title, words, why_words(group), _certainty(group), rows)


def _certainty(group: GroupResult) -> str:
    steps = [each.fits for each in group.possible if each.fits is not None and not group.declared]
    return "; ".join(dict.fromkeys(CERTAINTY[each.certainty] for each in backings(steps)))


def _codes(found: Assessment) -> Iterator[Cells]:
    entry = found.scheme.not_listed
    for result in found.lines:
        line = result.line
        if result.standing == "not listed" and entry is not None:
            yield (line.label, line.part, entry.code, f"{line.name}: no code of its own")
        elif result.standing == "no code held here":
            yield (line.label, line.part, "none", f"{line.name}: no code held here")
        elif result.standing == "depends" and not result.codes:
            yield (line.label, line.part, "?", f"{line.name}: not known yet")
        elif result.standing in ("coded", "depends"):
            for each in result.codes:
                mark = "" if each.truth else "?"
                yield (line.label, line.part, f"{each.entry.code}{mark}", each.entry.title)
