"""Sizes made to order: a range in steps beside the standard sizes."""

from __future__ import annotations

import math

from chairwright.line import schema
from chairwright.line.choices import CHOICES
from chairwright.line.made import Made
from chairwright.line.parts import Steps
from chairwright.line.size_words import size_code, size_words

LETTERS = {"seat_width": "S", "seat_depth": "D", "back_height": "P", "leg_length": "G"}
"""First letter of a made-to-order code, its size behind it; M marks it as made to order."""


def custom_sizes(
    name: str,
    written: schema.CustomSizes | None,
    standard: tuple[Made, ...],
    typed_in: str,
) -> tuple[Made, ...]:
    """The standard options with the made-to-order sizes behind them.

    Parameters
    ----------
    name : str
        The choice.
    written : CustomSizes or None
    standard : tuple of Made
        A size that is among them is not made to order.
    typed_in : {"mm", "in"}

    Returns
    -------
    tuple of Made
    """
    if written is None:
        return standard
    key = CHOICES[name].size
    held = [made.numbers[key] for made in standard]
    places = {each: standard[0].numbers[each] for each in ("x_mm", "z_mm")} if _placed(name) else {}
    sizes = Steps(from_mm=written.from_mm, to_mm=written.to_mm, step_mm=written.step_mm).values
    return (
        *standard,
        *(
            _custom(name, written, size, typed_in, {key: size, **places})
            for size in sizes
            if not any(math.isclose(size, each, abs_tol=0.5) for each in held)
        ),
    )


def _placed(name: str) -> bool:
    return "x_mm" in CHOICES[name].needs


def _custom(
    name: str, written: schema.CustomSizes, size: float, typed_in: str, numbers: dict[str, float]
) -> Made:
    span = written.to_mm - written.from_mm
    share = (size - written.from_mm) / span if span else 0.0
    light, heavy = written.mass_kg
    limit = math.inf if written.load_limit_kg is None else written.load_limit_kg
    words = size_words(size, typed_in) + (" along the hanger" if name == "leg_length" else "")
    return Made(
        f"M{LETTERS[name]}{size_code(size, typed_in)}",
        f"{words}, made to order",
        {
            **numbers,
            "mass_kg": round(light + share * (heavy - light), 4),
            "price": written.surcharge,
            "surcharge": written.surcharge,
            "extra_days": float(written.days),
            "load_limit_kg": limit,
        },
        ("custom_sizes", name),
        kind="made to order",
    )
