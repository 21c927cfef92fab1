"""Prices and days of an order as text."""

from __future__ import annotations

from chairwright.cli.table import text_table
from chairwright.order.lead import LeadStep, LeadTime
from chairwright.order.price import PriceLine, Quote
from chairwright.order.price_money import money_words, percent_words
from chairwright.papers.order_words import ROUNDING
from chairwright.papers.words import wrapped


def price_text(quote: Quote) -> str:
    """Every price line, then discounts, surcharges, taxes and the total.

    Parameters
    ----------
    quote : Quote

    Returns
    -------
    str
    """
    prices = quote.prices
    title = f"Prices in {quote.currency}: {prices.title}"
    if prices.supplier:
        title += f", {prices.supplier}"
    if prices.dated:
        title += f", of {prices.dated}"
    if prices.rate is not None:
        title += f"; 1 in the line's currency is {prices.rate:f} {quote.currency}"
    off = any(line.discount for line in quote.lines)
    taxed = bool(quote.taxes)
    headers = ["what", "code", "", "list"]
    headers += ["off", "discount", "net"] if off else []
    headers += ["tax"] if taxed else []
    rows = [_cells(line, off=off, taxed=taxed) for line in quote.lines]
    table = text_table(headers, rows, "lllrrrr" if off else "lllr")
    return "\n".join([title, table, "", _sums(quote), wrapped(ROUNDING)])


def _cells(line: PriceLine, *, off: bool, taxed: bool) -> list[str]:
    mark = "" if line.mark == "standard" else f" ({line.mark})"
    cells = [line.label, line.code, f"{line.words}{mark}", f"{line.amount:f}"]
    if off:
        percent = percent_words(line.discount_percent) if line.discount_percent else ""
        taken = f"-{line.discount:f}" if line.discount else ""
        cells += [percent, taken, f"{line.net:f}"]
    return [*cells, line.tax] if taxed else cells


def _sums(quote: Quote) -> str:
    rows = [["Goods at list price", f"{quote.list_total:f}"]]
    if quote.discount_total:
        rows.append(["Discount", f"-{quote.discount_total:f}"])
    if quote.surcharge_total:
        rows.append(["Surcharges", f"{quote.surcharge_total:f}"])
    if len(rows) > 1 or quote.taxes:
        rows.append(["Before tax", f"{quote.net_total:f}"])
    for tax in quote.taxes:
        name = f"Tax {tax.name}, {percent_words(tax.percent)} of {tax.base:f}"
        rows.append([name, f"{tax.amount:f}"])
    words = "Total" if quote.taxes else "Total, no tax worked out"
    rows.append([words, money_words(quote.total, quote.currency)])
    return text_table(["sum", quote.currency], [[a, b.removesuffix(f" {quote.currency}")]
                                                for a, b in rows], "lr")  # fmt: skip


def lead_text(lead: LeadTime) -> str:
    """The longest path, and what else takes days beside it.

    Parameters
    ----------
    lead : LeadTime

    Returns
    -------
    str
    """
    rows = [_step(step) for step in lead.path]
    lines = [f"Delivery in {lead.days} days. The longest path:"]
    lines.append(text_table(["what", "code", "", "days", "done on day"], rows, "lllrr"))
    on_path = {(step.label, step.code) for step in lead.path}
    beside = [step for step in lead.parts if (step.label, step.code) not in on_path]
    if beside:
        words = "; ".join(
            f"{step.label.lower()} {step.code} {step.days} days ({step.spare} to spare)"
            for step in beside
        )
        lines.append(wrapped(f"Beside it: {words}."))
    return "\n".join(lines)


def _step(step: LeadStep) -> list[str]:
    known = step.kind in ("made to order", "on request")
    words = f"{step.words} ({step.kind})" if known else step.words
    return [step.label, step.code, words, str(step.days), str(step.ends)]
