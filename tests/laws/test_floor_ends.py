"""A place that may lie anywhere in a box of the frame: its ends on the floor hold, and are met."""

from __future__ import annotations

from itertools import product

import numpy as np

from chairwright.figures.band import Band, known
from chairwright.figures.floor_ends import floor_along, floor_height
from tests.oracles.draws import random_setups
from tests.oracles.lines import everyday
from tests.oracles.people import anybody, seated

TINY = 1e-9


def test_ends_hold_for_every_place_of_the_box_and_are_met_at_its_corners() -> None:
    """The turn is written out here once more: ahead and up of a point turned about the axle."""
    rng = np.random.default_rng(20261126)
    rows, _ = random_setups(everyday(), seated(anybody(rng)), rng, 400)
    count = len(rows)
    low_x, low_z = rng.uniform(-300, 600, count), rng.uniform(-200, 700, count)
    box = (
        Band(low_x, low_x + rng.uniform(0, 200, count)),
        Band(low_z, low_z + rng.uniform(0, 200, count)),
    )
    pitch = np.arctan2(rows["sin_pitch"], rows["cos_pitch"])

    def placed(x_mm: np.ndarray, z_mm: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        off = (x_mm - rows["axle_x"]) + 1j * (z_mm - rows["axle_z"])
        turned = off * np.exp(1j * pitch)
        return turned.real, turned.imag + rows["rear_height"]

    ends = floor_along(rows, *box), floor_height(rows, *box)
    for _ in range(50):
        at = [each.low + rng.uniform(0, 1, count) * (each.high - each.low) for each in box]
        for band, value in zip(ends, placed(*at), strict=True):
            assert (band.low <= value + TINY).all()
            assert (value <= band.high + TINY).all()
    corners = [placed(*corner) for corner in product(*box)]
    for axis, band in enumerate(ends):
        values = np.stack([corner[axis] for corner in corners])
        assert np.allclose(band.low, values.min(axis=0), rtol=0, atol=TINY)
        assert np.allclose(band.high, values.max(axis=0), rtol=0, atol=TINY)


def test_a_known_place_has_one_end() -> None:
    rng = np.random.default_rng(7)
    rows, _ = random_setups(everyday(), seated(anybody(rng)), rng, 5)
    x_mm, z_mm = known(np.full(len(rows), 100.0)), known(np.full(len(rows), 50.0))
    for band in (floor_along(rows, x_mm, z_mm), floor_height(rows, x_mm, z_mm)):
        assert band.low is band.high
