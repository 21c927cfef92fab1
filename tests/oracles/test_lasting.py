"""Set-ups that last, against brute force on random small lines.

A random client changes along three tracks over a year; musts and preferences are drawn, and move
from state to state. Brute force looks at every set-up now, at every set-up in every state, and at
what each choice of the one would take to become the other.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np
import pytest
from numpy.typing import NDArray

from chairwright.figures.registry import FIGURES
from chairwright.fitting.person import Person
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.order.change_table import change_table
from chairwright.order.lasting import find_lasting, grid, how_long
from chairwright.order.states import State, States
from chairwright.person.client import Client, Expected
from chairwright.person.estimates import complete
from chairwright.person.growth import Growth, expected_growth
from chairwright.person.plausibility import review
from chairwright.search.space import open_space
from chairwright.targets.target import Target

from . import brute_force, drawn_targets
from .brute_force import Everything, look_at_everything
from .people import anybody, seated
from .small_lines import Drawn, drawn_line

Rng = np.random.Generator
DAYS = (0, 6, 12)
STEP = 6


class DrawnStates(States):
    """States whose targets are drawn: those of now, each end moved from state to state."""

    def __init__(self, growth: Growth, line: Line, targets: list[Target], seed: int) -> None:
        super().__init__(growth, line)
        self._drawn, self._seed = targets, seed

    def _make(self, months: int, track: int) -> State:
        client = self.growth.at(self.growth.tracks[track], months / 12)
        occupant = seated(client)
        rng = np.random.default_rng([self._seed, months, track])
        targets = tuple(moved(rng, each, months / 12) for each in self._drawn)
        person = Person(client, complete(client), review(client), occupant, targets)
        space = open_space(self.line, occupant, {})
        return State(months, self.growth.tracks[track], person, space)


def moved(rng: Rng, target: Target, share: float) -> Target:
    by = FIGURES[target.figure].scale * float(rng.normal(0.0, 3.0)) * share
    ends = [None if end is None else end + by for end in (target.low, target.high)]
    return replace(target, low=ends[0], high=ends[1])


@dataclass(frozen=True)
class Case:
    states: DrawnStates
    drawn: Drawn
    now: Everything


def draw(seed: int) -> Case:
    rng = np.random.default_rng(40_000 + seed)
    while True:
        drawn = drawn_line(rng, int(10 ** rng.uniform(2.5, 4.3)))
        one = expecting(rng, anybody(rng))
        now = look_at_everything(drawn, seated(one))
        if now.bare or not len(now.index["fork"]):
            continue
        targets = drawn_targets.targets(rng, now, int(rng.integers(1, 4)), 3)
        states = DrawnStates(expected_growth(one), drawn.line, targets, seed)
        if brute_force.best(now, targets) is not None:
            return Case(states, drawn, now)


def expecting(rng: Rng, one: Client) -> Client:
    stature, mass = (each.value for each in one.measures)
    ranges = {"body_mass": (mass * rng.uniform(0.8, 1.0), mass * rng.uniform(1.0, 1.2))}
    if rng.random() < 0.5:
        ranges["stature"] = (stature, stature * rng.uniform(1.0, 1.1))
    return replace(one, expected=Expected(1.0, ranges, "drawn for a test"))


def free(line: Line, index: dict[str, int]) -> dict[str, NDArray[np.bool_]]:
    """Which options of each choice take no part, one set-up's whole table at a time."""
    kinds = change_table(line, index).kinds
    return {name: np.array([kind in ("kept", "set") for kind in kinds[name]]) for name in CHOICES}


def lasting(case: Case) -> NDArray[np.int_]:
    """Place of the last good day of every set-up that there is now; -1 for one that misses now."""
    states, now = case.states, case.now
    fine = brute_force.holding(now, states.now.person.targets)
    found = np.where(fine, 0, -1)
    holding = []
    for months in DAYS[1:]:
        row = []
        for state in states.every(months):
            every = look_at_everything(case.drawn, state.person.occupant)
            kept = brute_force.holding(every, state.person.targets)
            row.append({name: array[kept] for name, array in every.index.items()})
        holding.append(row)
    for at in np.nonzero(fine)[0]:
        options = free(case.drawn.line, now.setup(int(at)))
        for day, row in enumerate(holding, 1):
            reached = (
                np.logical_and.reduce([options[n][index[n]] for n in CHOICES]) for index in row
            )
            if not all(each.any() for each in reached):
                break
            found[at] = day
    return np.asarray(found)


@pytest.mark.parametrize("seed", range(32))
def test_the_trade_off_is_that_of_brute_force(seed: int) -> None:
    case = draw(seed)
    assert grid(case.states, STEP) == DAYS
    lasts = lasting(case)
    wanted, level = [], 0
    while level < len(DAYS):
        kept = lasts >= level
        if not kept.any():
            break
        part = Everything(
            int(kept.sum()),
            {name: array[kept] for name, array in case.now.index.items()},
            {name: values[kept] for name, values in case.now.figures.items()},
        )
        best = brute_force.best(part, case.states.now.person.targets)
        assert best is not None
        cost, place = best
        reached = int(lasts[np.nonzero(kept)[0][place]])
        wanted.append((part.setup(place), cost, DAYS[reached]))
        level = reached + 1
    found = find_lasting(case.states, STEP).points
    assert [(point.index, point.months) for point in found] == [(i, m) for i, _, m in wanted]
    for point, (_, cost, _) in zip(found, wanted, strict=True):
        assert point.cost == pytest.approx(cost, abs=2e-9)


@pytest.mark.parametrize("seed", range(100, 106))
def test_how_long_one_set_up_lasts_is_that_of_brute_force(seed: int) -> None:
    case = draw(seed)
    lasts = lasting(case)
    rng = np.random.default_rng(seed)
    for at in rng.choice(np.nonzero(lasts >= 0)[0], 3):
        found = how_long(case.states, case.now.setup(int(at)), 0.0, STEP)
        assert found.months == DAYS[lasts[at]]


def test_the_cases_are_not_all_alike() -> None:
    """Some last throughout, some for a while, and some have a trade-off."""
    found = [find_lasting(draw(seed).states, STEP) for seed in range(16)]
    assert max(len(each.points) for each in found) >= 2
    assert {each.longest.months for each in found} == set(DAYS)
