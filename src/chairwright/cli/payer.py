"""Show which class and codes a payer's criteria give a set-up, and which facts they still ask for.

Never a promise of payment: the payer decides.
"""

from __future__ import annotations

import argparse
import json
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from chairwright.cli.opened import Opened
    from chairwright.order.payer_result import Assessment


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the arguments of ``chairwright payer``."""
    parser.add_argument("setup", metavar="SETUP", help="set-up file (YAML)")
    parser.add_argument(
        "--scheme",
        metavar="NAME|FILE",
        default="us-hcpcs",
        help="us-hcpcs, demo, or the path of a scheme file (default: us-hcpcs)",
    )
    parser.add_argument(
        "--fact",
        metavar="NAME=VALUE",
        dest="facts",
        nargs="+",
        action="extend",
        default=[],
        help="facts that the files do not hold, such as hours_a_day=6 severe_spasticity=no; "
        "the answer names those that are missing",
    )
    parser.add_argument("--json", action="store_true", help="print one JSON document")


def run(args: argparse.Namespace) -> int:
    """Judge a set-up by a payer's scheme and print what came out."""
    from chairwright.cli.opened import open_setup

    told = told_by(args.facts)
    opened = open_setup(args.setup)
    found = assessed(opened, args.scheme, told)
    reference, line = opened.person.client.reference, opened.setup.line
    if args.json:
        from chairwright.cli.report_payer_data import payer_data

        data = payer_data(found, reference, line.name)
        print(json.dumps(data, indent=2, allow_nan=False, ensure_ascii=False))
    else:
        from chairwright.cli.report_payer import payer_text

        print(payer_text(found, reference, line))
    return 0


def assessed(opened: Opened, scheme_name: str, told: Mapping[str, str]) -> Assessment:
    """What a scheme says of an opened set-up.

    Parameters
    ----------
    opened : Opened
    scheme_name : str
        Name of a shipped scheme, or the path of a scheme file.
    told : mapping of str to str
        Facts that are declared, as typed.

    Returns
    -------
    Assessment

    Raises
    ------
    InputError
        When the scheme cannot be read, or does not know a declared fact.
    """
    from chairwright.order.payer import assess
    from chairwright.order.payer_facts import facts_of
    from chairwright.order.payer_lines import feet_fitted, order_lines
    from chairwright.order.payer_load import load_scheme

    scheme = load_scheme(scheme_name)
    person, setup = opened.person, opened.setup
    facts = facts_of(scheme, setup, person.client, person.measures, told)
    return assess(scheme, facts, order_lines(scheme, setup), feet_fitted(setup))


def told_by(words: Sequence[str]) -> dict[str, str]:
    """Read facts as they are typed: ``name=value``.

    Parameters
    ----------
    words : sequence of str

    Returns
    -------
    dict of str to str

    Raises
    ------
    InputError
        For what is not of that form, and for a fact that stands twice with different values.
    """
    from chairwright.errors import InputError, Problem

    told: dict[str, str] = {}
    problems = []
    for word in words:
        name, sign, value = word.partition("=")
        name = name.strip()
        if not (sign and name and value.strip()):
            must = "a fact must be written name=value"
            remedy = "Write it like hours_a_day=6; quote it when there is a blank inside."
            problems.append(Problem("--fact", must, repr(word), remedy))
        elif told.setdefault(name, value) != value:
            must = f"{name} must have one value"
            got = f"{told[name]!r} and {value!r}"
            problems.append(Problem("--fact", must, got, "Keep one of the two."))
    if problems:
        raise InputError(*problems)
    return told
