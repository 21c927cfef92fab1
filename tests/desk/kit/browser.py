"""Debian's Chromium on the pages of a live desk, with a watch on every request it makes."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from axe_playwright_python.sync_playwright import Axe
from django.conf import settings
from django.contrib.auth import BACKEND_SESSION_KEY, HASH_SESSION_KEY, SESSION_KEY
from django.contrib.sessions.backends.db import SessionStore
from playwright.sync_api import Browser, Page, sync_playwright

from chairwright_desk.accounts.models import User

from ..settings import AUTHENTICATION_BACKENDS

ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]
WIDTHS = (360, 768, 1440)
PICTURES = Path(__file__).resolve().parents[3] / "out" / "desk"
PATIENCE_MS = 10_000
REFUSALS = ("the server responded with a status of", "Response Status Error Code")
"""What the browser and htmx say of an answer such as 401: tests look at the page for it."""


def chromium() -> str:
    """Path of the browser."""
    found = shutil.which("chromium") or shutil.which("chromium-browser")
    assert found, "the desk's tests need Chromium: apt-get install chromium"
    return found


@contextmanager
def launched() -> Iterator[Browser]:
    """A browser."""
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=chromium(), args=ARGUMENTS)
        yield browser
        browser.close()


@dataclass
class Desk:
    """A browser window on a live desk.

    Parameters
    ----------
    browser : Browser
        From `launched`.
    url : str
        The desk's address without a path.
    script : bool
        Whether scripts run.
    complaints : list of str
        Requests to anywhere else, errors of scripts and of the content policy; each test ends by
        finding it empty.
    """

    browser: Browser
    url: str
    script: bool = True
    complaints: list[str] = field(default_factory=list)
    _contexts: list[Any] = field(default_factory=list)

    def window(self, user: User | None = None, width: int = 1440, height: int = 900) -> Page:
        """Open a window, signed in as a person."""
        context = self.browser.new_context(
            viewport={"width": width, "height": height},
            java_script_enabled=self.script,
            base_url=self.url,
            reduced_motion="reduce",
        )
        context.set_default_timeout(PATIENCE_MS)
        if user is not None:
            context.add_cookies([cookie_of(user, self.url)])  # type: ignore[list-item]
        page = context.new_page()
        page.on("request", self._request)
        page.on("console", self._said)
        page.on("pageerror", lambda error: self.complaints.append(f"script: {error}"))
        self._contexts.append(context)
        return page

    def close(self) -> None:
        """Close every window."""
        for context in self._contexts:
            context.close()

    def _request(self, request: Any) -> None:
        if not request.url.startswith((self.url, "data:", "blob:", "about:")):
            self.complaints.append(f"request to {request.url}")

    def _said(self, message: Any) -> None:
        expected = any(words in message.text for words in REFUSALS)
        if message.type in ("error", "warning") and not expected:
            self.complaints.append(f"console: {message.text}")


def cookie_of(user: User, url: str) -> dict[str, str]:
    """Return the cookie of a fresh session of a person."""
    session = SessionStore()
    session[SESSION_KEY] = user.pk
    session[BACKEND_SESSION_KEY] = AUTHENTICATION_BACKENDS[0]
    session[HASH_SESSION_KEY] = user.get_session_auth_hash()
    session.save()
    return {"name": settings.SESSION_COOKIE_NAME, "value": str(session.session_key), "url": url}


def violations(page: Page) -> list[str]:
    """What axe finds wrong: rule, help, and where."""
    found = Axe().run(page).response["violations"]
    return [
        f"{each['id']}: {each['help']}: {'; '.join(str(n['target']) for n in each['nodes'][:5])}"
        for each in found
    ]


def too_wide(page: Page) -> int:
    """Pixels by which the page must be scrolled sideways."""
    script = "document.documentElement.scrollWidth - document.documentElement.clientWidth"
    return int(page.evaluate(script))


def unreached(page: Page) -> list[str]:
    """What can be used with a mouse but is not come to by the Tab key, or shows no focus."""
    page.evaluate(_MARK)
    count = int(page.evaluate("document.querySelectorAll('[data-must-reach]').length"))
    page.evaluate("document.activeElement && document.activeElement.blur()")
    for _ in range(count + 5):
        page.keyboard.press("Tab")
        page.evaluate(_REACHED)
    return list(page.evaluate(_LEFT))


_MARK = """() => {
  const all = 'a[href], button:not(:disabled), input:not([type=hidden]):not(:disabled), ' +
    'select:not(:disabled), textarea:not(:disabled), summary, [tabindex="0"]';
  const radios = new Set();
  for (const each of document.querySelectorAll(all)) {
    if (!each.checkVisibility({visibilityProperty: true}) || each.tabIndex < 0) continue;
    if (each.type === 'radio') {
      if (radios.has(each.name)) continue;
      radios.add(each.name);
      for (const one of document.getElementsByName(each.name)) one.dataset.group = each.name;
    }
    each.setAttribute('data-must-reach', '');
  }
}"""
_REACHED = """() => {
  let each = document.activeElement;
  if (!each || each === document.body) return;
  const style = getComputedStyle(each);
  const seen = style.outlineStyle !== 'none' || style.boxShadow !== 'none';
  if (each.dataset.group) {
    each = document.querySelector(`[data-must-reach][data-group="${each.dataset.group}"]`) || each;
  }
  if (seen) each.removeAttribute('data-must-reach');
}"""
_LEFT = """() => [...document.querySelectorAll('[data-must-reach]')]
  .map((each) => each.outerHTML.slice(0, 120))"""


def picture(page: Page, name: str) -> Path:
    """Take a picture of the whole page into out/desk."""
    PICTURES.mkdir(parents=True, exist_ok=True)
    path = PICTURES / f"{name.replace(':', '-')}.png"
    page.screenshot(path=path, full_page=True)
    return path
