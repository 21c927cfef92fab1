"""Ends of what corners and doors need: they hold the need, and say all that a target asks.

Evidence: the needs themselves, worked out without rounding, on random chairs.
"""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.chair.steps import STEPS
from chairwright.figures.evaluate import figures_of
from chairwright.figures.outline import corners_of
from chairwright.search.bands import Bands
from chairwright.search.outline_ends import outline_ends
from chairwright.search.prepared import Prepared
from chairwright.search.space import Space
from chairwright.targets.target import Target
from chairwright.targets.verdict import broken, penalty
from tests.laws.test_bands import grown
from tests.oracles.draws import random_setups
from tests.oracles.lines import everyday
from tests.oracles.people import anybody, seated
from tests.oracles.rules import allowed_positions

NAMES = ("corner_free_mm@950", "corner_arc_mm@950", "door_turn_mm@800")
LAST = len(STEPS) - 1


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("seed", range(6))
def test_the_need_lies_between_the_ends(name: str, seed: int) -> None:
    rng = np.random.default_rng(seed)
    occupant = seated(anybody(rng))
    rows, _ = random_setups(everyday(), occupant, rng, 300)
    need = figures_of(rows, occupant, [name])[name]
    ends = outline_ends(name)
    assert ends is not None
    bound = float(np.median(need))
    band = ends.band(corners_of(rows), [bound])
    assert (band.low <= need).all()
    assert (need <= band.high).all()
    sure = (band.low > bound) | (band.high <= bound)
    assert sure.any()
    again = ends.band(corners_of(rows), [bound])
    assert (again.low == band.low).all()


@pytest.mark.parametrize("name", NAMES)
@pytest.mark.parametrize("must", [True, False])
def test_finished_set_ups_are_judged_as_by_the_need_itself(name: str, must: bool) -> None:
    rng = np.random.default_rng(9)
    occupant = seated(anybody(rng))
    rows, _ = random_setups(everyday(), occupant, rng, 300)
    need = figures_of(rows, occupant, [name])[name]
    target = Target(name, None, float(np.median(need)), must, 1.0, "", "")
    space = Space(everyday(), occupant, allowed_positions(everyday(), occupant))
    bands = Bands(Prepared(space), [name], [target])
    found = bands.of(grown(rows, occupant, LAST), LAST)[name]
    if must:
        assert (broken(target, found.low) == broken(target, need)).all()
    else:
        assert (penalty(target, found.low, 50.0) == penalty(target, need, 50.0)).all()
    assert found.low is found.high
    assert (found.low < need).any()


def test_a_figure_of_its_own_is_no_need_of_an_outline() -> None:
    assert outline_ends("seat_angle_deg") is None
    assert outline_ends("push_force_n@up_3_hard") is None
