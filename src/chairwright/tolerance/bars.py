"""Which input counts most for one number, and which is worth taking again."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from chairwright.chair.weighed import COVERAGE
from chairwright.tolerance.model import Input
from chairwright.tolerance.spread import Spread

WORTH = 0.1
"""An input below this share of the variance is not worth taking again (a working value: its
removal would narrow the spread by 5 percent)."""

ROUNDING = 1e-9
"""An input that does less than this share of what the widest does is rounding."""


@dataclass(frozen=True)
class Bar:
    """What one input does to one number.

    Parameters
    ----------
    what : Input
    less, more : float
        Change of the number when the input is two standard uncertainties less, and more.
    share : float
        Of the variance by first order; all shares of a number sum to 1.
    """

    what: Input
    less: float
    more: float
    share: float

    @property
    def width(self) -> float:
        """Length of the bar."""
        return max(self.less, self.more, 0.0) - min(self.less, self.more, 0.0)


def bars_of(spread: Spread, inputs: Sequence[Input]) -> tuple[Bar, ...]:
    """What each input does to a number, the widest first.

    Parameters
    ----------
    spread : Spread
    inputs : sequence of Input
        Of the `Tolerance` that the spread is from.

    Returns
    -------
    tuple of Bar
        Without inputs that do nothing. The axes of one weighing count as one input.
    """
    ups, downs = np.nan_to_num(spread.up), np.nan_to_num(spread.down)
    parts = [
        *zip(inputs, ups, downs, strict=True),
        *((each, up, down) for each, up, down in spread.more),
    ]
    least = ROUNDING * max((max(abs(up), abs(down)) for _, up, down in parts), default=0.0)
    joined: dict[str, list[tuple[Input, float, float]]] = {}
    for each, up, down in parts:
        if max(abs(up), abs(down)) > least:
            joined.setdefault(each.label, []).append((each, float(up), float(down)))
    whole = sum(((up - down) / 2.0) ** 2 for same in joined.values() for _, up, down in same)
    found = [_bar(same, whole) for same in joined.values()]
    return tuple(sorted(found, key=lambda bar: -bar.width))


def _bar(same: Sequence[tuple[Input, float, float]], whole: float) -> Bar:
    square = sum(((up - down) / 2.0) ** 2 for _, up, down in same)
    share = square / whole if whole else 0.0
    first, up, down = same[0]
    if len(same) == 1:
        return Bar(first, COVERAGE * down, COVERAGE * up, share)
    half = COVERAGE * float(np.sqrt(square))
    return Bar(first, -half, half, share)


def worth_again(bars: Sequence[Bar]) -> Bar | None:
    """The input that is worth taking again before the chair is built.

    Parameters
    ----------
    bars : sequence of Bar

    Returns
    -------
    Bar or None
        The largest share among measures, estimates, the body model, loads and places; None when
        none of them counts for much, so that only a set-up with more to spare helps.
    """
    open_ = [bar for bar in bars if bar.what.kind != "chair" and bar.what.again]
    best = max(open_, key=lambda bar: bar.share, default=None)
    return best if best is not None and best.share >= WORTH else None
