"""One choice tried in all its options, in place: which figures move, and where every must holds.

Each option stands in for the present one, everything else kept but an anti-tip device that would
stand in the floor. Figures are nominal; verdicts use the spreads of the set-up as it stands.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.described import Described, judge
from chairwright.fitting.ledger import Row, ledger
from chairwright.fitting.moved import moves
from chairwright.fitting.runs import Run, runs_of
from chairwright.line.choices import CHOICES
from chairwright.mass_points import FloatArray
from chairwright.papers.cautions import beside
from chairwright_desk.bench.bridge.changes import values_of
from chairwright_desk.bench.bridge.lifted import DEVICE
from chairwright_desk.bench.bridge.opened import State, Units
from chairwright_desk.bench.bridge.options import Table, table_of
from chairwright_desk.bench.bridge.words import mark_of, shown, unit_of

RUN_WORDS = {
    "fore-aft": "Fore and aft through the present hole",
    "up-down": "Up and down through the present hole",
    "settings": "Settings of the part fitted",
    "parts": "The other parts",
    "every": "Every option",
}
MOST_FIGURES = 12


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
    code, words : str
    refused : str
        Why there is no such chair; empty when there is.
    also : str
        What goes along.
    now : bool
    word, mark : str
        Whether every must holds.
    """

    code: str
    words: str
    refused: str
    also: str
    now: bool
    word: str
    mark: str


@dataclass(frozen=True)
class RowShown:
    """One figure along the options; a cell is None where there is no such chair."""

    label: str
    unit: str
    cells: tuple[CellShown | None, ...]


@dataclass(frozen=True)
class RunShown:
    """Options in one order, and the musts outside the table that fail with each of them."""

    words: str
    columns: tuple[ColumnShown, ...]
    rows: tuple[RowShown, ...]
    always: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class SweptShown:
    """One choice, tried."""

    choice: str
    label: str
    runs: tuple[RunShown, ...]

    @property
    def cautions(self) -> tuple[str, ...]:
        """What belongs beside the figures of the runs, each said once."""
        return tuple(dict.fromkeys(words for run in self.runs for words in run.cautions))


def swept(state: State, choice: str, units: Units) -> SweptShown:
    """Try every option of one choice, everything else kept.

    Parameters
    ----------
    state : State
    choice : str
    units : {"mm", "in"}

    Returns
    -------
    SweptShown
        Without runs when there is no such chair to begin with.
    """
    label, options = CHOICES[choice].label, state.bench.line.choices[choice]
    if state.setup is None:
        return SweptShown(choice, label, ())
    runs = runs_of(options, state.index[choice])
    return SweptShown(choice, label, tuple(_run(state, choice, run, units) for run in runs))


def _run(state: State, choice: str, run: Run, units: Units) -> RunShown:
    table, base, weighed = table_of(state), state.setup, state.bench.person.weighed
    if base is None:
        raise AssertionError(NO_CHAIR)
    standing = [at for at in run.places if (choice, at) not in table.refused]
    values = values_of(state, choice, standing, tuple(base.figures))
    setups = {at: _tried(state, base, values, row) for row, at in enumerate(standing)}
    rows = {at: {row.figure.name: row for row in ledger(each)} for at, each in setups.items()}
    figures = _figures(base, list(setups.values()))
    return RunShown(
        RUN_WORDS.get(run.name, run.name),
        tuple(_column(state, choice, at, table, setups.get(at)) for at in run.places),
        tuple(_row(figure, [rows.get(at) for at in run.places], base, units) for figure in figures),
        _always(list(setups.values()), figures),
        tuple(words for figure in figures for words in beside(figure.group, weighed)),
    )


def _always(setups: Sequence[Described], told: Sequence[Figure]) -> tuple[str, ...]:
    """Figures outside the table whose must every one of the set-ups misses."""
    missed = [{item.target.figure for item in setup.broken} for setup in setups]
    every = set.intersection(*missed) - {figure.name for figure in told} if missed else set()
    return tuple(figure.label for name, figure in FIGURES.items() if name in every)


NO_CHAIR = "only a chair that stands is swept"


def _tried(state: State, base: Described, values: Mapping[str, FloatArray], row: int) -> Described:
    figures = {name: float(each[row]) for name, each in values.items()}
    return replace(
        base,
        figures=figures,
        judged=judge(figures, base.spreads, state.bench.person.targets),
    )


def _figures(base: Described, setups: Sequence[Described]) -> tuple[Figure, ...]:
    """Figures that move along the run: what is asked first."""
    moved = [
        figure
        for figure in (FIGURES[name] for name in base.figures)
        if any(moves(figure, base.figures[figure.name], e.figures[figure.name]) for e in setups)
    ]
    asked = {item.target.figure for item in base.judged}
    moved.sort(key=lambda figure: figure.name not in asked)
    kept = {figure.name for figure in moved[:MOST_FIGURES]}
    return tuple(FIGURES[name] for name in base.figures if name in kept)


def _column(
    state: State, choice: str, at: int, table: Table, setup: Described | None
) -> ColumnShown:
    option, line = state.bench.line.choices[choice].options[at], state.bench.line
    hole = table.lifted.get((choice, at))
    broken = setup is not None and bool(setup.broken)
    return ColumnShown(
        code=option.code,
        words=option.name,
        refused=table.refused.get((choice, at), ""),
        also="" if hole is None else f"anti-tip {line.choices[DEVICE].options[hole].code}",
        now=at == state.index[choice],
        word="" if setup is None else "a must fails" if broken else "every must holds",
        mark="" if setup is None else "fails" if broken else "holds",
    )


def _row(
    figure: Figure, held: Sequence[Mapping[str, Row] | None], base: Described, units: Units
) -> RowShown:
    cells = tuple(None if rows is None else _cell(rows[figure.name], units) for rows in held)
    return RowShown(figure.label, unit_of(figure, base.line, units), cells)


def _cell(row: Row, units: Units) -> CellShown:
    return CellShown(shown(row.figure, row.value, units), row.word or "", mark_of(row.word))
