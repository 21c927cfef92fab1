"""Why not: what stands against a set-up, must by must, beside the best one."""

from __future__ import annotations

from dataclasses import dataclass
from math import isnan

from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.one_change import OneChange, one_change
from chairwright.fitting.rejected import Rejected, why_rejected
from chairwright.fitting.target_reasons import Reason, reasons_of
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line, Option
from chairwright.papers.cautions import beside
from chairwright.papers.words import brief_citations
from chairwright.targets.target import Target
from chairwright_desk.bench.bridge.found import fit_of
from chairwright_desk.bench.bridge.opened import State, Units
from chairwright_desk.bench.bridge.words import range_shown, shown, unit_of

COST_DIGITS = 2


@dataclass(frozen=True)
class Remedy:
    """One change that brings a missed figure nearest.

    Parameters
    ----------
    words : str
        The option.
    choice, code : str
    value : str
        What the figure then is, with its unit.
    against : tuple of str
        Other musts that it breaks.
    """

    words: str
    choice: str
    code: str
    value: str
    against: tuple[str, ...]


@dataclass(frozen=True)
class MissShown:
    """One target that is missed.

    Parameters
    ----------
    label, kind, value, range, reason, source, place : str
    decided_by : str
        The choice that moves the figure most.
    remedies : tuple of Remedy
        Nearest first, at most three.
    cautions : tuple of str
        What belongs beside the figure.
    """

    label: str
    kind: str
    value: str
    range: str
    reason: str
    source: str
    place: str
    decided_by: str
    remedies: tuple[Remedy, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class WhyNot:
    """What stands against a set-up.

    Parameters
    ----------
    forbidden, not_open : tuple of str
        Rules that it breaks; what the client file settles otherwise.
    musts, wishes : tuple of MissShown
    best : str
        How it stands to the best set-up, in one sentence.
    differs : tuple of (str, str, str)
        Choice, option here, option of the best.
    """

    forbidden: tuple[str, ...]
    not_open: tuple[str, ...]
    musts: tuple[MissShown, ...]
    wishes: tuple[MissShown, ...]
    best: str
    differs: tuple[tuple[str, str, str], ...]

    @property
    def cautions(self) -> tuple[str, ...]:
        """What belongs beside the figures missed, each said once."""
        told = (words for miss in (*self.musts, *self.wishes) for words in miss.cautions)
        return tuple(dict.fromkeys(told))


def why_not(state: State, units: Units) -> WhyNot:
    """Say what stands against a set-up.

    Parameters
    ----------
    state : State
        With the spreads of its own.
    units : {"mm", "in"}

    Returns
    -------
    WhyNot
    """
    bench = state.bench
    rejected = why_rejected(fit_of(bench, front=False, reasons=False), bench.line, state.index)
    misses = () if rejected.setup is None else _misses(state, rejected.setup, units)
    return WhyNot(
        forbidden=rejected.forbidden,
        not_open=rejected.not_open,
        musts=tuple(each for each in misses if each.kind == "must"),
        wishes=tuple(each for each in misses if each.kind == "prefer"),
        best=_beside_best(rejected),
        differs=_differs(rejected),
    )


def _beside_best(rejected: Rejected) -> str:
    if rejected.best is None:
        return "No set-up of this line meets every must."
    if rejected.is_best:
        return "This is the best set-up of the line for what is asked."
    if rejected.is_refused:
        return "It is not the best: it misses what must hold."
    if rejected.is_tie:
        return "It is as good as the best; only the order of the options decides."
    more = rejected.costs_more or 0.0
    return (
        f"Every must holds. Its missed preferences weigh {more:.{COST_DIGITS}f} more than those of "
        "the best set-up."
    )


def _differs(rejected: Rejected) -> tuple[tuple[str, str, str], ...]:
    best = rejected.best
    if best is None:
        return ()
    return tuple(
        (
            CHOICES[name].label,
            _named(rejected.line.choices[name].options[rejected.index[name]]),
            _named(best.options[name]),
        )
        for name in rejected.differs
    )


def _named(option: Option) -> str:
    return f"{option.code}, {option.name}"


def _misses(state: State, setup: Described, units: Units) -> tuple[MissShown, ...]:
    changes = one_change(state.bench.space, state.index, state.bench.person.targets)
    pairs = enumerate(reasons_of(setup, changes))
    return tuple(
        _miss(reason, _remedies(changes, at, setup, units), state, units)
        for at, reason in pairs
        if not reason.judged.verdict.word.startswith("holds")
    )


def _miss(reason: Reason, remedies: tuple[Remedy, ...], state: State, units: Units) -> MissShown:
    item, line = reason.judged, state.bench.line
    figure = FIGURES[item.target.figure]
    step, asked = reason.decided_by, range_shown(item.target, figure, units, item.value)
    return MissShown(
        label=figure.label,
        kind="must" if item.target.must else "prefer",
        value=_measured(figure, item.value, line, units, item.target),
        range=f"{asked} {unit_of(figure, line, units)}",
        reason=item.target.reason,
        source="; ".join(brief_citations(item.target.source)) if item.target.source else "",
        place=item.target.place,
        decided_by="" if step is None else f"{CHOICES[step.choice].label} {step.option.code}",
        remedies=remedies,
        cautions=beside(figure.group, state.bench.person.weighed),
    )


def _measured(figure: Figure, value: float, line: Line, units: Units, *targets: Target) -> str:
    if isnan(value):
        return "no such figure here"
    return f"{shown(figure, value, units, *targets)} {unit_of(figure, line, units)}".rstrip()


MOST_REMEDIES = 3


def _remedies(changes: OneChange, at: int, setup: Described, units: Units) -> tuple[Remedy, ...]:
    """Single changes with which this target holds, those that break least first."""
    item: Judged = setup.judged[at]
    figure = FIGURES[item.target.figure]
    values = changes.values[figure.name]
    held = [row for row in range(len(changes.steps)) if _inside(item, float(values[row]))]
    far, lost = changes.steps_outside(), changes.lost.sum(axis=1)
    held.sort(key=lambda row: (int(lost[row]), float(far[row]), row))
    return tuple(
        Remedy(
            words=f"{CHOICES[changes.steps[row].choice].label} {changes.steps[row].option.code}, "
            f"{changes.steps[row].option.name}",
            choice=changes.steps[row].choice,
            code=changes.steps[row].option.code,
            value=_measured(figure, float(values[row]), setup.line, units),
            against=_broken(changes, row, setup),
        )
        for row in held[:MOST_REMEDIES]
    )


def _inside(item: Judged, value: float) -> bool:
    low, high = item.target.low, item.target.high
    return value == value and (low is None or value >= low) and (high is None or value <= high)  # noqa: PLR0124


def _broken(changes: OneChange, row: int, setup: Described) -> tuple[str, ...]:
    """Musts that a change breaks and that hold now."""
    now = {item.target for item in setup.judged if item.verdict.breaks}
    lost = zip(changes.targets, changes.lost[row], strict=True)
    names = (target.figure for target, broken in lost if broken and target not in now)
    return tuple(dict.fromkeys(FIGURES[name].label for name in names))
