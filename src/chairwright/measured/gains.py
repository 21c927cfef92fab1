"""What a client would gain, and lose, with a proposed set-up beside the measured chair."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described
from chairwright.fitting.ledger import Row, Word, ledger
from chairwright.fitting.moved import moves

Kind = Literal["gain", "loss", "nearer", "farther", "not told", "other"]

RANKS: dict[Word, int] = {
    "fails": 0,
    "not as preferred": 1,
    "holds on nominal values": 2,
    "holds, not as preferred": 3,
    "holds": 4,
}
"""Words from the worst to the best; "not known" has no rank."""


@dataclass(frozen=True)
class Change:
    """One figure now and with the proposed set-up.

    Parameters
    ----------
    kind : {"gain", "loss", "nearer", "farther", "not told", "other"}
        Gain and loss: more or less of what is asked is met; a better or worse word for it counts
        only when the figure itself moved beyond both half widths. Nearer and farther: missed by
        less or more than now. Not told: one of the two has no such figure. Other: nothing of this
        is asked, or the verdict stays.
    now, then : Row
    sure : bool
        Whether the figures lie farther apart than both half widths together.
    """

    kind: Kind
    now: Row
    then: Row
    sure: bool


def changes(measured: Described, proposed: Described) -> tuple[Change, ...]:
    """Every figure that a proposed set-up changes, or of which the verdict changes.

    Parameters
    ----------
    measured, proposed : Described
        Of one client.

    Returns
    -------
    tuple of Change
        In the order of the registry.
    """
    now = {row.figure.name: row for row in ledger(measured)}
    then = {row.figure.name: row for row in ledger(proposed)}
    return tuple(
        _change(row, then[name])
        for name, row in now.items()
        if name in then and _differ(row, then[name])
    )


def _differ(now: Row, then: Row) -> bool:
    return moves(now.figure, now.value, then.value) or now.word != then.word


def _change(now: Row, then: Row) -> Change:
    sure = abs(then.value - now.value) > now.spread + then.spread
    return Change(_kind(now, then, sure=sure), now, then, sure)


def _kind(now: Row, then: Row, *, sure: bool) -> Kind:
    if now.word is None or then.word is None:
        return "other"
    if now.word == "not known" or then.word == "not known":
        return "not told"
    step = _met(then) - _met(now)
    if step == 0 and sure:
        step = RANKS[then.word] - RANKS[now.word]
    if step:
        return "gain" if step > 0 else "loss"
    missed = _missed(then) - _missed(now)
    if abs(missed) < FIGURES[now.figure.name].resolution:
        return "other"
    return "nearer" if missed < 0 else "farther"


def _met(row: Row) -> int:
    """How much of what is asked is met on nominal values: must 2, preference 1."""
    held = {item.target.must: item.verdict.word != "fails" for item in row.asked}
    return 2 * held.get(True, True) + held.get(False, True)


def _missed(row: Row) -> float:
    """How far the worst of what is asked is missed, in the figure's unit; 0 when it is met."""
    return max((max(-item.verdict.margin, 0.0) for item in row.asked), default=0.0)
