"""The sheet over the chair's life: what is expected, what serves when, and the reviews."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.drawing.life_chart import Bar, ReviewMark, Row, life_chart_sheet
from chairwright.drawing.sheet import Sheet
from chairwright.figures.registry import FIGURES
from chairwright.order.life import Serving, Way, months_words
from chairwright.order.life_plan import LifePlan
from chairwright.order.states import MONTHS
from chairwright.papers.choice_rows import choices_of, extras_of
from chairwright.papers.life_words import (
    COST,
    NEW_PARTS,
    answer,
    first_out,
    front_rows,
    letter,
    moves_words,
    notes,
    range_rows,
    serving_words,
)
from chairwright.papers.order import fitted_in_order
from chairwright.papers.pack.pictures import picture
from chairwright.papers.pack.words import Data
from chairwright.papers.typeset import Paper, typeset

TEMPLATE = "pack/life_sheet.typ"
SIGNATURES = ("Planned by, name", "Signature", "Date")


def life_sheet_pdf(plan: LifePlan, paper: Paper = "a4") -> bytes:
    """Typeset the sheet.

    Parameters
    ----------
    plan : LifePlan
        Text is printed as it stands; nothing in it is read as markup.
    paper : {"a4", "us-letter"}

    Returns
    -------
    bytes
        A tagged PDF; the same plan gives the same bytes.
    """
    return typeset(TEMPLATE, life_content(plan), paper)


def life_content(plan: LifePlan) -> Data:
    """Everything that the template prints.

    Parameters
    ----------
    plan : LifePlan
    """
    line, client = plan.line, plan.growth.client
    groups = (*fitted_in_order(choices_of(plan.setup)), *extras_of(plan.setup))
    return {
        "reference": client.reference,
        "order": "",
        "revision": "",
        "line": f"{line.title}, version {line.version}",
        "years": months_words(round(plan.growth.years * MONTHS)),
        "age": "" if client.age_years is None else f"{client.age_years:g} years",
        "answer": list(answer(plan)),
        "made_to_order": plan.made_to_order,
        "ranges": [list(row) for row in range_rows(plan)],
        "notes": list(notes(plan)),
        "chart": picture(_chart(plan), "life"),
        "first_out": first_out(plan),
        "servings": list(_servings(plan)),
        "settings": list(_settings(plan)),
        "reviews": [
            [f"month {each.months}", each.day, each.reason, each.outcome, each.source]
            for each in plan.reviews
        ],
        "front": []
        if plan.named
        else [list(row) for row in front_rows(plan.found.points, plan.lasting)],
        "cost": COST,
        "choices": [
            [group.step if not number else "", each.label, each.code, each.description]
            for group in groups
            for number, each in enumerate(group.choices)
        ],
        "planned_by": SIGNATURES,
    }


def _chart(plan: LifePlan) -> Sheet:
    rows = tuple(_row(plan, way) for way in plan.life.ways)
    marks = {each.months: each.by_growth for each in reversed(plan.reviews)}
    marked = tuple(ReviewMark(months, growth) for months, growth in sorted(marks.items()))
    months = round(plan.growth.years * MONTHS)
    return life_chart_sheet(rows, marked, months, plan.growth.client.age_years)


def _row(plan: LifePlan, way: Way) -> Row:
    bars = tuple(
        Bar(each.start, each.end, letter(plan.life.settings.index(each.index)))
        for each in way.servings
    )
    return Row(way.track.name.capitalize(), bars, _after(way.servings[-1]))


def _after(last: Serving) -> str:
    if last.ends_by is None:
        return ""
    labels = ", ".join(FIGURES[must.figure].label.lower() for must in last.ends_by.musts)
    return f"{NEW_PARTS}: {labels}"


def _servings(plan: LifePlan) -> Iterator[list[str]]:
    for way in plan.life.ways:
        for number, each in enumerate(way.servings):
            name, when, _, then = serving_words(plan, each)
            yield [way.track.name.capitalize() if not number else "", name, when, then]


def _settings(plan: LifePlan) -> Iterator[list[str]]:
    """What is moved for each setting but the first, the first time that it comes up."""
    told = set[str]()
    for way in plan.life.ways:
        for each in way.servings:
            name = letter(plan.life.settings.index(each.index))
            if each.change is not None and name not in told:
                told.add(name)
                yield [name, moves_words(each)]
