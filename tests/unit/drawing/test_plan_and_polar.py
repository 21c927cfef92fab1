"""Plan view and polar chart by their numbers. Expected values: first principles."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import hypot

import numpy as np
import pytest

from chairwright.chair.shape import Shape
from chairwright.drawing.plan_chair import turning_diameter_mm
from chairwright.drawing.plan_view import plan_sheet, plan_view
from chairwright.drawing.polar import direction_words, polar_chart, polar_sheet
from chairwright.drawing.scene import Circle, Polyline, Text
from chairwright.drawing.sheet import A5_LANDSCAPE, Page, item_box
from chairwright.errors import InputError

from .shapes import ALL, average_adult
from .test_side_view import dimension_texts, overlapping, texts


def test_plan_dimensions_show_the_geometry() -> None:
    assert dimension_texts(plan_sheet(average_adult())) == {
        "seat-width-mm": "430 seat width",
        "rear-track-mm": "560 rear track",
        "overall-width-mm": "640 overall width",
        "wheelbase-mm": "330 wheelbase",
        "seat-depth-mm": "410 seat depth",
    }


def test_turning_circle_comes_from_the_outline_when_given() -> None:
    shape = replace(average_adult(), plan_outline=((600.0, 250.0), (-300.0, 320.0), (0.0, -320.0)))
    assert turning_diameter_mm(shape) == pytest.approx(2.0 * hypot(600.0, 250.0), abs=1e-9)
    assert "Ø 1300" in [text.text for text in texts(plan_sheet(shape))]


@pytest.mark.parametrize("make", ALL)
@pytest.mark.parametrize("page", [Page(100.0, 120.0), Page(148.0, 210.0), A5_LANDSCAPE])
def test_plan_fits_its_page_with_texts_apart(make: Callable[[], Shape], page: Page) -> None:
    sheet = plan_sheet(make(), page=page)
    assert sheet.width_mm <= page.width_mm
    assert sheet.height_mm <= page.height_mm
    assert overlapping(texts(sheet)) == []
    for group in sheet.groups:
        for item in group.items:
            left, top, right, bottom = item_box(item)
            assert left >= 0.0 and top >= 0.0, group.name
            assert right <= sheet.width_mm and bottom <= sheet.height_mm, group.name


def test_left_is_up_in_plan() -> None:
    sheet = plan_sheet(replace(average_adult(), com=(135.0, 40.0, 585.0)))
    support = next(group for group in sheet.groups if group.name == "support")
    marks = [item for item in support.items if isinstance(item, Circle)]
    contacts, mass = marks[:4], marks[-1]
    assert mass.centre[1] < sum(mark.centre[1] for mark in contacts) / 4.0


def test_plan_is_deterministic_and_named() -> None:
    text = plan_view(average_adult(), prefix="p")
    assert text == plan_view(average_adult(), prefix="p")
    assert '<title id="p-title">Plan, scale 1:15</title>' in text


def test_polar_names_the_least_direction_and_marks_it() -> None:
    directions = np.arange(0.0, 360.0, 10.0)
    angles = np.full(36, 20.0)
    angles[9] = 11.26
    sheet = polar_sheet(directions, angles)
    assert "least 11.3°, straight to the left" in [text.text for text in texts(sheet)]
    least = next(group for group in sheet.groups if group.name == "least")
    mark = next(item for item in least.items if isinstance(item, Circle))
    assert mark.centre[0] < sheet.width_mm / 2.0 - 5.0


def test_polar_puts_ahead_up() -> None:
    sheet = polar_sheet([0.0, 90.0, 180.0, 270.0], [25.0, 10.0, 10.0, 10.0])
    curve = next(group for group in sheet.groups if group.name == "curve").items[0]
    assert isinstance(curve, Polyline)
    ahead, left, back, right = curve.points
    assert ahead[1] < left[1] < back[1]
    assert left[0] < ahead[0] < right[0]


@pytest.mark.parametrize(
    ("largest", "expected"),
    [(18.0, ["5°", "10°", "15°", "20°"]), (34.0, ["10°", "20°", "30°", "40°"])],
)
def test_polar_rings_are_labelled(largest: float, expected: list[str]) -> None:
    sheet = polar_sheet([0.0, 120.0, 240.0], [largest, 8.0, 9.0], reference_deg=None)
    rings = next(group for group in sheet.groups if group.name == "rings")
    assert [item.text for item in rings.items if isinstance(item, Text)] == expected


def test_polar_reference_ring_is_optional() -> None:
    labels = [text.text for text in texts(polar_sheet([0.0, 120.0, 240.0], [18.0, 8.0, 9.0]))]
    assert "7°" in labels


def test_polar_leaves_out_what_is_not_known() -> None:
    sheet = polar_sheet([0.0, 90.0, 180.0, 270.0], [18.0, float("nan"), 9.0, 12.0])
    curve = next(group for group in sheet.groups if group.name == "curve").items[0]
    assert isinstance(curve, Polyline)
    assert len(curve.points) == 3


def test_polar_refuses_rows_that_do_not_match() -> None:
    with pytest.raises(InputError, match="two rows of one length"):
        polar_chart([0.0, 90.0, 180.0], [10.0, 10.0], prefix="p")


@pytest.mark.parametrize(
    ("direction", "words"),
    [
        (0.0, "straight ahead"),
        (360.0, "straight ahead"),
        (90.0, "straight to the left"),
        (-90.0, "straight to the right"),
        (180.0, "straight back"),
        (200.0, "20° right of straight back"),
        (-30.0, "30° right of straight ahead"),
    ],
)
def test_directions_have_names(direction: float, words: str) -> None:
    assert direction_words(direction) == words
