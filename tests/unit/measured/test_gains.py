"""What a proposed set-up would change: verdict by verdict, and never by a finer tape alone."""

from __future__ import annotations

from dataclasses import replace

import pytest

from chairwright.figures.registry import FIGURES
from chairwright.fitting.described import Described, judge
from chairwright.measured.gains import changes
from chairwright.targets.target import Target

NAME = "seat_width_mm"


def target(low: float, high: float, *, must: bool) -> Target:
    return Target(
        figure=NAME, low=low, high=high, must=must, weight=1.0, reason="a case", source="a case"
    )


def setup(base: Described, value: float, spread: float, *targets: Target) -> Described:
    figures = {**dict.fromkeys(FIGURES, 1.0), NAME: value}
    spreads = {NAME: spread}
    return replace(base, figures=figures, spreads=spreads, judged=judge(figures, spreads, targets))


@pytest.mark.parametrize(
    ("now", "spread", "then", "kind", "sure"),
    [
        (450.0, 5.0, 410.0, "gain", True),
        (410.0, 5.0, 450.0, "loss", True),
        (450.0, 5.0, 440.0, "nearer", True),
        (440.0, 5.0, 450.0, "farther", True),
        (430.0, 5.0, 429.0, "other", False),  # better known, not better
        (432.0, 5.0, 428.0, "gain", False),  # within what the tape can be off
        (428.0, 5.0, 410.0, "gain", True),  # on nominal values now, surely then
        (float("nan"), 0.0, 410.0, "not told", False),
    ],
)
def test_kinds(
    base: Described, now: float, spread: float, then: float, kind: str, *, sure: bool
) -> None:
    must = target(400.0, 430.0, must=True)
    found = changes(setup(base, now, spread, must), setup(base, then, 0.0, must))
    assert [(each.kind, each.sure) for each in found] == [(kind, sure)]


def test_a_met_preference_is_a_gain(base: Described) -> None:
    asked = target(380.0, 450.0, must=True), target(400.0, 410.0, must=False)
    (found,) = changes(setup(base, 430.0, 0.0, *asked), setup(base, 405.0, 0.0, *asked))
    assert found.kind == "gain"
    assert (found.now.word, found.then.word) == ("holds, not as preferred", "holds")


def test_nothing_asked_is_told_and_not_judged(base: Described) -> None:
    (found,) = changes(setup(base, 430.0, 0.0), setup(base, 405.0, 0.0))
    assert found.kind == "other"
