"""The reference pages are true: every figure, every key of a line file, every choice."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from chairwright.figures.registry import FIGURES, GROUPS, Figure
from chairwright.files.client import read_client
from chairwright.files.setup import read_setup
from chairwright.fitting.person import read_person
from chairwright.fitting.setup import check_setup, index_of
from chairwright.line.choices import CHOICES
from chairwright.line.load import load_line
from chairwright.line.made_to_order import LETTERS

from . import line_page
from .tree import ROOT

REFERENCE = ROOT / "docs" / "reference"
FIGURES_PAGE = (REFERENCE / "figures.md").read_text("utf-8")
LINE_PAGE = (REFERENCE / "line-file.md").read_text("utf-8")
ROW = re.compile(r"\| (?:`?([\w ]+?)`? )?\| `(\w+)` \| ([^|]*) \| ([^|]*) \| ?([^|]*)\|")
PLAIN_KEYS = ("code", "name", "mass_kg", "at_mm")
"""Keys that say enough by themselves: their meaning stands once, above the tables."""
LINE_PAGE_FIELDS = line_page.fields()
HEAD = line_page.head()


def meaning(figure: Figure) -> str:
    """First line of the formula's docstring, for people; empty when it has none."""
    formula = figure.exact or figure.weighed
    first = (getattr(formula, "__doc__", None) or "").strip().splitlines()[:1]
    plain = re.sub(r",? shape \(n,\)|\s*\[[^\]]*\]", "", "".join(first))
    return plain.replace("NaN", "no value")


def figure_row(figure: Figure, words: str) -> str:
    """One line of the figures page."""
    step = f"{figure.scale:g} {figure.unit}".strip()
    unit = figure.unit or "share"
    cells = (f"`{figure.name}`", figure.label, unit, step, words, figure.source)
    return f"| {' | '.join(cells)} |"


def test_the_figures_page_lists_every_figure_in_order() -> None:
    wanted = [f.name for group in GROUPS for f in FIGURES.values() if f.group == group]
    assert re.findall(r"^\| `(\w+)` \|", FIGURES_PAGE, re.MULTILINE) == wanted
    assert [group for group in GROUPS if f"\n## {group}\n" not in FIGURES_PAGE] == []


@pytest.mark.parametrize("figure", FIGURES.values(), ids=FIGURES)
def test_the_figures_page_says_what_the_figure_means(figure: Figure) -> None:
    (row,) = [line for line in FIGURES_PAGE.splitlines() if line.startswith(f"| `{figure.name}` |")]
    words = row.split(" | ")[4]
    assert len(words) > 10
    if meaning(figure):
        assert words == meaning(figure)
    assert row == figure_row(figure, words)


def test_the_set_up_page_shows_a_chair_that_can_be_built(tmp_path: Path) -> None:
    files = {"client": "client-file.md", "setup": "setup-file.md"}
    for name, page in files.items():
        text = (REFERENCE / page).read_text("utf-8")
        (whole, *_) = re.findall(r"^```yaml\n(.*?)^```$", text, re.MULTILINE | re.DOTALL)
        whole = whole.replace("../clients/wr-014.yaml", "client.yaml")
        (tmp_path / f"{name}.yaml").write_text(whole, encoding="utf-8")
    setup = read_setup(tmp_path / "setup.yaml")
    line, person = load_line(setup.line), read_person(read_client(setup.client_path))
    check_setup(setup, line, person.occupant, index_of(setup, line))


def line_rows() -> list[tuple[str, str, str, str]]:
    """Every (list, key, limits, left out) of the line page; a blank first cell repeats the last."""
    rows, name = [], ""
    for line in LINE_PAGE.partition("## Order of the choices")[0].splitlines():
        found = ROW.match(line)
        if found:
            name = found[1] or name
            assert found[5].strip() or found[2] in PLAIN_KEYS, line
            rows.append((name, found[2], found[3], found[4]))
    return rows


def test_the_line_page_lists_every_key() -> None:
    told = [(name, key) for name, key, _, _ in line_rows()]
    assert len(told) == len(set(told))
    assert set(told) == set(LINE_PAGE_FIELDS)
    for key in HEAD:
        assert f"\n| `{key}` |" in LINE_PAGE


def test_the_line_page_names_the_lists_that_may_be_left_out() -> None:
    (words,) = re.findall(r"^May be left out: (.*)$", LINE_PAGE, re.MULTILINE)
    assert set(re.findall(r"`(\w+)`", words)) == line_page.may_be_left_out()


def test_the_line_page_names_the_choices_that_can_be_made_to_order() -> None:
    part = LINE_PAGE.partition("## Sizes made to order")[2].partition("\n## ")[0]
    for choice, letter in LETTERS.items():
        assert f"\n| `{choice}` | `M{letter}" in part


@pytest.mark.parametrize(("name", "key", "limits", "left_out"), line_rows())
def test_the_line_page_states_limits_and_what_a_key_left_out_means(
    name: str, key: str, limits: str, left_out: str
) -> None:
    assert (limits, left_out) == LINE_PAGE_FIELDS[name, key], f"{name}.{key}"


def test_the_line_page_states_the_limits_of_each_kind() -> None:
    for words, told in line_page.kinds().items():
        assert f"\n| {words} | {told} |" in LINE_PAGE


def test_the_line_page_lists_the_choices_with_codes_of_the_shipped_line() -> None:
    table = LINE_PAGE.partition("## Order of the choices")[2].partition("\n## ")[0]
    rows = re.findall(r"^\| `(\w+)` \| ([^|]*) \|", table, re.MULTILINE)
    assert [name for name, _ in rows] == list(CHOICES)
    line = load_line("everyday")
    for name, cell in rows:
        codes = re.findall(r"`([^`]+)`", cell)
        assert codes, name
        assert set(codes) <= set(line.choices[name].codes), name
