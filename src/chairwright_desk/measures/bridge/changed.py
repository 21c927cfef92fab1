"""By how much a measure has changed from one set to the next."""

from __future__ import annotations

from typing import Literal, cast

from chairwright.errors import InputError
from chairwright.units import KG_PER_POUND, inches_text, parse_quantity


def change_between(before: str, after: str, dimension: str, units: str) -> str:
    """Say a change with its sign; empty when one of the two is missing or both are alike.

    Parameters
    ----------
    before, after : str
        With their units.
    dimension : {"length", "mass"}
    units : {"mm", "in"}

    Examples
    --------
    >>> change_between("42 cm", "435 mm", "length", "mm")
    '+15 mm'
    """
    if not before or not after:
        return ""
    kind = cast(Literal["length", "mass"], dimension)
    try:
        old, new = (parse_quantity(each, kind, "measure").value for each in (before, after))
    except InputError:
        return ""
    gap = new - old
    if abs(gap) < 0.05:
        return ""
    sign = "+" if gap > 0 else "−"
    if dimension == "mass":
        pounds = units == "in"
        return f"{sign}{abs(gap) / (KG_PER_POUND if pounds else 1):.1f} {'lb' if pounds else 'kg'}"
    return f"{sign}{inches_text(abs(gap))}" if units == "in" else f"{sign}{abs(gap):.0f} mm"
