"""Turning geometry (rows TU): printed values, for the box of 1100 x 660 mm and others.

Box .85 m ahead and .25 m behind the rear axle, .66 m wide, rear track .56 m (mm here).
"""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.figures.corner import corner_arc_mm, corner_best_arc_mm, corner_free_mm
from chairwright.figures.turning import (
    box_corners,
    corner_arc_box_mm,
    corner_free_box_mm,
    half_turn_free_mm,
    half_turn_width_mm,
    longest_box_at_mm,
    longest_box_mm,
    longest_ladder_mm,
    pivot_diameter_mm,
    reach_mm,
    wheel_pivot_diameter_mm,
)
from chairwright.places.outline import Outline
from chairwright.places.routes import corner_route

BOX = box_corners(850, 250, 660)
MICRON = 1e-3
"""1e-6 m, as printed."""


def test_tu_01_pivot_about_the_middle_of_the_axle() -> None:
    assert pivot_diameter_mm(BOX)[0] == pytest.approx(1823.623, abs=MICRON)


def test_tu_02_pivot_about_one_wheel() -> None:
    assert wheel_pivot_diameter_mm(BOX, 560)[0] == pytest.approx(2092.463, abs=MICRON)


def test_tu_03_half_turn_between_walls() -> None:
    assert half_turn_width_mm(BOX)[0] == pytest.approx(1325.816, abs=MICRON)


def test_tu_04_and_05_toe_and_tail_corners() -> None:
    toes, tails = (700, 200), (-305, 310)
    assert reach_mm([toes])[0] == pytest.approx(728.0, abs=0.05)
    assert pivot_diameter_mm([toes, tails])[0] == pytest.approx(1456, abs=0.05)
    assert reach_mm([tails])[0] == pytest.approx(434.9, abs=0.05)
    assert half_turn_width_mm([toes, tails])[0] == pytest.approx(1162.9, abs=0.05)


def test_tu_06_box_about_its_own_centre() -> None:
    # No motion turns a 1200 x 700 box in less than its diagonal.
    assert half_turn_free_mm(box_corners(600, 600, 700))[0] == pytest.approx(1389, abs=0.5)


def test_tu_07_equal_corridors_any_motion() -> None:
    assert corner_free_box_mm(1100, 660) == pytest.approx(855.599, abs=MICRON)
    assert corner_free_mm(BOX)[0] == pytest.approx(855.599, abs=MICRON)


def test_tu_08_one_steady_arc_about_the_bisector() -> None:
    assert corner_arc_box_mm(850, 660) == pytest.approx(1067.731, abs=MICRON)
    assert corner_arc_mm(BOX)[0] == pytest.approx(1067.731, abs=MICRON)
    # A search on a grid of centres, which can only lie above it: 1069.9.
    assert corner_arc_mm(BOX)[0] <= 1069.9


def test_tu_09_couch_in_corridors_8_and_3() -> None:
    # Moretti, College Mathematics Journal 33(3), 196: couch 1 wide, 31 degrees.
    assert longest_box_at_mm(8, 3, 1, 31) == pytest.approx(12.8927, abs=0.5e-4)
    assert longest_box_at_mm(8, 3, 1, 31) == pytest.approx(12.892739, abs=1e-6)
    # At its tightest angle the longest couch is shorter.
    length, angle = longest_box_mm(8, 3, 1)
    assert length[0] < 12.8927
    assert longest_box_at_mm(8, 3, 1, angle)[0] == pytest.approx(length[0], abs=1e-12)


def test_tu_10_ladder() -> None:
    assert longest_ladder_mm(1, 1) == pytest.approx(2 * np.sqrt(2), abs=1e-12)
    assert longest_ladder_mm(8, 3) == pytest.approx(longest_box_mm(8, 3, 0)[0][0], abs=1e-9)


def test_tu_11_closed_form_against_the_least_over_the_angle() -> None:
    q = np.radians(np.linspace(0.01, 89.99, 20001))
    need = (660 + 1100 * np.sin(q) * np.cos(q)) / (np.sin(q) + np.cos(q))
    assert corner_free_box_mm(1100, 660) == pytest.approx(need.max(), abs=MICRON)


def test_tu_12_measured_corridors_and_the_two_bounds() -> None:
    # AWM 2010, appendix 2: 85 cm serves half of the users, 100 cm serves 95 percent.
    low, high = corner_free_mm(BOX)[0], corner_arc_mm(BOX)[0]
    assert low < 1000 < high
    # 850 mm is 5.6 mm below the bound of this box: half of the users have a smaller one.
    # The bound is met by a chair whose width and half length sum up to 8 mm less.
    assert 0 < low - 850 < 6
    assert corner_free_box_mm(1100 - 8, 660 - 4) < 850 < corner_arc_box_mm(846, 656)
    # Between the bounds: one arc that is better placed is enough at 100 cm, none at 85 cm.
    assert 850 < corner_best_arc_mm(BOX)[0] < 1000
    box = Outline.box(850, 250, 660)
    through = corner_route(box, 1000, 1000)
    assert through is not None
    assert through.reversals == 0
    assert corner_route(box, 850, 850) is None


def test_feet_that_stand_in_count_less_than_the_box_round_them() -> None:
    # The pointed outline of rows TU-04 and TU-05: 850 mm lies between its bounds.
    pointed = [(700, 200), (-305, 310), (0, 310)]
    assert corner_free_mm(pointed)[0] < 850 < corner_arc_mm(pointed)[0]
