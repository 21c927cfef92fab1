"""Turning and folding (rows TU and FO): plane geometry worked out by hand."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from shapely.affinity import rotate
from shapely.geometry import Polygon
from shapely.ops import unary_union

from chairwright.figures.space import farthest, folded_width
from tests.oracles.people import client, seated
from tests.oracles.rows_of import chair, one, with_wheel

# Box .85 m ahead, .25 m behind the axle, .66 m wide (mm here).
FRONT = [(one(850), one(330))]
REAR = [(one(-250), one(330))]


def test_tu_01_pivot_about_the_middle_of_the_axle() -> None:
    diameter = 2 * max(float(farthest(FRONT)[0]), float(farthest(REAR)[0]))
    # 1e-6 m.
    assert diameter == pytest.approx(1823.623, abs=1e-3)


def test_tu_03_half_turn_on_the_spot() -> None:
    assert farthest(FRONT)[0] + farthest(REAR)[0] == pytest.approx(1325.816, abs=1e-3)


def test_tu_04_toe_corners() -> None:
    toes = [(one(700), one(200)), (one(700), one(-200))]
    assert farthest(toes)[0] == pytest.approx(728.0, abs=0.05)
    assert 2 * farthest(toes)[0] == pytest.approx(1456, abs=0.05)


def test_tu_05_toe_and_tail() -> None:
    toes, tails = [(one(700), one(200))], [(one(-305), one(310))]
    assert farthest(tails)[0] == pytest.approx(434.9, abs=0.05)
    assert farthest(toes)[0] + farthest(tails)[0] == pytest.approx(1162.9, abs=0.05)


def test_fo_02_folded_width() -> None:
    # Overall .66, seat .43, folded seat .06 m: .29 m.
    rows = chair(
        wheelbase=400, rear_radius=300, track=600, width=430, hub_half=280, arm_outer=330,
        rim_radius=265, rim_standoff=40,
    )  # fmt: skip
    rows.line = replace(with_wheel(tyre_width_mm=25.0), folded_seat_mm=60.0)
    assert folded_width(rows, seated(client()))[0] == pytest.approx(290.0, abs=1e-9)


def test_the_swept_circle_is_that_of_an_open_geometry_library() -> None:
    box = Polygon([(850, 330), (850, -330), (-250, -330), (-250, 330)])
    turns = [rotate(box, angle, origin=(0, 0)) for angle in np.arange(0.0, 360.0, 0.5)]
    west, south, east, north = unary_union(turns).bounds
    # 0.02: the library turns in steps of half a degree.
    assert east - west == pytest.approx(2 * farthest(FRONT)[0], abs=0.02)
    assert north - south == pytest.approx(2 * farthest(FRONT)[0], abs=0.02)
