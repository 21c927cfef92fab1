"""The quotation of an order as an accessible PDF (PDF/UA-1)."""

from __future__ import annotations

from collections.abc import Iterator

from chairwright.line.choices import CHOICES, NONE
from chairwright.order.order import Order
from chairwright.order.parts import part_name
from chairwright.order.payer_result import NO_PROMISE
from chairwright.order.price import PriceLine, Quote
from chairwright.order.price_money import percent_words
from chairwright.papers.order_words import ROUNDING, dimension_value
from chairwright.papers.pack.words import (
    Data,
    heading_data,
    lead_data,
    load_data,
    marks_data,
    unmet_data,
)
from chairwright.papers.typeset import Paper, typeset

OFFERED: dict[str, tuple[str, ...]] = {
    "Frame": ("side_frame", "finish"),
    "Rear wheels": ("rear_wheel", "hand_rim", "camber"),
    "Casters": ("caster", "fork"),
    "Seat": ("seat_width", "seat_depth", "cushion"),
    "Back": ("back_height", "back_angle", "back_support", "push_handle"),
    "Arms": ("arm_support",),
    "Feet": ("foot_supports", "hanger", "foot_plate", "leg_length"),
    "Locks and steadying": ("wheel_lock", "anti_tip", "belt"),
}
"""What somebody who is no technician asks about, and the choices that answer it."""

OUTSIDE = {
    "overall_width_mm": "wide",
    "overall_length_mm": "long, feet included",
    "overall_height_mm": "high",
    "folded_width_mm": "wide when folded",
    "chair_mass_kg": "in all",
}
ONLY_THIS = (
    "The prices are for the chair as it is described here. Another hole or another size can be "
    "another part and another price: ask again before anything is changed."
)
SIGNATURES = ("Offered by, name", "Signature", "Date")
ACCEPTED = ("Accepted by, name", "Signature", "Date")


def quotation_pdf(order: Order, paper: Paper = "a4") -> bytes:
    """Typeset the quotation.

    Parameters
    ----------
    order : Order
        Text is printed as it stands; nothing in it is read as markup.
    paper : {"a4", "us-letter"}

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
    return typeset("pack/quotation.typ", quotation_content(order), paper)


def quotation_content(order: Order) -> Data:
    """Everything that the template prints.

    Parameters
    ----------
    order : Order
    """
    quote = order.quote
    prices = quote.prices
    return {
        **heading_data(order),
        "supplier": prices.supplier,
        "list": prices.title,
        "list_dated": prices.dated,
        "valid_until": prices.valid_until,
        "currency": quote.currency,
        "rate": "" if prices.rate is None else f"{prices.rate:f}",
        "offered": [{"label": label, "words": words} for label, words in _offered(order)],
        "off": any(line.discount for line in quote.lines),
        "taxed": bool(quote.taxes),
        "lines": [_line(line) for line in quote.lines],
        "sums": [{"label": label, "amount": amount} for label, amount in _sums(quote)],
        "total_label": "Total" if quote.taxes else "Total, no tax worked out",
        "total": f"{quote.total:f}",
        "rounding": ROUNDING,
        "lead": lead_data(order.lead),
        "marks": marks_data(order.marks),
        "load": load_data(order),
        "unmet": unmet_data(order),
        "only_this": ONLY_THIS,
        "no_promise": NO_PROMISE,
        "offered_by": SIGNATURES,
        "accepted_by": ACCEPTED,
    }


def _offered(order: Order) -> Iterator[tuple[str, str]]:
    setup = order.setup
    for title, names in OFFERED.items():
        yield title, "; ".join(_choice(order, name) for name in names)
    extras = [extra.name for extra in setup.extras]
    if extras:
        yield "Extras", "; ".join(extras)
    known = {each.name: each for each in order.dimensions}
    sizes = [
        f"{dimension_value(known[name])} {known[name].unit} {words}"
        for name, words in OUTSIDE.items()
        if name in known
    ]
    yield "The whole chair", ", ".join(sizes)


def _choice(order: Order, name: str) -> str:
    """One choice in words: ``seat width 400 mm``; without the label where the words hold it."""
    option, label = order.setup.options[name], CHOICES[name].label.lower()
    if option.code == NONE:
        return f"no {label}"
    words = part_name(order.setup.line.choices[name], option)
    said = label.split()[-1] in words or not (words[:1].isdigit() or name == "foot_supports")
    return words if said else f"{label} {words}"


def _line(line: PriceLine) -> Data:
    mark = "" if line.mark == "standard" else f" ({line.mark})"
    return {
        "label": line.label[:1].upper() + line.label[1:],
        "code": line.code,
        "words": f"{line.words}{mark}",
        "amount": f"{line.amount:f}",
        "percent": percent_words(line.discount_percent) if line.discount else "",
        "discount": f"−{line.discount:f}" if line.discount else "",
        "net": f"{line.net:f}",
        "tax": line.tax,
    }


def _sums(quote: Quote) -> Iterator[tuple[str, str]]:
    """What stands between the lines and the total."""
    yield "Goods at list price", f"{quote.list_total:f}"
    if quote.discount_total:
        yield "Discount", f"−{quote.discount_total:f}"
    if quote.surcharge_total:
        yield "Surcharges", f"{quote.surcharge_total:f}"
    if quote.taxes:
        yield "Before tax", f"{quote.net_total:f}"
    for tax in quote.taxes:
        yield f"Tax {tax.name}, {percent_words(tax.percent)} of {tax.base:f}", f"{tax.amount:f}"
