"""An order as plain data; money is text, digit by digit, never a floating number."""

from __future__ import annotations

import math
from dataclasses import asdict
from decimal import Decimal

from chairwright.cli.report_json import line_data
from chairwright.cli.report_places import verdict_data
from chairwright.order.accepted import Unmet
from chairwright.order.lead import LeadTime
from chairwright.order.order import Order
from chairwright.order.order_load import LoadRating
from chairwright.order.price import PriceLine, Quote

Data = dict[str, object]


def order_data(order: Order) -> Data:
    """The whole order.

    Parameters
    ----------
    order : Order

    Returns
    -------
    dict
    """
    return {
        "order": {
            "number": order.heading.number,
            "revision": order.revision,
            "dated": order.heading.dated,
            "set_up": order.heading.name,
            "client": order.client_reference,
        },
        "line": line_data(order.setup.line),
        "refused": order.refused,
        "musts_not_met": [_unmet(each) for each in order.unmet],
        "places": [verdict_data(each) for each in order.places] if order.places else None,
        "places_not_met": [
            {"place": each.judged.target.place, **_unmet(each)} for each in order.unmet_at_places
        ],
        "musts_held_on_nominal_values": [item.target.figure for item in order.narrow],
        "earlier_revision": order.earlier or None,
        "changes": [asdict(change) for change in order.changes],
        "choices": order.setup.codes,
        "extras": [extra.code for extra in order.setup.extras],
        "parts": [asdict(part) for part in order.parts],
        "settings": [asdict(setting) for setting in order.settings],
        "not_fitted": list(order.left_off),
        "not_standard": [asdict(mark) for mark in order.marks],
        "dimensions": [
            {key.rstrip("_"): value for key, value in asdict(each).items()}
            for each in order.dimensions
        ],
        "load": _load(order.load),
        "prices": quote_data(order.quote),
        "delivery": _lead(order.lead),
        "remarks": list(order.remarks),
    }


def _unmet(each: Unmet) -> Data:
    target, (low, high) = each.judged.target, each.asked
    accepted = each.accepted
    return {
        "figure": target.figure,
        "at_least": low,
        "at_most": high,
        "value": each.value,
        "reason": target.reason,
        "source": target.source,
        "accepted": None
        if accepted is None
        else {"by": accepted.by, "reason": accepted.reason_told, "revision": accepted.revision},
    }


def _load(load: LoadRating) -> Data:
    rated = load.rated_kg
    return {
        "rated_kg": None if math.isinf(rated) else rated,
        "limits": [asdict(each) for each in load.limits],
        "loads": [asdict(each) for each in load.loads],
        "load_kg": load.load_kg,
        "margin_kg": None if math.isinf(rated) else load.margin_kg,
        "bears": load.bears,
    }


def quote_data(quote: Quote) -> Data:
    """Prices, discounts and taxes; every amount is text.

    Parameters
    ----------
    quote : Quote

    Returns
    -------
    dict
    """
    prices = quote.prices
    return {
        "list": {
            "title": prices.title,
            "supplier": prices.supplier,
            "dated": prices.dated,
            "valid_until": prices.valid_until,
            "rate": None if prices.rate is None else f"{prices.rate:f}",
        },
        "currency": quote.currency,
        "lines": [_line(line) for line in quote.lines],
        "list_total": f"{quote.list_total:f}",
        "discount_total": f"{quote.discount_total:f}",
        "surcharge_total": f"{quote.surcharge_total:f}",
        "net_total": f"{quote.net_total:f}",
        "taxes": [_texts(asdict(tax)) for tax in quote.taxes],
        "tax_total": f"{quote.tax_total:f}",
        "total": f"{quote.total:f}",
    }


def _line(line: PriceLine) -> Data:
    return _texts(asdict(line))


def _texts(data: Data) -> Data:
    return {
        key: f"{value:f}" if isinstance(value, Decimal) else value for key, value in data.items()
    }


def _lead(lead: LeadTime) -> Data:
    return {
        "days": lead.days,
        "longest_path": [asdict(step) for step in lead.path],
        "parts_that_take_days": [asdict(step) for step in lead.parts],
    }
