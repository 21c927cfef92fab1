"""What the page shows of one revision, in words."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.order.accepted import Unmet
from chairwright.order.lead import LeadStep
from chairwright.order.price import PriceLine, Quote
from chairwright.order.price_money import money_words, percent_words
from chairwright.papers.order_words import (
    ROUNDING,
    SEAT_CORNER,
    TOLERANCE,
    dimension_value,
    load_words,
    missed_words,
    narrow_words,
    place_words,
    side_words,
    unmet_words,
)
from chairwright.units import inches_text
from chairwright_desk.bench.bridge import Units
from chairwright_desk.orders.bridge.worked import Worked

Cells = tuple[str, ...]
ORIGINS = (("Ordered sizes", "ordered"), ("What follows from them", "follows"))


@dataclass(frozen=True)
class Missed:
    """One must that fails, of the client or at a place.

    Parameters
    ----------
    figure : str
        Its name, for the form.
    place : str
        Empty when no place asks it.
    words : str
        What is asked and what is reached.
    why : str
        The same with the reason why it is asked; not for the workshop.
    by, reason, told : str
        Who accepted it and why; ``told`` is the reason as papers have it. Empty while nobody has.
    revision : int
        In which it was accepted.
    """

    figure: str
    place: str
    words: str
    why: str
    by: str = ""
    reason: str = ""
    told: str = ""
    revision: int = 0


@dataclass(frozen=True)
class Shown:
    """One revision for the page; tables are rows of words."""

    missed: tuple[Missed, ...]
    narrow: tuple[str, ...]
    places: tuple[Cells, ...]
    parts: tuple[Cells, ...]
    left_off: str
    settings: tuple[Cells, ...]
    marks: tuple[str, ...]
    dimensions: tuple[tuple[str, tuple[Cells, ...]], ...]
    load: str
    prices: str
    price_rows: tuple[Cells, ...]
    sums: tuple[Cells, ...]
    total: str
    days: int
    path: tuple[Cells, ...]
    beside: str
    remarks: tuple[str, ...]
    changes: tuple[Cells, ...]
    refused: bool
    seat_corner: str = SEAT_CORNER
    tolerance: str = TOLERANCE
    rounding: str = ROUNDING

    @property
    def open(self) -> tuple[Missed, ...]:
        """What nobody has accepted, one row for each figure to be accepted."""
        return tuple(each for each in self.missed if not each.by)

    @property
    def accepted(self) -> tuple[Missed, ...]:
        """What was accepted by name."""
        return tuple(each for each in self.missed if each.by)


def shown(worked: Worked, units: Units) -> Shown:
    """Say one revision in words.

    Parameters
    ----------
    worked : Worked
    units : {"mm", "in"}
    """
    order = worked.order
    line, quote = order.setup.line, order.quote
    return Shown(
        missed=tuple(_missed((*order.unmet, *order.unmet_at_places), line)),
        narrow=tuple(narrow_words(item, line) for item in order.narrow),
        places=tuple((each.place.name, each.word) for each in order.places),
        parts=tuple(
            (each.label, each.code, str(each.quantity), side_words(each.side), each.words,
             "" if each.mark == "standard" else each.mark)
            for each in order.parts
        ),
        left_off=", ".join(CHOICES[name].label.lower() for name in order.left_off),
        settings=tuple((s.label, s.code, s.words, place_words(s)) for s in order.settings),
        marks=tuple(_marks(worked)),
        dimensions=tuple(_dimensions(worked, units)),
        load=load_words(order.load),
        prices=_prices(quote),
        price_rows=tuple(_price_row(each) for each in quote.lines),
        sums=tuple(_sums(quote)),
        total=money_words(quote.total, quote.currency),
        days=order.lead.days,
        path=tuple(_stretch(each) for each in order.lead.path),
        beside=_beside(worked),
        remarks=order.remarks,
        changes=tuple((each.label, each.before, each.after) for each in order.changes),
        refused=order.refused,
    )  # fmt: skip


def _missed(unmet: Sequence[Unmet], line: Line) -> Iterator[Missed]:
    for each in unmet:
        words, why = missed_words(each, line), unmet_words(each, line)
        name, place, by = each.figure.name, each.judged.target.place, each.accepted
        if by is None:
            yield Missed(name, place, words, why)
        else:
            yield Missed(name, place, words, why, by.by, by.reason, by.reason_told, by.revision)


def _marks(worked: Worked) -> Iterator[str]:
    for each in worked.order.marks:
        days = f", {each.days} days" if each.days else ""
        reasons = " ".join(each.reasons)
        yield f"{each.label}: {each.code}, {each.words} ({each.kind}{days}). {reasons}".rstrip()


def _dimensions(worked: Worked, units: Units) -> Iterator[tuple[str, tuple[Cells, ...]]]:
    for title, origin in ORIGINS:
        rows = []
        for each in worked.order.dimensions:
            if each.origin == origin:
                value, unit = dimension_value(each).replace("-", "−"), each.unit
                if units == "in" and each.unit == "mm":
                    value, unit = inches_text(each.value, 16).replace("-", "−"), "in"
                    value = value.removesuffix(" in")
                tolerance = f"± {each.tolerance:g} {each.unit}"
                rows.append((each.label, value, unit, tolerance, each.from_, each.to))
        yield title, tuple(rows)


def _prices(quote: Quote) -> str:
    prices = quote.prices
    if prices.is_makers:
        return "The line's own prices, without discount or tax."
    dated = f"of {prices.dated}" if prices.dated else ""
    return ", ".join(each for each in (prices.title, prices.supplier, dated) if each)


def _price_row(line: PriceLine) -> Cells:
    mark = "" if line.mark == "standard" else f" ({line.mark})"
    percent = percent_words(line.discount_percent) if line.discount_percent else ""
    taken = f"−{line.discount:f}" if line.discount else ""
    head = (line.label, line.code, f"{line.words}{mark}", f"{line.amount:f}")
    return (*head, percent, taken, f"{line.net:f}", line.tax)


def _sums(quote: Quote) -> Iterator[Cells]:
    yield "Goods at list price", f"{quote.list_total:f}"
    if quote.discount_total:
        yield "Discount", f"−{quote.discount_total:f}"
    if quote.surcharge_total:
        yield "Surcharges", f"{quote.surcharge_total:f}"
    yield "Before tax", f"{quote.net_total:f}"
    for tax in quote.taxes:
        yield f"Tax {tax.name}, {percent_words(tax.percent)} of {tax.base:f}", f"{tax.amount:f}"
    words = "Total" if quote.taxes else "Total, no tax worked out"
    yield f"{words}, {quote.currency}", f"{quote.total:f}"


def _stretch(step: LeadStep) -> Cells:
    known = step.kind in ("made to order", "on request")
    words = f"{step.words} ({step.kind})" if known else step.words
    return (step.label, step.code, words, str(step.days), str(step.ends))


def _beside(worked: Worked) -> str:
    lead = worked.order.lead
    on_path = {(step.label, step.code) for step in lead.path}
    return "; ".join(
        f"{step.label.lower()} {step.code} {step.days} days ({step.spare} to spare)"
        for step in lead.parts
        if (step.label, step.code) not in on_path
    )
