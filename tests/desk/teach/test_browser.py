"""A lesson and the teaching bench in a real browser: with script, without, printed."""

from __future__ import annotations

import re

from playwright.sync_api import PdfMargins, expect

from ..kit.browser import PICTURES, WIDTHS, Desk, picture, too_wide, unreached, violations
from ..kit.world import World


def test_an_answered_step_is_sound_at_each_width(desk: Desk, live_world: World) -> None:
    page = desk.window(live_world.people["reader"])
    for lesson, number in (("axle", 1), ("axle", 5), ("camber", 1)):
        page.goto(f"/teach/lesson/{lesson}/{number}/")
        page.get_by_role("radio").first.check()
        page.get_by_role("button", name="Answer, and look").click()
        expect(page.get_by_role("table")).to_be_visible()
        for width in WIDTHS:
            page.set_viewport_size({"width": width, "height": 900})
            picture(page, f"teach-answered-{lesson}-{number}-{width}")
            assert violations(page) == [], (lesson, number, width)
            assert too_wide(page) <= 0, (lesson, number, width)
    assert unreached(page) == []


def test_a_lesson_without_script(desk_without_script: Desk, live_world: World) -> None:
    page = desk_without_script.window(live_world.people["builder"])
    page.goto("/teach/")
    page.get_by_role("link", name="The cushion", exact=True).click()
    for _ in range(3):
        page.get_by_role("radio").first.check()
        page.get_by_role("button", name="Answer, and look").click()
        expect(page.get_by_role("table")).to_be_visible()
        page.get_by_role("link", name="Go on").or_(
            page.get_by_role("link", name="To the other lessons")
        ).click()
    expect(page.get_by_text("3 steps, 3 answered")).to_be_visible()


def test_the_bench_follows_the_hand_and_takes_back(desk: Desk, live_world: World) -> None:
    page = desk.window(live_world.people["reader"])
    page.goto("/teach/bench/")
    drawing = page.locator("#bench-looks")
    first = drawing.inner_html()
    page.get_by_label("Axle hole", exact=True).select_option("F8")
    expect(page.locator("#bench-follows .by").first).to_be_attached()
    assert drawing.inner_html() != first
    page.get_by_role("button", name="Take back").click()
    expect(page.get_by_label("Axle hole", exact=True)).to_have_value("D8")


def test_a_step_takes_one_sheet(desk: Desk, live_world: World) -> None:
    page = desk.window(live_world.people["reader"])
    page.goto("/teach/lesson/axle/print/")
    edges: PdfMargins = {"top": "12mm", "bottom": "12mm", "left": "12mm", "right": "12mm"}
    paper = page.pdf(format="A4", print_background=True, margin=edges)
    PICTURES.mkdir(parents=True, exist_ok=True)
    (PICTURES / "teach-print.pdf").write_bytes(paper)
    sheets = len(re.findall(rb"/Type\s*/Page\b(?!s)", paper))
    assert sheets == 6, "the head, and five steps"
