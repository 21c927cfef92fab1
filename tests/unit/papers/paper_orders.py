"""Orders for the tests of the papers, and what a PDF says when it is read back."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from itertools import groupby, pairwise
from pathlib import Path
from typing import Any

import font_source_sans_pro
from PIL import ImageFont
from pypdf import PageObject, PdfReader

from chairwright.order.accepted import Acceptance
from chairwright.order.order import Heading, Order, make_order
from chairwright.order.revision import Change
from tests.cli.test_order import pads_low
from tests.unit.exchange.orders import DATED, opened, order_of, priced_order

LONG = "Donaudampfschifffahrtsgesellschaft" * 6
NASTY = '#panic("x") *bold* $x^2$ <label> @ref // no'
POINTS_PER_MM = 72 / 25.4
HEAD_MM, FOOT_MM = 15.0, 13.0
SURE = 0.94
"""A regular letter against a semibold one, at least."""
_FONTS = Path(font_source_sans_pro.__file__).parent / "files"
_WIDEST = ImageFont.truetype(str(_FONTS / "SourceSansPro-Semibold.ttf"), 100)


def read(content: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(content))


def plain(text: str) -> str:
    """Without blanks and soft breaks, which lines and long runs put in anywhere."""
    return re.sub(r"[\s\u200b]+", "", text)


@dataclass(frozen=True)
class Piece:
    """A piece of text on one line: where it starts, how long it is at most [pt], its words."""

    x: float
    y: float
    wide: float
    words: str


def pieces(page: PageObject) -> list[Piece]:
    """Every piece of text of a page; as long as if all of it were semibold."""
    found: list[Piece] = []

    def visit(text: str, at: list[float], _: Any, __: Any, size: float) -> None:
        shown = text.replace("\u200b", "").replace("\n", "").rstrip()
        if shown.strip():
            wide = _WIDEST.getlength(shown) / 100 * size * abs(at[0])
            found.append(Piece(at[4], at[5], wide, shown))

    page.extract_text(visitor_text=visit)
    return [_joined(list(one)) for _, one in groupby(found, lambda each: (each.x, each.y))]


def _joined(parts: list[Piece]) -> Piece:
    """Letters of one long run, which the PDF sets down one by one from the same place."""
    words = "".join(part.words.strip() for part in parts) if len(parts) > 1 else parts[0].words
    return Piece(parts[0].x, parts[0].y, sum(part.wide for part in parts), words)


def text_of(content: bytes) -> str:
    """What stands between the heads and the feet of the pages, without blanks."""
    found = []
    for page in read(content).pages:
        high = float(page.mediabox.height)
        found += [
            each.words for each in pieces(page)
            if FOOT_MM * POINTS_PER_MM < each.y < high - HEAD_MM * POINTS_PER_MM
        ]  # fmt: skip
    return plain("".join(found))


def cut_off(content: bytes, edge_mm: float) -> list[str]:
    """Pieces of text that leave the page's room or run into the next piece."""
    found = []
    for page in read(content).pages:
        told = sorted(pieces(page), key=lambda each: (round(each.y, 1), each.x))
        edge = edge_mm * POINTS_PER_MM
        found += [each.words for each in told if each.x + each.wide * SURE > edge]
        found += [
            f"{one.words} | {two.words}" for one, two in pairwise(told)
            if round(one.y, 1) == round(two.y, 1) and one.x + one.wide * SURE > two.x + 0.5
        ]  # fmt: skip
    return found


def torn(content: bytes, steps: list[dict[str, Any]]) -> list[str]:
    """Titles of steps whose bolts or drawings do not all stand on the page of their heading."""
    pages = [plain(page.extract_text()) for page in read(content).pages]
    found = []
    for step in steps:
        title = f"{step['number']}. {step['title']}"
        (page,) = [text for text in pages if plain(f"{title}Initials") in text]
        drawn = [*step.get("pictures", ()), *(pair["now"] for pair in step.get("pairs", ()))]
        wanted = [row["what"] for row in step["fasteners"]]
        wanted += [each["alt"].partition(", scale")[0] for each in drawn]
        found += [title for words in wanted if plain(words) not in page]
    return found


def said(content: Any) -> Iterator[str]:
    """Every text in what a template gets."""
    if isinstance(content, str):
        yield content
    elif isinstance(content, dict):
        for value in content.values():
            yield from said(value)
    elif isinstance(content, (list, tuple)):
        for value in content:
            yield from said(value)


@cache
def usual() -> Order:
    return priced_order()


@cache
def second_revision(folder: Path) -> Order:
    """The average client's pads set low, accepted by name, against the order with higher ones."""
    from chairwright.cli.opened import open_setup
    from chairwright.files.order import read_order, write_order
    from chairwright.order.order import order_file

    first = order_of(opened())
    kept = order_file(first, folder / "first.yaml", opened().file.client_path,
                      opened().file.path, "everyday")  # fmt: skip
    write_order(kept, overwrite=True)
    low = open_setup(pads_low(folder))
    accepted = (Acceptance("arm_height_mm", "R. Amadi, OT", "wants it lower at the desk"),)
    earlier = read_order(folder / "first.yaml")
    return make_order(Heading(low.name, "MY-17", DATED), low.person, low.setup,
                      first.quote.prices, accepted, earlier)  # fmt: skip


def refused(folder: Path) -> Order:
    from chairwright.cli.opened import open_setup

    low = open_setup(pads_low(folder))
    return order_of(low)


def _words(count: int) -> list[str]:
    """Every eighth is a long one."""
    return [f"thing {at}" if at % 8 else LONG for at in range(count)]


@cache
def stressed() -> Order:
    """Long words wherever a file lets somebody write, 40 price lines, everything at once."""
    order = usual()
    line, part, mark = order.quote.lines[0], order.parts[0], LONG
    lines = tuple(
        replace(line, label=word, code="C" * 24, words=word, tax=f"tax {word}")
        for word in _words(40)
    )
    taxes = tuple(replace(tax, name=mark) for tax in order.quote.taxes)
    path = tuple(replace(step, label=mark, code="L" * 24, words=mark) for step in order.lead.path)
    differ = Change("choice", mark, mark, mark)
    parts = tuple(replace(part, label=word, code="P" * 24, words=word) for word in _words(40))
    prices = replace(order.quote.prices, title=mark, supplier=mark)
    return replace(
        order,
        heading=Heading("n" * 200, "N" * 80, DATED),
        client_reference="R" * 40,
        parts=parts,
        quote=replace(order.quote, lines=lines, prices=prices, taxes=taxes),
        lead=replace(order.lead, path=path),
        changes=(differ,),
        earlier=1,
        settings=tuple(replace(each, words=mark) for each in order.settings),
        remarks=(mark, NASTY, " ".join(["a long note"] * 200)),
    )


def bare() -> Order:
    """Nothing that need not be there."""
    order = order_of(opened(), dated="")
    return replace(
        order,
        heading=Heading("s", "", ""),
        narrow=(),
        remarks=(),
        left_off=(),
        marks=(),
        quote=replace(order.quote, lines=()),
        load=replace(order.load, limits=()),
    )
