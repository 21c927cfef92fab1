"""The examples: clients, their best set-ups, and sheets of two pages in letters of 9 pt."""

from __future__ import annotations

import io
import json
from collections.abc import Iterator
from math import hypot
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from chairwright.cli.main import main
from chairwright.files.client import read_client
from chairwright.files.setup import read_setup
from chairwright.fitting.described import Described, describe
from chairwright.fitting.person import Person, read_person
from chairwright.fitting.setup import check_setup, index_of
from chairwright.line.load import load_line
from chairwright.papers.from_fit import sheet_of
from chairwright.papers.sheet import setup_sheet_pdf
from chairwright.papers.typeset import Paper

EXAMPLES = Path(__file__).resolve().parents[2] / "examples"
CLIENTS = sorted((EXAMPLES / "clients").glob("*.yaml"))
SETUPS = sorted((EXAMPLES / "setups").glob("*.yaml"))
NOT_MET = {"not-008"}
LEAST_PT = 9.0


def made(path: Path) -> tuple[Person, Described]:
    setup = read_setup(path)
    line, person = load_line(setup.line), read_person(read_client(setup.client_path))
    index = index_of(setup, line)
    check_setup(setup, line, person.occupant, index)
    return person, describe(line, person.occupant, index, person.targets)


def test_there_are_eight_problems_at_least_and_one_cannot_be_met() -> None:
    assert len(CLIENTS) >= 8
    with_setup = {path.stem for path in SETUPS}
    assert {path.stem for path in CLIENTS} - with_setup == NOT_MET
    assert {read_client(path).propulsion for path in CLIENTS} == {
        "hands", "feet", "hand_and_foot_right", "carer"
    }  # fmt: skip


@pytest.mark.parametrize("path", CLIENTS, ids=lambda path: path.stem)
def test_the_file_is_named_after_its_reference(path: Path) -> None:
    assert read_client(path).reference.lower() == path.stem


@pytest.mark.parametrize("path", SETUPS, ids=lambda path: path.stem)
def test_the_set_up_keeps_every_must(path: Path) -> None:
    _, setup = made(path)
    assert setup.broken == ()


@pytest.mark.parametrize("path", SETUPS, ids=lambda path: path.stem)
def test_the_set_up_is_the_best_there_is(path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    client = EXAMPLES / "clients" / path.name
    assert main(["fit", str(client), "--json", "--no-front"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert found["set_up"]["choices"] == read_setup(path).choices


def sizes(sheet: PdfReader) -> Iterator[tuple[float, str]]:
    """Every run of text with its size on paper [pt]."""
    for page in sheet.pages:
        found: list[tuple[float, str]] = []

        def note(
            text: str,
            outer: list[float],
            inner: list[float],
            _: Any,
            size: float,
            found: list[tuple[float, str]] = found,
        ) -> None:
            if text.strip():
                along = (
                    inner[0] * outer[0] + inner[1] * outer[2],
                    inner[0] * outer[1] + inner[1] * outer[3],
                )
                found.append((size * hypot(*along), text))  # fmt: skip

        page.extract_text(visitor_text=note)
        yield from found


@pytest.mark.parametrize("path", SETUPS, ids=lambda path: path.stem)
@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_the_sheet_has_two_pages_and_no_letter_below_9_pt(path: Path, paper: Paper) -> None:
    person, setup = made(path)
    raw = setup_sheet_pdf(sheet_of(person, setup, path.stem, "mm", paper), paper)
    sheet = PdfReader(io.BytesIO(raw))
    assert len(sheet.pages) == 2
    runs = list(sizes(sheet))
    assert len(runs) > 100
    assert [run for run in runs if run[0] < LEAST_PT - 0.01] == []


@pytest.mark.parametrize("name", ["tal-002", "avg-001"])
@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_inches_fit_on_two_pages_too(name: str, paper: Paper) -> None:
    person, setup = made(EXAMPLES / "setups" / f"{name}.yaml")
    raw = setup_sheet_pdf(sheet_of(person, setup, name, "in", paper), paper)
    sheet = PdfReader(io.BytesIO(raw))
    assert len(sheet.pages) == 2
    inches = {"tal-002": "17 3/8 in", "avg-001": "15 3/4 in"}  # seats of 440 and 400 mm
    assert inches[name] in sheet.pages[1].extract_text()
