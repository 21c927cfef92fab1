"""What a browser has after a walk over every page: two cookies, and nothing of any client."""

from __future__ import annotations

from typing import Any
from urllib.parse import unquote

from playwright.sync_api import Page

from ..kit.browser import Desk
from ..kit.standing import Standing, entries
from ..kit.world import WHO, World

COOKIES = {"desk_session", "desk_form"}
HELD = """async () => ({
  local: Object.keys(localStorage).length,
  session: {...sessionStorage},
  caches: (await caches.keys()).length,
  databases: (await indexedDB.databases()).length,
  workers: (await navigator.serviceWorker.getRegistrations()).length,
  title: document.title,
})"""
ADDRESSES = """() => [...document.querySelectorAll('[href], [action], [src], [hx-get], [hx-post]')]
  .flatMap((each) => ['href', 'action', 'src', 'hx-get', 'hx-post']
    .map((name) => each.getAttribute(name) || ''))"""
PATH = "htmx-current-path-for-history"
"""htmx writes the path of the page there, whatever it is told; ids in it are opaque."""
NOTHING = {"local": 0, "caches": 0, "databases": 0, "workers": 0}
WALKED = [each for each in entries() if each.look and each.reads and each.page.action]


def _words(world: World) -> list[str]:
    return [world.client.reference, *WHO]


def _in_address(world: World, address: str) -> list[str]:
    plain = unquote(address).lower()
    return [words for words in _words(world) if words.lower() in plain]


def _walk(page: Page, entry: Standing, world: World, told: list[str]) -> Any:
    answer = page.goto(entry.address(world))
    assert answer is not None
    if answer.headers.get("cache-control") != "no-store":
        told.append(f"{entry}: may be stored by the browser")
    held = page.evaluate(HELD)
    title, session = held.pop("title"), held.pop("session")
    path = session.pop(PATH, "")
    if held != NOTHING or session:
        told.append(f"{entry}: {held} {session}")
    if any(words in title for words in WHO):
        told.append(f"{entry}: its title goes into the history")
    for address in [page.url, path, *page.evaluate(ADDRESSES)]:
        told += [f"{entry}: {words} in {address}" for words in _in_address(world, address)]


def test_every_page_leaves_nothing_of_a_client_in_the_browser(
    desk: Desk, live_world: World
) -> None:
    told: list[str] = []
    requests: list[str] = []
    for role in sorted({entry.role for entry in WALKED}):
        page = desk.window(live_world.people[role])
        page.on("request", lambda request: requests.append(request.url))
        for entry in (each for each in WALKED if each.role == role):
            _walk(page, entry, live_world, told)
        cookies = page.context.cookies()
        assert {cookie["name"] for cookie in cookies} <= COOKIES
        for cookie in cookies:
            assert cookie["httpOnly"]
            assert cookie["sameSite"] == "Strict" or cookie["name"] == "desk_session"
            assert cookie["expires"] < 0 or cookie["name"] == "desk_form"
        page.context.close()
    for address in set(requests):
        told += [f"{words} asked for at {address}" for words in _in_address(live_world, address)]
    assert told == []
    assert len(WALKED) > 20
    assert len(requests) > len(WALKED)
