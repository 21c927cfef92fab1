"""What must hold of spreads and margins, whatever the numbers are."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import numpy as np
import pytest

from chairwright.chair.occupant import seat
from chairwright.cli.opened import Opened, open_setup
from chairwright.files.places import read_places
from chairwright.fitting.unsure import margin_spread, unsure_musts
from chairwright.person.estimates import complete
from chairwright.targets.build import targets_for
from chairwright.targets.verdict import verdict_of_ends
from chairwright.tolerance.bars import bars_of, worth_again
from chairwright.tolerance.of_setup import Tolerance, tolerance_of
from chairwright.tolerance.traced import Traced, slopes_of

EXAMPLES = Path(__file__).parents[2] / "examples"


@cache
def opened() -> Opened:
    places = read_places(EXAMPLES / "places" / "avg-001.yaml")
    return open_setup(EXAMPLES / "setups" / "avg-001.yaml", places)


def with_tape(share: float, name: str) -> tuple[Tolerance, list[str]]:
    """The example with one measure's tolerance multiplied; names of its targets."""
    one = opened()
    measures = tuple(
        replace(m, tolerance=m.tolerance * share) if m.name == name else m
        for m in one.person.client.measures
    )
    client = replace(one.person.client, measures=measures)
    known = complete(client)
    targets = targets_for(client, known)
    found = tolerance_of(one.line, seat(client, known), one.setup.index, (), targets)
    return found, [f"{t.figure} {t.must}" for t in targets]


def test_margin_of_the_seat_width_has_tape_and_build_in_it() -> None:
    """Hip width +- 10 mm moves the end; the seat is built to limits of 3 mm, 2 x 3 / sqrt 3."""
    found, names = with_tape(1.0, "hip_width")
    at = names.index("seat_width_mm True")
    assert found.halves(at)[0] == pytest.approx(np.hypot(10.0, 2.0 * 3.0 / np.sqrt(3.0)))


def test_a_surer_tape_leaves_what_the_build_leaves() -> None:
    found, names = with_tape(0.0, "hip_width")
    at = names.index("seat_width_mm True")
    assert found.halves(at)[0] == pytest.approx(2.0 * 3.0 / np.sqrt(3.0))
    twice, _ = with_tape(2.0, "hip_width")
    assert twice.halves(at)[0] == pytest.approx(np.hypot(20.0, 2.0 * 3.0 / np.sqrt(3.0)))


def test_reach_of_the_foot_moves_with_the_lower_leg_alone_of_the_legs_measures() -> None:
    """The client's file states 5 mm for the lower leg: a standard uncertainty of 2.5 mm."""
    setup = open_setup(EXAMPLES / "setups" / "foo-003.yaml").setup
    names = [each.key for each in setup.tolerance.inputs]
    reach = setup.tolerance.figures["foot_reach_mm"]
    assert reach.up[names.index("lower_leg_length")] == pytest.approx(2.5)
    assert reach.up[names.index("hip_width")] == pytest.approx(0.0, abs=1e-9)


def test_shares_sum_to_one_and_bars_fall() -> None:
    tolerance = opened().setup.tolerance
    for name, spread in tolerance.figures.items():
        bars = bars_of(spread, tolerance.inputs)
        assert sum(bar.share for bar in bars) == pytest.approx(1.0), name
        assert [bar.width for bar in bars] == sorted((b.width for b in bars), reverse=True)
        half = np.sqrt(sum(((bar.more - bar.less) / 2.0) ** 2 for bar in bars))
        assert half == pytest.approx(spread.first_order), name


def test_same_every_time() -> None:
    one = opened()
    again = open_setup(EXAMPLES / "setups" / "avg-001.yaml", one.person.surroundings)
    assert again.setup.spreads == one.setup.spreads


def test_words_follow_from_margin_and_half_width() -> None:
    setup = opened().setup
    for at, item in enumerate(setup.judged):
        halves = setup.tolerance.halves(at)
        word = verdict_of_ends(item.target, item.value, halves).word
        assert word == item.verdict.word
        low = np.inf if item.target.low is None else item.value - item.target.low - halves[0]
        high = np.inf if item.target.high is None else item.target.high - item.value - halves[1]
        assert (word == "holds") is bool(min(low, high) >= -1e-9)


def test_what_is_worth_taking_again_narrows_the_margin() -> None:
    """With the named measure exact, each unsure margin is surer by what its share says."""
    setup = opened().setup
    seen = 0
    for item in unsure_musts(setup):
        bar = worth_again(item.bars)
        if bar is None or not item.spread.linear:
            continue
        left = item.spread.half * np.sqrt(1.0 - bar.share)
        assert left < 0.95 * item.spread.half
        seen += 1
    assert seen >= 2


def test_places_count_where_they_are_known() -> None:
    """A door's width is off by a tape's 5 mm; the chair's width alone is surer."""
    one = opened()
    at = next(k for k, t in enumerate(one.person.targets) if t.place == "bathroom door")
    with_door = margin_spread(one.setup, at)
    assert with_door is not None
    alone = one.setup.tolerance.figures["overall_width_mm"].half
    assert with_door.half == pytest.approx(np.hypot(alone, 5.0))


def test_traced_numbers_follow_the_chain_rule() -> None:
    x = Traced(3.0, np.array([1.0, 0.0]))
    y = Traced(2.0, np.array([0.0, 1.0]))
    value = (2.0 * x - y / 4.0 + 1.0) * x / y - 5.0 / y
    assert float(value) == pytest.approx((6.0 - 0.5 + 1.0) * 3.0 / 2.0 - 2.5)
    # by hand: d/dx (4x - y/4 + 1)/y; d/dy -(x/4)/y - (2x - y/4 + 1) x / y2 + 5 / y2
    assert slopes_of(value) == pytest.approx([(12.0 - 0.5 + 1.0) / 2.0, -0.375 - 4.875 + 1.25])
    assert slopes_of(round(value, 1)) == pytest.approx(slopes_of(value))
    assert slopes_of(max(x, y)) == pytest.approx([1.0, 0.0])
    assert slopes_of(min(x, 1.0)) == pytest.approx(0.0)
