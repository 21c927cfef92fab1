"""One sweep as text: what each option may be, every figure that moves, and why."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.cli.table import text_table
from chairwright.figures.registry import FIGURES, GROUPS, Figure
from chairwright.fitting.allowed import plain
from chairwright.fitting.moved import moved_figures
from chairwright.fitting.sweep import Sweep, SweptRun, Tried
from chairwright.line.choices import CHOICES
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.lesson_kinds import kind_of, lesson_figures
from chairwright.papers.lesson_why import Why, why
from chairwright.papers.lesson_words import (
    afterwards,
    change_words,
    option_words,
    run_words,
)
from chairwright.papers.words import (
    SourceNumbers,
    Units,
    inches_words,
    unit_words,
    value_words,
    wrapped,
)

COLUMNS = 10
"""Options beside each other in a table; the rest follow in another."""


def sweep_text(sweep: Sweep, setup_id: str, units: Units, *, every: bool = False) -> str:
    """The whole result of one sweep.

    Parameters
    ----------
    sweep : Sweep
    setup_id : str
        What the set-up is called.
    units : {"mm", "in"}
    every : bool
        True shows the figures that do not move as well, and explains each that does.

    Returns
    -------
    str
    """
    sections = [_head(sweep, setup_id)]
    whys = {run.run.name: _whys(sweep, run, every=every) for run in sweep.runs}
    numbers = SourceNumbers(text for each in whys.values() for one in each for text in one.sources)
    for run in sweep.runs:
        sections += [
            f"{kind_of(sweep.choice, run.run.along).title}: {run_words(sweep, run)}",
            _options(run),
            *_remarks(run),
            *_figures(sweep, run, units, every=every),
            *_reasons(whys[run.run.name], numbers),
        ]
    if afterwards(sweep.choice):
        sections.append(wrapped(afterwards(sweep.choice)))
    lines = [wrapped(f"{number:2} {words}", "   ") for number, words in numbers.listed]
    if lines:
        sections.append("\n".join(["Sources", *lines]))
    return "\n\n".join([*sections, wrapped(PURPOSE)])


def _head(sweep: Sweep, setup_id: str) -> str:
    client = sweep.person.client
    lines = [
        f"{client.reference}, set-up {setup_id}: {sweep.line.title}, version {sweep.line.version}",
        f"{CHOICES[sweep.choice].label} {option_words(sweep.option)}: as it stands. Everything "
        "else is kept.",
    ]
    settled = client.fixed_choices.get(sweep.choice)
    if settled:
        lines.append(
            f"The client file settles this choice to {', '.join(settled)}; the rest is shown to "
            "compare."
        )
    return "\n".join(wrapped(line) for line in lines)


def _options(run: SweptRun) -> str:
    rows = [
        [
            each.option.code,
            each.option.name,
            each.status,
            str(len(each.missed)) if each.stands else "",
            f"{each.squared.code}, {each.squared.stem_deg:.1f} deg" if each.squared else "",
        ]
        for each in run.tried
    ]
    headers = ["option", "what it is", "status", "musts missed", "square again with, stem then"]
    used = len(headers) if any(row[-1] for row in rows) else len(headers) - 1
    return text_table(headers[:used], [row[:used] for row in rows], "lllr")


def _remarks(run: SweptRun) -> Iterator[str]:
    remarks = ((each.option.code, _remark(each)) for each in run.tried)
    lines = [wrapped(f"- {code}: {words}", "  ") for code, words in remarks if words]
    if lines:
        yield "\n".join(lines)


def _remark(each: Tried) -> str:
    parts: list[str] = [] if each.option.kind == "standard" else [each.option.kind]
    parts += each.reasons
    parts += [f"stands with {plain(name)} {code}" for name, code in (each.also or {}).items()]
    if each.missed:
        parts.append(f"misses {'; '.join(figure.label for figure in each.missed)}")
    return ". ".join(parts)


def _figures(sweep: Sweep, run: SweptRun, units: Units, *, every: bool) -> Iterator[str]:
    moving = moved_figures(sweep.base, run.setups())
    figures = tuple(FIGURES.values()) if every else moving
    if not figures:
        yield "No figure moves."
        return
    others = [each for each in run.standing if each.status != "as it stands"]
    here = run.tried[run.present]
    for start in range(0, max(len(others), 1), COLUMNS):
        yield _table(here, others[start : start + COLUMNS], figures, units)
    rest = len(FIGURES) - len(figures)
    if rest:
        yield f"{rest} more figures do not move; --all shows them."


def _table(here: Tried, others: Sequence[Tried], figures: Sequence[Figure], units: Units) -> str:
    headers = ["figure", "unit", f"{here.option.code} now", *(each.option.code for each in others)]
    rows: list[list[str]] = []
    for group in GROUPS:
        inside = [figure for figure in figures if figure.group == group]
        if inside:
            rows.append([group, *[""] * (len(headers) - 1)])
            rows += [row for figure in inside for row in _rows(here, others, figure, units)]
    return text_table(headers, rows, "ll" + "r" * (len(headers) - 2))


def _rows(
    here: Tried, others: Sequence[Tried], figure: Figure, units: Units
) -> Iterator[list[str]]:
    """The values of one figure, how far each lies from the first, and inches when wanted."""
    setups = [each.setup for each in (here, *others) if each.setup is not None]
    values = [setup.figures[figure.name] for setup in setups]
    unit = unit_words(figure, setups[0].line)
    yield [f"  {figure.label}", unit, *(value_words(figure, value) for value in values)]
    yield ["", "", "", *(change_words(figure, values[0], value) for value in values[1:])]
    if units == "in" and figure.unit == "mm":
        yield ["", "in", *(inches_words(figure, value).removesuffix(" in") for value in values)]


def _whys(sweep: Sweep, run: SweptRun, *, every: bool) -> list[Why]:
    figures = lesson_figures(sweep, run)
    if every:
        figures = moved_figures(sweep.base, run.setups())
    return [why(sweep.choice, run, figure) for figure in figures]


def _reasons(whys: Sequence[Why], numbers: SourceNumbers) -> Iterator[str]:
    if whys:
        lines = [
            wrapped(f"- {one.figure.label}: {one.text} [{numbers.of(one.sources)}]", "  ")
            for one in whys
        ]
        yield "\n".join(["Why", *lines])
