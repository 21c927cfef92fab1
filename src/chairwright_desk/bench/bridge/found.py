"""The best set-up for a client, the trade-off front, or why nothing fits."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import isnan

from chairwright.figures.registry import FIGURES
from chairwright.fitting.fit import MOST_CORRECTIONS, Fit, fit_person
from chairwright.fitting.trade import read_objectives
from chairwright.papers.words import amount_words, measured_words, target_words
from chairwright.search.best import find_best
from chairwright.search.front import FrontPoint, Objective
from chairwright_desk.bench.bridge.kept import Kept
from chairwright_desk.bench.bridge.opened import Bench, Units
from chairwright_desk.bench.bridge.words import shown, unit_of

Progress = Callable[[str], None]
WAYS = {"min": "less is better", "max": "more is better"}


@dataclass(frozen=True)
class Give:
    """One must that would have to give."""

    words: str
    reaches: str
    by: str


@dataclass(frozen=True)
class Correction:
    """A smallest group of musts that could be given up, with a set-up that shows it."""

    gives: tuple[Give, ...]
    codes: dict[str, str]


@dataclass(frozen=True)
class Aim:
    """A figure that the front trades off, with the digits that it is told with."""

    name: str
    label: str
    unit: str
    way: str
    digits: int


@dataclass(frozen=True)
class Trade:
    """One point of the front; a number is None where the set-up has no such figure."""

    number: int
    numbers: tuple[float | None, ...]
    values: tuple[str, ...]
    codes: dict[str, str]
    differs: str


@dataclass(frozen=True)
class Found:
    """What came out of a search; plain values that can be stored.

    Parameters
    ----------
    codes : dict of str to str
        The best set-up; empty when none meets every must.
    count : str
        How many set-ups were looked among.
    to_order : bool
        Whether sizes made to order were needed.
    corrections : tuple of Correction
        When nothing fits: what could give.
    conflicts : tuple of tuple of str
        Musts that cannot hold together.
    aims : tuple of Aim
    trades : tuple of Trade
    """

    codes: dict[str, str]
    count: str
    to_order: bool
    corrections: tuple[Correction, ...]
    conflicts: tuple[tuple[str, ...], ...]
    aims: tuple[Aim, ...]
    trades: tuple[Trade, ...]


_FITS: Kept[Fit] = Kept(32)


def fit_of(
    bench: Bench,
    *,
    front: bool,
    trade: str = "",
    reasons: bool = True,
    progress: Progress = lambda _: None,
) -> Fit:
    """The fitting of a bench's client on its line, kept.

    Parameters
    ----------
    bench : Bench
    front : bool
        Whether the trade-off front is wanted.
    trade : str
        Figures of the front, as typed; empty for the usual ones.
    reasons : bool
        Whether the reasons are wanted when nothing fits, which can take long.
    progress : callable
        Told in a few words what is being done.

    Raises
    ------
    InputError
        When the figures of the front cannot be meant.
    """
    aims = read_objectives(trade) if trade else ()
    person, line = bench.person, bench.line

    def fit() -> Fit:
        return fit_person(
            person,
            line,
            objectives=aims if front else None,
            most_corrections=MOST_CORRECTIONS if reasons else 0,
            progress=progress,
        )

    return _FITS.of((bench.key, front, aims, reasons), fit)


def find(
    bench: Bench,
    units: Units,
    *,
    front: bool = False,
    trade: str = "",
    reasons: bool = True,
    progress: Progress = lambda _: None,
) -> Found:
    """Find the best set-up, proven.

    Parameters
    ----------
    bench : Bench
    units : {"mm", "in"}
    front, trade, reasons, progress
        As for `fit_of`.

    Returns
    -------
    Found

    Raises
    ------
    InputError
        As `fit_of`.
    """
    fit = fit_of(bench, front=front, trade=trade, reasons=reasons, progress=progress)
    codes = {} if fit.best is None or fit.setup is None else fit.setup.codes
    points = fit.front.points if fit.front is not None else ()
    return Found(
        codes=codes,
        count=f"{fit.count:,}",
        to_order=fit.extent == "needed" and bool(codes),
        corrections=tuple(_corrections(fit)),
        conflicts=tuple(_conflicts(fit)),
        aims=tuple(_aim(fit, each, units) for each in fit.objectives),
        trades=tuple(_trade(fit, at, point, units) for at, point in enumerate(points, 1)),
    )


def first_codes(bench: Bench) -> dict[str, str]:
    """A set-up to start from: the one that misses least of what is asked.

    Parameters
    ----------
    bench : Bench

    Returns
    -------
    dict of str to str
        Empty when the line builds nothing for the client.
    """
    best = find_best(bench.space, bench.person.targets) or find_best(bench.space, [])
    return {} if best is None else codes_of(bench, best.index)


def codes_of(bench: Bench, index: dict[str, int]) -> dict[str, str]:
    """The code of every choice.

    Parameters
    ----------
    bench : Bench
    index : dict of str to int
        Option position of every choice.
    """
    return {name: bench.line.choices[name].options[at].code for name, at in index.items()}


def _corrections(fit: Fit) -> list[Correction]:
    if fit.reasons is None:
        return []
    line = fit.line
    return [
        Correction(
            tuple(
                Give(
                    target_words(give.target, line, give.value),
                    measured_words(FIGURES[give.target.figure], give.value, line, give.target),
                    amount_words(FIGURES[give.target.figure], give.by, line),
                )
                for give in each.gives
            ),
            {name: line.choices[name].options[at].code for name, at in each.index.items()},
        )
        for each in fit.reasons.corrections
    ]


def _conflicts(fit: Fit) -> list[tuple[str, ...]]:
    if fit.reasons is None:
        return []
    return [tuple(target_words(t, fit.line) for t in group) for group in fit.reasons.conflicts]


def _aim(fit: Fit, aim: Objective, units: Units) -> Aim:
    figure = FIGURES[aim.figure]
    unit = unit_of(figure, fit.line, units)
    return Aim(figure.name, figure.label, unit, WAYS[aim.sense], figure.digits)


def _trade(fit: Fit, number: int, point: FrontPoint, units: Units) -> Trade:
    numbers = [point.values[aim.figure] for aim in fit.objectives]
    pairs = zip(fit.objectives, numbers, strict=True)
    values = [shown(FIGURES[aim.figure], value, units) for aim, value in pairs]
    options = {name: fit.line.choices[name].options[at].code for name, at in point.index.items()}
    best = {} if fit.setup is None else fit.setup.codes
    differs = [code for name, code in options.items() if best.get(name) != code]
    known = tuple(None if isnan(value) else value for value in numbers)
    return Trade(number, known, tuple(values), options, " ".join(differs))
