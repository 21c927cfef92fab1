"""The trade-off of a re-fit against every set-up of a small line.

The present chair, prices, minutes, what counts as the frame, musts and preferences are drawn. The
front must hold every printed trade-off of money, minutes and cost that no other one beats, and
nothing else; each point's set-up must hold every must and reach the point.
"""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from chairwright.line.choices import CHOICES
from chairwright.line.model import Later, Line
from chairwright.order.change_table import change_table
from chairwright.search import change_front
from chairwright.search.change_front import COST_STEP, Traded, find_change_front

from . import brute_force, drawn_targets
from .cases import PIECES, draw, in_pieces
from .changes import Work, taken

GEAR = frozenset({"side_frame", "rear_wheel", "camber", "axle_hole", "caster", "fork",
                  "stem_spacer", "caster_housing", "stem_setting"})  # fmt: skip
SHARED = {
    "wheels_off": frozenset({"rear_wheel", "hand_rim", "camber", "axle_hole"}),
    "front_up": frozenset({"caster", "fork", "stem_spacer", "caster_housing"}),
    "stance": GEAR,
    "locks": frozenset({"side_frame", "rear_wheel", "camber", "axle_hole", "seat_width",
                        "arm_support", "wheel_lock"}),
    "last_check": frozenset(CHOICES),
}  # fmt: skip
Rng = np.random.Generator
MONEY, MINUTES = 0.01, 1.0


@pytest.mark.parametrize("seed", range(3000, 3150))
def test_random_small_line(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    size = PIECES[seed % len(PIECES)]
    in_pieces(monkeypatch, size)
    monkeypatch.setattr(change_front, "FIRST_PIECE", size or change_front.FIRST_PIECE)
    case = draw(seed)
    line, work = _priced(case.rng, case.space.line)
    space = replace(case.space, line=line)
    targets = drawn_targets.targets(case.rng, case.everything, int(case.rng.integers(0, 4)), 5)
    present = _present(case.rng, case.everything, line)
    table = change_table(line, present)
    traded = (
        Traded("money", table.money, MONEY, 0.001),
        Traded("minutes", table.minutes, MINUTES, 0.1),
    )
    found = find_change_front(space, targets, traded)
    all_of_it = taken(line, present, case.everything.index, work)
    cost = sum(
        (t.weight * brute_force.steps(case.everything, t) for t in targets if not t.must),
        np.zeros(len(all_of_it.money)),
    )
    printed = np.stack(
        [
            np.round(all_of_it.money / MONEY),
            np.round(all_of_it.minutes / MINUTES),
            np.round(cost / COST_STEP),
        ],
        axis=1,
    )
    fine = brute_force.holding(case.everything, targets)
    vectors = [
        (
            round(point.sums["money"] / MONEY),
            round(point.sums["minutes"] / MINUTES),
            round(point.cost / COST_STEP),
        )
        for point in found.points
    ]
    assert vectors == sorted(_unbeaten(printed[fine]))
    for point, vector in zip(found.points, vectors, strict=True):
        at = case.everything.place(point.index)
        assert fine[at]
        assert tuple(printed[at]) == vector


def test_the_draws_reach_every_kind_of_change() -> None:
    kinds = set()
    for seed in range(3000, 3040):
        case = draw(seed)
        line, _ = _priced(case.rng, case.space.line)
        table = change_table(line, _present(case.rng, case.everything, line))
        kinds |= {kind for row in table.kinds.values() for kind in row}
    assert kinds == {"kept", "set", "bought", "frame"}


def _priced(rng: Rng, line: Line) -> tuple[Line, Work]:
    """Draw what changing a chair of the line takes; the line says all of it."""
    own = {name: float(rng.integers(0, 30)) for name in CHOICES}
    shared = {name: (choices, float(rng.integers(0, 20))) for name, choices in SHARED.items()}
    frame = {"side_frame"} | {each for each in ("seat_width", "hanger") if rng.random() < 0.3}
    minutes = float(rng.integers(0, 200))
    later = Later(
        frame=frozenset(frame),
        frame_price=float(rng.integers(0, 900)),
        frame_minutes=minutes,
        part_prices={
            name: float(np.round(rng.uniform(0, 300), 2)) for name in CHOICES if rng.random() < 0.7
        },
        minutes={**own, **{name: amount for name, (_, amount) in shared.items()}},
        source="drawn for a test",
    )
    return replace(line, later=later), Work(own, shared, minutes)


def _present(rng: Rng, everything: brute_force.Everything, line: Line) -> dict[str, int]:
    """Draw a set-up that stands, now and then with an option that the client cannot have."""
    present = everything.setup(int(rng.integers(len(everything.index["fork"]))))
    for name in rng.permutation(list(CHOICES))[: int(rng.choice([0, 0, 1, 3]))]:
        present[str(name)] = int(rng.integers(len(line.choices[str(name)].options)))
    return present


def _unbeaten(vectors: np.ndarray) -> set[tuple[float, ...]]:
    kept = set()
    vectors = np.unique(vectors, axis=0)
    for vector in vectors:
        beats = (vectors <= vector).all(axis=1) & (vectors < vector).any(axis=1)
        if not beats.any():
            kept.add(tuple(float(each) for each in vector))
    return kept
