"""A drawing for a screen: the same lines in tenths of a millimetre, every silhouette once."""

from __future__ import annotations

import re
from xml.etree import ElementTree as ET

import pytest

from chairwright.drawing.plan_view import seen_from_above
from chairwright.drawing.rear_view import rear_sheet, seen_from_behind
from chairwright.drawing.side_view import seen_from_side, side_sheet
from chairwright.drawing.svg import to_svg
from chairwright.drawing.window import Rows, windowed
from tests.unit.drawing.shapes import average_adult

PLACES = ("x1", "y1", "x2", "y2", "cx", "cy", "x", "y", "points", "d")


def _numbers(text: str) -> list[float]:
    return [float(each) for each in re.findall(r"-?\d+(?:\.\d+)?", text)]


def test_every_place_is_that_of_the_paper_to_half_a_tenth() -> None:
    sheet = side_sheet(average_adult())
    paper = [n for n in ET.fromstring(to_svg(sheet, "a")).iter() if not _is_filling(n)]
    screen = list(ET.fromstring(to_svg(sheet, "a", screen=True)).iter())
    assert [node.tag for node in screen] == [node.tag for node in paper]
    for one, other in zip(paper, screen, strict=True):
        for key in PLACES:
            assert (key in one.attrib) == (key in other.attrib)
            told = _numbers(one.get(key, "")), _numbers(other.get(key, ""))
            assert told[1] == pytest.approx(told[0], abs=0.0501 + 0.005)


def _is_filling(node: ET.Element) -> bool:
    """The second path of a silhouette on paper."""
    return node.tag.endswith("path") and set(node.attrib) == {"d", "fill"}


def test_a_silhouette_is_stroked_before_it_is_filled() -> None:
    nodes = ET.fromstring(to_svg(side_sheet(average_adult()), "a", screen=True)).iter()
    order = [node.get("paint-order") for node in nodes if node.get("paint-order")]
    assert order
    assert set(order) == {"stroke"}


@pytest.mark.parametrize("name", ["side", "plan", "rear"])
def test_edges_of_a_window_lie_on_whole_decimetres_and_everything_lies_inside(name: str) -> None:
    shape, scale = average_adult(), 15.0
    views = {
        "side": seen_from_side(shape, scale),
        "plan": seen_from_above(shape, scale, "mm"),
        "rear": seen_from_behind(shape, scale),
    }
    sheet = windowed(views[name], scale, "mm", Rows())
    placement = sheet.placement
    assert placement is not None
    top = placement.real((0.0, 10.0))[1]  # margin 3 mm and title 7 mm on paper
    assert top == pytest.approx(100.0 * round(top / 100.0), abs=1e-6)
    root = ET.fromstring(to_svg(sheet, "a"))
    for node in root.iter():
        for x in _numbers(node.get("x1", "")) + _numbers(node.get("x2", "")):
            assert 0.0 <= x <= sheet.width_mm


def test_the_rear_view_names_its_widths() -> None:
    shape = average_adult()
    text = " ".join(ET.fromstring(to_svg(rear_sheet(shape), "a")).itertext())
    for width in (shape.overall_width_mm, shape.rear_track_mm, shape.seat_width_mm):
        assert f"{width:.0f}" in text
