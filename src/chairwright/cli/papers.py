"""Write the papers of an order as PDF: quotation, order, letter, handover, label, sheets.

A file for each paper, named after the set-up. An order that is refused has no papers.
"""

from __future__ import annotations

import argparse
import json
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.ordering import (
    acceptances_of,
    add_order_arguments,
    asked_of,
    check_free,
    order_of,
    tell_refused,
)
from chairwright.cli.report import BAD_INPUT, OK, tell
from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.cli.opened import Opened
    from chairwright.cli.papers_table import Pack
    from chairwright.order.order import Order


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright papers``."""
    add_order_arguments(parser)
    parser.add_argument(
        "--out", metavar="DIR", type=Path, required=True, help="folder of the papers"
    )
    parser.add_argument("--only", metavar="NAME,..", help="only these papers, such as order,label")
    parser.add_argument("--replace", action="store_true", help="replace files that are there")
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4", help="size of the paper")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )
    parser.add_argument(
        "--from", metavar="SETUP", dest="first",
        help="set-up file of the chair as it is: also write the sheet to adjust it",
    )  # fmt: skip
    parser.add_argument(
        "--places", metavar="FILE", help="the client's places, for the letter and the handover"
    )
    parser.add_argument(
        "--scheme", metavar="NAME|FILE", help="payer's scheme whose classes the letter names"
    )
    parser.add_argument(
        "--fact", metavar="NAME=VALUE", dest="facts", nargs="+", action="extend", default=[],
        help="facts that the scheme asks for, as with chairwright payer",
    )  # fmt: skip
    parser.add_argument("--delivered", metavar="DAY", help="day of the handover, like 2026-12-01")
    parser.add_argument("--serial", metavar="TEXT", help="serial number of the chair")
    parser.add_argument(
        "--gtin", metavar="DIGITS",
        help="the maker's GS1 number of the chair: the label gets a GS1 Data Matrix of it",
    )  # fmt: skip
    parser.add_argument("--json", action="store_true", help="print one JSON document")


def run(args: argparse.Namespace) -> int:
    """Write the papers; exit code 2 when the order is refused."""
    said = acceptances_of(args)
    names = _names(args)
    asked = asked_of(args)
    order = order_of(args, asked, said)
    if order.refused:
        tell_refused(order, args.out)
        _print(order, {}, args)
        return BAD_INPUT
    paths = {name: args.out / f"{order.heading.name}-{name}.pdf" for name in names}
    check_free(paths.values(), replace=args.replace)
    pack = _pack(order, asked.opened, args)
    _write(pack, paths, replace=args.replace)
    _print(order, paths, args)
    return OK


def _names(args: argparse.Namespace) -> list[str]:
    """Names of the papers that are asked for, in the order of their use."""
    from chairwright.cli.papers_table import ADJUST, PAPERS
    from chairwright.validation import suggest

    problems = []
    wanted = [] if args.only is None else [word.strip() for word in args.only.split(",")]
    for word in wanted:
        if word not in PAPERS:
            must = f"each name must be one of {', '.join(PAPERS)}"
            problems.append(Problem("--only", must, repr(word), suggest(word, list(PAPERS))))
    if ADJUST in wanted and args.first is None:
        must = f"{ADJUST} needs the chair as it is"
        problems.append(Problem("--only", must, "no --from", "Name its set-up file with --from."))
    if args.facts and not args.scheme:
        remedy = "Say --scheme us-hcpcs as well."
        problems.append(Problem("--fact", "a scheme must be named", "no --scheme", remedy))
    if args.out.is_file():
        must = "the papers need a folder"
        problems.append(Problem(str(args.out), must, "a file", "Choose another name."))
    if problems:
        raise InputError(*problems)
    known = [name for name in PAPERS if name != ADJUST or args.first is not None]
    return [name for name in known if not wanted or name in wanted]


def _pack(order: Order, opened: Opened, args: argparse.Namespace) -> Pack:
    from chairwright.cli.opened import open_setup
    from chairwright.cli.papers_table import Pack

    first = None if args.first is None else open_setup(args.first)
    if first is not None:
        _check_client(first, order)
    payer = surroundings = None
    if args.places:
        from chairwright.files.places import read_places
        from chairwright.fitting.person import check_reference

        surroundings = read_places(args.places)
        check_reference(opened.person.client, surroundings)
    if args.scheme:
        from chairwright.cli.payer import assessed, told_by

        payer = assessed(opened, args.scheme, told_by(args.facts))
    return Pack(
        order=order,
        person=opened.person,
        paper="us-letter" if args.paper == "letter" else "a4",
        units=args.units,
        first=None if first is None else first.setup,
        first_name="" if first is None else first.name,
        surroundings=surroundings,
        payer=payer,
        serial=args.serial or "",
        gtin=args.gtin or "",
        delivered=args.delivered or "",
    )


def _check_client(first: Opened, order: Order) -> None:
    """Refuse the chair of somebody else as the chair as it is."""
    reference = first.person.client.reference
    if reference != order.client_reference:
        must = f"the chair as it is must be that of the order's client, {order.client_reference}"
        remedy = (
            "Name a set-up of this client. A chair that comes from somebody else: write its codes "
            "into a set-up file that names this client."
        )
        where = f"{first.file.where['client']}: client (--from)"
        raise InputError(Problem(where, must, reference, remedy))


def _write(pack: Pack, paths: dict[str, Path], *, replace: bool) -> None:
    """Make every paper, then write them all."""
    from chairwright.cli.papers_table import PAPERS
    from chairwright.files.writing import write_file

    made = {path: PAPERS[name](pack) for name, path in paths.items()}
    for path, content in made.items():
        write_file(path, content, overwrite=replace)
        tell([f"wrote {path}"])


def _print(order: Order, paths: dict[str, Path], args: argparse.Namespace) -> None:
    if args.json:
        data = {
            "client": order.client_reference,
            "number": order.heading.number,
            "revision": order.revision,
            "refused": order.refused,
            "papers": {name: str(path) for name, path in paths.items()},
        }
        print(json.dumps(data, indent=2, ensure_ascii=False))
