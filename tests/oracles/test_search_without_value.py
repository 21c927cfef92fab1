"""The exact search where some set-ups lack a figure: no foot supports, a rim out of reach."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from chairwright.chair.occupant import Occupant
from chairwright.figures.evaluate import realise
from chairwright.figures.reach import shoulder_to_rim
from chairwright.line.model import Line
from chairwright.person.client import Amputation
from chairwright.search.best import find_best
from chairwright.search.front import Objective, find_front
from chairwright.search.space import open_space
from chairwright.targets.target import Target

from . import brute_force
from .brute_force import Everything, look_at_everything
from .cases import in_pieces
from .people import SIDES, adult, seated
from .small_lines import drawn_line

BOTH_FEET_LOST = tuple(Amputation(side, "below_knee", 0.5) for side in SIDES)  # type: ignore[arg-type]


def with_reach(occupant: Occupant, reach_mm: float) -> Occupant:
    """Give both arms a length, elbow to grip a little longer than the upper arm."""
    upper: dict[str, float | None] = dict.fromkeys(SIDES, 0.47 * reach_mm)
    fore: dict[str, float | None] = dict.fromkeys(SIDES, 0.53 * reach_mm)
    body = replace(occupant.body, upper_arm_mm=upper, forearm_to_grip_mm=fore)  # type: ignore[arg-type]
    return replace(occupant, body=body)


def partly_in_reach(seed: int) -> tuple[Line, Occupant, Everything]:
    """Draw a line on which the client reaches the rim in some set-ups and not in others."""
    rng = np.random.default_rng(seed)
    while True:
        drawn, occupant = drawn_line(rng, 6000), seated(adult(rng))
        everything = look_at_everything(drawn, occupant)
        if len(everything.index["fork"]) > 50:
            break
    rows, _ = realise(drawn.line, occupant, everything.index)
    distance = shoulder_to_rim(rows, occupant, rows["hub_half"])
    occupant = with_reach(occupant, float(np.quantile(distance, rng.uniform(0.1, 0.9))))
    return drawn.line, occupant, look_at_everything(drawn, occupant)


@pytest.mark.parametrize("figure", ["elbow_angle_deg", "push_reach_deg"])
@pytest.mark.parametrize("seed", range(8))
def test_best_when_the_rim_is_out_of_reach_in_some(
    seed: int, figure: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    in_pieces(monkeypatch, 10)
    line, occupant, everything = partly_in_reach(seed)
    assert 0 < np.isnan(everything.figures[figure]).mean() < 1
    high = 100.0 if figure == "elbow_angle_deg" else 10.0
    wish = Target(figure, None, high, False, 1.0, "test", "test")
    wanted = brute_force.best(everything, [wish])
    found = find_best(open_space(line, occupant, {}), [wish])
    assert wanted is not None
    assert found is not None
    assert found.cost == pytest.approx(wanted[0], abs=2e-9)
    assert found.index == everything.setup(wanted[1])


@pytest.mark.parametrize("seed", range(6))
def test_front_leaves_out_setups_without_one_of_the_figures(seed: int) -> None:
    rng = np.random.default_rng(seed)
    while True:
        drawn = drawn_line(rng, 6000)
        occupant = seated(adult(rng, amputations=BOTH_FEET_LOST))
        everything = look_at_everything(drawn, occupant)
        bare = np.isnan(everything.figures["leg_support_length_mm"])
        if bare.any() and not bare.all():
            break
    aims = [("leg_support_length_mm", "min"), ("tip_rear_locked_deg", "max")]
    objectives = tuple(Objective(name, sense) for name, sense in aims)  # type: ignore[arg-type]
    found = find_front(open_space(drawn.line, occupant, {}), [], objectives)
    assert found.points
    for point in found.points:
        assert all(np.isfinite(value) for value in point.values.values())
    assert len(found.points) == len(brute_force.front(everything, [], aims))
