"""Centre of mass from scales: cases worked out by hand in closed form.

Wheelbase 400 mm, axles 305 and 75 mm high, 90 kg, 27.0 kg on the casters level, 15.048 kg with
them raised by 62 mm: the centre of mass is 120.0 mm ahead of the rear axle and 620.0 mm high.
"""

from __future__ import annotations

from math import asin, cos, sin, tan

import numpy as np
import pytest

from chairwright.scales.formulas import ahead, height, raised, raised_share
from chairwright.scales.model import Session, Weighing
from chairwright.scales.propagate import measured

LENGTH, REAR, CASTER, BLOCK, MASS = 400.0, 305.0, 75.0, 62.0, 90.0


def session(
    casters: float = 27.0, up: float = 15.048, total: float = MASS, step: float = 0.1
) -> Session:
    loads = {"rear": total - casters, "casters": casters}
    weighing = Weighing(loads, {"casters": up}, BLOCK)
    return Session(LENGTH, REAR, CASTER, weighing, resolution_kg=step, tape_mm=0.0)


def short_form(length: float, casters: float, up: float, total: float, block: float) -> float:
    """The common short formula: (L Fc / W - L F1 / W) / tan(asin(H / L))."""
    return (length * casters / total - length * up / total) / tan(asin(block / length))


def test_the_reference_case() -> None:
    found = measured(session()).values
    assert found["com_x_mm"] == pytest.approx(120.0, abs=1e-9)
    # 0.1: the load is printed to 0.001 kg, which is 0.03 mm.
    assert found["com_z_mm"] == pytest.approx(620.0, abs=0.1)


def test_the_chair_on_its_block() -> None:
    at = raised(LENGTH, REAR, CASTER, BLOCK)
    assert np.degrees(np.arctan2(at.sin, at.cos)) == pytest.approx(8.547, abs=0.0005)
    assert at.wheelbase_mm == pytest.approx(429.74, abs=0.005)
    assert MASS * raised_share(120.0, 620.0, REAR, at) == pytest.approx(15.048, abs=0.0005)


@pytest.mark.parametrize(
    ("name", "angle"),
    [
        ("tip_rear_locked_deg", 10.95),
        ("tip_rear_free_deg", 20.85),
        ("tip_forward_deg", 24.30),
        ("tip_forward_caster_axle_deg", 27.19),
    ],
)
def test_the_angles_that_follow(name: str, angle: float) -> None:
    # 0.006: half a unit of the last printed digit, and the load's 0.001 kg.
    assert measured(session()).values[name] == pytest.approx(angle, abs=0.006)


def test_scales_that_read_to_100_g_move_the_height_by_at_most_1_6_mm() -> None:
    rounded = measured(session(up=15.0)).values["com_z_mm"]
    assert 0.5 < abs(rounded - 620.0) <= 1.6
    # Half a step on the raised casters: L1 / (W sin phi) times 0.05 kg = 32.13 x 0.05.
    slope = measured(session()).slopes["com_z_mm"]["occupied.raised.casters"]
    assert slope * 0.05 == pytest.approx(-1.6, abs=0.05)


def test_the_shift_by_rounding_is_what_the_slope_says() -> None:
    true, rounded = measured(session()), measured(session(up=15.0))
    slope = true.slopes["com_z_mm"]["occupied.raised.casters"]
    shift = rounded.values["com_z_mm"] - true.values["com_z_mm"]
    assert shift == pytest.approx(slope * (15.0 - 15.048), rel=1e-9)


def test_the_short_formula_is_no_height_above_the_floor() -> None:
    short = short_form(LENGTH, 27.0, 15.048, MASS, BLOCK)
    assert short == pytest.approx(339.0, abs=1.0)
    # Nor is it the height above the axle line, 315 mm, with wheels of different radius.
    own = measured(session()).values["com_z_mm"]
    assert abs(short - own) > 250.0
    assert abs(short + REAR - own) > 20.0


def test_with_equal_wheels_the_short_formula_is_the_height_above_the_axle_line() -> None:
    at = raised(400.0, 100.0, 100.0, BLOCK)
    up = MASS * raised_share(120.0, 620.0, 100.0, at)
    assert short_form(400.0, 27.0, up, MASS, BLOCK) == pytest.approx(520.0, abs=0.1)
    own = height(ahead(400.0, 27.0, MASS), up / MASS, 100.0, at)
    assert own == pytest.approx(620.0, abs=1e-9)


def test_there_and_back_for_any_chair() -> None:
    rng = np.random.default_rng(6)
    length, rear, caster = (rng.uniform(*ends, 500) for ends in ((300, 550), (150, 345), (45, 345)))
    x, h, block = (rng.uniform(*ends, 500) for ends in ((20, 280), (350, 900), (20, 120)))
    at = raised(length, rear, caster, block)
    share = raised_share(x, h, rear, at)
    assert height(x, share, rear, at) == pytest.approx(h, abs=1e-9)


def test_moments_about_the_rear_contact_by_turning_the_chair() -> None:
    """The centre of mass turned about the axle as a point, without the formula for the angle."""
    low, high = 0.0, 0.5
    for _ in range(80):
        turn = (low + high) / 2
        lifted = REAR + LENGTH * sin(turn) + (CASTER - REAR) * cos(turn)
        low, high = (turn, high) if lifted < CASTER + BLOCK else (low, turn)
    base = LENGTH * cos(turn) - (CASTER - REAR) * sin(turn)
    arm = 120.0 * cos(turn) - (620.0 - REAR) * sin(turn)
    assert MASS * arm / base == pytest.approx(15.048, abs=0.0005)


def test_the_occupant_is_the_difference_of_two_weighings() -> None:
    """Chair 15 kg at (100, 0, 350), occupant 75 kg at (124, 0, 674): 90 kg at (120, 0, 620)."""
    at = raised(LENGTH, REAR, CASTER, BLOCK)
    empty = Weighing(
        {"rear": 15.0 * 0.75, "casters": 15.0 * 0.25},
        {"casters": 15.0 * float(raised_share(100.0, 350.0, REAR, at))},
        BLOCK,
    )
    up = MASS * float(raised_share(120.0, 620.0, REAR, at))
    occupied = Weighing({"rear": 63.0, "casters": 27.0}, {"casters": up}, BLOCK)
    both = Session(LENGTH, REAR, CASTER, occupied, 0.1, 1.0, empty=empty)
    found = measured(both).values
    assert found["occupant_mass_kg"] == pytest.approx(75.0, abs=1e-9)
    assert found["occupant_x_mm"] == pytest.approx(124.0, abs=1e-9)
    assert found["occupant_z_mm"] == pytest.approx(674.0, abs=1e-9)
