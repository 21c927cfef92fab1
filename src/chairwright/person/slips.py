"""Usual slips of the tape and the pen, and whether one explains a doubtful value."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from chairwright.person.client import Measure
from chairwright.units import KG_PER_POUND, MM_PER_INCH

NEAR = 2.0
CM_PER_INCH = MM_PER_INCH / 10.0


@dataclass(frozen=True)
class Slip:
    """A slip that would explain a value.

    Parameters
    ----------
    meant : float [mm or kg]
        What the value would be without the slip.
    words : str
        The slip in words.
    """

    meant: float
    words: str


def likely_slip(measure: Measure, expected: float, spread: float) -> Slip | None:
    """Find the usual slip that best explains a doubtful value.

    Parameters
    ----------
    measure : Measure
        The doubtful value, as typed.
    expected, spread : float [mm or kg]
        What the other measures lead one to expect, and its standard deviation.

    Returns
    -------
    Slip or None
        None when no usual slip brings the value within two spreads.
    """
    near = [slip for slip in _slips(measure) if abs(slip.meant - expected) <= NEAR * spread]
    return min(near, key=lambda slip: abs(slip.meant - expected)) if near else None


def _slips(measure: Measure) -> Iterator[Slip]:
    yield from _swapped_digits(measure)
    value = measure.value
    if measure.quantity.dimension == "mass":
        yield Slip(value * KG_PER_POUND, "pounds written as kilograms")
        yield Slip(value / KG_PER_POUND, "kilograms written as pounds")
    else:
        yield Slip(value * CM_PER_INCH, "inches written as centimetres")
        yield Slip(value / CM_PER_INCH, "centimetres written as inches")
        yield Slip(value + 100.0, "10 cm too little read off the tape")
        yield Slip(value - 100.0, "10 cm too much read off the tape")
    yield Slip(value * 10.0, "a decimal place lost")
    yield Slip(value / 10.0, "a decimal place too many")


def _swapped_digits(measure: Measure) -> Iterator[Slip]:
    typed = measure.quantity.typed
    match = re.match(r"\d+(?:\.\d+)?(?=\s*[A-Za-z]*$)", typed)
    if match is None or float(match[0]) == 0.0:
        return
    per_typed_unit = measure.value / float(match[0])
    digits = match[0]
    for at in range(len(digits) - 1):
        first, second = digits[at], digits[at + 1]
        if first != second and "." not in (first, second):
            swapped = digits[:at] + second + first + digits[at + 2 :]
            words = f"two digits swapped, {swapped} typed as {digits}"
            yield Slip(float(swapped) * per_typed_unit, words)
