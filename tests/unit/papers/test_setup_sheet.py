"""The set-up sheet read back as a PDF: text, tags, pages, sameness."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from typing import Any, cast

import pytest
from pypdf import PageObject, PdfReader
from pypdf.generic import DictionaryObject

from chairwright.papers.cautions import BESIDE, PURPOSE, STEADY, figure_group
from chairwright.papers.order import STEPS, in_order
from chairwright.papers.payload import (
    Choice,
    ChoiceGroup,
    Drawings,
    FigureRow,
    MeasureRow,
    SheetPayload,
    Verdict,
)
from chairwright.papers.sheet import setup_sheet_pdf
from chairwright.papers.typeset import Paper

from .payloads import CHOICES, FIGURES, drawing, full_payload


def read(payload: SheetPayload, paper: Paper = "a4") -> PdfReader:
    return PdfReader(io.BytesIO(setup_sheet_pdf(payload, paper)))


def words(reader: PdfReader) -> str:
    """All text with single spaces and without the soft breaks in long runs."""
    whole = " ".join(page.extract_text() for page in reader.pages)
    return re.sub(r"\s+", " ", whole.replace("\u200b", ""))


def tagged(reader: PdfReader, kind: str) -> list[DictionaryObject]:
    """Every structure element of one kind."""
    root = cast(DictionaryObject, reader.trailer["/Root"])
    found: list[DictionaryObject] = []

    def walk(node: Any) -> None:
        node = node.get_object()
        if isinstance(node, list):
            for child in node:
                walk(child)
        elif isinstance(node, dict):
            if node.get("/S") == kind:
                found.append(cast(DictionaryObject, node))
            if "/K" in node:
                walk(node["/K"])

    walk(root["/StructTreeRoot"])
    return found


def test_everything_said_is_on_the_sheet() -> None:
    payload = full_payload()
    text = words(read(payload))
    expected = [payload.client_reference, payload.setup_id, payload.line_title, PURPOSE]
    expected += [choice.description for group in payload.choices for choice in group.choices]
    expected += [row.label for group in payload.figures for row in group.rows]
    expected += [line for group in payload.figures for line in group.cautions]
    expected += [measure.typed for measure in payload.measures]
    expected += [source.citation for source in payload.sources]
    expected += [must.reason for must in payload.musts]
    missing = [item for item in expected if item not in text]
    assert missing == []


def test_steps_stand_in_the_order_of_adjustment() -> None:
    text = words(read(full_payload()))
    places = [text.index(f"{place} {step}") for place, step in enumerate(STEPS, start=1)]
    assert places == sorted(places)


def test_every_demo_choice_has_a_step() -> None:
    groups = in_order(CHOICES)
    assert [group.step for group in groups] == list(STEPS)
    assert sum(len(group.choices) for group in groups) == len(CHOICES)


def test_unknown_choice_comes_last_under_other() -> None:
    groups = in_order({"tray": Choice("Tray", "T", ""), "camber": Choice("Camber", "0", "")})
    assert [group.step for group in groups] == ["Rear wheel", "Other"]


@pytest.mark.parametrize("verdict", ["holds", "holds on nominal values", "fails", "not known"])
def test_every_verdict_is_a_word(verdict: Verdict) -> None:
    row = FigureRow("Tips forward", "18", "deg", "", "at least 15", verdict, "own")
    payload = replace(full_payload(), figures=(figure_group(STEADY, (row,)),))
    text = words(read(payload))
    assert f"at least 15 {verdict}" in text


def test_stability_figures_carry_the_caution_of_the_estimate() -> None:
    assert "25 mm fore and aft and 30 mm in height" in " ".join(BESIDE[STEADY])
    text = words(read(full_payload()))
    assert text.index(STEADY) < text.index("25 mm fore and aft") < text.index("Tips forward")


def test_verdicts_are_counted_at_the_top() -> None:
    text = words(read(full_payload()))
    assert "10 hold" in text
    assert "2 hold on nominal values only" in text
    assert "2 fail" in text
    assert "1 not known" in text


@pytest.mark.parametrize(
    "nasty",
    ['#panic("x")', "*bold*", "_it_ $x^2$ `raw`", "= Heading", "<label> @ref", '"\\u{41}" // no'],
)
def test_text_prints_as_it_stands(nasty: str) -> None:
    choice = Choice(nasty, nasty, nasty, nasty)
    payload = replace(
        full_payload(),
        client_reference=nasty,
        setup_id=nasty,
        choices=(ChoiceGroup("Seat", (choice,)),),
    )
    reader = read(payload)
    text = words(reader)
    assert text.count(nasty) >= 5
    assert reader.metadata is not None
    assert nasty in (reader.metadata.title or "")


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_pages_are_numbered_and_named(paper: Paper) -> None:
    reader = read(full_payload(), paper)
    count = len(reader.pages)
    assert 2 <= count <= 3
    for number, page in enumerate(reader.pages, start=1):
        text = page.extract_text()
        assert f"Page {number} of {count}" in re.sub(r"\s+", " ", text)
        assert "C-2041" in text
        assert "revision" in text


@pytest.mark.parametrize(("paper", "size"), [("a4", (595.28, 841.89)), ("us-letter", (612, 792))])
def test_paper_size(paper: Paper, size: tuple[float, float]) -> None:
    box = read(full_payload(), paper).pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx(size, abs=0.01)


def test_unknown_paper_is_refused() -> None:
    with pytest.raises(ValueError, match="paper must be one of a4, us-letter"):
        setup_sheet_pdf(full_payload(), cast(Paper, "a3"))


def test_sheet_is_tagged_titled_and_has_a_language() -> None:
    reader = read(full_payload())
    root = cast(Any, reader.trailer["/Root"])
    assert bool(root["/MarkInfo"]["/Marked"]) is True
    assert root["/Lang"] == "en"
    assert reader.metadata is not None
    assert reader.metadata.title == "Set-up sheet S-07, client C-2041"
    assert b"<pdfuaid:part>1</pdfuaid:part>" in root["/Metadata"].get_data()
    assert len(tagged(reader, "/H1")) == 1
    assert len(tagged(reader, "/Table")) == 3  # choices, figures, decisions


def test_every_drawing_has_its_words() -> None:
    shown = [figure.get("/Alt") for figure in tagged(read(full_payload()), "/Figure")]
    assert sorted(str(alt) for alt in shown) == ["Plan.", "Polar.", "Side."]


def test_same_payload_gives_the_same_bytes() -> None:
    assert setup_sheet_pdf(full_payload()) == setup_sheet_pdf(full_payload())


def test_bare_payload_still_makes_a_sheet() -> None:
    bare = SheetPayload("C-1", "S-1", "Line", "1", "Carer", choices=(), figures=())
    reader = read(bare)
    assert len(reader.pages) == 1
    assert "Notes by hand" in words(reader)


def test_missing_drawing_is_left_out() -> None:
    payload = replace(full_payload(), drawings=Drawings(polar=drawing("Polar.")))
    assert [str(f["/Alt"]) for f in tagged(read(payload), "/Figure")] == ["Polar."]


def crowded() -> SheetPayload:
    long_word = "Unbroken" * 30
    long_text = "a rather long description of one hole among many " * 8
    return replace(
        full_payload(),
        client_reference=long_word,
        line_title=long_text,
        choices=in_order({name: Choice(long_word, long_word, long_text) for name in CHOICES}),
        figures=tuple(replace(group, rows=group.rows * 6) for group in FIGURES),
        measures=tuple(
            MeasureRow(f"Measure {number} {long_word}", long_word, "400 mm", "measured", "± 5 mm")
            for number in range(40)
        ),
    )


def test_long_names_and_forty_measures_all_come_out() -> None:
    text = words(read(crowded()))
    for number in range(40):
        assert f"Measure {number} " in text
    assert "Unbroken" * 8 in text.replace(" ", "")


def places_of(page: PageObject) -> list[tuple[float, float]]:
    """Where each run of text starts on the page [pt]."""
    found: list[tuple[float, float]] = []

    def note(text: str, page_matrix: list[float], matrix: list[float], *_: Any) -> None:
        if text.strip():
            a, b, c, d, e, f = page_matrix
            x, y = matrix[4], matrix[5]
            found.append((a * x + c * y + e, b * x + d * y + f))

    page.extract_text(visitor_text=note)
    return found


def test_no_text_leaves_the_page_when_crowded() -> None:
    for page in read(crowded()).pages:
        places = places_of(page)
        assert len(places) > 3
        right, top = float(page.mediabox.width), float(page.mediabox.height)
        assert [place for place in places if not (0 < place[0] < right)] == []
        assert [place for place in places if not (0 < place[1] < top)] == []
