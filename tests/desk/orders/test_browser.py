"""An order in a browser: by form alone to the delivered chair, with and without script."""

from __future__ import annotations

from playwright.sync_api import expect

from ..kit.browser import PICTURES, Desk, picture, too_wide, violations
from ..kit.world import World
from .made import client_file, low_arms, price_list

ON = ["It is quoted", "The quotation is accepted", "It is ordered", "Building begins",
      "It is built", "It is delivered"]  # fmt: skip


def _whole_way(desk: Desk, world: World, name: str) -> None:
    client_file(world, places=True)
    low_arms(world)
    price_list(world)
    page = desk.window(world.people["clinician"], width=1440)
    page.goto(f"/clients/{world.client.pk}/orders/")
    page.get_by_role("link", name="New order").click()
    page.get_by_role("button", name="Make the order").click()
    page.get_by_role("link", name="Say who accepts it, and why").click()
    picture(page, f"orders-way-accept-{name}")
    for field in page.locator("input[name^='reason:']").all():
        field.fill("the client asks for it")
    page.get_by_role("button", name="Accept those with a reason").click()
    for words in ON:
        page.get_by_role("button", name=words).click()
        expect(page.get_by_role("button", name=words)).to_have_count(0)
    expect(page.locator(".track [aria-current]")).to_have_text("Delivered")
    page.reload()
    for width in (360, 768, 1440):
        page.set_viewport_size({"width": width, "height": 900})
        picture(page, f"orders-way-{name}-{width}")
        assert too_wide(page) <= 0
        assert violations(page) == []
    paper = page.get_by_role("button", name="Build sheet")
    address = paper.get_attribute("formaction")
    answer = page.request.get(f"{desk.url}{address}?size=a4&units=mm")
    assert answer.body().startswith(b"%PDF")
    PICTURES.mkdir(parents=True, exist_ok=True)
    (PICTURES / "orders-build-sheet.pdf").write_bytes(answer.body())


def test_the_whole_way_with_script(desk: Desk, live_world: World) -> None:
    _whole_way(desk, live_world, "script")


def test_the_whole_way_without_script(desk_without_script: Desk, live_world: World) -> None:
    client_file(live_world)
    low_arms(live_world)
    page = desk_without_script.window(live_world.people["clinician"])
    page.goto(f"/clients/{live_world.client.pk}/orders/new/")
    page.get_by_role("button", name="Make the order").click()
    page.get_by_role("link", name="Say who accepts it, and why").click()
    page.locator("input[name='reason:arm_height_mm']").fill("the desk at work")
    page.get_by_role("button", name="Accept those with a reason").click()
    for words in ON:
        page.get_by_role("button", name=words).click()
    expect(page.locator(".track [aria-current]")).to_have_text("Delivered")
