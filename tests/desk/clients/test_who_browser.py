"""Who a client is, in the browser: kept while typing, not by the browser, and not lost by two."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from chairwright_desk.clients.models import Identity
from chairwright_desk.drafts.models import Draft

from ..kit.browser import WIDTHS, Desk, picture, too_wide, violations
from ..kit.world import NAME, World

TYPED = "Ada Pflaume"
STORED = "JSON.stringify([{...localStorage}, {...sessionStorage}])"


def change_page(desk: Desk, world: World, role: str) -> Page:
    page = desk.window(world.people[role])
    page.goto(f"/clients/{world.client.pk}/who/change/")
    return page


def test_what_is_typed_is_kept_by_the_desk_and_not_by_the_browser(
    desk: Desk, live_world: World
) -> None:
    page = change_page(desk, live_world, "clinician")
    page.get_by_label("Name").fill(TYPED)
    expect(page.locator(".kept")).to_contain_text("Draft kept at")
    assert TYPED in str(Draft.objects.get().fields)
    assert TYPED not in page.evaluate(STORED)
    assert page.evaluate("document.forms[1].autocomplete") == "off"
    for label in ("Name", "Date of birth", "Diagnosis"):
        field = page.get_by_label(label)
        assert field.get_attribute("autocomplete") == "off", label
        assert field.get_attribute("spellcheck") == "false", label
    again = change_page(desk, live_world, "clinician")
    expect(again.get_by_label("Name")).to_have_value(TYPED)
    other = change_page(desk, live_world, "specialist")
    expect(other.get_by_label("Name")).to_have_value(NAME)


def test_the_second_of_two_chooses_between_both_versions(desk: Desk, live_world: World) -> None:
    first, second = (change_page(desk, live_world, r) for r in ("clinician", "specialist"))
    first.get_by_label("Diagnosis").fill("one thing")
    first.get_by_role("button", name="Save").click()
    expect(first.get_by_text("one thing")).to_be_visible()
    second.get_by_label("Diagnosis").fill("another thing")
    second.get_by_label("Date of birth").fill("")
    second.get_by_role("button", name="Save").click()
    row = second.get_by_role("row", name="Diagnosis")
    expect(row).to_contain_text("one thing")
    expect(row).to_contain_text("another thing")
    expect(second.get_by_role("row", name="Date of birth")).to_contain_text("differs")
    for width in WIDTHS:
        second.set_viewport_size({"width": width, "height": 900})
        picture(second, f"who-both-versions-{width}")
        assert violations(second) == []
        assert too_wide(second) <= 0
    second.get_by_role("button", name="Save yours in its place").click()
    expect(second.get_by_text("another thing")).to_be_visible()
    held = Identity.objects.get(client=live_world.client)
    assert (held.name, held.born, held.diagnosis) == (NAME, None, "another thing")
    assert held.revision == 3


@pytest.mark.parametrize("script", [True, False], ids=["script", "no script"])
def test_all_of_it_is_emptied_in_two_steps(
    desk: Desk, desk_without_script: Desk, live_world: World, script: bool
) -> None:
    page = (desk if script else desk_without_script).window(live_world.people["clinician"])
    page.goto(f"/clients/{live_world.client.pk}/who/")
    expect(page.get_by_role("button", name="Empty all three")).to_be_hidden()
    page.get_by_text("Empty all of it").click()
    if script:
        for width in WIDTHS:
            page.set_viewport_size({"width": width, "height": 900})
            picture(page, f"who-emptying-{width}")
            assert violations(page) == []
    page.get_by_role("button", name="Empty all three").click()
    expect(page.get_by_text("not entered")).to_have_count(3)
    held = Identity.objects.get(client=live_world.client)
    assert (held.name, held.born, held.diagnosis) == ("", None, "")
    picture(page, "who-empty")
