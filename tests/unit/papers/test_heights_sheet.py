"""The seat-height chart read back as a PDF, and the words of its cells."""

from __future__ import annotations

import io
import re
from typing import Any, cast

import numpy as np
import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

from chairwright.errors import InputError
from chairwright.fitting.heights_chart import (
    FRONT,
    REAR,
    STANDS,
    STEM,
    Ask,
    HeightsChart,
    heights_chart,
)
from chairwright.papers.cautions import PURPOSE
from chairwright.papers.heights_blocks import (
    Block,
    blocks,
    column_spread_mm,
    lettered,
    printed_holes,
)
from chairwright.papers.heights_sheet import COLUMNS_WIDE, heights_pdf, wheel_pages
from chairwright.papers.heights_words import NOT_HELD, WHAT, cell, facts, square_within_deg
from chairwright.papers.typeset import Paper
from tests.oracles.lines import everyday, everyday_as_written, line_from

CHART = heights_chart(everyday(), Ask())
POINTS_PER_MM = 72 / 25.4


def read(chart: HeightsChart = CHART, paper: Paper = "a4") -> PdfReader:
    return PdfReader(io.BytesIO(heights_pdf(chart, paper)))


def words(reader: PdfReader, page: int | None = None) -> str:
    pages = reader.pages if page is None else [reader.pages[page]]
    whole = " ".join(each.extract_text() for each in pages)
    return re.sub(r"\s+", " ", whole.replace("\u200b", ""))


def standing(chart: HeightsChart) -> tuple[Block, int, int]:
    """A block, an axle hole and a fork hole where a chair stands."""
    for block in blocks(chart):
        for hole in printed_holes(chart):
            for fork in block.forks:
                if chart.why[block.wheel, hole, block.caster, fork] == STANDS:
                    return block, hole, fork
    pytest.fail("nothing stands")


def test_every_wheel_has_a_page_with_what_stays_the_same_and_the_cautions() -> None:
    reader = read()
    pages = [words(reader, at) for at in range(len(reader.pages))]
    for option in everyday().choices["rear_wheel"].options:
        (first,) = [page for page in pages if f"Rear wheel {option.code} {option.name}" in page]
        for label, code, described in facts(CHART):
            assert f"{label} {code} {described}".replace("  ", " ") in first
        for caution in (WHAT, NOT_HELD, PURPOSE):
            assert caution in first


def test_pages_are_numbered_and_name_line_and_version() -> None:
    reader = read()
    line = everyday()
    for at in range(len(reader.pages)):
        page = words(reader, at)
        assert f"Page {at + 1} of {len(reader.pages)}" in page
        assert f"{line.title}, version {line.version}" in page


def test_every_height_of_the_printed_column_is_on_the_paper_in_both_units() -> None:
    text = words(read())
    for block in blocks(CHART):
        for hole in printed_holes(CHART):
            for fork in block.forks:
                place = (block.wheel, hole, block.caster, fork)
                if CHART.why[place] == STANDS:
                    ends = [CHART.figures[name][place] for name in (REAR, FRONT)]
                    assert "/".join(f"{end:.0f}" for end in ends) in text
                    assert "/".join(f"{end / 25.4:.1f}" for end in ends) in text


@pytest.mark.parametrize(
    ("paper", "wide", "high"), [("a4", 297.0, 210.0), ("us-letter", 279.4, 215.9)]
)
def test_the_paper_lies_on_its_side(paper: Paper, wide: float, high: float) -> None:
    box = read(paper=paper).pages[0].mediabox
    assert float(box.width) == pytest.approx(wide * POINTS_PER_MM, abs=0.5)
    assert float(box.height) == pytest.approx(high * POINTS_PER_MM, abs=0.5)


def test_the_same_chart_gives_the_same_bytes() -> None:
    assert heights_pdf(CHART) == heights_pdf(heights_chart(everyday(), Ask()))


def test_tables_have_header_cells_for_a_reader_that_speaks() -> None:
    root = cast(DictionaryObject, read().trailer["/Root"])
    assert str(root["/Lang"]) == "en"
    found: list[str] = []

    def walk(node: Any) -> None:
        node = node.get_object()
        if isinstance(node, list):
            for child in node:
                walk(child)
        elif isinstance(node, dict):
            found.append(str(node.get("/S", "")))
            if "/K" in node:
                walk(node["/K"])

    walk(root["/StructTreeRoot"])
    assert found.count("/H1") == len(everyday().choices["rear_wheel"].options)
    assert "/TH" in found


def test_no_table_is_wider_than_the_paper_and_no_column_is_lost() -> None:
    for wide in (3, 7, *COLUMNS_WIDE.values()):
        pages = wheel_pages(CHART, wide)
        assert all(len(band.holes) <= wide for page in pages for band in page.bands)
        for at, page in enumerate(pages):
            shown = sum(len(band.holes) for band in page.bands)
            assert shown == sum(len(b.forks) for b in blocks(CHART) if b.wheel == at)
            for band in page.bands:
                assert sum(group.count for group in band.casters) == len(band.holes)
                assert sum(group.count for group in band.forks) == len(band.holes)


def test_every_dash_has_a_letter_that_the_page_explains() -> None:
    for page in wheel_pages(CHART, COLUMNS_WIDE["a4"]):
        used = {cell.reason for band in page.bands for row in band.rows for cell in row.cells}
        assert used - {""} <= {letter for letter, _ in page.letters}


def test_fork_holes_without_any_height_are_named_with_their_reason() -> None:
    forks = CHART.why.shape[3]
    for block in blocks(CHART):
        named = {code for each in block.left_out for code in each.codes.split(", ")}
        for fork in range(forks):
            code = CHART.option("fork", fork).code
            assert (fork in block.forks) != bool(named & {code, code.rpartition("-")[0]})
        assert all(each.reasons for each in block.left_out)


def test_a_cell_says_heights_angles_and_the_setting() -> None:
    block, hole, fork = standing(CHART)
    place = (block.wheel, hole, block.caster, fork)
    for name, value in ((REAR, 482.4), (FRONT, 509.6), (STEM, 0.26), ("seat_angle_deg", 3.94)):
        CHART.figures[name][place], kept = value, CHART.figures[name][place]
        try:
            said = cell(CHART, block, hole, fork)
        finally:
            CHART.figures[name][place] = kept
        expected = {
            REAR: said.mm.startswith("482/") and said.inches.startswith("19.0/"),
            FRONT: said.mm.endswith("/510") and said.inches.endswith("/20.1"),
            STEM: said.stem == "+0.3",
            "seat_angle_deg": said.angle == "3.9",
        }
        assert expected[name]


def test_a_stem_that_stays_off_by_more_than_half_a_step_is_marked() -> None:
    assert square_within_deg(CHART) == 1.0  # settings of 2 degrees
    block, hole, fork = standing(CHART)
    place = (block.wheel, hole, block.caster, fork)
    kept = CHART.figures[STEM][place]
    said = []
    for value in (1.04, 1.06, -1.1, -0.04):
        CHART.figures[STEM][place] = value
        said.append(cell(CHART, block, hole, fork).stem)
    CHART.figures[STEM][place] = kept
    assert said == ["+1.0", "+1.1*", "-1.1*", "0.0"]


def test_the_spread_over_columns_is_the_largest_difference_on_the_plate() -> None:
    worst = 0.0
    printed = CHART.column.rows
    holes = everyday().choices["axle_hole"].options
    plate = holes[printed["1"]].part
    for column in CHART.columns:
        if holes[column.rows["1"]].part != plate:
            continue
        for number in printed.keys() & column.rows.keys():
            here, there = printed[number], column.rows[number]
            for name in (REAR, FRONT):
                apart = np.abs(CHART.figures[name][:, there] - CHART.figures[name][:, here])
                apart = apart[~np.isnan(apart)]
                worst = max(worst, float(apart.max()) if apart.size else 0.0)
    assert worst > 1.0
    assert column_spread_mm(CHART) == worst


def test_letters_go_on_after_z() -> None:
    given = lettered([f"reason {at % 30}" for at in range(60)])
    assert list(given.values())[:2] == ["a", "b"]
    assert given["reason 25"] == "z"
    assert given["reason 26"] == "a2"
    assert len(set(given.values())) == 30


def named(name: str) -> HeightsChart:
    """The chart of a line whose first rear wheel is called so."""
    written = everyday_as_written()
    written["rear_wheels"][0]["name"] = name
    return heights_chart(line_from(written), Ask())


def test_names_in_a_line_file_are_printed_as_they_stand() -> None:
    nasty = '#strong[x] $y$ "z" \\ *bold* _it_ @ref <a> čďě'
    assert nasty in words(read(named(nasty)))


def test_a_letter_that_the_font_lacks_is_told() -> None:
    with pytest.raises(InputError) as refused:
        heights_pdf(named("車輪"))
    told = str(refused.value)
    assert "must have every letter that is printed" in told
    assert "車" in told
