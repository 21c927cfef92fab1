"""What is typed is kept: per person and form, over restarts, without script."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from pathlib import Path

from django.test import Client as Visitor
from playwright.sync_api import expect

from chairwright_desk.clients.models import Client
from chairwright_desk.drafts.models import Draft

from ..kit.browser import Desk
from ..kit.process import RunningDesk
from ..kit.world import World

NEW = "/clients/new/"


def form_of(visitor: Visitor) -> str:
    return visitor.get(NEW).content.decode()


def test_a_draft_is_one_persons_and_one_forms(world: World) -> None:
    mine = world.visitor("clinician")
    mine.post("/drafts/clients.new/", {"reference": "HEM-0", "keep_until": "not a date"})
    assert 'value="HEM-0"' in form_of(mine)
    assert "not a date" in form_of(mine), "half-typed values come back as they were"
    assert "HEM-0" not in form_of(world.visitor("specialist"))


def test_saving_ends_the_draft_and_a_refused_form_keeps_it(world: World) -> None:
    visitor = world.visitor("clinician")
    visitor.post("/drafts/clients.new/", {"reference": "AVG-001"})
    assert visitor.post(NEW, {"reference": "AVG-001", "team": world.team.pk}).status_code == 200
    assert Draft.objects.count() == 1
    visitor.post(NEW, {"reference": "HEM-004", "team": world.team.pk})
    assert Draft.objects.count() == 0


def test_passwords_and_marks_are_never_kept(world: World) -> None:
    fields = {"a": "1", "new_password": "x", "csrfmiddlewaretoken": "y", "form_key": "f"}
    world.visitor("clinician").post("/drafts/f/", fields)
    assert Draft.objects.get().fields == {"a": ["1"]}


def test_a_strange_key_is_not_found(world: World) -> None:
    assert world.visitor("clinician").post("/drafts/Not A Key/", {}).status_code == 404


def test_typing_is_kept_without_a_click_and_stands_in_the_page_when_it_is_opened_again(
    desk: Desk, live_world: World
) -> None:
    page = desk.window(live_world.people["clinician"])
    page.goto(NEW)
    page.get_by_label("Reference number").press_sequentially("TAL-0", delay=10)
    expect(page.locator(".kept")).to_contain_text("Draft kept at")
    again = desk.window(live_world.people["clinician"])
    again.goto(NEW)
    expect(again.get_by_label("Reference number")).to_have_value("TAL-0")
    expect(again.locator(".kept")).to_contain_text("Filled from your draft")
    again.get_by_role("button", name="Forget draft").click()
    expect(again.get_by_label("Reference number")).to_have_value("")


def test_without_script_a_button_keeps_the_draft_and_the_form_works(
    desk_without_script: Desk, live_world: World
) -> None:
    page = desk_without_script.window(live_world.people["clinician"])
    page.goto(NEW)
    page.get_by_label("Reference number").fill("TAL-0")
    page.get_by_role("button", name="Keep draft").click()
    expect(page.get_by_text("Your draft is kept.")).to_be_visible()
    expect(page.get_by_label("Reference number")).to_have_value("TAL-0")
    page.get_by_label("Reference number").fill("TAL-002")
    page.get_by_role("button", name="Make the file").click()
    expect(page.get_by_role("heading", name="TAL-002")).to_be_visible()
    assert Client.objects.filter(reference="TAL-002").exists()


def test_a_session_that_ends_while_typing_loses_nothing(desk: Desk, live_world: World) -> None:
    from ..kit.world import PASSWORD

    page = desk.window(live_world.people["clinician"])
    page.goto(NEW)
    page.context.clear_cookies(name="desk_session")
    page.get_by_label("Reference number").fill("TAL-002")
    # The draft cannot be kept any more: the page sends itself to be signed in, and comes back.
    expect(page.get_by_role("heading", name="You have been signed out")).to_be_visible()
    page.get_by_label("Sign-in name").fill("clinician")
    page.get_by_label("Password").fill(PASSWORD)
    page.get_by_role("button", name="Sign in").click()
    expect(page.get_by_label("Reference number")).to_have_value("TAL-002")


def test_a_draft_outlives_a_power_cut(tmp_path: Path) -> None:
    folder = tmp_path / "data"
    desk = RunningDesk(folder)
    visit = desk.visit()
    kept = visit.post("/drafts/clients.new/", {"reference": "CUT-9"}, page=NEW)
    assert kept[0] == 302
    desk.kill()
    with RunningDesk(folder) as desk:
        visit.url = desk.url
        assert 'value="CUT-9"' in visit.get(NEW)[1]
    with closing(sqlite3.connect(folder / "desk.sqlite3")) as database:
        assert database.execute("PRAGMA integrity_check").fetchone() == ("ok",)
