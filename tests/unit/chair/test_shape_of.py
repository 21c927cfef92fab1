"""The shape that is drawn agrees with the figures, the line file and the seated body."""

from __future__ import annotations

from math import atan2, cos, degrees, hypot, radians, sin

import pytest

from chairwright.chair.shape import Point
from chairwright.drawing.plan_chair import turning_diameter_mm
from chairwright.drawing.side_chair import side_extent
from chairwright.figures.space import push_handle

from .seated import CODES, person, seated, without_feet

EXACT = 1e-6


def apart(one: Point, other: Point) -> float:
    return hypot(other[0] - one[0], other[1] - one[1])


@pytest.mark.parametrize(
    "other",
    [
        {},
        {"rear_wheel": "W22", "axle_hole": "F5", "caster": "C5", "caster_housing": "L3"},
        {"foot_supports": "none", "hanger": "none", "leg_length": "none"},
        {"anti_tip": "none"},
        {"anti_tip": "TL-3"},
    ],
)
def test_drawn_length_and_turning_circle_are_the_figures(other: dict[str, str]) -> None:
    made = seated(None, **other)
    rear, front = side_extent(made.shape)
    assert front - rear == pytest.approx(made.figures["overall_length_mm"], abs=EXACT)
    diameter = made.figures["turning_diameter_mm"]
    assert turning_diameter_mm(made.shape) == pytest.approx(diameter, abs=EXACT)


def test_heights_are_the_figures() -> None:
    made = seated()
    shape, figures = made.shape, made.figures
    assert shape.seat_corner[1] == pytest.approx(figures["seat_to_floor_rear_mm"], abs=EXACT)
    assert shape.seat_front[1] == pytest.approx(figures["seat_to_floor_front_mm"], abs=EXACT)
    height = figures["cushion_to_floor_front_mm"]
    assert shape.cushion_front[1] == pytest.approx(height, abs=EXACT)
    low = min(point[1] for item in shape.foot_supports for point in (item.plate_rear,
                                                                     item.plate_front))  # fmt: skip
    assert low == pytest.approx(figures["footplate_clearance_mm"], abs=EXACT)
    handle = tuple(float(axis[0]) for axis in push_handle(made.rows))
    assert shape.push_handle == pytest.approx(handle, abs=EXACT)


def test_the_whole_plate_is_there_and_the_chosen_hole_is_on_the_axle() -> None:
    made = seated()
    # everyday line, plate XN: columns A to F every 25 mm, rows 1 to 9 every 20 mm
    assert len(made.shape.axle_holes) == 6 * 9
    (chosen,) = [hole for hole in made.shape.axle_holes if hole.chosen]
    assert chosen.code == CODES["axle_hole"]
    assert chosen.at == pytest.approx(made.shape.rear_axle, abs=EXACT)
    holes = {hole.code: hole.at for hole in made.shape.axle_holes}
    assert apart(holes["A1"], holes["B1"]) == pytest.approx(25.0, abs=EXACT)
    assert apart(holes["A1"], holes["A9"]) == pytest.approx(160.0, abs=EXACT)


def test_another_plate_is_drawn_alone() -> None:
    # everyday line, plate XA: columns U and V, rows 1 to 9; hole V4 is 70 behind the seat corner
    # and 116 below it
    shape = seated(None, axle_hole="V4", camber="K0").shape
    assert sorted(hole.code for hole in shape.axle_holes) == [
        f"{column}{row}" for column in "UV" for row in range(1, 10)
    ]
    assert apart(shape.seat_corner, shape.rear_axle) == pytest.approx(hypot(70, 116), abs=EXACT)


def test_caster_hangs_from_its_stem_by_trail_and_drop() -> None:
    made = seated()
    # medium fork, hole 3: trail 45 mm, axle 118 mm below the crown
    shape = made.shape
    assert apart(shape.fork_crown, shape.caster_axle) == pytest.approx(hypot(45, 118), abs=EXACT)
    lean = radians(made.figures["caster_stem_angle_deg"])
    up = (shape.stem_top[0] - shape.fork_crown[0], shape.stem_top[1] - shape.fork_crown[1])
    assert degrees(atan2(-up[0], up[1])) == pytest.approx(degrees(lean), abs=EXACT)
    behind = (
        shape.caster_axle[0] - shape.fork_crown[0],
        shape.caster_axle[1] - shape.fork_crown[1],
    )
    assert behind[0] * cos(lean) + behind[1] * sin(lean) == pytest.approx(-45.0, abs=EXACT)
    assert shape.caster_axle[1] == pytest.approx(75.0, abs=EXACT)


def test_contacts_span_wheelbase_and_tracks() -> None:
    made = seated()
    places = {contact.name: (contact.x_mm, contact.y_mm) for contact in made.shape.contacts}
    assert places["rear left"][1] - places["rear right"][1] == made.figures["rear_track_mm"]
    assert places["caster left"][1] - places["caster right"][1] == made.figures["caster_track_mm"]
    assert {places["caster left"][0], places["caster right"][0]} == {made.figures["wheelbase_mm"]}
    assert {places["rear left"][0], places["rear right"][0]} == {0.0}


def test_limbs_keep_their_lengths_and_a_pushing_foot_stands_on_the_floor() -> None:
    who = person("hand_and_foot_left")
    made = seated(who, foot_supports="right", cushion="Q30")
    figure, body = made.shape.figurine, who.body
    for side in ("left", "right"):
        knee, ankle = figure.knee[side], figure.ankle[side]
        assert knee is not None and ankle is not None
        assert apart(figure.hip, knee) == pytest.approx(body.thigh_mm["left"], abs=EXACT)
        assert apart(knee, ankle) == pytest.approx(body.shank_mm["left"], abs=EXACT)
    for joint in (figure.heel["left"], figure.toe["left"]):
        assert joint is not None
        assert joint[1] == pytest.approx(0.0, abs=EXACT)
    assert [item.side for item in made.shape.foot_supports] == ["right"]
    assert apart(figure.hip, figure.shoulder) == pytest.approx(body.trunk_length_mm, abs=EXACT)


def test_lost_joints_and_parts_that_are_not_fitted_are_absent() -> None:
    none = {"foot_supports": "none", "hanger": "none", "leg_length": "none", "anti_tip": "none"}
    made = seated(without_feet("left", "right"), **none)
    figure = made.shape.figurine
    assert figure.knee["left"] is not None
    assert figure.ankle == {"left": None, "right": None}
    assert figure.toe == {"left": None, "right": None}
    assert made.shape.foot_supports == ()
    assert made.shape.anti_tip_wheel is None and made.shape.anti_tip_mount is None
    assert made.shape.anti_tip_radius_mm == 0.0


def test_centre_of_mass_is_the_figure() -> None:
    made = seated()
    names = ("com_x_mm", "com_y_mm", "com_z_mm")
    assert made.shape.com == tuple(made.figures[name] for name in names)
    assert made.shape.total_mass_kg == made.figures["total_mass_kg"]
