"""Musts that hold on nominal values only, and what to measure again for each."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from chairwright.fitting.described import Described, Judged
from chairwright.tolerance.bars import Bar, bars_of, worth_again
from chairwright.tolerance.spread import Spread

MORE_TO_SPARE = (
    "No measurement makes it surer: how the chair comes out counts most. Choose a set-up with "
    "more to spare."
)


@dataclass(frozen=True)
class Unsure:
    """A target that holds on nominal values only.

    Parameters
    ----------
    judged : Judged
    spread : Spread
        Of the margin to the end in question.
    bars : tuple of Bar
        What each input does to that margin, the widest first.
    """

    judged: Judged
    spread: Spread
    bars: tuple[Bar, ...]

    @property
    def again(self) -> str:
        """What to measure again, or what else to do, in a sentence."""
        bar = worth_again(self.bars)
        return MORE_TO_SPARE if bar is None else bar.what.again

    @property
    def again_briefly(self) -> str:
        """The same in a few words, without how it is measured and without a full stop."""
        if worth_again(self.bars) is None:
            return "Nothing to measure"
        return self.again.partition(" (")[0].rstrip(".")


def unsure_musts(setup: Described) -> tuple[Unsure, ...]:
    """The musts of a set-up that hold on nominal values only.

    Parameters
    ----------
    setup : Described

    Returns
    -------
    tuple of Unsure
        In the order of the targets; empty where the spreads come from elsewhere.
    """
    return tuple(_unsure(setup))


def _unsure(setup: Described) -> Iterator[Unsure]:
    for at, item in enumerate(setup.judged):
        if not item.target.must or item.verdict.word != "holds on nominal values":
            continue
        spread = margin_spread(setup, at)
        if spread is not None:
            yield Unsure(item, spread, bars_of(spread, setup.tolerance.inputs))


def margin_spread(setup: Described, at: int) -> Spread | None:
    """Spread of the margin to that end of a target which is the less sure.

    Parameters
    ----------
    setup : Described
    at : int
        Which of ``setup.judged``.

    Returns
    -------
    Spread or None
        None where nothing is known of it.
    """
    if at >= len(setup.tolerance.ends):
        return None
    target, value = setup.judged[at].target, setup.judged[at].value
    low, high = setup.tolerance.ends[at]
    spare = []
    if low is not None and target.low is not None:
        spare.append((value - target.low - low.half, low))
    if high is not None and target.high is not None:
        spare.append((target.high - value - high.half, high))
    return min(spare, key=lambda each: each[0])[1] if spare else None
