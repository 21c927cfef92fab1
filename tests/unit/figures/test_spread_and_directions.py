"""Spread of the estimated centre of mass, and tipping angles by direction, against hand sums."""

from __future__ import annotations

from math import atan2, degrees

import numpy as np
import pytest

from chairwright.figures.directions import tip_angles
from chairwright.figures.spread import spreads_of
from tests.unit.chair.seated import Seated, seated


@pytest.fixture(scope="module")
def made() -> Seated:
    return seated()


def test_centre_of_mass_moves_by_the_occupants_share(made: Seated) -> None:
    spreads = spreads_of(made.rows, made.occupant)
    share = 80.0 / made.figures["total_mass_kg"]
    assert spreads["com_x_mm"] == pytest.approx(25.0 * share, abs=1e-9)
    assert spreads["com_z_mm"] == pytest.approx(30.0 * share, abs=1e-9)


def test_rear_spread_is_the_farther_corner_of_the_estimate(made: Seated) -> None:
    figures, share = made.figures, 80.0 / made.figures["total_mass_kg"]
    x, z = figures["com_x_mm"], figures["com_z_mm"]
    corners = [
        degrees(atan2(x + dx * share, z + dz * share)) for dx in (-25, 25) for dz in (-30, 30)
    ]
    farthest = max(abs(angle - degrees(atan2(x, z))) for angle in corners)
    spreads = spreads_of(made.rows, made.occupant)
    assert spreads["tip_rear_locked_deg"] == pytest.approx(farthest, abs=1e-9)


def test_free_wheels_move_with_the_frame_alone(made: Seated) -> None:
    """Of the frame without the rear wheels the occupant is a larger share."""
    figures = made.figures
    whole, wheels = figures["total_mass_kg"], float(made.rows["wheel_mass"][0])
    axle = float(made.rows["rear_height"][0])
    x = figures["com_x_mm"] * whole / (whole - wheels)
    up = (figures["com_z_mm"] - axle) * whole / (whole - wheels)
    assert degrees(atan2(x, up)) == pytest.approx(figures["tip_rear_free_deg"], abs=1e-9)
    share = 80.0 / (whole - wheels)
    corners = [
        degrees(atan2(x + dx * share, up + dz * share)) for dx in (-25, 25) for dz in (-30, 30)
    ]
    farthest = max(abs(angle - figures["tip_rear_free_deg"]) for angle in corners)
    spreads = spreads_of(made.rows, made.occupant)
    assert spreads["tip_rear_free_deg"] == pytest.approx(farthest, abs=1e-9)


def test_geometry_masses_and_the_direction_have_no_spread(made: Seated) -> None:
    spreads = spreads_of(made.rows, made.occupant)
    assert not {"seat_to_floor_rear_mm", "overall_width_mm", "total_mass_kg"} & set(spreads)
    assert "tip_least_direction_deg" not in spreads


def test_directions_go_round_once_and_meet_the_figures(made: Seated) -> None:
    directions, angles = tip_angles(made.rows)
    assert list(directions) == list(range(0, 360, 5))
    at = dict(zip(directions.astype(int), angles, strict=True))
    for direction, name in ((0, "tip_forward_deg"), (90, "tip_left_deg"),
                            (180, "tip_rear_locked_deg"), (270, "tip_right_deg")):  # fmt: skip
        assert at[direction] == pytest.approx(made.figures[name], abs=1e-9)
    assert np.min(angles) >= made.figures["tip_least_deg"] - 1e-9
