"""Laws of weighing: spread as drawn, angles as the figures have them, an occupant who stays put."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.balance import edge_angle, support_edges
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.mass import mass_box
from chairwright.mass_points import MassPoints
from chairwright.person.posture import centre_of_mass
from chairwright.scales.carried import (
    carried_over,
    corrected_points,
    corrected_rows,
    occupant_shift,
    weighed_occupant,
)
from chairwright.scales.centre import results
from chairwright.scales.formulas import raised, raised_share
from chairwright.scales.from_setup import estimate, with_setup
from chairwright.scales.model import SeatPlace, Session, Weighing, readings
from chairwright.scales.propagate import Measured, drawn, measured, propagated
from chairwright.tolerance.of_setup import tolerance_of
from tests.oracles.draws import random_setups
from tests.oracles.lines import everyday
from tests.oracles.people import client, seated

DRAWS = 10_000
WITHIN = 0.05
"""Spread of 10 000 draws is itself good to 0.7 %; the rest is room for curvature."""


def weighing(session: Session, mass: float, x: float, y: float, z: float, block: float) -> Weighing:
    """The loads that a centre of mass gives, with no twist between the axles."""
    at = raised(session.wheelbase_mm, session.rear_height_mm, session.caster_height_mm, block)
    casters = mass * x / session.wheelbase_mm
    up = float(mass * raised_share(x, z, session.rear_height_mm, at))
    sides = {"left": 1.0, "right": -1.0}
    loads = {
        f"rear_{side}": (mass - casters) * (0.5 + sign * y / session.rear_track_mm)
        for side, sign in sides.items()
    }
    loads |= {
        f"caster_{side}": casters * (0.5 + sign * y / session.caster_track_mm)
        for side, sign in sides.items()
    }
    return Weighing(loads, {"casters": up}, block)


def session(x: float = 120.0, y: float = 8.0, z: float = 620.0, block: float = 62.0) -> Session:
    bare = Session(
        wheelbase_mm=400.0,
        rear_height_mm=305.0,
        caster_height_mm=75.0,
        rear_track_mm=560.0,
        caster_track_mm=440.0,
        occupied=Weighing({}),
        resolution_kg=0.1,
        tape_mm=1.0,
        seat=SeatPlace(-30.0, 455.0, 4.0),
    )
    return replace(
        bare,
        occupied=weighing(bare, 90.0, x, y, z, block),
        empty=weighing(bare, 16.0, 100.0, 1.0, 360.0, block),
    )


@pytest.mark.parametrize(
    "one",
    [
        session(),
        session(y=-20.0, z=700.0, block=40.0),
        session(x=200.0, z=560.0, block=100.0),
        replace(session(), resolution_kg=0.5, tape_mm=0.5),
        replace(session(), resolution_kg=0.02, tape_mm=2.0),
    ],
    ids=["plain", "low block", "high block", "coarse scales", "coarse tape"],
)
def test_the_propagated_spread_is_that_of_10000_draws(one: Session) -> None:
    found, many = measured(one), drawn(one, DRAWS, seed=11)
    assert set(found.values) == set(many)
    for name, draws in many.items():
        spread = np.sqrt(found.covariance(name)[0, 0])
        assert np.std(draws) == pytest.approx(spread, rel=WITHIN), name
        assert np.mean(draws) == pytest.approx(found.values[name], abs=0.1 * spread), name


def test_covariances_are_those_of_the_draws() -> None:
    names = ("occupant_mass_kg", "occupant_x_mm", "occupant_y_mm", "occupant_z_mm")
    many = drawn(session(), DRAWS, seed=12)
    own, seen = measured(session()).covariance(*names), np.cov([many[name] for name in names])
    size = np.sqrt(np.outer(np.diag(own), np.diag(own)))
    assert own / size == pytest.approx(seen / size, abs=WITHIN)


def test_loads_rounded_to_the_step_scatter_as_propagated() -> None:
    """True loads anywhere, read to 0.1 kg: a real display instead of drawn errors."""
    one = replace(session(), tape_mm=0.0)
    rng = np.random.default_rng(13)
    values, _ = readings(one)
    loads = [name for name in values if ".level." in name or ".raised." in name]
    true = values | {name: values[name] + rng.uniform(-0.5, 0.5, DRAWS) for name in loads}
    read = true | {name: np.round(true[name], 1) for name in loads}
    for name in ("com_x_mm", "com_y_mm", "com_z_mm"):
        off = results(read)[name] - results(true)[name]
        spread = np.sqrt(measured(one).covariance(name)[0, 0])
        assert np.std(off) == pytest.approx(spread, rel=WITHIN)


def test_complex_steps_give_the_slopes_of_small_differences() -> None:
    one = session()
    values, doubt = readings(one)
    found = propagated(results, values, doubt)
    for reading in doubt:
        step = 1e-4
        ends = [results({**values, reading: values[reading] + s * step}) for s in (1, -1)]
        for name in found.values:
            slope = (ends[0][name] - ends[1][name]) / (2 * step)
            assert found.slopes[name][reading] == pytest.approx(slope, rel=1e-5, abs=1e-6)


def test_angles_are_those_of_the_figures() -> None:
    found = measured(session()).values
    place = [np.array([found[f"com_{axis}_mm"]]) for axis in "xyz"]
    one = np.ones(1)
    edges = support_edges(400.0 * one, 560.0 * one, 440.0 * one)
    names = ("tip_rear_locked_deg", "tip_forward_deg", "tip_left_line_deg", "tip_right_line_deg")
    for edge, name in zip(edges, names, strict=True):
        assert found[name] == pytest.approx(edge_angle(edge, 1.0, *place)[0], abs=1e-9)
    for edge, name in zip(edges[2:], ("tip_left_deg", "tip_right_deg"), strict=True):
        share = np.abs(edge.normal_y)
        assert found[name] == pytest.approx(edge_angle(edge, share, *place)[0], abs=1e-9)


def _weighed_setup(seed: int) -> tuple[Rows, list[MassPoints], Occupant, Measured]:
    """A set-up, and its weighing with a client who is not as estimated."""
    occupant = seated(client("female", "1640 mm", "66 kg"))
    rows, points = random_setups(everyday(), occupant, np.random.default_rng(seed), 1)
    sizes = ("wheelbase", "rear_height", "caster_radius", "rear_track", "caster_track")
    length, rear, caster, track, front = (float(rows[name][0]) for name in sizes)
    bare = Session(length, rear, caster, Weighing({}), 0.1, 1.0, 0.5, track, front)
    box = mass_box(rows)
    mass, x, z = (float(band.low[0]) for band in (box.mass, box.x, box.z))
    heavier = weighing(bare, mass + 3.0, x + 9.0, 6.0, z + 14.0, 30.0)
    one = with_setup(replace(bare, occupied=heavier), rows, points, occupant, loads_on=True)
    return rows, points, occupant, measured(one)


@pytest.mark.parametrize("seed", range(20))
def test_carried_to_the_set_up_weighed_it_is_as_weighed(seed: int) -> None:
    rows, points, occupant, found = _weighed_setup(seed)
    shift = occupant_shift(found, points, occupant)
    assert shift is not None
    there = carried_over(rows, points, occupant, shift)
    for name in ("com_x_mm", "com_y_mm", "com_z_mm", "total_mass_kg", "tip_rear_locked_deg"):
        assert there.figures[name] == pytest.approx(found.values[name], abs=1e-6)
    own = carried_over(rows, points, occupant, replace(shift, covariance=np.zeros((4, 4))))
    assert own.half_widths == {}


@pytest.mark.parametrize("seed", range(20))
def test_moved_points_have_the_measured_mass_and_centre(seed: int) -> None:
    rows, points, occupant, found = _weighed_setup(seed)
    shift = occupant_shift(found, points, occupant)
    assert shift is not None
    moved = corrected_points(points, occupant, shift)
    body = [new for new, old in zip(moved, points, strict=True) if new is not old]
    mass, x, y, z = centre_of_mass(body)
    _, place = estimate(points, occupant)
    assert float(mass) == pytest.approx(found.values["occupant_mass_kg"], abs=1e-9)
    shifted = np.subtract([np.ravel(v)[0] for v in (x, y, z)], place)
    assert shifted == pytest.approx([shift.ahead_mm, shift.left_mm, shift.up_mm], abs=1e-9)
    assert float(corrected_rows(rows, points, occupant, shift)["load"][0]) == pytest.approx(
        found.values["occupant_mass_kg"], abs=1e-9
    )


def test_the_spread_that_is_carried_over_is_that_of_draws() -> None:
    """Shifts drawn from the covariance; the tipping angles' scatter against the half width."""
    rows, points, occupant, found = _weighed_setup(3)
    shift = occupant_shift(found, points, occupant)
    assert shift is not None
    there = carried_over(rows, points, occupant, shift)
    rng = np.random.default_rng(14)
    draws = rng.multivariate_normal(np.zeros(4), shift.covariance, 2000)
    names = ("tip_rear_locked_deg", "tip_forward_deg", "com_z_mm")
    seen: dict[str, list[float]] = {name: [] for name in names}
    for mass, ahead, left, up in draws:
        moved = replace(
            shift,
            mass_kg=shift.mass_kg + mass,
            ahead_mm=shift.ahead_mm + ahead,
            left_mm=shift.left_mm + left,
            up_mm=shift.up_mm + up,
        )
        box = mass_box(corrected_rows(rows, points, occupant, moved))
        x, z = float(box.x.low[0]), float(box.z.low[0])
        seen["com_z_mm"].append(z)
        seen["tip_rear_locked_deg"].append(np.degrees(np.arctan2(x, z)))
        seen["tip_forward_deg"].append(np.degrees(np.arctan2(float(rows["wheelbase"][0]) - x, z)))
    for name, values in seen.items():
        # 0.08: 2000 draws know a spread to 1.6 %.
        assert 2.0 * np.std(values) == pytest.approx(there.half_widths[name], rel=0.08)


@pytest.mark.parametrize("seed", range(12))
def test_an_occupant_as_weighed_is_the_shift_carried_over(seed: int) -> None:
    """Two ways to the same figures: points moved one by one as they are brought, or afterwards."""
    _, points, occupant, found = _weighed_setup(seed)
    shift = occupant_shift(found, points, occupant)
    assert shift is not None
    other, seated_there = random_setups(everyday(), occupant, np.random.default_rng(99 - seed), 1)
    expected = carried_over(other, seated_there, occupant, shift)
    who = weighed_occupant(occupant, shift)
    fresh, _ = realise(everyday(), who, other.index)
    for name, value in figures_of(fresh, who, expected.figures).items():
        assert float(value[0]) == pytest.approx(expected.figures[name], abs=1e-9, nan_ok=True), name
    index = {name: int(at[0]) for name, at in other.index.items()}
    names = tuple(expected.half_widths)
    found_there = tolerance_of(everyday(), who, index, names)
    by_scales = [each.key.startswith("scales.") for each in found_there.inputs]
    assert sum(by_scales) == 4
    for name in names:
        spread = found_there.figures[name]
        # What the scales leave, without tape and build: two standard uncertainties, first order.
        half = np.sqrt(np.sum((spread.up - spread.down)[by_scales] ** 2))
        assert half == pytest.approx(expected.half_widths[name], rel=1e-6), name
    assert {"com_x_mm", "com_z_mm", "tip_rear_locked_deg", "tip_left_deg"} <= set(names)
