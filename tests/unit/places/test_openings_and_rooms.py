"""Boxes through openings, lifts and small rooms, by hand."""

from __future__ import annotations

from math import atan2, degrees, hypot

import numpy as np
import pytest

from chairwright.errors import InputError
from chairwright.figures.doors import door_corridor_mm, door_straight_mm
from chairwright.figures.folded import missing_mm
from chairwright.figures.turning import box_corners
from chairwright.places.clearance import route_clearance_mm
from chairwright.places.openings import Way, least_tilt_deg, ways_through
from chairwright.places.outline import Outline
from chairwright.places.rooms import lift_ride, pivot_room_mm, three_arc_room
from chairwright.places.walls import room_walls

BOX = Outline.box(850, 250, 660)


def test_straight_way_in() -> None:
    assert ways_through((900, 300, 800), 1000, 350, 850) == (Way(900, 300, 800),)
    assert ways_through((900, 300, 800), 1000, 290, 850) == ()


def test_rolled_in_the_plane_of_the_opening() -> None:
    # A thin box 900 long in an opening of 800 x 600: its diagonal is 1000.
    ways = ways_through((900, 50, 700), 800, 600, 720)
    assert [way.tilt_about for way in ways] == ["depth"]
    tilt = ways[0].tilt_deg
    assert 900 * np.cos(np.radians(tilt)) + 50 * np.sin(np.radians(tilt)) == pytest.approx(800)
    assert ways_through((900, 50, 800), 800, 600, 720) == ()


def test_least_tilt_of_a_line_and_of_what_only_fits_turned_over() -> None:
    assert least_tilt_deg(1000, 0, 800, 600) == pytest.approx(degrees(atan2(600, 800)))
    assert hypot(800, 600) == 1000
    assert least_tilt_deg(500, 300, 300, 500) == pytest.approx(90)
    assert least_tilt_deg(500, 300, 510, 310) == 0
    assert least_tilt_deg(500, 300, 200, 2000) is None


def test_a_long_thin_box_stands_up_against_the_back_of_the_boot() -> None:
    ways = ways_through((600, 40, 1100), 650, 700, 900)
    assert {way.tilt_about for way in ways} >= {"width"}


def test_what_is_missing_on_arrays() -> None:
    folded = (np.array([900.0, 900.0]), np.array([300.0, 250.0]), 820.0)
    assert missing_mm(folded, 1000, 280, 900).tolist() == [20, -30]


def test_boots_and_boxes_need_sizes() -> None:
    with pytest.raises(InputError, match="box: width"):
        ways_through((900, 0, 800), 1000, 300)
    with pytest.raises(InputError, match="opening: height"):
        ways_through((900, 300, 800), 1000, -1)


def test_lift_with_and_without_room_to_turn() -> None:
    tight = lift_ride(BOX, 800, 1100, 1400)
    assert tight.goes_in
    assert (tight.spare_door_mm, tight.spare_width_mm, tight.spare_depth_mm) == (130, 430, 290)
    assert tight.turn is None
    roomy = lift_ride(BOX, 900, 1600, 1900)
    assert roomy.turn is not None
    assert route_clearance_mm(roomy.turn, room_walls(1900, 1600)) >= 5
    short = lift_ride(BOX, 640, 600, 1000)
    assert not short.goes_in
    assert (short.spare_door_mm, short.spare_depth_mm) == (-30, -110)
    with pytest.raises(InputError, match="door width"):
        lift_ride(BOX, 0, 1100, 1400)


def test_room_for_a_turn_on_the_spot_and_by_three_arcs() -> None:
    depth, width = pivot_room_mm(box_corners(850, 250, 660))
    assert depth[0] == pytest.approx(2 * hypot(850, 330))
    assert width[0] == pytest.approx(hypot(850, 330) + hypot(250, 330))
    side, route = three_arc_room(BOX)
    assert 1283 < side < depth[0]
    assert route_clearance_mm(route, room_walls(side + 2, side + 2)) == pytest.approx(1, abs=1e-6)
    assert [move.direction for move in route.moves] == ["forward", "back", "forward"]


def test_door_straight_and_from_a_corridor_by_hand() -> None:
    box = box_corners(850, 250, 660)
    assert door_straight_mm(box)[0] == 660
    assert door_straight_mm(box, hands=50)[0] == 760
    # Turning on the spot half a chair's width from the near jamb: the rear corner against the
    # far wall, the far jamb on the circle of the front corner.
    on_the_spot = hypot(250, 330) + np.sqrt(850**2 + 330**2 - (800 - 330) ** 2)
    assert door_corridor_mm(box, 800)[0] == pytest.approx(on_the_spot, abs=1e-6)
    assert door_corridor_mm(box, 659)[0] == np.inf
