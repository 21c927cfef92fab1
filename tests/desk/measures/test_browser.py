"""Measuring in a real browser: the tape of the field in hand, remarks at once, drafts."""

from __future__ import annotations

from playwright.sync_api import Response, expect

from ..kit.browser import Desk
from ..kit.world import World


def test_the_tape_of_the_field_in_hand_stands_out_and_the_figure_follows(
    desk: Desk, live_world: World
) -> None:
    page = desk.window(live_world.people["clinician"])
    page.goto(f"/clients/{live_world.client.pk}/measures/new/")
    page.get_by_label("Sex").select_option("male")
    page.get_by_label("Body mass", exact=True).fill("78 kg")
    page.get_by_label("Body height", exact=True).fill("176 cm")
    expect(page.locator("#beside-hip_width")).to_contain_text("estimated")
    hips = page.locator("#tape-dimension-hip-width")
    page.get_by_label("Hip width", exact=True).focus()
    expect(hips).to_have_class("tape estimated told")
    expect(page.locator("#tape-words")).to_contain_text("tissue not pressed in")
    page.get_by_label("Hip width", exact=True).fill("16 1/4 in")
    expect(page.locator("#beside-hip_width")).to_be_empty()
    expect(hips).to_have_class("tape told")
    expect(hips).to_contain_text("413")
    expect(page.locator(".kept")).to_contain_text("Draft kept")
    with page.expect_response(_keeps_an_eighth):
        page.get_by_label("Hip width", exact=True).fill("16 1/8 in")
    page.reload()
    expect(page.get_by_label("Hip width", exact=True)).to_have_value("16 1/8 in")


def _keeps_an_eighth(answer: Response) -> bool:
    """Whether it is the answer to the draft with the last number, not to one still under way."""
    sent = answer.request.post_data or ""
    return "/drafts/" in answer.url and answer.ok and "1%2F8" in sent.replace("/", "%2F")


def test_what_was_typed_just_before_leaving_is_kept(desk: Desk, live_world: World) -> None:
    page = desk.window(live_world.people["clinician"])
    address = f"/clients/{live_world.client.pk}/measures/new/"
    page.goto(address)
    with page.expect_request(lambda sent: "/drafts/" in sent.url):
        page.get_by_label("Hip width", exact=True).fill("41 cm")
        page.goto("/clients/")
    page.goto(address)
    expect(page.get_by_label("Hip width", exact=True)).to_have_value("41 cm")


def test_without_script_what_is_typed_is_shown_by_a_button(
    desk_without_script: Desk, live_world: World
) -> None:
    page = desk_without_script.window(live_world.people["clinician"])
    page.goto(f"/clients/{live_world.client.pk}/measures/new/")
    page.get_by_label("Sex").select_option("female")
    page.get_by_label("Body mass", exact=True).fill("54 kg")
    page.get_by_label("Body height", exact=True).fill("152 cm")
    page.get_by_role("button", name="Show what is typed").click()
    expect(page.locator("#beside-hip_width")).to_contain_text("estimated")
    expect(page.get_by_label("Body mass", exact=True)).to_have_value("54 kg")


def test_the_tape_in_hand_never_goes_out_while_the_figure_follows(
    desk: Desk, live_world: World
) -> None:
    page = desk.window(live_world.people["clinician"])
    page.goto(f"/clients/{live_world.client.pk}/measures/new/")
    page.get_by_label("Hip width", exact=True).focus()
    page.evaluate(_WATCH_TAPE)
    with page.expect_response(lambda answer: answer.url.endswith("/live/")):
        page.get_by_label("Hip width", exact=True).fill("40 cm")
    expect(page.locator("#tape-dimension-hip-width")).to_contain_text("400")
    expect(page.locator(".kept")).to_contain_text("Draft kept")
    lit, out = page.evaluate("window.tape")
    assert lit > 0
    assert out == 0


_WATCH_TAPE = """() => {
  window.tape = [0, 0];
  const look = () => {
    const lit = document.querySelector('#tape-figure .tape.told');
    window.tape[lit ? 0 : 1] += 1;
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}"""
