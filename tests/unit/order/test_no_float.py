"""No floating number touches money: neither in the source nor in what it makes."""

from __future__ import annotations

import ast
from dataclasses import fields, is_dataclass
from decimal import Decimal
from pathlib import Path

import pytest

import chairwright.order.price
from chairwright.cli.opened import open_setup
from chairwright.order.price import quote
from chairwright.order.price_items import items_of
from chairwright.order.price_list import makers_prices
from chairwright.order.price_list_read import read_price_list
from tests.laws.example_sweeps import EXAMPLES, SETUPS

ROOM = Path(chairwright.order.price.__file__).parent
MONEY = sorted(ROOM.glob("price*.py"))
PRICES = Path(__file__).parents[3] / "examples" / "orders" / "everyday-2026.yaml"


def test_the_files_about_money_are_seen() -> None:
    assert {path.name for path in MONEY} >= {"price.py", "price_list.py", "price_money.py"}


@pytest.mark.parametrize("path", MONEY, ids=[path.name for path in MONEY])
def test_no_floating_number_is_written_or_made(path: Path) -> None:
    found = [
        f"{path.name}:{node.lineno}"
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if (isinstance(node, ast.Constant) and isinstance(node.value, float))
        or (isinstance(node, ast.Name) and node.id in ("float", "round"))
        or (isinstance(node, ast.Attribute) and node.attr in ("fsum", "isclose"))
    ]
    assert found == []


@pytest.mark.parametrize("name", EXAMPLES)
def test_a_quotation_holds_decimals_only(name: str) -> None:
    opened = open_setup(SETUPS / f"{name}.yaml")
    items = items_of(opened.setup)
    for prices in (makers_prices(opened.line), read_price_list(PRICES)):
        found = quote(items, prices)
        numbers = [value for thing in (*found.lines, *found.taxes) for value in held(thing)]
        assert len(numbers) > len(found.lines)
        assert {type(value) for value in numbers} <= {Decimal, int}
        sums = (found.list_total, found.discount_total, found.net_total, found.total)
        assert {type(value) for value in sums} == {Decimal}


def held(thing: object) -> list[object]:
    """Every number of a dataclass."""
    assert is_dataclass(thing)
    values = [getattr(thing, each.name) for each in fields(thing)]
    return [value for value in values if not isinstance(value, str)]


@pytest.mark.parametrize("name", EXAMPLES)
def test_the_lines_own_prices_sum_to_the_figure(name: str) -> None:
    opened = open_setup(SETUPS / f"{name}.yaml")
    found = quote(items_of(opened.setup), makers_prices(opened.line))
    assert str(found.total) == f"{opened.setup.figures['price']:.2f}"
    surcharges = [line.amount for line in found.lines if line.mark == "made to order"]
    assert sum(surcharges, Decimal(0)) == Decimal(str(opened.setup.figures["custom_surcharge"]))
