"""Every published table says where it is from."""

from __future__ import annotations

import csv
import tomllib
from pathlib import Path

import pytest

from .tree import SOURCE, named, project_files

TABLES = SOURCE / "tables"
NEEDED = {
    "title", "source", "citation", "place", "tag", "units", "sample", "precision", "how_read",
}  # fmt: skip
CSV = [path for path in project_files() if path.suffix == ".csv" and TABLES in path.parents]


def sources() -> dict[str, str]:
    found: dict[str, str] = tomllib.loads((TABLES / "sources.toml").read_text("utf-8"))
    return found


def test_there_are_tables() -> None:
    assert len(CSV) > 10


@pytest.mark.parametrize("path", CSV, ids=named)
def test_a_table_has_a_citation_beside_it(path: Path) -> None:
    sidecar = tomllib.loads(path.with_suffix(".toml").read_text("utf-8"))
    assert NEEDED - set(sidecar) == set()
    assert [key for key in NEEDED if not str(sidecar[key]).strip()] == []
    assert sidecar["source"] in sources()


@pytest.mark.parametrize("path", CSV, ids=named)
def test_a_table_is_full_and_rectangular(path: Path) -> None:
    rows = list(csv.reader(path.read_text("utf-8").splitlines()))
    assert len(rows) >= 2
    assert {len(row) for row in rows} == {len(rows[0])}
    assert len(set(rows[0])) == len(rows[0])


def test_no_citation_stands_alone() -> None:
    for path in TABLES.rglob("*.toml"):
        assert path.name == "sources.toml" or path.with_suffix(".csv").is_file(), named(path)


def test_every_source_is_used() -> None:
    text = "".join(
        path.read_text("utf-8")
        for path in project_files()
        if SOURCE in path.parents and path.name != "sources.toml"
        and path.suffix in (".py", ".toml", ".csv", ".typ")
    )  # fmt: skip
    assert [name for name in sources() if name not in text] == []
