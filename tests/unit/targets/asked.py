"""What one place asks, short enough to be written beside it by hand."""

from __future__ import annotations

from typing import NamedTuple

from chairwright.person.client import Client
from chairwright.places.model import Carer, OwnLimits, Place, Surroundings
from chairwright.targets.from_places import from_places, place_targets
from chairwright.targets.target import Target

from .people import person

MUST = -1.0
"""Stands where a wish has its weight."""


class Asked(NamedTuple):
    """A target without its words; ends to a thousandth."""

    figure: str
    low: float | None
    high: float | None
    weight: float


def short(target: Target) -> Asked:
    """Leave the words of a target out."""
    low, high = (None if end is None else round(end, 3) for end in (target.low, target.high))
    return Asked(target.figure, low, high, MUST if target.must else target.weight)


def around(
    *places: Place, carer: Carer | None = None, own: OwnLimits | None = None
) -> Surroundings:
    """Surroundings of the test's client."""
    return Surroundings("T-1", places, carer=carer, own=own or OwnLimits())


def of(
    place: Place,
    *,
    carer: Carer | None = None,
    own: OwnLimits | None = None,
    client: Client | None = None,
    knees: bool = True,
) -> tuple[Target, ...]:
    """Targets of one place, words included."""
    where = around(place, carer=carer, own=own)
    return place_targets(place, client or person(), where, knees=knees)


def asks(
    place: Place,
    *,
    carer: Carer | None = None,
    own: OwnLimits | None = None,
    client: Client | None = None,
    knees: bool = True,
) -> list[Asked]:
    """What one place asks of a client who pushes with both hands, unless said otherwise."""
    return [short(t) for t in of(place, carer=carer, own=own, client=client, knees=knees)]


def kept(*places: Place, carer: Carer | None = None) -> list[tuple[str, Asked]]:
    """What is left of several places, with the place's name."""
    found = from_places(person(), around(*places, carer=carer))
    return [(target.place, short(target)) for target in found]
