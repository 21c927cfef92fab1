"""The best set-up against a general constraint solver and against every set-up tried.

Medium lines: some of the shipped line's options, drawn at random, ten thousand set-ups and more.
How the solver's model is made, and which part of a figure it takes from the program, is told in
`cp_sat`.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from chairwright.files.client import read_client
from chairwright.fitting.person import read_person
from chairwright.fitting.settled import space_for
from chairwright.search.best import find_best
from chairwright.search.space import Space
from chairwright.targets.target import Target

from .cp_sat import TOLERANCE, prove
from .cp_sat_space import costs_of, drawn, look_at_all, obeys
from .lines import everyday

SECONDS = 60.0
CLIENTS = ("avg-001", "tal-002", "foo-003", "hem-004", "amp-005", "chi-007", "car-009")
SMALLEST, LARGEST = 10_000, 1_000_000
MEDIUM = {
    "side_frame": 2, "axle_hole": 6, "caster": 2, "fork": 4, "caster_housing": 2,
    "stem_setting": 3, "seat_width": 3, "arm_support": 2, "seat_depth": 4, "cushion": 2,
    "back_angle": 2, "back_support": 2, "hanger": 2, "leg_length": 3, "back_height": 2,
    "anti_tip": 2, "finish": 2,
}  # fmt: skip
"""Options drawn of each choice."""
FEW = {**MEDIUM, **dict.fromkeys(("caster", "fork", "seat_depth", "back_support", "finish"), 1)}

ORDER = (
    Target("price", None, 2000.0, must=False, weight=0.5, source="test", reason="funding"),
    Target("lead_days", None, 30.0, must=True, weight=1.0, source="test", reason="discharge"),
    Target("total_mass_kg", None, 90.0, must=False, weight=0.1, source="test", reason="lift"),
)
PREFERENCES_ONLY = {"anti_tip_gain_deg", "elbow_angle_deg"}
"""The model takes no further must on these."""


@cache
def client(name: str) -> tuple[Space, tuple[Target, ...]]:
    """The whole space of an example client, and the targets with some on the order."""
    person = read_person(read_client(f"examples/clients/{name}.yaml"))
    space = space_for(person.client, everyday(), person.occupant)
    return space, (*person.targets, *ORDER)


def draw(
    rng: np.random.Generator, name: str, number: dict[str, int], smallest: int, largest: int
) -> Space:
    """Draw a line on which some set-up holds every must: the best one by other weights."""
    whole, targets = client(name)
    other = [replace(each, weight=float(rng.uniform(0.02, 2.0))) for each in targets]
    some = find_best(whole, [each for each in other if each.figure != "total_mass_kg"])
    assert some is not None
    while True:
        space = drawn(whole, number, some.index, rng)
        if smallest <= space.count <= largest:
            return space


def check(space: Space, targets: Sequence[Target]) -> None:
    """Search, solver and trying every set-up come to the same least cost."""
    every = look_at_all(space, targets)
    assert every.count == space.count
    answer = prove(space, targets, SECONDS)
    assert answer.proven
    best = find_best(space, targets)
    if best is None:
        assert every.cost == answer.cost == math.inf
        return
    assert best.cost == pytest.approx(every.cost, abs=2e-9)
    assert cost(space, targets, best.index) == pytest.approx(every.cost, abs=2e-9)
    assert answer.cost == pytest.approx(every.cost, abs=TOLERANCE)
    assert cost(space, targets, answer.index) == pytest.approx(every.cost, abs=TOLERANCE)


def cost(space: Space, targets: Sequence[Target], index: Mapping[str, int]) -> float:
    """Cost of one set-up, worked out again from its figures."""
    one = {name: np.array([place]) for name, place in index.items()}
    assert all(index[name] in space.allowed[name] for name in index)
    assert obeys(space.line, one)[0]
    return float(costs_of(space, targets, one)[0])


@pytest.mark.parametrize("name", CLIENTS)
def test_least_cost_of_a_medium_line(name: str) -> None:
    rng = np.random.default_rng(CLIENTS.index(name))
    check(draw(rng, name, MEDIUM, SMALLEST, LARGEST), client(name)[1])


@pytest.mark.parametrize("seed", range(9))
def test_a_preference_as_a_must(seed: int) -> None:
    rng = np.random.default_rng(100 + seed)
    name = CLIENTS[seed % len(CLIENTS)]
    targets = client(name)[1]
    fit = [
        at
        for at, target in enumerate(targets)
        if not target.must and target.figure not in PREFERENCES_ONLY
    ]
    harder = int(rng.choice(fit))
    check(
        draw(rng, name, FEW, 500, 50_000),
        [replace(t, must=t.must or at == harder) for at, t in enumerate(targets)],
    )


@pytest.mark.parametrize("name", ["avg-001", "hem-004", "amp-005"])
def test_each_figure_alone(name: str) -> None:
    """The model is right figure by figure, not only where errors may hide in a sum."""
    rng = np.random.default_rng(200 + CLIENTS.index(name))
    space, targets = draw(rng, name, FEW, 500, 20_000), client(name)[1]
    touches = [target for target in targets if target.figure == "pitch_to_anti_tip_deg"]
    for figure in {target.figure for target in targets}:
        alone = [target for target in targets if target.figure == figure]
        asked = alone if alone == touches else [*alone, *touches]
        answer = prove(space, asked, SECONDS)
        assert answer.proven
        assert answer.cost == pytest.approx(look_at_all(space, asked).cost, abs=TOLERANCE), figure
