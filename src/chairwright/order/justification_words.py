"""Values, ranges and lists in the plain words of a letter."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import Literal

from chairwright.figures.registry import Figure
from chairwright.units import inches_text

Units = Literal["mm", "in"]

UNIT_WORDS = {"deg": "degrees", "currency": ""}
NO_VALUE = "no value"
LABELS = {
    "tip_rear_locked_deg": "angle at which the chair tips back with its wheels locked",
    "tip_rear_free_deg": "angle at which the chair tips back with its wheels free",
    "tip_forward_deg": "angle at which the chair tips forward, casters trailing",
    "tip_left_deg": "angle at which the chair tips to the left",
    "tip_right_deg": "angle at which the chair tips to the right",
    "cushion_to_floor_front_mm": "height of the loaded cushion's front edge above the floor",
    "leg_support_length_mm": "length from the cushion to the footplate",
    "back_height_mm": "back height above the loaded cushion",
    "arm_height_mm": "arm pad height above the loaded cushion",
    "elbow_angle_deg": "elbow angle with the hand at the top of the rim",
    "footplate_clearance_mm": "clearance from the footplate to the floor",
    "pitch_to_anti_tip_deg": "pitch until the anti-tip device touches",
    "overall_length_mm": "overall length with the feet",
    "chair_mass_kg": "mass of the chair",
    "load_margin_kg": "margin between the rated load and the load",
}
"""Labels of figures that need other words inside a sentence."""


def label_of(figure: Figure) -> str:
    """What a sentence calls a figure."""
    return LABELS.get(figure.name, figure.label[:1].lower() + figure.label[1:])


def number_of(figure: Figure, value: float) -> str:
    """Write a value with the figure's digits, without its unit."""
    text = f"{value:.{figure.digits}f}"
    return text.lstrip("-") if float(text) == 0.0 else text


def value_of(figure: Figure, value: float, units: Units = "mm") -> str:
    """Write a value with its unit: ``400 mm (15 3/4 in)``, ``13.2 degrees``.

    Parameters
    ----------
    figure : Figure
    value : float
        In the figure's unit; NaN when there is none.
    units : {"mm", "in"}
        ``in`` adds inches to a length.

    Returns
    -------
    str
    """
    if math.isnan(value):
        return NO_VALUE
    return _with_unit(number_of(figure, value), figure, units, value)


def range_of(figure: Figure, low: float | None, high: float | None, units: Units = "mm") -> str:
    """Write a range: ``381 to 432 mm``, ``at least 9.0 degrees``, ``at most 648 mm``.

    Parameters
    ----------
    figure : Figure
    low, high : float or None
        In the figure's unit; None leaves that end open.
    units : {"mm", "in"}

    Returns
    -------
    str
    """
    if low is None or high is None:
        word, end = ("at most", high) if low is None else ("at least", low)
        return f"{word} {value_of(figure, math.nan if end is None else end, units)}"
    if number_of(figure, low) == number_of(figure, high):
        return value_of(figure, low, units)
    both = f"{number_of(figure, low)} to {number_of(figure, high)}"
    return _with_unit(both, figure, units, low, high)


def _with_unit(text: str, figure: Figure, units: Units, *values: float) -> str:
    unit = UNIT_WORDS.get(figure.unit, figure.unit)
    inches = " to ".join(inches_text(value).removesuffix(" in") for value in values)
    added = f" ({inches} in)" if units == "in" and figure.unit == "mm" else ""
    return f"{text} {unit}".rstrip() + added


def length_of(length_mm: float, units: Units = "mm") -> str:
    """Write a length of a body or a place: ``381 mm``, with inches ``381 mm (15 in)``."""
    text = f"{length_mm:.0f} mm"
    return f"{text} ({inches_text(length_mm)})" if units == "in" else text


def mass_of(mass_kg: float) -> str:
    """Write a mass: ``78.0 kg``."""
    return f"{mass_kg:.1f} kg"


def joined(parts: Sequence[str]) -> str:
    """Join clauses: ``a``, ``a and b``, ``a, b and c``."""
    *first, last = parts
    return f"{', '.join(first)} and {last}" if first else last


def quoted(text: str) -> str:
    """Quote what is written on file, on one line, without a full stop at its end."""
    return f"“{' '.join(text.split()).rstrip('.')}”"
