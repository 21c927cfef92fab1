"""One set-up as text: choices in the order of adjustment, figures with targets, sources."""

from __future__ import annotations

from collections.abc import Sequence

from chairwright.cli.table import text_table
from chairwright.figures.registry import FIGURES, GROUPS
from chairwright.fitting.described import Described
from chairwright.fitting.ledger import Row, asked_for, ledger
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.order.chosen import SetUp
from chairwright.papers.choice_rows import choices_of, extras_of
from chairwright.papers.order import in_order
from chairwright.papers.payload import Choice
from chairwright.papers.words import (
    SourceNumbers,
    Units,
    inches_words,
    measured_words,
    range_words,
    spread_words,
    unit_words,
    value_words,
    wrapped,
)


def choice_text(setup: SetUp) -> str:
    """Every choice in the order of adjustment.

    Parameters
    ----------
    setup : SetUp

    Returns
    -------
    str
    """
    groups = (*in_order(choices_of(setup)), *extras_of(setup))
    rows = [
        [f"{number} {group.step}" if first == 0 else "", each.label, each.code, _what(each)]
        for number, group in enumerate(groups, 1)
        for first, each in enumerate(group.choices)
    ]
    return text_table(["step", "choice", "code", "what to set"], rows)


def _what(choice: Choice) -> str:
    return f"{choice.description} ({choice.note})" if choice.note else choice.description


def order_text(setup: Described) -> str:
    """What the chair costs and when it comes, and what of it is not in the standard range.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    str
    """
    line, figures = setup.line, setup.figures
    price = measured_words(FIGURES["price"], figures["price"], line)
    lines = [f"List price {price}, delivery in {figures['lead_days']:g} days."]
    if setup.made_to_order:
        sizes = ", ".join(
            f"{CHOICES[name].label.lower()} {option.code}"
            for name, option in setup.made_to_order.items()
        )
        surcharge = measured_words(FIGURES["custom_surcharge"], figures["custom_surcharge"], line)
        days = max(option.numbers["extra_days"] for option in setup.made_to_order.values())
        lines.append(
            f"Made to order: {sizes}. That is {surcharge} of the price, and {days:g} days beyond "
            f"the usual {line.build_days}."
        )
    return "\n".join(wrapped(each) for each in lines)


def figure_text(line: Line, rows: Sequence[Row], numbers: SourceNumbers, units: Units) -> str:
    """Figures under the question that each answers.

    Parameters
    ----------
    line : Line
    rows : sequence of Row
    numbers : SourceNumbers
        Numbers of the targets' sources.
    units : {"mm", "in"}
        ``"in"`` adds inches.

    Returns
    -------
    str
    """
    headers, cells, right = ["figure", "value", "unit", "+/-"], [], "lrlr"
    if units == "in":
        headers, right = [*headers, "inches"], right + "r"
    headers += ["must", "prefer", "verdict", "source"]
    for group in GROUPS:
        inside = [row for row in rows if row.figure.group == group]
        if inside:
            cells.append([group, *[""] * (len(headers) - 1)])
            cells += [_cells(line, row, numbers, units) for row in inside]
    return text_table(headers, cells, right)


def _cells(line: Line, row: Row, numbers: SourceNumbers, units: Units) -> list[str]:
    figure = row.figure
    inches = [inches_words(figure, row.value)] if units == "in" else []
    return [
        f"  {figure.label}",
        value_words(figure, row.value, *row.targets),
        unit_words(figure, line),
        spread_words(figure, row.spread).removeprefix("± "),
        *inches,
        "" if row.must is None else range_words(row.must.target, row.value),
        "" if row.prefer is None else range_words(row.prefer.target, row.value),
        row.word or "",
        numbers.of(item.target.source for item in row.asked),
    ]


def source_numbers(rows: Sequence[Row]) -> SourceNumbers:
    """Number the sources of every target in some rows."""
    return SourceNumbers(item.target.source for row in rows for item in row.asked)


def source_text(numbers: SourceNumbers) -> str:
    """List the numbered sources."""
    lines = [wrapped(f"{number:2} {words}", "   ") for number, words in numbers.listed]
    return "\n".join(["Sources", *lines])


def setup_sections(setup: Described, units: Units, *, every: bool = False) -> list[str]:
    """Choices, price and delivery, figures and sources of one set-up.

    Parameters
    ----------
    setup : Described
    units : {"mm", "in"}
    every : bool
        True shows every figure, False only those of which something is asked.

    Returns
    -------
    list of str
        Sections, to be joined by blank lines.
    """
    rows = ledger(setup)
    rows = rows if every else asked_for(rows)
    numbers = source_numbers(rows)
    return [
        choice_text(setup),
        order_text(setup),
        figure_text(setup.line, rows, numbers, units),
        source_text(numbers),
    ]
