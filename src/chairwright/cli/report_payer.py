"""What a payer's scheme says of a set-up, as text: the answer, what to ask, codes, the path."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import chain

from chairwright.cli.table import text_table
from chairwright.line.model import Line
from chairwright.order.payer_logic import Step, missing
from chairwright.order.payer_model import Backing
from chairwright.order.payer_result import NO_PROMISE, Assessment, GroupResult, Judged, LineResult
from chairwright.order.payer_words import (
    TRUTH,
    answers,
    backings,
    cited,
    class_words,
    client_words,
    leaf_words,
    reason,
)
from chairwright.papers.words import wrapped

MOST_CODES = 4
"""Codes named behind a fact before the rest is counted."""


def payer_text(found: Assessment, reference: str, line: Line) -> str:
    """Everything that a scheme says of one set-up: first the answer, last how it came about.

    Parameters
    ----------
    found : Assessment
    reference : str
        The client's.
    line : Line

    Returns
    -------
    str
    """
    numbers = _Numbers()
    sections = [
        _head(found, reference, line),
        *(_group_text(group) for group in found.groups),
        _ask(found),
        _codes(found),
        _not_covered(found),
        _papers(found, numbers),
        _path(found, numbers),
        *_others(found, numbers),
        numbers.text(),
        wrapped(f"About this scheme: {found.scheme.note}"),
        NO_PROMISE,
    ]
    return "\n\n".join(section for section in sections if section)


class _Numbers:
    """Numbers the sources in the order in which the text meets them."""

    def __init__(self) -> None:
        self.numbers: dict[Backing, int] = {}

    def of(self, steps: Sequence[Step], *more: Backing) -> str:
        every = dict.fromkeys(chain(backings(steps), more))
        return self.mark(*every)

    def mark(self, *backings_: Backing) -> str:
        found = [self.numbers.setdefault(each, len(self.numbers) + 1) for each in backings_]
        return f"[{', '.join(str(number) for number in sorted(found))}]" if found else ""

    def text(self) -> str:
        rows = [
            wrapped(f"  [{number}] {cited(each)}{_dated(each)}", "      ")
            for each, number in self.numbers.items()
        ]
        return "\n".join(["Sources", *rows])


def _dated(backing: Backing) -> str:
    source = backing.source
    dated = source.dated and source.dated not in source.citation
    more = [f"of {source.dated}" if dated else "", source.note]
    words = "; ".join(each for each in more if each)
    return f"; {words}" if words else ""


def _head(found: Assessment, reference: str, line: Line) -> str:
    scheme = found.scheme
    return "\n".join(
        (
            f"{reference} on {line.title} ({line.name})",
            wrapped(f"{scheme.title}: {scheme.payer}, {scheme.country}; {scheme.edition}"),
            NO_PROMISE,
        )
    )


def _group_text(group: GroupResult) -> str:
    title = f"{group.group.title}: {class_words(group)}"
    if group.declared:
        title += " (declared)"
    rows = [
        [each.entry.code, each.entry.title, TRUTH[each.truth], client_words(each)]
        for each in group.possible
    ]
    if not rows:
        return title
    lines = [title, text_table(["code", "class", "the chair", "the client"], rows)]
    for each in group.possible:
        remarks = (each.remark, each.entry.note)
        lines += [wrapped(f"{each.entry.code}: {words}", "  ") for words in remarks if words]
    return "\n".join(lines)


def _ask(found: Assessment) -> str:
    if not found.missing:
        return "Nothing is left to ask."
    asked = found.scheme.asked
    lines = [f"Please find out ({len(found.missing)}), and say it behind --fact"]
    for number, each in enumerate(found.missing, 1):
        fact = asked[each.name]
        lines.append(wrapped(f"{number:3}. {fact.ask}", "     "))
        words = f"     {each.name}={answers(fact, each.decides)} (for {_few(each.decides)})"
        lines.append(wrapped(words, "       "))
    first = " ".join(f"{each.name}=..." for each in found.missing[:2])
    lines.append(f"Such as: chairwright payer SETUP --fact {first}")
    return "\n".join(lines)


def _few(codes: Sequence[str]) -> str:
    rest = len(codes) - MOST_CODES
    return ", ".join(codes[:MOST_CODES]) + (f" and {rest} more" if rest > 0 else "")


def _codes(found: Assessment) -> str:
    rows, inside = [], []
    for line in found.lines:
        if line.standing == "in the class":
            if line.line.line != "chair":
                inside.append(f"{line.line.label.lower()} {line.line.part}")
            continue
        rows += list(_rows(found, line))
    lines = ["Codes beside the class"]
    if rows:
        headers = ["line", "part", "code", "pieces", "what it is", "the client"]
        lines.append(text_table(headers, rows, "lllrll"))
    else:
        lines.append("none")
    if inside:
        lines.append(wrapped(f"In the code of the class: {', '.join(inside)}.", "  "))
    return "\n".join(lines)


def _rows(found: Assessment, result: LineResult) -> Iterator[list[str]]:
    line, entry = result.line, found.scheme.not_listed
    label = [line.label, line.part]
    if result.standing == "not listed" and entry is not None:
        yield [*label, entry.code, "1", f"{line.name}: no code of its own", "not known"]
    elif result.standing == "no code held here":
        yield [*label, "none", "", f"{line.name}: no code held here", ""]
    elif result.standing == "depends":
        yield [*label, *_depends(found, result)]
    else:
        for each in (one for one in result.codes if one.truth):
            pieces = str(result.quantity[each.entry.code])
            yield [*label, each.entry.code, pieces, each.entry.title, client_words(each)]
        for each in (one for one in result.codes if one.truth is None):
            yield [*label, f"{each.entry.code}?", "", each.entry.title, "not known"]


def _depends(found: Assessment, result: LineResult) -> list[str]:
    steps = [each.fits for each in result.codes if each.fits is not None]
    names = dict.fromkeys(name for step in steps for name in missing(step))
    codes = [each.entry.code for each in result.codes]
    shown = "?" if len(codes) != 1 else f"{codes[0]}?"
    if not result.codes:
        names = dict.fromkeys(("extras",))
    elif not names:
        return [shown, "", reason(steps[0]), "not known"]
    return [shown, "", f"{result.line.name}: hangs on {', '.join(names)}", "not known"]


def _not_covered(found: Assessment) -> str:
    if not found.not_covered:
        return ""
    lines = ["Not covered by these criteria"]
    for each in found.not_covered:
        why = "" if each.covered is None else reason(each.covered)
        lines.append(wrapped(f"  {each.entry.code} {each.entry.title}: {why}", "      "))
    for group in found.groups:
        if any(each in group.possible for each in found.not_covered):
            lines += _other_classes(group)
    return "\n".join(lines)


def _other_classes(group: GroupResult) -> Iterator[str]:
    """For which other chairs the client's own facts speak, where a class has a test of its own."""
    for truth, words in ((True, "holds"), (None, "is not known")):
        codes = [
            each.entry.code
            for each in group.classes
            if each.truth is False and each.covered is not None and each.entry.covered is not None
            if each.covered.truth is truth
        ]
        if codes:
            text = f"For another chair, the test of the client {words} with {', '.join(codes)}."
            yield wrapped(f"  {text}", "  ")


def _path(found: Assessment, numbers: _Numbers) -> str:
    lines = ["How this came about"]
    for group in found.groups:
        for each in group.possible:
            lines += _judged(each, found.general, numbers)
    if found.general is not None:
        lines += _steps("  every class, the client", found.general, numbers)
    shown = [each for each in found.accessories if each.truth is not False]
    named = {each.entry.code for result in found.lines for each in result.codes}
    for each in shown:
        if each.truth or (each.entry.code in named and each.fits and not _many(each, shown)):
            lines += _judged(each, None, numbers)
    return "\n".join(lines)


def _many(judged: Judged, shown: Sequence[Judged]) -> bool:
    """Whether more codes of the same line are open than are worth a path."""
    alike = [one for one in shown if one.truth is None and one.entry.line == judged.entry.line]
    return len(alike) > MOST_CODES


def _judged(each: Judged, general: Step | None, numbers: _Numbers) -> Iterator[str]:
    code, before = each.entry.code, each.overtaken_by
    mark = numbers.mark(each.entry.backing)
    if each.fits is None:
        yield f"  {code}, the chair: no other class holds {mark}"
    else:
        yield from _steps(f"  {code}, the chair", each.fits, numbers)
    if before:
        yield f"      {' and '.join(before)} would go before it"
    own = _own_cover(each, general)
    if own is not None:
        yield from _steps(f"  {code}, the client", own, numbers)


def _own_cover(each: Judged, general: Step | None) -> Step | None:
    """The test of the client that this code has beside the general one."""
    if each.covered is None or general is None:
        return each.covered
    own = [step for step in each.covered.inside if step is not general]
    return own[0] if own else None


def _steps(title: str, step: Step, numbers: _Numbers) -> Iterator[str]:
    yield f"{title}: {TRUTH[step.truth]}"
    yield from _tree(step, numbers, "      ")


JOINTS = {"all": "all of", "any": "one of", "not": "not"}


def _tree(step: Step, numbers: _Numbers, indent: str) -> Iterator[str]:
    if step.kind in ("fact", "class"):
        mark = numbers.mark(*([step.backing] if step.backing else []))
        yield wrapped(f"{indent}{leaf_words(step)} {mark}".rstrip(), f"{indent}    ")
        return
    if step.kind == "disputed":
        yield wrapped(f"{indent}{step.because}: read in several ways", indent)
        for each in step.inside:
            mark = numbers.mark(*([each.backing] if each.backing else []))
            yield f"{indent}  {each.label}: {TRUTH[each.truth]} {mark}"
            yield from _inside(each, numbers, f"{indent}    ")
        return
    if step.kind == "all":
        if step.because:
            yield f"{indent}{step.because}:"
        yield from _inside(step, numbers, indent)
        return
    because = f"{step.because}: " if step.because else ""
    yield f"{indent}{because}{JOINTS[step.kind]}: {TRUTH[step.truth]}"
    yield from _inside(step, numbers, f"{indent}  ")


def _inside(step: Step, numbers: _Numbers, indent: str) -> Iterator[str]:
    for each in step.inside:
        yield from _tree(each, numbers, indent)


def _others(found: Assessment, numbers: _Numbers) -> Iterator[str]:
    """The classes that the chair is not in, those with the same first reason together."""
    for group in found.groups:
        why: dict[str, list[str]] = {}
        for each in group.classes if not group.declared else ():
            if each.truth is False and each.fits is not None:
                why.setdefault(_why_not(each, each.fits, numbers), []).append(each.entry.code)
        if why:
            rows = [
                wrapped(f"  {', '.join(codes)}: {words}", "      ") for words, codes in why.items()
            ]
            yield "\n".join([f"{group.group.title}: why not another", *rows])


def _why_not(each: Judged, fits: Step, numbers: _Numbers) -> str:
    if fits.truth is not False:
        return f"{' or '.join(each.overtaken_by) or 'another class'} goes before"
    step = fits
    while step.kind == "all":
        step = next(one for one in step.inside if one.truth is False)
    return f"{reason(step, brief=True)} {numbers.of([step])}"


def _papers(found: Assessment, numbers: _Numbers) -> str:
    if not found.documents:
        return ""
    rows = [
        wrapped(f"  {each.title} {numbers.mark(each.backing)}", "      ")
        for each in found.documents
    ]
    return "\n".join(["Papers that are asked for", *rows])
