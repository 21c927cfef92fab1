"""The client's places as facts, each beside the figures that it asks about, and their sentences.

Only what can be set side by side as measured: whether a code is met, or a corner is passed, is for
the places' own report.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from typing import Any, Literal

from chairwright.order.justification import Evidence, Fact, Sentence
from chairwright.order.justification_words import Units, length_of, quoted
from chairwright.places.model import Place, Slope, Surroundings

PLACES = "places file"


@dataclass(frozen=True)
class Beside:
    """What of a kind of place is said beside which figures of the chair.

    Parameters
    ----------
    says : str
        What was measured, in braces.
    measured : callable
        From the place to its lengths [mm], or to its slope; the first stand beside the figures.
    has : str
        What the chair has; the figures go into the braces.
    figures : tuple of str
    asks : {"less", "more", "neither"}
        What the figures must be for the chair to manage the place.
    miss : str
        Said when a figure is not so.
    """

    says: str
    measured: Callable[[Any], tuple[float | Slope, ...]]
    has: str
    figures: tuple[str, ...]
    asks: Literal["less", "more", "neither"]
    miss: str = ""


def slope_words(slope: Slope) -> str:
    """Write a slope as it was typed, with its angle: ``1:15 (3.8 degrees)``."""
    angle = f"{slope.degrees:.1f} degrees"
    return f"{slope.typed} ({angle})" if slope.typed and "deg" not in slope.typed else angle


def _width(place: Any) -> tuple[float | Slope, ...]:
    return (place.width_mm,)


_WIDE = "which is wider than that"
_TABLE = Beside(
    "it is free to {} below", lambda place: (place.clear_height_mm,),
    "the top of the knees comes to {}", ("knee_top_mm",), "less", "which is higher than that",
)  # fmt: skip
_SEAT = Beside(
    "it is {} high", lambda place: (place.height_mm,),
    "the front edge of the loaded cushion is {} above the floor", ("cushion_to_floor_front_mm",),
    "neither",
)  # fmt: skip
SAID: dict[str, Beside] = {
    "door": Beside("it leaves {}", lambda place: (place.clear_width_mm,), "the chair is {} wide",
                   ("overall_width_mm",), "less", _WIDE),
    "corridor": Beside("it is {} wide", _width, "the chair is {} wide", ("overall_width_mm",),
                       "less", _WIDE),
    "ramp": Beside(
        "it rises {}", lambda place: (place.slope, place.slope),
        "standing still with its wheels locked, the chair tips back at {} and forward at {}",
        ("tip_rear_locked_deg", "tip_forward_deg"), "more",
        "which is not clear of the slope by what the reckoning may be off",
    ),
    "cross_slope": Beside(
        "it falls {} to one side", lambda place: (place.slope, place.slope),
        "standing still, the chair tips to the left at {} and to the right at {}",
        ("tip_left_deg", "tip_right_deg"), "more",
        "which is not clear of the slope by what the reckoning may be off",
    ),
    "lift": Beside(
        "its door leaves {} and it is {} deep",
        lambda place: (place.door_width_mm, place.depth_mm),
        "the chair is {} wide and, with the feet, {} long",
        ("overall_width_mm", "overall_length_mm"), "less", "which is more than that",
    ),
    **dict.fromkeys(("table", "basin"), _TABLE),
    **dict.fromkeys(("bed", "toilet", "seat", "car_seat"), _SEAT),
}  # fmt: skip


def place_facts(surroundings: Surroundings, units: Units) -> Iterator[Fact]:
    """Facts of the places that stand beside a figure.

    Parameters
    ----------
    surroundings : Surroundings
    units : {"mm", "in"}

    Yields
    ------
    Fact
    """
    for number, place in enumerate(surroundings.places, 1):
        if place.kind in SAID:
            yield _fact(number, place, units)


def _fact(number: int, place: Place, units: Units) -> Fact:
    beside = SAID[place.kind]
    measured = beside.measured(place)
    words = [slope_words(each) if isinstance(each, Slope) else length_of(each, units)
             for each in measured]  # fmt: skip
    return Fact(
        key=f"places.{number}.{place.kind}",
        file=PLACES,
        field=f"places: {place.name}",
        label=place.name,
        words=beside.says.format(*words),
        note="must be managed" if place.must else "a wish",
        reason=place.reason,
        values=tuple(each.degrees if isinstance(each, Slope) else each for each in measured),
    )


def places(evidence: Evidence) -> Iterator[Sentence]:
    """Each place beside what the chair has.

    Parameters
    ----------
    evidence : Evidence

    Yields
    ------
    Sentence
        None for a place whose figures the chair does not all have.
    """
    for place in evidence.under("places."):
        beside = SAID[place.key.rpartition(".")[2]]
        figures = evidence.every(*(f"setup.figures.{name}" for name in beside.figures))
        if figures is not None:
            reason = f" ({quoted(place.reason)})" if place.reason.strip() else ""
            name = f"{place.label[:1].upper()}{place.label[1:]}{reason}"
            has = beside.has.format(*(fact.words for fact in figures))
            miss = f", {beside.miss}" if _misses(beside, place, figures) else ""
            yield Sentence(f"{name}: {place.words}; {has}{miss}.", (place, *figures))


def _misses(beside: Beside, place: Fact, figures: tuple[Fact, ...]) -> bool:
    pairs = [(figure.values, limit) for figure, limit in zip(figures, place.values, strict=True)]
    if beside.asks == "less":
        return any(value + spread > limit for (value, spread), limit in pairs)
    return beside.asks == "more" and any(value - spread < limit for (value, spread), limit in pairs)
