"""Elbow at the top of the rim (rows RE): law of cosines; range after PVA Consortium 2005."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures.reach import MIDDLE_ELBOW_DEG, elbow_angle
from chairwright.targets.target import Target
from chairwright.targets.verdict import verdict
from tests.oracles.rows_of import one

UPPER, FORE = 300.0, 330.0
RANGE = Target("elbow_angle_deg", 100.0, 120.0, True, 1.0, "PVA Consortium 2005", "elbow")
WIDER = Target("elbow_angle_deg", 100.0, 130.0, True, 1.0, "van der Woude 2009", "elbow")


def angle(distance: float) -> float:
    """Elbow angle at a distance from shoulder to rim."""
    return float(elbow_angle(UPPER, FORE, one(distance))[0])


@pytest.mark.parametrize(
    ("distance", "elbow", "holds"),
    # 446.0: the seat is too low for the rim.
    [(446.0, 90.0, False), (483.0, 100.0, True), (545.8, 120.0, True), (571.1, 130.0, False)],
)
def test_re_01_to_03(distance: float, elbow: float, holds: bool) -> None:
    assert angle(distance) == pytest.approx(elbow, abs=0.05)
    # The printed distances are rounded to 0.1 mm: judge the angle as printed.
    assert (verdict(RANGE, elbow).word == "holds") is holds


def test_re_03_a_wider_published_range_reaches_130() -> None:
    assert verdict(RANGE, 130.0).word == "fails"
    assert verdict(WIDER, 130.0).word == "holds"


@pytest.mark.parametrize(("elbow", "distance"), [(110.0, 516.4), (180.0, 630.0)])
def test_re_04(elbow: float, distance: float) -> None:
    # At 180 deg the straight arm ends at 630.0 mm.
    rate = 0.05 if elbow < 180 else 1e-9
    assert angle(distance) == pytest.approx(elbow, abs=rate)


@pytest.mark.parametrize("distance", [630.01, 700.0, 29.99, 0.0])
def test_re_05_out_of_reach_has_no_angle(distance: float) -> None:
    assert np.isnan(angle(distance))


def test_the_middle_of_the_range_is_between_its_ends() -> None:
    assert MIDDLE_ELBOW_DEG - 100.0 == 120.0 - MIDDLE_ELBOW_DEG
