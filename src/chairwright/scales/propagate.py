"""Uncertainty of results: first order, by complex steps; a Monte Carlo draw checks it."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import sqrt

import numpy as np

from chairwright.chair.weighed import COVERAGE
from chairwright.mass_points import FloatArray
from chairwright.scales.centre import results
from chairwright.scales.model import Readings, Session, readings

STEP = 1e-30

Formula = Callable[[Readings], Readings]


@dataclass(frozen=True)
class Measured:
    """Results with their uncertainty.

    Parameters
    ----------
    values : dict of str to float
        Of `chairwright.scales.centre.results`.
    slopes : dict of str to dict of str to float
        Of every result, by the reading: what one unit more of it does.
    doubt : dict of str to float
        Standard uncertainty of every reading.
    """

    values: dict[str, float]
    slopes: dict[str, dict[str, float]]
    doubt: dict[str, float]

    def covariance(self, *names: str) -> FloatArray:
        """Covariance of some results, shape (n, n)."""
        table = np.array(
            [[self.slopes[name][each] * self.doubt[each] for each in self.doubt] for name in names]
        )
        return np.asarray(table @ table.T)

    def half_width(self, name: str) -> float:
        """Half width of one result: two standard uncertainties."""
        return COVERAGE * sqrt(float(self.covariance(name)[0, 0]))

    def shares(self, name: str) -> dict[str, float]:
        """How much of a result's variance each reading makes, largest first; they sum to 1."""
        parts = {each: (self.slopes[name][each] * u) ** 2 for each, u in self.doubt.items()}
        whole = sum(parts.values()) or 1.0
        return {
            each: part / whole for each, part in sorted(parts.items(), key=lambda pair: -pair[1])
        }


def measured(session: Session) -> Measured:
    """Work out a session's results and their uncertainty.

    Parameters
    ----------
    session : Session

    Returns
    -------
    Measured
    """
    values, doubt = readings(session)
    used = {name: u for name, u in doubt.items() if np.isfinite(values[name])}
    return propagated(results, values, used)


def propagated(formula: Formula, values: Readings, doubt: Mapping[str, float]) -> Measured:
    """First-order propagation through any formula that takes complex numbers.

    Parameters
    ----------
    formula : callable
    values : Readings
    doubt : mapping of str to float
        Standard uncertainty of the readings that have one.

    Returns
    -------
    Measured

    References
    ----------
    First principles: f(v + i e) = f(v) + i e f'(v), exact to the last digit for a small e.
    """
    found = {name: float(value) for name, value in formula(values).items()}
    slopes: dict[str, dict[str, float]] = {name: {} for name in found}
    for reading in doubt:
        stepped = formula({**values, reading: values[reading] + 1j * STEP})
        for name, value in stepped.items():
            slopes[name][reading] = float(np.imag(value)) / STEP
    return Measured(found, slopes, dict(doubt))


def drawn(session: Session, count: int, seed: int) -> Readings:
    """Results for many draws of every reading from its rectangular distribution.

    Parameters
    ----------
    session : Session
    count : int
    seed : int

    Returns
    -------
    dict of str to ndarray, shape (count,)
    """
    rng = np.random.default_rng(seed)
    values, doubt = readings(session)
    return results(
        {
            name: value + doubt[name] * sqrt(3.0) * rng.uniform(-1.0, 1.0, count)
            for name, value in values.items()
        }
    )
