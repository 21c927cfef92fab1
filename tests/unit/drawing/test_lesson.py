"""Small drawings of a lesson, strips, and two chairs over each other, by their numbers."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from xml.etree import ElementTree as ET

import pytest

from chairwright.chair.shape import Shape
from chairwright.drawing.lesson_plan import lesson_plans
from chairwright.drawing.lesson_side import lesson_sides
from chairwright.drawing.lesson_strip import Strip, strip_sheet
from chairwright.drawing.overlay import overlay_sheet
from chairwright.drawing.overlay_plan import overlay_plan_sheet
from chairwright.drawing.palette import PENS, SECOND
from chairwright.drawing.scene import Circle, Group, Line
from chairwright.drawing.sheet import Page, Sheet, groups_box
from chairwright.drawing.svg import to_svg
from chairwright.drawing.wire import NEAR_MM, ghost, wire

from .shapes import ALL, average_adult, low_seat, tall_adult
from .test_side_view import overlapping, texts

SVG = "{http://www.w3.org/2000/svg}"


def axle_moved(shape: Shape, ahead_mm: float) -> Shape:
    """The same chair on its frame with the axle farther ahead: all else lies farther behind."""
    back = -ahead_mm

    def at(point: tuple[float, float]) -> tuple[float, float]:
        return (point[0] + back, point[1])

    contacts = tuple(
        replace(c, x_mm=c.x_mm if "rear" in c.name else c.x_mm + back) for c in shape.contacts
    )
    x, y, z = shape.com
    return replace(
        shape,
        seat_corner=at(shape.seat_corner),
        seat_front=at(shape.seat_front),
        cushion_rear=at(shape.cushion_rear),
        cushion_front=at(shape.cushion_front),
        back_bottom=at(shape.back_bottom),
        back_top=at(shape.back_top),
        caster_axle=at(shape.caster_axle),
        com=(x + back, y, z),
        contacts=contacts,
    )


def group(sheet: Sheet, name: str) -> Group | None:
    return next((each for each in sheet.groups if each.name == name), None)


def strip(values: list[float], low: float | None = None, high: float | None = None) -> Sheet:
    return strip_sheet(Strip("words", values, 1, 2.0, low, high), 60.0, 6.0)


def dots(sheet: Sheet) -> list[Circle]:
    return [i for g in sheet.groups for i in g.items if isinstance(i, Circle)]


def dashes(sheet: Sheet) -> list[Line]:
    items = [i for g in sheet.groups for i in g.items if isinstance(i, Line)]
    return [line for line in items if line.pen == "hidden"]


def test_every_drawing_of_a_row_has_one_size_and_one_floor() -> None:
    row = lesson_sides([average_adult(), low_seat(), tall_adult()], 0, 60.0, 70.0)
    assert len({(sheet.width_mm, sheet.height_mm) for sheet in row.sheets}) == 1
    floors = []
    for sheet in row.sheets:
        floor = group(sheet, "floor")
        assert floor is not None
        (line,) = floor.items
        assert isinstance(line, Line)
        assert (line.start[0], line.end[0]) == (0.0, sheet.width_mm)
        floors.append(line.start[1])
    assert len(set(floors)) == 1


def test_a_row_takes_the_largest_scale_of_the_series_that_fits() -> None:
    shapes = [average_adult(), tall_adult()]
    for width in (40.0, 60.0, 90.0):
        row = lesson_sides(shapes, 0, width, 200.0)
        assert row.sheets[0].width_mm <= width
    assert lesson_sides(shapes, 0, 90.0, 200.0).scale < lesson_sides(shapes, 0, 40.0, 200.0).scale


@pytest.mark.parametrize("make", ALL)
def test_nothing_leaves_a_small_drawing_and_no_words_lie_on_each_other(
    make: Callable[[], Shape],
) -> None:
    for row in (
        lesson_sides([make(), average_adult()], 1, 40.0, 60.0),
        lesson_plans([make(), average_adult()], 1, 40.0, 60.0),
    ):
        for sheet in row.sheets:
            left, top, right, bottom = groups_box(sheet.groups)
            assert left >= -1e-9 and top >= -1e-9
            assert right <= sheet.width_mm + 1e-9 and bottom <= sheet.height_mm + 1e-9
            assert overlapping(texts(sheet)) == []


def test_the_angles_under_the_floor_are_those_to_the_contacts() -> None:
    (sheet,) = lesson_sides([average_adult()], 0, 60.0, 80.0).sheets
    # atan(135 / 585) = 13.0, atan((330 - 135) / 585) = 18.4 deg
    assert [text.text for text in texts(sheet)] == ["13.0°", "18.4°"]


def test_the_earlier_wheel_is_shown_where_it_was_on_the_frame() -> None:
    before = average_adult()
    now = axle_moved(before, 50.0)
    row = lesson_sides([before, now], 0, 60.0, 80.0)
    assert group(row.sheets[0], "ghost") is None
    shown = group(row.sheets[1], "ghost")
    wheel = group(row.sheets[1], "rear-wheel")
    assert shown is not None and wheel is not None
    old = next(item for item in shown.items if isinstance(item, Circle))
    new = next(item for item in wheel.items if isinstance(item, Circle))
    assert old.pen == "hidden"
    assert new.centre[0] - old.centre[0] == pytest.approx(50.0 / row.scale)
    assert new.centre[1] == pytest.approx(old.centre[1])


def test_what_has_hardly_moved_has_no_ghost() -> None:
    assert ghost(average_adult(), average_adult(), "hidden").items == ()
    assert ghost(axle_moved(average_adult(), 0.9 * NEAR_MM), average_adult(), "hidden").items == ()
    assert ghost(axle_moved(average_adult(), 1.1 * NEAR_MM), average_adult(), "hidden").items


def test_a_plan_says_how_wide_the_chair_is() -> None:
    row = lesson_plans([average_adult(), low_seat()], 0, 60.0, 80.0)
    assert [text.text for sheet in row.sheets for text in texts(sheet)] == [
        "640 mm wide",
        "600 mm wide",
    ]


def test_strip_dots_stand_over_their_columns_in_proportion() -> None:
    first, second, third = dots(strip([10.0, 12.0, 14.0]))
    assert [dot.centre[0] for dot in (first, second, third)] == [10.0, 30.0, 50.0]
    assert first.centre[1] - second.centre[1] == pytest.approx(second.centre[1] - third.centre[1])
    assert first.centre[1] > third.centre[1]  # paper counts down
    assert [dot.fill for dot in (first, second, third)] == ["sheet", "ink", "sheet"]


def test_small_differences_do_not_fill_a_strip() -> None:
    low, high = dots(strip([10.0, 10.2]))
    full_low, full_high = dots(strip([10.0, 12.0]))
    share = (low.centre[1] - high.centre[1]) / (full_low.centre[1] - full_high.centre[1])
    assert share == pytest.approx(0.1)  # 0.2 of a least span of 2


def test_a_missing_value_leaves_a_gap() -> None:
    sheet = strip([10.0, math.nan, 14.0])
    assert [dot.centre[0] for dot in dots(sheet)] == [10.0, 50.0]
    assert not [i for g in sheet.groups for i in g.items if isinstance(i, Line)]
    assert strip([math.nan, math.nan]).groups == ()


def test_an_end_of_a_must_is_drawn_when_it_is_near() -> None:
    assert len(dashes(strip([10.0, 14.0], low=9.0, high=40.0))) == 1
    assert dashes(strip([10.0, 14.0], low=2.0)) == []
    line = dashes(strip([10.0, 14.0], low=12.0))[0]
    assert line.start[1] == pytest.approx(3.0)  # half way up a strip of 6 mm


def test_two_ends_that_would_print_as_one_are_one() -> None:
    assert len(dashes(strip([0.0, 40.0], low=19.5, high=20.5))) == 1
    assert len(dashes(strip([0.0, 40.0], low=10.0, high=30.0))) == 2


@pytest.mark.parametrize("value", [[1.0], [5.0, 5.0], [0.0, 1e6]])
def test_strips_stay_on_their_sheet(value: list[float]) -> None:
    sheet = strip(value)
    left, top, right, bottom = groups_box(sheet.groups)
    assert left >= 0.0 and top >= 0.0 and right <= 60.0 and bottom <= 6.0


def test_rear_axles_and_floor_lie_over_each_other() -> None:
    sheet = overlay_sheet(average_adult(), tall_adult(), ("one", "two"))
    first, second = group(sheet, "rear-wheel"), group(sheet, "second")
    assert first is not None and second is not None
    wheels = [next(i for i in g.items if isinstance(i, Circle)) for g in (first, second)]
    assert wheels[0].centre[0] == pytest.approx(wheels[1].centre[0])
    feet = [wheel.centre[1] + wheel.radius for wheel in wheels]
    assert feet[0] == pytest.approx(feet[1])


def test_the_second_chair_is_dashed_in_the_second_colour_and_hides_nothing() -> None:
    pen = PENS["second"]
    assert pen.colour == SECOND
    assert pen.dashes
    for item in wire(tall_adult(), "second").items:
        assert getattr(item, "fill", "none") == "none"
        assert getattr(item, "pen", "") == "second"
    root = ET.fromstring(to_svg(overlay_sheet(low_seat(), tall_adult(), ("a", "b")), "over"))
    node = next(node for node in root.iter(f"{SVG}g") if node.get("id") == "over-second")
    assert {child.get("stroke") for child in node} == {SECOND}
    assert all(child.get("stroke-dasharray") for child in node)


def test_an_overlay_names_both_and_numbers_the_second() -> None:
    sheet = overlay_sheet(average_adult(), low_seat(), ("mine", "hers"), number=3)
    words = [text.text for text in texts(sheet)]
    assert {"1: mine", "3: hers", "plumb line of 3"} <= set(words)
    assert overlapping(texts(sheet)) == []
    assert "hers: wheelbase 312 mm" in sheet.description


def test_overlays_fit_their_page() -> None:
    page = Page(89.0, 92.0)
    sheet = overlay_sheet(average_adult(), tall_adult(), ("one", "two"), page)
    assert sheet.width_mm <= page.width_mm and sheet.height_mm <= page.height_mm
    plan = overlay_plan_sheet(average_adult(), tall_adult(), ("one", "two"), page)
    assert plan.width_mm <= page.width_mm and plan.height_mm <= page.height_mm
    assert "one: seat 430 mm and chair 640 mm wide" in plan.description


def test_an_overlay_in_plan_names_both_as_the_one_from_the_side_does() -> None:
    plan = overlay_plan_sheet(average_adult(), low_seat(), ("mine", "hers"), number=3)
    assert {"1: mine", "3: hers"} <= {text.text for text in texts(plan)}
    assert overlapping(texts(plan)) == []
