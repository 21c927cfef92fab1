"""Ends of unfinished set-ups: whatever is still chosen, the finished figure lies between them.

The search drops whole blocks by these ends, so its exactness rests on them.
"""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np
import pytest

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.steps import STEPS
from chairwright.figures.evaluate import figures_of
from chairwright.figures.registry import FIGURES
from chairwright.line.model import Line
from chairwright.search.bands import Bands
from chairwright.search.criteria import Judge, criteria
from chairwright.search.prepared import Prepared
from chairwright.search.space import Space
from chairwright.targets.target import Target
from tests.oracles.draws import random_setups
from tests.oracles.lines import everyday
from tests.oracles.people import anybody, seated
from tests.oracles.rules import allowed_positions
from tests.oracles.small_lines import small_line

ROUNDING = 1e-6


def grown(finished: Rows, occupant: Occupant, level: int) -> Rows:
    """The same set-ups with only the choices of the first steps made."""
    made = [name for step in STEPS[: level + 1] for name in step.choices]
    rows = Rows(finished.line, {})
    for step in STEPS[: level + 1]:
        for name in step.choices:
            rows.index[name] = finished.index[name]
        rows.load(step.follow(rows, occupant))
    assert set(rows.index) == set(made)
    return rows


OF_PLACES = (
    "corner_free_mm@750",
    "corner_free_mm@950",
    "corner_free_mm@1300",
    "corner_arc_mm@950",
    "door_turn_mm@780",
    "device_spare_deg@slope_4.76",
    "device_spare_deg@step_30",
    "boot_missing_mm@1000x700x600_off",
    "rim_force_n@up_4.76_concrete",
    "rim_force_n@cross_3_hard",
    "push_start_n@up_3_hard",
    "cross_push_n@2",
    "start_lift_mps2@up_4.76",
    "braking_lift_mps2@down_4.76",
    "step_force_n@20",
    "rear_step_force_n@60",
    "kerb_pitch_deg@90",
)
"""Figures of a place, of every family that has ends of its own."""


def check_ends(
    line: Line, occupant: Occupant, finished: Rows, names: Iterable[str] = FIGURES
) -> int:
    """Compare the ends at every level with the finished figures; count the comparisons."""
    figures = figures_of(finished, occupant, names)
    bands = Bands(Prepared(Space(line, occupant, allowed_positions(line, occupant))), names)
    compared = 0
    for level, step in enumerate(STEPS):
        found = bands.of(grown(finished, occupant, level), level)
        for name, band in found.items():
            value = figures[name]
            there = ~np.isnan(value)
            low, high = (np.broadcast_to(end, value.shape)[there] for end in (band.low, band.high))
            room = ROUNDING * np.maximum(1.0, np.abs(value[there]))
            assert (value[there] >= low - room).all(), (name, step.choices)
            assert (value[there] <= high + room).all(), (name, step.choices)
            compared += int(there.sum())
    return compared


@pytest.mark.parametrize("seed", range(12))
def test_ends_hold_on_the_shipped_line(seed: int) -> None:
    rng = np.random.default_rng(seed)
    occupant = seated(anybody(rng))
    finished, _ = random_setups(everyday(), occupant, rng, 400)
    assert check_ends(everyday(), occupant, finished) > 50_000


@pytest.mark.parametrize("seed", range(200, 208))
def test_ends_of_figures_of_a_place_hold(seed: int) -> None:
    rng = np.random.default_rng(seed)
    occupant = seated(anybody(rng))
    finished, _ = random_setups(everyday(), occupant, rng, 200)
    assert check_ends(everyday(), occupant, finished, OF_PLACES) > 10_000


@pytest.mark.parametrize("name", ["corner_free_mm@950", "corner_arc_mm@950"])
def test_a_corner_has_a_low_end_early_that_is_of_use(name: str) -> None:
    rng = np.random.default_rng(5)
    occupant = seated(anybody(rng))
    finished, _ = random_setups(everyday(), occupant, rng, 200)
    space = Space(everyday(), occupant, allowed_positions(everyday(), occupant))
    level = next(at for at, step in enumerate(STEPS) if "leg_length" in step.choices)
    low = Bands(Prepared(space), [name]).of(grown(finished, occupant, level), level)[name].low
    assert level < len(STEPS) - 1
    assert (low > 600.0).any()


@pytest.mark.parametrize("seed", range(24))
def test_ends_hold_on_a_small_line(seed: int) -> None:
    rng = np.random.default_rng(seed)
    while True:
        occupant, line = seated(anybody(rng)), small_line(rng, 3000)
        try:
            finished, _ = random_setups(line, occupant, rng, 300)
            break
        except LookupError:
            continue
    assert check_ends(line, occupant, finished) > 20_000


def test_every_figure_is_known_once_all_is_chosen() -> None:
    rng = np.random.default_rng(3)
    occupant = seated(anybody(rng))
    finished, _ = random_setups(everyday(), occupant, rng, 50)
    found = Bands(
        Prepared(Space(everyday(), occupant, allowed_positions(everyday(), occupant))), FIGURES
    ).of(grown(finished, occupant, len(STEPS) - 1), len(STEPS) - 1)
    assert set(found) == set(FIGURES)
    for name, values in figures_of(finished, occupant).items():
        assert found[name].low is found[name].high
        assert found[name].low == pytest.approx(values, nan_ok=True, rel=1e-12), name


@pytest.mark.parametrize("seed", range(12))
def test_costs_and_broken_musts_of_unfinished_setups_are_never_too_high(seed: int) -> None:
    rng = np.random.default_rng(100 + seed)
    occupant = seated(anybody(rng))
    finished, _ = random_setups(everyday(), occupant, rng, 300)
    targets = _targets(rng, figures_of(finished, occupant))
    prepared = Prepared(Space(everyday(), occupant, allowed_positions(everyday(), occupant)))
    rules = criteria(targets)
    judge, bands = Judge(prepared, rules), Bands(prepared, rules.names)
    costs, broken = [], []
    for level in range(len(STEPS)):
        rows = grown(finished, occupant, level)
        found = bands.of(rows, level)
        costs.append(judge.other_cost(rows, found) + judge.tabled_cost(rows.index))
        broken.append(np.stack(judge.broken(rows, found)))
    for least in costs:
        assert np.isfinite(least).all()
        assert (least <= costs[-1] + ROUNDING).all()
    for certain in broken:
        assert not (certain & ~broken[-1]).any()


def _targets(rng: np.random.Generator, figures: dict[str, np.ndarray]) -> list[Target]:
    """One must and one preference on every figure, with ends that some set-ups miss."""
    found = []
    for name, values in figures.items():
        there = values[~np.isnan(values)]
        if len(there):
            for must in (True, False):
                low, high = np.sort(rng.choice(there, 2))
                found.append(Target(name, float(low), float(high), must, 1.0, "test", "test"))
    return found
