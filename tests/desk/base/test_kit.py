"""The browser checks find what they are there to find."""

from __future__ import annotations

import pytest

from ..kit.browser import Desk, too_wide, unreached, violations
from ..kit.world import World

STEM = (
    "<html lang='en'><head><title>T</title>{}</head><body><main><h1>T</h1>{}</main></body></html>"
)


@pytest.mark.parametrize(
    ("head", "body", "left"),
    [
        ("", "<a href='/x'>x</a><button>y</button>", 0),
        ("<style>a:focus { outline: none }</style>", "<a href='/x'>x</a><button>y</button>", 1),
        ("", "<input name='a'><input type='radio' name='r'><input type='radio' name='r'>", 0),
        ("", "<div onkeydown='event.preventDefault()'><input id='a'></div><input id='b'>", 1),
    ],
)
def test_what_the_keyboard_does_not_reach_is_found(
    head: str, body: str, left: int, desk: Desk
) -> None:
    page = desk.window()
    page.set_content(STEM.format(head, body))
    assert len(unreached(page)) == left


def test_a_wide_page_and_a_picture_without_words_are_found(desk: Desk) -> None:
    page = desk.window(width=360)
    wide = "<div style='width: 500px'>x</div><img src='data:image/gif;base64,R0lGODlhAQABAAAAACw='>"
    page.set_content(STEM.format("", wide))
    assert too_wide(page) >= 140
    assert any(each.startswith("image-alt") for each in violations(page))


def test_a_request_elsewhere_and_an_inline_script_are_noted(desk: Desk, live_world: World) -> None:
    page = desk.window(live_world.people["clinician"])
    page.goto("/clients/")
    assert desk.complaints == []
    page.evaluate("fetch('https://elsewhere.example/x').catch(() => 0)")
    page.evaluate(
        "document.body.append(Object.assign(document.createElement('script'), {text: '1'}))"
    )
    page.wait_for_timeout(100)
    told = "\n".join(desk.complaints)
    desk.complaints.clear()
    assert "connect-src" in told or "default-src" in told
    assert "script-src" in told
