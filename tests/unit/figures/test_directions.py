"""Tipping angles by direction beside the figures."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures.directions import tip_angles
from tests.unit.chair.seated import seated


def test_directions_go_round_once_and_meet_the_figures() -> None:
    made = seated()
    directions, angles = tip_angles(made.rows)
    assert list(directions) == list(range(0, 360, 5))
    at = dict(zip(directions.astype(int), angles, strict=True))
    for direction, name in ((0, "tip_forward_deg"), (90, "tip_left_deg"),
                            (180, "tip_rear_locked_deg"), (270, "tip_right_deg")):  # fmt: skip
        assert at[direction] == pytest.approx(made.figures[name], abs=1e-9)
    assert np.min(angles) >= made.figures["tip_least_deg"] - 1e-9
