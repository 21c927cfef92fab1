"""A dealer's price list: whose, from when, in which currency, discounts, surcharges, taxes, days.

Prices, discounts and taxes are given for *items*, named as in `order.price_items`.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import TypeVar

from chairwright.line.model import Line
from chairwright.order.price_money import USUAL_DIGITS

Named = TypeVar("Named")


@dataclass(frozen=True)
class Rate:
    """A percentage of some items: a discount class or a tax.

    Parameters
    ----------
    name : str
    percent : Decimal
    items : tuple of str
        Empty for the rest: every item that no other rate of its kind names.
    """

    name: str
    percent: Decimal
    items: tuple[str, ...] = ()


@dataclass(frozen=True)
class Surcharge:
    """What comes on top of the goods.

    Parameters
    ----------
    name : str
    amount : Decimal or None
        Fixed; None when it is a percentage.
    percent : Decimal or None
        Of the goods after discount.
    only_with : tuple of str
        Items of which at least one must be in the order; empty for always.
    tax : str
        Name of its tax; empty for the tax of the rest, if there is one.
    """

    name: str
    amount: Decimal | None = None
    percent: Decimal | None = None
    only_with: tuple[str, ...] = ()
    tax: str = ""


@dataclass(frozen=True)
class LeadTerms:
    """What a dealer knows of the days.

    Parameters
    ----------
    handling_days, transport_days : int
        Before the maker starts, and after the chair is built.
    days : dict of str to int
        Items whose days are other than the line says.
    after : dict of str to tuple of str
        Items that cannot start before others are there, such as a finish after the frame.
    """

    handling_days: int = 0
    transport_days: int = 0
    days: dict[str, int] = field(default_factory=dict)
    after: dict[str, tuple[str, ...]] = field(default_factory=dict)


@dataclass(frozen=True)
class PriceList:
    """A price list.

    Parameters
    ----------
    title, supplier : str
    line, line_version : str
        The line that it is for; the version may be empty.
    currency : str
        Three letters, as ISO 4217.
    digits : int
        Digits behind the currency's point.
    dated, valid_until : str
        Days as ``2026-11-25``; empty when not said.
    rate : Decimal or None
        How much of its currency one of the line's currency is; None when they are the same.
    prices : dict of str to Decimal
        Items with prices of their own, in its currency.
    discounts, taxes : tuple of Rate
    surcharges : tuple of Surcharge
    lead : LeadTerms
    path : str
        The file; empty for the maker's own list prices.
    where : dict of str to str
        ``file:line`` of what can be at fault.
    """

    title: str
    line: str
    currency: str
    supplier: str = ""
    line_version: str = ""
    digits: int = USUAL_DIGITS
    dated: str = ""
    valid_until: str = ""
    rate: Decimal | None = None
    prices: dict[str, Decimal] = field(default_factory=dict)
    discounts: tuple[Rate, ...] = ()
    taxes: tuple[Rate, ...] = ()
    surcharges: tuple[Surcharge, ...] = ()
    lead: LeadTerms = LeadTerms()
    path: str = ""
    where: dict[str, str] = field(default_factory=dict)

    @property
    def is_makers(self) -> bool:
        """Whether there is no dealer's list: the prices are those of the line file."""
        return not self.path


def makers_prices(line: Line) -> PriceList:
    """The line's own prices: no discount, no surcharge, no tax."""
    return PriceList(title=f"{line.title}, version {line.version}", line=line.name,
                     currency=line.currency, supplier=line.maker,
                     line_version=line.version)  # fmt: skip


def first_named(names: Sequence[str], among: dict[str, Named]) -> Named | None:
    """What is given for the most specific name of an item; None when nothing is.

    Parameters
    ----------
    names : sequence of str
        The item's names, the most specific first.
    among : dict
        By name.
    """
    return next((among[name] for name in names if name in among), None)


def rate_for(names: Sequence[str], rates: Iterable[Rate]) -> Rate | None:
    """The rate of an item: by its most specific name, else that of the rest, else None.

    Parameters
    ----------
    names : sequence of str
        The item's names, the most specific first.
    rates : iterable of Rate
    """
    rates = tuple(rates)
    by_item = {item: rate for rate in rates for item in rate.items}
    found = first_named(names, by_item)
    return found or next((rate for rate in rates if not rate.items), None)
