"""The validation page is true: every test it names exists, and no check's file is left out."""

from __future__ import annotations

import re

import pytest

from .tree import ROOT, named, project_files

PAGE = (ROOT / "docs" / "validation" / "index.md").read_text("utf-8")
EVIDENCE = ("published", "hand", "oracles", "laws")
NAMED = re.findall(r"`(tests/[\w/]+\.py)(?:::(\w+)(?:::(\w+))?)?`", PAGE)
CHECKS = [
    named(path)
    for path in project_files()
    if path.name.startswith("test_") and path.parent.name in EVIDENCE
]


def test_checks_are_seen() -> None:
    assert len(CHECKS) > 5
    assert len(NAMED) > 10


@pytest.mark.parametrize(("path", "outer", "inner"), NAMED)
def test_a_named_test_exists(path: str, outer: str, inner: str) -> None:
    text = (ROOT / path).read_text("utf-8")
    for name in filter(None, (outer, inner)):
        assert re.search(rf"^ *(?:def|class) {name}\b", text, re.MULTILINE), name


@pytest.mark.parametrize("path", CHECKS)
def test_every_file_of_checks_is_on_the_page(path: str) -> None:
    assert path in {each[0] for each in NAMED}


def test_every_row_is_full() -> None:
    rows = [line for line in PAGE.splitlines() if "`tests/" in line and line.count("|") > 4]
    assert len(rows) > 10
    for row in rows:
        cells = [cell.strip() for cell in row.strip("|").split(" | ")]
        assert len(cells) == 5, row
        assert all(cells), row
