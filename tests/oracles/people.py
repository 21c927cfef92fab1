"""Invented clients for the oracles, drawn from a seeded generator."""

from __future__ import annotations

from typing import Any, get_args

import numpy as np

from chairwright.chair.occupant import Occupant, seat
from chairwright.person.client import (
    Amputation,
    AmputationLevel,
    Carried,
    CarryPlace,
    Client,
    Measure,
    Propulsion,
    Sex,
)
from chairwright.person.estimates import complete
from chairwright.units import parse_quantity

# Mean and standard deviation of stature [mm], ANSUR II (Gordon 2014).
STATURE: dict[Sex, tuple[float, float]] = {"male": (1756.21, 68.55), "female": (1628.47, 64.20)}
SIDES = ("left", "right")
LEVELS: tuple[AmputationLevel, ...] = get_args(AmputationLevel)
LEG_LEVELS = LEVELS[:5]
PLACES: tuple[CarryPlace, ...] = get_args(CarryPlace)
WAYS: tuple[Propulsion, ...] = get_args(Propulsion)


def client(
    sex: Sex = "male", stature: str = "1750 mm", mass: str = "80 kg", **fields: Any
) -> Client:
    """One client of whom stature and mass are known, as typed."""
    measures = (
        Measure("stature", "middle", parse_quantity(stature, "length", "stature"), 10.0),
        Measure("body_mass", "middle", parse_quantity(mass, "mass", "body_mass"), 1.0),
    )
    return Client("T-1", sex, measures, **fields)


def seated(one: Client) -> Occupant:
    """Complete a client's measures and make the load on the chair."""
    return seat(one, complete(one))


def adult(rng: np.random.Generator, **fields: Any) -> Client:
    """Draw an adult of random stature, with a body mass index of 17 to 38 kg/m2."""
    sex: Sex = "male" if rng.random() < 0.5 else "female"
    middle, spread = STATURE[sex]
    stature = float(np.clip(rng.normal(middle, spread), 1400.0, 2000.0))
    mass = rng.uniform(17.0, 38.0) * (stature / 1000.0) ** 2
    return client(sex, f"{stature:.0f} mm", f"{mass:.1f} kg", **fields)


def anybody(rng: np.random.Generator) -> Client:
    """Draw an adult with any way of propelling, losses that agree with it, and loads."""
    way = WAYS[rng.integers(len(WAYS))]
    lost = []
    for side in SIDES:
        for levels, needed in ((LEG_LEVELS, _feet(way)), (LEVELS[5:], _hands(way))):
            if side not in needed and rng.random() < 0.25:
                level = levels[rng.integers(len(levels))]
                lost.append(Amputation(side, level, float(rng.uniform(0.2, 0.8))))  # type: ignore[arg-type]
    loads = tuple(
        Carried(place.replace("_", " "), float(rng.uniform(0.5, 8.0)), place)
        for place in PLACES
        if rng.random() < 0.2
    )
    return adult(rng, propulsion=way, amputations=tuple(lost), carries=loads)


def _feet(way: Propulsion) -> tuple[str, ...]:
    sides = {"feet": SIDES, "hand_and_foot_left": ("left",), "hand_and_foot_right": ("right",)}
    return sides.get(way, ())


def _hands(way: Propulsion) -> tuple[str, ...]:
    sides = {"hands": SIDES, "hand_and_foot_left": ("left",), "hand_and_foot_right": ("right",)}
    return sides.get(way, ())
