"""Moves by hand, and the routes that are made of them."""

from __future__ import annotations

from itertools import pairwise

import numpy as np
import pytest

from chairwright.places.clearance import gap_of_polygons_mm, move_clearance_mm, route_clearance_mm
from chairwright.places.field import Field, Fineness, Window
from chairwright.places.moves import Move, Pose, Route
from chairwright.places.outline import Outline
from chairwright.places.routes import (
    corner_route,
    door_route,
    half_turn_route,
    on_the_spot,
    room_route,
    tee_route,
)
from chairwright.places.walls import (
    Walls,
    block,
    corner_walls,
    corridor_walls,
    door_walls,
    room_walls,
    tee_walls,
)

BOX = Outline.box(850, 250, 660)


def ends_at(move: Move, pose: Pose) -> tuple[float, float, float]:
    end = move.after(pose)
    return end.x_mm, end.y_mm, end.heading_deg


def test_moves_by_hand() -> None:
    north = Pose(100, 200, 90)
    assert ends_at(Move(50.0), north) == pytest.approx((100, 250, 90))
    assert ends_at(Move(turn_deg=-30.0), north) == pytest.approx((100, 200, 60))
    # Centre 300 to the left of a chair that looks north: a quarter turn ends 300 on, 300 left.
    assert ends_at(Move(centre_mm=300, turn_deg=90), north) == pytest.approx((-200, 500, 180))
    # Back about a centre on the right, turning left.
    assert ends_at(Move(centre_mm=-300, turn_deg=90), Pose(0, 0, 0)) == pytest.approx(
        (-300, -300, 90)
    )


def test_words_for_moves() -> None:
    spot, ahead, back = Move(turn_deg=10), Move(20.0), Move(centre_mm=-300, turn_deg=9)
    assert [each.direction for each in (spot, ahead, back)] == ["on the spot", "forward", "back"]
    assert [each.side for each in (spot, ahead, back, Move(turn_deg=-1))] == [
        "left",
        "",
        "left",
        "right",
    ]
    assert back.travel_mm == pytest.approx(-300 * np.pi / 20)
    assert Move(centre_mm=100, turn_deg=-40).part(0.25).turn_deg == -10


def test_route_counts_reversals_past_turns_on_the_spot() -> None:
    moves = (Move(100), Move(turn_deg=5), Move(10), Move(-20), Move(turn_deg=5), Move(5))
    route = Route(BOX, Pose(0, 0, 0), moves)
    assert route.reversals == 2
    assert route.travel_mm == 135
    assert len(route.poses) == 7
    assert route.end == route.poses[-1]


def test_shown_poses_are_no_farther_apart_than_said() -> None:
    route = Route(BOX, Pose(0, 0, 0), (Move(330), Move(centre_mm=500, turn_deg=-70)))
    shown = route.shown(15.0)
    for one, two in pairwise(shown):
        apart = np.linalg.norm(one.place(BOX.points) - two.place(BOX.points), axis=1)
        assert apart.max() <= 15.0 + 1e-9
    assert shown[-1] == route.end


def test_places_of_points_and_back() -> None:
    pose = Pose(10, 20, 37)
    there = pose.place(BOX.points)
    assert pose.to_chair(there) == pytest.approx(BOX.points)


def test_clearance_by_hand() -> None:
    wall = Walls((block(1000, 1200, -1000, 1000),))
    start = Pose(0, 0, 0)
    assert move_clearance_mm(BOX, start, Move(100), wall) == pytest.approx(50)
    assert move_clearance_mm(BOX, start, Move(150.001), wall) == 0
    # The front corner of a chair on the spot is 911.811 from the axle, straight ahead once.
    turn = Move(turn_deg=90)
    assert move_clearance_mm(BOX, start, turn, wall) == pytest.approx(1000 - np.hypot(850, 330))
    # A post beside the front is met by the front edge between its corners.
    post = Walls((block(-5, 5, 500, 505),))
    assert move_clearance_mm(BOX, start, turn, post) == pytest.approx(0, abs=1e-9)
    assert move_clearance_mm(BOX, start, Move(turn_deg=-20), post) > 0
    assert gap_of_polygons_mm(BOX.points, block(900, 950, -5, 5)) == pytest.approx(50)
    assert gap_of_polygons_mm(BOX.points, block(800, 950, -5, 5)) < 0


def test_single_arc_in_wide_corridors() -> None:
    route = corner_route(BOX, 1300, 1200)
    assert route is not None
    assert [move.direction for move in route.moves] == ["forward"] * 3
    assert [move.turn_deg for move in route.moves] == [0, 90, 0]
    assert route_clearance_mm(route, corner_walls(1300, 1200)) > 50


def test_more_moves_in_narrower_corridors() -> None:
    counts = []
    for width in (1000.0, 960.0, 930.0):
        route = corner_route(BOX, width, width)
        assert route is not None
        assert route_clearance_mm(route, corner_walls(width, width)) >= 5
        counts.append(len(route.moves))
    assert counts == sorted(counts)
    assert counts[0] == 3


def test_right_hand_corner_of_a_lopsided_chair_is_the_left_hand_one_of_its_mirror_image() -> None:
    # One leg rest raised: the left foot reaches farther.
    chair = Outline.around([(900, 180), (900, 60), (700, -180), (-250, 310), (-250, -310)])
    for each in (chair, chair.mirrored()):
        route = corner_route(each, 950, 950)
        assert route is not None
        assert route_clearance_mm(route, corner_walls(950, 950)) >= 5


def test_a_door_too_narrow_and_a_door_wide_enough() -> None:
    assert door_route(BOX, 1500, 660, 100) is None
    route = door_route(BOX, 1500, 700, 100)
    assert route is not None
    assert route.end.y_mm > 100 + BOX.behind
    assert route_clearance_mm(route, door_walls(1500, 700, 100)) >= 5


def test_about_turns() -> None:
    spot = on_the_spot(BOX, corridor_walls(1336), 5.0)
    assert spot is not None
    assert len(spot.moves) == 1
    assert on_the_spot(BOX, corridor_walls(1335), 5.0) is None
    route = half_turn_route(BOX, 1320)
    assert route is not None
    assert len(route.moves) > 1
    assert route.end.heading_deg == 180
    room = room_route(BOX, 1850, 1340)
    assert room is not None
    assert len(room.moves) == 1
    assert route_clearance_mm(room, room_walls(1850, 1340)) >= 5


def test_turn_in_a_tee() -> None:
    route = tee_route(BOX, 1050, 1050, 1900)
    assert route is not None
    assert route_clearance_mm(route, tee_walls(1050, 1050, 1900)) >= 5
    assert (route.start.heading_deg, route.end.heading_deg) == (90, -90)
    assert route.reversals >= 1


def test_lines_left_out_only_err_on_the_safe_side() -> None:
    walls = corner_walls(950, 950)
    field = Field(BOX, walls, Window(-1000, 950, -950, 900, 0, 90), Fineness(100, 5.0))
    rng = np.random.default_rng(1)
    x, y = rng.uniform(-900, 900, 2000), rng.uniform(-900, 900, 2000)
    turn = rng.integers(0, len(field.headings), 2000)
    clear = field.clear(field.gaps(x, y, turn), 0.0)
    truly = [
        min(
            gap_of_polygons_mm(Pose(a, b, field.heading_deg(int(t))).place(BOX.points), each)
            for each in walls.blocks
        )
        > 0
        for a, b, t in zip(x, y, turn, strict=True)
    ]
    assert not np.any(clear & ~np.array(truly))
    # Hardly anything is lost by it.
    assert np.sum(clear) >= 0.98 * np.sum(truly) > 0
