"""Which reading is a slip of the tape or the pen, when measures do not close."""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.files.measured import Reading
from chairwright.measured.closures import CLOSURES, Closure, limit
from chairwright.units import parse_quantity

SWAPPED, DOUBLED, DROPPED, UNIT, TEN_CM, MISREAD = range(6)
"""Kinds of slip, the likelier first (common practice, no source)."""

TRADE = {SWAPPED: 0.0, DOUBLED: 0.0, DROPPED: 0.0, UNIT: 0.5, TEN_CM: 1.0, MISREAD: 2.0}
"""What a kind of slip costs beside how well the measures close with it (no source)."""


@dataclass(frozen=True)
class Slip:
    """A slip that would explain a value: what was meant, in base units, and words."""

    kind: int
    meant: float
    words: str


@dataclass(frozen=True)
class Suspect:
    """A reading that does not fit the others.

    Parameters
    ----------
    reading : Reading
    slip : Slip
    cost : float
        Less is likelier.
    """

    reading: Reading
    slip: Slip
    cost: float


@dataclass(frozen=True)
class Doubt:
    """What came out of checking the readings against each other.

    Parameters
    ----------
    open_closures : tuple of Closure
        Those that do not hold; empty when all is well.
    suspects : tuple of Suspect
        One for each reading whose slip would close everything, the likeliest first.
    """

    open_closures: tuple[Closure, ...]
    suspects: tuple[Suspect, ...]

    @property
    def named(self) -> Suspect | None:
        """The reading to take again first."""
        return self.suspects[0] if self.suspects else None


def check(readings: Mapping[str, Reading], more: Mapping[str, tuple[float, float]]) -> Doubt:
    """Check readings against each other, and find the slip when they do not close.

    Parameters
    ----------
    readings : mapping of str to Reading
    more : mapping of str to tuple of float
        Values and half widths that are not of the tape: ``load`` [kg], ``model_ahead`` [mm].

    Returns
    -------
    Doubt
        Nobody is named while every closure holds.
    """
    values = {name: reading.value for name, reading in readings.items()}
    halves = {name: reading.tolerance for name, reading in readings.items()}
    for name, (value, half) in more.items():
        values[name], halves[name] = value, half
    spoken = [each for each in CLOSURES if set(each.uses) <= values.keys()]
    failing = tuple(each for each in spoken if _strain(each, values, halves) > 1.0)
    if not failing:
        return Doubt((), ())
    suspects = []
    for reading in readings.values():
        best = _best(reading, values, halves, spoken, failing)
        if best is not None:
            suspects.append(best)
    suspects.sort(key=lambda each: each.cost)
    return Doubt(failing, tuple(suspects))


def outside_tolerances(load_kg: float, model_mm: float) -> dict[str, tuple[float, float]]:
    """What checks the readings from outside: the client's mass and the posture model.

    Parameters
    ----------
    load_kg : float [kg]
        Of the client with what is carried.
    model_mm : float [mm]
        Centre of mass ahead of the axle by the posture model; NaN leaves it out.

    Returns
    -------
    dict of str to tuple of float
        Value and half width. Clothes, and scales elsewhere: `LOAD_KG` (common practice, no
        source); what the model may be off is in its closure.
    """
    found = {"load": (load_kg, LOAD_KG)}
    return found if math.isnan(model_mm) else {**found, "model_ahead": (model_mm, 0.0)}


LOAD_KG = 3.0


def _strain(closure: Closure, values: Mapping[str, float], halves: Mapping[str, float]) -> float:
    """Left over, in shares of what honest readings can leave."""
    try:
        found = abs(closure.left_over(values)) / limit(closure, values, halves)
    except (ValueError, ZeroDivisionError):
        return math.inf
    return math.inf if math.isnan(found) else found


def _best(
    reading: Reading,
    values: Mapping[str, float],
    halves: Mapping[str, float],
    spoken: list[Closure],
    failing: tuple[Closure, ...],
) -> Suspect | None:
    """The likeliest slip of one reading that closes everything; None when none does."""
    if any(reading.name not in each.uses for each in failing):
        return None
    mine = [each for each in spoken if reading.name in each.uses]
    found = []
    for slip in slips(reading):
        moved = {**values, reading.name: slip.meant}
        strains = [_strain(each, moved, halves) for each in mine]
        if max(strains) <= 1.0:
            cost = TRADE[slip.kind] + sum(strain**2 for strain in strains) / len(strains)
            found.append(Suspect(reading, slip, cost - CONFIRMED * _confirmed(mine)))
    return min(found, key=lambda each: each.cost) if found else None


CONFIRMED = 0.1
"""What each further closure that a slip closes counts for it (no source)."""


def _confirmed(closures: list[Closure]) -> int:
    return sum(len(each.uses) > 1 for each in closures)


def slips(reading: Reading) -> Iterator[Slip]:
    """Every usual slip that could have made a reading, without two of one value.

    Parameters
    ----------
    reading : Reading
    """
    seen: set[float] = set()
    for slip in (*_digits(reading), *_scales(reading)):
        if slip.meant not in seen and slip.meant != reading.value:
            seen.add(slip.meant)
            yield slip


_NUMBER = re.compile(r"(-?)(\d+(?:\.\d+)?)(?=\s*[A-Za-z]*$)")


def _digits(reading: Reading) -> Iterator[Slip]:
    match = _NUMBER.match(reading.quantity.typed)
    if match is None:
        return
    typed, rest = match[2], reading.quantity.typed[match.end() :]

    def slip(kind: int, meant: str, words: str) -> Slip:
        text = f"{words}, {match[1]}{meant} written as {match[0]}"
        quantity = reading.quantity.dimension, reading.where
        return Slip(kind, parse_quantity(f"{match[1]}{meant}{rest}", *quantity).value, text)

    for at in range(len(typed) - 1):
        one, two = typed[at], typed[at + 1]
        if one != two and "." not in (one, two):
            yield slip(SWAPPED, typed[:at] + two + one + typed[at + 2 :], "two digits swapped")
        if one == two:
            yield slip(DOUBLED, typed[:at] + typed[at + 1 :], "a digit written twice")
    for at in range(len(typed) + 1):
        for digit in "0123456789":
            yield slip(DROPPED, typed[:at] + digit + typed[at:], "a digit left out")
    for at, old in enumerate(typed):
        for digit in "0123456789":
            if old not in (".", digit):
                yield slip(MISREAD, typed[:at] + digit + typed[at + 1 :], "a digit misread")


def _scales(reading: Reading) -> Iterator[Slip]:
    value = reading.value
    yield Slip(UNIT, value * 10.0, "a decimal place lost")
    yield Slip(UNIT, value / 10.0, "a decimal place too many")
    kind = CHAIR_MEASURES[reading.name]
    if kind.dimension == "length":
        yield Slip(UNIT, value * 2.54, "inches written as centimetres")
        yield Slip(UNIT, value / 2.54, "centimetres written as inches")
        yield Slip(TEN_CM, value + 100.0, "10 cm too little read off the tape")
        yield Slip(TEN_CM, value - 100.0, "10 cm too much read off the tape")
    if kind.low < 0.0:
        yield Slip(SWAPPED, -value, "the minus sign forgotten or too many")
