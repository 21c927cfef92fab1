"""Two people save the same client: the second sees both versions; nothing is lost."""

from __future__ import annotations

from playwright.sync_api import expect

from chairwright_desk.clients.models import Client

from ..kit.browser import Desk, picture, violations
from ..kit.world import World


def test_the_second_of_two_is_shown_both_versions_and_chooses(
    desk: Desk, live_world: World
) -> None:
    client = live_world.client
    first, second = (desk.window(live_world.people[r]) for r in ("clinician", "specialist"))
    for page in (first, second):
        page.goto(f"/clients/{client.pk}/change/")
    first.get_by_label("Reference number").fill("AVG-001-A")
    first.get_by_role("button", name="Save").click()
    expect(first.get_by_role("heading", name="AVG-001-A")).to_be_visible()
    second.get_by_label("Reference number").fill("AVG-001-B")
    second.get_by_role("button", name="Save").click()
    row = second.get_by_role("row", name="Reference number")
    expect(row).to_contain_text("AVG-001-A")
    expect(row).to_contain_text("AVG-001-B")
    expect(second.get_by_text("Clinician saved revision 2")).to_be_visible()
    assert violations(second) == []
    picture(second, "both-versions-1440")
    assert Client.objects.get(pk=client.pk).reference == "AVG-001-A"
    second.get_by_role("button", name="Save yours in its place").click()
    expect(second.get_by_role("heading", name="AVG-001-B")).to_be_visible()
    saved = Client.objects.get(pk=client.pk)
    assert (saved.reference, saved.revision) == ("AVG-001-B", 3)
    assert saved.changed_by == live_world.people["specialist"]


def test_the_same_holds_without_a_browser(world: World) -> None:
    visitor, address = world.visitor("clinician"), f"/clients/{world.client.pk}/change/"
    fields = {"reference": "AVG-001-A", "keep_until": "", "revision": "1"}
    assert visitor.post(address, fields).status_code == 302
    late = visitor.post(address, fields | {"reference": "AVG-001-B"})
    assert late.status_code == 409
    for version in ("AVG-001-A", "AVG-001-B"):
        assert version in late.content.decode()
