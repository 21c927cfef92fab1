"""Invented people for the tests of targets."""

from __future__ import annotations

from typing import Any

from chairwright.person.client import Client, Measure, Side
from chairwright.person.estimates import complete
from chairwright.targets.build import targets_for
from chairwright.targets.target import Target
from chairwright.units import Dimension, parse_quantity

MIDDLE = {
    "stature": "1700 mm",
    "hip_width": "380 mm",
    "axilla_height": "400 mm",
    "scapula_height": "340 mm",
    "shoulder_height": "560 mm",
    "elbow_height": "220 mm",
    "trochanter_width": "350 mm",
}
SIDED = {
    ("buttock_thigh_depth", "left"): "470 mm",
    ("buttock_thigh_depth", "right"): "480 mm",
    ("lower_leg_length", "left"): "440 mm",
    ("lower_leg_length", "right"): "440 mm",
}


def measure(name: str, text: str, side: Side = "middle", tolerance: float = 10.0) -> Measure:
    """Measure from typed text."""
    dimension: Dimension = "mass" if name == "body_mass" else "length"
    return Measure(name, side, parse_quantity(text, dimension, name), tolerance)


def person(
    *,
    without: tuple[tuple[str, str], ...] = (),
    instead: tuple[Measure, ...] = (),
    mass: str = "75 kg",
    **fields: Any,
) -> Client:
    """One client with every measure that the rules use, some left out or replaced."""
    rows = [measure(name, text) for name, text in MIDDLE.items()]
    rows += [measure(name, text, side) for (name, side), text in SIDED.items()]  # type: ignore[arg-type]
    rows.append(measure("body_mass", mass, tolerance=1.0))
    gone = set(without) | {(new.name, new.side) for new in instead}
    kept = [row for row in rows if (row.name, row.side) not in gone]
    return Client("T-1", "male", (*kept, *instead), **fields)


def targets(client: Client) -> list[Target]:
    """Targets with the measures completed."""
    return targets_for(client, complete(client))


def must(client: Client, figure: str) -> Target:
    """The must of a figure."""
    return next(t for t in targets(client) if t.figure == figure and t.must)


def prefer(client: Client, figure: str) -> Target:
    """The preference of a figure."""
    return next(t for t in targets(client) if t.figure == figure and not t.must)


def figures(client: Client) -> set[str]:
    """Names of the figures that have a target."""
    return {target.figure for target in targets(client)}
