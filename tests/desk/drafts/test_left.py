"""A page left before the desk had answered shows what was typed into it when it is opened again."""

from __future__ import annotations

import threading
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from chairwright_desk.drafts import views
from chairwright_desk.drafts.kept import keep
from chairwright_desk.drafts.models import Draft

from ..kit.browser import Desk
from ..kit.world import World

NEW = "/clients/new/"
TYPE_AND_LEAVE = """words => {
  const field = document.querySelector("[name=reference]");
  field.value = words;
  field.dispatchEvent(new InputEvent("input", {bubbles: true}));
  window.location.assign("/clients/");
}"""


def left_while_typing(page: Page, words: str) -> None:
    """Type, and leave before the draft was sent by itself; the request is under way."""
    page.goto(NEW)
    with page.expect_request(lambda sent: "/drafts/" in sent.url):
        page.evaluate(TYPE_AND_LEAVE, words)
    page.wait_for_url("**/clients/")


def marks_of(page: Page) -> list[str]:
    """Addresses of the drafts that this window waits for."""
    kept: list[str] = page.evaluate("Object.keys(sessionStorage)")
    return [address for address in kept if address.startswith("/drafts/")]


def test_a_page_opened_before_its_draft_arrived_waits_for_it(
    desk: Desk, live_world: World, monkeypatch: pytest.MonkeyPatch
) -> None:
    def slow(*given: Any) -> Draft:
        assert seen_waiting.wait(60)
        return keep(*given)

    seen_waiting = threading.Event()
    monkeypatch.setattr(views, "keep", slow)
    page = desk.window(live_world.people["clinician"])
    left_while_typing(page, "TAL-0")
    page.goto(NEW)
    expect(page.locator("form:has(.keep)")).to_have_attribute("inert", "")
    seen_waiting.set()
    expect(page.get_by_label("Reference number")).to_have_value("TAL-0")
    expect(page.locator("form:has(.keep)")).not_to_have_attribute("inert", "")
    assert Draft.objects.get().fields["reference"] == ["TAL-0"]


def test_a_draft_that_never_arrives_is_told_and_the_form_can_be_used(
    desk: Desk, live_world: World, monkeypatch: pytest.MonkeyPatch
) -> None:
    def lost(*_given: Any) -> Draft:
        assert left.wait(60)
        return Draft()

    left = threading.Event()
    with monkeypatch.context() as patched:
        patched.setattr(views, "keep", lost)
        page = desk.window(live_world.people["clinician"])
        left_while_typing(page, "TAL-0")
        left.set()
        page.goto(NEW)
    expect(page.locator("#desk-said")).to_contain_text("may not have reached the desk")
    page.get_by_label("Reference number").fill("TAL-1")
    expect(page.locator(".kept")).to_contain_text("Draft kept")
    page.reload()
    expect(page.get_by_label("Reference number")).to_have_value("TAL-1")
    expect(page.locator("#desk-said")).to_be_empty()


def test_what_a_draft_sent_by_itself_could_not_bring_is_sent_again_on_leaving(
    desk: Desk, live_world: World
) -> None:
    page = desk.window(live_world.people["clinician"])
    page.goto(NEW)
    page.route("**/drafts/**", lambda route: route.fulfill(status=503))
    with page.expect_request(lambda sent: "/drafts/" in sent.url):
        page.get_by_label("Reference number").fill("TAL-0")
    expect(page.locator("#desk-said")).to_contain_text("could not take this")
    page.unroute("**/drafts/**")
    page.goto("/clients/")
    page.goto(NEW)
    expect(page.get_by_label("Reference number")).to_have_value("TAL-0")


def test_a_form_sent_and_then_opened_anew_waits_for_nothing(desk: Desk, live_world: World) -> None:
    page = desk.window(live_world.people["clinician"])
    left_while_typing(page, "TAL-0")
    page.goto(NEW)
    page.get_by_label("Reference number").fill("TAL-002")
    page.get_by_role("button", name="Make the file").click()
    expect(page.get_by_role("heading", name="TAL-002")).to_be_visible()
    assert marks_of(page) == []
    page.goto(NEW)
    expect(page.get_by_label("Reference number")).to_have_value("")
    expect(page.locator("#desk-said")).to_be_empty()


def test_saving_waits_for_a_draft_under_way_and_ends_it(
    desk: Desk, live_world: World, monkeypatch: pytest.MonkeyPatch
) -> None:
    def slow(*given: Any) -> Draft:
        under_way.set()
        assert clicked.wait(60)
        return keep(*given)

    under_way, clicked = threading.Event(), threading.Event()
    monkeypatch.setattr(views, "keep", slow)
    page = desk.window(live_world.people["clinician"])
    page.goto(NEW)
    page.get_by_label("Reference number").press_sequentially("TAL-002")
    page.wait_for_selector(".keep.htmx-request", state="attached")
    assert under_way.wait(60)
    page.get_by_role("button", name="Make the file").click(no_wait_after=True)
    clicked.set()
    expect(page.get_by_role("heading", name="TAL-002")).to_be_visible()
    assert not Draft.objects.exists()


def test_the_browser_keeps_a_mark_only_and_forgets_it_on_signing_out(
    desk: Desk, live_world: World, monkeypatch: pytest.MonkeyPatch
) -> None:
    def slow(*given: Any) -> Draft:
        assert left.wait(60)
        return keep(*given)

    left = threading.Event()
    monkeypatch.setattr(views, "keep", slow)
    page = desk.window(live_world.people["clinician"])
    left_while_typing(page, "TAL-0")
    left.set()
    assert marks_of(page) == ["/drafts/clients.new/"]
    assert "TAL" not in page.evaluate("JSON.stringify(sessionStorage)")
    page.get_by_role("button", name="Sign out").click()
    expect(page.get_by_label("Sign-in name")).to_be_visible()
    assert marks_of(page) == []


def test_a_mark_is_one_persons_and_one_forms(world: World) -> None:
    mine = world.visitor("clinician")
    mine.post("/drafts/clients.new/", {"reference": "HEM-0", "left_mark": "m1"})
    assert mine.get("/drafts/clients.new/left/m1/").json() == {"arrived": True}
    assert mine.get("/drafts/clients.new/left/m2/").json() == {"arrived": False}
    assert mine.get("/drafts/clients.who/left/m1/").json() == {"arrived": False}
    other = world.visitor("specialist").get("/drafts/clients.new/left/m1/")
    assert other.json() == {"arrived": False}
    assert Draft.objects.get().fields == {"reference": ["HEM-0"]}
