"""Low and high ends: exact over a box, one array when nothing is open."""

from __future__ import annotations

import numpy as np

from chairwright.figures.band import Band, corner_band, known, merged


def test_a_known_band_stays_known_through_a_formula() -> None:
    band = corner_band(lambda a, b: a - b, known(np.array([3.0])), known(np.array([1.0])))
    assert band.low is band.high
    assert band.low[0] == 2.0


def test_ends_of_a_difference() -> None:
    first = Band(np.array([1.0, -2.0]), np.array([4.0, -1.0]))
    second = Band(np.array([0.5, 5.0]), np.array([1.5, 7.0]))
    band = corner_band(lambda a, b: a - b, first, second)
    assert band.low.tolist() == [-0.5, -9.0]
    assert band.high.tolist() == [3.5, -6.0]


def test_ends_hold_for_a_product_whose_sense_turns() -> None:
    rng = np.random.default_rng(0)
    ends = np.sort(rng.uniform(-3, 3, (2, 2, 200)), axis=1)
    first, second = (Band(*pair) for pair in ends)
    band = corner_band(lambda a, b: a * b, first, second)
    for _ in range(50):
        share = rng.random((2, 200))
        inside = [
            each.low + part * (each.high - each.low)
            for each, part in zip((first, second), share, strict=True)
        ]
        value = inside[0] * inside[1]
        assert (value >= band.low - 1e-12).all()
        assert (value <= band.high + 1e-12).all()
    corners = [a * b for a in first for b in second]
    assert (band.low == np.minimum.reduce(corners)).all()


def test_a_value_that_is_missing_at_one_corner_is_passed_over() -> None:
    band = Band(np.array([-1.0]), np.array([4.0]))
    with np.errstate(invalid="ignore"):
        root = corner_band(np.sqrt, band)
    assert (root.low[0], root.high[0]) == (2.0, 2.0)


def test_merged_knows_equal_ends() -> None:
    equal = merged(Band(np.array([1.0, 2.0]), np.array([1.0, 2.0])))
    assert equal.low is equal.high
    apart = merged(Band(np.array([1.0, 2.0]), np.array([1.0, 3.0])))
    assert apart.low is not apart.high
