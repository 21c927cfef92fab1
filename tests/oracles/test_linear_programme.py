"""Every tipping angle against a linear programme over the hull of the contacts.

Locked: the whole chair over the tyre contacts. Free: all but the rear wheels, over the axle
line. The two are never mixed. Masses are summed again from the list of points.
"""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures.balance import rear_free, rear_locked, support_edges, tip_angle
from chairwright.figures.mass import mass_box

from .linear_programme import tipping
from .random_chairs import DIRECTIONS, Batch, batches

AGREE_DEG = 1e-6
NAMED = {
    0.0: "tip_forward_deg",
    90.0: "tip_left_deg",
    -90.0: "tip_right_deg",
    180.0: "tip_rear_locked_deg",
}


def test_the_programme_finds_the_hull_distance_of_a_plain_chair() -> None:
    feet = np.array([[0, 280], [0, -280], [450, 220], [450, -220]], dtype=float)
    # statics in closed form, check cases ST-12 and ST-13.
    for direction, angle in ((180.0, 13.41618), (0.0, 30.41958), (90.0, 25.73208)):
        found = tipping(feet, (130.0, 0.0, 545.0), direction)
        assert found.angle_deg == pytest.approx(angle, abs=5e-6)


@pytest.mark.parametrize("seed", range(4))
def test_200_random_chairs_in_8_directions(seed: int) -> None:
    for batch in batches(200 + seed, clients=10, each=5):
        rows, (_, x, y, z) = batch.rows, batch.masses.com()
        edges = support_edges(rows["wheelbase"], rows["rear_track"], rows["caster_track"])
        place = tuple(batch.figures[f"com_{axis}_mm"] for axis in "xyz")
        for direction in DIRECTIONS:
            own = tip_angle(edges, place[0], place[1], place[2], direction)
            for at, feet in enumerate(batch.feet_mm):
                wanted = tipping(feet, (x[at], y[at], z[at]), direction).angle_deg
                assert own[at] == pytest.approx(wanted, abs=AGREE_DEG)
                if direction in NAMED:
                    figure = batch.figures[NAMED[direction]][at]
                    assert figure == pytest.approx(wanted, abs=AGREE_DEG)


@pytest.mark.parametrize("seed", range(2))
def test_free_wheels_tip_about_the_axle_line(seed: int) -> None:
    for batch in batches(300 + seed, clients=20, each=5):
        _, x, y, z = batch.masses.com(without_wheels=True)
        height = z - batch.rows["rear_height"]
        for at, feet in enumerate(batch.feet_mm):
            wanted = tipping(feet, (x[at], y[at], height[at]), 180.0).angle_deg
            assert batch.figures["tip_rear_free_deg"][at] == pytest.approx(wanted, abs=AGREE_DEG)
            # R is at least a third of h' here, so that mixing the two up would show.
            assert wanted > 1.3 * batch.figures["tip_rear_locked_deg"][at]


def test_free_and_locked_have_the_same_moment_arm_when_only_the_frame_counts() -> None:
    # Statics, check case ST-10: tan(free) (h' - R) = tan(locked) h' = x', to 1e-9 of x'.
    for batch in batches(7, clients=20, each=5):
        box = mass_box(batch.rows)
        frame = box._replace(x=box.tilting_x, z=box.tilting_z)
        free = np.tan(np.radians(rear_free(batch.rows, frame).low))
        locked = np.tan(np.radians(rear_locked(batch.rows, frame).low))
        _, x, _, height = batch.masses.com(without_wheels=True)
        above_axle = height - batch.rows["rear_height"]
        assert free * above_axle == pytest.approx(x, rel=1e-9)
        assert locked * height == pytest.approx(x, rel=1e-9)


def test_the_least_angle_and_its_direction_are_those_of_all_directions() -> None:
    for batch in batches(8, clients=6, each=2):
        _, x, y, z = batch.masses.com()
        for at, feet in enumerate(batch.feet_mm):
            com = (x[at], y[at], z[at])
            around = [tipping(feet, com, float(d)).angle_deg for d in range(-180, 180, 3)]
            least = batch.figures["tip_least_deg"][at]
            assert least <= min(around) + AGREE_DEG
            direction = float(batch.figures["tip_least_direction_deg"][at])
            assert tipping(feet, com, direction).angle_deg == pytest.approx(least, abs=AGREE_DEG)


def test_masses_and_centre_of_mass_are_the_sums_of_the_points() -> None:
    for batch in batches(9, clients=30, each=10):
        mass, x, y, z = batch.masses.com()
        for name, wanted in (("total_mass_kg", mass), ("com_x_mm", x), ("com_z_mm", z)):
            assert batch.figures[name] == pytest.approx(wanted, rel=1e-9), name
        assert batch.figures["com_y_mm"] == pytest.approx(y, abs=1e-9)
        chair = mass - batch.occupant.load_kg
        assert batch.figures["chair_mass_kg"] == pytest.approx(chair, abs=1e-9)
        share = x / batch.rows["wheelbase"]
        assert batch.figures["caster_share"] == pytest.approx(share, rel=1e-9)


@pytest.mark.parametrize("seed", range(2))
def test_40_random_chairs_by_formula_alone(seed: int) -> None:
    # Bounds of check case ST-16; tracks and places drawn apart from any product line.
    rng = np.random.default_rng(seed)
    length, rear, front = rng.uniform(350, 550), rng.uniform(480, 750), rng.uniform(350, 500)
    count = 20
    x, y = rng.uniform(0.05, 0.6, count) * length, rng.uniform(-30, 30, count)
    z = rng.uniform(450, 750, count)
    edges = support_edges(np.full(count, length), np.full(count, rear), np.full(count, front))
    feet = np.array([[0, rear / 2], [0, -rear / 2], [length, front / 2], [length, -front / 2]])
    for direction in (0.0, 180.0, 90.0, 120.0, -35.0):
        own = tip_angle(edges, x, y, z, direction)
        wanted = [tipping(feet, com, direction).angle_deg for com in zip(x, y, z, strict=True)]
        assert own == pytest.approx(wanted, abs=AGREE_DEG)


def test_a_centre_of_mass_behind_the_axle_gives_a_negative_angle() -> None:
    edges = support_edges(np.array([400.0]), np.array([560.0]), np.array([440.0]))
    feet = np.array([[0, 280], [0, -280], [400, 220], [400, -220]], dtype=float)
    own = tip_angle(edges, np.array([-20.0]), np.array([0.0]), np.array([600.0]), 180.0)
    assert own[0] == pytest.approx(tipping(feet, (-20.0, 0.0, 600.0), 180.0).angle_deg, abs=1e-6)
    assert own[0] < 0


def test_batches_differ() -> None:
    first: list[Batch] = list(batches(1, clients=2, each=3))
    assert len({float(angle) for batch in first for angle in batch.figures["com_x_mm"]}) == 6
