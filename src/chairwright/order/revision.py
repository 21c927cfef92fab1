"""What differs between an order on file and the same client's order now."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from chairwright.figures.registry import FIGURES
from chairwright.files.order import AcceptedMust, OrderFile
from chairwright.fitting.described import Described
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.order.lead import LeadTime
from chairwright.order.price import Quote
from chairwright.order.price_money import money_words, rounded

Topic = Literal["client", "line", "choice", "extras", "price list", "total", "delivery", "accepted"]
NOTHING = "nothing"


@dataclass(frozen=True)
class Change:
    """One difference.

    Parameters
    ----------
    topic : {"client", "line", "choice", "extras", "price list", "total", "delivery", "accepted"}
    label : str
    before, after : str
        In words.
    """

    topic: Topic
    label: str
    before: str
    after: str


@dataclass(frozen=True)
class Ordered:
    """What is compared of an order."""

    setup: Described
    quote: Quote
    lead: LeadTime
    accepted: tuple[AcceptedMust, ...]


def changes(earlier: OrderFile, now: Ordered) -> tuple[Change, ...]:
    """Everything that differs, in the order of the choices, then money and days.

    Parameters
    ----------
    earlier : OrderFile
    now : Ordered

    Returns
    -------
    tuple of Change
        Empty when the order is the same.
    """
    return tuple(change for change in _all(earlier, now) if change.before != change.after)


def _all(earlier: OrderFile, now: Ordered) -> Iterator[Change]:
    line = now.setup.line
    if "/" not in earlier.line and "." not in earlier.line:
        yield Change("line", "Line", earlier.line, line.name)
    if earlier.line_version != line.version:
        yield Change("line", "Line version", earlier.line_version, line.version)
    for name, option in now.setup.options.items():
        before, after = earlier.choices[name], option.code
        if before != after:
            words = _option_words(line, name, before), _option_words(line, name, after)
            yield Change("choice", CHOICES[name].label, *words)
    codes = tuple(extra.code for extra in now.setup.extras)
    if set(codes) != set(earlier.extras):
        yield Change("extras", "Extras", _extra_words(line, earlier.extras),
                     _extra_words(line, codes))  # fmt: skip
    yield from _accepted(earlier, now)
    yield from _trade(earlier, now)


def _option_words(line: Line, name: str, code: str) -> str:
    choice = line.choices[name]
    at = choice.codes.get(code)
    return code if at is None else f"{code}, {choice.options[at].name}"


def _extra_words(line: Line, codes: tuple[str, ...]) -> str:
    names = {extra.code: extra.name for extra in line.extras}
    return "; ".join(f"{code}, {names[code]}" if code in names else code for code in codes) or (
        NOTHING
    )


def _accepted(earlier: OrderFile, now: Ordered) -> Iterator[Change]:
    before = {(each.figure, each.place): each for each in earlier.accepted}
    after = {(each.figure, each.place): each for each in now.accepted}
    for key in dict.fromkeys((*before, *after)):
        figure, place = key
        label = f"Accepted: {FIGURES[figure].label if figure in FIGURES else figure}"
        label += " (asked by a place)" if place else ""
        yield Change("accepted", label, _by(before.get(key)), _by(after.get(key)))


def _by(accepted: AcceptedMust | None) -> str:
    if accepted is None:
        return NOTHING
    return f"by {accepted.by} in revision {accepted.revision}: {accepted.reason_told}"


def _trade(earlier: OrderFile, now: Ordered) -> Iterator[Change]:
    held = earlier.price_list
    lists = ("" if held is None else held.name), now.quote.prices.path.rpartition("/")[2]
    yield Change("price list", "Price list", *(name or "the line's own prices" for name in lists))
    currency, digits = now.quote.currency, now.quote.prices.digits
    was, total = rounded(earlier.total, digits), now.quote.total
    after = money_words(total, currency)
    if earlier.currency == currency and was != total:
        after += f" ({total - was:+f})"
    yield Change("total", "Total", money_words(was, earlier.currency), after)
    yield Change("delivery", "Delivery", f"{earlier.delivery_days} days", f"{now.lead.days} days")
