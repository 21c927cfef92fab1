"""Rolling resistance and rim force (rows RR, CA-01): printed cases of the formulas."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.chair.pose import toe_out_deg
from chairwright.figures import rolling
from chairwright.figures.balance import GRAVITY_MPS2
from chairwright.figures.registry import FIGURES
from chairwright.figures.rolling import Coefficients
from tests.oracles.rows_of import chair, masses, one

WEIGHT = 981.0
EASY, HARD = one(0.010), one(0.020)


@pytest.mark.parametrize(("share", "push"), [(0.20, 11.772), (0.30, 12.753), (0.45, 14.2245)])
def test_rr_01_load_share(share: float, push: float) -> None:
    mass = one(WEIGHT / GRAVITY_MPS2)
    got = rolling.floor_push_n(mass, one(share), Coefficients(EASY, HARD))
    assert float(got[0]) == pytest.approx(push, abs=1e-6)


@pytest.mark.parametrize(("radius", "share"), [(62.5, 0.0160), (100.0, 0.0100)])
def test_rr_02_a_length_over_the_radius(radius: float, share: float) -> None:
    assert float(rolling.coefficient(one(1.0), one(radius))[0]) == share


@pytest.mark.parametrize("toe", [1.0, -1.0])
def test_rr_03_a_degree_of_toe(toe: float) -> None:
    assert float(rolling.toe_factor(one(toe))[0]) == 1.255


def test_rr_04_toe_of_chairs_in_use() -> None:
    factor = float(rolling.toe_factor(one(0.92))[0])
    assert factor == pytest.approx(1.2158, abs=0.00005)
    # 3.0 N more (Ott 2021b, read in the abstract only) then mean a base of 13.9 N.
    assert 3.0 / (factor - 1.0) == pytest.approx(13.9, abs=0.05)


def test_rr_06_coast_down() -> None:
    # Constant friction: what slows it, over g, is the coefficient.
    mu = 0.13 / GRAVITY_MPS2
    assert mu == pytest.approx(0.01325, abs=0.000005)
    push = rolling.floor_push_n(one(80.0), one(0.3), Coefficients(one(mu), one(mu)))
    assert float(push[0]) / 80.0 == pytest.approx(0.13, rel=1e-12)


# CA-01: 90 kg, 3.010 kg wheel effect (two wheels of 0.14 kg m2), mu .013, rim .265, wheel .305 m.
ROLLER = Coefficients(one(0.013), one(0.013))
SPIN, RADIUS, RIM = one(0.28), one(305.0), one(265.0)


@pytest.mark.parametrize(
    ("slope", "start", "ground", "hand", "room"),
    [
        (0.0, 0.0, 11.478, 6.605, 0.0005),
        (0.0, 0.5, 57.98, 33.37, 0.005),
        (np.degrees(np.arctan(1 / 20)), 0.0, 55.553, 31.97, 0.005),
        (np.degrees(np.arctan(1 / 12)), 0.0, 84.76, 48.78, 0.005),
    ],
)
def test_ca_01_ground_and_rim(
    slope: float, start: float, ground: float, hand: float, room: float
) -> None:
    steady = rolling.floor_push_n(one(90.0), one(0.3), ROLLER, slope_deg=slope)
    push = rolling.start_push_n(steady, one(90.0), SPIN, RADIUS, start)
    assert float(push[0]) == pytest.approx(ground, abs=room)
    assert float(rolling.per_hand_n(push, RADIUS, RIM)[0]) == pytest.approx(hand, abs=room)


def test_ca_01_wheel_effect() -> None:
    still = np.zeros(1)
    effect = rolling.start_push_n(still, still, SPIN, RADIUS, 1.0)
    assert float(effect[0]) == pytest.approx(3.010, abs=0.0005)


def test_one_hand_does_it_all_and_none_has_no_rim_force() -> None:
    assert rolling.per_hand_n(one(10), RADIUS, RIM, 1.0) == 2 * rolling.per_hand_n(
        one(10), RADIUS, RIM
    )
    assert np.isnan(rolling.per_hand_n(one(10), RADIUS, RIM, 0.0)).all()
    assert np.isnan(rolling.per_hand_n(one(10), RADIUS, one(0), 2.0)).all()


def test_carpet_adds_to_the_coefficient_of_the_whole_chair() -> None:
    # + 0.0118 (Hoffman 2003, read in the abstract only): 10.42 N for 90 kg.
    rows, box = chair(wheelbase=450, rear_radius=305), masses(130, 545)
    found = {
        name: float(FIGURES[name].weighed(rows, box).low[0])  # type: ignore[misc]
        for name in ("push_force_level_n", "push_force_carpet_n")
    }
    more = found["push_force_carpet_n"] - found["push_force_level_n"]
    assert more == pytest.approx(0.0118 * 90 * 9.81, rel=1e-9)


def test_the_figure_is_the_sum_over_the_wheels() -> None:
    # By hand: 90 kg, share 130 / 450, lengths 2.4 over 305 and 1.5 over 75.
    rows, box = chair(wheelbase=450, rear_radius=305), masses(130, 545)
    casters = 90 * 9.81 * 130 / 450
    by_hand = (90 * 9.81 - casters) * 2.4 / 305 + casters * 1.5 / 75
    got = rolling.keeps_rolling("hard")(rows, box).low[0]
    assert float(got) == pytest.approx(by_hand, rel=1e-12)


def test_toe_of_a_tilted_frame_is_paid_for() -> None:
    # WH-09: camber 15, frame back 5: 1.338 deg of toe, so x 1.4565 on the rear wheels.
    tilt = float(np.radians(5.0))
    level = rolling.coefficients(chair(wheelbase=450, rear_radius=305, camber=15.0))
    tilted = rolling.coefficients(chair(wheelbase=450, rear_radius=305, camber=15.0, pitch=tilt))
    assert float(toe_out_deg(one(15.0), one(tilt))[0]) == pytest.approx(1.338, abs=0.0005)
    assert float((tilted.rear / level.rear)[0]) == pytest.approx(1.4565, abs=0.0004)
    assert tilted.casters == level.casters


@pytest.mark.parametrize(("percent", "factor"), [(100, 1.0), (50, 1.122), (25, 1.241), (0, 3.0)])
def test_lost_pressure(percent: float, factor: float) -> None:
    # +12.2 and +24.1 percent (Sawatzky 2005, restated); flat about x 3 (Fuss and Chua, abstract).
    assert rolling.pressure_factor(percent) == factor
