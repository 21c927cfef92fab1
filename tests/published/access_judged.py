"""Places with everything that a public access code can ask for, and what a code says of them."""

from __future__ import annotations

from typing import Any

from chairwright.places.codes import Ruling, judge
from chairwright.places.kinds import Door, Ramp
from chairwright.places.model import Place, Slope

INCH = 25.4


def ramp(rise: float, run: float, **more: Any) -> Ramp:
    """A ramp with everything that a code can ask for, unless it is said otherwise."""
    usual: dict[str, Any] = {
        "name": "ramp", "building": "public", "cross_slope": Slope(1 / 48), "width_mm": 1600.0,
        "landing_length_mm": 1670.0, "landing_width_mm": 1670.0, "rails": "both",
        "edge_protection": True,
    }  # fmt: skip
    return Ramp(rise_mm=rise, run_mm=run, **usual | more)


def rulings(place: Place, code: str) -> tuple[Ruling, ...]:
    """Every clause of one code on a place; none when the code is silent."""
    judgement = judge(place, code)
    return judgement.rulings if judgement else ()


def word(place: Place, code: str = "ada_2010") -> str:
    """Verdict of one code."""
    judgement = judge(place, code)
    return judgement.word if judgement else "silent"


def failing(place: Place, code: str = "ada_2010") -> list[str]:
    """What fails under one code."""
    return [ruling.item for ruling in rulings(place, code) if ruling.word == "fails"]


def door(**more: Any) -> Door:
    """A door 36 in clear."""
    usual: dict[str, Any] = {"name": "door", "clear_width_mm": 36 * INCH}
    return Door(**usual | more)
