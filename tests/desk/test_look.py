"""Every page in a real browser: at three widths, by axe, by keyboard alone, without script."""

from __future__ import annotations

import pytest

from .kit.browser import WIDTHS, Desk, picture, too_wide, unreached, violations
from .kit.standing import Standing, entries
from .kit.world import World

PAGES = [each for each in entries() if each.look and each.reads]
each_page = pytest.mark.parametrize("entry", PAGES, ids=str)


@each_page
def test_the_page_is_sound_at_each_width(entry: Standing, desk: Desk, live_world: World) -> None:
    user = live_world.people[entry.role] if entry.page.action else None
    address = entry.address(live_world)
    page = desk.window(user)
    for width in WIDTHS:
        page.set_viewport_size({"width": width, "height": 900})
        answer = page.goto(address)
        assert answer is not None
        assert answer.status == entry.status
        picture(page, f"{entry.view}-{width}")
        assert violations(page) == [], width
        assert too_wide(page) <= 0, width
    assert unreached(page) == []


def test_pages_of_trouble_are_sound_too(desk: Desk, live_world: World) -> None:
    page = desk.window(live_world.people["clinician"], width=360)
    page.goto("/no/such/page/")
    picture(page, "trouble-404-360")
    assert violations(page) == []
    page.goto("/clients/new/")
    page.context.clear_cookies(name="desk_session")
    page.get_by_label("Reference number").evaluate("each => { each.value = 'HEM-004' }")
    page.get_by_role("button", name="Make the file").click()
    page.get_by_role("heading", name="You have been signed out").wait_for()
    picture(page, "trouble-401-360")
    assert violations(page) == []
    assert too_wide(page) <= 0
    page.set_viewport_size({"width": 768, "height": 700})
    page.context.clear_cookies()
    page.get_by_role("button", name="Sign in").evaluate("each => each.form.noValidate = true")
    page.get_by_role("button", name="Sign in").click()
    page.get_by_role("heading", name="This form could not be accepted").wait_for()
    page.get_by_text("What you sent").click()
    picture(page, "trouble-403-768")
    assert violations(page) == []
