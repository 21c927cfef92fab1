"""A quantity of HL7 FHIR with its UCUM unit as a length or a mass of ours."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

from chairwright.errors import InputError, Problem
from chairwright.exchange.fhir_codes import UCUM
from chairwright.exchange.fhir_reading import Found
from chairwright.units import Quantity, parse_quantity

UNITS: dict[Literal["length", "mass"], dict[str, str]] = {
    "length": {"cm": "cm", "m": "m", "mm": "mm", "[in_i]": "in"},
    "mass": {"kg": "kg", "g": "g", "[lb_av]": "lb"},
}
"""UCUM code to our own unit: centimetre, metre, millimetre, international inch; kilogram, gram,
avoirdupois pound."""

LARGEST = Decimal(1_000_000)


def quantity_of(each: Found, dimension: Literal["length", "mass"]) -> Quantity:
    """Read an observation's value.

    Parameters
    ----------
    each : Found
        An Observation.
    dimension : {"length", "mass"}

    Returns
    -------
    Quantity
        In mm or kg, and as a client file writes it.

    Raises
    ------
    InputError
        When it has no value, only a limit, or a unit that is not one of UCUM that is known here.
    """
    where, value = f"{each.where}.valueQuantity", each.data.get("valueQuantity")
    number = value.get("value") if isinstance(value, dict) else None
    if not isinstance(value, dict) or not isinstance(number, Decimal):
        must = "the observation must have a value that is a number"
        raise InputError(Problem(where, must, "none", "Export it again, or measure the client."))
    if value.get("comparator"):
        got = f"only a limit, {value['comparator']!s:.10} {number}"
        raise InputError(Problem(where, "the value must be exact", got, "Measure the client."))
    if abs(number) > LARGEST:
        raise InputError(Problem(where, "the value must be believable", f"{number:.3g}",
                                 "Check it in the other program."))  # fmt: skip
    unit = UNITS[dimension].get(str(value.get("code"))) if value.get("system") == UCUM else None
    if unit is None:
        raise InputError(_unit_problem(where, value, dimension))
    return parse_quantity(f"{number_typed(number)} {unit}", dimension, where)


def _unit_problem(
    where: str, value: dict[str, object], dimension: Literal["length", "mass"]
) -> Problem:
    known = ", ".join(UNITS[dimension])
    got = f"the code {value.get('code')!r} of the system {value.get('system')!r}"[:200]
    must = f"the unit of a {dimension} must be one of UCUM ({UCUM}): {known}"
    return Problem(f"{where}.code", must, got, "Have it exported in one of these units.")


def number_typed(value: Decimal) -> str:
    """A number as a person would type it: no exponent, at most three digits behind the point.

    Examples
    --------
    >>> number_typed(Decimal("1.760")), number_typed(Decimal("72.57477920"))
    ('1.76', '72.575')
    """
    text = f"{round(value, 3):f}"
    return text.rstrip("0").rstrip(".") if "." in text else text
