"""When the first draws will do: they must not say other than all of them would."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

import numpy as np
import pytest

from chairwright.mass_points import FloatArray
from chairwright.tolerance.draws import DRAWS, FIRST_DRAWS
from chairwright.tolerance.spread import AGREES, Spread, spread_of


@dataclass
class Bent:
    """A number x + bend x2 of one normal input, and how many draws it was asked for."""

    bend: float
    seed: int
    asked: list[int] = field(default_factory=list)

    def steps(self, count: int) -> FloatArray:
        every = np.random.default_rng(self.seed).standard_normal((DRAWS, 1))
        return every[:count] if count else every

    def drawn(self, count: int) -> FloatArray:
        self.asked.append(count)
        x = self.steps(count)[:, 0]
        return x + self.bend * np.square(x)

    def spread(self) -> Spread:
        up, down = np.array([1.0 + self.bend]), np.array([-1.0 + self.bend])
        return spread_of(0.0, up, down, self.drawn, self.steps)


def bend_of(ratio: float) -> float:
    """Variance of x + c x2 is 1 + 2 c2 for a standard normal x (its fourth moment is 3)."""
    return math.sqrt((ratio**2 - 1.0) / 2.0)


def test_a_straight_line_needs_the_first_draws_only() -> None:
    number = Bent(0.0, 1)
    assert number.spread().linear
    assert number.asked == [FIRST_DRAWS]


@pytest.mark.parametrize("ratio", [1.0 + AGREES, 1.3])
def test_what_bends_too_much_never_passes_on_the_first_draws(ratio: float) -> None:
    """One in a thousand at the limit itself, by chance; a hundred tries are allowed one."""
    numbers = [Bent(bend_of(ratio), seed) for seed in range(100)]
    for number in numbers:
        number.spread()
    assert sum(DRAWS not in number.asked for number in numbers) <= 1


@pytest.mark.parametrize("ratio", [1.002, 1.01, 1.02])
def test_the_first_draws_say_what_all_say(ratio: float) -> None:
    """A bend well inside the limit: first order, whether the rest was drawn or not."""
    numbers = [Bent(bend_of(ratio), seed) for seed in range(60)]
    assert all(number.spread().linear for number in numbers)


def test_a_small_bend_is_passed_on_the_first_draws_mostly() -> None:
    numbers = [Bent(bend_of(1.005), seed) for seed in range(60)]
    soon = sum(number.spread().linear and DRAWS not in number.asked for number in numbers)
    assert soon > len(numbers) / 2


def test_a_number_that_does_not_move_at_all_on_the_draws_is_marked() -> None:
    """A step without a change on any draw: first order says it moves, the draws that it rests."""
    asked: list[int] = []

    def drawn(count: int) -> FloatArray:
        asked.append(count)
        return np.zeros(count)

    steps = Bent(0.0, 3).steps
    found = spread_of(0.0, np.array([1.0]), np.array([-1.0]), drawn, steps)
    assert (found.linear, found.half) == (False, 0.0)
    assert DRAWS in asked
