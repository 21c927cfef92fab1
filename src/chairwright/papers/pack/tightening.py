"""What holds the parts of a step: bolts, tools and torques, as the line file states them."""

from __future__ import annotations

import math
from collections.abc import Collection, Iterator

from chairwright.fitting.described import Described
from chairwright.line.model import Fastener
from chairwright.order.parts import pieces
from chairwright.papers.pack.words import Data

NOT_STATED = "not stated"
NOTHING_STATED = (
    "The line file states no bolts, tools or torques: take them from the maker's manual."
)


def fasteners_of(setup: Described, choices: Collection[str]) -> list[Fastener]:
    """Fasteners that a set-up has for some choices, in the order of the line file.

    Parameters
    ----------
    setup : Described
    choices : collection of str

    Returns
    -------
    list of Fastener
    """
    codes = setup.codes
    found = (each for each in setup.line.fasteners if each.choice in choices)
    return [each for each in found if codes[each.choice] in each.codes]


def tightening(setup: Described, choices: Collection[str]) -> list[Data]:
    """What is tightened in a step, one row for each kind of fastener.

    Parameters
    ----------
    setup : Described
    choices : collection of str

    Returns
    -------
    list of dict
        Pieces are those of the whole chair.
    """
    return [_row(setup, each) for each in fasteners_of(setup, choices)]


def _row(setup: Described, each: Fastener) -> Data:
    parts, side = pieces(each.choice, setup)
    stated = not math.isnan(each.torque_nm)
    return {
        "what": each.what,
        "pieces": str(parts * each.pieces),
        "side": "" if side == "one" else side,
        "tool": each.tool,
        "torque": f"{each.torque_nm:g} Nm" if stated else NOT_STATED,
        "note": each.note,
    }


def torque_words(setup: Described) -> str:
    """Where the torques of a set-up come from."""
    sources = dict.fromkeys(_sources(setup))
    if not sources:
        return NOTHING_STATED
    return (
        f"Bolts, tools and torques: {'; '.join(sources)}. Where a torque is not stated, and for "
        "every part that is not named here, the maker's manual holds."
    )


def _sources(setup: Described) -> Iterator[str]:
    for each in fasteners_of(setup, setup.codes):
        yield each.source
