"""The weighing sheet read back as a PDF: the figures of the JSON, drawings, what to read again."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PageObject, PdfReader

from chairwright.cli.report_scales_data import scales_data
from chairwright.cli.weighed import weighed_with_setup
from chairwright.drawing.scene import Line
from chairwright.drawing.sheet import Page, groups_box
from chairwright.drawing.weighing_plan import pads_sheet
from chairwright.drawing.weighing_view import level_sheet, load_words, raised_sheet
from chairwright.files.scales import read_scales
from chairwright.papers.cautions import BESIDE, PURPOSE, STEADY
from chairwright.papers.pack.weighing_sheet import (
    BEYOND,
    weighing_content,
    weighing_sheet_pdf,
)
from chairwright.papers.scales_words import NO_HEIGHT, SHARE, TILT, WHOLE, Weighed
from chairwright.papers.typeset import Paper
from chairwright.papers.words import Units
from chairwright.reading import FileText

EXAMPLES = Path(__file__).resolve().parents[3] / "examples"
ROWS = {row.name: row for row in (*WHOLE, *SHARE)}
FOUR, TWO = "avg-001", "two-pads"
LEAST_LETTERS = 300
TEXT_MM = 171.0
"""Between the margins of A4, the narrower of the two papers."""


def weighed(name: str) -> Weighed:
    return weighed_with_setup(read_scales(EXAMPLES / "scales" / f"{name}.yaml"))


def level_only() -> Weighed:
    text = (EXAMPLES / "scales" / "two-pads.yaml").read_text("utf-8")
    return weighed_with_setup(read_scales(FileText("level", text.split("raised:")[0])))


def pages(pdf: bytes) -> list[str]:
    found = (page.extract_text().replace("\u200b", "") for page in PdfReader(io.BytesIO(pdf)).pages)
    return [re.sub(r"\s+", " ", text) for text in found]


def size_mm(page: PageObject) -> tuple[float, float]:
    return float(page.mediabox.width) * 25.4 / 72, float(page.mediabox.height) * 25.4 / 72


@pytest.mark.parametrize(("paper", "size"), [("a4", (210, 297)), ("us-letter", (215.9, 279.4))])
@pytest.mark.parametrize("name", [FOUR, TWO])
def test_the_same_bytes_on_both_papers(name: str, paper: Paper, size: tuple[float, float]) -> None:
    first = weighing_sheet_pdf(weighed(name), None, paper)
    assert weighing_sheet_pdf(weighed(name), None, paper) == first
    reader = PdfReader(io.BytesIO(first))
    assert all(size_mm(page) == pytest.approx(size, abs=0.1) for page in reader.pages)
    assert all(len(text) > LEAST_LETTERS for text in pages(first))


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("name", [FOUR, TWO])
def test_it_holds_the_figures_of_the_json(name: str, units: Units) -> None:
    found = weighed(name)
    text = " ".join(pages(weighing_sheet_pdf(found, None, "a4", units)))
    data = scales_data(found, None)["measured"]
    assert isinstance(data, dict)
    for figure, values in data.items():
        row = ROWS[figure]
        assert f"{row.label} {values['value']:.{row.digits}f}" in text
        if values.get("beyond_the_estimate"):
            assert BEYOND in text
    for caution in (PURPOSE, TILT, BESIDE[STEADY][-1]):
        assert caution in text
    # 130 and 120 mm to the nearest eighth of an inch
    assert ({FOUR: "5 1/8 in", TWO: "4 3/4 in"}[name] in text) == (units == "in")


def test_readings_stand_as_they_were_read() -> None:
    content = weighing_content(weighed(FOUR), None, "in")
    assert ["Wheelbase, level", "359 mm", "± 1", "14 1/8 in"] in content["sizes"]
    assert ["Block under the casters", "60 mm", "± 1", "2 3/8 in"] in content["sizes"]
    assert content["load_heads"] == ["With client, level", "With client, raised"]
    assert ["Casters", "", "16.6 kg"] in content["loads"]
    two = weighing_content(weighed(TWO), None)
    assert two["load_heads"][2:] == ["Empty, level", "Empty, raised"]
    assert ["Casters", "27.00 kg", "15.05 kg", "5.20 kg", "4.75 kg"] in two["loads"]


def test_what_to_read_again_and_where_the_doubt_comes_from() -> None:
    content = weighing_content(weighed(FOUR), None)
    assert "the height of the block" in content["best_again"]
    label, reading, share = content["doubts"][0]
    assert label.startswith("Centre of mass above floor, 692.5 mm")
    assert reading == "The height of the block"
    shares = weighed(FOUR).found.shares("com_z_mm")
    assert share == f"{max(shares.values()):.0%}"


def test_without_the_block_no_height_and_no_angle() -> None:
    text = " ".join(pages(weighing_sheet_pdf(level_only(), None)))
    assert NO_HEIGHT in text
    assert "Tips back" not in text
    assert "Casters raised" not in text


def test_a_mass_off_to_the_right_is_said_so() -> None:
    found = weighed(FOUR)
    sides = {**found.found.values, "com_y_mm": -5.8}
    other = replace(found, found=replace(found.found, values=sides))
    assert "5.8 mm ± 0.3 to the right" in weighing_content(other, None)["answer"][0]
    assert "5.8 mm ± 0.3 = 1/4 in to the right" in weighing_content(other, None, "in")["answer"][0]


def test_a_slipped_wheelbase_is_framed() -> None:
    source = EXAMPLES / "scales" / "avg-001.yaml"
    file = read_scales(source)
    wrong = replace(file, session=replace(file.session, wheelbase_mm=395.0))
    content = weighing_content(weighed_with_setup(wrong), None)
    assert any("the wheelbase was read as 395 mm" in words for words in content["again"])


def test_drawings_keep_to_their_room_and_say_what_they_show() -> None:
    found = weighed(FOUR)
    session, values = found.file.session, found.found
    assert found.setup is not None
    page = Page(113.0, 156.0)
    sheets = [
        level_sheet(session, values, found.setup.shape, page),
        level_sheet(session, values, None, page),
        raised_sheet(session, values, Page(57.0, 76.0)),
        pads_sheet(session, values, Page(57.0, 74.0)),
    ]
    assert sheets[0].width_mm + max(each.width_mm for each in sheets[2:]) <= TEXT_MM
    for sheet in sheets:
        left, top, right, bottom = groups_box(sheet.groups)
        assert left >= 0.0
        assert top >= 0.0
        assert right <= sheet.width_mm
        assert bottom <= sheet.height_mm
    # 32.4 + 31.0 on the rear pads
    assert "The rear wheels carry 63.4 kg." in sheets[0].description
    assert "692 mm above the floor" in sheets[0].description
    assert "caster left 18.5 kg" in sheets[3].description


def test_the_plumb_stands_where_moments_balance() -> None:
    # 63.0 kg behind and 27.0 kg in front, 400 mm apart: 120 mm ahead of the rear contact.
    found = weighed(TWO)
    sheet = level_sheet(found.file.session, found.found, None, Page(100.0, 100.0))
    assert sheet.placement is not None
    (balance,) = [group for group in sheet.groups if group.name == "balance"]
    plumb = balance.items[0]
    assert isinstance(plumb, Line)
    x, z = sheet.placement.real(plumb.start)
    assert x == pytest.approx(120.0, abs=1e-6)
    assert z == pytest.approx(found.found.values["com_z_mm"], abs=1e-6)


def test_loads_have_the_digits_of_the_scales() -> None:
    assert load_words(15.05, 0.05) == "15.05 kg"
    assert load_words(36.0, 0.1) == "36.0 kg"
    assert load_words(80.0, 0.5) == "80.0 kg"
    assert load_words(80.0, 1.0) == "80.0 kg"


def test_long_words_run_into_nothing() -> None:
    found = weighed(TWO)
    long = replace(found, file=replace(found.file, client="W" * 40, dated="D" * 40))
    text = " ".join(pages(weighing_sheet_pdf(long, None, "us-letter", "in")))
    assert "W" * 27 in text
