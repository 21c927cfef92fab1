"""Ends of what open choices add to the masses, with an occupant whom scales found elsewhere."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from chairwright.chair.steps import STEPS
from chairwright.chair.weighed import CentreWeighed
from chairwright.search.open_mass import OpenMasses
from chairwright.search.space import Space
from tests.laws.test_bands import check_ends, grown
from tests.oracles.draws import random_setups
from tests.oracles.lines import everyday
from tests.oracles.people import anybody, client, seated
from tests.oracles.rules import allowed_positions

NO_DOUBT = tuple((0.0,) * 4 for _ in range(4))


@pytest.mark.parametrize("shift", [(-600.0, 90.0, 500.0), (400.0, -90.0, -600.0)])
def test_legs_that_push_move_with_the_centre(shift: tuple[float, float, float]) -> None:
    """Shifts far beyond any client's, so that no slack of the ends covers a mistake."""
    plain = seated(client("female", "1650 mm", "70 kg", propulsion="hand_and_foot_left"))
    occupant = replace(plain, weighed=CentreWeighed(70.0, shift, (0.0, 0.0, 0.0), NO_DOUBT))
    finished, _ = random_setups(everyday(), occupant, np.random.default_rng(1), 60)
    masses = OpenMasses(Space(everyday(), occupant, allowed_positions(everyday(), occupant)))
    for level in range(len(STEPS) - 1):
        rows = grown(finished, occupant, level)
        still = masses.after(rows, level)
        if still is None:
            assert level > 10
            break
        for axis, band, origin in zip("xyz", (still.x, still.y, still.z), still.about, strict=True):
            mass = finished["frame_mass"] - rows["frame_mass"]
            moment = finished[f"frame_mass_{axis}"] - rows[f"frame_mass_{axis}"]
            added = moment - origin * mass
            assert (added >= band.low - 1e-3).all(), (axis, level)
            assert (added <= band.high + 1e-3).all(), (axis, level)


@pytest.mark.parametrize("seed", range(4))
def test_ends_hold_for_anybody_on_scales(seed: int) -> None:
    rng = np.random.default_rng(300 + seed)
    plain = seated(anybody(rng))
    shift = tuple(float(each) for each in rng.uniform(-60.0, 60.0, 3))
    centre = CentreWeighed(plain.body.mass_kg, shift, (0.0, 0.0, 0.0), NO_DOUBT)  # type: ignore[arg-type]
    occupant = replace(plain, weighed=centre)
    finished, _ = random_setups(everyday(), occupant, rng, 100)
    assert check_ends(everyday(), occupant, finished) > 10_000
