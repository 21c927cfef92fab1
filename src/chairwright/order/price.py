"""What an order costs: one line for each thing with a price, discounts, surcharges, taxes, total.

All amounts are decimals in the price list's currency; the rounding rule stands in
`order.price_money`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from chairwright.line.model import OptionKind
from chairwright.order.price_items import Item
from chairwright.order.price_list import PriceList, Rate, Surcharge, first_named, rate_for
from chairwright.order.price_money import HUNDRED, ZERO, from_line, rounded, share, total

LineKind = Literal["goods", "surcharge"]


@dataclass(frozen=True)
class PriceLine:
    """One line of a quotation.

    Parameters
    ----------
    kind : {"goods", "surcharge"}
    code : str
        Order code; empty for the chair itself and for surcharges.
    label, words : str
    mark : {"standard", "made to order", "on request"}
    quantity : int
        Sets: a pair is one.
    unit_price, amount : Decimal
        List price of one set, and of all.
    discount_class : str
        Empty when nothing is taken off.
    discount_percent, discount : Decimal
    net : Decimal
        Amount less discount.
    tax : str
        Name of its tax; empty when it has none.
    """

    kind: LineKind
    code: str
    label: str
    words: str
    mark: OptionKind
    quantity: int
    unit_price: Decimal
    amount: Decimal
    discount_class: str
    discount_percent: Decimal
    discount: Decimal
    net: Decimal
    tax: str


@dataclass(frozen=True)
class TaxSum:
    """One tax: on how much, and how much."""

    name: str
    percent: Decimal
    base: Decimal
    amount: Decimal


@dataclass(frozen=True)
class Quote:
    """What an order costs.

    Parameters
    ----------
    prices : PriceList
    lines : tuple of PriceLine
        Goods first; what costs nothing has no line.
    taxes : tuple of TaxSum
        Of the taxes that something is under, in the list's order.
    """

    prices: PriceList
    lines: tuple[PriceLine, ...]
    taxes: tuple[TaxSum, ...]

    @property
    def currency(self) -> str:
        """Three letters, as ISO 4217."""
        return self.prices.currency

    @property
    def list_total(self) -> Decimal:
        """Goods at list prices, before discount."""
        return self._sum([line.amount for line in self.lines if line.kind == "goods"])

    @property
    def discount_total(self) -> Decimal:
        """All discounts."""
        return self._sum([line.discount for line in self.lines])

    @property
    def surcharge_total(self) -> Decimal:
        """All surcharges of the price list."""
        return self._sum([line.net for line in self.lines if line.kind == "surcharge"])

    @property
    def net_total(self) -> Decimal:
        """Goods after discount with surcharges, before tax."""
        return self._sum([line.net for line in self.lines])

    @property
    def tax_total(self) -> Decimal:
        """All taxes."""
        return self._sum([tax.amount for tax in self.taxes])

    @property
    def total(self) -> Decimal:
        """What is to be paid."""
        return self._sum([self.net_total, self.tax_total])

    def _sum(self, amounts: list[Decimal]) -> Decimal:
        return total(amounts, self.prices.digits)


def quote(items: Sequence[Item], prices: PriceList) -> Quote:
    """Price everything that an order is made of.

    Parameters
    ----------
    items : sequence of Item
        From `order.price_items.items_of`.
    prices : PriceList
        One that goes with the line.

    Returns
    -------
    Quote
    """
    goods = [line for line in (_goods(item, prices) for item in items) if line.amount]
    net = total([line.net for line in goods], prices.digits)
    names = {name for item in items for name in item.names}
    charged = [each for each in prices.surcharges if not each.only_with
               or names & set(each.only_with)]  # fmt: skip
    lines = (*goods, *(_surcharge(each, net, prices) for each in charged))
    return Quote(prices, lines, tuple(_taxes(lines, prices)))


def list_price(item: Item, prices: PriceList) -> Decimal:
    """List price of one set of an item in the price list's currency.

    Parameters
    ----------
    item : Item
    prices : PriceList

    Returns
    -------
    Decimal
        The list's own price when it has one; else the line's, turned into the currency.
    """
    own = first_named(item.names, prices.prices)
    if own is not None:
        return rounded(own, prices.digits)
    rate = Decimal(1) if prices.rate is None else prices.rate
    return rounded(from_line(item.price) * rate, prices.digits)


def _goods(item: Item, prices: PriceList) -> PriceLine:
    price = list_price(item, prices)
    off, tax = rate_for(item.names, prices.discounts), rate_for(item.names, prices.taxes)
    percent = ZERO if off is None else off.percent
    discount = share(price, percent, prices.digits)
    return PriceLine(
        kind="goods",
        code=item.code,
        label=item.label,
        words=item.words,
        mark=item.kind,
        quantity=1,
        unit_price=price,
        amount=price,
        discount_class="" if off is None or not percent else off.name,
        discount_percent=percent,
        discount=discount,
        net=price - discount,
        tax="" if tax is None else tax.name,
    )


def _surcharge(each: Surcharge, goods_net: Decimal, prices: PriceList) -> PriceLine:
    digits = prices.digits
    amount = rounded(each.amount, digits) if each.amount is not None else share(
        goods_net, each.percent or ZERO, digits)  # fmt: skip
    rest = rate_for((), prices.taxes)
    words = "" if each.percent is None else "of the goods after discount"
    return PriceLine(
        kind="surcharge",
        code="",
        label=each.name,
        words=words,
        mark="standard",
        quantity=1,
        unit_price=amount,
        amount=amount,
        discount_class="",
        discount_percent=ZERO,
        discount=rounded(ZERO, digits),
        net=amount,
        tax=each.tax or ("" if rest is None else rest.name),
    )


def _taxes(lines: Sequence[PriceLine], prices: PriceList) -> list[TaxSum]:
    found = []
    for tax in prices.taxes:
        under = [line.net for line in lines if line.tax == tax.name]
        if under:
            found.append(_tax(tax, total(under, prices.digits), prices.digits))
    return found


def _tax(tax: Rate, base: Decimal, digits: int) -> TaxSum:
    return TaxSum(tax.name, tax.percent, base, rounded(base * tax.percent / HUNDRED, digits))
