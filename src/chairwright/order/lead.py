"""When an order comes: the longest path from the order to the door.

Handling, then every part on its way at the same time (from stock, made to order, on request; some
wait for others), then the build, then transport.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from chairwright.order.price_items import Item
from chairwright.order.price_list import LeadTerms, first_named

LeadKind = Literal[
    "handling", "stock", "standard", "made to order", "on request", "build", "transport"
]


@dataclass(frozen=True)
class LeadStep:
    """One stretch of time.

    Parameters
    ----------
    kind : {"handling", "stock", "standard", "made to order", "on request", "build", "transport"}
        A standard part that is not in stock takes days of its own.
    label, code, words : str
    starts, days : int
        Days after the order, and how many.
    spare : int
        Days by which it may be late before anything else is; 0 on the longest path.
    """

    kind: LeadKind
    label: str
    code: str
    words: str
    starts: int
    days: int
    spare: int = 0

    @property
    def ends(self) -> int:
        """Day on which it is done."""
        return self.starts + self.days


@dataclass(frozen=True)
class LeadTime:
    """When an order comes.

    Parameters
    ----------
    days : int
        From the order to the door.
    path : tuple of LeadStep
        The longest path, in order: it alone makes the days.
    parts : tuple of LeadStep
        Everything that takes days before the build, on the path or beside it.
    """

    days: int
    path: tuple[LeadStep, ...]
    parts: tuple[LeadStep, ...]


def lead_time(items: Sequence[Item], build_days: int, terms: LeadTerms) -> LeadTime:
    """Find the longest path.

    Parameters
    ----------
    items : sequence of Item
        From `order.price_items.items_of`.
    build_days : int
        Of the line.
    terms : LeadTerms
        Checked: nothing waits for itself.

    Returns
    -------
    LeadTime
    """
    network = _Network(items, terms)
    ends = [network.ends(item) for item in items]
    ready = max(ends, default=terms.handling_days)
    last = next((item for item, end in zip(items, ends, strict=True) if end == ready), None)
    chain = network.chain(last) if last is not None and ready > terms.handling_days else []
    path = [_handling(terms)] if terms.handling_days else []
    path += [network.step(item, ready) for item in chain] or [_stock(terms.handling_days)]
    path.append(LeadStep("build", "Build", "", "building the chair", ready, build_days))
    days = ready + build_days + terms.transport_days
    if terms.transport_days:
        words = "transport to the door"
        path.append(
            LeadStep("transport", "Transport", "", words, ready + build_days, terms.transport_days)
        )
    slow = [network.step(item, ready) for item in items if network.days(item)]
    return LeadTime(days, tuple(path), tuple(sorted(slow, key=lambda step: step.spare)))


def _handling(terms: LeadTerms) -> LeadStep:
    return LeadStep("handling", "Handling", "", "handling of the order", 0, terms.handling_days)


def _stock(starts: int) -> LeadStep:
    return LeadStep("stock", "Parts", "", "every part from stock", starts, 0)


class _Network:
    """Items with those that each waits for."""

    def __init__(self, items: Sequence[Item], terms: LeadTerms) -> None:
        self.items = items
        self.terms = terms

    def days(self, item: Item) -> int:
        """Days of an item: the price list's, else the line's."""
        own = first_named(item.names, self.terms.days)
        return item.days if own is None else own

    def before(self, item: Item) -> list[Item]:
        """What must be there before an item can start."""
        wanted = {
            name
            for key, names in self.terms.after.items() if key in item.names
            for name in names
        }  # fmt: skip
        return [each for each in self.items if wanted & set(each.names)]

    def starts(self, item: Item) -> int:
        """Day on which an item can start."""
        return max(map(self.ends, self.before(item)), default=self.terms.handling_days)

    def ends(self, item: Item) -> int:
        """Day on which an item is there."""
        return self.starts(item) + self.days(item)

    def chain(self, item: Item) -> list[Item]:
        """The items that an item waits for one after the other, itself last; without idle ones."""
        start = self.starts(item)
        slow = [each for each in self.before(item) if self.ends(each) == start]
        earlier = self.chain(slow[0]) if slow and start > self.terms.handling_days else []
        return [*earlier, item] if self.days(item) else earlier

    def latest(self, item: Item, ready: int) -> int:
        """Last day on which an item must be there so that nothing is late."""
        waiting = [each for each in self.items if item in self.before(each)]
        return min((self.latest(each, ready) - self.days(each) for each in waiting), default=ready)

    def step(self, item: Item, ready: int) -> LeadStep:
        """An item as a stretch of time."""
        spare = self.latest(item, ready) - self.ends(item)
        kind: LeadKind = item.kind
        return LeadStep(
            kind, item.label, item.code, item.words, self.starts(item), self.days(item), spare
        )
