"""A re-fit as text."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.cli.table import text_table
from chairwright.order.change import Change
from chairwright.order.price_money import money_words
from chairwright.order.refit import Refit, gains
from chairwright.order.refit_chosen import ChosenRefit
from chairwright.order.refit_trial import SOURCE, trial_checks
from chairwright.papers.adjust_words import far_words
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.measured_words import gain_words
from chairwright.papers.order_words import side_words
from chairwright.papers.refit_words import (
    COST_WORDS,
    FRONT_WORDS,
    MINUTE_WORDS,
    MONEY_WORDS,
    answer_words,
    asked_words,
    kept_words,
    missed_rows,
    person_rows,
    reason_head,
    reason_rows,
    row_words,
    takes_words,
)
from chairwright.papers.words import Units, inches_words, measured_words, wrapped

HEADS = (("gain", "Gains"), ("nearer", "Still missed, by less"), ("loss", "Losses"),
         ("farther", "Missed by more than now"))  # fmt: skip


def refit_text(told: ChosenRefit, units: Units) -> str:
    """Everything about a re-fit.

    Parameters
    ----------
    told : ChosenRefit
    units : {"mm", "in"}

    Returns
    -------
    str
    """
    return "\n\n".join([*_sections(told, units), wrapped(PURPOSE)])


def _sections(told: ChosenRefit, units: Units) -> Iterator[str]:
    found = told.refit
    line = found.line
    reference = found.person.client.reference
    yield f"{reference}: re-fit from {found.present.name}, {line.title}, version {line.version}"
    yield "\n".join(wrapped(words) for words in answer_words(found))
    rows = person_rows(found.present.client, found.person.client)
    if rows:
        cells = [[row.label, row.was, row.now, row.change] for row in rows]
        yield text_table(["what changed in the person", "then", "now", "change"], cells, "lrrr")
    yield from _now(found, units)
    yield from _reasons(found)
    yield from _front(found)
    yield from _chosen(told)


def _now(found: Refit, units: Units) -> Iterator[str]:
    rows = () if found.now is None else missed_rows(found.now)
    if not rows:
        return
    cells = []
    for row in rows:
        value = measured_words(row.figure, row.value, None, *row.targets)
        inches = inches_words(row.figure, row.value) if units == "in" else ""
        shown = f"{value} = {inches}" if inches else value
        cells.append([row.figure.label, shown, row.word or "", asked_words(row)])
    yield text_table(["the chair as it is", "reckoned", "verdict", "asked"], cells, "lr")


def _reasons(found: Refit) -> Iterator[str]:
    head = reason_head(found)
    if head:
        rows = [
            wrapped(f"{number}. {gives} ({takes})", "   ")
            for number, (gives, takes) in enumerate(reason_rows(found), start=1)
        ]
        yield "\n".join([wrapped(head), *rows])


def _front(found: Refit) -> Iterator[str]:
    if not found.points:
        return
    currency = found.points[0].change.currency
    rows = [
        [
            str(each.number),
            money_words(each.change.money, "").strip(),
            f"{each.change.minutes:g}",
            f"{each.cost:.1f}",
            str(len(each.change.bought)),
            str(len(each.change.moved)),
            row_words(found, each),
        ]
        for each in found.points
    ]
    heads = ["row", currency, "min", "missed", "parts", "moved", "what changes"]
    yield f"{text_table(heads, rows, 'rrrrrr')}\n{wrapped(f'{FRONT_WORDS} {COST_WORDS}')}"


def _chosen(told: ChosenRefit) -> Iterator[str]:
    if told.point is None or told.setup is None:
        return
    change = told.point.change
    yield f"Row {told.point.number}: {takes_words(change)}"
    if change.items:
        yield "\n".join(_items(change))
    for kind, head in HEADS:
        lines = [gain_words(each) for each in gains(told.refit, told.setup) if each.kind == kind]
        if lines:
            yield "\n".join([head, *(wrapped(f"- {words}", "  ") for words in lines)])
    checks = trial_checks(change, told.setup)
    if checks:
        yield "\n".join(
            [f"At the supervised trial ({SOURCE})", *(wrapped(f"- {c}", "  ") for c in checks)]
        )


def _items(change: Change) -> Iterator[str]:
    rows = [
        [
            "buy" if item.kind != "set" else "move",
            item.label,
            f"{item.move.before} -> {item.move.after}{far_words(item.move)}",
            f"{item.quantity} {side_words(item.side)}".strip() if item.quantity else "",
            f"{item.money:f}",
            f"{item.minutes:g}",
        ]
        for item in change.items
    ]
    rows += [
        ["once", each.words, "", "", f"{each.money:f}", f"{each.minutes:g}"]
        for each in change.shared
    ]
    rows.append(["", "together", "", "", f"{change.money:f}", f"{change.minutes:g}"])
    yield text_table(["", "what", "from -> to", "pieces", change.currency, "min"], rows, "llllrr")
    yield wrapped(f"Kept in use: {kept_words(change)}.")
    yield wrapped(MONEY_WORDS.format(source=change.money_source))
    yield wrapped(MINUTE_WORDS.format(source=change.minutes_source))
