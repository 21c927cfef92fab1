"""Orders for the tests of the exchange files: the examples, and one with hostile words."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from chairwright.cli.opened import Opened, open_setup
from chairwright.order.order import Heading, Order, make_order
from chairwright.order.price_list import PriceList, makers_prices
from chairwright.order.price_list_read import read_price_list
from tests.laws.example_sweeps import SETUPS

PRICES = SETUPS.parent / "orders" / "everyday-2026.yaml"
DATED = "2026-11-25"
NAMES = tuple(sorted(path.stem for path in Path(SETUPS).glob("*.yaml")))
HOSTILE = (
    "=1+1",
    "+1",
    "-1+1",
    "@SUM(A1)",
    "\t=1+1",
    "\r=1+1",
    "\n=1+1",
    " =1+1",
    "\uff1d1+1",
    '=HYPERLINK("https://chairwright.example","here")',
    '=cmd|" /C calc"!A0',
    "say \"so\", and 'so'; then\r\na second line",
    "Grüße, 身長 – ½",
    "x" * 400,
    "https://chairwright.example",
    "0012",
    "1e5",
    "TRUE",
    "_x0041_",
)


def opened(name: str = "avg-001") -> Opened:
    return open_setup(SETUPS / f"{name}.yaml")


def order_of(found: Opened, prices: PriceList | None = None, dated: str = DATED) -> Order:
    heading = Heading(found.name, "MY-17", dated)
    return make_order(heading, found.person, found.setup, prices or makers_prices(found.line))


def priced_order() -> Order:
    return order_of(opened(), read_price_list(PRICES))


def hostile_order() -> Order:
    """An order whose every word is one that a spreadsheet program could misread."""
    order = priced_order()
    part, line = order.parts[0], order.quote.lines[0]
    parts = tuple(replace(part, label=text, code=text, words=text) for text in HOSTILE)
    lines = tuple(replace(line, label=text, words=text, tax=text) for text in HOSTILE)
    return replace(
        order,
        heading=Heading("hostile", "=2+3", DATED),
        client_reference="-REF",
        parts=parts,
        quote=replace(order.quote, lines=lines),
        remarks=HOSTILE,
    )
