"""Order a set-up: parts, dimensions, prices, delivery, load; refused while a must is not met."""

from __future__ import annotations

import argparse
import json
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from chairwright.cli.ordering import acceptances_of, add_order_arguments, asked_of, order_of
from chairwright.cli.report import BAD_INPUT, OK, tell
from chairwright.errors import InputError, Problem

if TYPE_CHECKING:
    from chairwright.cli.ordering import Asked
    from chairwright.order.order import Order


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright order``."""
    add_order_arguments(parser)
    parser.add_argument(
        "--places", metavar="FILE",
        help="the client's places: the order tells what they say and is never refused for it",
    )  # fmt: skip
    parser.add_argument(
        "--out", metavar="FILE", type=Path, help="write the order file, unless it is refused"
    )
    parser.add_argument("--replace", action="store_true", help="replace FILE when it is there")
    parser.add_argument("--json", action="store_true", help="print one JSON document")
    parser.add_argument(
        "--units", choices=("mm", "in"), default="mm", help="in: add inches to lengths"
    )


def run(args: argparse.Namespace) -> int:
    """Print the order and write its file; exit code 2 when it is refused."""
    said = acceptances_of(args)
    if args.out is not None and args.out.exists() and not args.replace:
        remedy = "Say --replace, or choose another name."
        raise InputError(Problem(str(args.out), "the file must not exist yet", "a file", remedy))
    asked = _with_places(asked_of(args), args.places)
    order = order_of(args, asked, said)
    _show(order, args)
    if args.out is not None and not order.refused:
        _write(order, asked, args)
    elif args.out is not None:
        tell([f"{args.out}: not written, because the order is refused"])
    return BAD_INPUT if order.refused else OK


def _with_places(asked: Asked, path: str | None) -> Asked:
    if path is None:
        return asked
    from chairwright.files.places import read_places

    return replace(asked, surroundings=read_places(path))


def _show(order: Order, args: argparse.Namespace) -> None:
    if args.json:
        from chairwright.cli.report_order_data import order_data

        print(json.dumps(order_data(order), indent=2, allow_nan=False, ensure_ascii=False))
        return
    from chairwright.cli.report_order import order_report

    print(order_report(order, args.units))


def _write(order: Order, asked: Asked, args: argparse.Namespace) -> None:
    from chairwright.files.order import write_order
    from chairwright.order.order import order_file

    file = asked.opened.file
    kept = order_file(order, args.out, file.client_path, asked.setup_path, file.line)
    write_order(kept, overwrite=args.replace)
    tell([f"wrote {args.out}"])
