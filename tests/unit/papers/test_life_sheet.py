"""The life sheet: what stands on it, on both papers, with long words and short ranges."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from chairwright.drawing.life_chart import Bar, ReviewMark, Row, life_chart_sheet
from chairwright.drawing.scene import Polyline, Text
from chairwright.files.client import read_client
from chairwright.line.load import load_line
from chairwright.order.life_plan import Asked, LifePlan, plan_life
from chairwright.papers.life_words import letter
from chairwright.papers.pack.life_sheet import life_content, life_sheet_pdf
from chairwright.papers.typeset import Paper
from chairwright.person.client import Expected

EXAMPLES = Path(__file__).resolve().parents[3] / "examples"
LONG = "gains-" * 40


@cache
def heavier() -> LifePlan:
    """An adult with one foot and one hand, whose setting has to change as the mass does."""
    client = read_client(EXAMPLES / "clients" / "hem-004.yaml")
    expected = Expected(2.0, {"body_mass": (74.0, 84.0)}, LONG)
    asked = Asked(delivered="2026-12-01")
    return plan_life(replace(client, expected=expected), load_line("everyday"), asked)


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_it_is_the_same_every_time_with_the_longest_reason(paper: Paper) -> None:
    first = life_sheet_pdf(heavier(), paper)
    assert first.startswith(b"%PDF-")
    assert life_sheet_pdf(heavier(), paper) == first


def test_what_stands_on_it() -> None:
    plan, content = heavier(), life_content(heavier())
    assert content["ranges"] == [
        ["Body mass", "74.8 kg", "74.0 to 84.0 kg", f"client file: {LONG}"]
    ]
    ways = [row[0] for row in content["servings"] if row[0]]
    assert ways == ["Middle of the range", "Lightest", "Heaviest"]
    assert content["reviews"][0][1] == plan.due.day
    assert [row[0] for row in content["settings"]] == [
        letter(at) for at in range(1, len(plan.life.settings))
    ]
    assert sum(row[0] == "planned" for row in content["front"]) == 1


@pytest.mark.parametrize(
    ("years", "words"), [(1.0, "1 year"), (0.5, "6 months"), (2.5, "2 years 6 months")]
)
def test_how_long_is_said_in_whole_words(years: float, words: str) -> None:
    plan = heavier()
    assert life_content(replace(plan, growth=replace(plan.growth, years=years)))["years"] == words


def test_bars_lie_end_to_end_on_the_time_axis() -> None:
    rows = (Row("One", (Bar(0, 6, "A"), Bar(6, 18, "B")), "new parts: seat width"),)
    sheet = life_chart_sheet(rows, (ReviewMark(5, by_growth=True),), 24, 9.0)
    items = [item for group in sheet.groups for item in group.items]
    bars = [each.points for each in items if isinstance(each, Polyline) and len(each.points) == 4]
    assert bars[0][1][0] == bars[1][0][0]
    assert bars[1][1][0] - bars[1][0][0] == pytest.approx(2 * (bars[0][1][0] - bars[0][0][0]))
    words = [each.text for each in items if isinstance(each, Text)]
    assert {"A", "B", "new parts: seat width", "9.0", "11.0"} <= set(words)
    assert all(0.0 <= x <= sheet.width_mm for points in bars for x, _ in points)
    assert "Reviews in month 5" in sheet.description


def test_letters_go_on_beyond_the_alphabet() -> None:
    assert [letter(at) for at in (0, 25, 26, 27)] == ["A", "Z", "Z2", "Z3"]
