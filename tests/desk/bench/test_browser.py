"""The bench in a real browser: by keyboard, by holes, by two hands at once, and without script."""

from __future__ import annotations

import re
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from chairwright_desk.bench.models import Setup

from ..kit.browser import Desk
from ..kit.world import World
from .made import address, fresh, setup_of, step

LATE: dict[str, Any] = {"timeout": 20_000}


@pytest.fixture
def setup(live_world: World) -> Setup:
    return setup_of(live_world)


def _bench(desk: Desk, world: World, setup: Setup, width: int = 1440) -> Page:
    page = desk.window(world.people["clinician"], width=width)
    page.goto(address(setup))
    page.evaluate("document.querySelectorAll('.thing').forEach((each) => { each.open = true; })")
    return page


def test_a_slider_by_keyboard_moves_drawing_list_and_ledger(
    desk: Desk, live_world: World, setup: Setup
) -> None:
    page = _bench(desk, live_world, setup)
    before = page.inner_html("#bench-looks")
    page.focus("#slide-back_height")
    page.keyboard.press("ArrowRight")
    expect(page.locator("#list-back_height")).to_have_value("P425", **LATE)
    expect(page.locator("#slide-back_height")).to_be_focused()
    expect(page.locator("#slide-back_height")).to_have_attribute("aria-valuetext", "425 mm")
    assert page.inner_html("#bench-looks") != before
    page.keyboard.press("ArrowRight")
    expect(page.locator("#list-back_height")).to_have_value("P450", **LATE)
    page.click("#undo-back")
    expect(page.locator("#list-back_height")).to_have_value("P400", **LATE)
    expect(page.locator("#slide-back_height")).to_have_value("4")
    page.click("#undo-again")
    expect(page.locator("#list-back_height")).to_have_value("P450", **LATE)


def test_a_hole_by_keyboard_keeps_the_focus(desk: Desk, live_world: World, setup: Setup) -> None:
    page = _bench(desk, live_world, setup)
    hole = page.get_by_role("button", name=re.compile("^axle hole E7, "))
    hole.focus()
    page.keyboard.press("Enter")
    expect(page.locator("#list-axle_hole")).to_have_value("E7", **LATE)
    expect(page.locator("#hole-axle_hole-E7")).to_have_attribute("aria-pressed", "true")
    expect(page.locator("#hole-axle_hole-E7")).to_be_focused()
    assert fresh(setup).codes["axle_hole"] == "E7"
    page.keyboard.press("Tab")
    expect(page.locator("#hole-axle_hole-E8")).to_be_focused()


def test_a_refused_option_goes_back_in_the_list_and_the_offer_takes_it(
    desk: Desk, live_world: World, setup: Setup
) -> None:
    page = _bench(desk, live_world, setup)
    page.select_option("#list-caster", "C5")
    expect(page.locator("#bench-note")).to_contain_text("Caster C5 is not allowed", **LATE)
    expect(page.locator("#list-caster")).to_have_value("C6")
    page.click("#bench-note .offer")
    expect(page.locator("#list-caster")).to_have_value("C5", **LATE)
    expect(page.locator("#bench-note")).to_be_empty()


def test_the_spreads_of_its_own_come_when_the_hand_rests(
    desk: Desk, live_world: World, setup: Setup
) -> None:
    page = _bench(desk, live_world, setup)
    with page.expect_response(lambda answer: answer.url.endswith("/sure/"), timeout=20_000):
        page.select_option("#list-hanger", "H80")  # that no other test here works out
    expect(page.locator("#bench-places")).to_contain_text("Bathroom door")
    expect(page.locator("#bench-follows")).to_contain_text("±")


def test_the_best_is_found_after_steps(desk: Desk, live_world: World, setup: Setup) -> None:
    page = _bench(desk, live_world, setup)
    page.select_option("#list-cushion", "Q100")
    expect(page.locator("#bench-said")).to_contain_text("musts fail", **LATE)
    page.get_by_role("button", name="Find the best").click()
    expect(page.locator(".messages")).to_contain_text("is on the bench, proven", **LATE)
    expect(page.locator("#bench-said")).to_contain_text("Every must holds")


def test_what_is_opened_stays_open_after_a_step(
    desk: Desk, live_world: World, setup: Setup
) -> None:
    page = _bench(desk, live_world, setup)
    page.click("#fig-seat_width_mm > summary")
    page.select_option("#list-cushion", "Q50")
    expect(page.locator("#list-cushion")).to_have_value("Q50")
    expect(page.locator("#fig-cushion_to_floor_front_mm .by").first).to_be_visible(**LATE)
    assert page.get_attribute("#fig-seat_width_mm", "open") is not None


def test_every_option_is_tried_in_place_and_one_is_taken(
    desk: Desk, live_world: World, setup: Setup
) -> None:
    page = _bench(desk, live_world, setup)
    page.click("#choice-cushion .tries a")
    expect(page.locator("#bench-tried")).to_contain_text("Every option of cushion", **LATE)
    page.locator("#bench-tried button", has_text="Q50").click()
    expect(page.locator("#list-cushion")).to_have_value("Q50", **LATE)


def test_somebody_elses_step_is_shown_and_ones_own_is_offered_again(
    desk: Desk, live_world: World, setup: Setup
) -> None:
    page = _bench(desk, live_world, setup)
    step(live_world.visitor("specialist"), setup, pick="cushion=Q50")
    page.select_option("#list-finish", "FB")
    expect(page.locator("#bench-note")).to_contain_text("Specialist changed this set-up", **LATE)
    expect(page.locator("#list-cushion")).to_have_value("Q50")
    page.click("#bench-note .offer")
    expect(page.locator("#list-finish")).to_have_value("FB", **LATE)
    assert fresh(setup).codes["cushion"] == "Q50"


def test_without_script_holes_and_lists_work(
    desk_without_script: Desk, live_world: World, setup: Setup
) -> None:
    page = desk_without_script.window(live_world.people["clinician"])
    page.goto(address(setup))
    before = page.inner_html("#bench-looks")
    page.click("#hole-axle_hole-E7")
    expect(page.locator("#list-axle_hole")).to_have_value("E7", **LATE)
    assert page.inner_html("#bench-looks") != before
    page.click("#undo-back")
    expect(page.locator("#list-axle_hole")).to_have_value("E8", **LATE)
    page.select_option("#list-camber", "K0")
    page.click("text=Take what the lists say")
    expect(page.locator("#list-camber")).to_have_value("K0", **LATE)
    assert fresh(setup).codes == {**setup.codes, "camber": "K0"}


def test_on_a_phone_the_drawing_stands_before_the_lists(
    desk: Desk, live_world: World, setup: Setup
) -> None:
    page = _bench(desk, live_world, setup, width=360)
    looks, lists = page.locator("#bench-looks"), page.locator("#bench-form")
    drawn, listed = looks.bounding_box(), lists.bounding_box()
    assert drawn and listed
    assert drawn["y"] < listed["y"]
