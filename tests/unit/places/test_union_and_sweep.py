"""Unions of polygons and swept floor, by hand."""

from __future__ import annotations

from math import pi

import numpy as np
import pytest

from chairwright.places.moves import Move, Pose, Route
from chairwright.places.outline import Outline
from chairwright.places.sweep import swept, turn_step
from chairwright.places.union import area_mm2, covered, union
from chairwright.places.walls import block

BOX = Outline.box(850, 250, 660)


def test_crossing_touching_and_equal_blocks() -> None:
    (cross,) = union([block(0, 30, 10, 20), block(10, 20, 0, 30)])
    assert area_mm2(cross) == pytest.approx(500)
    assert len(cross) == 12
    (joined,) = union([block(0, 10, 0, 10), block(10, 20, 0, 10), block(0, 10, 0, 10)])
    assert area_mm2(joined) == pytest.approx(200)
    assert len(joined) == 4
    apart = union([block(0, 10, 0, 10), block(20, 40, 0, 10)])
    assert [area_mm2(each) for each in apart] == pytest.approx([200, 100])


def test_hole_is_a_clockwise_ring() -> None:
    frame = [block(0, 40, 0, 10), block(0, 40, 30, 40), block(0, 10, 0, 40), block(30, 40, 0, 40)]
    outer, hole = union(frame)
    assert (area_mm2(outer), area_mm2(hole)) == pytest.approx((1600, -400))


def test_clockwise_polygons_count_all_the_same() -> None:
    (ring,) = union([block(0, 10, 0, 10)[::-1]])
    assert area_mm2(ring) == pytest.approx(100)
    assert covered(np.array([(5.0, 5.0), (15.0, 5.0)]), ring).tolist() == [True, False]


def test_straight_way_sweeps_a_longer_box() -> None:
    floor = swept(Route(BOX, Pose(0, 0, 0), (Move(400),)))
    assert floor.area_mm2 == pytest.approx((1100 + 400) * 660, abs=1e-3)
    assert floor.bounds_mm == pytest.approx((-250, 1250, -330, 330))
    assert len(floor.rings) == 1


def test_half_turn_of_a_box_about_a_corner_of_its_own() -> None:
    # A box of 300 x 400 turned about a corner by half a turn: half a disc of radius 500, and
    # on the one side the box's first half outside it and on the other its last.
    box = Outline.around([(0, 0), (400, 0), (400, 300), (0, 300)])
    floor = swept(Route(box, Pose(0, 0, 0), (Move(turn_deg=180.0),)), 0.01)
    # Sector from the far corner's first place to its last, and a right triangle at each end.
    expected = pi * 500**2 / 2 + 2 * (300 * 400 / 2)
    assert floor.area_mm2 == pytest.approx(expected, abs=20)
    drawn_less = expected - floor.area_mm2
    assert 0 < drawn_less <= 0.01 * pi * 500


def test_finer_chords_come_closer_to_the_circle() -> None:
    turn = Route(BOX, Pose(0, 0, 0), (Move(turn_deg=180.0), Move(turn_deg=180.0)))
    disc = pi * BOX.reach**2
    areas = [swept(turn, chord).area_mm2 for chord in (2.0, 0.5, 0.1)]
    assert areas == sorted(areas)
    assert 0 < disc - areas[-1] < 0.1 * 2 * pi * BOX.reach


def test_chord_of_a_turn_step_leaves_the_arc_by_the_error() -> None:
    step = turn_step(900.0, 0.5)
    assert 900 * (1 - np.cos(step / 2)) == pytest.approx(0.5)
    assert turn_step(0.1, 0.5) == pytest.approx(pi / 4)
