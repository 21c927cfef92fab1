"""The measured-chair sheet read back as a PDF: figures of the JSON, slips, gains, both papers."""

from __future__ import annotations

import io
import math
import re
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from pypdf import PageObject, PdfReader

from chairwright.cli.report_measured_data import measured_data
from chairwright.figures.registry import FIGURES
from chairwright.files.client import read_client
from chairwright.files.measured import read_measured
from chairwright.files.setup import read_setup
from chairwright.fitting.described import describe
from chairwright.fitting.person import Person, read_person
from chairwright.fitting.setup import index_of
from chairwright.line.load import load_line
from chairwright.measured.slips import check, outside_tolerances
from chairwright.measured.stands import model_ahead, stands
from chairwright.papers.cautions import BESIDE, PURPOSE, REACH, STEADY
from chairwright.papers.measured_words import NOT_SHOWN, Judgement, Proposed, gain_words
from chairwright.papers.pack.measured_sheet import (
    HEIGHT,
    OPEN,
    WEIGHED,
    measured_content,
    measured_sheet_pdf,
)
from chairwright.papers.typeset import Paper
from chairwright.papers.words import Units, measured_words
from chairwright.reading import FileText

EXAMPLES = Path(__file__).resolve().parents[3] / "examples"
NAMES = ("avg-001", "chi-007")
LEAST_LETTERS = 300
TEXT_MM = 171.0
"""Between the margins of A4, the narrower of the two papers."""


def person_of(name: str) -> Person:
    return read_person(read_client(EXAMPLES / "clients" / f"{name}.yaml"), None, None)


def judged(name: str, old: str = "", new: str = "", *, proposed: bool = False) -> Judgement:
    text = (EXAMPLES / "measured" / f"{name}.yaml").read_text("utf-8")
    assert old in text
    file, person = read_measured(FileText("chair", text.replace(old, new))), person_of(name)
    values, feet, occupant = file.values, file.foot_supports, person.occupant
    more = outside_tolerances(occupant.load_kg, model_ahead(values, feet, occupant))
    found = stands(values, file.tolerances, feet, occupant, person.targets, name=file.name)
    doubt = check(file.readings, more)
    return Judgement(file, person, doubt, found, _proposed(name, person) if proposed else None)


def _proposed(name: str, person: Person) -> Proposed:
    file = read_setup(EXAMPLES / "setups" / f"{name}.yaml")
    line = load_line(file.line)
    setup = describe(line, person.occupant, index_of(file, line), person.targets)
    return Proposed(name, setup)


@cache
def compared(name: str) -> Judgement:
    return judged(name, proposed=True)


def pages(pdf: bytes) -> list[str]:
    found = (page.extract_text().replace("\u200b", "") for page in PdfReader(io.BytesIO(pdf)).pages)
    return [re.sub(r"\s+", " ", text) for text in found]


def size_mm(page: PageObject) -> tuple[float, float]:
    return float(page.mediabox.width) * 25.4 / 72, float(page.mediabox.height) * 25.4 / 72


@pytest.mark.parametrize(("paper", "size"), [("a4", (210, 297)), ("us-letter", (215.9, 279.4))])
@pytest.mark.parametrize("name", NAMES)
def test_the_same_bytes_on_both_papers(name: str, paper: Paper, size: tuple[float, float]) -> None:
    first = measured_sheet_pdf(compared(name), paper)
    assert measured_sheet_pdf(compared(name), paper) == first
    reader = PdfReader(io.BytesIO(first))
    assert all(size_mm(page) == pytest.approx(size, abs=0.1) for page in reader.pages)
    assert all(len(text) > LEAST_LETTERS for text in pages(first))


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("name", NAMES)
def test_it_holds_the_figures_and_verdicts_of_the_json(name: str, units: Units) -> None:
    found = compared(name)
    text = " ".join(pages(measured_sheet_pdf(found, "a4", units)))
    data = measured_data(found)
    figures, verdicts = data["figures"], data["verdicts"]
    assert isinstance(figures, dict)
    assert isinstance(verdicts, list)
    for figure, value in figures.items():
        kind = FIGURES[figure]
        if value is not None and kind.unit not in NOT_SHOWN:
            assert f"{kind.label} {measured_words(kind, value)}" in text
    fails = {each["figure"] for each in verdicts if each["verdict"] == "fails" and each["must"]}
    for figure in fails:
        assert f"{FIGURES[figure].label} " in text.partition("What fails for this client")[2]
    for caution in (PURPOSE, BESIDE[STEADY][1], *BESIDE[REACH]):
        assert caution in text
    # the rear track as read: 562 mm, and 53 cm = 530 mm
    track = {"avg-001": "22 1/8 in", "chi-007": "20 7/8 in"}[name]
    assert (track in text) == (units == "in")


@pytest.mark.parametrize("name", NAMES)
def test_gains_are_those_of_the_command(name: str) -> None:
    found = compared(name)
    content = measured_content(found)
    told = [line for group in content["proposed"]["groups"] for line in group["lines"]]
    kinds = {"gain", "loss", "nearer", "farther", "not told"}
    assert [gain_words(each) for each in found.changes if each.kind in kinds] != []
    assert {gain_words(each) for each in found.changes if each.kind in kinds} <= set(told)
    assert measured_content(judged(name))["proposed"] is None


def test_a_slip_is_named_with_what_was_meant() -> None:
    found = judged("avg-001", "rear_track: 562 mm", "rear_track: 652 mm")
    text = " ".join(pages(measured_sheet_pdf(found)))
    assert OPEN in text
    assert "Rear track at the floor is given as 652 mm; perhaps two digits swapped" in text
    assert "Measure it again first." in text
    marked = [row["label"] for row in measured_content(found)["readings"] if row["again"]]
    assert marked[0] == "Rear track at the floor"


@pytest.mark.parametrize("name", NAMES)
def test_drawings_have_room_side_by_side(name: str) -> None:
    drawn = measured_content(compared(name))["pictures"]
    assert len(drawn) == 2
    assert sum(each["width_mm"] for each in drawn) <= TEXT_MM


def test_measures_stand_as_they_were_read() -> None:
    content = measured_content(judged("avg-001"), "in")
    rows = {row["label"]: row for row in content["readings"]}
    assert rows["Seat width"]["typed"] == "18 in"
    assert rows["Wheelbase, rear axle to caster axle"]["half"] == "± 5 mm"
    assert rows["Chair, whole"]["inches"] == ""
    assert len(rows) == len(judged("avg-001").file.readings)


def test_what_is_not_measured_has_no_figure_and_is_named() -> None:
    found = judged("avg-001", "  cushion_front: 58 mm\n", "")
    assert math.isnan(found.stands.setup.figures["cushion_to_floor_front_mm"])
    content = measured_content(found)
    assert "loaded cushion top above the seat rail, front" in content["left_out"]
    rows = {row["label"]: row for group in content["groups"] for row in group["rows"]}
    assert rows["Cushion top to floor, front"]["value"] == "–"
    assert rows["Cushion top to floor, front"]["word"] == "not known"


def test_a_chair_weighed_with_its_client_says_so_beside_the_angles() -> None:
    assert f"{WEIGHED} {HEIGHT}" in " ".join(pages(measured_sheet_pdf(judged("chi-007"))))
    assert WEIGHED not in " ".join(pages(measured_sheet_pdf(judged("avg-001"))))


def test_long_names_and_notes_run_into_nothing() -> None:
    found = judged("avg-001")
    long = replace(found, file=replace(found.file, name="N" * 200, note="note " * 400))
    text = " ".join(pages(measured_sheet_pdf(long, "us-letter", "in")))
    assert "N" * 200 in text.replace(" ", "")
    assert "note note" in text
