"""One choice tried in all its options, in place: which figures move, and where every must holds."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.described import Described
from chairwright.fitting.ledger import ledger
from chairwright.fitting.moved import moved_figures
from chairwright.fitting.runs import runs_of
from chairwright.fitting.sweep import SweptRun, sweep
from chairwright.line.choices import CHOICES
from chairwright_desk.bench.bridge.opened import State, Units
from chairwright_desk.bench.bridge.words import mark_of, shown, unit_of

RUN_WORDS = {
    "fore-aft": "fore and aft through the present hole",
    "up-down": "up and down through the present hole",
    "settings": "settings of the part fitted",
    "parts": "the other parts",
    "every": "every option",
}
MOST_FIGURES = 14


@dataclass(frozen=True)
class CellShown:
    """One figure with one option."""

    value: str
    word: str
    mark: str


@dataclass(frozen=True)
class ColumnShown:
    """One option.

    Parameters
    ----------
    code, words, status : str
        The status is ``now``, ``stands``, or why there is no such chair.
    also : str
        What had to follow.
    stands, now : bool
    """

    code: str
    words: str
    status: str
    also: str
    stands: bool
    now: bool


@dataclass(frozen=True)
class RowShown:
    """One figure along the options; a cell is None where there is no such chair."""

    label: str
    unit: str
    cells: tuple[CellShown | None, ...]


@dataclass(frozen=True)
class RunShown:
    """Options in one order."""

    words: str
    columns: tuple[ColumnShown, ...]
    rows: tuple[RowShown, ...]


@dataclass(frozen=True)
class SweptShown:
    """One choice, tried."""

    choice: str
    label: str
    runs: tuple[RunShown, ...]


def swept(state: State, choice: str, units: Units) -> SweptShown:
    """Try every option of one choice, everything else kept.

    Parameters
    ----------
    state : State
        That stands.
    choice : str
    units : {"mm", "in"}

    Returns
    -------
    SweptShown
        Without runs when there is no such chair to begin with.
    """
    label = CHOICES[choice].label
    if state.setup is None:
        return SweptShown(choice, label, ())
    line = state.bench.line
    runs = runs_of(line.choices[choice], state.index[choice])
    found = sweep(state.bench.person, state.setup, choice, runs)
    return SweptShown(choice, label, tuple(_run(state.setup, run, units) for run in found.runs))


def _run(base: Described, run: SweptRun, units: Units) -> RunShown:
    figures = _figures(base, run)
    ledgers = [
        None if each.setup is None else {row.figure.name: row for row in ledger(each.setup)}
        for each in run.tried
    ]
    rows = []
    for figure in figures:
        cells = [
            None
            if held is None
            else CellShown(
                shown(figure, held[figure.name].value, units),
                held[figure.name].word or "",
                mark_of(held[figure.name].word),
            )
            for held in ledgers
        ]
        rows.append(RowShown(figure.label, unit_of(figure, base.line, units), tuple(cells)))
    return RunShown(RUN_WORDS.get(run.run.name, run.run.name), _columns(run), tuple(rows))


def _figures(base: Described, run: SweptRun) -> tuple[Figure, ...]:
    """Figures that move along the run: what is asked first."""
    moved = moved_figures(base, run.setups())
    asked = {item.target.figure for item in base.judged}
    order = sorted(moved, key=lambda figure: figure.name not in asked)
    kept = {figure.name for figure in order[:MOST_FIGURES]}
    return tuple(FIGURES[name] for name in FIGURES if name in kept)


def _columns(run: SweptRun) -> tuple[ColumnShown, ...]:
    return tuple(
        ColumnShown(
            code=each.option.code,
            words=each.option.name,
            status="now" if each.status == "as it stands" else "; ".join(each.reasons) or "stands",
            also=_also(each.also or {}),
            stands=each.stands,
            now=each.status == "as it stands",
        )
        for each in run.tried
    )  # fmt: skip


def _also(codes: Mapping[str, str]) -> str:
    return ", ".join(f"{CHOICES[name].label} {code}" for name, code in codes.items())
