"""How a payer's class came about: each rule with its figures, its source and how certain it is."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Literal

from chairwright.order.payer_logic import NOT_KNOWN, Step
from chairwright.order.payer_model import CERTAINTY, Backing, Truth
from chairwright.order.payer_result import Assessment, GroupResult, Judged
from chairwright.order.payer_words import TRUTH, backings, cited, reason

Mark = Literal["holds", "fails", "unknown"]
MARKS: dict[Truth, Mark] = {True: "holds", False: "fails", None: "unknown"}
JOINTS = {"all": "All of these", "any": "One of these is enough", "not": "This must not hold"}
DISPUTED = "The sources read this rule in several ways"
LEFT_OVER = "No other class holds"


@dataclass(frozen=True)
class Cited:
    """Where a rule stands.

    Parameters
    ----------
    number : int
        Under which the source is listed.
    certainty : str
        In words: ``from memory, unverified``.
    """

    number: int
    certainty: str


@dataclass(frozen=True)
class Rule:
    """One rule with what was compared, or several joined.

    Parameters
    ----------
    words : str
        What is compared, or how those inside are joined.
    value, how : str
        The figure of this chair or client, and where it is from; empty for joined ones.
    must : str
        What must hold of it.
    mark, verdict : str
        Mark and word.
    cited : Cited or None
    inside : tuple of Rule
    """

    words: str
    value: str = ""
    how: str = ""
    must: str = ""
    mark: Mark = "unknown"
    verdict: str = ""
    cited: Cited | None = None
    inside: tuple[Rule, ...] = ()


@dataclass(frozen=True)
class Path:
    """How one answer came about: ``K0006 heavy duty, the chair``."""

    title: str
    mark: Mark
    verdict: str
    rules: tuple[Rule, ...]
    remarks: tuple[str, ...] = ()


@dataclass(frozen=True)
class WhyNot:
    """Classes that the chair is not in for the same reason."""

    codes: str
    why: str
    cited: tuple[Cited, ...]


@dataclass(frozen=True)
class PathShown:
    """All of it.

    Parameters
    ----------
    classes : tuple of Path
        Of the classes that the chair has or may have, and what goes for every class.
    beside : tuple of Path
        Of the codes beside the class.
    others : tuple of (str, tuple of WhyNot)
        Title of each group, and why not another class of it.
    sources : tuple of (int, str)
    """

    classes: tuple[Path, ...]
    beside: tuple[Path, ...]
    others: tuple[tuple[str, tuple[WhyNot, ...]], ...]
    sources: tuple[tuple[int, str], ...]


def path_shown(found: Assessment) -> PathShown:
    """Say how a scheme's answer came about.

    Parameters
    ----------
    found : Assessment
    """
    path = _Path()
    classes = [p for group in found.groups for p in path.of_classes(group, found.general)]
    if found.general is not None:
        classes.append(path.of_step("Every class, the client", found.general))
    beside = [
        each
        for judged in found.accessories
        if judged.truth
        for each in path.of_judged(judged, None)
    ]
    others = [(each.group.title, tuple(path.why_not(each))) for each in found.groups]
    return PathShown(
        tuple(classes),
        tuple(beside),
        tuple((title, rows) for title, rows in others if rows),
        tuple((number, _source(each)) for each, number in path.numbers.items()),
    )


def why_words(group: GroupResult) -> str:
    """The figures that led to a class, in one line.

    Parameters
    ----------
    group : GroupResult

    Examples
    --------
    ``mass of the chair 17.8 kg, is above 17 kg``
    """
    settled = group.settled
    if group.declared:
        return "as somebody has declared it"
    if settled is not None:
        return LEFT_OVER if settled.fits is None else reason(settled.fits, brief=True)
    open_ = [each for each in group.possible if each.fits is not None]
    return "; ".join(f"{each.entry.code}: {reason(each.fits, brief=True)}"
                     for each in open_ if each.fits is not None)  # fmt: skip


def _source(backing: Backing) -> str:
    source = backing.source
    dated = source.dated and source.dated not in source.citation
    more = [f"of {source.dated}" if dated else "", source.note]
    return "; ".join(each for each in (cited(backing), *more) if each)


@dataclass
class _Path:
    """Numbers the sources in the order in which the page meets them."""

    numbers: dict[Backing, int] = field(default_factory=dict)

    def cited(self, backing: Backing) -> Cited:
        number = self.numbers.setdefault(backing, len(self.numbers) + 1)
        return Cited(number, CERTAINTY[backing.certainty])

    def of_classes(self, group: GroupResult, general: Step | None) -> Iterator[Path]:
        for each in group.possible:
            yield from self.of_judged(each, general)

    def of_judged(self, each: Judged, general: Step | None) -> Iterator[Path]:
        title = f"{each.entry.code} {each.entry.title}"
        remarks = [words for words in (each.remark, each.entry.note) if words]
        if each.overtaken_by:
            remarks.append(f"{' and '.join(each.overtaken_by)} would go before it.")
        if each.fits is None:
            left = Rule(LEFT_OVER, mark=MARKS[each.truth], verdict=TRUTH[each.truth],
                        cited=self.cited(each.entry.backing))  # fmt: skip
            yield Path(f"{title}, the chair", left.mark, left.verdict, (left,), tuple(remarks))
        else:
            yield self.of_step(f"{title}, the chair", each.fits, tuple(remarks))
        own = _own_cover(each, general)
        if own is not None:
            yield self.of_step(f"{title}, the client", own)

    def of_step(self, title: str, step: Step, remarks: tuple[str, ...] = ()) -> Path:
        whole = self.rule(step)
        plain = step.kind == "all" and not step.because
        rules = whole.inside if plain else (whole,)
        return Path(title, MARKS[step.truth], TRUTH[step.truth], rules, remarks)

    def rule(self, step: Step) -> Rule:
        mark, verdict = MARKS[step.truth], TRUTH[step.truth]
        named = None if step.backing is None else self.cited(step.backing)
        before = f"{step.because}: " if step.because else ""
        if step.kind in ("fact", "class"):
            value, _, how = ("" if step.value == NOT_KNOWN else step.value).partition(" (")
            how = how.removesuffix(")")
            words = f"{before}{step.label}"
            return Rule(words, value, how, step.wanted, mark, verdict, named)
        inside = tuple(self.rule(each) for each in step.inside)
        return Rule(_joint(step), mark=mark, verdict=verdict, cited=named, inside=inside)

    def why_not(self, group: GroupResult) -> Iterator[WhyNot]:
        why: dict[str, tuple[list[str], tuple[Cited, ...]]] = {}
        for each in group.classes if not group.declared else ():
            if each.truth is False and each.fits is not None:
                words, named = self._why(each, each.fits)
                why.setdefault(words, ([], named))[0].append(each.entry.code)
        for words, (codes, named) in why.items():
            yield WhyNot(", ".join(codes), words, named)

    def _why(self, each: Judged, step: Step) -> tuple[str, tuple[Cited, ...]]:
        if step.truth is not False:
            return f"{' or '.join(each.overtaken_by) or 'another class'} goes before", ()
        while step.kind == "all":
            step = next(one for one in step.inside if one.truth is False)
        named = dict.fromkeys(backings([step]))
        return reason(step, brief=True), tuple(self.cited(one) for one in named)


def _joint(step: Step) -> str:
    before = f"{step.because}: " if step.because else ""
    if step.kind == "reading":
        return f"{before}{step.label}"
    words = DISPUTED if step.kind == "disputed" else JOINTS[step.kind]
    return f"{before}{words[:1].lower()}{words[1:]}" if before else words


def _own_cover(each: Judged, general: Step | None) -> Step | None:
    """The test of the client that a code has beside the general one."""
    if each.covered is None or general is None:
        return each.covered
    own = [step for step in each.covered.inside if step is not general]
    return own[0] if own else None
