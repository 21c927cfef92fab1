"""One order: a set-up with its parts, dimensions, prices, days, load rating and accepted musts."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from chairwright.figures.registry import FIGURES
from chairwright.files.order import AcceptedMust, OrderFile
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.person import Person
from chairwright.fitting.place_verdicts import PlaceVerdict
from chairwright.line.choices import CHOICES
from chairwright.order.accepted import Acceptance, Unmet, covers, missed_at, settle
from chairwright.order.lead import LeadTime, lead_time
from chairwright.order.order_dimensions import Dimension, dimensions_of
from chairwright.order.order_load import LoadRating, load_rating
from chairwright.order.parts import PartRow, SettingRow, left_off, part_rows, setting_rows
from chairwright.order.parts_marks import Mark, marks_of
from chairwright.order.price import Quote, quote
from chairwright.order.price_items import items_of
from chairwright.order.price_list import PriceList
from chairwright.order.revision import Change, Ordered, changes


@dataclass(frozen=True)
class Heading:
    """What an order is called.

    Parameters
    ----------
    name : str
        Of the set-up.
    number : str
        The order's own number; empty when it has none.
    dated : str
        Day of the order as ``2026-11-25``; empty when not said.
    """

    name: str
    number: str = ""
    dated: str = ""


@dataclass(frozen=True)
class Order:
    """One order in one revision; everything that papers need, worked out.

    Parameters
    ----------
    heading : Heading
    client_reference : str
    revision : int
    setup : Described
    parts : tuple of PartRow
    settings : tuple of SettingRow
    left_off : tuple of str
        Choices of which nothing is fitted.
    marks : tuple of Mark
        What is made to order or on request, with reasons.
    dimensions : tuple of Dimension
    quote : Quote
    lead : LeadTime
    load : LoadRating
    unmet : tuple of Unmet
        Musts that are missed, each with who accepted it, if somebody did.
    narrow : tuple of Judged
        Musts that hold on nominal values only.
    changes : tuple of Change
        Against the earlier revision; empty for a first one.
    earlier : int
        Number of the earlier revision; 0 for a first one.
    remarks : tuple of str
    places : tuple of PlaceVerdict
        What the client's places say; empty when none are known.
    unmet_at_places : tuple of Unmet
        What is missed there, each with who accepted it; an order is never refused for it.
    kept : tuple of AcceptedMust
        Accepted at places in an earlier revision, when the places are not known now.
    """

    heading: Heading
    client_reference: str
    revision: int
    setup: Described
    parts: tuple[PartRow, ...]
    settings: tuple[SettingRow, ...]
    left_off: tuple[str, ...]
    marks: tuple[Mark, ...]
    dimensions: tuple[Dimension, ...]
    quote: Quote
    lead: LeadTime
    load: LoadRating
    unmet: tuple[Unmet, ...]
    narrow: tuple[Judged, ...]
    changes: tuple[Change, ...]
    earlier: int
    remarks: tuple[str, ...]
    places: tuple[PlaceVerdict, ...] = ()
    unmet_at_places: tuple[Unmet, ...] = ()
    kept: tuple[AcceptedMust, ...] = ()

    @property
    def open(self) -> tuple[Unmet, ...]:
        """Missed musts that nobody has accepted."""
        return tuple(each for each in self.unmet if each.accepted is None)

    @property
    def accepted(self) -> tuple[AcceptedMust, ...]:
        """What has been accepted by name, one for each figure, then for each at a place."""
        return (*_one_each((*self.unmet, *self.unmet_at_places)), *self.kept)

    @property
    def refused(self) -> bool:
        """Whether it must not be sent: a must is missed and nobody has accepted that."""
        return bool(self.open)


def _one_each(unmet: Sequence[Unmet]) -> tuple[AcceptedMust, ...]:
    """What is accepted, one for each figure and place."""
    found = [each.accepted for each in unmet if each.accepted is not None]
    return tuple({(each.figure, each.place): each for each in found}.values())


def make_order(
    heading: Heading,
    person: Person,
    setup: Described,
    prices: PriceList,
    said: Sequence[Acceptance] = (),
    earlier: OrderFile | None = None,
    places: Sequence[PlaceVerdict] = (),
) -> Order:
    """Work an order out.

    Parameters
    ----------
    heading : Heading
    person : Person
    setup : Described
        Of the person.
    prices : PriceList
        One that goes with the line.
    said : sequence of Acceptance
        Checked, new in this revision.
    earlier : OrderFile or None
        The revision before; its acceptances stand as far as they cover what is missed.
    places : sequence of PlaceVerdict
        What the client's places say of the set-up; without any, what was accepted at places stands
        as it was.

    Returns
    -------
    Order
        Its revision is the earlier one's and one more, or the same when nothing differs.
    """
    items = items_of(setup)
    priced, lead = quote(items, prices), lead_time(items, setup.line.build_days, prices.lead)
    kept = () if earlier is None else earlier.accepted
    number = 1 if earlier is None else earlier.revision + 1
    unmet = settle(setup.broken, said, kept, number)
    at_places = settle(missed_at(places), said, kept, number)
    waiting = () if places else tuple(each for each in kept if each.place)
    accepted = (*_one_each((*unmet, *at_places)), *waiting)
    ordered = Ordered(setup, priced, lead, accepted)
    differ = () if earlier is None else changes(earlier, ordered)
    if earlier is not None and not differ:
        number = earlier.revision
    return Order(
        heading=heading,
        client_reference=person.client.reference,
        revision=number,
        setup=setup,
        parts=part_rows(setup),
        settings=setting_rows(setup),
        left_off=left_off(setup),
        marks=marks_of(person, setup),
        dimensions=dimensions_of(setup),
        quote=priced,
        lead=lead,
        load=load_rating(setup, person.occupant),
        unmet=unmet,
        narrow=tuple(item for item in setup.judged if _narrow(item)),
        changes=differ,
        earlier=0 if earlier is None else earlier.revision,
        remarks=(
            *_price_remarks(prices, setup, heading.dated),
            *_dropped(kept, accepted, (*unmet, *at_places)),
        ),
        places=tuple(places),
        unmet_at_places=at_places,
        kept=waiting,
    )


def _narrow(item: Judged) -> bool:
    return item.target.must and item.verdict.word == "holds on nominal values"


def _price_remarks(prices: PriceList, setup: Described, dated: str) -> Iterator[str]:
    if prices.is_makers:
        yield "No price list is named: these are the line's own prices, without discount or tax."
        return
    version = setup.line.version
    if prices.line_version and prices.line_version != version:
        yield (
            f"The price list was made for version {prices.line_version} of the line; this is "
            f"version {version}. Ask for the prices of this version."
        )
    if dated and dated < prices.dated:
        yield f"The order is dated {dated}, before the price list's {prices.dated}."
    if prices.valid_until and dated > prices.valid_until:
        yield (
            f"The price list was valid until {prices.valid_until} and the order is dated {dated}: "
            "ask for the prices of that day."
        )
    if prices.valid_until and not dated:
        yield f"The price list is valid until {prices.valid_until}; the order has no date."


def _dropped(
    kept: Sequence[AcceptedMust], accepted: Sequence[AcceptedMust], unmet: Sequence[Unmet]
) -> Iterator[str]:
    """Say which earlier acceptances do not stand any more, and why."""
    for each in kept:
        if each in accepted:
            continue
        asked = (each.figure, each.place)
        now = [item for item in unmet if (item.figure.name, item.judged.target.place) == asked]
        label = FIGURES[each.figure].label if each.figure in FIGURES else each.figure
        told = f"{label}, accepted by {each.by} in revision {each.revision}"
        if not now:
            yield f"{told}: the must holds now, and the acceptance is dropped."
        elif not any(covers(each, item) for item in now) and any(
            item.accepted is None for item in now
        ):
            yield f"{told}: more is missed now, or something else is asked. Accept it again."


def order_file(
    order: Order, path: Path, client_path: Path, setup_path: Path, line: str
) -> OrderFile:
    """What of an order is kept in its file.

    Parameters
    ----------
    order : Order
    path : Path
        Of the order file.
    client_path, setup_path : Path
    line : str
        As the set-up file names it: a plain name, or the path of a line file.

    Returns
    -------
    OrderFile
    """
    prices = order.quote.prices
    return OrderFile(
        path=path,
        client=order.client_reference,
        client_path=client_path,
        setup_path=setup_path,
        price_list=Path(prices.path) if prices.path else None,
        number=order.heading.number,
        revision=order.revision,
        dated=order.heading.dated,
        line=line,
        line_version=order.setup.line.version,
        total=order.quote.total,
        currency=order.quote.currency,
        delivery_days=order.lead.days,
        choices={name: order.setup.codes[name] for name in CHOICES},
        extras=tuple(extra.code for extra in order.setup.extras),
        accepted=order.accepted,
    )
