"""Plan of a doorway: gaps, hands, leaf and overlaps against shapely and the figures."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from shapely.geometry import Point, Polygon

from chairwright.chair.shape import Shape
from chairwright.drawing.dimensions import Units
from chairwright.drawing.place_door import HANDS_MM, door_sheet
from chairwright.drawing.place_door_way import door_way, hinge_at_mm, leaf_ring
from chairwright.drawing.place_pose import outline_of
from chairwright.drawing.scene import Arc
from chairwright.drawing.sheet import A5_LANDSCAPE, A5_PORTRAIT, Page
from chairwright.drawing.svg import to_svg
from chairwright.figures.doors import door_corridor_mm
from chairwright.places.arcs import door_arc
from chairwright.places.kinds import Door
from chairwright.places.walls import door_walls

from .place_scenes import (
    MICRON,
    all_poses,
    box,
    group,
    least_distance,
    overlapping,
    real_ring,
    scale_of,
    texts,
    whole_floor,
    words,
)
from .shapes import ALL, average_adult

CORRIDOR: dict[str, Any] = {"approach": "corridor", "approach_side": "latch"}


def door(width: float, **more: Any) -> Door:
    return Door(**{"name": "bathroom", "clear_width_mm": width, **more})


def test_straight_through_the_room_on_each_side() -> None:
    way = door_way(box(), door(750.0), HANDS_MM)
    assert way.outcome == "arc"
    (gap,) = way.gaps
    assert gap.value_mm == way.clearance_mm == pytest.approx((750.0 - 660.0) / 2, abs=1e-9)
    told = words(door_sheet(box(), door(750.0)), "verdict")
    assert told.startswith("Holds: goes through, 45 mm to spare on each side.")
    assert "Clear width 750 mm, chair 660 mm." in told


@pytest.mark.parametrize(("width", "kept"), [(760.0, True), (759.9, False), (661.0, False)])
def test_hands_need_fifty_millimetres_on_each_side(width: float, kept: bool) -> None:
    # 660 mm and twice 50 mm
    way = door_way(box(), door(width), HANDS_MM)
    told = words(door_sheet(box(), door(width)), "verdict")
    assert "With hands on the rims 760 mm" in told
    assert ("hands can stay on the rims" in told) is kept
    assert ("take hands off the rims" in told) is not kept
    if width < 759.0:
        assert len(way.overlaps) == 2
    assert "rims" not in words(door_sheet(box(), door(width), hands_mm=0.0), "verdict")


def test_hands_in_the_wall_are_drawn_as_the_library_cuts_them() -> None:
    sheet = door_sheet(box(), door(700.0))
    width, thick = 700.0, 100.0
    walls = [Polygon(each) for each in door_walls(4000.0, width, thick).blocks[:2]]
    # one fist at each side of the box, 50 mm wide and 90 mm long, half way through the wall
    for item, wall, x in zip(
        [each for each in group(sheet, "overlap").items if getattr(each, "pen", "") == "hit"],
        walls, (700.0 / 2 - 330.0 - 25.0, 700.0 / 2 + 330.0 + 25.0), strict=True,
    ):  # fmt: skip
        fist = (
            Point(x, thick / 2 - 20.0).buffer(25.0).union(Point(x, thick / 2 + 20.0).buffer(25.0))
        )
        cut = fist.convex_hull.intersection(wall).area
        # both are drawn round with a few chords
        assert real_ring(sheet, item).area == pytest.approx(cut, rel=0.02)


@pytest.mark.parametrize(("corridor", "width"), [(1300.0, 800.0), (1100.0, 1000.0)])
def test_gaps_from_a_corridor_are_those_of_the_library(corridor: float, width: float) -> None:
    outline, walls = box(), door_walls(corridor, width, 100.0)
    route = door_arc(outline, corridor, width, 100.0, 0.0)
    assert route is not None
    way = door_way(outline, door(width, corridor_width_mm=corridor, **CORRIDOR), 0.0)
    assert way.outcome == "arc"
    poses = all_poses(route)
    for gap, block in zip(way.gaps, walls.blocks, strict=True):
        # a fiftieth of a degree leaves an arc of 2 m by less than a micron
        assert gap.value_mm == pytest.approx(least_distance(poses, block), abs=MICRON)
    floor = Polygon(way.rings[0])
    assert whole_floor(route).difference(floor.buffer(0.5 + MICRON)).area < MICRON


def test_a_corridor_too_narrow_for_one_turn_names_what_it_needs() -> None:
    outline = outline_of(average_adult())
    narrow = door(700.0, corridor_width_mm=900.0, **CORRIDOR)
    need = door_corridor_mm(outline.corners, 700.0)[0]
    assert need > 900.0
    told = words(door_sheet(average_adult(), narrow), "verdict")
    assert told.startswith(
        "Not known: one steady turn is not enough; no moves to and fro were tried"
    )
    assert f"needs a corridor of {need:.0f} mm; there are 900 mm" in told


def test_overlap_at_the_far_jamb_is_that_of_the_library() -> None:
    outline, width, corridor = box(), 750.0, 1050.0
    way = door_way(outline, door(width, corridor_width_mm=corridor, **CORRIDOR), 0.0)
    assert way.outcome == "open"
    near, far, beyond = [Polygon(each) for each in door_walls(corridor, width, 100.0).blocks]
    floor = Polygon(way.rings[0])
    assert floor.intersection(near).area < 1.0
    assert floor.intersection(beyond).area < 1.0
    (hit,) = way.overlaps
    assert Polygon(hit).area == pytest.approx(floor.intersection(far).area, abs=MICRON)
    depth = floor.exterior.distance(Point(width, 0.0))
    assert way.gaps[0].value_mm == pytest.approx(depth, abs=1e-6)


@pytest.mark.parametrize("more", [{}, {"corridor_width_mm": 1200.0, **CORRIDOR}])
def test_a_chair_wider_than_the_doorway_hits_both_jambs(more: dict[str, Any]) -> None:
    narrow = door(640.0, **more)
    way = door_way(box(), narrow, HANDS_MM)
    assert way.outcome == "wide"
    # 10 mm on each side, as long as the wall is thick
    for hit in way.overlaps:
        assert Polygon(hit).area == pytest.approx(10.0 * 100.0, abs=MICRON)
    assert way.gaps[0].value_mm == pytest.approx(10.0, abs=1e-9)
    assert words(door_sheet(box(), narrow), "verdict").startswith("Fails: the chair is wider")


@pytest.mark.parametrize(
    ("side", "swing", "hinge", "south"),
    [("hinge", "push", 0.0, 100.0), ("latch", "push", 800.0, 100.0), ("hinge", "pull", 0.0, -800.0),
     ("latch", "pull", 800.0, -800.0)],
)  # fmt: skip
def test_leaf_stands_beside_the_clear_width(
    side: Any, swing: Any, hinge: float, south: float
) -> None:
    one = door(
        800.0, approach="corridor", corridor_width_mm=1300.0, approach_side=side, swing=swing
    )
    assert hinge_at_mm(one) == hinge
    leaf = leaf_ring(one)
    assert leaf is not None
    west, low, east, high = Polygon(leaf).bounds
    assert (low, high) == (south, south + 800.0)
    assert east <= 0.0 or west >= 800.0
    sheet = door_sheet(box(), one)
    (swept,) = [item for item in group(sheet, "leaf").items if isinstance(item, Arc)]
    assert swept.radius * scale_of(sheet) == pytest.approx(800.0, abs=1e-9)
    assert swept.to_deg - swept.from_deg == 90.0


def test_a_leaf_in_the_way_is_told_and_drawn() -> None:
    pulled = door(800.0, corridor_width_mm=1300.0, swing="pull", **CORRIDOR)
    pushed = door(800.0, corridor_width_mm=1300.0, swing="push", **CORRIDOR)
    way = door_way(box(), pulled, 0.0)
    leaf = leaf_ring(pulled)
    assert leaf is not None
    cut = Polygon(way.rings[0]).intersection(Polygon(leaf)).area
    assert sum(Polygon(each).area for each in way.overlaps) == pytest.approx(cut, abs=MICRON)
    assert "only if the door opens further" in words(door_sheet(box(), pulled), "verdict")
    assert door_way(box(), pushed, 0.0).overlaps == ()
    assert words(door_sheet(box(), pushed), "verdict").startswith("Holds")


def test_sizes_are_dimensioned() -> None:
    sheet = door_sheet(average_adult(), door(800.0))
    assert words(sheet, "dimension-clear-width-mm") == "800 clear width"
    assert words(sheet, "dimension-overall-width-mm") == "640 chair"
    sheet = door_sheet(average_adult(), door(800.0, corridor_width_mm=1300.0, **CORRIDOR))
    assert words(sheet, "dimension-corridor-width-mm") == "1300 corridor"


@pytest.mark.parametrize("make", ALL)
@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("page", [A5_PORTRAIT, A5_LANDSCAPE, Page(120.0, 160.0)])
def test_it_fits_the_page_with_texts_apart(
    make: Callable[[], Shape], units: Units, page: Page
) -> None:
    long = "the door between the hallway and the bathroom, " * 4
    for more in ({"swing": "pull"}, {"swing": "push", "corridor_width_mm": 1250.0, **CORRIDOR}):
        one = door(820.0, **{**more, "name": long})
        sheet = door_sheet(make(), one, units=units, page=page)
        assert sheet.width_mm <= page.width_mm
        assert sheet.height_mm <= page.height_mm
        assert overlapping(texts(sheet)) == []
        assert long in sheet.description


def test_the_same_door_gives_the_same_bytes() -> None:
    one = door(800.0, corridor_width_mm=1300.0, **CORRIDOR)
    assert to_svg(door_sheet(average_adult(), one), "d") == to_svg(
        door_sheet(average_adult(), one), "d"
    )
