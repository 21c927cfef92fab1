"""Turning on the spot and cross slopes (rows YW): printed cases of the formulas."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures import turning_push
from chairwright.figures.rolling import Coefficients
from chairwright.figures.turning_push import Patch
from tests.oracles.rows_of import chair, masses, one


def moment(degrees: float, x_mm: float = 130.0, mass: float = 90.0) -> float:
    """Downhill turning moment [N m]."""
    return float(turning_push.downhill_moment_nm(one(mass), one(x_mm), degrees)[0])


def test_yw_01_inertia_about_the_middle_of_the_axle() -> None:
    inertia = turning_push.differential_inertia_kgm2(
        6.0,
        84.0,
        130.0,
        wheel_kg=2.0,
        wheel_spin_kgm2=0.14,
        wheel_upright_kgm2=0.07,
        track_mm=560.0,
        radius_mm=305.0,
    )
    assert inertia == pytest.approx(8.1092, abs=1e-4)


def test_yw_03_rolling_against_a_pivot_turn() -> None:
    torque = turning_push.pivot_torque_nm(
        one(882.9 / 9.81),
        one(0.29),
        Coefficients(one(0.010), one(0.020)),
        wheelbase_mm=one(450),
        track_mm=one(560),
        caster_track_mm=one(440),
    )
    assert float(torque[0]) == pytest.approx(4.320, abs=0.0005)


@pytest.mark.parametrize(
    ("patch", "size", "torque"),
    [("uniform", 10.0, 1.600), ("hertz", 10.0, 1.414), ("line", 50.0, 3.000)],
)
def test_yw_04_scrub(patch: Patch, size: float, torque: float) -> None:
    got = turning_push.scrub_torque_nm(0.8, 300.0, size, patch)
    assert float(got) == pytest.approx(torque, abs=0.0005)


def test_yw_05_moment_on_cross_slopes() -> None:
    assert moment(1.0) == pytest.approx(2.003, abs=0.0005)
    assert moment(3.0) == pytest.approx(6.007, abs=0.0005)
    assert moment(float(np.degrees(np.arctan(0.02)))) == pytest.approx(2.295, abs=0.0005)


def test_yw_06_none_over_the_axle_and_uphill_behind_it() -> None:
    assert moment(3.0, 0.0) == 0.0
    assert moment(3.0, -130.0) == -moment(3.0) < 0


@pytest.mark.parametrize(("per_degree", "x_mm"), [(0.87, 56.0), (0.25, 16.0), (1.80, 117.0)])
def test_yw_07_measured_moments_are_of_such_chairs(per_degree: float, x_mm: float) -> None:
    # 0.87, 0.25 to 1.80 N m per degree: Richter 2007 (read in the abstract only).
    assert per_degree / moment(1.0, 1000.0) * 1000 == pytest.approx(x_mm, abs=0.5)
    assert moment(1.0, 1000.0) == pytest.approx(15.409, abs=0.0005)


def test_yw_08_difference_at_the_rims() -> None:
    rows = chair(wheelbase=450, rear_radius=305, track=560, rim_radius=265, hands=2)
    force = turning_push.cross_push(3.0)(rows, masses(130, 545)).low
    assert float(force[0]) == pytest.approx(12.35, abs=0.005)
    alone = chair(wheelbase=450, rear_radius=305, track=560, rim_radius=265, hands=1)
    assert turning_push.cross_push(3.0)(alone, masses(130, 545)).low == 2 * force


def test_yw_09_holding_torque_at_each_wheel() -> None:
    # The body alone lies ahead of the axle; a rim as large as the wheel makes a force a torque.
    held = turning_push.downhill_moment_nm(one(84.0), one(130.0), 3.0)
    force = turning_push.rim_force_for_torque_n(held, one(560.0), one(305.0), one(305.0))
    assert float(force[0]) * 0.305 == pytest.approx(3.05354, abs=1e-4)
