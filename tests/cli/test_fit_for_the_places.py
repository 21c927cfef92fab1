"""The how-to of places: its file is read and its shown results are what the program prints."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from chairwright.cli.main import main
from chairwright.files.client import read_client
from chairwright.files.places import read_places
from chairwright.fitting.person import read_person

ROOT = Path(__file__).resolve().parents[2]
PAGE = (ROOT / "docs" / "how-to" / "fit-for-the-places.md").read_text("utf-8")
SHOWN = re.findall(r"^```\n(chairwright [^\n]*)\n```\n\n```text\n(.*?)^```$", PAGE, re.M | re.S)


def test_the_file_on_the_page_is_read_and_asks_for_what_the_page_says(tmp_path: Path) -> None:
    (whole,) = re.findall(r"^```yaml\n(.*?)^```$", PAGE, re.MULTILINE | re.DOTALL)
    path = tmp_path / "places.yaml"
    path.write_text(whole, encoding="utf-8")
    client = read_client(ROOT / "examples" / "clients" / "avg-001.yaml")
    person = read_person(client, read_places(path))
    asked = {target.figure.partition("@")[0]: target for target in person.targets if target.place}
    assert (asked["overall_width_mm"].high, asked["overall_width_mm"].must) == (600, True)
    assert (asked["rim_force_n"].high, asked["rim_force_n"].must) == (50, True)
    assert (asked["knee_top_mm"].high, asked["knee_top_mm"].must) == (695, False)


def test_results_are_shown() -> None:
    assert [command.split()[1] for command, _ in SHOWN] == ["fit", "places"]


@pytest.mark.parametrize(("command", "shown"), SHOWN)
def test_what_the_page_shows_is_printed(
    command: str, shown: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(ROOT)
    words = shlex.split(command)[1:]
    assert main([*words, *(["--no-front"] if words[0] == "fit" else [])]) == 0
    assert shown in capsys.readouterr().out
