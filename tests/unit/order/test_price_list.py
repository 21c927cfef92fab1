"""Reading a price list: what it holds, and every mistake with its line and its remedy."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest

from chairwright.errors import InputError
from chairwright.line.load import load_line
from chairwright.order.price_items import every_item, known_items
from chairwright.order.price_list import PriceList, Rate, rate_for
from chairwright.order.price_list_checks import check_price_list
from chairwright.order.price_list_read import read_price_list

EXAMPLE = Path(__file__).parents[3] / "examples" / "orders" / "everyday-2026.yaml"
LINE = load_line("everyday")
HEAD = (
    "format: chairwright price list 1\n"
    "title: Prices\n"
    "line: everyday\n"
    "currency: EUR\n"
    "dated: 2026-11-01\n"
)


def read(folder: Path, text: str, head: str = HEAD) -> PriceList:
    path = folder / "prices.yaml"
    path.write_text(head + text, encoding="utf-8")
    found = read_price_list(path)
    check_price_list(found, LINE)
    return found


def test_the_example() -> None:
    found = read_price_list(EXAMPLE)
    check_price_list(found, LINE)
    assert (found.currency, found.digits, found.dated) == ("EUR", 2, "2026-11-01")
    assert found.prices["base"] == Decimal("659.90")
    assert found.discounts[0] == Rate("chair", Decimal("12.5"))
    assert found.discounts[1].items == ("cushion", "back_support")
    assert [tax.percent for tax in found.taxes] == [Decimal(7), Decimal(19)]
    assert found.surcharges[0].amount == Decimal(48)
    assert found.surcharges[1].only_with == ("made_to_order",)
    assert found.lead.after == {"finish": ("side_frame", "made_to_order")}
    assert found.lead.days == {"cushion.Q100": 8}


def test_a_price_is_read_digit_by_digit(tmp_path: Path) -> None:
    """0.1 and 0.3 have no binary number; 1234567.89 in single figures loses its cents."""
    found = read(tmp_path, 'prices: {base: 0.1, cushion.Q50: "0.30", extras.ET: 123456.78}\n')
    assert found.prices == {
        "base": Decimal("0.1"), "cushion.Q50": Decimal("0.30"), "extras.ET": Decimal("123456.78"),
    }  # fmt: skip


def test_the_rest_is_what_nobody_names() -> None:
    rates = (Rate("rest", Decimal(1)), Rate("one", Decimal(2), ("cushion.Q50",)))
    assert rate_for(("cushion.Q50", "cushion"), rates) == rates[1]
    assert rate_for(("cushion.Q75", "cushion"), rates) == rates[0]
    assert rate_for(("belt",), rates[1:]) is None


@pytest.mark.parametrize(
    ("text", "where", "words"),
    [
        ("prices: {base: 12.345}\n", ":6: prices.base:", "at most 2 digits"),
        ("prices: {base: -5}\n", ":6: prices.base:", "from 0 to 1,000,000"),
        ("prices: {base: 1e3}\n", ":6: prices.base:", "plain number"),
        ("prices:\n  base:\n", ":7: prices.base:", "a price must be a number"),
        ("prices: {cushion: 10}\n", ":6: prices:", "Write it like cushion.CODE."),
        ("prices: {made_to_order: 10}\n", ":6: prices:", "made_to_order.seat_width"),
        ("prices: {cushion.Q500: 10}\n", ":6: prices:", "Did you mean Q50?"),
        ("prices: {cushon.Q50: 10}\n", ":6: prices:", "it must be something of the line everyday"),
        ("digits: 4\n", ":6: digits:", "whole number from 0 to 3"),
        ("valid_until: 2026-02-30\n", ":6: valid_until:", "a day of the calendar"),
        ("valid_until: 2026-10-31\n", ":6: valid_until:", "cannot end before it begins"),
        ("rate: 1.1\n", ":6: rate:", "a rate is for another currency"),
        ("discounts:\n  - {name: a, percent: 101, items: rest}\n", ":7: discounts.percent:", "100"),
        ("discounts:\n  - {name: a, items: rest}\n", ":7: discounts.percent:", "must be given"),
        ("discounts:\n  - {name: a, percent: 5}\n", ":7: discounts.items:", "list of items"),
        (
            "discounts:\n  - {name: a, percent: 5, items: [belt]}\n"
            "  - {name: b, percent: 6, items: [belt]}\n",
            ":8: discounts.items:", "belt a second time",
        ),
        (
            "taxes:\n  - {name: a, percent: 5, items: rest}\n"
            "  - {name: a, percent: 6, items: rest}\n",
            ":8: taxes.name:", "each name must stand once",
        ),
        ("taxes:\n  - {name: a, percent: 5, items: [belts]}\n", ":7: taxes:", "Did you mean belt?"),
        ("surcharges:\n  - {name: a}\n", ":7: surcharges.name:", "an amount or a percent"),
        (
            "surcharges:\n  - {name: a, amount: 5, tax: full}\n", ":7: surcharges.tax:",
            "the name of a tax here",
        ),
        ("lead_time: {days: {belt: 1.5}}\n", ":6: lead_time.days.belt:", "whole number"),
        ("lead_time: {days: {belts: 2}}\n", ":6: lead_time.days:", "something of the line"),
        ("lead_time: {after: {finish: [finish.FK]}}\n", ":6: lead_time.after:", "wait for itself"),
        (
            "lead_time: {after: {finish: [side_frame.SFL], side_frame: [belt], belt: [finish]}}\n",
            ":6: lead_time.after:", "nothing can wait for itself",
        ),
        (
            "lead_time: {after: {seat_width.MS410: [made_to_order.seat_width]}}\n",
            ":6: lead_time.after:", "nothing can wait for itself",
        ),
        ("discount: 5\n", ":6: discount:", "Did you mean discounts?"),
    ],
)  # fmt: skip
def test_a_mistake_is_told_at_its_line(tmp_path: Path, text: str, where: str, words: str) -> None:
    with pytest.raises(InputError) as caught:
        read(tmp_path, text)
    told = str(caught.value)
    assert f"prices.yaml{where}" in told
    assert words in told


def test_another_line_and_another_currency(tmp_path: Path) -> None:
    head = HEAD.replace("everyday", "light-rigid").replace("EUR", "XTS")
    with pytest.raises(InputError) as caught:
        read(tmp_path, "", head)
    first, second = map(str, caught.value.problems)
    assert ":3: line: the price list must be for the line of the set-up, everyday" in first
    assert ":4: currency: prices of the line in EUR need a rate to become XTS" in second


def test_no_circle_is_seen_where_there_is_none(tmp_path: Path) -> None:
    text = "lead_time: {after: {finish: [side_frame, made_to_order], cushion: [finish]}}\n"
    assert len(read(tmp_path, text).lead.after) == 2


def test_every_thing_of_a_line_has_names_that_are_known() -> None:
    known = set(known_items(LINE))
    items = every_item(LINE)
    assert {name for item in items for name in item.names} <= known
    assert len({item.names[0] for item in items}) == len(items)
    assert {"base", "finish", "made_to_order.leg_length", "extras.ET", "fork.FM"} <= known
