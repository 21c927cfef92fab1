"""Quotation and order read back as PDF: everything said, nothing cut, no name, sameness."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.order.order import Heading, Order
from chairwright.order.parts_marks import Mark
from chairwright.papers.pack.order_paper import order_content, order_pdf
from chairwright.papers.pack.quotation import quotation_content, quotation_pdf
from chairwright.papers.pack.words import NO_NUMBER, REFUSED
from chairwright.papers.typeset import Paper
from tests.unit.exchange.orders import NAMES, opened, order_of
from tests.unit.papers.paper_orders import (
    LONG,
    bare,
    cut_off,
    plain,
    read,
    refused,
    said,
    second_revision,
    stressed,
    text_of,
    usual,
)
from tests.unit.papers.test_setup_sheet import tagged

Made = tuple[Callable[[Order], dict[str, object]], Callable[[Order, Paper], bytes]]
QUOTATION: Made = (quotation_content, quotation_pdf)
ORDER: Made = (order_content, order_pdf)
BOTH = pytest.mark.parametrize("made", [QUOTATION, ORDER], ids=["quotation", "order"])
SIZES: dict[Paper, float] = {"a4": 210.0, "us-letter": 215.9}
PAPERS = pytest.mark.parametrize("paper", list(SIZES))
CASES: dict[str, Callable[[], Order]] = {"usual": usual, "stressed": stressed, "bare": bare}


@pytest.mark.parametrize("case", CASES)
@PAPERS
@BOTH
def test_everything_is_on_the_paper_and_nothing_leaves_it(
    made: Made, paper: Paper, case: str
) -> None:
    content, pdf = made
    order = CASES[case]()
    printed = pdf(order, paper)
    text = text_of(printed)
    left_out = {NO_NUMBER, order.heading.name if case == "usual" else ""}
    assert [words for words in said(content(order))
            if words not in left_out and plain(words) not in text] == []  # fmt: skip
    assert cut_off(printed, SIZES[paper] - 14.0) == []


@BOTH
def test_same_order_same_bytes(made: Made) -> None:
    for paper in SIZES:
        assert made[1](usual(), paper) == made[1](usual(), paper)
    assert made[1](usual(), "a4") != made[1](usual(), "us-letter")


@pytest.mark.parametrize("name", NAMES)
@PAPERS
def test_a_quotation_is_at_most_two_pages_and_an_order_three(name: str, paper: Paper) -> None:
    order = order_of(opened(name))
    assert len(read(quotation_pdf(order, paper)).pages) <= 2
    assert len(read(order_pdf(order, paper)).pages) <= 3


@pytest.mark.parametrize("name", NAMES)
@BOTH
def test_nothing_of_the_client_but_the_reference(made: Made, name: str) -> None:
    found = opened(name)
    text = text_of(made[1](order_of(found), "a4"))
    assert found.person.client.reference in text
    note = found.person.client.note
    assert note
    assert plain(note)[:24] not in text


@BOTH
def test_title_language_and_tags(made: Made) -> None:
    reader = read(made[1](usual(), "a4"))
    root = reader.root_object
    assert str(root["/Lang"]) == "en"
    assert root["/MarkInfo"]["/Marked"].value is True  # type: ignore[index]
    assert reader.metadata is not None
    assert reader.metadata.title is not None
    assert reader.metadata.title.endswith(", client AVG-001, order MY-17, revision 1")
    assert len(tagged(reader, "/H1")) == 1
    assert len(tagged(reader, "/H2")) >= 5
    assert len(tagged(reader, "/Table")) >= 3
    assert len(tagged(reader, "/TH")) >= 8


@BOTH
def test_every_page_names_client_order_and_revision(made: Made) -> None:
    pages = read(made[1](stressed(), "a4")).pages
    assert len(pages) > 2
    for number, page in enumerate(pages, 1):
        text = plain(page.extract_text())
        assert f"client{'R' * 27}…order{'N' * 27}…revision1" in text
        assert f"Page{number}of{len(pages)}" in text


def test_prices_are_those_of_the_hand_calculation() -> None:
    """Worked by hand from examples/orders/everyday-2026.yaml, half a cent up.

    659.90 less 12.5 % (82.4875) is 577.41, 60 is 52.50, 40 is 35.00, 45 less 5.625 is 39.37:
    704.28. With 48.00 for delivery 752.28; 7 % of 704.28 is 49.2996; 19 % of 48 is 9.12.
    """
    text = text_of(quotation_pdf(usual()))
    amounts = [
        "659.9012.5%−82.49577.41", "60.0012.5%−7.5052.50", "40.0012.5%−5.0035.00",
        "45.0012.5%−5.6339.37", "Beforetax752.28", "Taxreduced,7%of704.2849.30",
        "Taxstandard,19%of48.009.12", "Total810.70EUR",
    ]  # fmt: skip
    assert [each for each in amounts if each not in text] == []
    for words in ("2026-11-01", "2027-03-31", "Everydaychairs,winter2026", "Deliveryin20days"):
        assert words in text


def test_a_quotation_without_tax_or_discount_says_so() -> None:
    text = text_of(quotation_pdf(order_of(opened())))
    assert "Total,notaxworkedout" in text
    assert "Discount" not in text
    assert "Taxreduced" not in text
    assert "theline'sownprices" in text


@BOTH
def test_an_accepted_must_is_printed_with_who_and_why(made: Made, tmp_path: Path) -> None:
    text = text_of(made[1](second_revision(tmp_path), "a4"))
    assert plain("Arm pad above cushion 245 to 270 mm: 238 mm, 7 mm off.") in text
    assert plain("Accepted by R. Amadi, OT in revision 2: wants it lower at the desk") in text
    assert plain(REFUSED) not in text


def test_an_order_says_what_differs_from_the_earlier_revision(tmp_path: Path) -> None:
    text = text_of(order_pdf(second_revision(tmp_path)))
    assert plain("What differs from revision 1") in text
    assert "AW-275" in text
    assert "AW-250" in text
    first = text_of(order_pdf(usual()))
    assert plain("What differs") not in first


def test_an_order_shown_again_speaks_of_no_difference(tmp_path: Path) -> None:
    again = replace(second_revision(tmp_path), changes=())
    assert plain("What differs") not in text_of(order_pdf(again))


def test_plain_words_of_what_is_offered() -> None:
    words = {row["label"]: row["words"] for row in quotation_content(usual())["offered"]}
    assert words["Seat"] == "seat width 400 mm; seat depth 420 mm; 30 mm foam cushion"
    assert words["Feet"].startswith("foot supports both sides; 70 degree hanger; flip-up footplate")
    assert words["Locks and steadying"] == "push-to-lock; short anti-tip tube; no belt"
    assert words["The whole chair"].startswith("616 mm wide, 1188 mm long, feet included")


@BOTH
def test_a_refused_order_says_so_on_paper(made: Made, tmp_path: Path) -> None:
    text = text_of(made[1](refused(tmp_path), "a4"))
    assert plain(REFUSED) in text
    assert plain("Not accepted by anybody.") in text


@PAPERS
def test_inches_stand_beside_millimetres_when_asked_for(paper: Paper) -> None:
    """616 mm is 24.25 in: 24 1/4."""
    text = text_of(order_pdf(usual(), paper, "in"))
    assert "616mm241/4in" in text
    assert "241/4in" not in text_of(order_pdf(usual(), paper))


def test_what_is_made_to_order_stands_with_its_reasons() -> None:
    reasons = ("standard 400 mm: would miss what must hold for seat width", "asked for by its code")
    mark = Mark("seat_width", "Seat width", "C415", "415 mm", "made to order", reasons, 9)
    order = replace(usual(), marks=(mark,))
    text = text_of(quotation_pdf(order))
    assert plain("Seat width: C415, 415 mm (made to order, 9 days).") in text
    assert [reason for reason in reasons if plain(reason) not in text] == []


def test_an_overload_is_not_to_be_missed() -> None:
    order = usual()
    heavy = replace(order.load, loads=(replace(order.load.loads[0], mass_kg=140.0),))
    words = plain("OVERLOADED by 10.0 kg")
    for pdf in (quotation_pdf, order_pdf):
        assert words in text_of(pdf(replace(order, load=heavy)))


@PAPERS
@pytest.mark.parametrize("letters", [5, 20, 80])
@pytest.mark.parametrize("name", ["avg-001", "car-009"])
def test_a_signature_never_stands_alone_on_a_page(name: str, letters: int, paper: Paper) -> None:
    order = order_of(opened(name))
    order = replace(order, heading=replace(order.heading, number="N" * letters))
    quoted, sent = (read(make(order, paper)).pages[-1] for make in (quotation_pdf, order_pdf))
    for page, what in ((quoted, "Load"), (sent, "Price and delivery")):
        text = page.extract_text()
        assert text.index(what) < text.index("Signature")


def test_letters_that_the_font_lacks_are_named() -> None:
    order = replace(usual(), heading=Heading("set-up", "身長"))
    with pytest.raises(InputError, match="font"):
        quotation_pdf(order)


def test_long_words_are_as_long_as_the_test_says() -> None:
    assert len(LONG) > 200
    assert " " not in LONG
