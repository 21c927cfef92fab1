"""Somebody to sit in the chair where a check needs a load."""

from __future__ import annotations

from functools import cache

from chairwright.chair.occupant import Occupant, seat
from chairwright.person.client import Client, Measure
from chairwright.person.estimates import complete
from chairwright.units import Dimension, parse_quantity

STATURE, BODY_MASS = "170 cm", "70 kg"
IN_WORDS = f"a person of {STATURE} and {BODY_MASS}"


@cache
def reference_occupant() -> Occupant:
    """A person of middling size who pushes with both hands (a choice of ours, no source)."""
    measures = (_measure("stature", STATURE, "length"), _measure("body_mass", BODY_MASS, "mass"))
    client = Client("reference", "male", measures, "hands")
    return seat(client, complete(client))


def _measure(name: str, typed: str, dimension: Dimension) -> Measure:
    return Measure(name, "middle", parse_quantity(typed, dimension, name), 0.0)
