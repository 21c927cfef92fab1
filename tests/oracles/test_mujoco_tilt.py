"""Every tipping angle against a rigid-body physics engine.

Wanted agreement: 0.02 deg; the fit by itself is good to about 0.00001 deg.
"""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures.balance import support_edges, tip_angle

from .linear_programme import tipping
from .mujoco_tilt import Chair, ChairOnFreeWheels
from .random_chairs import DIRECTIONS, Array, Batch, batches

AGREE_DEG = 0.02
NAMED = {0.0: "tip_forward_deg", 90.0: "tip_left_deg", 180.0: "tip_rear_locked_deg"}
NAMED[-90.0] = "tip_right_deg"

# Default chair of the check cases ST-12 and ST-13: 90 kg, mm.
PLAIN = np.array([[90.0, 130.0, 0.0, 545.0]])
PLAIN_FEET = np.array([[0, 280], [0, -280], [450, 220], [450, -220]], dtype=float)


@pytest.mark.parametrize(
    ("direction", "angle"),
    # statics, worked out by hand in closed form (check cases ST-12, ST-13).
    [(180.0, 13.41618), (0.0, 30.41958), (90.0, 25.73208), (120.0, 25.50414)],
)
def test_the_engine_is_set_up_well(direction: float, angle: float) -> None:
    hint = tipping(PLAIN_FEET, (130.0, 0.0, 545.0), direction)
    # 0.002: stated for a fit with this engine.
    assert Chair(PLAIN, PLAIN_FEET).tips_at(hint, direction) == pytest.approx(angle, abs=0.002)


@pytest.mark.parametrize(("direction", "angle"), [(180.0, 13.41618), (0.0, 30.41958)])
def test_the_engine_topples_just_beyond_the_angle_and_not_before(
    direction: float, angle: float
) -> None:
    chair = Chair(PLAIN, PLAIN_FEET)
    assert not chair.topples(angle - AGREE_DEG, direction)
    assert chair.topples(angle + AGREE_DEG, direction)


@pytest.mark.parametrize("seed", range(8))
def test_200_random_chairs_in_8_directions(seed: int) -> None:
    for batch in batches(seed, clients=5, each=5):
        own = _own_angles(batch)
        mass, x, y, z = batch.masses.com()
        for at in range(len(batch.rows)):
            chair = Chair(_points(batch, at), batch.feet_mm[at])
            for column, direction in enumerate(DIRECTIONS):
                hint = tipping(batch.feet_mm[at], (x[at], y[at], z[at]), direction)
                engine = chair.tips_at(hint, direction)
                assert own[at, column] == pytest.approx(engine, abs=AGREE_DEG)
        assert mass == pytest.approx(batch.figures["total_mass_kg"], abs=1e-9)


@pytest.mark.parametrize("seed", range(4))
def test_40_random_chairs_on_free_wheels(seed: int) -> None:
    for batch in batches(100 + seed, clients=5, each=2):
        own = batch.figures["tip_rear_free_deg"]
        _, x, y, z = batch.masses.com(without_wheels=True)
        axle = batch.rows["rear_height"]
        for at, feet in enumerate(batch.feet_mm):
            hint = tipping(feet, (x[at], y[at], z[at] - axle[at]), 180.0)
            points = np.array(_points(batch, at))
            turns = batch.masses.rear_wheel
            wheels = (float(points[turns, 0].sum()), 0.0, 0.0, float(axle[at]))
            engine = ChairOnFreeWheels(points[~turns], wheels, feet)
            assert own[at] == pytest.approx(engine.tips_back_at(hint), abs=AGREE_DEG)
            assert own[at] > batch.figures["tip_rear_locked_deg"][at] + AGREE_DEG


def _own_angles(batch: Batch) -> Array:
    """The program's angle for each chair and direction; named figures stand in where they exist."""
    rows, figures = batch.rows, batch.figures
    edges = support_edges(rows["wheelbase"], rows["rear_track"], rows["caster_track"])
    place = (figures["com_x_mm"], figures["com_y_mm"], figures["com_z_mm"])
    columns = [
        figures[NAMED[direction]] if direction in NAMED else tip_angle(edges, *place, direction)
        for direction in DIRECTIONS
    ]
    return np.stack(columns, axis=1)


def _points(batch: Batch, at: int) -> Array:
    masses = batch.masses
    return np.stack([masses.mass[at], masses.x[at], masses.y[at], masses.z[at]], axis=1)
