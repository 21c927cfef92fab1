"""Swept floor, corners and doors against an open geometry library (shapely)."""

from __future__ import annotations

from collections.abc import Callable
from itertools import permutations

import numpy as np
import pytest
from scipy.optimize import minimize_scalar
from shapely.affinity import rotate, translate
from shapely.geometry import LineString, MultiPoint, Polygon
from shapely.ops import unary_union

from chairwright.figures.corner import (
    corner_best_arc_mm,
    corner_free_in_mm,
    corner_free_mm,
    corner_free_out_mm,
)
from chairwright.figures.doors import door_corridor_mm
from chairwright.figures.turning import corner_free_box_mm, half_turn_width_mm, pivot_diameter_mm
from chairwright.mass_points import FloatArray
from chairwright.places.arcs import corner_arc, door_arc
from chairwright.places.clearance import route_clearance_mm
from chairwright.places.moves import Move, Pose, Route
from chairwright.places.openings import least_tilt_deg, ways_through
from chairwright.places.outline import Outline
from chairwright.places.rooms import pivot_room_mm, three_arc_room
from chairwright.places.routes import corner_route, door_route, half_turn_route, room_route
from chairwright.places.sweep import swept, tiles
from chairwright.places.walls import (
    Walls,
    corner_walls,
    corridor_walls,
    door_walls,
    room_walls,
)

BOX = Outline.box(850, 250, 660)
MICRON = 1e-3


def shaped(outline: Outline) -> Polygon:
    return Polygon(outline.points)


def standing(route: Route, pose: Pose) -> Polygon:
    """The chair in a pose, put there by the library."""
    turned = rotate(shaped(route.outline), pose.heading_deg, origin=(0, 0))
    return translate(turned, pose.x_mm, pose.y_mm)


def any_outline(seed: int) -> Outline:
    """Feet ahead, handles behind, wheels beside the axle; the same on both sides."""
    rng = np.random.default_rng(seed)
    wide = rng.uniform(270, 350)
    feet = [(rng.uniform(500, 900), rng.uniform(80, wide)) for _ in range(3)]
    back = [(-rng.uniform(150, 400), rng.uniform(150, wide)) for _ in range(2)]
    return Outline.of([*feet, *back, (0.0, wide)])


def any_route(seed: int) -> Route:
    rng = np.random.default_rng(seed)
    points = rng.uniform([-400, -350], [900, 350], (int(rng.integers(3, 12)), 2))
    moves = []
    for kind in rng.integers(0, 3, int(rng.integers(1, 8))):
        straight, turn = rng.uniform(-600, 600), rng.uniform(-200, 200)
        centre = (0.0, rng.uniform(-1200, 1200))[int(kind) % 2]
        moves.append(Move(straight) if kind == 2 else Move(centre_mm=centre, turn_deg=turn))
    return Route(Outline.around(points), Pose(30.0, -20.0, rng.uniform(0, 360)), tuple(moves))


# --- on the spot -----------------------------------------------------------------------------


def test_pivot_circle_and_half_turn_swept_by_the_library() -> None:
    # A tenth of a degree leaves the arc by 0.0004 mm at most.
    whole = [rotate(shaped(BOX), turn, origin=(0, 0)) for turn in np.arange(0, 360, 0.1)]
    west, south, east, north = unary_union(whole).bounds
    assert east - west == pytest.approx(pivot_diameter_mm(BOX.corners)[0], abs=MICRON)
    assert north - south == pytest.approx(pivot_diameter_mm(BOX.corners)[0], abs=MICRON)
    west, south, east, north = unary_union(whole[:1801]).bounds
    depth, width = pivot_room_mm(BOX.corners)
    assert east - west == pytest.approx(depth[0], abs=MICRON)
    assert north - south == pytest.approx(width[0], abs=MICRON)
    assert width[0] == half_turn_width_mm(BOX.corners)[0]


# --- corner ----------------------------------------------------------------------------------


def pushed(outline: Outline, angle: float) -> Polygon:
    """What of the outer corner's square the outline shuts off at an angle, pushed into it.

    Axes: distance from the outer wall beyond, and from the outer wall of the way in.
    """
    _, south, east, _ = rotate(shaped(outline), angle, origin=(0, 0)).bounds
    turned = np.array(rotate(shaped(outline), angle, origin=(0, 0)).exterior.coords)
    far = np.column_stack([east - turned[:, 0], turned[:, 1] - south])
    flat = [(x, 0.0) for x, _ in far] + [(0.0, y) for _, y in far]
    return MultiPoint([*far, *flat, (0.0, 0.0)]).convex_hull


def equal_need(outline: Outline, angle: float) -> float:
    diagonal = LineString([(0, 0), (5000, 5000)])
    return float(pushed(outline, angle).intersection(diagonal).length / np.sqrt(2))


def first_need(outline: Outline, angle: float, second: float) -> float:
    upright = LineString([(second, 0), (second, 5000)])
    return float(pushed(outline, angle).intersection(upright).length)


def worst(need: Callable[[float], float]) -> float:
    """Greatest need over all angles: every half degree, then Brent's method round the best."""
    angles = np.arange(0.0, 90.1, 0.5)
    best = angles[int(np.argmax([need(angle) for angle in angles]))]
    around = (max(best - 0.5, 0.0), min(best + 0.5, 90.0))
    found = minimize_scalar(lambda q: -need(q), bounds=around, options={"xatol": 1e-9})
    return float(max(-found.fun, need(best)))


@pytest.mark.parametrize("seed", range(12))
def test_free_motion_bound_of_any_outline(seed: int) -> None:
    outline = any_outline(seed)
    expected = max(worst(lambda q: equal_need(outline, q)), outline.width)
    assert corner_free_mm(outline.corners)[0] == pytest.approx(expected, abs=MICRON)


@pytest.mark.parametrize("seed", range(6))
def test_free_motion_bound_of_unequal_corridors(seed: int) -> None:
    outline, other = any_outline(seed), 720.0 + 60 * seed
    expected = max(worst(lambda q: first_need(outline, q, other)), outline.width)
    assert corner_free_in_mm(outline.corners, other)[0] == pytest.approx(expected, abs=MICRON)
    turned_round = Outline.around(-outline.points)
    expected = max(worst(lambda q: first_need(turned_round, q, other)), outline.width)
    assert corner_free_out_mm(outline.corners, other)[0] == pytest.approx(expected, abs=MICRON)


def test_box_stands_in_equal_corridors_at_every_angle_and_no_tighter() -> None:
    width = float(corner_free_box_mm(1100, 660))
    needs = [equal_need(BOX, angle) for angle in np.arange(0.0, 90.01, 0.25)]
    assert max(needs) == pytest.approx(width, abs=MICRON)


@pytest.mark.parametrize("seed", range(8))
def test_best_arc_is_enough(seed: int) -> None:
    outline = any_outline(seed)
    width = float(corner_best_arc_mm(outline.corners)[0]) + 0.5
    route = corner_arc(outline, width, width, 0.0)
    assert route is not None
    assert touching(route, corner_walls(width, width)) is None


def test_best_arc_of_the_box_is_the_best() -> None:
    # Every radius and centre on a grid: the box against wall and inner corner, at each degree.
    radius = np.arange(330.0, 1300.0, 10.0)[:, None, None]
    angle = np.radians(np.arange(0.0, 90.5, 0.5))
    x, y = np.meshgrid(np.arange(-500.0, 1.0, 5.0), np.arange(0.0, 501.0, 5.0))
    near = np.max([-x * np.sin(q) + y * np.cos(q) for q in angle], axis=0) <= radius - 330.0
    rear = np.max([250 * np.sin(q) + (radius + 330) * np.cos(q) for q in angle], axis=0)
    front = np.max([850 * np.cos(q) + (radius + 330) * np.sin(q) for q in angle], axis=0)
    need = np.where(near, np.maximum(rear - y, front + x), np.inf)
    best = corner_best_arc_mm(BOX.corners)[0]
    # The grid can only lie above, by no more than a few of its steps.
    assert best - 0.05 <= need.min() <= best + 5


# --- shown moves -----------------------------------------------------------------------------


def touching(route: Route, walls: Walls, margin: float = 0.0) -> Pose | None:
    """First drawn pose nearer to a wall than the margin, as the library sees it."""
    blocks = [Polygon(each) for each in walls.blocks]
    for pose in route.shown(4.0):
        chair = standing(route, pose)
        if min(chair.distance(each) for each in blocks) < margin - 1e-6:
            return pose
        if any(chair.intersection(each).area > 1e-6 for each in blocks):
            return pose
    return None


def nearest(route: Route, walls: Walls) -> float:
    blocks = [Polygon(each) for each in walls.blocks]
    poses = route.shown(1.0)
    return min(float(standing(route, pose).distance(each)) for pose in poses for each in blocks)


@pytest.mark.parametrize("width", [985.0, 970.0, 950.0, 930.0])
def test_box_gets_round_corners_between_the_bounds(width: float) -> None:
    assert 855.6 < width < 1067.7
    route = corner_route(BOX, width, width, margin=5.0)
    assert route is not None
    assert route.start.heading_deg == 0
    assert route.end.heading_deg == pytest.approx(90, abs=1e-9)
    assert touching(route, corner_walls(width, width), margin=5.0) is None


def test_exact_clearance_is_that_of_the_library() -> None:
    for width in (985.0, 960.0):
        walls = corner_walls(width, width)
        route = corner_route(BOX, width, width)
        assert route is not None
        # Poses 1 mm apart can miss the nearest by half of that; never the other way.
        exact, sampled = route_clearance_mm(route, walls), nearest(route, walls)
        assert sampled - 0.5 <= exact <= sampled + 1e-9


@pytest.mark.parametrize("seed", range(6))
def test_clearance_of_any_move_beside_any_block(seed: int) -> None:
    rng = np.random.default_rng(seed)
    for _ in range(20):
        route = any_route(int(rng.integers(1 << 30)))
        route = Route(route.outline, route.start, route.moves[:1])
        block = Outline.around(rng.uniform(-1500, 1500, 2) + rng.uniform(-300, 300, (5, 2)))
        walls = Walls((block.points,))
        exact, sampled = route_clearance_mm(route, walls), nearest(route, walls)
        assert sampled - 0.5 <= exact <= sampled + 1e-9


@pytest.mark.parametrize(
    ("corridor", "opening"), [(1250, 800), (1100, 800), (1000, 800), (1200, 750)]
)
def test_box_gets_through_doors_off_a_corridor(corridor: float, opening: float) -> None:
    route = door_route(BOX, corridor, opening, 100)
    assert route is not None
    assert touching(route, door_walls(corridor, opening, 100), margin=5.0) is None
    last = standing(route, route.end)
    assert last.bounds[1] > 100


@pytest.mark.parametrize("opening", [660, 700, 800, 900, 1000, 1300])
def test_door_arc_is_enough_and_none_does_with_less(opening: float) -> None:
    corridor = float(door_corridor_mm(BOX.corners, opening)[0])
    route = door_arc(BOX, corridor + 1.0, opening, 2000, 0.0)
    assert route is not None
    assert touching(route, door_walls(corridor + 1.0, opening, 2000)) is None
    assert door_arc(BOX, corridor - 0.01, opening, 100, 0.0) is None


def test_about_turns_keep_off_the_walls() -> None:
    for width in (1340.0, 1310.0):
        route = half_turn_route(BOX, width)
        assert route is not None
        assert touching(route, corridor_walls(width), margin=5.0) is None
    for side in (1600.0, 1540.0):
        route = room_route(BOX, side, side)
        assert route is not None
        assert touching(route, room_walls(side, side), margin=5.0) is None


@pytest.mark.parametrize("seed", range(4))
def test_three_arcs_sweep_the_room_they_need(seed: int) -> None:
    outline = any_outline(seed)
    side, route = three_arc_room(outline)
    west, south, east, north = unary_union(
        [standing(route, each) for each in route.shown(1.0)]
    ).bounds
    # Poses 1 mm apart reach at most 0.0002 mm less than the arcs.
    assert max(east - west, north - south) == pytest.approx(side, abs=MICRON)
    assert side <= pivot_diameter_mm(outline.corners)[0] + MICRON


# --- swept floor -----------------------------------------------------------------------------


@pytest.mark.parametrize("seed", range(25))
def test_union_is_that_of_the_library(seed: int) -> None:
    route = any_route(seed)
    expected = unary_union([Polygon(each) for each in tiles(route)])
    assert swept(route).area_mm2 == pytest.approx(expected.area, abs=MICRON)


@pytest.mark.parametrize("seed", range(6))
def test_swept_floor_lies_within_the_stated_error_of_all_poses(seed: int) -> None:
    route, chord = any_route(100 + seed), 0.5
    drawn = swept(route, chord)
    outer = [each for each in drawn.rings if Polygon(each).exterior.is_ccw]
    holes = [each for each in drawn.rings if not Polygon(each).exterior.is_ccw]
    area = unary_union([Polygon(each) for each in outer])
    area = area.difference(unary_union([Polygon(each) for each in holes]))
    every = unary_union([standing(route, pose) for pose in route.shown(1.0)])
    assert every.difference(area.buffer(chord + 1e-6)).area < MICRON
    # Between poses 1 mm apart the library's union leaves notches of up to 1 mm.
    assert area.difference(every.buffer(chord + 1.0)).area < MICRON


# --- boxes through openings ------------------------------------------------------------------


@pytest.mark.parametrize("seed", range(40))
def test_tilted_rectangle_as_the_library_turns_it(seed: int) -> None:
    rng = np.random.default_rng(seed)
    across, up = rng.uniform(100, 1000, 2)
    width, height = rng.uniform(100, 1000, 2)
    upright = Polygon([(0, 0), (across, 0), (across, up), (0, up)])
    fits = []
    for angle in np.arange(0.0, 90.01, 0.1):
        west, south, east, north = rotate(upright, angle).bounds
        fits.append(east - west <= width + 1e-9 and north - south <= height + 1e-9)
    tilt = least_tilt_deg(across, up, width, height)
    if any(fits):
        assert tilt is not None
        assert tilt == 90 or tilt <= 0.1 * int(np.argmax(fits)) + 1e-9
    if tilt is not None:
        west, south, east, north = rotate(upright, tilt).bounds
        assert east - west <= width + 1e-6
        assert north - south <= height + 1e-6


AXES = {"width": (1, 2), "height": (0, 2), "depth": (0, 1)}
"""For each axis of tilt, the two directions in whose plane the box is turned."""


def turned_extent(one: float, two: float, angle: FloatArray) -> tuple[FloatArray, FloatArray]:
    sine, cosine = np.sin(angle), np.cos(angle)
    return one * cosine + two * sine, one * sine + two * cosine


@pytest.mark.parametrize("seed", range(30))
def test_ways_through_are_those_of_all_tilts_on_a_grid(seed: int) -> None:
    rng = np.random.default_rng(seed)
    box = tuple(rng.uniform(200, 1000, 3))
    space = tuple(rng.uniform(250, 1100, 3))
    ways = ways_through(box, *space)
    for way in ways:
        sides = [way.width_mm, way.height_mm, way.depth_mm]
        assert sorted(sides) == sorted(box)
        if way.tilt_about:
            one, two = AXES[way.tilt_about]
            turned = turned_extent(sides[one], sides[two], np.radians(way.tilt_deg))
            sides[one], sides[two] = map(float, turned)
        assert all(side <= room + 1e-6 for side, room in zip(sides, space, strict=True))
    found = {each.tilt_about for each in ways}
    grid = np.radians(np.arange(0.5, 90, 0.5))
    for axis, (one, two) in AXES.items():
        along = 3 - one - two
        for order in permutations(range(3)):
            side = [box[place] for place in order]
            across, up = turned_extent(side[one], side[two], grid)
            fits = bool(np.any((across <= space[one]) & (up <= space[two])))
            if fits and side[along] <= space[along]:
                assert axis in found or "" in found
