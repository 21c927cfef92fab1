"""Values of a places file that a client file does not have: slopes and forces."""

from __future__ import annotations

import re
from math import radians, tan

from chairwright.files.fields import Fields
from chairwright.places.model import Slope
from chairwright.units import Dimension
from chairwright.validation import shown

LONGEST = 40
NEWTONS = {"N": 1.0, "kgf": 9.80665, "lbf": 4.4482216152605}
"""kgf: standard gravity; lbf: international pound times standard gravity."""
_NUMBER = r"(\d+(?:\.\d+)?)"
_ONE_IN = re.compile(rf"\s*{_NUMBER}\s*(?::|in)\s*{_NUMBER}\s*")
_PER_CENT = re.compile(rf"\s*{_NUMBER}\s*(?:%|per cent)\s*")
_DEGREES = re.compile(rf"\s*{_NUMBER}\s*deg\s*")
_FORCE = re.compile(rf"\s*{_NUMBER}\s*([A-Za-z]+)\s*")


def read_slope(fields: Fields, key: str, low: float, high: float) -> Slope | None:
    """Read a slope: ``1:12``, ``1 in 12``, ``8 %``, ``8 per cent`` or ``5 deg``.

    Parameters
    ----------
    fields : Fields
    key : str
    low, high : float
        Least and largest rise by run.

    Returns
    -------
    Slope or None
        None after noting a problem.
    """
    value = fields.data.get(key)
    found = _slope(value) if isinstance(value, str) and len(value) <= LONGEST else None
    if found is None:
        must = "a slope must be a ratio, a number with % or a number with deg"
        fields.refuse(key, must, shown(value), "Write it like 1:12, 8 % or 5 deg.")
        return None
    if not low <= found.ratio <= high:
        ends = f"{low:g} to {high:g} (rise by run)"
        got = f"{found.typed}, which is {found.ratio:.4g}"
        fields.refuse(key, f"it must lie from {ends}", got, "Check the number.")
        return None
    return found


def _slope(text: str) -> Slope | None:
    typed = text.strip()
    ratio, percent, degrees = (p.fullmatch(text) for p in (_ONE_IN, _PER_CENT, _DEGREES))
    if ratio is not None:
        run = float(ratio[2])
        return Slope(float(ratio[1]) / run, typed) if run > 0 else None
    if percent is not None:
        return Slope(float(percent[1]) / 100, typed)
    if degrees is not None and float(degrees[1]) < 90:
        return Slope(tan(radians(float(degrees[1]))), typed)
    return None


def read_force(fields: Fields, key: str, low: float, high: float) -> float | None:
    """Read a force with its unit: N, kgf or lbf.

    Parameters
    ----------
    fields : Fields
    key : str
    low, high : float [N]

    Returns
    -------
    float or None [N]
        None after noting a problem.
    """
    value = fields.data.get(key)
    match = _FORCE.fullmatch(value) if isinstance(value, str) and len(value) <= LONGEST else None
    factor = NEWTONS.get(match[2]) if match else None
    if match is None or factor is None:
        must = f"a force must be a number with a unit ({', '.join(NEWTONS)})"
        fields.refuse(key, must, shown(value), "Write it like 70 N or 7 kgf.")
        return None
    found = float(match[1]) * factor
    if low <= found <= high:
        return found
    must = f"it must lie from {low:g} to {high:g} N"
    fields.refuse(key, must, str(value), "Check the number and its unit.")
    return None


def read_length(fields: Fields, key: str, low: float, high: float) -> float | None:
    """Read a length with its unit.

    Parameters
    ----------
    fields : Fields
    key : str
    low, high : float [mm]

    Returns
    -------
    float or None [mm]
        None after noting a problem.
    """
    return _in_range(fields, key, "length", low, high)


def read_mass(fields: Fields, key: str, low: float, high: float) -> float | None:
    """Read a mass with its unit.

    Parameters
    ----------
    fields : Fields
    key : str
    low, high : float [kg]

    Returns
    -------
    float or None [kg]
        None after noting a problem.
    """
    return _in_range(fields, key, "mass", low, high)


def _in_range(
    fields: Fields, key: str, dimension: Dimension, low: float, high: float
) -> float | None:
    quantity = fields.quantity(key, dimension)
    if quantity is None:
        return None
    if low <= quantity.value <= high:
        return quantity.value
    unit = quantity.unit
    got = f"{quantity.typed} ({quantity.value:g} {unit})"
    must = f"it must lie between {low:g} and {high:g} {unit}"
    fields.refuse(key, must, got, "Check the number and its unit.")
    return None
