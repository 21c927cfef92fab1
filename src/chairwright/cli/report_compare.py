"""A comparison as text and as plain data."""

from __future__ import annotations

import math
from collections.abc import Iterator

from chairwright.cli.report_fit import weighed_sections
from chairwright.cli.table import text_table
from chairwright.figures.registry import FIGURES, GROUPS, Figure
from chairwright.fitting.compare import Comparison
from chairwright.fitting.described import Described
from chairwright.fitting.ledger import Row
from chairwright.line.choices import CHOICES
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.lesson_compare import units_of, warnings_of
from chairwright.papers.lesson_words import change_words
from chairwright.papers.words import (
    Units,
    inches_words,
    propulsion_words,
    range_words,
    value_words,
    wrapped,
)

Data = dict[str, object]


def compare_text(comparison: Comparison, units: Units, *, every: bool = False) -> str:
    """Set-ups side by side.

    Parameters
    ----------
    comparison : Comparison
    units : {"mm", "in"}
    every : bool
        True shows the choices and figures that are alike as well.

    Returns
    -------
    str
    """
    sections = [_sides(comparison)]
    sections += [wrapped(words) for words in warnings_of(comparison)]
    sections += weighed_sections(comparison.sides[0].person)
    sections += [
        _choices(comparison, every=every),
        *_figures(comparison, units, every=every),
        wrapped(PURPOSE),
    ]
    return "\n\n".join(sections)


def _sides(comparison: Comparison) -> str:
    rows = []
    for number, side in enumerate(comparison.sides, 1):
        client, line = side.person.client, side.setup.line
        words = f"{line.title}, version {line.version}"
        missed = str(len(side.setup.broken))
        rows.append(
            [str(number), side.name, client.reference, propulsion_words(client), words, missed]
        )
    headers = ["no.", "set-up", "client", "pushed by", "product line", "musts missed"]
    return text_table(headers, rows, "lllllr")


def _choices(comparison: Comparison, *, every: bool) -> str:
    names = tuple(CHOICES) if every else comparison.choices
    extras = [_extras(setup) for setup in comparison.setups]
    differ = len(set(extras)) > 1
    if not names and not differ:
        return "No choice differs: the set-ups are built alike."
    rows = []
    for name in names:
        options = [setup.options[name] for setup in comparison.setups]
        rows.append([CHOICES[name].label, *(f"{each.code}, {each.name}" for each in options)])
    if differ or (every and any(extras)):
        rows.append(["Extras", *(words or "none" for words in extras)])
    headers = ["choice", *(str(at) for at in range(1, len(comparison.sides) + 1))]
    return text_table(headers, rows)


def _extras(setup: Described) -> str:
    return "; ".join(f"{extra.code}, {extra.name}" for extra in setup.extras)


def _figures(comparison: Comparison, units: Units, *, every: bool) -> Iterator[str]:
    told = {figure.name for figure in (*comparison.figures, *comparison.judged)}
    shown = [figure for name, figure in FIGURES.items() if every or name in told]
    if not shown:
        yield "No figure differs."
        return
    headers, right = ["figure", "unit", "must", "1", "verdict"], "lllrl"
    for number in range(2, len(comparison.sides) + 1):
        headers += [str(number), f"{number} - 1", "verdict"]
        right += "rrl"
    rows: list[list[str]] = []
    for group in GROUPS:
        inside = [figure for figure in shown if figure.group == group]
        if inside:
            rows.append([group, *[""] * (len(headers) - 1)])
            rows += [row for figure in inside for row in _rows(comparison, figure, units)]
    yield text_table(headers, rows, right)
    rest = len(FIGURES) - len(shown)
    if rest:
        yield f"{rest} more figures do not differ; --all shows them."


def _rows(comparison: Comparison, figure: Figure, units: Units) -> Iterator[list[str]]:
    rows = [each[figure.name] for each in comparison.ledgers]
    first, others = rows[0], rows[1:]
    cells = [value_words(figure, first.value, *first.targets), first.word or ""]
    for row in others:
        moved = change_words(figure, first.value, row.value)
        cells += [value_words(figure, row.value, *row.targets), moved, row.word or ""]
    yield [f"  {figure.label}", units_of(comparison, figure), _asked(rows), *cells]
    if units == "in" and figure.unit == "mm":
        inches = [inches_words(figure, row.value).removesuffix(" in") for row in rows]
        yield ["", "in", "", inches[0], "", *(x for each in inches[1:] for x in (each, "", ""))]


def _asked(rows: list[Row]) -> str:
    """What must hold; both ranges where the clients differ in it."""
    values = [row.value for row in rows]
    ranges = (range_words(row.must.target, *values) for row in rows if row.must is not None)
    return " / ".join(dict.fromkeys(ranges))


def compare_data(comparison: Comparison) -> Data:
    """The whole comparison.

    Parameters
    ----------
    comparison : Comparison

    Returns
    -------
    dict
        Keys ``same_client``, ``same_line``, ``set_ups``, ``choices_that_differ`` and
        ``figures_that_differ``.
    """
    return {
        "same_client": comparison.same_client,
        "same_line": comparison.same_line,
        "set_ups": [
            {
                "name": side.name,
                "client": side.person.client.reference,
                "line": {"name": side.setup.line.name, "version": side.setup.line.version},
                "choices": side.setup.codes,
                "extras": [extra.code for extra in side.setup.extras],
                "musts_missed": [item.target.figure for item in side.setup.broken],
            }
            for side in comparison.sides
        ],
        "choices_that_differ": {
            name: [setup.codes[name] for setup in comparison.setups] for name in comparison.choices
        },
        "figures_that_differ": {
            figure.name: _figure_data(comparison, figure)
            for figure in FIGURES.values()
            if figure in comparison.figures or figure in comparison.judged
        },
    }


def _figure_data(comparison: Comparison, figure: Figure) -> Data:
    rows = [each[figure.name] for each in comparison.ledgers]
    return {
        "values": [_number(row.value) for row in rows],
        "differences": [_number(row.value - rows[0].value) for row in rows],
        "verdicts": [row.word for row in rows],
    }


def _number(value: float) -> float | None:
    return value if math.isfinite(value) else None
