"""Uncertainty against the worked examples of the guides that define it.

JCGM 100:2008 (GUM), 4.3.7 and 4.3.8; JCGM 101:2008 (Supplement 1), 9.2 and 9.4. Numbers from
memory, each checked against its own formula as given there.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from chairwright.mass_points import FloatArray
from chairwright.tolerance.draws import DRAWS, drawn_steps
from chairwright.tolerance.model import Input, Shape
from chairwright.tolerance.spread import Spread, spread_of

MONTE_CARLO = 4.0 / np.sqrt(2.0 * DRAWS)
"""Four standard errors of a standard deviation from normal draws, as a share."""


def one(half: float, shape: Shape) -> Input:
    return Input("one", "one", "measured", half, "", "", shape=shape)


def of(formula: Callable[[FloatArray], FloatArray], inputs: list[Input]) -> Spread:
    units = np.array([each.standard for each in inputs])
    eye = np.eye(len(inputs)) * units
    start = float(formula(np.zeros((1, len(inputs))))[0])
    up, down = formula(eye) - start, formula(-eye) - start

    def steps(count: int) -> FloatArray:
        every = drawn_steps(inputs)
        return every[:count] if count else every

    return spread_of(start, up, down, lambda count: formula(steps(count) * units), steps)


def test_limits_become_a_standard_uncertainty() -> None:
    # GUM 4.3.7, example 1: copper, error not above 0.40e-6 per deg: u = 0.23e-6
    assert one(0.40e-6, "limits").standard == pytest.approx(0.23e-6, abs=0.005e-6)
    # GUM 4.3.8: from 16.40e-6 to 16.92e-6: u = 0.15e-6
    assert one((16.92e-6 - 16.40e-6) / 2.0, "limits").standard == pytest.approx(
        0.15e-6, abs=0.005e-6
    )


def test_a_half_width_of_two_is_two_standard_uncertainties() -> None:
    assert one(10.0, "normal").standard == 5.0


@pytest.mark.parametrize("shape", ["normal", "limits"])
def test_sum_of_four(shape: Shape) -> None:
    """JCGM 101, 9.2.2 and 9.2.3: four inputs of standard uncertainty 1 give u = 2.00."""
    half = 2.0 if shape == "normal" else float(np.sqrt(3.0))
    found = of(lambda x: x.sum(axis=1), [one(half, shape)] * 4)
    assert found.linear
    assert found.half / 2.0 == pytest.approx(2.00, abs=0.005)


def test_sum_of_four_one_of_them_ten_times_as_wide() -> None:
    """JCGM 101, 9.2.4: u = 10.1."""
    edges = [float(np.sqrt(3.0))] * 3 + [10.0 * float(np.sqrt(3.0))]
    found = of(lambda x: x.sum(axis=1), [one(edge, "limits") for edge in edges])
    assert found.linear
    assert found.half / 2.0 == pytest.approx(10.1, abs=0.05)


def test_sum_of_squares_about_zero_needs_monte_carlo() -> None:
    """JCGM 101, 9.4.2, x1 = x2 = 0, u = 0.005: first order says 0, Monte Carlo 50e-6."""
    found = of(lambda x: np.square(x).sum(axis=1), [one(0.010, "normal")] * 2)
    assert not found.linear
    assert found.first_order == pytest.approx(0.0, abs=1e-12)
    # heavier than normal: the draws' own error of the spread is about 1.5 times a normal one's
    assert found.half / 2.0 == pytest.approx(50e-6, rel=2.0 * MONTE_CARLO)


def test_sum_of_squares_away_from_zero_is_a_straight_line() -> None:
    """JCGM 101, 9.4.2, x1 = 0.050: first order 500e-6 beside 502e-6 by Monte Carlo."""

    def formula(x: FloatArray) -> FloatArray:
        return np.asarray(np.square(x[:, 0] + 0.050) + np.square(x[:, 1]))

    found = of(formula, [one(0.010, "normal")] * 2)
    assert found.linear
    assert found.half / 2.0 == pytest.approx(500e-6, abs=0.5e-6)
