"""What follows from a set-up: figures by the question they answer, verdicts, cautions, one line."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from chairwright.figures.figure import GROUPS
from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.ledger import Row, ledger
from chairwright.fitting.weighed import WeighedClient
from chairwright.papers.cautions import PURPOSE, beside
from chairwright.papers.words import brief_citations
from chairwright_desk.bench.bridge.opened import State, Units
from chairwright_desk.bench.bridge.words import (
    change_shown,
    mark_of,
    range_shown,
    shown,
    spread_shown,
    unit_of,
)

ALWAYS = (
    "seat_to_floor_rear_mm", "seat_to_floor_front_mm", "seat_angle_deg", "tip_rear_locked_deg",
    "tip_forward_deg", "tip_least_deg", "caster_share", "overall_width_mm", "overall_length_mm",
    "turning_diameter_mm", "chair_mass_kg", "heaviest_part_kg", "price", "lead_days",
)  # fmt: skip
"""Figures that are told whether or not anything is asked of them."""


@dataclass(frozen=True)
class AskedShown:
    """What is asked of a figure.

    Parameters
    ----------
    kind : {"must", "prefer"}
    range : str
    word : str
    mark : str
        Name of the mark beside the word.
    reason, source, place : str
    """

    kind: str
    range: str
    word: str
    mark: str
    reason: str
    source: str
    place: str


@dataclass(frozen=True)
class FigureShown:
    """One row of the ledger.

    Parameters
    ----------
    name, label, value, unit, spread : str
    word, mark : str
        Of the must and the preference together; empty when nothing is asked.
    asked : tuple of AskedShown
    source : str
        Of the figure's formula.
    changed : str
        How far it has moved since the set-up before, with its sign; empty when it has not.
    told : bool
        Whether it stands in the short ledger.
    """

    name: str
    label: str
    value: str
    unit: str
    spread: str
    word: str
    mark: str
    asked: tuple[AskedShown, ...]
    source: str
    changed: str
    told: bool


@dataclass(frozen=True)
class QuestionShown:
    """The figures that answer one question.

    Parameters
    ----------
    question : str
    key : str
        Name for a page's own use.
    told, more : tuple of FigureShown
        Asked for or always told, and the rest.
    cautions : tuple of str
    word, mark : str
        The worst of its verdicts.
    """

    question: str
    key: str
    told: tuple[FigureShown, ...]
    more: tuple[FigureShown, ...]
    cautions: tuple[str, ...]
    word: str
    mark: str

    @property
    def open(self) -> bool:
        """Whether it is shown without being asked for: it begins the ledger, or something fails."""
        return self.key == "q1" or self.mark in ("fails", "unknown")


@dataclass(frozen=True)
class Follows:
    """All that follows from a set-up.

    Parameters
    ----------
    questions : tuple of QuestionShown
    summary : str
        One sentence, to be read aloud when it changes.
    word, mark : str
        Of everything that is asked.
    fails : tuple of FigureShown
        Musts that are missed.
    unsure : int
        How many targets hold on nominal values only.
    missed : int
        How many preferences are missed.
    purpose : str
    """

    questions: tuple[QuestionShown, ...]
    summary: str
    word: str
    mark: str
    fails: tuple[FigureShown, ...]
    unsure: int
    missed: int
    purpose: str = PURPOSE

    @property
    def nominal(self) -> bool:
        """Whether some figure holds on nominal values only, which is to be explained."""
        return any(each.mark == "nominal" for q in self.questions for each in (*q.told, *q.more))


WORST = ("fails", "unknown", "nominal", "wish", "holds")
WORDS = {
    "fails": "fails",
    "unknown": "not known",
    "nominal": "holds on nominal values",
    "wish": "not all as preferred",
    "holds": "holds",
}


def follows_of(state: State, units: Units, before: State | None = None) -> Follows | None:
    """The ledger of a set-up.

    Parameters
    ----------
    state : State
    units : {"mm", "in"}
    before : State or None
        The set-up before the last change.

    Returns
    -------
    Follows or None
        None when there is no such chair.
    """
    setup = state.setup
    if setup is None:
        return None
    earlier = None if before is None else before.setup
    weighed = state.bench.person.weighed
    rows = [(row, _figure(row, setup, units, earlier)) for row in ledger(setup)]
    questions = tuple(_question(question, rows, weighed) for question in GROUPS)
    fails = tuple(each for _, each in rows if each.mark in ("fails", "unknown") and _musts(each))
    unsure = sum(item.verdict.word == "holds on nominal values" for item in setup.judged)
    missed = sum(each.mark == "wish" for _, each in rows)
    mark = _worst(each.mark for _, each in rows)
    word = WORDS.get(mark, "")
    summary = _summary(setup, units, fails, unsure, missed)
    return Follows(questions, summary, word, mark, fails, unsure, missed)


def _musts(each: FigureShown) -> bool:
    return any(asked.kind == "must" for asked in each.asked)


def _worst(marks: Iterator[str]) -> str:
    found = set(marks)
    return next((mark for mark in WORST if mark in found), "")


def _question(
    question: str, rows: list[tuple[Row, FigureShown]], weighed: WeighedClient | None
) -> QuestionShown:
    inside = [each for row, each in rows if row.figure.group == question]
    mark = _worst(each.mark for each in inside)
    return QuestionShown(
        question=question,
        key=f"q{GROUPS.index(question) + 1}",
        told=tuple(each for each in inside if each.told),
        more=tuple(each for each in inside if not each.told),
        cautions=beside(question, weighed),
        word=WORDS.get(mark, ""),
        mark=mark,
    )


def _figure(row: Row, setup: Described, units: Units, earlier: Described | None) -> FigureShown:
    figure, before = row.figure, math.nan
    if earlier is not None:
        before = earlier.figures.get(figure.name, math.nan)
    return FigureShown(
        name=figure.name,
        label=figure.label,
        value=shown(figure, row.value, units, *row.targets),
        unit=unit_of(figure, setup.line, units),
        spread=spread_shown(figure, row.spread, units),
        word=row.word or "",
        mark=mark_of(row.word),
        asked=tuple(_asked(item, units) for item in row.asked),
        source=figure.source,
        changed="" if earlier is None else change_shown(figure, before, row.value, units),
        told=bool(row.asked) or figure.name in ALWAYS,
    )


def _asked(item: Judged, units: Units) -> AskedShown:
    target, figure = item.target, FIGURES[item.target.figure]
    word = "not as preferred" if not target.must and item.verdict.word == "fails" else None
    told = word or item.verdict.word
    return AskedShown(
        kind="must" if target.must else "prefer",
        range=range_shown(target, figure, units, item.value),
        word=told,
        mark=mark_of(told),
        reason=target.reason,
        source="; ".join(brief_citations(target.source)) if target.source else "",
        place=target.place,
    )


def _summary(
    setup: Described, units: Units, fails: tuple[FigureShown, ...], unsure: int, missed: int
) -> str:
    front = FIGURES["seat_to_floor_front_mm"]
    value = shown(front, setup.figures[front.name], units)
    head = f"Seat height front {value} {unit_of(front, setup.line, units)}"
    if fails:
        named = ", ".join(each.label.lower() for each in fails[:3])
        more = f" and {len(fails) - 3} more" if len(fails) > 3 else ""
        count = "1 must fails" if len(fails) == 1 else f"{len(fails)} musts fail"
        return f"{head}. {count}: {named}{more}."
    tail = []
    if unsure:
        tail.append(f"{unsure} on nominal values only")
    if missed:
        tail.append(f"{missed} not as preferred")
    return f"{head}. Every must holds{'; ' + ', '.join(tail) if tail else ''}."
