"""A remark on a measure: what is doubtful and what to do about it."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from chairwright.person.client import Client, Measure, Side
from chairwright.person.measures import CATALOGUE

RemarkKind = Literal["limits", "lost", "sides", "pair", "population", "size"]


@dataclass(frozen=True)
class Remark:
    """One thing to look at again.

    Parameters
    ----------
    kind : {"limits", "lost", "sides", "pair", "population", "size"}
    name : str
        The measure in doubt, a catalogue name; empty when none stands out.
    side : {"left", "right", "middle"}
    text : str
        What was typed, what the others suggest, and what to do.
    where : str
        ``file:line`` of the value.
    """

    kind: RemarkKind
    name: str
    side: Side
    text: str
    where: str = ""


def measure_of(client: Client, column: str) -> Measure:
    """Return the first measured value of one survey column.

    Parameters
    ----------
    client : Client
    column : str
        ANSUR II name of a value that the client has.

    Returns
    -------
    Measure
    """
    return next(m for m in client.measures if CATALOGUE[m.name].ansur == column)
