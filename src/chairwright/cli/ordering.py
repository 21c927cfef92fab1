"""What commands share that work an order out: its arguments, and the order that they ask for."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.report import tell
from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.cli.opened import Opened
    from chairwright.files.order import OrderFile
    from chairwright.fitting.place_verdicts import PlaceVerdict
    from chairwright.order.accepted import Acceptance
    from chairwright.order.order import Heading, Order
    from chairwright.order.price_list import PriceList
    from chairwright.places.model import Surroundings

LIMIT_BYTES = 200_000


def add_order_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments that say which order is meant."""
    parser.add_argument("setup", metavar="SETUP", help="set-up file, or order file to show again")
    parser.add_argument(
        "--price-list",
        metavar="FILE",
        help="price list (YAML); without one: the line's own prices, or those of an earlier order",
    )
    parser.add_argument(
        "--accept",
        metavar="MUST",
        action="append",
        default=[],
        help="accept a must that is not met, by its figure such as tip_rear_locked_deg; --by and "
        "--reason belong to it; may be said several times",
    )
    parser.add_argument(
        "--by", metavar="NAME", action="append", default=[], help="who accepts it, by name"
    )
    parser.add_argument(
        "--reason",
        metavar="TEXT",
        action="append",
        default=[],
        help="why; printed for the maker word for word: no diagnosis. One that begins with "
        "'private:' stays in the order file",
    )
    parser.add_argument(
        "--against", metavar="ORDER", help="an earlier order file: say what differs from it"
    )
    parser.add_argument("--number", metavar="TEXT", help="the order's own number")
    parser.add_argument("--date", metavar="DAY", help="day of the order, such as 2026-11-25")


@dataclass(frozen=True)
class Asked:
    """What is to be ordered.

    Parameters
    ----------
    opened : Opened
    setup_path : Path
        Where the codes came from.
    earlier : OrderFile or None
    surroundings : Surroundings or None
        The client's places, when the order shall say what they say.
    """

    opened: Opened
    setup_path: Path
    earlier: OrderFile | None
    surroundings: Surroundings | None = None


def acceptances_of(args: argparse.Namespace) -> tuple[Acceptance, ...]:
    """What is accepted by name: each ``--accept`` with its ``--by`` and ``--reason``.

    Raises
    ------
    InputError
        When one of the three is missing for a must.
    """
    from chairwright.order.accepted import Acceptance

    counts = {len(args.accept), len(args.by), len(args.reason)}
    if len(counts) > 1:
        got = f"{len(args.accept)} --accept, {len(args.by)} --by, {len(args.reason)} --reason"
        must = "each accepted must needs a name and a reason"
        raise InputError(Problem("--accept", must, got, "Say all three for each, in one order."))
    triples = zip(args.accept, args.by, args.reason, strict=True)
    return tuple(Acceptance(*triple) for triple in triples)


def asked_of(args: argparse.Namespace) -> Asked:
    """Read the set-up or the order that is named, and the earlier order.

    Raises
    ------
    InputError
        When a file cannot be read, or an order is for another client.
    """
    from chairwright.cli.opened import open_file, open_setup
    from chairwright.files.order import FORMAT, read_order
    from chairwright.reading import read_yaml

    itself = None
    if read_yaml(args.setup, LIMIT_BYTES).data.get("format") == FORMAT:
        itself = read_order(args.setup)
    earlier = itself if args.against is None else read_order(args.against)
    opened = open_setup(args.setup) if itself is None else open_file(itself.setup)
    reference = opened.person.client.reference
    for each in (itself, earlier):
        if each is not None and each.client != reference:
            where = f"{each.where['client']}: client"
            must = f"the order must be for the client of the set-up, {reference}"
            raise InputError(Problem(where, must, each.client, "Name an order of that client."))
    setup_path = Path(args.setup) if itself is None else itself.setup_path
    return Asked(opened, setup_path, earlier)


def order_of(args: argparse.Namespace, asked: Asked, said: tuple[Acceptance, ...]) -> Order:
    """Work the order out.

    Parameters
    ----------
    args : argparse.Namespace
    asked : Asked
    said : tuple of Acceptance

    Returns
    -------
    Order

    Raises
    ------
    InputError
        When the price list does not go with the line, or an acceptance or the heading is wrong.
    """
    from chairwright.order.accepted import check_acceptances
    from chairwright.order.order import make_order

    opened = asked.opened
    prices = _prices(args, asked)
    places = _places(asked)
    check_acceptances(opened.setup, said, places)
    heading = _heading(args, asked)
    return make_order(heading, opened.person, opened.setup, prices, said, asked.earlier, places)


def _places(asked: Asked) -> tuple[PlaceVerdict, ...]:
    """What the client's places say; the set-up is judged again with what they ask."""
    if asked.surroundings is None:
        return ()
    from chairwright.fitting.described import describe
    from chairwright.fitting.person import read_person
    from chairwright.fitting.place_verdicts import place_verdicts

    person, setup = asked.opened.person, asked.opened.setup
    placed = read_person(person.client, asked.surroundings, person.weighed)
    again = describe(setup.line, placed.occupant, setup.index, placed.targets, placed.surroundings)
    return place_verdicts(placed, again)


def _prices(args: argparse.Namespace, asked: Asked) -> PriceList:
    from chairwright.order.price_list import makers_prices
    from chairwright.order.price_list_checks import check_price_list
    from chairwright.order.price_list_read import read_price_list

    earlier = None if asked.earlier is None else asked.earlier.price_list
    path = args.price_list or earlier
    if path is None:
        return makers_prices(asked.opened.line)
    prices = read_price_list(path)
    check_price_list(prices, asked.opened.line)
    return prices


def _heading(args: argparse.Namespace, asked: Asked) -> Heading:
    from chairwright.files.order import LONGEST_NAME
    from chairwright.files.order_fields import is_date
    from chairwright.order.order import Heading

    earlier = asked.earlier
    number = args.number or ("" if earlier is None else earlier.number)
    if len(number) > LONGEST_NAME or not number.isprintable():
        must = f"a number must be one line of at most {LONGEST_NAME} characters"
        raise InputError(Problem("--number", must, f"{len(number)}", "Shorten it."))
    dated = args.date or ""
    if dated and not is_date(dated):
        must = "it must be a day of the calendar as year-month-day"
        raise InputError(Problem("--date", must, repr(dated), "Write it like 2026-11-25."))
    if not dated and earlier is not None and args.against is None:
        dated = earlier.dated
    return Heading(asked.setup_path.stem, number, dated)


def check_free(paths: Iterable[Path], *, replace: bool) -> None:
    """Refuse files that are there already, before anything is written.

    Parameters
    ----------
    paths : iterable of Path
    replace : bool
        Whether existing files may be replaced.

    Raises
    ------
    InputError
        With every file that is in the way.
    """
    remedy = "Say --replace, or choose another name."
    problems = [
        Problem(str(path), "the file must not exist yet", "a file", remedy)
        for path in paths
        if path.exists()
    ]
    if problems and not replace:
        raise InputError(*problems)


def tell_refused(order: Order, out: Path) -> None:
    """Say that nothing is written of an order that is refused, and why.

    Parameters
    ----------
    order : Order
    out : Path
        What would have been written.
    """
    lines = [f"{out}: not written, because the order is refused"]
    lines += [f"{each.figure.name}: a must is not met and nobody accepts it" for each in order.open]
    tell([*lines, "'chairwright order' shows by how much, and how to accept it by name."])
