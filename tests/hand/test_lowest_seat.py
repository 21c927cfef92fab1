"""How low the shipped line's seat goes for pushing with the feet.

Common practice, no source: with 20 in wheels and 5 in casters the seat rail of such a folding
chair can be set as low as about 12 1/4 in (311 mm), the caster stem square to the floor.
"""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures.evaluate import figures_of
from chairwright.search.best import find_best
from chairwright.search.space import open_space
from chairwright.targets.target import Target
from tests.laws.setups import make
from tests.oracles.lines import everyday
from tests.oracles.people import client, seated

INCH = 25.4
ABOUT = 12.25 * INCH
HALF_AN_INCH = 0.5 * INCH


def test_lowest_seat_rail_with_20_in_wheels_and_5_in_casters() -> None:
    occupant = seated(client(propulsion="feet"))
    space = open_space(everyday(), occupant, {"rear_wheel": ["W20"], "caster": ["C5"]})
    square = Target("caster_stem_angle_deg", -1.0, 1.0, True, 1.0, "test", "stem square")
    level = Target("seat_angle_deg", 0.0, 3.0, True, 1.0, "test", "never nose-down")
    low = Target("seat_to_floor_front_mm", None, 0.0, False, 1.0, "test", "as low as it goes")
    found = find_best(space, [square, level, low])
    assert found is not None
    lowest = make(everyday(), occupant, {n: np.array([at]) for n, at in found.index.items()})
    assert lowest.stands.all()
    for end in ("seat_to_floor_front_mm", "seat_to_floor_rear_mm"):
        assert lowest[end][0] == pytest.approx(ABOUT, abs=HALF_AN_INCH)
    names = ["seat_to_floor_front_mm"]
    assert found.cost == pytest.approx(figures_of(lowest.rows, occupant, names)[names[0]][0] / 10)
