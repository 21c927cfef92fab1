"""The documentation is true: links lead somewhere, commands parse, formats are read."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest

from chairwright.cli.main import COMMANDS, build_parser
from chairwright.files.client import KEYS, read_client
from chairwright.files.setup import read_setup
from chairwright.line.choices import CHOICES
from chairwright.line.load import load_line
from chairwright.person.measures import CATALOGUE

from .tree import ROOT, named, project_files

PAGES = [path for path in project_files() if path.suffix == ".md"]
REFERENCE = ROOT / "docs" / "reference"
LINK = re.compile(r"!?\[[^\]]*\]\(([^)\s]+)\)")
FENCE = re.compile(r"^```(\w*)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
FORMAT_LINE = re.compile(
    r"chairwright (?:client|set-up|line|places|scales|measured chair|order|price list) \d+"
)
"""What stands behind ``format:`` in a file; it looks like a command and is none."""
CODE = re.compile(r"`([^`\n]+)`")


def blocks(path: Path, language: str) -> list[str]:
    return [body for kind, body in FENCE.findall(path.read_text("utf-8")) if kind == language]


def commands(path: Path) -> list[str]:
    """Every ``chairwright ...`` that a page shows, in a block of its own or in a sentence."""
    text = path.read_text("utf-8")
    lines = [line for _, body in FENCE.findall(text) for line in body.splitlines()]
    spoken = CODE.findall(FENCE.sub("", text))
    found = [line.removeprefix("$ ") for line in (*lines, *spoken)]
    return [line for line in found if line.startswith("chairwright ")]


def anchors(path: Path) -> set[str]:
    titles = re.findall(r"^#+ (.+)$", path.read_text("utf-8"), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", title).strip().lower().replace(" ", "-") for title in titles}


@pytest.mark.parametrize("path", PAGES, ids=named)
def test_links_lead_somewhere(path: Path) -> None:
    for target in LINK.findall(path.read_text("utf-8")):
        if re.match(r"[a-z]+:", target):
            continue
        place, _, anchor = target.partition("#")
        page = (path.parent / place) if place else path
        assert page.exists(), target
        if anchor:
            assert anchor in anchors(page), target


@pytest.mark.parametrize("path", PAGES, ids=named)
def test_shown_commands_parse(path: Path) -> None:
    for line in commands(path):
        if FORMAT_LINE.fullmatch(line):
            continue
        words = shlex.split(line.replace("[", "").replace("]", ""), comments=True)[1:]
        name = next((word for word in words if not word.startswith("-")), None)
        known = {command.name for command in COMMANDS}
        if name is None:
            continue
        assert name in known | {"COMMAND"}, line
        if name in known and len(words) > 1 and "--help" not in words:
            build_parser(name).parse_args(words)


def test_every_command_is_described() -> None:
    text = "\n".join(path.read_text("utf-8") for path in PAGES if REFERENCE in path.parents)
    missing = [each.name for each in COMMANDS if f"chairwright {each.name}" not in text]
    assert missing == []


def test_the_client_page_shows_a_file_that_is_read(tmp_path: Path) -> None:
    whole, measures = blocks(REFERENCE / "client-file.md", "yaml")
    path = tmp_path / "client.yaml"
    path.write_text(whole, encoding="utf-8")
    client = read_client(path)
    assert client.reference == "WR-014"
    head = whole[: whole.index("measures:")]
    path.write_text(head + measures, encoding="utf-8")
    assert len(read_client(path).measures) == 5


def test_the_client_page_lists_every_key_and_measure() -> None:
    text = (REFERENCE / "client-file.md").read_text("utf-8")
    for key in KEYS:
        assert f"\n| `{key}` |" in text
    for kind in CATALOGUE.values():
        unit = "kg" if kind.dimension == "mass" else "mm"
        sides = "left, right" if kind.sided else "one"
        row = f"| {sides} | {kind.low:g} to {kind.high:g} {unit} | {kind.tolerance:g} {unit} |"
        assert f"\n| `{kind.name}` | {kind.term}. {kind.how} {row}\n" in text


def test_the_set_up_page_shows_a_file_of_the_shipped_line(tmp_path: Path) -> None:
    (whole,) = blocks(REFERENCE / "setup-file.md", "yaml")
    path = tmp_path / "setup.yaml"
    path.write_text(whole, encoding="utf-8")
    setup = read_setup(path)
    line = load_line(setup.line)
    for name, code in setup.choices.items():
        assert code in {option.code for option in line.choices[name].options}, name


def test_the_set_up_page_lists_every_choice_in_order() -> None:
    text = (REFERENCE / "setup-file.md").read_text("utf-8")
    assert re.findall(r"^\| `(\w+)` \|", text, re.MULTILINE)[-len(CHOICES) :] == list(CHOICES)


def test_make_targets_that_are_named_exist() -> None:
    makefile = (ROOT / "Makefile").read_text("utf-8")
    targets = set(re.findall(r"^(\w+):", makefile, re.MULTILINE))
    named_targets = {
        word for path in PAGES for word in re.findall(r"`make (\w+)", path.read_text("utf-8"))
    }
    assert named_targets
    assert named_targets - targets == set()


def test_the_changelog_says_which_numbers_move() -> None:
    assert "\n### Numbers that move\n" in (ROOT / "CHANGELOG.md").read_text("utf-8")
