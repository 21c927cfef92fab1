"""Numbers of the tapes are large enough to be read, on a phone too."""

from __future__ import annotations

from typing import Any

import pytest
from playwright.sync_api import Page

from ..kit.browser import Desk
from ..kit.world import World
from ..standing.measures import made

LEAST_PX = 11.0
PHONES = ((360, 640), (768, 1024), (800, 360), (1440, 900))
TAPED = (
    "Body height",
    "Sitting height",
    "Hip width",
    "Elbow height",
    "Foot width",
    "Lower leg length, left",
)


def numbers(page: Page, of: str = ".tape") -> list[dict[str, Any]]:
    """Every number that is shown: its letters [px], and whether the drawing holds it."""
    return list(page.evaluate(_NUMBERS, f"{of} text"))


def opened(desk: Desk, world: World, units: str, size: tuple[int, int]) -> Page:
    """A window on the desk with measures of AVG-001."""
    made(world)
    user = world.people["clinician"]
    user.units = units
    user.save()
    return desk.window(user, width=size[0], height=size[1])


@pytest.mark.parametrize("size", PHONES, ids=str)
@pytest.mark.parametrize("units", ["mm", "inch"])
def test_the_number_of_the_tape_in_hand_is_read_without_its_neighbours(
    desk: Desk, live_world: World, units: str, size: tuple[int, int]
) -> None:
    page = opened(desk, live_world, units, size)
    page.goto(f"/clients/{live_world.client.pk}/measures/new/")
    for label in TAPED:
        page.get_by_label(label, exact=True).focus()
        told = numbers(page, ".tape.told")
        assert len(told) == 1, label
        assert told[0]["size"] >= LEAST_PX, (label, told)
        assert told[0]["inside"], (label, told)
        assert size[0] >= 1440 or numbers(page) == told, label


@pytest.mark.parametrize("size", PHONES, ids=str)
@pytest.mark.parametrize("units", ["mm", "inch"])
def test_every_number_of_the_shown_measures_is_read_in_its_own_region(
    desk: Desk, live_world: World, units: str, size: tuple[int, int]
) -> None:
    page = opened(desk, live_world, units, size)
    page.goto(f"/clients/{live_world.client.pk}/measures/")
    shown = numbers(page)
    assert len(shown) > 15
    assert min(each["size"] for each in shown) >= LEAST_PX - 0.01
    region = page.get_by_role("region", name="Drawing of the client")
    region.focus()
    if size[0] < 700:
        page.keyboard.press("ArrowRight")
        assert page.evaluate(_MOVED) > 0


_MOVED = """() => new Promise((done) => setTimeout(
  () => done(document.activeElement.scrollLeft), 300))"""
_NUMBERS = """(of) => [...document.querySelectorAll(of)]
  .filter((each) => getComputedStyle(each).display !== 'none')
  .map((each) => {
    const box = each.getBoundingClientRect();
    const room = each.ownerSVGElement.getBoundingClientRect();
    const turn = each.getScreenCTM();
    const share = Math.hypot(turn.a, turn.b);
    return {
      words: each.textContent,
      size: parseFloat(each.getAttribute('font-size')) * share,
      inside: box.left >= room.left - 1 && box.right <= room.right + 1 &&
        box.top >= room.top - 1 && box.bottom <= room.bottom + 1,
    };
  })"""
