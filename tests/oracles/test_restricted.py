"""The search against every set-up of the shipped line, restricted to a few options a choice.

Up to ten thousand, a hundred thousand and a million set-ups: what the rules leave is looked at one
by one, a block at a time, and judged as in `brute_force`.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest

from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.registry import FIGURES
from chairwright.files.client import read_client
from chairwright.fitting.person import read_person
from chairwright.fitting.trade import usual_objectives
from chairwright.line.choices import CHOICES
from chairwright.search.best import find_best
from chairwright.search.front import find_front
from chairwright.search.space import Space, open_space
from chairwright.targets.target import Target

from . import brute_force
from .brute_force import Everything
from .lines import everyday
from .restricted import restricted
from .rules import rules_kept
from .written import Index

CLIENTS = Path(__file__).parents[2] / "examples" / "clients"
BLOCK = 100_000


def blocks(space: Space) -> Iterator[Index]:
    """Every combination that the line's rules allow, a block at a time."""
    sizes = [len(space.allowed[name]) for name in CHOICES]
    for start in range(0, int(np.prod(sizes)), BLOCK):
        numbers = np.arange(start, min(start + BLOCK, int(np.prod(sizes))))
        places = np.unravel_index(numbers, sizes)
        index = {n: space.allowed[n][p] for n, p in zip(CHOICES, places, strict=True)}
        kept = rules_kept(space.line, index)
        yield {name: array[kept] for name, array in index.items()}


def looked_at(space: Space, targets: list[Target], aims: list[str]) -> tuple[int, Everything]:
    """How many the rules allow, and those that stand and hold every must with their figures."""
    names = {target.figure for target in targets} | set(aims)
    names |= {"seat_angle_deg", "footplate_clearance_mm"}
    count, found = 0, []
    for index in blocks(space):
        count += len(index["fork"])
        rows, _ = realise(space.line, space.occupant, index)
        figures = {n: np.array(v) for n, v in figures_of(rows, space.occupant, names).items()}
        stands = brute_force.standing(rows, figures)
        all_of_them = Everything(0, index, figures)
        fine = stands & brute_force.holding(all_of_them, targets)
        found.append(
            Everything(
                0,
                {name: array[fine] for name, array in index.items()},
                {name: values[fine] for name, values in figures.items()},
            )
        )
    return count, Everything(
        count,
        {name: np.concatenate([each.index[name] for each in found]) for name in CHOICES},
        {name: np.concatenate([each.figures[name] for each in found]) for name in names},
    )


@pytest.mark.parametrize("most", [10_000, 100_000, 1_000_000])
@pytest.mark.parametrize("name", ["avg-001", "foo-003"])
def test_best_front_and_count_of_the_restricted_line(name: str, most: int) -> None:
    client = read_client(CLIENTS / f"{name}.yaml")
    person = read_person(client)
    whole = open_space(everyday(), person.occupant, client.fixed_choices)
    first = find_best(whole, person.targets)
    assert first is not None
    space = restricted(whole, most, first.index)
    objectives = usual_objectives(person.occupant)
    aims = [(aim.figure, aim.sense) for aim in objectives]
    targets = list(person.targets)
    count, everything = looked_at(space, targets, [figure for figure, _ in aims])
    assert most / 4 < count == space.count
    wanted = brute_force.best(everything, targets)
    found = find_best(space, targets)
    assert wanted is not None
    assert found is not None
    cost, place = wanted
    assert found.index == everything.setup(place)
    assert found.cost == pytest.approx(cost, abs=2e-9)
    points = find_front(space, targets, objectives).points
    vectors = {
        tuple(
            float(np.round(point.values[figure] / FIGURES[figure].resolution))
            * (-1.0 if sense == "max" else 1.0)
            for figure, sense in aims
        )
        for point in points
    }
    assert len(vectors) == len(points) > 1
    assert vectors == brute_force.front(everything, targets, aims)
