"""What a family of figures is: figures that differ in the place alone."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass

from chairwright.figures.figure import ExactFormula, MassFormula

NUMBER = r"\d{1,4}(?:\.\d{1,6})?"


def number(typed: str) -> float | None:
    """Read a plain decimal without sign; None when it is none."""
    return float(typed) if re.fullmatch(NUMBER, typed) else None


@dataclass(frozen=True)
class Family:
    """Figures that differ in the place alone.

    Parameters
    ----------
    name : str
        Unit as suffix; what stands before the ``@``.
    unit, digits, scale, group, source
        As of a `Figure`.
    grammar : str
        What stands behind the ``@``, in words.
    make : callable
        From the parameters as typed to label and formula; None when they are not of this family.
    """

    name: str
    unit: str
    digits: int
    scale: float
    group: str
    source: str
    grammar: str
    make: Callable[[str], Made | None]


@dataclass(frozen=True)
class Made:
    """What the parameters of a family decide; ``after`` is empty for the family's usual choice."""

    label: str
    weighed: MassFormula | None = None
    exact: ExactFormula | None = None
    touches: tuple[str, ...] | None = None
    after: str = ""
