"""A set-up measured off its own drawing has the figures that the set-up has."""

from __future__ import annotations

import math
from pathlib import Path

import numpy as np
import pytest

from chairwright.chair.occupant import Occupant
from chairwright.cli.opened import open_setup
from chairwright.figures.evaluate import figures_of
from chairwright.figures.registry import FIGURES
from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.measured.stands import seated, stands
from chairwright.measured.values import known

from .measured_setups import measures_of

SETUPS = sorted((Path(__file__).parents[2] / "examples" / "setups").glob("*.yaml"))

NOT_TOLD = {
    "price", "custom_surcharge", "lead_days", "load_margin_kg", "heaviest_part_kg",
    "folded_width_mm", "push_force_level_n", "push_force_carpet_n", "yaw_inertia_kgm2",
}  # fmt: skip
"""What no tape tells."""

LOOSE = {"caster_foot_clearance_mm": 12.0}
"""The thickness of the footplates is assumed [mm]."""

WHEELS = 0.02
"""The hand rims of a line count with its frame, not with its wheels; their spin is assumed."""


@pytest.mark.parametrize("path", SETUPS, ids=lambda path: path.stem)
def test_figures_come_back(path: Path) -> None:
    setup = open_setup(path)
    values, feet = measures_of(setup)
    found = stands(values, {}, feet, setup.person.occupant, setup.person.targets).setup.figures
    for name, figure in FIGURES.items():
        expected = setup.setup.figures[name]
        if name in NOT_TOLD:
            continue
        if math.isnan(expected):
            assert math.isnan(found[name]), name
            continue
        loose = WHEELS * abs(expected) if figure.unit in {"m/s2", "N"} else figure.resolution
        assert found[name] == pytest.approx(expected, abs=LOOSE.get(name, loose)), name


@pytest.mark.parametrize("path", SETUPS[:3], ids=lambda path: path.stem)
def test_without_a_measure_no_figure_is_told_that_it_could_change(path: Path) -> None:
    setup = open_setup(path)
    values, feet = measures_of(setup)
    for name in ("seat_width", "back_angle", "axle_ahead_of_post", "camber", "chair_mass"):
        kind = CHAIR_MEASURES[name]
        left = {key: value for key, value in values.items() if key != name}
        found = stands(left, {}, feet, setup.person.occupant, ()).setup.figures
        for end in (kind.low, 0.7 * kind.low + 0.3 * kind.high):
            whole = stands({**left, name: end}, {}, feet, setup.person.occupant, ()).setup.figures
            for figure, value in found.items():
                if not math.isnan(value) and not math.isnan(whole[figure]):
                    slack = 2 * FIGURES[figure].resolution
                    assert whole[figure] == pytest.approx(value, abs=slack), (name, figure)


def test_half_widths_are_those_of_many_measurings() -> None:
    # Readings drawn with half widths as one standard deviation: the figures' standard deviation
    # is the half width that is told. 1 500 draws know it to 2 percent; 6 percent is three of that.
    setup = open_setup(SETUPS[1])
    values, feet = measures_of(setup)
    free = {name: value for name, value in values.items() if not name.startswith("com_")}
    halves = {name: 0.3 * CHAIR_MEASURES[name].tolerance for name in free}
    told = stands(free, halves, feet, setup.person.occupant, ()).setup.spreads
    drawn = _drawn(free, halves, feet, setup.person.occupant)
    for name in ("com_x_mm", "tip_forward_deg", "elbow_angle_deg", "seat_angle_deg", "wheelbase_mm",
                 "cushion_to_floor_front_mm", "tip_left_deg", "caster_trail_mm"):  # fmt: skip
        assert told[name] == pytest.approx(drawn[name], rel=0.06), name


def _drawn(
    values: dict[str, float], halves: dict[str, float], feet: str, occupant: Occupant
) -> dict[str, float]:
    rng, middle = np.random.default_rng(63), known(values, halves, feet)
    names = ("com_x_mm", "tip_forward_deg", "elbow_angle_deg", "seat_angle_deg", "wheelbase_mm",
             "cushion_to_floor_front_mm", "tip_left_deg", "caster_trail_mm")  # fmt: skip
    found: dict[str, list[float]] = {name: [] for name in names}
    for _ in range(1500):
        moved = dict(middle.values)
        for name, half in middle.spreads.items():
            moved[name] += half * rng.standard_normal()
        rows, _ = seated(moved, feet, occupant)
        for name, each in figures_of(rows, occupant, names).items():
            found[name].append(float(each[0]))
    return {name: float(np.std(each)) for name, each in found.items()}
