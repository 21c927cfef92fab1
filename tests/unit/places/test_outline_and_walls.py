"""Outlines, walls and what is refused."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.errors import InputError
from chairwright.figures.turning import box_corners, half_turn_width_mm, reach_mm, stacked
from chairwright.places.outline import Outline, hull
from chairwright.places.walls import (
    corner_walls,
    corridor_walls,
    door_walls,
    room_walls,
    tee_walls,
)


def test_hull_leaves_out_what_lies_inside_or_on_an_edge() -> None:
    ring = hull([(0, 0), (2, 0), (1, 0), (2, 2), (0, 2), (1, 1), (0, 0)])
    assert ring.tolist() == [[0, 0], [2, 0], [2, 2], [0, 2]]


def test_outline_of_a_row_has_both_sides() -> None:
    corners = ((np.array([700.0, 800.0]), np.array([200.0, 150.0])), (-305.0, 310.0))
    outline = Outline.of(corners, row=1)
    assert sorted(map(tuple, outline.points.tolist())) == [
        (-305, -310),
        (-305, 310),
        (800, -150),
        (800, 150),
    ]
    assert (outline.ahead, outline.behind, outline.width) == (800, 305, 620)
    assert outline.reach == pytest.approx(np.hypot(800, 150))


def test_box_and_mirrored_outline() -> None:
    assert Outline.box(850, 250, 660).width == 660
    lopsided = Outline.around([(700, 100), (-200, 300), (-200, -250)])
    assert lopsided.mirrored().points[:, 1].max() == 250
    assert lopsided.mirrored().mirrored().points.tolist() == lopsided.points.tolist()


@pytest.mark.parametrize(
    "points", [[(0, 0), (1, 0)], [(0, 0), (1, 1), (2, 2)], [(0, 0), (1, 0), (0, float("nan"))]]
)
def test_outline_without_area_is_refused(points: list[tuple[float, float]]) -> None:
    with pytest.raises(InputError, match="at least three points"):
        Outline.around(points)


def test_corners_are_stacked_whatever_their_shapes() -> None:
    x, y = stacked([(800.0, -200.0), (np.array([-1.0, -2.0]), 300.0)])
    assert x.tolist() == [[800, 800], [-1, -2]]
    assert y.tolist() == [[200, 200], [300, 300]]
    assert reach_mm(box_corners([3.0, 6.0], 1.0, 8.0)).tolist() == pytest.approx([5.0, 52**0.5])


def test_points_on_the_axle_line_pass_both_walls() -> None:
    assert half_turn_width_mm([(0.0, 330.0), (100.0, 10.0), (-100.0, 10.0)])[0] == 660


def test_walls_are_where_they_are_said_to_be() -> None:
    inner, below, beyond = corner_walls(900, 1000).blocks
    assert inner[:, 0].max() == 0
    assert inner[:, 1].min() == 0
    assert below[:, 1].max() == -900
    assert beyond[:, 0].min() == 1000
    left, right = corridor_walls(1200).blocks
    assert (left[:, 1].min(), right[:, 1].max()) == (600, -600)
    *_, ahead, behind = room_walls(2000, 1500).blocks
    assert (ahead[:, 0].min(), behind[:, 0].max()) == (1000, -1000)
    before, after, far = door_walls(1200, 800, 100).blocks
    assert (before[:, 0].max(), after[:, 0].min(), far[:, 1].max()) == (0, 800, -1200)
    assert before[:, 1].max() == 100
    left, right, top, west, east = tee_walls(914, 900, 1524).blocks
    assert (left[:, 0].max(), right[:, 0].min(), top[:, 1].min()) == (-450, 450, 914)
    assert (west[:, 0].max(), east[:, 0].min()) == (-762, 762)


def test_sizes_that_are_not_above_zero_are_named() -> None:
    with pytest.raises(InputError, match=r"corridor out must be above 0 mm; got -3 mm"):
        corner_walls(900, -3)
    with pytest.raises(InputError) as caught:
        door_walls(0, 800, float("nan"))
    assert len(caught.value.problems) == 2
    with pytest.raises(InputError, match="each arm"):
        tee_walls(914, 914, 900)
