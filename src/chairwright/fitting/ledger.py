"""The figures of one set-up in a ledger: value, spread, must, preference and one word for both."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Literal

from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.described import Described, Judged
from chairwright.targets.target import Target
from chairwright.targets.verdict import verdict, verdict_of_ends

Word = Literal[
    "holds",
    "holds, not as preferred",
    "holds on nominal values",
    "not as preferred",
    "fails",
    "not known",
]


@dataclass(frozen=True)
class Row:
    """One figure.

    Parameters
    ----------
    figure : Figure
    value, spread : float
        In the figure's unit; NaN when the set-up has no such figure; spread 0 when it has none.
    must, prefer : Judged or None
    word : Word or None
        None when nothing is asked.
    """

    figure: Figure
    value: float
    spread: float
    must: Judged | None
    prefer: Judged | None
    word: Word | None

    @property
    def asked(self) -> tuple[Judged, ...]:
        """The must and the preference that there are."""
        return tuple(item for item in (self.must, self.prefer) if item is not None)

    @property
    def targets(self) -> tuple[Target, ...]:
        """What is asked, beside which the value stands."""
        return tuple(item.target for item in self.asked)


def ledger(setup: Described) -> tuple[Row, ...]:
    """Every figure of a set-up with what is asked of it.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    tuple of Row
        In the order of the registry, figures of a place last.
    """
    musts = _joined(item for item in setup.judged if item.target.must)
    wishes = _joined(item for item in setup.judged if not item.target.must)
    return tuple(
        Row(
            figure=FIGURES[name],
            value=setup.figures[name],
            spread=setup.spreads.get(name, 0.0),
            must=musts.get(name),
            prefer=wishes.get(name),
            word=joint_word(musts.get(name), wishes.get(name)),
        )
        for name in dict.fromkeys([*FIGURES, *setup.figures])
    )


def _joined(judged: Iterable[Judged]) -> dict[str, Judged]:
    """One for each figure; where rules and places ask for the same, what all of them leave."""
    found: dict[str, Judged] = {}
    for item in judged:
        name = item.target.figure
        found[name] = _both(found[name], item) if name in found else item
    return found


def _both(one: Judged, other: Judged) -> Judged:
    """The narrower of two, or the range that both leave; the worse one when they leave none."""
    first, second = one.target, other.target
    low = max((end for end in (first.low, second.low) if end is not None), default=None)
    high = min((end for end in (first.high, second.high) if end is not None), default=None)
    if low is not None and high is not None and low > high:
        return min(one, other, key=lambda item: item.verdict.margin)
    if (first.low, first.high) == (low, high) == (second.low, second.high):
        return one if _held(one) <= _held(other) else other
    for item in (one, other):
        if (item.target.low, item.target.high) == (low, high):
            return item
    joined = replace(
        first,
        low=low,
        high=high,
        source=f"{first.source}; {second.source}",
        reason=f"{first.reason}; {second.reason}",
        tolerance=max(first.tolerance, second.tolerance),
        place=" and ".join(dict.fromkeys(filter(None, (first.place, second.place)))),
    )
    if one.halves is None or other.halves is None:
        return Judged(joined, one.value, one.spread, verdict(joined, one.value, one.spread))
    halves = (
        max(item.halves[0] for item in (one, other) if item.halves and item.target.low == low),
        max(item.halves[1] for item in (one, other) if item.halves and item.target.high == high),
    )
    judged = verdict_of_ends(joined, one.value, halves)
    return Judged(joined, one.value, one.spread, judged, halves)


def _held(judged: Judged) -> bool:
    return judged.verdict.word == "holds"


def joint_word(must: Judged | None, prefer: Judged | None) -> Word | None:
    """One word for a must and a preference on the same figure.

    Parameters
    ----------
    must, prefer : Judged or None

    Returns
    -------
    Word or None
        The must's verdict goes first; a missed preference never "fails". None when nothing
        is asked.
    """
    if must is None and prefer is None:
        return None
    missed = prefer is not None and prefer.verdict.word == "fails"
    if must is None:
        return "not as preferred" if missed else _word(prefer)
    if must.verdict.word == "holds" and missed:
        return "holds, not as preferred"
    return _word(must)


def _word(judged: Judged | None) -> Word | None:
    return None if judged is None else judged.verdict.word


def asked_for(rows: Iterable[Row]) -> tuple[Row, ...]:
    """Only the rows of which something is asked."""
    return tuple(row for row in rows if row.word is not None)
