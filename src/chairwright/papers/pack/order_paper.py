"""The order to the maker as an accessible PDF (PDF/UA-1)."""

from __future__ import annotations

from chairwright.line.choices import CHOICES
from chairwright.order.order import Order
from chairwright.order.order_dimensions import Dimension
from chairwright.order.price_money import money_words
from chairwright.papers.order_words import (
    SEAT_CORNER,
    TOLERANCE,
    dimension_value,
    place_words,
    side_words,
)
from chairwright.papers.pack.words import (
    Data,
    heading_data,
    lead_data,
    load_data,
    marks_data,
    narrow_data,
    unmet_data,
)
from chairwright.papers.typeset import Paper, typeset
from chairwright.papers.words import Units
from chairwright.units import inches_text

SIXTEENTHS = 16
"""Inches as on the handover: an eighth would use up a tolerance of 2 mm."""
ORIGINS = (("Ordered sizes", "ordered"), ("What follows from them", "follows"))
SIGNATURES = ("Ordered by, name", "Signature", "Date")
RECEIVED = ("Received by the maker, name", "Signature", "Date")


def order_pdf(order: Order, paper: Paper = "a4", units: Units = "mm") -> bytes:
    """Typeset the order to the maker.

    Parameters
    ----------
    order : Order
        Text is printed as it stands; nothing in it is read as markup.
    paper : {"a4", "us-letter"}
    units : {"mm", "in"}
        ``in`` adds inches to the dimensions.

    Returns
    -------
    bytes
        A tagged PDF; the same order gives the same bytes.

    Raises
    ------
    ValueError
        When the paper is neither of the two.
    InputError
        When the font does not have a letter of the text.
    """
    return typeset("pack/order.typ", order_content(order, units), paper)


def order_content(order: Order, units: Units = "mm") -> Data:
    """Everything that the template prints.

    Parameters
    ----------
    order : Order
    units : {"mm", "in"}
    """
    quote = order.quote
    return {
        **heading_data(order),
        "earlier": str(order.earlier),
        "changes": [
            {"label": each.label, "before": each.before, "after": each.after}
            for each in order.changes
        ],
        "unmet": unmet_data(order),
        "narrow": narrow_data(order),
        "parts": _parts(order),
        "left_off": ", ".join(CHOICES[name].label.lower() for name in order.left_off),
        "settings": [
            {
                "label": each.label,
                "code": each.code,
                "words": each.words,
                "place": place_words(each),
            }
            for each in order.settings
        ],
        "seat_corner": SEAT_CORNER,
        "dimensions": [
            {"title": title, "rows": [_dimension(each, units) for each in order.dimensions
                                      if each.origin == origin]}
            for title, origin in ORIGINS
        ],
        "tolerance": TOLERANCE,
        "marks": marks_data(order.marks),
        "load": load_data(order),
        "list": ", ".join(each for each in (quote.prices.title, quote.prices.dated) if each),
        "total": money_words(quote.total, quote.currency),
        "taxed": bool(quote.taxes),
        "lead": lead_data(order.lead),
        "ordered_by": SIGNATURES,
        "received_by": RECEIVED,
    }  # fmt: skip


def _parts(order: Order) -> list[Data]:
    return [
        {
            "number": str(number),
            "label": each.label,
            "code": each.code,
            "pieces": str(each.quantity),
            "side": side_words(each.side),
            "words": each.words if each.mark == "standard" else f"{each.words} ({each.mark})",
        }
        for number, each in enumerate(order.parts, 1)
    ]


def _dimension(each: Dimension, units: Units) -> Data:
    inches = inches_text(each.value, SIXTEENTHS) if units == "in" and each.unit == "mm" else ""
    return {
        "label": each.label,
        "value": f"{dimension_value(each).replace('-', '−')} {each.unit}",
        "inches": inches.replace("-", "−"),
        "tolerance": f"{each.tolerance:g}",
        "from": each.from_,
        "to": each.to,
    }
