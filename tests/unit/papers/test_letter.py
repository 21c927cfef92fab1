"""The draft letter read back as a PDF: no sentence without a fact, no name, no promise."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from pathlib import Path
from typing import cast

import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

from chairwright.order.accepted import Acceptance
from chairwright.order.justification import Evidence, Fact, Letter, written
from chairwright.order.justification_letter import PLAN, heading_of, make_letter
from chairwright.order.payer_result import NO_PROMISE
from chairwright.papers.cautions import BESIDE, STEADY
from chairwright.papers.pack.letter import ADD_WORDS, DRAFT, SIGNATURES, letter_pdf
from chairwright.papers.typeset import Paper
from tests.unit.order.letters import DEMO, assessed, opened, ordered, surroundings
from tests.unit.order.test_justification import low_arms

FURNITURE = re.compile(
    r"Letter of justification, draft client \S+ order .+? revision \d+ "
    r"|A draft from facts on file\. The payer decides\. Page \d+ of \d+ ?"
)


def letter(name: str) -> Letter:
    return make_letter(opened(name).person, ordered(name), assessed(name), surroundings(name))


def text_of(found: Letter, paper: Paper = "a4") -> str:
    """All text with single spaces, without soft breaks."""
    pages = PdfReader(io.BytesIO(letter_pdf(found, paper))).pages
    whole = " ".join(page.extract_text() for page in pages).replace("\u200b", "")
    return re.sub(r"\s+", " ", whole)


def body_of(found: Letter, paper: Paper = "a4") -> str:
    """What stands between the first heading of a section and what the clinician adds."""
    text = FURNITURE.sub("", text_of(found, paper))
    start = text.index(f"{found.sections[0].title} ")
    return text[start : text.index("For the clinician to add")]


@pytest.mark.parametrize("name", DEMO)
def test_what_limits_the_angles_stands_before_them(name: str) -> None:
    text = text_of(letter(name))
    assert text.index(BESIDE[STEADY][-1]) < text.index(" degrees")


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
@pytest.mark.parametrize("name", DEMO)
def test_nothing_is_printed_in_the_body_without_the_number_of_a_fact(
    name: str, paper: Paper
) -> None:
    found = letter(name)
    body, most = body_of(found, paper), len(found.facts)
    for section in found.sections:
        body = body.replace(f"{section.title} ", "", 1)
    *said, rest = re.split(r"\[(\d+(?:, \d+)*)\] ?", body)
    assert rest.strip() == ""
    texts, numbers = said[::2], said[1::2]
    # A line may end after a hyphen: "self-" and "propel" come apart in the text of the PDF.
    assert [text.strip().replace("- ", "-") for text in texts] == [
        each.text.replace("- ", "-") for each in found.sentences
    ]
    for printed, sentence in zip(numbers, found.sentences, strict=True):
        assert [int(each) for each in printed.split(", ")] == [
            found.numbers[fact.key] for fact in sentence.facts
        ]
        assert all(1 <= int(each) <= most for each in printed.split(", "))


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_every_fact_used_stands_in_the_list(paper: Paper) -> None:
    found = letter("avg-001")
    text = text_of(found, paper)
    listed = FURNITURE.sub("", text[text.index("Facts used") :])
    solid = listed.replace(" ", "")
    for fact in found.facts:
        row = f"{found.numbers[fact.key]} {fact.file}, {fact.field}{fact.words}"
        assert row.replace(" ", "") in solid
        assert fact.source in listed


def test_it_says_that_it_is_a_draft_and_that_the_payer_decides() -> None:
    text = text_of(letter("avg-001"))
    for words in (DRAFT, NO_PROMISE, ADD_WORDS, *SIGNATURES):
        assert words in text
    assert "Diagnosis, and since when" in text


def test_who_accepted_a_must_is_not_named() -> None:
    said = Acceptance("arm_height_mm", "Rowan Amadi", "the pads go under the desk")
    text = text_of(make_letter(opened("avg-001").person, low_arms(said)))
    assert "the pads go under the desk" in text
    assert "Amadi" not in text


def test_a_refused_order_says_so_at_the_top() -> None:
    text = text_of(make_letter(opened("avg-001").person, low_arms()))
    assert text.index("Not to be sent: the order is refused") < text.index("The client is")


def test_the_same_letter_gives_the_same_bytes() -> None:
    assert letter_pdf(letter("hem-004")) == letter_pdf(letter("hem-004"))


def test_another_paper_is_refused() -> None:
    with pytest.raises(ValueError, match="paper must be one of a4, us-letter"):
        letter_pdf(letter("hem-004"), "a5")  # type: ignore[arg-type]


def test_the_paper_says_its_language_and_title() -> None:
    reader = PdfReader(io.BytesIO(letter_pdf(letter("hem-004"))))
    assert str(cast(DictionaryObject, reader.trailer["/Root"])["/Lang"]) == "en"
    assert reader.metadata is not None
    assert reader.metadata.title == (
        "Letter of justification, draft, client HEM-004, order without number, revision 1"
    )


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_long_words_and_empty_fields_do_not_break_it(paper: Paper) -> None:
    long = "R" * 200
    fact = Fact("client.note", "client file", f"notes: {long}", "note", "as quoted",
                reason="word " * 800, source=long)  # fmt: skip
    heading = replace(heading_of(ordered("avg-001")), set_up=long, line_title=long, reference=long)
    found = written(heading, Evidence({"client.note": fact}), PLAN)
    text = text_of(found, paper)
    assert long in text.replace(" ", "")
    assert "word word" in text


def test_what_looks_like_markup_is_printed_as_it_stands() -> None:
    fact = Fact("client.note", "f", "n", "note", "as quoted", reason="#emph[x] $y$ *z*")
    found = written(heading_of(ordered("avg-001")), Evidence({"client.note": fact}), PLAN)
    assert "#emph[x] $y$ *z*" in text_of(found)


def test_the_page_on_the_letter_names_every_heading() -> None:
    page = Path(__file__).parents[3] / "docs" / "how-to" / "write-the-justification.md"
    rows = re.findall(r"^\| ([A-Z][^|]+) \|", page.read_text("utf-8"), re.MULTILINE)
    assert sorted(rows) == sorted(PLAN)
