"""Set-ups side by side on paper: drawn over each other, choices and figures that differ."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import asdict, dataclass

from chairwright.chair.shape import Shape
from chairwright.drawing.overlay import overlay_sheet
from chairwright.drawing.overlay_plan import overlay_plan_sheet
from chairwright.drawing.sheet import Page, Sheet
from chairwright.drawing.svg import to_svg
from chairwright.figures.registry import GROUPS, Figure
from chairwright.fitting.compare import Comparison, Side
from chairwright.fitting.ledger import Word
from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import FixedPart
from chairwright.papers.cautions import beside
from chairwright.papers.lesson_words import change_words, extra_words
from chairwright.papers.payload import Drawing
from chairwright.papers.typeset import Paper, typeset
from chairwright.papers.words import (
    Units,
    inches_words,
    propulsion_words,
    range_words,
    spread_words,
    unit_words,
    value_words,
)

DIFFERENT_CLIENTS = (
    "The set-ups are for different clients: figures and verdicts differ because the people do, not "
    "only because the chairs do."
)
DIFFERENT_LINES = "The set-ups are of different lines: equal codes need not mean equal parts."


@dataclass(frozen=True)
class SideFacts:
    """Which set-up a column shows."""

    number: str
    name: str
    client: str
    propulsion: str
    line: str


@dataclass(frozen=True)
class ChoiceRow:
    """A choice in which the set-ups differ: for each, code and description."""

    label: str
    cells: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class CompareCell:
    """A value with its verdict, and how far it lies from the first set-up's."""

    value: str
    change: str
    inches: str
    verdict: Word | None


@dataclass(frozen=True)
class CompareRow:
    """A figure in which the set-ups differ; ``must`` holds the first one's spread as well."""

    label: str
    unit: str
    must: str
    cells: tuple[CompareCell, ...]


@dataclass(frozen=True)
class CompareGroup:
    """Figures under one question."""

    question: str
    cautions: tuple[str, ...]
    rows: tuple[CompareRow, ...]


@dataclass(frozen=True)
class ComparePayload:
    """Everything on a comparison sheet."""

    title: str
    sides: tuple[SideFacts, ...]
    warnings: tuple[str, ...]
    pictures: tuple[Drawing, ...]
    choices: tuple[ChoiceRow, ...]
    groups: tuple[CompareGroup, ...]


def compare_pdf(payload: ComparePayload, paper: Paper = "a4") -> bytes:
    """Typeset a comparison.

    Parameters
    ----------
    payload : ComparePayload
        Text is printed as it stands; nothing in it is read as markup.
    paper : {"a4", "us-letter"}

    Returns
    -------
    bytes
        A tagged PDF; the same payload gives the same bytes.

    Raises
    ------
    ValueError
        When the paper is neither of the two.
    """
    return typeset("lesson_compare.typ", asdict(payload), paper)


def compare_sheet(comparison: Comparison, units: Units = "mm") -> ComparePayload:
    """Put a comparison into words and drawings.

    Parameters
    ----------
    comparison : Comparison
    units : {"mm", "in"}
        ``"in"`` adds inches to the lengths in the table.

    Returns
    -------
    ComparePayload
    """
    return ComparePayload(
        title=f"{COUNTS[len(comparison.sides)]} set-ups beside each other",
        sides=tuple(_facts(at, side) for at, side in enumerate(comparison.sides, 1)),
        warnings=warnings_of(comparison),
        pictures=tuple(_pictures(comparison)),
        choices=tuple(_choices(comparison)),
        groups=tuple(_groups(comparison, units)),
    )


COUNTS = {2: "Two", 3: "Three", 4: "Four"}
ROOMS = {2: (Page(107.0, 126.0), Page(70.0, 126.0)), 3: (Page(89.0, 92.0),), 4: (Page(59.0, 80.0),)}
"""Largest size of each drawing by the number of set-ups."""


def warnings_of(comparison: Comparison) -> tuple[str, ...]:
    """What to say when clients or lines differ, and of extras that are in each."""
    said = []
    if not comparison.same_client:
        said.append(DIFFERENT_CLIENTS)
    if not comparison.same_line:
        said.append(DIFFERENT_LINES)
    extras = {setup.extras for setup in comparison.setups}
    if len(extras) == 1 and (shared := extras.pop()):
        said.append(f"Extras in each: {extra_words(shared)}.")
    return tuple(said)


def units_of(comparison: Comparison, figure: Figure) -> str:
    """A figure's unit; every currency where the lines have several."""
    units = (unit_words(figure, setup.line) for setup in comparison.setups)
    return " / ".join(dict.fromkeys(units))


def _facts(number: int, side: Side) -> SideFacts:
    client, line = side.person.client, side.setup.line
    return SideFacts(
        str(number),
        side.name,
        client.reference,
        propulsion_words(client),
        f"{line.title}, version {line.version}",
    )


def _pictures(comparison: Comparison) -> Iterator[Drawing]:
    first, rooms = comparison.sides[0], ROOMS[len(comparison.sides)]
    for at, side in enumerate(comparison.sides[1:], 2):
        shapes: tuple[Shape, Shape] = (first.setup.shape, side.setup.shape)
        names = (first.name, side.name)
        yield _drawing(overlay_sheet(*shapes, names, rooms[0], at), f"over-{at}")
        if len(rooms) > 1:
            yield _drawing(overlay_plan_sheet(*shapes, names, rooms[1], at), f"plan-{at}")


def _choices(comparison: Comparison) -> Iterator[ChoiceRow]:
    for name in comparison.choices:
        options = (setup.options[name] for setup in comparison.setups)
        yield ChoiceRow(CHOICES[name].label, tuple((each.code, each.name) for each in options))
    extras = [setup.extras for setup in comparison.setups]
    if len(set(extras)) > 1:
        yield ChoiceRow("Extras", tuple(_extra_cell(each) for each in extras))


def _extra_cell(extras: tuple[FixedPart, ...]) -> tuple[str, str]:
    codes = ", ".join(each.code for each in extras)
    return (codes, "; ".join(each.name for each in extras)) if extras else (NONE, "no extras")


def _groups(comparison: Comparison, units: Units) -> Iterator[CompareGroup]:
    told = {figure.name for figure in (*comparison.figures, *comparison.judged)}
    weighed = comparison.sides[0].person.weighed
    rows = [row.figure for row in comparison.ledgers[0].values() if row.figure.name in told]
    for question in GROUPS:
        inside = tuple(_row(comparison, each, units) for each in rows if each.group == question)
        if inside:
            yield CompareGroup(question, beside(question, weighed), inside)


def _row(comparison: Comparison, figure: Figure, units: Units) -> CompareRow:
    rows = [each[figure.name] for each in comparison.ledgers]
    first = rows[0]
    cells = (
        CompareCell(
            value_words(figure, row.value, *row.targets),
            "" if at == 0 else change_words(figure, first.value, row.value),
            inches_words(figure, row.value).removesuffix(" in") if units == "in" else "",
            row.word,
        )
        for at, row in enumerate(rows)
    )
    values = [row.value for row in rows]
    asked = [range_words(row.must.target, *values) for row in rows if row.must is not None]
    spread = spread_words(figure, first.spread)
    must = ", ".join(part for part in (" / ".join(dict.fromkeys(asked)), spread) if part)
    return CompareRow(figure.label, units_of(comparison, figure), must, tuple(cells))


def _drawing(sheet: Sheet, prefix: str) -> Drawing:
    return Drawing(to_svg(sheet, prefix), f"{sheet.title}. {sheet.description}", sheet.width_mm)
