"""A newcomer at the desk: every click and every filled field is counted."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from playwright.sync_api import Locator, Page


@dataclass
class Newcomer:
    """Hands on a page, found only by what a person reads: labels, links, buttons.

    Parameters
    ----------
    page : Page
        A window of the desk.
    done : list of str
        Each click and each filled field, in order.
    """

    page: Page
    done: list[str] = field(default_factory=list)

    def open(self, link: str) -> None:
        """Click a link outside of the browser, such as the one the start prints."""
        self.page.goto(link)
        self.done.append("the printed link")

    def click(self, role: Literal["link", "button"], words: str) -> None:
        """Click a link or a button by its words."""
        self.press(self.page.get_by_role(role, name=words, exact=True), words)

    def press(self, target: Locator, words: str) -> None:
        """Click what was found in another way."""
        target.click()
        self.page.wait_for_load_state()
        self.done.append(words)

    def tab(self, words: str) -> None:
        """Go to a part of the client's file."""
        tabs = self.page.get_by_role("navigation", name="Parts of the file")
        self.press(tabs.get_by_role("link", name=words, exact=True), words)

    def fill(self, label: str, value: str) -> None:
        """Fill a field by its label."""
        self.write(self.page.get_by_label(label, exact=True), value, f"{label}: ")

    def write(self, target: Locator, value: str, before: str = "") -> None:
        """Fill what was found in another way."""
        target.fill(value)
        self.done.append(before + value)

    def choose(self, label: str, words: str) -> None:
        """Take an option of a list by what it says."""
        self.page.get_by_label(label, exact=True).select_option(label=words)
        self.done.append(f"{label}: {words}")

    def paper(self, words: str) -> bytes:
        """Open a paper by its button; what the window of its own was given."""
        with self.page.context.expect_event(
            "request", lambda request: "/paper/" in request.url
        ) as asked:
            self.page.get_by_role("button", name=words, exact=True).click()
        self.done.append(words)
        answer = self.page.request.get(asked.value.url)
        assert answer.ok, answer.status
        return bytes(answer.body())
