"""Wheel loads from a rigid-body engine, and the centre of mass worked out from them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from functools import partial

import numpy as np
import pytest
from numpy.typing import NDArray

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.evaluate import figures_of, realise
from chairwright.mass_points import MassPoints
from chairwright.scales.carried import OccupantShift, carried_over, occupant_shift
from chairwright.scales.from_setup import with_setup
from chairwright.scales.model import Session, Weighing
from chairwright.scales.propagate import Measured, measured

from .draws import Index, random_setups
from .independent import OnFloor, on_floor
from .lines import everyday
from .mujoco_scales import Frame, presses_on_block, weigh
from .mujoco_tilt import Array
from .people import client, seated

AGREE_MM = 0.5
STEP_KG = 0.1
TAPE_MM = 1.0
LEAST_SHARE = 0.05
STEADY_DEG = 4.0


def random_chair(rng: np.random.Generator) -> tuple[Frame, Array, float]:
    """A frame, six point masses, and a block on which it still stands."""
    while True:
        frame = Frame(
            rng.uniform(320, 520), rng.uniform(200, 340), rng.uniform(50, 110),
            rng.uniform(450, 700), rng.uniform(350, 550),
        )  # fmt: skip
        x = frame.wheelbase * rng.uniform(0.15, 0.5)
        middle = np.array([x, rng.uniform(-30, 30), rng.uniform(420, 780)])
        places = middle + rng.uniform(-150, 150, (6, 3))
        points = np.column_stack([rng.uniform(2, 30, 6), places])
        block = float(rng.uniform(25, 80))
        if presses_on_block(frame, points, block, LEAST_SHARE) and loaded(frame, points):
            return frame, points, block


def loaded(frame: Frame, points: Array) -> bool:
    mass = points[:, 0]
    x, y = (mass @ points[:, axis] / mass.sum() for axis in (1, 2))
    return bool(0 < x < 0.6 * frame.wheelbase and abs(y) < 60.0)


def session_of(frame: Frame, points: Array, block: float, digits: int | None = None) -> Session:
    """Weigh in the engine; with digits, loads and lengths are read as finely as that."""
    level, up = weigh(frame, points), weigh(frame, points, block)
    if digits is not None:
        level = {name: round(load, digits) for name, load in level.items()}
        up = {name: round(load, digits) for name, load in up.items()}
        frame = Frame(*(float(round(size)) for size in frame))
    return Session(
        wheelbase_mm=frame.wheelbase,
        rear_height_mm=frame.rear_radius,
        caster_height_mm=frame.caster_radius,
        rear_track_mm=frame.rear_track,
        caster_track_mm=frame.caster_track,
        occupied=Weighing(level, up, block),
        resolution_kg=STEP_KG,
        tape_mm=TAPE_MM,
    )


@pytest.mark.parametrize("seed", range(8))
def test_200_random_chairs_there_and_back(seed: int) -> None:
    rng = np.random.default_rng(seed)
    for _ in range(25):
        frame, points, block = random_chair(rng)
        found = measured(session_of(frame, points, block)).values
        mass = points[:, 0]
        assert found["total_mass_kg"] == pytest.approx(mass.sum(), rel=1e-4)
        for axis, name in enumerate("xyz", 1):
            truth = mass @ points[:, axis] / mass.sum()
            assert found[f"com_{name}_mm"] == pytest.approx(truth, abs=AGREE_MM)


# The client as estimated, and people who measure the same in part: taller, heavier, the other
# sex's proportions. What the chair carries is one of these.
ESTIMATED = client("male", "1750 mm", "80 kg")
PEOPLE = (
    client("male", "1830 mm", "84 kg"),
    client("female", "1700 mm", "77 kg"),
    client("male", "1690 mm", "82 kg"),
)


def stands_on_block(rows: Rows, points: list[MassPoints], block: float) -> bool:
    chair = on_floor(rows, points)
    return presses_on_block(frame_of(rows), table(chair), block, 2 * LEAST_SHARE)


def steady(rows: Rows, occupant: Occupant) -> NDArray[np.bool_]:
    """Which chairs stay on their wheels by some degrees whichever way the floor falls."""
    return figures_of(rows, occupant, ["tip_least_deg"])["tip_least_deg"] > STEADY_DEG


def frame_of(rows: Rows) -> Frame:
    names = ("wheelbase", "rear_height", "caster_radius", "rear_track", "caster_track")
    return Frame(*(float(rows[name][0]) for name in names))


def table(chair: OnFloor) -> Array:
    return np.column_stack([chair.mass[0], chair.x[0], chair.y[0], chair.z[0]])


def pairs_of_setups() -> Iterator[tuple[Occupant, Index, Index]]:
    """Six pairs of random set-ups for every person in which the chair can be weighed."""
    rng = np.random.default_rng(20)
    for person in PEOPLE:
        truth, found = seated(person), list[Index]()
        while len(found) < 12:
            rows, _ = random_setups(everyday(), truth, rng, 40, partial(steady, occupant=truth))
            for at in range(len(rows)):
                index = {name: array[at : at + 1] for name, array in rows.index.items()}
                if len(found) < 12 and stands_on_block(*realise(everyday(), truth, index), 50.0):
                    found.append(index)
        yield from ((truth, a, b) for a, b in zip(found[::2], found[1::2], strict=True))


def weighed(occupant: Occupant, index: Index) -> Session:
    rows, points = realise(everyday(), occupant, index)
    return session_of(frame_of(rows), table(on_floor(rows, points)), 50.0, digits=1)


def test_an_occupant_is_carried_to_another_set_up() -> None:
    estimated = seated(ESTIMATED)
    own_errors, guess_errors = [], []
    for truth, first, second in pairs_of_setups():
        rows, points = realise(everyday(), estimated, first)
        session = with_setup(weighed(truth, first), rows, points, estimated, loads_on=True)
        shift = occupant_shift(measured(session), points, estimated)
        assert shift is not None
        there = realise(everyday(), estimated, second)
        carried = carried_over(*there, estimated, shift)
        guess = carried_over(*there, estimated, nothing(shift, estimated))
        direct = measured(weighed(truth, second))
        for name in ("com_x_mm", "com_z_mm", "total_mass_kg", "tip_rear_free_deg"):
            allowed = carried.half_widths[name] + direct.half_width(name)
            assert carried.figures[name] == pytest.approx(direct.values[name], abs=allowed)
        own_errors.append(errors(carried.figures, direct))
        guess_errors.append(errors(guess.figures, direct))
    assert (np.mean(own_errors, axis=0) < np.mean(guess_errors, axis=0) / 2).all()


def nothing(shift: OccupantShift, estimated: Occupant) -> OccupantShift:
    """The estimate itself."""
    mass = estimated.body.mass_kg
    return replace(shift, mass_kg=mass, ahead_mm=0.0, left_mm=0.0, up_mm=0.0)


def errors(figures: dict[str, float], direct: Measured) -> Array:
    return np.array([abs(figures[n] - direct.values[n]) for n in ("com_x_mm", "com_z_mm")])
