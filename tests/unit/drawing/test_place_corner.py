"""Plan of a corner: drawn floor, gaps and overlaps against shapely, needs against the figures."""

from __future__ import annotations

import re

import numpy as np
import pytest
from shapely.geometry import Point, Polygon

from chairwright.drawing.dimensions import Units
from chairwright.drawing.place_corner import corner_sheet
from chairwright.drawing.place_corner_way import corner_way, tightest_pose
from chairwright.drawing.place_pose import outline_of
from chairwright.drawing.scene import Line, Polyline
from chairwright.drawing.sheet import A5_LANDSCAPE, A5_PORTRAIT, Page
from chairwright.drawing.svg import to_svg
from chairwright.figures.corner import corner_best_arc_out_mm, corner_free_in_mm
from chairwright.places.arcs import corner_arc, corner_arc_that_hits
from chairwright.places.kinds import Corner
from chairwright.places.moves import Pose
from chairwright.places.outline import Outline
from chairwright.places.walls import corner_walls

from .place_scenes import (
    MICRON,
    all_poses,
    box,
    group,
    least_distance,
    overlapping,
    real_ring,
    scale_of,
    standing,
    texts,
    whole_floor,
    words,
)
from .shapes import ALL, average_adult

WIDTHS = {"arc": (1100.0, 1050.0), "open": (900.0, 880.0), "stuck": (800.0, 760.0)}


def corner(width_in: float, width_out: float, name: str = "to the kitchen") -> Corner:
    return Corner(name=name, width_in_mm=width_in, width_out_mm=width_out)


@pytest.mark.parametrize("widths", [(1100.0, 1050.0), (1300.0, 1000.0), (1000.0, 1400.0)])
def test_gaps_are_the_least_distances_of_the_library(widths: tuple[float, float]) -> None:
    outline, walls = box(), corner_walls(*widths)
    route = corner_arc(outline, *widths, 0.0)
    assert route is not None
    poses = all_poses(route)
    way = corner_way(outline, *widths)
    assert way.outcome == "arc"
    for gap, block in zip(way.gaps, walls.blocks, strict=True):
        # A fiftieth of a degree leaves an arc of 2 m by less than a micron.
        assert gap.value_mm == pytest.approx(least_distance(poses, block), abs=MICRON)
        drawn = np.hypot(gap.end[0] - gap.start[0], gap.end[1] - gap.start[1])
        # chords leave an arc by half a millimetre; of places as near to half one, one is taken
        assert drawn == pytest.approx(gap.value_mm, abs=1.0 + MICRON)
    assert way.clearance_mm == pytest.approx(min(gap.value_mm for gap in way.gaps), abs=1e-9)


def test_drawn_floor_is_what_the_library_sweeps() -> None:
    outline = box()
    route = corner_arc(outline, 1100.0, 1050.0, 0.0)
    assert route is not None
    sheet = corner_sheet(outline, corner(1100.0, 1050.0))
    (ring,) = group(sheet, "swept").items
    drawn, floor = real_ring(sheet, ring), whole_floor(route)
    chord = 0.5
    assert drawn.area <= floor.area + 1.0
    assert floor.area - drawn.area <= chord * floor.length
    placed = Polygon(corner_way(outline, 1100.0, 1050.0).rings[0])
    assert drawn.area == pytest.approx(placed.area, abs=MICRON * scale_of(sheet))
    assert floor.difference(placed.buffer(chord + MICRON)).area < MICRON


def test_first_position_is_drawn_whole_and_the_others_dashed() -> None:
    shape = average_adult()
    sheet = corner_sheet(shape, corner(1100.0, 1050.0))
    names = [each.name for each in sheet.groups]
    assert {"seat", "rear-wheels", "feet", "upper-body", "outline"} <= set(names)
    pens = {getattr(item, "pen", "") for item in group(sheet, "on-the-way").items}
    assert pens == {"hidden"}
    area = Polygon(outline_of(shape).points).area
    for item in (*group(sheet, "outline").items, *group(sheet, "on-the-way").items):
        assert real_ring(sheet, item).area == pytest.approx(area, abs=MICRON * 100)


def test_overlap_of_the_best_turn_is_that_of_the_library() -> None:
    outline, widths = box(), WIDTHS["open"]
    walls = corner_walls(*widths)
    way = corner_way(outline, *widths)
    assert way.outcome == "open"
    inner, *outer = [Polygon(each) for each in walls.blocks]
    floor = Polygon(way.rings[0])
    for wall in outer:
        assert floor.intersection(wall).area < 1.0
    (hit,) = way.overlaps
    assert Polygon(hit).area == pytest.approx(floor.intersection(inner).area, abs=MICRON)
    (gap,) = way.gaps
    depth = floor.exterior.distance(Point(0.0, 0.0))
    assert gap.value_mm == pytest.approx(depth, abs=1e-6)
    route = corner_arc_that_hits(outline, *widths)
    depth = whole_floor(route).exterior.distance(Point(0.0, 0.0))
    assert gap.value_mm == pytest.approx(depth, abs=0.5)


def test_tightest_stand_is_the_worst_angle_of_the_library() -> None:
    outline, (wide_in, wide_out) = box(), WIDTHS["stuck"]
    way = corner_way(outline, wide_in, wide_out)
    assert way.outcome == "stuck"

    def depth(angle: float) -> float:
        turned = standing(outline, Pose(0.0, 0.0, angle))
        _, south, east, _ = turned.bounds
        placed = standing(outline, Pose(wide_out - east, -wide_in - south, angle))
        at = Point(0.0, 0.0)
        return float(placed.exterior.distance(at)) * (1 if placed.contains(at) else -1)

    best = max(np.arange(0.0, 90.01, 0.1), key=depth)
    deepest = max(depth(angle) for angle in np.arange(best - 0.1, best + 0.1, 0.0005))
    (gap,) = way.gaps
    assert gap.value_mm == pytest.approx(deepest, abs=MICRON)
    pose = tightest_pose(outline, wide_in, wide_out)
    placed = standing(outline, pose)
    assert placed.bounds[2] == pytest.approx(wide_out, abs=1e-6)
    assert placed.bounds[1] == pytest.approx(-wide_in, abs=1e-6)


def test_needs_in_words_are_the_figures() -> None:
    outline = outline_of(average_adult())
    told = words(corner_sheet(average_adult(), corner(750.0, 760.0)), "verdict")
    need = corner_best_arc_out_mm(outline.corners, 750.0)[0]
    assert told.startswith("Not known: one steady turn is not enough")
    assert f"needs a way out of {need:.0f} mm; there are 760 mm" in told
    told = words(corner_sheet(average_adult(), corner(680.0, 700.0)), "verdict")
    need = corner_free_in_mm(outline.corners, 700.0)[0]
    assert told.startswith("Fails: no way of moving")
    assert f"they need a way in of {need:.0f} mm; there are 680 mm" in told


def test_widths_and_gaps_are_written() -> None:
    sheet = corner_sheet(box(), corner(1100.0, 1050.0))
    assert words(sheet, "dimension-width-in-mm") == "1100 way in"
    assert words(sheet, "dimension-width-out-mm") == "1050 way out"
    way = corner_way(box(), 1100.0, 1050.0)
    for gap in way.gaps:
        shown = words(sheet, f"dimension-{gap.name.replace('_', '-')}")
        assert shown == f"{round(gap.value_mm)} clear"


@pytest.mark.parametrize("widths", [(700.0, 500.0), (500.0, 700.0)])
def test_a_chair_wider_than_a_corridor_hits_both_its_walls(widths: tuple[float, float]) -> None:
    way = corner_way(box(), *widths)
    assert way.outcome == "wide"
    assert len(way.overlaps) == 2
    # the box has straight sides of 1100 mm; of the way in 200 mm lie beyond its inner wall
    assert way.gaps[0].value_mm == pytest.approx((660.0 - 500.0) / 2, abs=1e-9)
    assert "wider than the corridor" in words(corner_sheet(box(), corner(*widths)), "verdict")


def test_moves_are_shown_when_they_are_asked_for() -> None:
    outline, widths = box(), (975.0, 975.0)
    assert corner_arc(outline, *widths, 0.0) is None
    assert corner_way(outline, *widths).outcome == "open"
    way = corner_way(outline, *widths, moves=True)
    assert way.outcome == "moves"
    assert way.clearance_mm >= 5.0 - 1e-9
    assert len(way.poses) == way.moves + 1
    sheet = corner_sheet(outline, corner(*widths), moves=True)
    assert f"Holds: goes round in {way.moves} moves to and fro" in words(sheet, "verdict")


@pytest.mark.parametrize("widths", [(1100, 1050), (750, 760), (680, 700), (700, 500)])
def test_what_is_hit_reads_without_colour(widths: tuple[float, float]) -> None:
    sheet = corner_sheet(average_adult(), corner(*widths))
    drawn = [each for each in sheet.groups if each.name == "overlap"]
    hit = bool(corner_way(outline_of(average_adult()), *widths).overlaps)
    assert bool(drawn) is hit
    for item in (item for each in drawn for item in each.items):
        assert isinstance(item, Polyline | Line)
        assert item.pen == ("hit" if isinstance(item, Polyline) else "thin")
    colours = set(re.findall(r"#[0-9a-f]{6}", to_svg(sheet, "corner")))
    assert colours <= {"#1d2b36", "#ffffff", "#2a5d9f"}  # the last in the ring of "not known"


@pytest.mark.parametrize("make", ALL)
@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("page", [A5_PORTRAIT, A5_LANDSCAPE, Page(120.0, 160.0)])
def test_it_fits_the_page_with_texts_apart(make: object, units: Units, page: Page) -> None:
    assert callable(make)
    long = "from the hallway past the cupboard to the kitchen, " * 4
    for widths in WIDTHS.values():
        sheet = corner_sheet(make(), corner(*widths, long), units=units, page=page)
        assert sheet.width_mm <= page.width_mm
        assert sheet.height_mm <= page.height_mm
        assert overlapping(texts(sheet)) == []
        assert long in sheet.description


def test_the_same_corner_gives_the_same_bytes() -> None:
    first, second = (
        to_svg(corner_sheet(average_adult(), corner(1100.0, 1050.0)), "c") for _ in range(2)
    )
    assert first == second


def test_an_outline_alone_is_enough() -> None:
    sheet = corner_sheet(Outline.box(800, 300, 600), corner(1100.0, 1050.0))
    assert "seat" not in {each.name for each in sheet.groups}
