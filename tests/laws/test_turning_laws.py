"""What must hold for every chair: more room is never harder, less chair never needs more."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from chairwright.figures.corner import (
    corner_arc_mm,
    corner_arc_out_mm,
    corner_best_arc_mm,
    corner_best_arc_out_mm,
    corner_free_in_mm,
    corner_free_mm,
    corner_free_out_mm,
    corner_widths_mm,
)
from chairwright.figures.doors import door_corridor_mm, door_straight_mm
from chairwright.figures.folded import missing_mm
from chairwright.figures.turning import (
    Corner,
    box_corners,
    corner_free_box_mm,
    corner_free_box_other_mm,
    half_turn_free_mm,
    half_turn_width_mm,
    pivot_diameter_mm,
    wheel_pivot_diameter_mm,
)
from chairwright.mass_points import FloatArray
from chairwright.places.arcs import corner_arc, door_arc
from chairwright.places.clearance import route_clearance_mm
from chairwright.places.field import Fineness
from chairwright.places.moves import Move, Pose, Route
from chairwright.places.openings import ways_through
from chairwright.places.outline import Outline
from chairwright.places.rooms import three_arc_room
from chairwright.places.routes import corner_route
from chairwright.places.sweep import swept
from chairwright.places.walls import corner_walls, door_walls

HAIR = 1e-3
"""The numeric minima are met to a micrometre."""
CHAIRS = settings(max_examples=60, deadline=None)
Need = Callable[[tuple[Corner, ...]], FloatArray]

EQUAL: dict[str, Need] = {
    "pivot": pivot_diameter_mm,
    "pivot about a wheel": lambda corners: wheel_pivot_diameter_mm(corners, 560.0),
    "half turn": half_turn_width_mm,
    "half turn, free": half_turn_free_mm,
    "corner, free": corner_free_mm,
    "corner, arc": corner_arc_mm,
    "corner, best arc": corner_best_arc_mm,
    "door, straight": door_straight_mm,
}
OF_A_WIDTH: dict[str, Callable[[tuple[Corner, ...], FloatArray], FloatArray]] = {
    "free, way out": corner_free_out_mm,
    "free, way in": corner_free_in_mm,
    "arc": corner_arc_out_mm,
    "best arc": corner_best_arc_out_mm,
    "door": door_corridor_mm,
}


@st.composite
def chairs(draw: st.DrawFn) -> tuple[Corner, ...]:
    """Feet ahead, handles behind, wheels beside the axle."""
    wide = draw(st.floats(260, 400))
    inner = st.floats(80, wide)
    feet = [(draw(st.floats(450, 950)), draw(inner)) for _ in range(2)]
    rear = (-draw(st.floats(100, 450)), draw(inner))
    return (*feet, rear, (0.0, wide))


def smaller(corners: tuple[Corner, ...], shorter: float, narrower: float) -> tuple[Corner, ...]:
    """Front shortened and everything drawn in towards the mid-plane; the rest stays."""
    kept = [(min(float(x), 950 - shorter), float(y) * (1 - narrower)) for x, y in corners]  # type: ignore[arg-type]
    return tuple(kept)


@pytest.mark.parametrize("name", EQUAL)
@CHAIRS
@given(chairs(), st.floats(0, 500), st.floats(0, 0.3))
def test_a_shorter_front_and_a_narrower_chair_never_need_more(
    name: str, corners: tuple[Corner, ...], shorter: float, narrower: float
) -> None:
    less = smaller(corners, shorter, narrower)
    assert EQUAL[name](less)[0] <= EQUAL[name](corners)[0] + HAIR


@pytest.mark.parametrize("name", OF_A_WIDTH)
@CHAIRS
@given(chairs(), st.floats(0, 500), st.floats(0, 0.3), st.floats(850, 1500))
def test_nor_where_one_width_is_given(
    name: str, corners: tuple[Corner, ...], shorter: float, narrower: float, width: float
) -> None:
    need, known = OF_A_WIDTH[name], np.array([width])
    # A coarse look over the radius may miss a valley by a hair more than over the angle.
    assert need(smaller(corners, shorter, narrower), known)[0] <= need(corners, known)[0] + 0.05


@pytest.mark.parametrize("name", OF_A_WIDTH)
@CHAIRS
@given(chairs())
def test_a_wider_place_is_never_harder(name: str, corners: tuple[Corner, ...]) -> None:
    widths = np.linspace(600.0, 1800.0, 49)
    needs = OF_A_WIDTH[name](corners, widths)
    whole = np.where(np.isfinite(needs), needs, 1e6)
    assert np.all(np.diff(whole) <= 0.05)
    assert np.all(np.isinf(needs[widths < door_straight_mm(corners)[0]]))


@CHAIRS
@given(chairs())
def test_bounds_stand_in_their_order(corners: tuple[Corner, ...]) -> None:
    widths = corner_widths_mm(corners)
    assert door_straight_mm(corners)[0] <= widths["free"][0] + HAIR
    assert widths["free"][0] <= widths["best_arc"][0] + HAIR
    assert widths["best_arc"][0] <= widths["arc"][0] + HAIR
    assert half_turn_free_mm(corners)[0] <= half_turn_width_mm(corners)[0] + HAIR
    assert half_turn_width_mm(corners)[0] <= pivot_diameter_mm(corners)[0] + HAIR
    assert pivot_diameter_mm(corners)[0] <= wheel_pivot_diameter_mm(corners, 560.0)[0]


@CHAIRS
@given(chairs())
def test_unequal_corridors_meet_the_equal_ones(corners: tuple[Corner, ...]) -> None:
    widths = corner_widths_mm(corners)
    for name, need in (("free", corner_free_out_mm), ("best_arc", corner_best_arc_out_mm)):
        assert need(corners, widths[name] + 0.01)[0] <= widths[name][0] + 0.1
    assert corner_arc_out_mm(corners, widths["arc"] + 0.01)[0] <= widths["arc"][0] + 0.1


@CHAIRS
@given(st.floats(400, 900), st.floats(0, 300), st.floats(500, 800), st.floats(0.8, 1.6))
def test_a_box_is_a_box(ahead: float, behind: float, width: float, share: float) -> None:
    box, length = box_corners(ahead, behind, width), ahead + behind
    if length < width:
        ahead, length = ahead + width - length, width
        box = box_corners(ahead, behind, width)
    assert corner_free_mm(box)[0] == pytest.approx(corner_free_box_mm(length, width), abs=HAIR)
    other = share * float(corner_free_box_mm(length, width))
    needs = (corner_free_out_mm(box, other)[0], corner_free_in_mm(box, other)[0])
    expected = corner_free_box_other_mm(length, width, other)[0]
    assert needs == pytest.approx((expected, expected), abs=HAIR)


@pytest.mark.parametrize("name", EQUAL)
@CHAIRS
@given(chairs(), st.floats(0.5, 2.0))
def test_the_unit_of_length_does_not_matter(
    name: str, corners: tuple[Corner, ...], scale: float
) -> None:
    if name == "pivot about a wheel":
        return
    larger = tuple((float(x) * scale, float(y) * scale) for x, y in corners)  # type: ignore[arg-type]
    assert EQUAL[name](larger)[0] == pytest.approx(scale * EQUAL[name](corners)[0], abs=2 * HAIR)


@CHAIRS
@given(chairs(), st.floats(0.5, 60), st.floats(0, 1))
def test_arcs_keep_the_margin_that_they_promise(
    corners: tuple[Corner, ...], spare: float, share: float
) -> None:
    outline, margin = Outline.of(corners), share * spare / 4
    width = float(corner_best_arc_mm(corners)[0]) + spare + 1.0
    route = corner_arc(outline, width, width, margin)
    assert route is not None
    assert route_clearance_mm(route, corner_walls(width, width)) >= margin - 1e-6
    opening = outline.width + 2 * margin + spare
    corridor = float(door_corridor_mm(corners, opening - 2 * margin)[0]) + 4 * margin + spare
    through = door_arc(outline, corridor, opening, 100.0, margin)
    if through is not None:
        walls = door_walls(corridor, opening, 100.0)
        assert route_clearance_mm(through, walls) >= margin - 1e-6


@settings(max_examples=6, deadline=None)
@given(chairs(), st.floats(0.35, 1.1))
def test_shown_moves_keep_the_margin(corners: tuple[Corner, ...], share: float) -> None:
    outline, widths = Outline.of(corners), corner_widths_mm(corners)
    width = float((1 - share) * widths["free"][0] + share * widths["best_arc"][0])
    route = corner_route(outline, width, width, margin=4.0)
    if route is not None:
        assert width > widths["free"][0]
        assert route_clearance_mm(route, corner_walls(width, width)) >= 4.0
        assert route.end.heading_deg == pytest.approx(90.0, abs=1e-9)


@settings(max_examples=5, deadline=None)
@given(chairs())
def test_no_route_is_found_below_the_bound(corners: tuple[Corner, ...]) -> None:
    width = float(corner_free_mm(corners)[0]) - 1.0
    looks = (Fineness(200, 3.0), Fineness(300, 1.5))
    assert corner_route(Outline.of(corners), width, width, margin=0.0, looks=looks) is None


@settings(max_examples=10, deadline=None)
@given(chairs())
def test_three_arcs_never_need_more_than_the_spot(corners: tuple[Corner, ...]) -> None:
    side, route = three_arc_room(Outline.of(corners))
    assert side <= pivot_diameter_mm(corners)[0] + HAIR
    assert sum(move.turn_deg for move in route.moves) == pytest.approx(180.0, abs=1e-9)


@settings(max_examples=20, deadline=None)
@given(chairs(), st.floats(-1500, 1500), st.floats(-170, 170), st.floats(-180, 180))
def test_a_move_back_undoes_a_move(
    corners: tuple[Corner, ...], centre: float, turn: float, heading: float
) -> None:
    start = Pose(10.0, 20.0, heading)
    there = Move(centre_mm=centre, turn_deg=turn)
    back = Move(centre_mm=centre, turn_deg=-turn)
    end = back.after(there.after(start))
    assert (end.x_mm, end.y_mm, end.heading_deg) == pytest.approx((10, 20, heading), abs=1e-6)
    outline = Outline.of(corners)
    forth = swept(Route(outline, start, (there,)))
    again = swept(Route(outline, start, (there, back)))
    # Points within a hundred thousandth of a millimetre are one point of the drawing.
    assert again.area_mm2 >= forth.area_mm2 - 0.1


@CHAIRS
@given(st.lists(st.floats(150, 1000), min_size=3, max_size=3), st.floats(0, 200))
def test_a_larger_boot_takes_what_a_smaller_one_takes(sides: list[float], more: float) -> None:
    box, space = (sides[0], sides[1], sides[2]), (800.0, 500.0, 900.0)
    larger = (space[0] + more, space[1] + more, space[2] + more)
    if ways_through(box, *space):
        assert ways_through(box, *larger)
    straight = [way for way in ways_through(box, *space) if not way.tilt_about]
    assert bool(straight) == bool(missing_mm(box, *space)[0] <= 1e-9)
