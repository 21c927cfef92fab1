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
