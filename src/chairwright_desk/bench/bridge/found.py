"""The best set-up for a client, the trade-off front as a picture, or why nothing fits."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from chairwright.figures.registry import FIGURES
from chairwright.fitting.fit import MOST_CORRECTIONS, Fit, fit_person
from chairwright.fitting.trade import read_objectives
from chairwright.papers.words import amount_words, measured_words, target_words
from chairwright.search.best import find_best
from chairwright.search.front import FrontPoint, Objective
from chairwright_desk.bench.bridge.kept import Kept
from chairwright_desk.bench.bridge.opened import Bench, Units
from chairwright_desk.bench.bridge.scatter import Dot, Scatter, scatter_of
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
    """A figure that the front trades off."""

    name: str
    label: str
    unit: str
    way: str


@dataclass(frozen=True)
class Trade:
    """One point of the front, for the table beside the picture."""

    number: int
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
            front=front,
            objectives=aims,
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
    return Aim(figure.name, figure.label, unit_of(figure, fit.line, units), WAYS[aim.sense])


def _trade(fit: Fit, number: int, point: FrontPoint, units: Units) -> Trade:
    values = (shown(FIGURES[aim.figure], point.values[aim.figure], units)
              for aim in fit.objectives)  # fmt: skip
    options = {name: fit.line.choices[name].options[at].code for name, at in point.index.items()}
    best = {} if fit.setup is None else fit.setup.codes
    differs = [code for name, code in options.items() if best.get(name) != code]
    return Trade(number, tuple(values), options, " ".join(differs))


def front_picture(
    bench: Bench, units: Units, trade: str = "", now: dict[str, float] | None = None
) -> Scatter | None:
    """The trade-off front as a picture whose points can be chosen.

    Parameters
    ----------
    bench : Bench
    units : {"mm", "in"}
    trade : str
        As for `fit_of`.
    now : dict of str to float or None
        Figures of the set-up on the bench, to be marked too.

    Returns
    -------
    Scatter or None
        None when there is no front.
    """
    fit = fit_of(bench, front=True, trade=trade)
    if fit.front is None or not fit.front.points:
        return None
    x, y, *_rest = (FIGURES[aim.figure] for aim in fit.objectives)
    dots = tuple(
        Dot(number, point.values[x.name], point.values[y.name],
            _label(fit, number, point, units))
        for number, point in enumerate(fit.front.points, 1)
    )  # fmt: skip
    axes = tuple(f"{each.label}, {unit_of(each, fit.line, units)}".removesuffix(", ")
                 for each in (x, y))  # fmt: skip
    return scatter_of(dots, axes[0], axes[1], _now(now, x.name, y.name), (x.digits, y.digits))


def _now(now: dict[str, float] | None, x: str, y: str) -> tuple[float, float] | None:
    return None if now is None else (now[x], now[y])


def _label(fit: Fit, number: int, point: FrontPoint, units: Units) -> str:
    told = (
        f"{FIGURES[aim.figure].label} {shown(FIGURES[aim.figure], point.values[aim.figure], units)}"
        f" {unit_of(FIGURES[aim.figure], fit.line, units)}"
        for aim in fit.objectives
    )
    return f"Point {number}: {', '.join(each.rstrip() for each in told)}"
