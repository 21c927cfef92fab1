"""No line strikes a number, and letters keep their room where the paper's font is not there."""

from __future__ import annotations

import pytest

from chairwright.drawing.lettering import text_width
from chairwright.drawing.plan_view import plan_sheet
from chairwright.drawing.scene import Line
from chairwright.drawing.sheet import Page, Sheet
from chairwright.drawing.side_view import side_view
from tests.unit.exchange.orders import NAMES, opened

from .shapes import average_adult
from .test_side_view import texts

SMALL = Page(67.5, 118.0)
"""Room of the plan on the set-up sheet [mm]."""


def level_lines(sheet: Sheet) -> list[Line]:
    found = [item for group in sheet.groups for item in group.items if isinstance(item, Line)]
    return [item for item in found if item.pen == "dimension" and item.start[1] == item.end[1]]


@pytest.mark.parametrize("name", NAMES)
def test_no_extension_line_strikes_an_upright_number(name: str) -> None:
    """A text's own lines end at its arrows, beside it; another's would cross its letters."""
    sheet = plan_sheet(opened(name).setup.shape, page=SMALL)
    upright = [item for item in texts(sheet) if item.turn_deg == 90.0]
    assert len(upright) == 3
    for text in upright:
        half = text_width(text.text, text.size_mm) / 2
        for line in level_lines(sheet):
            left, right = sorted((line.start[0], line.end[0]))
            if left < text.at[0] < right:
                assert not text.at[1] - half < line.start[1] < text.at[1] + half, text.text


def test_two_runs_of_a_text_keep_the_blank_between_them() -> None:
    svg = side_view(average_adult())
    assert svg.count('xml:space="preserve"') == sum(
        "<tspan" in each.partition("</text>")[0] for each in svg.split("<text ")[1:]
    )
    assert "> wheelbase</tspan>" in svg


def test_a_narrow_font_stands_in_before_a_wide_one() -> None:
    families = side_view(average_adult()).partition('font-family="')[2].partition('"')[0]
    assert families.index("Condensed") < families.index("sans-serif")
    assert families.startswith("'Source Sans Pro'")
