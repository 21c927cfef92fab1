"""One word for a must and a preference on the same figure."""

from __future__ import annotations

import pytest

from chairwright.fitting.described import Judged, judge
from chairwright.fitting.ledger import Word, joint_word
from chairwright.targets.target import Target

FIGURE = "tip_rear_locked_deg"


def asked(low: float, value: float, *, must: bool, spread: float = 0.0) -> Judged:
    target = Target(FIGURE, low, None, must=must, weight=1.0, source="s", reason="r")
    return judge({FIGURE: value}, {FIGURE: spread}, [target])[0]


@pytest.mark.parametrize(
    ("value", "spread", "word"),
    [
        (15.0, 2.0, "holds"),
        (11.0, 2.0, "holds"),  # the must at 7 holds with its spread; the preference at 10 holds
        (9.0, 1.0, "holds, not as preferred"),
        (8.0, 2.0, "holds on nominal values"),
        (6.0, 2.0, "fails"),
        (float("nan"), 0.0, "not known"),
    ],
)
def test_the_must_speaks_first(value: float, spread: float, word: Word) -> None:
    must = asked(7.0, value, must=True, spread=spread)
    prefer = asked(10.0, value, must=False, spread=spread)
    assert joint_word(must, prefer) == word


@pytest.mark.parametrize(
    ("value", "word"),
    [(15.0, "holds"), (11.0, "holds on nominal values"), (9.0, "not as preferred")],
)
def test_a_missed_preference_never_fails(value: float, word: Word) -> None:
    assert joint_word(None, asked(10.0, value, must=False, spread=2.0)) == word


def test_nothing_asked_has_no_word() -> None:
    assert joint_word(None, None) is None
