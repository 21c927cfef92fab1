"""The re-fit sheet: what changed in the person, what the chair does now, what to change."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.drawing.change_chart import Mark, change_chart_sheet
from chairwright.fitting.described import Described
from chairwright.fitting.ledger import Row, ledger
from chairwright.order.adjust import Adjustment
from chairwright.order.change import Change, ChangeItem
from chairwright.order.price_money import money_words
from chairwright.order.refit import Refit, RefitPoint, gains
from chairwright.order.refit_chosen import ChosenRefit
from chairwright.order.refit_trial import SOURCE, trial_checks
from chairwright.papers.adjust_words import title_words
from chairwright.papers.order_words import side_words
from chairwright.papers.pack.pictures import picture
from chairwright.papers.pack.words import Data
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
from chairwright.papers.typeset import Paper, typeset
from chairwright.papers.words import (
    Units,
    inches_words,
    measured_words,
    spread_words,
    value_words,
)

TEMPLATE = "pack/refit_sheet.typ"
SIGNATURES = ("Assessed by, name", "Signature", "Date")
SAME_FILE = "The set-up names this same client file, so no earlier measures are known."
NOTHING_CHANGED = "The two client files say the same."
FEWEST_DRAWN = 3
"""Different amounts of money from which on a picture says more than the table."""

MOST_ROWS = 16
"""Rows of the trade-off on paper, evenly along it, the chosen one among them."""


def refit_sheet_pdf(told: ChosenRefit, paper: Paper = "a4", units: Units = "mm") -> bytes:
    """Typeset the sheet of a re-fit.

    Parameters
    ----------
    told : ChosenRefit
        With the row that is chosen, when there is one.
    paper : {"a4", "us-letter"}
    units : {"mm", "in"}
        ``in`` adds inches to lengths.

    Returns
    -------
    bytes
        A tagged PDF; the same re-fit gives the same bytes.
    """
    return typeset(TEMPLATE, refit_content(told, units), paper)


def refit_content(told: ChosenRefit, units: Units = "mm") -> Data:
    """Everything that the template prints.

    Parameters
    ----------
    told : ChosenRefit
    units : {"mm", "in"}
    """
    found, point, setup, steps = told.refit, told.point, told.setup, told.steps
    line = found.line
    before, after = found.present.client, found.person.client
    rows = person_rows(before, after)
    same = SAME_FILE if before == after else NOTHING_CHANGED
    return {
        "reference": after.reference,
        "order": "",
        "revision": "",
        "present": found.present.name,
        "line": f"{line.title}, version {line.version}",
        "maker": line.maker,
        "answer": list(answer_words(found)),
        "person": [[r.label, r.was, r.now, r.change] for r in rows],
        "person_none": "" if rows else same,
        "now": [] if found.now is None else [_missed(row, units) for row in missed_rows(found.now)],
        "front": [_front_row(found, each, point) for each in _shown(found, point)],
        "front_words": [*_left_out(found, point), FRONT_WORDS, COST_WORDS],
        "chart": _chart(found, point),
        "reason_head": reason_head(found),
        "reasons": [list(row) for row in reason_rows(found)],
        "chosen": None if point is None or setup is None else _chosen(found, point, setup, units),
        "steps": [] if steps is None else list(_steps(steps)),
        "trial": [] if point is None or setup is None else list(trial_checks(point.change, setup)),
        "trial_source": SOURCE,
        "assessed_by": SIGNATURES,
    }


def _missed(row: Row, units: Units) -> Data:
    value = measured_words(row.figure, row.value, None, *row.targets)
    if units == "in" and inches_words(row.figure, row.value):
        value = f"{value} = {inches_words(row.figure, row.value)}"
    return {
        "label": row.figure.label,
        "value": value,
        "asked": asked_words(row),
        "word": row.word,
    }


def _shown(found: Refit, point: RefitPoint | None) -> list[RefitPoint]:
    last = len(found.points) - 1
    if last < MOST_ROWS:
        return list(found.points)
    places = {round(at * last / (MOST_ROWS - 1)) for at in range(MOST_ROWS)}
    places |= set() if point is None else {point.number - 1}
    return [found.points[at] for at in sorted(places)]


def _left_out(found: Refit, point: RefitPoint | None) -> Iterator[str]:
    out = len(found.points) - len(_shown(found, point))
    if out:
        yield f"{out} rows between these are left out here."


def _front_row(found: Refit, each: RefitPoint, point: RefitPoint | None) -> Data:
    change = each.change
    return {
        "number": str(each.number),
        "chosen": point is not None and each.number == point.number,
        "money": money_words(change.money, "").strip(),
        "minutes": f"{change.minutes:g}",
        "cost": f"{each.cost:.1f}",
        "bought": str(len(change.bought)),
        "moved": str(len(change.moved)),
        "what": row_words(found, each),
    }


def _chart(found: Refit, point: RefitPoint | None) -> Data | None:
    if len({each.change.money for each in found.points}) < FEWEST_DRAWN:
        return None
    marks = [
        Mark(
            each.number,
            float(each.change.money),
            each.change.minutes,
            each.cost,
            point is not None and each.number == point.number,
        )
        for each in _shown(found, point)
    ]
    return picture(change_chart_sheet(marks, found.points[0].change.currency), "refit-chart")


def _chosen(found: Refit, point: RefitPoint, setup: Described, units: Units) -> Data:
    change = point.change
    line = setup.line
    return {
        "number": str(point.number),
        "takes": takes_words(change),
        "currency": change.currency,
        "bought": [_bought(each) for each in change.bought],
        "moved": [_moved(each) for each in change.moved],
        "shared": _shared(change),
        "money": money_words(change.money, change.currency),
        "minutes": f"{change.minutes:g}",
        "kept": kept_words(change),
        "money_words": MONEY_WORDS.format(source=change.money_source),
        "minute_words": MINUTE_WORDS.format(source=change.minutes_source),
        "new_price": f"{setup.figures['price']:.2f} {line.currency}",
        "figures": list(_figures(found, setup, units)),
    }


def _bought(each: ChangeItem) -> Data:
    return {
        "pieces": str(each.quantity),
        "code": each.part,
        "label": each.label,
        "words": each.words,
        "side": side_words(each.side),
        "money": f"{each.money:f}",
        "minutes": f"{each.minutes:g}",
    }


def _moved(each: ChangeItem) -> Data:
    return {
        "label": each.label,
        "before": each.move.before,
        "after": each.move.after,
        "far": each.move.far,
        "minutes": f"{each.minutes:g}",
    }


def _shared(change: Change) -> list[Data]:
    return [
        {
            "words": each.words,
            "money": f"{each.money:f}" if each.money else "",
            "minutes": f"{each.minutes:g}",
        }
        for each in change.shared
    ]


def _figures(found: Refit, setup: Described, units: Units) -> Iterator[Data]:
    """Figures of which the verdict changes, now and then; all that is asked without a now."""
    pairs: list[tuple[Row | None, Row]] = [
        (each.now, each.then)
        for each in gains(found, setup)
        if each.kind in ("gain", "loss", "nearer", "farther")
    ]
    if found.now is None:
        pairs = [(None, row) for row in ledger(setup) if row.word is not None]
    for now, then in pairs:
        yield {
            "label": then.figure.label,
            "asked": asked_words(then),
            "now": "" if now is None else _valued(now, units),
            "now_word": "" if now is None else now.word or "",
            "then": _valued(then, units),
            "then_word": then.word or "",
        }


def _valued(row: Row, units: Units) -> str:
    inches = inches_words(row.figure, row.value) if units == "in" else ""
    spread = spread_words(row.figure, row.spread)
    words = f"{value_words(row.figure, row.value, *row.targets)} {row.figure.unit}".rstrip()
    return " ".join(part for part in (words, spread, f"= {inches}" if inches else "") if part)


def _steps(found: Adjustment) -> Iterator[list[str]]:
    for step in found.steps:
        moves = "; ".join(f"{m.label} {m.before} → {m.after}" for m in step.moves)
        yield [str(step.number), title_words(step), moves]
