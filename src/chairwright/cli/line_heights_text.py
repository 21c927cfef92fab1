"""A seat-height chart for the terminal: one block for each rear wheel and caster."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby, zip_longest
from operator import itemgetter

from chairwright.cli.table import text_table
from chairwright.fitting.heights_chart import HeightsChart
from chairwright.papers.heights_blocks import Block, blocks, lettered
from chairwright.papers.heights_words import (
    NOT_HELD,
    NOT_SQUARE,
    STEM_WORDS,
    WHAT,
    Cell,
    ChartUnits,
    cells_of,
    dash,
    facts,
    level_words,
    named,
    settings_words,
    unsquare_words,
)
from chairwright.papers.words import WIDTH, wrapped

FORKS_WIDE = 8
"""Fork holes side by side that fit a report's width."""

UNIT_WORDS = {"mm": "mm", "in": "inches", "both": "mm, then inches"}


def chart_text(chart: HeightsChart, units: ChartUnits) -> str:
    """Lay a chart out as text.

    Parameters
    ----------
    chart : HeightsChart
    units : {"mm", "in", "both"}

    Returns
    -------
    str
    """
    cut = [(block, cells_of(chart, block)) for block in blocks(chart)]
    cells = [each for _, rows in cut for row in rows for each in row]
    letters = lettered(each.reason for each in cells if each.reason)
    parts = [_head(chart, units)]
    for at, (block, rows) in enumerate(cut):
        if at == 0 or block.wheel != cut[at - 1][0].wheel:
            parts.append(_wheel_words(chart, block))
        parts.extend(_block(chart, block, rows, letters, units))
    return "\n\n".join([*parts, _legend(chart, cells, letters)])


def _head(chart: HeightsChart, units: ChartUnits) -> str:
    line = chart.line
    rows = [(f"{label}:", code, words) for label, code, words in facts(chart)]
    widths = [max(len(row[at]) for row in rows) for at in (0, 1)]
    fixed = [
        wrapped(f"{label:<{widths[0]}} {code:<{widths[1]}}  {words}", " " * (sum(widths) + 3))
        for label, code, words in rows
    ]
    lines = [
        f"Seat heights: {line.title}, version {line.version}, {line.maker}",
        "",
        *fixed,
        "",
        wrapped(f"{WHAT} Cells: back/front in {UNIT_WORDS[units]}. {STEM_WORDS}"),
        *([level_words(chart)] if chart.level_deg else []),
    ]
    return "\n".join(lines)


def _wheel_words(chart: HeightsChart, block: Block) -> str:
    wheel = chart.option("rear_wheel", block.wheel)
    words = f"Rear wheel {wheel.code}, {named(wheel)}"
    return f"{words}\n{'=' * min(len(words), WIDTH)}"


def _block(
    chart: HeightsChart,
    block: Block,
    rows: Sequence[Sequence[Cell]],
    letters: dict[str, str],
    units: ChartUnits,
) -> Iterator[str]:
    caster = chart.option("caster", block.caster)
    title = f"Caster {caster.code}, {named(caster)}"
    notes = [
        wrapped(f"{dash(each.codes)}: {'; '.join(each.reasons)}", "  ") for each in block.left_out
    ]
    if not block.forks:
        yield "\n".join([title, *notes])
        return
    tables = [
        _table(chart, block, rows, letters, units, slice(first, first + FORKS_WIDE))
        for first in range(0, len(block.forks), FORKS_WIDE)
    ]
    yield "\n".join([title, "\n\n".join(tables), *notes])


def _table(
    chart: HeightsChart,
    block: Block,
    rows: Sequence[Sequence[Cell]],
    letters: dict[str, str],
    units: ChartUnits,
    part: slice,
) -> str:
    heads = [chart.option("fork", fork).code for fork in block.forks[part]]
    codes = [chart.line.choices["axle_hole"].options[at].code for at in chart.column.rows.values()]
    lines = []
    shown = ([tuple(_lines(each, letters, units)) for each in row[part]] for row in rows)
    for texts, alike in groupby(zip(codes, shown, strict=True), key=itemgetter(1)):
        same = [code for code, _ in alike]
        label = same[0] if len(same) == 1 else f"{same[0]} to {same[-1]}"
        for at, row in enumerate(zip_longest(*texts, fillvalue="")):
            lines.append([label if at == 0 else "", *row])
    return text_table(["hole", *heads], lines, "l" + "r" * len(heads))


def _lines(each: Cell, letters: dict[str, str], units: ChartUnits) -> list[str]:
    if each.reason:
        return [dash(letters[each.reason])]
    heights = {"mm": [each.mm], "in": [each.inches], "both": [each.mm, each.inches]}[units]
    return [*heights, f"{each.setting} {each.stem}"]


def _legend(chart: HeightsChart, cells: Sequence[Cell], letters: dict[str, str]) -> str:
    lines = [f"{letter}  {reason}" for reason, letter in letters.items()]
    if any(each.stem.endswith(NOT_SQUARE) for each in cells):
        lines.append(f"{NOT_SQUARE}  {unsquare_words(chart)}")
    lines = [wrapped(each, "   ") for each in lines]
    settings = settings_words(chart, (each.setting for each in cells))
    if settings:
        lines.append(wrapped(f"Stem settings: {settings}."))
    return "\n".join([*lines, wrapped(NOT_HELD)])
