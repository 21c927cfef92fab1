"""A measured chair as text: slips, figures, verdicts, and what a proposed set-up would change."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from chairwright.cli.opened import Opened
from chairwright.cli.report_fit import weighed_sections
from chairwright.cli.report_setup import figure_text, source_numbers, source_text
from chairwright.cli.table import text_table
from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.files.measured import MeasuredFile
from chairwright.fitting.ledger import Row, ledger
from chairwright.fitting.person import Person
from chairwright.measured.gains import Change, changes
from chairwright.measured.slips import Doubt, Suspect
from chairwright.measured.stands import Stands
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.lesson_words import change_words
from chairwright.papers.words import (
    Units,
    inches_words,
    measured_words,
    range_words,
    spread_words,
    value_words,
    wrapped,
)

SPREAD = (
    "+/- is what tape, level and scales can be off, with what is assumed and how far the posture "
    "model can be off, as the root of the sum of squares. A verdict 'holds' when the whole of it "
    "lies inside; 'holds on nominal values' when only the value does."
)
NOT_MEASURED = (
    "A figure that hangs on one of these is left out (-): {names}. Measure them to have it."
)
ASSUMED = "Not measured, usual values stand in and count in the +/-: {names}."
MOST_OTHERS = 2
NOT_SHOWN = ("currency", "days")


@dataclass(frozen=True)
class Judgement:
    """One measured chair, all that is said of it, and what it is compared with.

    Parameters
    ----------
    file : MeasuredFile
    person : Person
    doubt : Doubt
    stands : Stands
    proposed : Opened or None
    """

    file: MeasuredFile
    person: Person
    doubt: Doubt
    stands: Stands
    proposed: Opened | None

    @property
    def changes(self) -> tuple[Change, ...]:
        """What the proposed set-up changes; empty without one."""
        return () if self.proposed is None else changes(self.stands.setup, self.proposed.setup)


def measured_text(found: Judgement, units: Units) -> str:
    """Everything about a measured chair.

    Parameters
    ----------
    found : Judgement
    units : {"mm", "in"}

    Returns
    -------
    str
    """
    return "\n\n".join([*_head(found), *_figures(found, units), *_gains(found, units),
                        wrapped(PURPOSE)])  # fmt: skip


def _head(found: Judgement) -> Iterator[str]:
    file = found.file
    taken = f"{len(file.readings)} measures of {len(CHAIR_MEASURES)}"
    yield wrapped(f"{found.person.client.reference}: {file.name}, as measured ({taken}).")
    if file.note:
        yield wrapped(file.note)
    yield from weighed_sections(found.person)
    lines = doubt_lines(found.doubt)
    if lines:
        yield "\n".join(["The measures do not fit each other", *map(_bullet, lines)])
    else:
        yield "The measures fit each other as far as they check each other."


def doubt_lines(doubt: Doubt) -> list[str]:
    """Which reading to take again, and what does not close; empty when all does.

    Parameters
    ----------
    doubt : Doubt

    Returns
    -------
    list of str
    """
    lines = []
    if doubt.named is not None:
        lines.append(f"{_suspect(doubt.named)} Measure it again first.")
        lines += [f"Or: {_suspect(each)}" for each in doubt.suspects[1 : 1 + MOST_OTHERS]]
    elif doubt.open_closures:
        lines.append("No single slip explains it: measure again what is named below.")
    for closure in doubt.open_closures:
        names = ", ".join(name for name in closure.uses if name in CHAIR_MEASURES)
        lines.append(f"Does not hold: {closure.words[0].lower()}{closure.words[1:]} ({names}).")
    return lines


def _suspect(each: Suspect) -> str:
    reading = each.reading
    kind = CHAIR_MEASURES[reading.name]
    return (
        f"{reading.where}: {reading.name} ({kind.label.lower()}) is given as "
        f"{reading.quantity.typed}; perhaps {each.slip.words} "
        f"({each.slip.meant:.4g} {kind.unit} would fit the others)."
    )


def _figures(found: Judgement, units: Units) -> Iterator[str]:
    setup = found.stands.setup
    rows = [row for row in ledger(setup) if row.figure.unit not in NOT_SHOWN]
    numbers = source_numbers(rows)
    yield figure_text(setup.line, rows, numbers, units)
    yield wrapped(SPREAD)
    known = found.stands.known
    if known.unknown:
        yield wrapped(NOT_MEASURED.format(names=_names(known.unknown)))
    if known.assumed:
        yield wrapped(ASSUMED.format(names=_names(known.assumed)))
    yield source_text(numbers)


def _names(names: Sequence[str]) -> str:
    return ", ".join(names)


def _gains(found: Judgement, units: Units) -> Iterator[str]:
    if found.proposed is None:
        return
    moved = found.changes
    yield f"What this client would gain from {found.proposed.name}"
    heads = (
        ("gain", "Gains", "No verdict gets better."),
        ("nearer", "Still missed, by less", ""),
        ("loss", "Losses", "No verdict gets worse."),
        ("farther", "Missed by more than now", ""),
        ("not told", "Not told: one of the two has no such figure", ""),
    )
    for kind, head, none in heads:
        lines = [gain_words(change) for change in moved if change.kind == kind]
        if lines:
            yield "\n".join([head, *map(_bullet, lines)])
        elif none:
            yield none
    yield _table([each for each in moved if each.then.figure.unit not in NOT_SHOWN], units)


def gain_words(change: Change) -> str:
    """One figure now and then, in a sentence.

    Parameters
    ----------
    change : Change

    Returns
    -------
    str
    """
    now, then = change.now, change.then
    asked = "; ".join(
        f"{'must be' if item.target.must else 'preferred'} {range_words(item.target)}"
        for item in then.asked
    )
    words = (
        f"{now.figure.label}: {_valued(now)} now, {now.word}; {_valued(then)} then, {then.word}"
        f" ({asked})."
    )
    if change.kind == "not told" or change.sure:
        return words
    return f"{words} The two lie within what the measuring can be off."


def _valued(row: Row) -> str:
    shown = measured_words(row.figure, row.value)
    return f"{shown} {spread_words(row.figure, row.spread)}".rstrip()


def _table(moved: Sequence[Change], units: Units) -> str:
    headers, right = ["figure", "unit", "now", "+/-", "then", "+/-", "change"], "llrrrrr"
    if units == "in":
        headers, right = [*headers, "now in", "then in"], f"{right}rr"
    headers += ["verdict now", "verdict then"]
    return text_table(headers, [_cells(each, units) for each in moved], right)


def _cells(change: Change, units: Units) -> list[str]:
    now, then, figure = change.now, change.then, change.now.figure
    cells = [figure.label, figure.unit]
    for row in (now, then):
        cells += [value_words(figure, row.value), spread_words(figure, row.spread).lstrip("± ")]
    cells.append(change_words(figure, now.value, then.value))
    if units == "in":
        cells += [inches_words(figure, row.value).removesuffix(" in") for row in (now, then)]
    return [*cells, now.word or "", then.word or ""]


def _bullet(words: str) -> str:
    return wrapped(f"- {words}", "  ")
