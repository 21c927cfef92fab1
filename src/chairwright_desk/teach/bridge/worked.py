"""A step of a lesson worked out on the demo set-up: answers, pictures, figures that move, why."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from chairwright.drawing.lesson_plan import lesson_plans
from chairwright.drawing.lesson_side import lesson_sides
from chairwright.drawing.overlay import overlay_sheet
from chairwright.drawing.overlay_plan import overlay_plan_sheet
from chairwright.drawing.sheet import Page
from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.described import Described
from chairwright.fitting.moved import change
from chairwright.papers.cautions import beside
from chairwright.papers.lesson_from_sweep import SURER
from chairwright.papers.lesson_reasons_figures import FIGURE_REASONS
from chairwright.papers.lesson_why import reason, sources
from chairwright_desk.bench.bridge import State, Units
from chairwright_desk.bench.bridge.pictures import Picture, picture
from chairwright_desk.bench.bridge.words import change_shown, mark_of, shown, unit_of
from chairwright_desk.teach.bridge.demo import state_with
from chairwright_desk.teach.lessons.lesson import Amount, Most, Pick, Step, Way

OVERLAY, SMALL_MM = Page(190.0, 150.0), 62.0
HARDLY = 0.2
"""A figure hardly changes when it moves less than this part of a difference that matters."""


@dataclass(frozen=True)
class AnswerShown:
    """One answer, and whether the figures bear it out."""

    words: str
    right: bool


@dataclass(frozen=True)
class CellShown:
    """A value and how far it lies from that of the first set-up."""

    value: str
    change: str
    word: str
    mark: str


@dataclass(frozen=True)
class RowShown:
    """One figure over the set-ups."""

    label: str
    unit: str
    asked: bool
    cells: tuple[CellShown, ...]


@dataclass(frozen=True)
class WhyShown:
    """Why a figure moved, and where that is published or derived."""

    label: str
    text: str
    sources: str


@dataclass(frozen=True)
class Worked:
    """A step, worked out.

    Parameters
    ----------
    names : tuple of str
        Of the set-ups.
    answers : tuple of AnswerShown
    pictures : tuple of (str, Picture)
        Caption and drawing; one when two set-ups lie over each other.
    rows : tuple of RowShown
    whys : tuple of WhyShown
    cautions : tuple of str
    captioned : bool
        False where the drawing's own legend names its set-ups.
    """

    names: tuple[str, ...]
    answers: tuple[AnswerShown, ...]
    pictures: tuple[tuple[str, Picture], ...]
    rows: tuple[RowShown, ...]
    whys: tuple[WhyShown, ...]
    cautions: tuple[str, ...]
    captioned: bool

    @property
    def right(self) -> int:
        """Which answer the figures bear out."""
        return next(at for at, each in enumerate(self.answers) if each.right)


def worked(step: Step, units: Units, prefix: str = "") -> Worked:
    """Work a step out, now.

    Parameters
    ----------
    step : Step
    units : {"mm", "in"}
    prefix : str
        Start of every id in its drawings, where several steps stand on one page.
    """
    states = [state_with(codes) for _, codes in step.shown]
    setups = [_setup(state) for state in states]
    names = tuple(name for name, _ in step.shown)
    figures = [FIGURES[name] for name in dict.fromkeys([*_asked(step), *step.figures])]
    return Worked(
        names=names,
        answers=tuple(_answers(step, setups, names, units)),
        pictures=tuple(_pictures(step, setups, names, prefix)),
        rows=tuple(_row(step, setups, figure, units) for figure in figures),
        whys=tuple(_whys(step, states, setups, figures)),
        cautions=tuple(_cautions(figures)),
        captioned=len(setups) != 2,
    )


def _setup(state: State) -> Described:
    if state.setup is None:
        message = f"no such chair in a lesson: {state.against}"
        raise ValueError(message)
    return state.setup


def _asked(step: Step) -> tuple[str, ...]:
    return step.ask.figures if isinstance(step.ask, Most) else (step.ask.figure,)


def _answers(
    step: Step, setups: Sequence[Described], names: Sequence[str], units: Units
) -> Iterator[AnswerShown]:
    ask, first, last = step.ask, setups[0], setups[-1]
    if isinstance(ask, Way):
        way = _way(FIGURES[ask.figure], first, last)
        yield from (AnswerShown(each, at - 1 == way) for at, each in enumerate(ask.answers))
    elif isinstance(ask, Amount):
        yield from _amounts(FIGURES[ask.figure], first, last, units)
    elif isinstance(ask, Most):
        moves = [abs(last.figures[name] - first.figures[name]) for name in ask.figures]
        for name, move in zip(ask.figures, moves, strict=True):
            yield AnswerShown(FIGURES[name].label, move == max(moves))
    else:
        yield from _picked(ask, setups, names)


def _picked(ask: Pick, setups: Sequence[Described], names: Sequence[str]) -> Iterator[AnswerShown]:
    values = [setup.figures[ask.figure] for setup in setups]
    wanted = min(values) if ask.end == "least" else max(values)
    for name, value in zip(names, values, strict=True):
        yield AnswerShown(name, value == wanted)


def _way(figure: Figure, first: Described, last: Described) -> int:
    """-1, 0 or 1."""
    moved = last.figures[figure.name] - first.figures[figure.name]
    if abs(moved) < HARDLY * figure.scale:
        return 0
    return 1 if moved > 0 else -1


def _amounts(
    figure: Figure, first: Described, last: Described, units: Units
) -> Iterator[AnswerShown]:
    moved = change(figure, first.figures[figure.name], last.figures[figure.name])
    word = "more" if moved > 0 else "less"
    unit = unit_of(figure, first.line, units)
    for times in (0.5, 1.0, 2.0):
        amount = shown(figure, abs(moved) * times, units)
        yield AnswerShown(f"About {amount} {unit} {word}", times == 1.0)


def _pictures(
    step: Step, setups: Sequence[Described], names: Sequence[str], prefix: str
) -> Iterator[tuple[str, Picture]]:
    shapes = [setup.shape for setup in setups]
    if len(shapes) == 2:
        draw = overlay_plan_sheet if step.view == "plan" else overlay_sheet
        sheet = draw(shapes[0], shapes[1], (names[0], names[1]), OVERLAY)
        yield f"1: {names[0]}; 2: {names[1]}, dashed", picture(sheet, f"{prefix}over")
        return
    row = (lesson_plans if step.view == "plan" else lesson_sides)(shapes, 0, SMALL_MM, SMALL_MM)
    for at, (sheet, name) in enumerate(zip(row.sheets, names, strict=True)):
        yield name, picture(sheet, f"{prefix}row{at}")


def _row(step: Step, setups: Sequence[Described], figure: Figure, units: Units) -> RowShown:
    asked = figure.name in _asked(step)
    first = setups[0].figures[figure.name]
    return RowShown(
        figure.label,
        unit_of(figure, setups[0].line, units),
        asked,
        tuple(_cell(setup, figure, first, units, at) for at, setup in enumerate(setups)),
    )


def _cell(setup: Described, figure: Figure, first: float, units: Units, at: int) -> CellShown:
    value = setup.figures[figure.name]
    words = [
        item.verdict.word
        for item in setup.judged
        if item.target.must and item.target.figure == figure.name
    ]
    word = words[0] if words else ""
    moved = change_shown(figure, first, value, units) or "±0"
    return CellShown(shown(figure, value, units), moved if at else "", word, mark_of(word))


def _whys(
    step: Step, states: Sequence[State], setups: Sequence[Described], figures: Sequence[Figure]
) -> Iterator[WhyShown]:
    order = sorted(range(len(states)), key=lambda at: _along(states[at], step))
    for figure in figures:
        values = [setups[at].figures[figure.name] for at in order]
        if len({round(value, figure.digits) for value in values if not math.isnan(value)}) < 2:
            continue
        text = reason(step.choice, step.along, figure, values) or FIGURE_REASONS[figure.name]
        told = sources(step.choice, step.along, figure, values) or (figure.source,)
        yield WhyShown(figure.label, text, "; ".join(told))


def _along(state: State, step: Step) -> float:
    if not step.choice:
        return 0.0
    option = state.bench.line.choices[step.choice].options[state.index[step.choice]]
    return option.numbers.get(step.along, 0.0)


def _cautions(figures: Sequence[Figure]) -> Iterator[str]:
    for group in dict.fromkeys(figure.group for figure in figures):
        yield from beside(group, None)
    yield SURER.strip()
