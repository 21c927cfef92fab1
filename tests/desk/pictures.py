"""The pictures of the README, taken from a desk of its own: ``python -m tests.desk.pictures``.

Everything shown is invented: the client AVG-001 of examples/.
"""

from __future__ import annotations

import os
import sys
import tempfile
from collections import Counter
from collections.abc import Callable
from io import BytesIO
from pathlib import Path

os.environ.setdefault("DJANGO_SETTINGS_MODULE", "tests.desk.settings")

import django

django.setup()

from PIL import Image  # noqa: E402
from playwright.sync_api import Page, expect  # noqa: E402

from .kit.browser import Desk, launched  # noqa: E402
from .kit.newcomer import Newcomer  # noqa: E402
from .kit.process import RunningDesk  # noqa: E402
from .kit.world import EXAMPLES  # noqa: E402

FOLDER = Path(__file__).resolve().parents[2] / "docs" / "images"
SIZE = (1280, 900)
MOST_BYTES = 200_000
LATE_MS = 20_000
STILL_MS = 800


def take(page: Page, name: str) -> Path:
    """Take the window into docs/images.

    Parameters
    ----------
    page : Page
    name : str
    """
    page.mouse.move(0, 0)
    page.wait_for_load_state("networkidle")
    page.wait_for_timeout(STILL_MS)
    shot = Image.open(BytesIO(page.screenshot())).convert("RGB")
    path = FOLDER / f"desk-{name}.png"
    few(shot).save(path, optimize=True)
    assert path.stat().st_size < MOST_BYTES, (path, path.stat().st_size)
    return path


def few(shot: Image.Image) -> Image.Image:
    """Reduce a picture to the 256 colours that it has most of: flat ones stay close.

    Parameters
    ----------
    shot : PIL.Image.Image
    """
    parts = shot.tobytes()
    counted = Counter(parts[at : at + 3] for at in range(0, len(parts), 3))
    palette = Image.new("P", (1, 1))
    palette.putpalette(b"".join(colour for colour, _ in counted.most_common(256)))
    return shot.quantize(palette=palette, dither=Image.Dither.NONE)


def measuring(one: Newcomer) -> None:
    """AVG-001 made and measured up to the lower leg, whose tape is shown."""
    one.click("link", "New client")
    one.fill("Reference number", "AVG-001")
    one.click("button", "Make the file")
    one.tab("Measures")
    one.click("link", "Measure")
    one.choose("Sex", "male")
    one.choose("A number alone means", "cm and kg")
    for label, value in (
        ("Body mass", "78"),
        ("Body height", "176"),
        ("Hip width", "15 in"),
        ("Buttock to back of knee, left", "49"),
        ("Lower leg length, left", "45"),
    ):
        one.fill(label, value)
    expect(one.page.locator("#beside-lower_leg_length")).to_contain_text("right estimated")
    expect(one.page.locator("#tape-dimension-lower-leg-length")).to_contain_text("450")
    one.page.locator("legend", has_text="Seat and legs").evaluate(_TO_TOP)


def bench(one: Newcomer) -> None:
    """The whole example on the bench, the best set-up found."""
    one.tab("Measures")
    one.click("link", "Bring a file in")
    _bring(one.page, "clients")
    one.tab("Places")
    one.click("link", "Bring a file in")
    _bring(one.page, "places")
    one.tab("Set-ups")
    one.click("link", "New set-up")
    one.fill("Name", "first idea")
    one.click("button", "Make it")
    one.click("button", "Find the best")
    expect(one.page.locator(".messages")).to_contain_text("proven", timeout=LATE_MS)
    one.page.reload()


def lesson(one: Newcomer) -> None:
    """The lesson of the axle, its first question answered."""
    one.page.goto("/teach/lesson/axle/1/")
    one.page.get_by_role("radio").first.check()
    one.click("button", "Answer, and look")


def _bring(page: Page, kind: str) -> None:
    page.locator("main input[type=file]").set_input_files(EXAMPLES / kind / "avg-001.yaml")
    page.get_by_role("button", name="Read the file").click()
    expect(page.locator(".messages")).to_be_visible()


_TO_TOP = "each => window.scrollTo(0, each.getBoundingClientRect().top + scrollY - 12)"
PICTURES: tuple[Callable[[Newcomer], None], ...] = (measuring, bench, lesson)


def main() -> None:
    """Take every picture."""
    with (
        tempfile.TemporaryDirectory() as folder,
        launched() as browser,
        RunningDesk(Path(folder) / "data") as running,
    ):
        one = Newcomer(Desk(browser, running.url).window(width=SIZE[0], height=SIZE[1]))
        one.open(running.link)
        one.click("button", "Open the desk")
        for each in PICTURES:
            each(one)
            path = take(one.page, each.__name__)
            sys.stderr.write(f"{path}: {path.stat().st_size} bytes\n")


if __name__ == "__main__":
    main()
