"""The client's own slopes and steps, in the client's words, with what the figures say of them."""

from __future__ import annotations

import math
from collections.abc import Iterator

from chairwright.fitting.described import Described
from chairwright.order.handover import OwnPlace
from chairwright.places.kinds import CrossSlope, Kerb, Ramp, Threshold
from chairwright.places.model import Place, Slope, Surroundings

STILL = "That is for sitting still: leaning, a bag on the back or a hard push tip it sooner."
NEVER = "That is too near: never go there without a helper beside you."


def own_places(setup: Described, surroundings: Surroundings | None) -> tuple[OwnPlace, ...]:
    """Every ramp, cross slope, kerb and threshold of a client.

    Parameters
    ----------
    setup : Described
    surroundings : Surroundings or None

    Returns
    -------
    tuple of OwnPlace
        In the order of the places file.
    """
    places = () if surroundings is None else surroundings.places
    return tuple(found for place in places if (found := _own(setup, place)) is not None)


def _own(setup: Described, place: Place) -> OwnPlace | None:
    if isinstance(place, Ramp):
        return OwnPlace(place.name, _slope(place.slope), tuple(_ramp(setup, place)))
    if isinstance(place, CrossSlope):
        words = tuple(_across(setup, place))
        return OwnPlace(place.name, f"{_slope(place.slope)}, to one side", words)
    if isinstance(place, Threshold):
        words = ("Go straight at it, slowly, the first times with a helper behind you.",)
        return OwnPlace(place.name, f"{_height(place, place.height_mm)} high", words)
    if isinstance(place, Kerb):
        words = tuple(_kerb(setup, place.height_mm))
        return OwnPlace(place.name, f"{_height(place, place.height_mm)} high", words)
    return None


def _slope(slope: Slope) -> str:
    angle = f"{slope.degrees:.1f} degrees"
    return f"{slope.typed}, {angle}" if slope.typed and "deg" not in slope.typed else angle


def _height(place: Place, height_mm: float) -> str:
    return place.typed.get("height_mm") or f"{height_mm:.0f} mm"


def _ramp(setup: Described, ramp: Ramp) -> Iterator[str]:
    back = "Facing up with its wheels held, it starts to tip backwards"
    yield _margin(setup, "tip_rear_locked_deg", back, ramp.slope_deg)
    yield _margin(
        setup, "tip_forward_deg", "Facing down, it starts to tip forwards", ramp.slope_deg
    )
    yield STILL


def _across(setup: Described, place: CrossSlope) -> Iterator[str]:
    name = min("tip_left_deg", "tip_right_deg", key=lambda each: setup.figures[each])
    yield _margin(setup, name, "Sideways, it starts to tip", place.slope.degrees)
    yield STILL
    yield "The chair turns downhill by itself."


def _margin(setup: Described, name: str, begin: str, slope_deg: float) -> str:
    """What is left of a tipping angle on a slope, in the worst case of the reckoning."""
    value, spread = round(setup.figures[name], 1), round(setup.spreads.get(name, 0.0), 1)
    worst, slope = value - spread, round(slope_deg, 1)
    angles = f"at about {value:.1f} degrees, at worst at {worst:.1f}"
    told = f"{begin} {angles}; this slope has {slope:.1f}."
    return told if worst > slope else f"{told} {NEVER}"


def _kerb(setup: Described, height_mm: float) -> Iterator[str]:
    wheelbase = setup.figures["wheelbase_mm"]
    if height_mm >= wheelbase:
        yield "The casters cannot be lifted so high: this chair does not climb it."
        return
    pitch = math.degrees(math.asin(height_mm / wheelbase))
    yield f"To get the casters up, the chair must tip back by about {pitch:.1f} degrees."
    if pitch >= setup.figures["tip_rear_free_deg"]:
        yield "That is as far as it goes before it falls over: never alone."
    touch = setup.figures["pitch_to_anti_tip_deg"]
    if math.isnan(touch):
        yield "No anti-tip wheels stop it from going right over: only with a helper behind you."
    elif touch < pitch:
        yield (
            f"The anti-tip wheels touch the ground before that, at {touch:.1f} degrees, and are in "
            "the way. Only with a helper behind you, who turns them up first and down again after."
        )
    else:
        yield (
            f"The anti-tip wheels touch at {touch:.1f} degrees. Only with a helper behind you "
            "until you have been trained on it."
        )
