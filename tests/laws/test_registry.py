"""What the registry says of each figure is true: what it depends on, and when it is settled."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.chair.rows import Rows
from chairwright.chair.steps import STEPS
from chairwright.figures.mass import mass_box
from chairwright.figures.registry import FIGURES, Figure
from chairwright.figures.terms import TERMS
from chairwright.line.choices import CHOICES
from tests.laws.setups import Made, for_many, some
from tests.oracles.draws import random_index
from tests.oracles.people import anybody, seated

LIMITED = [
    figure
    for figure in FIGURES.values()
    if figure.touched_by != frozenset(CHOICES) and figure.name not in TERMS
]
EXACT = [figure for figure in FIGURES.values() if figure.exact is not None]


class Others:
    """Draws other options for set-ups, rules and the presence of footplates respected."""

    def __init__(self, made: Made, seed: int) -> None:
        rng = np.random.default_rng(seed)
        self._made = made
        drawn = random_index(made.rows.line, made.occupant, rng, 8000)
        fitted = made.rows.index["foot_supports"]
        places = [rng.choice(np.nonzero(drawn["foot_supports"] == at)[0]) for at in fitted]
        self._index = {name: array[places] for name, array in drawn.items()}

    def of(self, names: list[str]) -> Made:
        """The same set-ups with other options of some choices."""
        return self._made.changed({name: self._index[name] for name in names})


def same(first: Made, second: Made, figure: str) -> bool:
    """Whether a figure is the same in all set-ups."""
    return bool(np.allclose(first[figure], second[figure], rtol=1e-12, atol=1e-9, equal_nan=True))


@for_many(8)
def test_no_choice_outside_touched_by_changes_a_figure(seed: int) -> None:
    made = some(seed, any_body=True)
    others = Others(made, seed)
    for figure in LIMITED:
        names = [name for name in CHOICES if name not in figure.touched_by]
        assert same(made, others.of(names), figure.name), figure.name


@for_many(4)
def test_options_with_the_same_number_are_alike_to_a_term(seed: int) -> None:
    made = some(seed, any_body=True)
    others = Others(made, seed)
    for name, term in TERMS.items():
        for choice in CHOICES:
            other = others.of([choice])
            column = made.rows.line.column(choice, term.key)
            alike = column[made.rows.index[choice]] == column[other.rows.index[choice]]
            assert (made[name][alike] == other[name][alike]).all(), (name, choice)


def test_every_choice_in_depends_can_change_the_figure() -> None:
    # Folded, the seat closes up by as much as it is wide: the width falls out of the sum.
    touched: dict[str, set[str]] = {figure.name: set() for figure in LIMITED}
    for seed in range(6):
        made = some(seed, any_body=seed % 2 == 1)
        others = Others(made, seed)
        for name in CHOICES:
            changed = others.of([name])
            for figure in LIMITED:
                if not same(made, changed, figure.name):
                    touched[figure.name].add(name)
    for figure in LIMITED:
        if figure.depends and figure.name != "folded_width_mm":
            assert touched[figure.name] == set(figure.depends), figure.name
        assert touched[figure.name] <= figure.touched_by, figure.name


@pytest.mark.parametrize("figure", EXACT, ids=lambda figure: figure.name)
def test_an_exact_figure_is_settled_by_the_choice_that_is_named(figure: Figure) -> None:
    rng = np.random.default_rng(11)
    for _ in range(3):
        occupant = seated(anybody(rng))
        index = random_index(some(0).rows.line, occupant, rng, 500)
        rows = Rows(some(0).rows.line, {})
        early = None
        for step in STEPS:
            for name in step.choices:
                rows.index[name] = index[name]
            rows.load(step.follow(rows, occupant))
            if figure.after in step.choices:
                assert figure.exact is not None
                early = np.array(figure.exact(rows, occupant))
        assert early is not None
        assert figure.exact is not None
        np.testing.assert_array_equal(early, figure.exact(rows, occupant))


def test_a_figure_of_masses_does_not_depend_on_the_order_of_the_parts() -> None:
    rng = np.random.default_rng(12)
    for seed in range(10):
        made = some(seed, any_body=True)
        points = [point for step in STEPS for point in step.follow(made.rows, made.occupant)]
        shuffled = Rows(made.rows.line, made.rows.index, dict(made.rows.columns))
        for name in list(shuffled.columns):
            if name.startswith(("frame_mass", "wheel_mass")):
                del shuffled.columns[name]
        shuffled.load([points[at] for at in rng.permutation(len(points))])
        box = mass_box(shuffled)
        for figure in FIGURES.values():
            if figure.weighed is not None:
                again = np.broadcast_to(figure.weighed(shuffled, box).low, 40)
                wanted = made[figure.name]
                assert again == pytest.approx(wanted, rel=1e-9, abs=1e-9, nan_ok=True), figure.name
