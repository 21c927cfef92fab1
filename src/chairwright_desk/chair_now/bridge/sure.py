"""How sure a set-up is: spreads, what makes them, what to measure again, and the surest set-up."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from chairwright.cli.report_tolerance import figure_title, must_chart, must_words
from chairwright.drawing.tornado import Tornado, tornado_chart
from chairwright.figures.registry import FIGURES, GROUPS
from chairwright.fitting.described import Described
from chairwright.fitting.fit import fit_person
from chairwright.fitting.ledger import ledger
from chairwright.fitting.person import Person
from chairwright.fitting.sure import surest
from chairwright.fitting.unsure import Unsure, unsure_musts
from chairwright.line.model import Line
from chairwright.papers.words import target_words
from chairwright.tolerance.bars import Bar, bars_of, worth_again
from chairwright_desk.bench.bridge import Bench, State, Units
from chairwright_desk.bench.bridge.words import mark_of, shown, spread_shown, unit_of

HOW = (
    "± is two standard uncertainties, about 95 percent: tape and scales, estimates, the body "
    "model, the chair as built, the places."
)
FIRST = ("fails", "nominal", "unknown", "wish")
"""Marks of verdicts that decide, in that order; what holds with its spread does not."""
LITTLE = 0.01
"""Share of a figure's variance below which an input is folded away."""
HELD = "What is asked, and holds with its spread"


@dataclass(frozen=True)
class _Said:
    """A set-up as the words of the report want it."""

    person: Person
    line: Line
    setup: Described


@dataclass(frozen=True)
class SureRow:
    """One figure with its spread, and the input that counts most."""

    name: str
    label: str
    value: str
    unit: str
    spread: str
    most: str
    word: str
    mark: str


@dataclass(frozen=True)
class UnsureShown:
    """A must that holds on nominal values only."""

    name: str
    words: str
    again: str
    svg: str


@dataclass(frozen=True)
class SureShown:
    """How sure one set-up is.

    Parameters
    ----------
    decide : tuple of SureRow
        Figures with a spread that miss what is asked or may miss it: what fails first.
    rest : tuple of (str, tuple of SureRow)
        Those that hold with their spread, then those of which nothing is asked, by question.
    unsure : tuple of UnsureShown
    fails : int
        Musts that are missed.
    how : str
    """

    decide: tuple[SureRow, ...]
    rest: tuple[tuple[str, tuple[SureRow, ...]], ...]
    unsure: tuple[UnsureShown, ...]
    fails: int
    how: str = HOW


@dataclass(frozen=True)
class Chart:
    """The chart of one figure, with the same in a table.

    Parameters
    ----------
    name, title, svg, unit : str
    bars, little : tuple of (str, str, str, str)
        What counts, and what is less than a hundredth of the variance: label, by how much the
        figure moves when it is smaller and larger, share.
    again : str
        What to measure again; empty for nothing.
    """

    name: str
    title: str
    svg: str
    unit: str
    bars: tuple[tuple[str, str, str, str], ...]
    little: tuple[tuple[str, str, str, str], ...]
    again: str


def sure_of(state: State, units: Units) -> SureShown | None:
    """How sure a set-up is; None when it is no chair that stands.

    Parameters
    ----------
    state : State
        With the spreads of its own.
    units : {"mm", "in"}
    """
    if state.setup is None:
        return None
    said = _said(state, state.setup)
    rows = list(_rows(state.setup, units))
    decide = (row for _, row in rows if row.mark in FIRST)
    return SureShown(
        decide=tuple(sorted(decide, key=lambda row: FIRST.index(row.mark))),
        rest=tuple(each for each in _rest(rows) if each[1]),
        unsure=tuple(_unsure(at, each, said) for at, each in enumerate(unsure_musts(state.setup))),
        fails=sum(item.target.must for item in state.setup.broken),
    )


def _rest(rows: list[tuple[str, SureRow]]) -> Iterator[tuple[str, tuple[SureRow, ...]]]:
    yield HELD, tuple(row for _, row in rows if row.mark == "holds")
    for question in GROUPS:
        yield question, tuple(row for group, row in rows if group == question and not row.mark)


def _said(state: State, setup: Described) -> Any:
    return _Said(state.bench.person, state.bench.line, setup)


def _rows(setup: Described, units: Units) -> Iterator[tuple[str, SureRow]]:
    tolerance = setup.tolerance
    for row in ledger(setup):
        spread = tolerance.figures.get(row.figure.name)
        if spread is None:
            continue
        bars = bars_of(spread, tolerance.inputs)
        yield (
            row.figure.group,
            SureRow(
                name=row.figure.name,
                label=row.figure.label,
                value=shown(row.figure, row.value, units),
                unit=unit_of(row.figure, setup.line, units),
                spread=spread_shown(row.figure, spread.half, units),
                most=bars[0].what.label if bars else "",
                word=row.word or "",
                mark=mark_of(row.word),
            ),
        )


def _unsure(at: int, item: Unsure, said: Any) -> UnsureShown:
    svg = tornado_chart(must_chart(item, said), prefix=f"unsure{at}")
    return UnsureShown(
        item.judged.target.figure, must_words(item, said).replace("+/-", "±"), item.again, svg
    )


def chart_of(state: State, name: str) -> Chart | None:
    """The chart of one figure; None when it has no spread.

    Parameters
    ----------
    state : State
    name : str
        Of the figure.
    """
    if state.setup is None or name not in state.setup.tolerance.figures:
        return None
    said, tolerance = _said(state, state.setup), state.setup.tolerance
    bars, figure = bars_of(tolerance.figures[name], tolerance.inputs), FIGURES[name]
    again, digits = worth_again(bars), figure.digits + 1
    title = figure_title(said, name)
    words = "" if again is None else again.what.again
    return Chart(
        name=name,
        title=title,
        unit=unit_of(figure, state.setup.line, "mm"),
        svg=tornado_chart(Tornado(figure, title, bars, words), prefix="tornado"),
        bars=_bar_rows((b for b in bars if b.share >= LITTLE), digits),
        little=_bar_rows((b for b in bars if b.share < LITTLE), digits),
        again=words,
    )


def _bar_rows(bars: Iterable[Bar], digits: int) -> tuple[tuple[str, str, str, str], ...]:
    return tuple(
        (b.what.label, f"{b.less:+.{digits}f}", f"{b.more:+.{digits}f}", f"{b.share:.0%}")
        for b in bars
    )


def find_surest(bench: Bench, progress: Callable[[str], None] = lambda _: None) -> dict[str, Any]:
    """The best set-up whose musts hold with their spread, as plain data.

    Parameters
    ----------
    bench : Bench
    progress : callable

    Returns
    -------
    dict
        ``codes`` (empty when nothing meets every must), ``extras``, ``said``.
    """
    person, line = bench.person, bench.line
    fit = fit_person(person, line, objectives=None, progress=progress, most_corrections=0)
    found = surest(fit, progress)
    if found.best is None or found.setup is None:
        said = ["No set-up of this line meets every must, sure or not."]
        return {"codes": {}, "extras": [], "said": said}
    return {
        "codes": found.setup.codes,
        "extras": [extra.code for extra in found.setup.extras],
        "said": list(_sure_words(found.sure, found.best.cost, bench.line)),
    }


def _sure_words(sure: Any, cost: float, line: Line) -> Iterator[str]:
    if sure.all_sure:
        yield "Every must holds with its spread: this is the best such set-up, proven."
    elif sure.rest_sure:
        yield "No set-up is sure of all musts; this is the best that is sure of the others."
    else:
        yield "No set-up is sure of the musts together. This is the best on nominal values."
    for target in sure.never:
        yield f"No set-up is sure of: {target_words(target, line)}."
    if abs(cost - sure.nominal_cost) > 0.05:
        yield (
            f"It misses more of the preferences than the best on nominal values: {cost:.1f} "
            f"instead of {sure.nominal_cost:.1f}."
        )
