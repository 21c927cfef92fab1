"""Invented clients for the tests of the person room."""

from __future__ import annotations

from typing import Any

from chairwright.person.client import Client, Measure, Sex
from chairwright.person.measures import CATALOGUE
from chairwright.units import parse_quantity

AVERAGE: dict[str, str | tuple[str | None, str | None]] = {
    "stature": "175 cm",
    "body_mass": "80 kg",
    "sitting_height": "91 cm",
    "hip_width": "37 cm",
    "elbow_height": "24 cm",
    "buttock_thigh_depth": ("50 cm", "50 cm"),
    "knee_height": ("58 cm", "58 cm"),
    "lower_leg_length": ("455 mm", "455 mm"),
    "upper_arm_length": ("36 cm", "36 cm"),
}
SIDES = ("left", "right")


def client(sex: Sex = "male", *, only: tuple[str, ...] = (), **changes: Any) -> Client:
    """Make a client from typed texts; a pair is left and right, None leaves a value out.

    ``only`` keeps just these of the average man's measures; ``amputations`` and other client
    fields pass through.
    """
    fields = {key: changes.pop(key) for key in list(changes) if key not in CATALOGUE}
    typed = {k: v for k, v in AVERAGE.items() if not only or k in only} | changes
    measures = [m for name, text in typed.items() for m in _measures(name, text)]
    return Client("T-1", sex, tuple(measures), **fields)


def _measures(name: str, text: str | tuple[str | None, str | None] | None) -> list[Measure]:
    kind = CATALOGUE[name]
    if isinstance(text, tuple):
        return [
            Measure(name, side, parse_quantity(t, kind.dimension, name), kind.tolerance)  # type: ignore[arg-type]
            for side, t in zip(SIDES, text, strict=True)
            if t is not None
        ]
    if text is None:
        return []
    return [Measure(name, "middle", parse_quantity(text, kind.dimension, name), kind.tolerance)]
