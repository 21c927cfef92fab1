"""An order worked out from what one revision holds: nothing else is read, so it comes out alike."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, replace
from decimal import Decimal
from importlib.resources import files
from pathlib import Path
from typing import Any

from chairwright.errors import InputError, Problem
from chairwright.files.order import AcceptedMust, OrderFile
from chairwright.fitting.described import Described
from chairwright.fitting.person import Person
from chairwright.fitting.place_verdicts import PlaceVerdict, place_verdicts
from chairwright.line.load import SHIPPED
from chairwright.order.accepted import Acceptance, check_acceptances
from chairwright.order.order import Heading, Order, make_order
from chairwright.order.price_list import PriceList, makers_prices
from chairwright.order.price_list_checks import check_price_list
from chairwright.order.price_list_read import read_price_list
from chairwright.order.revision import Change
from chairwright.places.model import Surroundings
from chairwright.reading import FileText
from chairwright_desk.bench.bridge import Bench, Kept, open_bench, state_of
from chairwright_desk.chair_now.bridge import Pads, weighed_bench

ORDERS = 64
CLIENT_NOW = "as on file now"


@dataclass(frozen=True)
class Written:
    """All that one revision is worked out from.

    Parameters
    ----------
    client, places : str
        Texts; places are empty when none are known.
    line, line_text : str
        Name and text of the line file.
    prices, prices_text : str
        Name and text of the price list; empty for the line's own prices.
    name : str
        Of the set-up.
    codes : dict of str to str
    extras : tuple of str
    number, dated : str
        Of the order.
    revision : int
    said : tuple of Acceptance
        Accepted by name in this revision.
    pads : dict or None
        The weighing that counted, with ``line_text``, the wording of its line.
    """

    client: str
    places: str
    line: str
    line_text: str
    prices: str
    prices_text: str
    name: str
    codes: dict[str, str]
    extras: tuple[str, ...]
    number: str
    dated: str
    revision: int = 1
    said: tuple[Acceptance, ...] = ()
    pads: dict[str, Any] | None = None

    def kept(self) -> dict[str, Any]:
        """As a row of the database keeps it."""
        return asdict(self)

    @staticmethod
    def of(kept: Mapping[str, Any]) -> Written:
        """As a row of the database has kept it.

        Parameters
        ----------
        kept : mapping
        """
        said = tuple(Acceptance(**each) for each in kept["said"])
        return Written(**{**kept, "extras": tuple(kept["extras"]), "said": said})


@dataclass(frozen=True)
class Worked:
    """One revision, worked out.

    Parameters
    ----------
    order : Order
    person : Person
    surroundings : Surroundings or None
    """

    order: Order
    person: Person
    surroundings: Surroundings | None

    @property
    def waiting(self) -> tuple[str, ...]:
        """Figures of musts, of the client and of places, that nobody has accepted."""
        every = (*self.order.unmet, *self.order.unmet_at_places)
        return tuple(dict.fromkeys(each.figure.name for each in every if each.accepted is None))

    def outcome(self) -> dict[str, Any]:
        """What the next revision is compared with, and lists show."""
        order, line = self.order, self.order.setup.line
        return {
            "line": line.name,
            "line_version": line.version,
            "total": f"{order.quote.total:f}",
            "currency": order.quote.currency,
            "days": order.lead.days,
            "refused": order.refused,
            "waiting": len(self.waiting),
            "accepted": [asdict(each) for each in order.accepted],
        }


_ORDERS: Kept[Worked] = Kept(ORDERS)


def line_text(name: str) -> str:
    """The text of a shipped line.

    Parameters
    ----------
    name : str
    """
    if name not in SHIPPED:
        must, remedy = "the desk must have the set-up's line", "Bring the line in again."
        raise InputError(Problem("line", must, repr(name), remedy))
    return (files("chairwright.line") / "lines" / f"{name}.yaml").read_text(encoding="utf-8")


def work_out(
    written: Written,
    earlier: Mapping[str, Any] | None = None,
    earlier_written: Mapping[str, Any] | None = None,
) -> Worked:
    """Work one revision out.

    Parameters
    ----------
    written : Written
    earlier, earlier_written : mapping or None
        What the revision before came to, and what it was worked out from; None for a first one.

    Returns
    -------
    Worked

    Raises
    ------
    InputError
        With every problem.
    """
    told = json.dumps([written.kept(), earlier, earlier_written], sort_keys=True)
    key = hashlib.sha256(told.encode("utf-8", "surrogatepass")).hexdigest()
    return _ORDERS.of(key, lambda: _worked(written, earlier, earlier_written))


def _worked(
    written: Written,
    earlier: Mapping[str, Any] | None,
    earlier_written: Mapping[str, Any] | None,
) -> Worked:
    bench = _bench(written, "")
    setup = described(bench, written.codes)
    prices = prices_of(written, bench)
    places, placed = _places(written)
    check_acceptances(setup, written.said, places)
    heading = Heading(written.name, written.number, written.dated)
    before = None
    if earlier is not None and earlier_written is not None:
        before = _order_file(Written.of(earlier_written), earlier)
    made = make_order(heading, bench.person, setup, prices, written.said, before, places)
    more = () if earlier_written is None else _beside(Written.of(earlier_written), written)
    order = replace(made, revision=written.revision, changes=(*more, *made.changes))
    return Worked(order, bench.person, placed)


def _bench(written: Written, places: str) -> Bench:
    line = FileText(written.line, written.line_text)
    bench = open_bench(written.client, line, places, written.extras)
    if written.pads is None:
        return bench
    pads = dict(written.pads)
    line = FileText(pads["line"], pads.pop("line_text"))
    held = {**pads, "line": line, "extras": tuple(pads["extras"])}
    return weighed_bench(bench, Pads(**held))


def described(bench: Bench, codes: Mapping[str, str]) -> Described:
    """A set-up that may be built.

    Parameters
    ----------
    bench : Bench
    codes : mapping of str to str

    Raises
    ------
    InputError
        When something is against it.
    """
    state = state_of(bench, codes)
    if state.setup is None or state.against:
        must, remedy = "the set-up must be one that can be built", "Change it on the bench."
        raise InputError(Problem("set-up", must, "; ".join(state.against), remedy))
    return state.setup


def prices_of(written: Written, bench: Bench) -> PriceList:
    """The price list of a revision, checked against its line.

    Parameters
    ----------
    written : Written
    bench : Bench
    """
    if not written.prices_text:
        return makers_prices(bench.line)
    prices = read_price_list(FileText(written.prices, written.prices_text))
    check_price_list(prices, bench.line)
    return prices


def _places(written: Written) -> tuple[tuple[PlaceVerdict, ...], Surroundings | None]:
    if not written.places:
        return (), None
    bench = _bench(written, written.places)
    again = described(bench, written.codes)
    return place_verdicts(bench.person, again), bench.person.surroundings


def _order_file(written: Written, came: Mapping[str, Any]) -> OrderFile:
    nowhere = Path("order")
    return OrderFile(
        path=nowhere,
        client="",
        client_path=nowhere,
        setup_path=nowhere,
        price_list=Path(written.prices) if written.prices else None,
        number=written.number,
        revision=written.revision,
        dated=written.dated,
        line=came["line"],
        line_version=came["line_version"],
        total=Decimal(came["total"]),
        currency=came["currency"],
        delivery_days=came["days"],
        choices=written.codes,
        extras=written.extras,
        accepted=tuple(AcceptedMust(**each) for each in came["accepted"]),
    )


def _beside(before: Written, now: Written) -> tuple[Change, ...]:
    """What the engineering does not compare: heading, measures, surroundings."""
    was = f"as in revision {before.revision}"
    rows = [
        Change("client", "Set-up", before.name, now.name),
        Change("client", "Order number", before.number, now.number),
        Change("client", "Dated", before.dated, now.dated),
    ]
    rows = [each for each in rows if each.before != each.after]
    for label, one, other in (
        ("Measures and targets", before.client, now.client),
        ("Places", before.places, now.places),
        ("Weighing", before.pads, now.pads),
        ("Wording of the line file", before.line_text, now.line_text),
        ("Wording of the price list", before.prices_text, now.prices_text),
    ):
        if one != other:
            rows.append(Change("client", label, was, CLIENT_NOW))
    return tuple(rows)
