"""Money and days of orders worked out with a pencil: price, discount, tax, rounding, lead time.

The chair is that of ``level_chair``: base 500, rims RA 12.50, arms AR 30 (2 days), back BT 90,
anti-tip TS 45 (4 days), 10 days to build; a seat width made to order costs 240 and takes 12 days.
"""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from functools import cache

import numpy as np
import pytest

from chairwright.fitting.described import Described, describe
from chairwright.order.lead import LeadTime, lead_time
from chairwright.order.order_load import load_rating
from chairwright.order.price import Quote, quote
from chairwright.order.price_items import items_of
from chairwright.order.price_list import LeadTerms, PriceList, Rate, Surcharge, makers_prices
from chairwright.order.price_money import rounded, share
from chairwright.person.client import Carried
from tests.oracles.people import client, seated

from .level_chair import CODES, line


@cache
def chair(**other: str) -> Described:
    codes = CODES | other
    index = {name: line().choices[name].codes[code] for name, code in codes.items()}
    return describe(line(), seated(client()), index, ())


def plain() -> PriceList:
    return makers_prices(line())


def quoted(prices: PriceList, **other: str) -> Quote:
    return quote(items_of(chair(**other)), prices)


def money(*texts: str) -> list[Decimal]:
    return [Decimal(text) for text in texts]


def test_the_makers_own_prices() -> None:
    # 500 + 12.50 + 30 + 90 + 45
    found = quoted(plain())
    assert [line.amount for line in found.lines] == money("500", "12.50", "30", "90", "45")
    assert (found.list_total, found.net_total, found.total) == tuple(money(*["677.50"] * 3))
    assert str(found.total) == "677.50"
    assert found.taxes == ()


def test_discount_classes_surcharges_and_two_taxes() -> None:
    """Each amount on paper.

    List: chair 499.95, rims 12.50, arms 30, back 90, anti-tip 45: 677.45.
    Off: 12.5 % of 499.95 = 62.49375 -> 62.49; of 12.50 = 1.5625 -> 1.56; of 30 = 3.75; of 45 =
    5.625 -> 5.63; 8 % of the back's 90 = 7.20. Sum 80.63. Goods net 596.82.
    On: 2.5 % of 596.82 = 14.9205 -> 14.92; delivery 48. Before tax 659.74.
    Tax 19 % on back 82.80 and delivery 48 = 130.80: 24.852 -> 24.85.
    Tax 7 % on the rest: 659.74 - 130.80 = 528.94: 37.0258 -> 37.03. Total 721.62.
    """
    prices = replace(
        plain(),
        prices={"base": Decimal("499.95")},
        discounts=(
            Rate("chair", Decimal("12.5")),
            Rate("seating", Decimal(8), ("back_support", "cushion")),
        ),
        taxes=(Rate("reduced", Decimal(7)), Rate("full", Decimal(19), ("back_support",))),
        surcharges=(
            Surcharge("small order", percent=Decimal("2.5")),
            Surcharge("delivery", amount=Decimal(48), tax="full"),
            Surcharge("measuring", amount=Decimal(60), only_with=("made_to_order",)),
        ),
    )
    found = quoted(prices)
    goods = found.lines[:5]
    assert [each.discount for each in goods] == money("62.49", "1.56", "3.75", "7.20", "5.63")
    assert [each.discount_class for each in goods] == ["chair"] * 3 + ["seating", "chair"]
    assert [each.label for each in found.lines[5:]] == ["small order", "delivery"]
    assert found.list_total == Decimal("677.45")
    assert found.discount_total == Decimal("80.63")
    assert found.surcharge_total == Decimal("62.92")
    assert found.net_total == Decimal("659.74")
    assert [(tax.name, tax.base, tax.amount) for tax in found.taxes] == [
        ("reduced", Decimal("528.94"), Decimal("37.03")),
        ("full", Decimal("130.80"), Decimal("24.85")),
    ]
    assert found.total == Decimal("721.62")


def test_a_size_made_to_order_brings_its_price_and_its_surcharge() -> None:
    # 677.50 + 240; measuring 60 only with such a size; 5 % off all but what is made to order:
    # 5 % of 500 = 25, of 12.50 = 0.625 -> 0.63, of 30 = 1.50, of 90 = 4.50, of 45 = 2.25: 33.88.
    prices = replace(
        plain(),
        discounts=(Rate("all", Decimal(5)), Rate("none", Decimal(0), ("made_to_order",))),
        surcharges=(Surcharge("measuring", amount=Decimal(60), only_with=("made_to_order",)),),
    )
    found = quoted(prices, seat_width="MS410")
    assert found.list_total == Decimal("917.50")
    assert found.discount_total == Decimal("33.88")
    assert found.total == Decimal("943.62")  # 917.50 - 33.88 + 60
    (made,) = [each for each in found.lines if each.mark == "made to order"]
    assert (made.code, made.amount, made.discount) == ("MS410", Decimal(240), Decimal(0))


def test_the_most_specific_name_decides() -> None:
    # The device by its part 50, the width by its range 200; the choice and its kind are set aside.
    prices = replace(
        plain(),
        prices={"anti_tip.TS": Decimal(50), "made_to_order.seat_width": Decimal(200)},
        discounts=(
            Rate("one", Decimal(10), ("anti_tip.TS-7",)),
            Rate("two", Decimal(20), ("anti_tip.TS", "made_to_order")),
            Rate("three", Decimal(30), ("anti_tip", "seat_width")),
        ),
    )
    lines = {each.code: each for each in quoted(prices, seat_width="MS410").lines}
    assert (lines["TS"].amount, lines["TS"].discount) == (Decimal(50), Decimal(5))
    assert (lines["MS410"].amount, lines["MS410"].discount) == (Decimal(200), Decimal(40))
    assert lines["BT"].discount == 0


def test_another_currency_and_one_without_small_coins() -> None:
    # At 1.0853: 500 -> 542.65, 12.50 -> 13.56625 -> 13.57, 30 -> 32.559 -> 32.56,
    # 90 -> 97.677 -> 97.68, 45 -> 48.8385 -> 48.84. Sum 735.30.
    other = replace(plain(), currency="XTS", rate=Decimal("1.0853"))
    assert quoted(other).total == Decimal("735.30")
    # At 163.2 without decimals: 81600, 2040, 4896, 14688, 7344: 110568; tax 10 % 11056.8 -> 11057.
    coarse = replace(
        plain(), currency="XTS", rate=Decimal("163.2"), digits=0, taxes=(Rate("t", Decimal(10)),)
    )
    assert [str(each.amount) for each in quoted(coarse).lines] == [
        "81600", "2040", "4896", "14688", "7344",
    ]  # fmt: skip
    assert str(quoted(coarse).total) == "121625"


@pytest.mark.parametrize(
    ("amount", "percent", "off"),
    [
        ("0.05", "50", "0.03"),  # 0.025, half a cent up, never to the even one
        ("0.15", "50", "0.08"),  # 0.075
        ("1.15", "10", "0.12"),  # 0.115, which no binary number holds: 0.11 in floating point
        ("2.675", "100", "2.68"),
        ("19.90", "12.5", "2.49"),  # 2.4875
        ("0.04", "12.4", "0.00"),  # 0.00496
    ],
)
def test_half_a_cent_goes_up(amount: str, percent: str, off: str) -> None:
    assert share(Decimal(amount), Decimal(percent), 2) == Decimal(off)


def test_tax_is_worked_out_once_on_the_sum_of_its_lines() -> None:
    # 19 % of 0.03 is 0.0057 -> 0.01 a line, three cents for three; of the sum 0.09: 0.0171 -> 0.02.
    cents = {"base": "0.03", "hand_rim.RA": "0.03", "arm_support.AR": "0.03",
             "back_support.BT": "0", "anti_tip.TS": "0"}  # fmt: skip
    prices = replace(
        plain(),
        prices={name: Decimal(text) for name, text in cents.items()},
        taxes=(Rate("full", Decimal(19)),),
    )
    found = quoted(prices)
    assert len(found.lines) == 3
    assert found.total == Decimal("0.11")


def test_rounding_keeps_the_digits() -> None:
    assert str(rounded(Decimal(785), 2)) == "785.00"
    assert str(rounded(Decimal("0.0005"), 3)) == "0.001"


def timed(terms: LeadTerms, **other: str) -> LeadTime:
    return lead_time(items_of(chair(**other)), line().build_days, terms)


def test_the_longest_part_and_the_build() -> None:
    # Arms 2 days and anti-tip 4 side by side, then 10 to build.
    found = timed(LeadTerms())
    assert found.days == 14
    assert [(step.kind, step.code, step.starts, step.ends) for step in found.path] == [
        ("standard", "TS", 0, 4),
        ("build", "", 4, 14),
    ]
    assert [(step.code, step.spare) for step in found.parts] == [("TS", 0), ("AR", 2)]


def test_a_size_made_to_order_is_the_longest_path() -> None:
    # 12 days for the width, 10 to build; the anti-tip device has 8 to spare.
    found = timed(LeadTerms(), seat_width="MS410")
    assert found.days == 22
    assert [step.kind for step in found.path] == ["made to order", "build"]
    assert {step.code: step.spare for step in found.parts} == {"MS410": 0, "TS": 8, "AR": 10}


def test_a_finish_that_waits_for_the_frame() -> None:
    # Handling 1; width 12 to day 13; colour to a sample 12 to day 25; build 10 to day 35; 3 more.
    terms = LeadTerms(
        handling_days=1, transport_days=3, after={"finish": ("side_frame", "made_to_order")}
    )
    found = timed(terms, seat_width="MS410", finish="FK")
    assert found.days == 38
    told = [(step.kind, step.code, step.starts, step.ends) for step in found.path]
    assert told == [
        ("handling", "", 0, 1),
        ("made to order", "MS410", 1, 13),
        ("on request", "FK", 13, 25),
        ("build", "", 25, 35),
        ("transport", "", 35, 38),
    ]
    # Side by side instead, as the line alone has it: 12 and 12, then 10.
    assert timed(LeadTerms(), seat_width="MS410", finish="FK").days == 22


def test_everything_from_stock() -> None:
    terms = LeadTerms(days={"anti_tip": 0, "arm_support.AR": 0})
    found = timed(terms)
    assert found.days == 10
    assert [(step.kind, step.days) for step in found.path] == [("stock", 0), ("build", 10)]
    assert found.parts == ()


def test_load_rating_against_everything_carried() -> None:
    # Casters 120 are the least, frame 130, wheels 140; 80 kg and two loads of 6.5 and 3 kg.
    loads = (Carried("day bag", 6.5, "backpack"), Carried("oxygen", 3.0, "under_seat"))
    occupant = seated(client(carries=loads))
    found = load_rating(chair(), occupant)
    assert [(each.code, each.limit_kg) for each in found.limits[:3]] == [
        ("C", 120.0), ("SF", 130.0), ("W", 140.0),
    ]  # fmt: skip
    assert [load.name for load in found.loads] == ["occupant", "day bag", "oxygen"]
    assert found.load_kg == pytest.approx(89.5)
    assert found.margin_kg == pytest.approx(30.5)
    assert found.bears


def test_the_floating_figures_of_the_line_agree() -> None:
    assert np.isclose(chair().figures["price"], 677.5)
    assert chair().figures["lead_days"] == 14.0
