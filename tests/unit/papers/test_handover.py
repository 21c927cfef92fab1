"""The papers of a handover read back as a PDF: what is on them, how big it is, both papers."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from typing import Any

import pytest
from pypdf import PageObject, PdfReader

from chairwright.order.handover import Handover
from chairwright.order.handover_make import make_handover
from chairwright.papers.pack.handover import day_words, handover_content, handover_pdf
from chairwright.papers.typeset import Paper
from chairwright.papers.words import Units
from tests.unit.order.letters import DEMO, opened, ordered, surroundings

HOME = "Your chair: a page to take home"
LEAST_PT = 12.0


def handover(name: str, delivered: str = "2026-12-01") -> Handover:
    return make_handover(ordered(name), opened(name).person, surroundings(name), delivered)


def read(found: Handover, paper: Paper = "a4", units: Units = "mm") -> PdfReader:
    return PdfReader(io.BytesIO(handover_pdf(found, paper, units)))


def clean(text: str) -> str:
    return re.sub(r"\s+", " ", text.replace("\u200b", ""))


def text_of(reader: PdfReader) -> str:
    return clean(" ".join(page.extract_text() for page in reader.pages))


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
@pytest.mark.parametrize("name", DEMO)
def test_everything_that_is_checked_and_told_is_printed(name: str, paper: Paper) -> None:
    found = handover(name)
    text = text_of(read(found, paper))
    said = [check.what for group in found.groups for check in group.checks]
    said += [words for group in found.groups for words in group.cautions]
    said += [each.what for each in found.taught]
    said += [words for part in found.advice for words in part.words]
    said += [words for place in found.places for words in place.words]
    said += [each.work for each in found.upkeep]
    said += [each.dimension.label for each in found.measured]
    said += [row.words for row in found.settings]
    assert [words for words in said if words not in text] == []


def test_what_is_on_one_side_is_ticked_on_one_side() -> None:
    one, two = (handover_content(handover(name))["settings"] for name in ("hem-004", "avg-001"))
    single = {row["label"] for row in one if row["sides"] == [True, False]}
    assert single == {"Foot supports", "Hanger length"}
    assert all(row["sides"] == [True, True] for row in one if row["label"] not in single)
    assert all(row["sides"] == [True, True] for row in two)


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_the_page_to_take_home_begins_on_a_page_of_its_own(paper: Paper) -> None:
    pages = [clean(page.extract_text()) for page in read(handover("avg-001"), paper).pages]
    (home,) = [at for at, text in enumerate(pages) if HOME in text]
    assert "Check at delivery" in pages[0]
    assert home > 0
    assert "Handed over by, name" not in " ".join(pages[home:])


def sizes(page: PageObject) -> dict[float, str]:
    """Text of a page by its size [pt], header and footer left out."""
    found: dict[float, str] = {}
    top = float(page.mediabox.height)

    def visit(text: str, place: Any, _: Any, __: Any, size: float) -> None:
        if text.strip() and 45 < float(place[5]) < top - 45:
            found[round(size, 1)] = found.get(round(size, 1), "") + text

    page.extract_text(visitor_text=visit)
    return found


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_the_client_reads_12_point_and_more(paper: Paper) -> None:
    pages = list(read(handover("tal-002"), paper).pages)
    home = next(at for at, page in enumerate(pages) if HOME in clean(page.extract_text()))
    for page in pages[home:]:
        found = sizes(page)
        assert found
        assert min(found) >= LEAST_PT, found[min(found)]


def test_days_are_printed_only_when_a_day_of_delivery_is_given() -> None:
    dated, bare = (text_of(read(handover("avg-001", day))) for day in ("2026-12-01", ""))
    assert "8 December 2026" in dated
    assert "from 1 June 2027 to 1 December 2027" in dated
    assert not re.search(r"\b20(?:26|27)\b(?!\.)", bare)


def test_the_allowed_range_stands_beside_what_is_ordered() -> None:
    text = text_of(read(handover("avg-001")))
    assert "Seat width left edge of the seat to right edge 400 mm 395 to 405" in text
    assert "263 mm 253 to 270 must" in text


def test_inches_are_added_to_lengths_only() -> None:
    """400 mm is 15.748 in: 15 3/4; 395 and 405 mm are 15.55 and 15.94 in: 15 9/16 and 15 15/16."""
    text = text_of(read(handover("avg-001"), units="in"))
    assert "400 mm 15 3/4 in 395 to 405 15 9/16 to 15 15/16 in" in text
    assert "4.0 deg 3.0 to 5.0" in text


def test_the_same_handover_gives_the_same_bytes() -> None:
    assert handover_pdf(handover("hem-004")) == handover_pdf(handover("hem-004"))


@pytest.mark.parametrize("paper", ["a4", "us-letter"])
def test_long_words_and_empty_fields_do_not_break_it(paper: Paper) -> None:
    long = "R" * 200
    found = handover("avg-001", "")
    place = replace(found.places[0], name=long)
    bare = replace(
        found, reference=long, set_up=long, line_title=long, order_number=long, rated="",
        settings=(), measured=(), places=(place,),
    )  # fmt: skip
    text = text_of(read(bare, paper))
    assert long in text.replace(" ", "")


@pytest.mark.parametrize(("day", "said"), [("2026-12-08", "8 December 2026"), ("", "")])
def test_a_day_in_words(day: str, said: str) -> None:
    assert day_words(day).replace("\u00a0", " ") == said
