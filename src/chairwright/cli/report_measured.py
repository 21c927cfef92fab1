"""A measured chair as text: slips, figures, verdicts, and what a proposed set-up would change."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.cli.report_fit import weighed_sections
from chairwright.cli.report_setup import figure_text, source_numbers, source_text
from chairwright.cli.table import text_table
from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.fitting.ledger import ledger
from chairwright.measured.gains import Change
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.lesson_words import change_words
from chairwright.papers.measured_words import (
    ASSUMED,
    HEADS,
    NOT_MEASURED,
    NOT_SHOWN,
    SPREAD,
    Judgement,
    doubt_lines,
    gain_words,
)
from chairwright.papers.words import Units, inches_words, spread_words, value_words, wrapped


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
    for kind, head, none in HEADS:
        lines = [gain_words(change) for change in moved if change.kind == kind]
        if lines:
            yield "\n".join([head, *map(_bullet, lines)])
        elif none:
            yield none
    yield _table([each for each in moved if each.then.figure.unit not in NOT_SHOWN], units)


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
