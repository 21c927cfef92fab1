"""The reference pages are true: every figure, every key of a line file, every choice."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any, get_args, get_type_hints

import pytest
from pydantic import BaseModel

from chairwright.figures.registry import FIGURES, GROUPS, Figure
from chairwright.files.client import read_client
from chairwright.files.setup import read_setup
from chairwright.fitting.fit import read_person
from chairwright.fitting.setup import check_setup, index_of
from chairwright.line import schema
from chairwright.line.choices import CHOICES
from chairwright.line.load import load_line

from .tree import ROOT

REFERENCE = ROOT / "docs" / "reference"
FIGURES_PAGE = (REFERENCE / "figures.md").read_text("utf-8")
LINE_PAGE = (REFERENCE / "line-file.md").read_text("utf-8")
LIMITS = {
    "code": schema.Code,
    "words": schema.Words,
    "size": schema.Size,
    "place": schema.Place,
    "mass": schema.Mass,
    "angle": schema.Angle,
    "at": schema.At,
    "hole": schema.Hole,
    "capital letter": schema.Column,
    "list of codes": schema.Codes,
    "choice": str,
}
HEAD = ("format", "name", "title", "maker", "version")
UNITS = {"_mm": "mm", "_deg": "deg", "_kg": "kg", "_kgm2": "kg m²"}


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


def line_rows() -> list[tuple[str, str, str]]:
    """Every (list, key, limits) of the line page; a blank first cell repeats the one above."""
    rows, name = [], ""
    for line in LINE_PAGE.partition("## Order of the choices")[0].splitlines():
        found = re.match(r"\| (?:`(\w+)`)? ?\| `(\w+)` \| ([^|]*) \|", line)
        if found:
            name = found[1] or name
            rows.append((name, found[2], found[3]))
    return rows


def models() -> Iterator[tuple[str, type[BaseModel]]]:
    """Every list or table of a line file with the schema of its entries."""
    for name, kind in get_type_hints(schema.WrittenLine).items():
        inner = get_args(kind)[-1] if get_args(kind) else kind
        if isinstance(inner, type) and issubclass(inner, BaseModel):
            yield name, inner


def test_the_line_page_lists_every_key() -> None:
    wanted = {(name, key) for name, model in models() for key in model.model_fields}
    told = [(name, key) for name, key, _ in line_rows()]
    assert len(told) == len(set(told))
    assert set(told) == wanted
    head = set(schema.WrittenLine.model_fields) - {name for name, _ in models()}
    assert head == set(HEAD)
    for key in HEAD:
        assert f"\n| `{key}` |" in LINE_PAGE


def limits(key: str, kind: Any) -> str:
    """What the page must say of one key."""
    for words, alias in LIMITS.items():
        if kind is alias:
            return words
    inner = get_args(kind)[0] if get_args(kind) else kind
    parts = get_args(inner)
    if str(inner).startswith("dict"):
        if "Literal" in str(parts[0]):
            named = " or ".join(f"`{each}`" for each in get_args(parts[0]))
            return f"{named}: {limits(key, parts[1])}"
        return f"{limits(key, parts[0])}: {limits(key, parts[1])}"
    if str(inner).startswith("list"):
        words = limits(key, parts[0])
        return f"list of {'codes' if parts[0] is str else words}"
    if kind == list[str]:
        return "list of codes"
    return numbers(key, kind)


def numbers(key: str, kind: Any) -> str:
    """A range in words, with the unit that the key's ending says."""
    bounds = {type(each).__name__: each for each in get_args(kind)[1].metadata}
    unit = UNITS["_" + key.rpartition("_")[2]]
    high = f"{bounds['Le'].le:g} {unit}"
    if "Gt" in bounds:
        return f"above {bounds['Gt'].gt:g}, at most {high}"
    return f"{bounds['Ge'].ge:g} to {high}"


@pytest.mark.parametrize(("name", "key", "told"), line_rows())
def test_the_line_page_states_the_limits(name: str, key: str, told: str) -> None:
    model = dict(models())[name]
    hints = get_type_hints(model, include_extras=True)
    assert told == limits(key, hints[key]), f"{name}.{key}"


def test_the_line_page_states_the_limits_of_each_kind() -> None:
    for words, alias in (
        ("size", schema.Size),
        ("place", schema.Place),
        ("mass", schema.Mass),
        ("angle", schema.Angle),
    ):
        bounds = {type(each).__name__: each for each in get_args(alias)[1].metadata}
        unit = {"mass": "kg", "angle": "deg"}.get(words, "mm")
        low = f"above {bounds['Gt'].gt:g}, at most" if "Gt" in bounds else f"{bounds['Ge'].ge:g} to"
        assert f"\n| {words} | {low} {bounds['Le'].le:g} {unit} |" in LINE_PAGE


def test_the_line_page_lists_the_choices_with_codes_of_the_shipped_line() -> None:
    table = LINE_PAGE.partition("## Order of the choices")[2].partition("\n## ")[0]
    rows = re.findall(r"^\| `(\w+)` \| ([^|]*) \|", table, re.MULTILINE)
    assert [name for name, _ in rows] == list(CHOICES)
    line = load_line("everyday")
    for name, cell in rows:
        codes = re.findall(r"`([^`]+)`", cell)
        assert codes, name
        assert set(codes) <= set(line.choices[name].codes), name
