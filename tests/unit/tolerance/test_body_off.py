"""An occupant whose centre of mass is elsewhere than estimated, against hand sums.

Two standard uncertainties of the body model are 25 mm fore and aft and 30 mm in height, along
the axes of the frame, which the pitch turns nose-up.
"""

from __future__ import annotations

from itertools import product
from math import atan2, cos, degrees, sin

import numpy as np
import pytest

from chairwright.mass_points import FloatArray
from chairwright.tolerance.chain import chain_of
from chairwright.tolerance.of_setup import Tolerance, tolerance_of
from tests.unit.chair.seated import Seated, seated

CORNERS = tuple(product((-1.0, 1.0), repeat=2))
GEOMETRY = ("seat_to_floor_rear_mm", "overall_width_mm", "total_mass_kg")


@pytest.fixture(scope="module")
def made() -> Seated:
    return seated()


@pytest.fixture(scope="module")
def found(made: Seated) -> Tolerance:
    index = {name: int(at[0]) for name, at in made.rows.index.items()}
    names = ("com_x_mm", "com_z_mm", "tip_least_direction_deg", *GEOMETRY)
    return tolerance_of(made.line, made.occupant, index, names)


def step(found: Tolerance, figure: str, key: str) -> float:
    """What one standard uncertainty more of an input adds."""
    at = [each.key for each in found.inputs].index(key)
    return float(found.figures[figure].up[at])


def at_the_corners(made: Seated, figure: str) -> FloatArray:
    """The figure with the centre of mass at each corner of the estimate, nothing else off."""
    chain = chain_of(made.line, made.occupant)
    keys = [each.key for each in chain.inputs]
    steps = np.zeros((len(CORNERS), len(keys)))
    for row, (ahead, up) in enumerate(CORNERS):
        steps[row, keys.index("body.ahead")] = 2.0 * ahead
        steps[row, keys.index("body.up")] = 2.0 * up
    index = {name: np.repeat(at, len(CORNERS)) for name, at in made.rows.index.items()}
    return chain.figures(index, steps, [figure])[figure]


def leans_deg(made: Seated, x: float, z: float, share: float) -> list[float]:
    """Angle of the plumb line from a point to a centre of mass at each corner, summed by hand."""
    pitch = float(made.rows["pitch"][0])
    moves = [(25.0 * ahead * share, 30.0 * up * share) for ahead, up in CORNERS]
    return [
        degrees(
            atan2(
                x + ahead * cos(pitch) - up * sin(pitch), z + ahead * sin(pitch) + up * cos(pitch)
            )
        )
        for ahead, up in moves
    ]


def test_centre_of_mass_moves_by_the_occupants_share(made: Seated, found: Tolerance) -> None:
    share, pitch = 80.0 / made.figures["total_mass_kg"], float(made.rows["pitch"][0])
    assert pitch > 0.005
    assert step(found, "com_x_mm", "body.ahead") == pytest.approx(
        12.5 * share * cos(pitch), abs=1e-9
    )
    assert step(found, "com_z_mm", "body.ahead") == pytest.approx(
        12.5 * share * sin(pitch), abs=1e-9
    )
    assert step(found, "com_z_mm", "body.up") == pytest.approx(15.0 * share * cos(pitch), abs=1e-9)
    assert step(found, "com_x_mm", "body.up") == pytest.approx(-15.0 * share * sin(pitch), abs=1e-9)


def test_rear_angle_at_each_corner_of_the_estimate(made: Seated) -> None:
    figures, share = made.figures, 80.0 / made.figures["total_mass_kg"]
    wanted = leans_deg(made, figures["com_x_mm"], figures["com_z_mm"], share)
    assert at_the_corners(made, "tip_rear_locked_deg") == pytest.approx(wanted, abs=1e-9)


def test_free_wheels_move_with_the_frame_alone(made: Seated) -> None:
    """Of the frame without the rear wheels the occupant is a larger share."""
    figures = made.figures
    whole, wheels = figures["total_mass_kg"], float(made.rows["wheel_mass"][0])
    axle = float(made.rows["rear_height"][0])
    x = figures["com_x_mm"] * whole / (whole - wheels)
    z = (figures["com_z_mm"] - axle) * whole / (whole - wheels)
    assert degrees(atan2(x, z)) == pytest.approx(figures["tip_rear_free_deg"], abs=1e-9)
    wanted = leans_deg(made, x, z, 80.0 / (whole - wheels))
    assert at_the_corners(made, "tip_rear_free_deg") == pytest.approx(wanted, abs=1e-9)


def test_geometry_and_masses_do_not_move_with_it_and_a_direction_has_no_spread(
    found: Tolerance,
) -> None:
    for figure, key in product(GEOMETRY, ("body.ahead", "body.up")):
        assert step(found, figure, key) == 0.0, (figure, key)
    assert "tip_least_direction_deg" not in found.figures
