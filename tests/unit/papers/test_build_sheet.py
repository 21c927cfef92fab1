"""The build sheet read back as PDF: everything that is built, nothing of the person."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from chairwright.line.choices import NONE
from chairwright.order.order import Order
from chairwright.order.steps import WORKS
from chairwright.papers.order_words import load_words
from chairwright.papers.pack.build_sheet import TEMPLATE, build_content, build_sheet_pdf
from chairwright.papers.pack.tightening import NOTHING_STATED
from chairwright.papers.pack.words import NO_NUMBER, REFUSED
from chairwright.papers.typeset import Paper, typeset
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
    torn,
    usual,
)
from tests.unit.papers.test_setup_sheet import tagged

SIZES: dict[Paper, float] = {"a4": 210.0, "us-letter": 215.9}
PAPERS = pytest.mark.parametrize("paper", list(SIZES))
CASES: dict[str, Callable[[], Order]] = {"usual": usual, "stressed": stressed, "bare": bare}


@pytest.mark.parametrize("case", CASES)
@PAPERS
def test_everything_is_on_the_paper_and_nothing_leaves_it(paper: Paper, case: str) -> None:
    order = CASES[case]()
    content = build_content(order)
    printed = build_sheet_pdf(order, paper)
    text = text_of(printed)
    steps = [{**step, "pictures": []} for step in content.pop("steps")]
    units = {row.pop("unit") for row in content["measured"]}
    assert units == {"mm", "deg", "kg"}
    wanted = [*said(content), *said(steps)]
    assert [words for words in wanted if words != NO_NUMBER and plain(words) not in text] == []
    assert cut_off(undrawn(order, paper), SIZES[paper] - 14.0) == []


def undrawn(order: Order, paper: Paper) -> bytes:
    """The sheet without its drawings, whose letters have a scale of their own."""
    content = build_content(order)
    steps = [{**step, "pictures": []} for step in content["steps"]]
    return typeset(TEMPLATE, {**content, "steps": steps}, paper)


def test_same_order_same_bytes() -> None:
    for paper in SIZES:
        assert build_sheet_pdf(usual(), paper) == build_sheet_pdf(usual(), paper)
    assert build_sheet_pdf(usual(), "a4") != build_sheet_pdf(usual(), "us-letter")


@pytest.mark.parametrize("name", NAMES)
@PAPERS
def test_it_is_at_most_five_pages_and_no_step_is_torn(name: str, paper: Paper) -> None:
    order = order_of(opened(name))
    content = build_sheet_pdf(order, paper, "in")
    assert len(read(content).pages) <= 5
    assert torn(content, build_content(order, "in")["steps"]) == []


@pytest.mark.parametrize("name", NAMES)
def test_nothing_of_the_person_but_the_reference(name: str) -> None:
    found = opened(name)
    order = order_of(found)
    text = text_of(build_sheet_pdf(order))
    note = found.person.client.note
    assert order.client_reference in text
    assert note
    told = [note[:24], load_words(order.load)[:24], found.name, "occupant", "diagnos"]
    told += [item.target.reason for item in order.setup.judged if len(item.target.reason) > 12]
    assert [words for words in told if plain(words) in text] == []


def test_who_accepted_what_is_not_for_the_factory(tmp_path: Path) -> None:
    order = second_revision(tmp_path)
    text = text_of(build_sheet_pdf(order))
    assert order.accepted
    for each in order.accepted:
        assert plain(each.by) not in text
        assert plain(each.reason) not in text


def test_a_refused_order_says_so(tmp_path: Path) -> None:
    assert plain(REFUSED) in text_of(build_sheet_pdf(refused(tmp_path)))


@pytest.mark.parametrize("name", NAMES)
def test_a_builder_finds_every_choice_in_the_printed_text(name: str) -> None:
    """Read from the PDF alone: label and code on one line give back the whole set-up."""
    order = order_of(opened(name))
    lines = "\n".join(page.extract_text() for page in read(build_sheet_pdf(order)).pages)
    left_off = re.search(r"^Not fitted: (.*)\.$", lines, re.MULTILINE)
    absent = left_off[1].split(", ") if left_off else []
    for choice, option in order.setup.options.items():
        label = order.setup.line.choices[choice].label
        if option.code == NONE and choice != "foot_supports":
            assert label.lower() in absent, choice
            continue
        codes = {option.code, option.part or option.code}
        found = set(re.findall(r"\b[A-Z][A-Z0-9]*(?:-\d+)?\b|\bboth\b|\bnone\b|\bleft\b", lines))
        assert codes <= found | {"right"}, choice
        assert label.lower() not in absent


def test_steps_stand_in_the_order_of_adjustment() -> None:
    text = text_of(build_sheet_pdf(usual()))
    titles = [
        "1.Footsupport", "2.Seat", "3.Back", "4.Rearwheel", "5.Casterhousings,squaretothefloor",
        "6.Wheellocks", "7.Anti-tip", "8.Everythingelse", "Measurethefinishedchair",
    ]  # fmt: skip
    places = [text.index(title) for title in titles]
    assert places == sorted(places)
    assert len({work.group for work in WORKS}) == 8


def test_holes_bolts_and_torques_by_hand() -> None:
    """From everyday.yaml: three M8 bolts a plate, two plates; two bolts a housing, two housings."""
    text = text_of(build_sheet_pdf(usual()))
    rows = [
        "AxleholeE8axleplate,columnE,row855mmahead,196mmbelow",
        "ForkandholeFL-4longfork,hole4of4",
        "CasterhousingL4leading,heighthole4260mmbelow",
        "StemsettingNF2stemturned2degreesforward",
        "BackangleB44degreesbehindsquare",
        "M8boltoftheaxleplate6leftandrighthexkey6mm20Nm",
        "M8boltofthecasterhousing4leftandrighthexkey6mm20Nm",
        "M8boltofthebackposts'angleplates",
        "notstated",
        "thisinventedmaker'sownvalue",
        "Ratedload130kg",
    ]
    assert [row for row in rows if row not in text] == []


def test_what_is_measured_has_limits_by_hand() -> None:
    """Sizes of the frame +/- 5 mm, angles +/- 1 degree, drilled holes +/- 2 mm: working values."""
    text = text_of(build_sheet_pdf(usual()))
    rows = [
        "leftedgeoftheseattorightedge400mm395to405",
        "verticaltocasterstem,topbackpositive0.0deg−1.0to1.0",
        "theaxle,alongtherail,forwardpositive55mm53to57",
        "squaretotherail,uppositive−196mm−198to−194",
    ]
    assert [row for row in rows if row not in text] == []
    assert "+/-iswhatthedeliveredchairmaybeoff(workingvalues:commonpractice,nosource)." in text


def test_inches_stand_beside_lengths_on_request() -> None:
    """395 to 405 mm is 15 9/16 to 15 15/16 in; 55 and 196 mm are 2 1/8 and 7 3/4 in."""
    text = text_of(build_sheet_pdf(usual(), units="in"))
    assert "395to40515\N{THIN SPACE}9/16into1515/16in".replace("\N{THIN SPACE}", "") in text
    assert "55mmahead,196mmbelow(21/8in,73/4in)" in text


def test_every_drawing_has_words_for_who_cannot_see_it() -> None:
    reader = read(build_sheet_pdf(usual()))
    told = [str(figure.get("/Alt", "")) for figure in tagged(reader, "/Figure")]
    assert len(told) == 6
    starts = ("Back post", "Axle plate", "Caster fork", "Caster housing")
    assert all(words.startswith(starts) and len(words) > 100 for words in told)
    assert len(tagged(reader, "/H1")) == 1
    assert len(tagged(reader, "/H2")) == 10


def test_a_line_without_fasteners_says_to_look_in_the_manual() -> None:
    order = usual()
    line = replace(order.setup.line, fasteners=())
    other = replace(order, setup=replace(order.setup, line=line))
    assert plain(NOTHING_STATED) in text_of(build_sheet_pdf(other))


def test_long_words_of_a_line_file_stay_in_their_columns() -> None:
    order = usual()
    fasteners = tuple(
        replace(e, what=LONG, tool=LONG, note=LONG) for e in order.setup.line.fasteners
    )
    line = replace(order.setup.line, fasteners=fasteners, title=LONG, maker=LONG)
    other = replace(stressed(), setup=replace(order.setup, line=line))
    for paper, wide in SIZES.items():
        assert cut_off(undrawn(other, paper), wide - 14.0) == []
