"""The lesson sheet and the comparison read back as PDF: one page, what is said, sameness."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from functools import cache

import pytest
from pypdf import PdfReader

from chairwright.figures.registry import FIGURES
from chairwright.fitting.compare import Side, compare
from chairwright.papers.lesson import LessonPayload
from chairwright.papers.lesson_columns import notes_of, shown_options
from chairwright.papers.lesson_compare import DIFFERENT_CLIENTS, compare_pdf, compare_sheet
from chairwright.papers.lesson_from_sweep import lesson_of
from chairwright.papers.lesson_pdf import lesson_pdf
from chairwright.papers.lesson_words import afterwards, change_words
from chairwright.papers.typeset import Paper
from chairwright.papers.words import NO_VALUE, Units
from tests.laws.example_sweeps import EXAMPLES, example, run_along, swept

NASTY = '#panic("x") *bold* $x^2$ <label> @ref // no'


def read(content: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(content))


def words(content: bytes) -> str:
    whole = " ".join(page.extract_text() for page in read(content).pages)
    return re.sub(r"\s+", " ", whole.replace("\u200b", ""))


@cache
def lesson(
    choice: str, name: str = "avg-001", units: Units = "mm", paper: Paper = "a4"
) -> LessonPayload:
    return lesson_of(swept(name, choice), name, units, paper)


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("name", EXAMPLES)
def test_the_axle_lesson_is_one_page(name: str, units: Units, paper: Paper) -> None:
    assert len(read(lesson_pdf(lesson("axle_hole", name, units, paper), paper)).pages) == 1


@pytest.mark.parametrize("choice", ["cushion", "back_angle", "caster_housing", "fork", "seat_width",
                                    "leg_length", "anti_tip", "wheel_lock"])  # fmt: skip
def test_other_lessons_are_one_page(choice: str) -> None:
    assert len(read(lesson_pdf(lesson(choice))).pages) == 1


def test_the_axle_lesson_shows_the_five_figures_with_their_reasons_and_sources() -> None:
    payload = lesson("axle_hole")
    text = words(lesson_pdf(payload))
    assert text.count("One hole further forward, one hole higher") == 1
    for label in (
        "Tips back, wheels locked",
        "Share of the load on the casters",
        "Turning diameter",
        "Elbow at top of rim",
        "Caster stem off vertical",
    ):
        assert text.count(label) >= 4, label  # a row and a reason in each of the two runs
    for source in ("Thomas 2018", "Ferguson-Pell 2006", "PVA Consortium 2005", "ISO 7176-5"):
        assert f"] {source} (" in text
    assert "25 mm fore and aft and 30 mm in height" in text
    assert "square the housings again" in text


def test_everything_said_is_on_the_sheet() -> None:
    payload = lesson("axle_hole")
    text = words(lesson_pdf(payload))
    expected = [payload.title, payload.present, payload.afterwards, payload.others]
    expected += [picture.caption for picture in payload.pictures]
    expected += [*payload.cautions, *(source.citation for source in payload.sources)]
    for block in payload.blocks:
        expected += [block.heading, block.range, *block.notes]
        expected += [why.text for why in block.whys]
    assert [item for item in expected if item.strip() not in text] == []


def test_the_table_shows_values_and_changes_as_they_are_printed() -> None:
    payload = lesson("axle_hole")
    run = run_along("avg-001", "axle_hole", "x_mm")
    block = payload.blocks[0]
    shown = shown_options(run, 6)
    assert block.columns == tuple(each.option.code for each in shown)
    (row,) = [row for row in block.rows if row.label == "Turning diameter"]
    setups = [each.setup for each in shown if each.setup is not None]
    diameters = [round(setup.figures["turning_diameter_mm"]) for setup in setups]
    assert [cell.value for cell in row.cells] == [str(value) for value in diameters]
    now = diameters[block.present]
    changes = [cell.change for at, cell in enumerate(row.cells) if at != block.present]
    assert changes == [f"{d - now:+d}" for at, d in enumerate(diameters) if at != block.present]
    assert row.cells[block.present].change == ""


def test_inches_are_added_to_lengths_only() -> None:
    rows = lesson("axle_hole", units="in").blocks[0].rows
    for row in rows:
        assert all(bool(cell.inches) == (row.unit == "mm") for cell in row.cells)


def test_drawings_show_the_ends_and_the_set_up_as_it_stands() -> None:
    captions = [picture.caption for picture in lesson("axle_hole").pictures]
    now = example("avg-001").setup.codes["axle_hole"]
    assert captions.count(f"{now}: as it stands") == 1
    run = run_along("avg-001", "axle_hole", "x_mm")
    ends = {run.standing[0].option.code, run.standing[-1].option.code} - {now}
    assert ends <= {caption.partition(":")[0] for caption in captions}
    assert len(captions) == len(set(captions))


def test_a_thinned_table_keeps_the_ends_and_the_neighbours() -> None:
    run = next(run for run in swept("avg-001", "seat_width").runs)
    standing = [each.option.code for each in run.standing]
    here = next(at for at, each in enumerate(run.standing) if each.status == "as it stands")
    assert 0 < here < len(standing) - 1
    codes = [each.option.code for each in shown_options(run, 6)]
    assert len(codes) == 6
    assert {standing[0], standing[here - 1], standing[here], standing[here + 1], standing[-1]} <= {
        *codes
    }
    assert codes == sorted(codes, key=standing.index)
    assert f"{len(standing) - 6} more options stand as well." in notes_of(
        run, shown_options(run, 6)
    )


def test_the_same_payload_gives_the_same_bytes() -> None:
    assert lesson_pdf(lesson("cushion")) == lesson_pdf(lesson("cushion"))


def test_text_prints_as_it_stands() -> None:
    payload = replace(lesson("cushion"), client_reference=NASTY, present=NASTY, afterwards=NASTY)
    assert words(lesson_pdf(payload)).count(NASTY) == 3


def test_an_unknown_paper_is_refused() -> None:
    with pytest.raises(ValueError, match="paper must be one of a4, us-letter; got 'a5'"):
        lesson_pdf(lesson("cushion"), "a5")  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("choice", "first", "last"),
    [
        ("axle_hole", "caster housings", "anti-tip"),
        ("cushion", "foot support", "anti-tip"),
        ("wheel_lock", "anti-tip", "anti-tip"),
    ],
)
def test_what_follows_stands_in_the_order_of_adjustment(choice: str, first: str, last: str) -> None:
    _, _, listed = afterwards(choice).partition("in this order: ")
    assert listed.startswith(first)
    assert listed.partition(" (")[0].endswith(last)


def test_nothing_follows_the_last_step() -> None:
    assert afterwards("anti_tip") == ""


def test_a_change_that_cannot_be_said_is_a_dash() -> None:
    figure = FIGURES["tip_rear_anti_tip_deg"]
    assert change_words(figure, float("nan"), 3.0) == NO_VALUE
    assert change_words(figure, 3.0, 4.25) == "+1.2"
    assert change_words(figure, 3.0, 2.0) == "-1.0"
    assert change_words(figure, 3.0, 3.01) == "0"


def sides(*names: str) -> tuple[Side, ...]:
    return tuple(Side(name, example(name).person, example(name).setup) for name in names)


@pytest.mark.parametrize("count", [2, 3, 4])
def test_a_comparison_names_every_set_up_and_draws_each_over_the_first(count: int) -> None:
    names = EXAMPLES[:count]
    payload = compare_sheet(compare(sides(*names)))
    text = words(compare_pdf(payload))
    assert [name for name in names if name not in text] == []
    assert len(payload.pictures) == (2 if count == 2 else count - 1)
    assert DIFFERENT_CLIENTS in text
    assert all(row.label in text for row in payload.choices)
    labels = " ".join(row.label for group in payload.groups for row in group.rows)
    assert [word for word in labels.split() if word not in text] == []  # a label may be broken


def test_a_set_up_beside_itself_differs_in_nothing() -> None:
    payload = compare_sheet(compare(sides("avg-001", "avg-001")))
    assert (payload.choices, payload.groups, payload.warnings) == ((), (), ())
    assert "None: the set-ups are built alike." in words(compare_pdf(payload))
