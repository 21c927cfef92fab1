"""What lifts the wheels while moving (rows DY): closed forms checked against a physics engine."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.chair.rows import Rows
from chairwright.figures import balance, starting
from chairwright.figures.mass import MassBox
from tests.oracles.rows_of import chair, masses

UP_1_TO_12 = balance.SLOPE_1_TO_12_DEG
LEVEL_CHAIR = chair(wheelbase=450, rear_radius=305)
BODY = masses(130, 545)


def start(slope_deg: float, rows: Rows = LEVEL_CHAIR, box: MassBox = BODY) -> float:
    """Acceleration that lifts the casters [m/s2]."""
    return float(starting.start_acceleration(slope_deg)(rows, box).low[0])


def brake(slope_deg: float) -> float:
    """Deceleration that lifts the rear wheels [m/s2]."""
    return float(starting.braking_deceleration(slope_deg)(LEVEL_CHAIR, BODY).low[0])


def test_dy_01_and_02_start_without_wheel_inertia() -> None:
    assert start(0.0) == pytest.approx(2.340, abs=0.0005)
    assert start(UP_1_TO_12) == pytest.approx(1.517, abs=0.0005)


def test_dy_03_start_with_both_wheels_inertia() -> None:
    rows = chair(wheelbase=450, rear_radius=305, spin_inertia=0.28)
    assert start(0.0, rows) == pytest.approx(2.297, abs=0.0005)


@pytest.mark.parametrize(("slope", "lifts"), [(0.0, 2.2637), (4.76, 1.4575)])
def test_dy_04_a_body_on_real_wheels(slope: float, lifts: float) -> None:
    # 89 kg in all; x, h of ST-14 as printed to 0.01 mm: 0.0002 of the value.
    rows = chair(
        wheelbase=450, rear_radius=305, spin_inertia=0.28, caster_radius=65, caster_spin=0.002
    )
    box = masses(127.75, 542.98, mass=89.0)
    assert start(slope, rows, box) == pytest.approx(lifts, rel=0.0002)


def test_dy_05_nothing_is_left_at_the_static_angle() -> None:
    assert start(float(balance.rear_locked(LEVEL_CHAIR, BODY).low[0])) == pytest.approx(0, abs=1e-9)


def test_dy_06_braking() -> None:
    assert brake(0.0) == pytest.approx(5.760, abs=0.0005)
    assert brake(UP_1_TO_12) == pytest.approx(4.925, abs=0.0005)


def test_dy_07_a_wheelie_balances_where_the_free_wheels_tip() -> None:
    free = float(balance.rear_free(LEVEL_CHAIR, masses(130, 560)).low[0])
    assert free == pytest.approx(27.013, abs=0.0005)
    assert np.tan(np.radians(free)) == pytest.approx(130 / 255, rel=1e-12)


def test_dy_08_a_bend() -> None:
    assert starting.bend_lift_mps(1500, 268, 545) == pytest.approx(2.690, abs=0.0005)
