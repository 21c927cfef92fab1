"""Pushing, kerbs and lifting by a carer (rows CA): printed cases and published limits."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures import carer, rolling, steps_up
from chairwright.figures.carer import Who, Zone
from chairwright.figures.rolling import Coefficients
from tests.oracles.rows_of import chair, masses, one

UP_1_TO_12 = float(np.degrees(np.arctan(1 / 12)))
KGF = 9.81


def push(mass: float, coefficient: float, slope_deg: float) -> float:
    """Push along the floor [N] of a chair whose wheels roll alike."""
    wheels = Coefficients(one(coefficient), one(coefficient))
    return float(rolling.floor_push_n(one(mass), one(0.3), wheels, slope_deg=slope_deg)[0])


def test_ca_02_a_load_of_400_kg() -> None:
    assert push(400, 0.0, UP_1_TO_12) / KGF == pytest.approx(33.218, abs=0.0005)
    assert push(400, 0.02, 0.0) / KGF == pytest.approx(8.0, rel=1e-12)


def test_ca_03_above_the_limits_of_both() -> None:
    needed = push(110, 0.015, UP_1_TO_12)
    assert needed == pytest.approx(105.74, abs=0.005)
    assert all(needed > limit.keep_n for limit in carer.push_limits().values())


@pytest.mark.parametrize(
    ("limit", "slope", "one_in", "room"), [(70, 3.688, 15.5, 0.05), (100, 5.643, 10.1, 0.05)]
)
def test_ca_04_steepest_slope(limit: float, slope: float, one_in: float, room: float) -> None:
    found = carer.steepest_slope_deg(limit, 90, 0.015)
    assert found == pytest.approx(slope, abs=0.0005)
    assert 1 / np.tan(np.radians(found)) == pytest.approx(one_in, abs=room)
    assert push(90, 0.015, found) == pytest.approx(limit, rel=1e-12)


def test_a_push_that_is_too_weak_or_stronger_than_the_weight() -> None:
    assert np.isnan(carer.steepest_slope_deg(1.0, 90, 0.015))
    assert carer.steepest_slope_deg(1000.0, 90, 0.015) == 90.0


@pytest.mark.parametrize(("who", "start", "keep"), [("men", 200, 100), ("women", 150, 70)])
def test_ca_05_screening_limits(who: str, start: float, keep: float) -> None:
    limits = carer.push_limits()[who]
    assert (limits.start_n, limits.keep_n) == (start, keep)


@pytest.mark.parametrize(
    ("radius", "step", "share", "room"),
    [
        (305, 100, 1.10162, 5e-6),
        (62.5, 20, 1.07825, 5e-6),
        (100, 20, 0.7500, 5e-5),
        (305, 20, 0.38115, 5e-6),
    ],
)
def test_ca_06_step(radius: float, step: float, share: float, room: float) -> None:
    assert float(steps_up.step_push_over_load(one(radius), step)[0]) == pytest.approx(
        share, abs=room
    )


@pytest.mark.parametrize("step", [75.0, 80.0, 400.0])
def test_ca_07_a_step_as_high_as_the_axle_is_impossible(step: float) -> None:
    assert np.isnan(steps_up.step_push_over_load(one(75.0), step)).all()
    rows = chair(wheelbase=450, rear_radius=305, caster_radius=75)
    assert np.isnan(steps_up.caster_step(step)(rows, masses(112.5, 545)).low).all()


@pytest.mark.parametrize(
    ("radius", "step", "force"),
    [(75, 20, 204.6), (62.5, 20, 238.0), (100, 20, 165.5), (75, 40, 418.3)],
)
def test_ca_08_push_for_a_quarter_of_90_kg(radius: float, step: float, force: float) -> None:
    rows = chair(wheelbase=450, rear_radius=305, caster_radius=radius)
    got = steps_up.caster_step(step)(rows, masses(0.25 * 450, 545)).low
    assert float(got[0]) == pytest.approx(force, abs=0.05)


def test_ca_09_the_wrong_public_formula_is_not_used() -> None:
    wrong = 100 / np.sqrt(2 * 305 * 100 - 100**2)
    assert wrong == pytest.approx(0.443, abs=0.0005)
    assert float(steps_up.step_push_over_load(one(305), 100)[0]) > 2 * wrong


@pytest.mark.parametrize(("pitch", "force"), [(0, 428.5), (5, 355.0), (10, 280.3)])
def test_ca_10_tip_lever(pitch: float, force: float) -> None:
    got = steps_up.lever_force_n(one(84), one(130), one(560 - 305), 250, pitch)
    assert float(got[0]) == pytest.approx(force, abs=0.05)


def test_ca_11_a_longer_arm() -> None:
    got = steps_up.lever_force_n(one(84), one(130), one(560 - 305), 300)
    assert float(got[0]) == pytest.approx(357.1, abs=0.05)


def test_ca_10_the_figure_leaves_the_rear_wheels_out() -> None:
    rows = chair(wheelbase=450, rear_radius=305, wheel_mass=4.0)
    box = masses(124, 545, mass=88.0, frame=(130.0, 560.0))
    assert float(steps_up.tip_lever(rows, box).low[0]) == pytest.approx(428.5, abs=0.05)


def test_ca_12_pitch_for_a_kerb() -> None:
    assert float(steps_up.kerb_pitch_deg(one(450), 100)[0]) == pytest.approx(12.84, abs=0.005)
    assert np.isnan(steps_up.kerb_pitch_deg(one(450), 451)).all()


def test_ca_13_lifting_equation() -> None:
    limit = carer.recommended_lift_kg(40, 70, 50, coupling=0.95)
    assert limit == pytest.approx(12.24, abs=0.005)
    assert carer.recommended_lift_kg(20, 75, 10) == 23.0


def test_ca_14_push_handles() -> None:
    assert carer.best_handle_height_mm(1000.0) == pytest.approx(865.0, abs=0.5)
    # 1.191 m were best for the women tested: a shoulder height of 1.377 m (derived).
    assert carer.best_handle_height_mm(1377.0) == pytest.approx(1191.0, abs=0.5)


@pytest.mark.parametrize(
    ("who", "zone", "close", "out"),
    [
        # HSE lifting filter (from memory, unverified).
        ("men", "shoulder to elbow", 20, 10),
        ("men", "elbow to knuckle", 25, 15),
        ("men", "knuckle to shin", 20, 10),
        ("men", "below shin", 10, 5),
        ("women", "shoulder to elbow", 13, 7),
        ("women", "elbow to knuckle", 16, 10),
        ("women", "knuckle to shin", 13, 7),
        ("women", "below shin", 7, 3),
    ],
)
def test_lifting_filter(who: Who, zone: Zone, close: float, out: float) -> None:
    assert carer.lifting_limit_kg(who, zone) == close
    assert carer.lifting_limit_kg(who, zone, arms_out=True) == out
    # Reduce 30 percent at 1-2 per minute; twist 45 deg -10 percent, 90 deg -20 percent (HSE).
    assert carer.lifting_limit_kg(who, zone, often=True) == pytest.approx(0.7 * close)
    assert carer.lifting_limit_kg(who, zone, twist_deg=45) == pytest.approx(0.9 * close)
    assert carer.lifting_limit_kg(who, zone, twist_deg=90) == pytest.approx(0.8 * close)
