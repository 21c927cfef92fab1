"""Stature and body mass of children by age, and where a child stands among them."""

from __future__ import annotations

from functools import cache
from typing import NamedTuple

import numpy as np

from chairwright.mass_points import FloatArray
from chairwright.person.client import Sex
from chairwright.tables.load import load_table

GROWN_YEARS = 20.0
"""Age at which the table ends: nobody grows in stature after it."""
FIRST_YEARS = 2.0
UNITS = {"stature": 10.0, "body_mass": 1.0}
"""From the table's cm and kg to mm and kg."""
SOURCE = "CDC 2000"
MONTHS = 12.0


class Lms(NamedTuple):
    """Power, median [mm or kg] and coefficient of variation at one age."""

    power: float
    median: float
    spread: float


@cache
def _columns(measure: str, sex: Sex) -> tuple[FloatArray, ...]:
    rows = [
        row
        for row in load_table("population", "cdc2000_growth")
        if row["measure"] == measure and row["sex"] == sex
    ]
    names = ("age_months", "l", "m", "s")
    return tuple(np.array([float(row[name]) for row in rows]) for name in names)


def lms_at(measure: str, sex: Sex, age_years: float) -> Lms:
    """Parameters at an age, straight between the table's rows.

    Parameters
    ----------
    measure : {"stature", "body_mass"}
    sex : {"female", "male"}
    age_years : float [years]
        Held at the table's last row beyond it.

    Returns
    -------
    Lms

    Raises
    ------
    ValueError
        Below the table's first age.

    References
    ----------
    CDC 2000, every sixth month. From the 5th to the 95th percentile the rows left out lie at most
    1.7 mm and 0.05 kg off the straight line between those carried.
    """
    if age_years < FIRST_YEARS:
        message = f"the table starts at {FIRST_YEARS:g} years; got {age_years:g}"
        raise ValueError(message)
    months, *columns = _columns(measure, sex)
    power, median, spread = (
        float(np.interp(age_years * MONTHS, months, column)) for column in columns
    )
    return Lms(power, median * UNITS[measure], spread)


def score(value: float, at: Lms) -> float:
    """Where a value stands: standard deviations from the median.

    Parameters
    ----------
    value : float [mm or kg]
    at : Lms

    References
    ----------
    CDC 2000: ((X / M)^L - 1) / (L S), and its limit ln(X / M) / S for L = 0.
    """
    ratio = value / at.median
    if abs(at.power) < LEAST_POWER:
        return float(np.log(ratio) / at.spread)
    return float((ratio**at.power - 1.0) / (at.power * at.spread))


def value_at(deviations: float, at: Lms) -> float:
    """The value that stands so many standard deviations from the median [mm or kg].

    Parameters
    ----------
    deviations : float
    at : Lms

    References
    ----------
    CDC 2000: M (1 + L S Z)^(1 / L), and its limit M exp(S Z) for L = 0.
    """
    if abs(at.power) < LEAST_POWER:
        return float(at.median * np.exp(at.spread * deviations))
    base = max(1.0 + at.power * at.spread * deviations, LEAST_BASE)
    return float(at.median * base ** (1.0 / at.power))


LEAST_POWER = 1e-9
LEAST_BASE = 1e-6
"""Keeps a value far outside the table's people finite."""
