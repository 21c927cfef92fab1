"""The side view by its numbers and attributes. Expected values: first principles on the shape."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import atan, cos, degrees, radians, sin
from xml.etree import ElementTree as ET

import pytest

from chairwright.chair.shape import Shape
from chairwright.drawing.balance import tipping_angles_deg
from chairwright.drawing.dimensions import Units
from chairwright.drawing.scene import Line, Text
from chairwright.drawing.sheet import Page, Sheet, item_box, text_box
from chairwright.drawing.side_view import side_sheet, side_view
from tests.unit.exchange.orders import opened

from .shapes import ALL, average_adult, low_seat, tall_adult

SVG = "{http://www.w3.org/2000/svg}"


def texts(sheet: Sheet) -> list[Text]:
    return [item for group in sheet.groups for item in group.items if isinstance(item, Text)]


def dimension_texts(sheet: Sheet) -> dict[str, str]:
    return {
        group.name.removeprefix("dimension-"): item.text
        for group in sheet.groups
        if group.name.startswith("dimension-")
        for item in group.items
        if isinstance(item, Text)
    }


def overlapping(found: list[Text]) -> list[tuple[str, str]]:
    boxes = [(text.text, text_box(text)) for text in found]
    return [
        (one, other)
        for place, (one, a) in enumerate(boxes)
        for other, b in boxes[place + 1 :]
        if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
    ]


def test_dimensions_show_the_geometry_of_the_average_chair() -> None:
    shown = dimension_texts(side_sheet(average_adult()))
    assert shown == {
        "axle-ahead-of-back-post-mm": "45 axle ahead, level",
        "wheelbase-mm": "330 wheelbase",
        "overall-length-mm": "1095 overall length",
        "seat-to-floor-rear-mm": "470 seat, rear",
        "footplate-clearance-mm": "75 footplate",
        "seat-to-floor-front-mm": "500 seat, front",
        "cushion-to-floor-front-mm": "559 cushion, front",
    }


def test_axle_behind_the_post_is_named_so() -> None:
    shown = dimension_texts(side_sheet(tall_adult()))
    assert shown["axle-ahead-of-back-post-mm"] == "25 axle behind, level"


def test_inches_follow_the_millimetres() -> None:
    shown = dimension_texts(side_sheet(average_adult(), "in"))
    assert shown["seat-to-floor-front-mm"].startswith("500 (19 5/8 in)")


def test_chair_without_foot_supports_has_no_footplate_dimension() -> None:
    shown = dimension_texts(side_sheet(replace(average_adult(), foot_supports=())))
    assert "footplate-clearance-mm" not in shown


def test_overall_length_follows_the_plan_outline_when_there_is_one() -> None:
    shape = replace(average_adult(), plan_outline=((-400.0, 300.0), (800.0, 0.0), (0.0, -300.0)))
    assert dimension_texts(side_sheet(shape))["overall-length-mm"] == "1200 overall length"


def test_scale_is_true_on_paper() -> None:
    sheet = side_sheet(average_adult())
    assert sheet.title == "Side view, scale 1:10"
    wheelbase = next(g for g in sheet.groups if g.name == "dimension-wheelbase-mm")
    (x0, _), (x1, _) = next(
        (item.start, item.end)
        for item in wheelbase.items
        if isinstance(item, Line) and item.start[1] == item.end[1]
    )
    assert abs(x1 - x0) == pytest.approx(33.0, abs=0.005)


def test_smaller_page_takes_the_next_scale() -> None:
    sheet = side_sheet(average_adult(), page=Page(120.0, 150.0))
    assert sheet.title == "Side view, scale 1:15"
    assert sheet.width_mm <= 120.0
    assert sheet.height_mm <= 150.0


def test_tipping_angles_are_those_of_the_contacts() -> None:
    rear, front = tipping_angles_deg(average_adult())
    assert rear == pytest.approx(degrees(atan(135.0 / 585.0)), abs=1e-9)
    assert front == pytest.approx(degrees(atan(195.0 / 585.0)), abs=1e-9)
    words = [text.text for text in texts(side_sheet(average_adult()))]
    assert words.count("13.0°") == 1
    assert words.count("18.4°") == 1


def test_narrow_tipping_angle_is_written_outside_its_wedge() -> None:
    shape = replace(average_adult(), com=(20.0, 0.0, 585.0))
    assert overlapping(texts(side_sheet(shape))) == []


@pytest.mark.parametrize("make", ALL)
@pytest.mark.parametrize("units", ["mm", "in"])
def test_texts_stay_on_the_page_and_apart(make: Callable[[], Shape], units: Units) -> None:
    sheet = side_sheet(make(), units)
    found = texts(sheet)
    assert len(found) > 12
    for text in found:
        left, top, right, bottom = text_box(text)
        assert left >= 0.0 and top >= 0.0, text.text
        assert right <= sheet.width_mm and bottom <= sheet.height_mm, text.text
    assert overlapping(found) == []


@pytest.mark.parametrize("make", ALL)
def test_everything_stays_on_the_page(make: Callable[[], Shape]) -> None:
    sheet = side_sheet(make())
    for group in sheet.groups:
        for item in group.items:
            left, top, right, bottom = item_box(item)
            assert left >= -0.01 and top >= -0.01, group.name
            assert right <= sheet.width_mm + 0.01 and bottom <= sheet.height_mm + 0.01, group.name


def test_one_hole_is_filled_and_the_others_are_open() -> None:
    root = ET.fromstring(side_view(average_adult(), prefix="a"))
    plate = root.find(f".//{SVG}g[@id='a-axle-plate']")
    assert plate is not None
    fills = [node.get("fill") for node in plate.iter(f"{SVG}circle")]
    assert len(fills) == 12
    assert fills.count("#1d2b36") == 1


def test_only_plumb_and_tipping_lines_are_coloured_and_their_dashes_differ() -> None:
    root = ET.fromstring(side_view(average_adult(), prefix="a"))
    ink = {None, "none", "#1d2b36", "#ffffff"}
    coloured = [node for node in root.iter() if node.get("stroke") not in ink]
    assert {node.tag for node in coloured} == {f"{SVG}line"}
    patterns = {node.get("stroke"): node.get("stroke-dasharray") for node in coloured}
    assert len(patterns) == 3
    assert len(set(patterns.values())) == 3


def test_missing_parts_are_not_drawn() -> None:
    names = {group.name for group in side_sheet(low_seat()).groups}
    assert "anti-tip" not in names
    assert "anti-tip" in {group.name for group in side_sheet(average_adult()).groups}


def test_lost_limbs_leave_a_shorter_outline() -> None:
    whole = average_adult()
    figurine = replace(
        whole.figurine,
        knee={"left": None, "right": None},
        ankle={},
        elbow={"left": None, "right": None},
        hand={},
    )
    names = {group.name for group in side_sheet(replace(whole, figurine=figurine)).groups}
    assert "near-arm" not in names
    assert "person" in names


@pytest.mark.parametrize("make", ALL)
def test_svg_has_names_and_unique_ids(make: Callable[[], Shape]) -> None:
    root = ET.fromstring(side_view(make(), prefix="side-2"))
    ids = [node.get("id") for node in root.iter() if node.get("id")]
    assert len(ids) == len(set(ids))
    assert all(name is not None and name.startswith("side-2-") for name in ids)
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "side-2-title side-2-desc"
    assert (root.findtext(f"{SVG}title") or "").startswith("Side view")
    assert "wheelbase" in (root.findtext(f"{SVG}desc") or "")


def test_same_shape_gives_the_same_bytes() -> None:
    assert side_view(average_adult(), prefix="a") == side_view(average_adult(), prefix="a")


def test_prefix_that_is_no_id_is_refused() -> None:
    with pytest.raises(ValueError, match="prefix must be letters"):
        side_view(average_adult(), prefix='a"><script>')
    with pytest.raises(ValueError, match="prefix must be letters"):
        side_view(average_adult(), prefix="")


def test_the_axle_on_the_level_is_not_the_hole_along_the_rail() -> None:
    """The order says 55 mm ahead along the rail, which leans back by 2 degrees, and 196 mm below.

    On the level that is 55 cos 2 + 196 sin 2 = 61.8 mm, which the drawing shows as its own length.
    """
    level = 55.0 * cos(radians(2.0)) + 196.0 * sin(radians(2.0))
    assert round(level) == 62
    shape = opened("avg-001").setup.shape
    shown = dimension_texts(side_sheet(shape))
    assert shown["axle-ahead-of-back-post-mm"] == "62 axle ahead, level"
