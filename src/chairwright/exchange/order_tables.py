"""An order as tables of rows, the same for a CSV file each and for the sheets of a workbook."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal

from chairwright.order.accepted import Unmet
from chairwright.order.order import Order

Cell = str | int | float | Decimal | None
Row = tuple[Cell, ...]


@dataclass(frozen=True)
class Table:
    """One table.

    Parameters
    ----------
    name : str
        One word in small letters.
    headers : tuple of str
        Unit in brackets at the end.
    rows : tuple of tuple
        Text is text, numbers are numbers, money is decimal; None is an empty cell.
    """

    name: str
    headers: tuple[str, ...]
    rows: tuple[Row, ...]


def order_tables(order: Order) -> tuple[Table, ...]:
    """Every table of an order; those without rows are there with their headers.

    Parameters
    ----------
    order : Order

    Returns
    -------
    tuple of Table
        Order, parts, settings, dimensions, load, prices, sums, delivery, musts, changes, remarks.
    """
    return (
        Table("order", ("what", "value"), tuple(_heading(order))),
        _parts(order),
        _settings(order),
        _dimensions(order),
        _load(order),
        _prices(order),
        Table("sums", ("sum", "percent", "of", "amount", "currency"), tuple(_sums(order))),
        _delivery(order),
        _musts(order),
        _table(
            "changes",
            ("topic", "label", "before", "after"),
            ((each.topic, each.label, each.before, each.after) for each in order.changes),
        ),
        Table("remarks", ("remark",), tuple((each,) for each in order.remarks)),
    )


def _table(name: str, headers: tuple[str, ...], rows: Iterable[Row]) -> Table:
    return Table(name, headers, tuple(rows))


def _heading(order: Order) -> Iterator[Row]:
    line = order.setup.line
    yield "order number", order.heading.number
    yield "revision", order.revision
    yield "dated", order.heading.dated
    yield "set-up", order.heading.name
    yield "client", order.client_reference
    yield "line", line.name
    yield "line title", line.title
    yield "line version", line.version
    yield "refused", "yes" if order.refused else "no"
    yield "price list", order.quote.prices.title
    yield "total", order.quote.total
    yield "currency", order.quote.currency
    yield "delivery [days]", order.lead.days
    yield "not fitted", ", ".join(order.left_off)


def _parts(order: Order) -> Table:
    reasons = {mark.choice: "; ".join(mark.reasons) for mark in order.marks}
    rows = (
        (part.choice, part.label, part.code, part.words, part.quantity, part.side, part.mark,
         reasons.get(part.choice, ""))
        for part in order.parts
    )  # fmt: skip
    headers = ("choice", "label", "code", "words", "pieces", "side", "mark", "why not standard")
    return _table("parts", headers, rows)


def _settings(order: Order) -> Table:
    rows = (
        (each.choice, each.label, each.code, each.words, each.x_mm, each.z_mm)
        for each in order.settings
    )
    headers = ("choice", "label", "code", "words", "ahead of seat corner [mm]",
               "above seat corner [mm]")  # fmt: skip
    return _table("settings", headers, rows)


def _dimensions(order: Order) -> Table:
    rows = (
        (each.name, each.label, round(each.value, each.digits), each.unit, each.from_, each.to,
         each.tolerance, each.origin)
        for each in order.dimensions
    )  # fmt: skip
    headers = ("name", "label", "value", "unit", "from", "to", "tolerance either way", "origin")
    return _table("dimensions", headers, rows)


def _load(order: Order) -> Table:
    load = order.load
    rows: list[Row] = [("load", each.name, "", each.mass_kg) for each in load.loads]
    rows += [("limit", each.label, each.code, each.limit_kg) for each in load.limits]
    rows.append(("all", "load together", "", load.load_kg))
    if not math.isinf(load.rated_kg):
        rows.append(("all", "rated load", "", load.rated_kg))
        rows.append(("all", "to spare", "", load.margin_kg))
    return _table("load", ("kind", "what", "code", "mass [kg]"), _rounded(rows))


def _rounded(rows: Iterable[Row]) -> Iterator[Row]:
    """Without what binary sums leave behind the sixth digit."""
    for row in rows:
        yield tuple(round(cell, 6) if isinstance(cell, float) else cell for cell in row)


def _prices(order: Order) -> Table:
    rows = (
        (each.kind, each.label, each.code, each.words, each.mark, each.quantity, each.unit_price,
         each.amount, each.discount_class, each.discount_percent, each.discount, each.net, each.tax,
         order.quote.currency)
        for each in order.quote.lines
    )  # fmt: skip
    headers = ("kind", "what", "code", "words", "mark", "sets", "list price of one", "list price",
               "discount class", "discount [%]", "discount", "net", "tax", "currency")  # fmt: skip
    return _table("prices", headers, rows)


def _sums(order: Order) -> Iterator[Row]:
    quote = order.quote
    for name, amount in (
        ("goods at list price", quote.list_total),
        ("discount", quote.discount_total),
        ("surcharges", quote.surcharge_total),
        ("before tax", quote.net_total),
    ):
        yield name, None, None, amount, quote.currency
    for tax in quote.taxes:
        yield f"tax {tax.name}", tax.percent, tax.base, tax.amount, quote.currency
    yield "total", None, None, quote.total, quote.currency


def _delivery(order: Order) -> Table:
    path = {(step.label, step.code) for step in order.lead.path}
    steps = [("yes", step) for step in order.lead.path]
    steps += [("no", step) for step in order.lead.parts if (step.label, step.code) not in path]
    rows = (
        (each.label, each.code, each.words, each.kind, each.days, each.ends, each.spare, on)
        for on, each in steps
    )
    headers = ("what", "code", "words", "kind", "days", "done on day", "days to spare",
               "on the longest path")  # fmt: skip
    return _table("delivery", headers, rows)


def _musts(order: Order) -> Table:
    headers = ("figure", "label", "at least", "at most", "value", "unit", "asked because",
               "accepted by", "accepted because", "accepted in revision")  # fmt: skip
    return _table("musts", headers, (_must(each) for each in order.unmet))


def _must(each: Unmet) -> Row:
    (low, high), accepted = each.asked, each.accepted
    said: Row = ("", "", None)
    if accepted is not None:
        said = (accepted.by, accepted.reason_told, accepted.revision)
    figure = each.figure
    return (figure.name, figure.label, low, high, each.value, figure.unit,
            each.judged.target.reason, *said)  # fmt: skip
