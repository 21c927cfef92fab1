"""The hand chair folded for a boot, worked out with a pencil.

Wheels on: from the tyre, 300 mm behind the axle, to the front of the caster, 400 + 75 ahead: 775.
Handles 500 + 400 + 30 = 930 above the floor. Overall 580 less 400 - 70 of seat: 250.
Wheels off: from the handles, 70 behind: 545 x 930; arm supports stand 30 mm out on each side, more
than the casters' 10 + 15: 70 + 2 x 30 = 130.
"""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures.evaluate import figures_of
from chairwright.figures.folded import stowed_box

from .level_chair import level_chair


@pytest.mark.parametrize(
    ("boot", "lacks"),
    [
        ("1000x800x600_on", -25.0),  # 250, 775, 930 in 600, 800, 1000: the 800 is the tightest
        ("600x1000x800_on", -25.0),  # any edge may lie along any edge
        ("900x700x500_on", 75.0),  # 775 in 700
        ("900x700x500_off", 30.0),  # 130, 545, 930 in 500, 700, 900
        ("1000x600x400_off", -55.0),  # 545 in 600
        ("1000x600x100_off", 30.0),  # 130 in 100
    ],
)
def test_what_a_boot_lacks(boot: str, lacks: float) -> None:
    made, name = level_chair(), f"boot_missing_mm@{boot}"
    found = figures_of(made.rows, made.occupant, [name])[name]
    assert found[0] == pytest.approx(lacks, abs=1e-9)


def test_a_chair_that_does_not_fold_keeps_its_width() -> None:
    # It folds up to 500 mm. At 520: 520 + 180 with the wheels on is the least edge; with the
    # wheels off 520 + 60 is more than the length of 545, which then lies across the 100.
    made = level_chair(seat_width="S520")
    for wheels, lacks in (("on", 600.0), ("off", 445.0)):
        name = f"boot_missing_mm@2000x2000x100_{wheels}"
        found = figures_of(made.rows, made.occupant, [name])[name]
        assert found[0] == pytest.approx(lacks, abs=1e-9)


def test_arm_pads_higher_than_the_handles_count() -> None:
    # Back post 260 mm: handles at 500 + 260 + 30 = 790; pads moved to 250 + 60 above the rail, 810.
    made = level_chair()
    low = made.rows
    low["back_height"] = np.array([260.0])
    low["grip_z"], low["pad_height"] = np.array([290.0]), np.array([310.0])
    assert stowed_box(low, wheels_off=True)[2][0] == pytest.approx(810.0, abs=1e-9)
    low["pad_height"] = np.array([250.0])
    assert stowed_box(low, wheels_off=True)[2][0] == pytest.approx(790.0, abs=1e-9)
