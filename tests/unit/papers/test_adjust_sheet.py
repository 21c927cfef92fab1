"""The adjust sheet read back as PDF: only what changes, before and after, nothing cut."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from chairwright.order.adjust import Adjustment, adjust
from chairwright.papers.adjust_words import NOTHING_DIFFERS
from chairwright.papers.pack.adjust_sheet import TEMPLATE, adjust_content, adjust_sheet_pdf
from chairwright.papers.typeset import Paper, typeset
from tests.unit.exchange.orders import NAMES, opened
from tests.unit.papers.paper_orders import LONG, NASTY, cut_off, plain, read, said, text_of, torn
from tests.unit.papers.test_setup_sheet import tagged

SIZES: dict[Paper, float] = {"a4": 210.0, "us-letter": 215.9}
PAPERS = pytest.mark.parametrize("paper", list(SIZES))


@cache
def found(first: str = "avg-001", last: str = "amp-005") -> Adjustment:
    one, two = opened(first), opened(last)
    return adjust(one.setup, two.setup, two.person.occupant)


def stressed() -> Adjustment:
    """Long words wherever a line file lets somebody write."""
    plan = found()
    steps = tuple(
        replace(
            step,
            moves=tuple(replace(m, words_before=LONG, words_after=LONG) for m in step.moves),
            notes=(LONG, NASTY, " ".join(["a long note"] * 60)),
        )
        for step in plan.steps
    )
    parts = tuple(replace(part, words=LONG, code="P" * 24) for part in plan.parts_on) * 3
    return replace(plan, steps=steps, parts_on=parts)


@PAPERS
@pytest.mark.parametrize("case", ["usual", "stressed"])
def test_everything_is_on_the_paper_and_nothing_leaves_it(paper: Paper, case: str) -> None:
    plan = found() if case == "usual" else stressed()
    names = ("avg-001", "amp-005") if case == "usual" else ("n" * 200, "m" * 200)
    printed = adjust_sheet_pdf(plan, *names, paper)
    text = text_of(printed)
    content = adjust_content(plan, *names)
    steps = [{**step, "pairs": []} for step in content.pop("steps")]
    content.pop("maker")
    assert [words for words in (*said(content), *said(steps)) if plain(words) not in text] == []
    undrawn = {**adjust_content(plan, *names), "steps": steps}  # letters of drawings have a scale
    assert cut_off(typeset(TEMPLATE, undrawn, paper), SIZES[paper] - 14.0) == []


def test_same_adjustment_same_bytes() -> None:
    for paper in SIZES:
        one, two = (adjust_sheet_pdf(found(), "one", "two", paper) for _ in range(2))
        assert one == two


@PAPERS
@pytest.mark.parametrize("last", [name for name in NAMES if name != "avg-001"])
def test_it_is_at_most_seven_pages_and_no_step_is_torn(last: str, paper: Paper) -> None:
    content = adjust_sheet_pdf(found(last=last), "avg-001", last, paper, "in")
    assert len(read(content).pages) <= 7
    assert torn(content, adjust_content(found(last=last), "avg-001", last, "in")["steps"]) == []


def test_a_chair_off_its_wheels_is_told_with_its_reason() -> None:
    text = text_of(adjust_sheet_pdf(found(), "one", "two"))
    assert plain("After steps 5 to 8 the chair must stay off its wheels, on blocks") in text
    off = plain("Then: CHAIR OFF ITS WHEELS, on blocks, until step 9 is done")
    assert text.count(off) == 4
    assert plain("the anti-tip wheel would stand in the floor") in text
    assert text.count(plain("Then: chair on its wheels.")) == 6


def test_holes_are_drawn_as_they_are_and_as_they_shall_be() -> None:
    reader = read(adjust_sheet_pdf(found(), "one", "two"))
    told = [str(figure.get("/Alt", "")) for figure in tagged(reader, "/Figure")]
    plates = [words for words in told if words.startswith("Axle plate")]
    assert len(plates) == 2
    assert "as it is" in plates[0]
    assert "is in hole E8" in plates[0]
    assert "goes into hole A5" in plates[1]
    forks = [words for words in told if words.startswith("Caster fork")]
    assert ["FL" in forks[0], "FM" in forks[1]] == [True, True]


def test_what_does_not_change_is_not_on_the_sheet() -> None:
    plan = found()
    text = text_of(adjust_sheet_pdf(plan, "one", "two"))
    same = [name for name, code in plan.first.codes.items() if plan.last.codes[name] == code]
    assert {"back_angle", "back_height", "push_handle"} <= set(same)
    for name in same:
        label = plan.last.line.choices[name].label
        assert plain(f"{label}: {plan.last.codes[name]} →") not in text
    assert "Backpost,bothsides" not in text


def test_nothing_to_do_is_told_on_one_page() -> None:
    reader = read(adjust_sheet_pdf(found("avg-001", "avg-001"), "one", "one"))
    assert len(reader.pages) == 1
    assert NOTHING_DIFFERS in reader.pages[0].extract_text()


def test_every_page_names_both_set_ups() -> None:
    pages = read(adjust_sheet_pdf(found(), "a" * 100, "b" * 100)).pages
    for number, page in enumerate(pages, 1):
        text = plain(page.extract_text())
        assert f"from{'a' * 27}…to{'b' * 27}…" in text
        assert f"Page{number}of{len(pages)}" in text


def test_tolerances_and_inches_by_hand() -> None:
    """380 mm is 15 in and 455 mm 17 7/8 in to the nearest eighth; a depth may be off 5 mm."""
    text = text_of(adjust_sheet_pdf(found(), "one", "two", units="in"))
    assert "Seatwidth400380mm15in" in text
    assert (
        "Seattofloor,back489392mm153/8in10" in text or "Seattofloor,back489392mm151/2in10" in text
    )
    assert plain("(working values: common practice, no source)") in text
