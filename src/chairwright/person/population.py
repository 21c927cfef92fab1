"""The population behind the estimates: means, spreads and correlations of ANSUR II.

The survey measured soldiers, not wheelchair users; whatever rests on it says so.

References
----------
Gordon 2014 (ANSUR II), tables ``population/gordon2014_*``.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import NDArray

from chairwright.person.client import Sex
from chairwright.person.measures import CATALOGUE
from chairwright.tables.load import find_row, load_table

FloatArray = NDArray[np.float64]
SIZE_COLUMNS = ("stature", "weight_kg", "sittingheight")


@dataclass(frozen=True)
class Population:
    """Mean, standard deviation and correlation of the survey measures of one sex.

    Parameters
    ----------
    columns : tuple of str
        ANSUR II names, in the order of the arrays.
    mean, sd : ndarray, shape (n,) [mm; weight_kg in kg]
    correlation : ndarray, shape (n, n)
    """

    columns: tuple[str, ...]
    mean: FloatArray
    sd: FloatArray
    correlation: FloatArray

    @property
    def covariance(self) -> FloatArray:
        """Covariance matrix, shape (n, n)."""
        return self.correlation * np.outer(self.sd, self.sd)

    def rows(self, columns: Sequence[str]) -> NDArray[np.intp]:
        """Return the positions of the named columns in the arrays.

        Parameters
        ----------
        columns : sequence of str

        Returns
        -------
        ndarray of int, shape (len(columns),)
        """
        return np.array([self.columns.index(column) for column in columns], dtype=np.intp)

    def expected(self, column: str, known: Mapping[str, float]) -> tuple[float, float]:
        """Expected value and residual standard deviation of one measure, given others.

        Parameters
        ----------
        column : str
            ANSUR II name.
        known : mapping of str to float [mm or kg]
            Other measures of the same person by ANSUR II name.

        Returns
        -------
        value, spread : float
            Conditional mean and standard deviation of a multivariate normal population.
        """
        others = [name for name in self.columns if name in known and name != column]
        at, given = int(self.rows([column])[0]), self.rows(others)
        cov = self.covariance
        deviation = np.array([known[name] for name in others]) - self.mean[given]
        weights = np.linalg.solve(cov[np.ix_(given, given)], cov[given, at])
        variance = cov[at, at] - cov[given, at] @ weights
        return float(self.mean[at] + weights @ deviation), float(np.sqrt(max(variance, 0.0)))

    def squared_distance(self, known: Mapping[str, float]) -> float:
        """Squared Mahalanobis distance of the known measures from the population's centre.

        Parameters
        ----------
        known : mapping of str to float [mm or kg]
            Measures of one person by ANSUR II name.

        Returns
        -------
        float
            Dimensionless; chi-square with as many degrees of freedom as measures.
        """
        given = self.rows([name for name in self.columns if name in known])
        deviation = np.array([known[self.columns[at]] for at in given]) - self.mean[given]
        covariance = self.covariance[np.ix_(given, given)]
        return float(deviation @ np.linalg.solve(covariance, deviation))


@cache
def population(sex: Sex) -> Population:
    """Return the survey population of one sex.

    Parameters
    ----------
    sex : {"female", "male"}

    Returns
    -------
    Population
        The 22 measures of the correlation table.
    """
    table = load_table("population", f"gordon2014_correlation_{sex}")
    columns = tuple(row["measure"] for row in table)
    summary = [summary_row(sex, column) for column in columns]
    return Population(
        columns=columns,
        mean=np.array([row[0] for row in summary]),
        sd=np.array([row[1] for row in summary]),
        correlation=np.array([[float(row[column]) for column in columns] for row in table]),
    )


@cache
def summary_row(sex: Sex, column: str) -> tuple[float, float]:
    """Return mean and standard deviation of one survey measure.

    Parameters
    ----------
    sex : {"female", "male"}
    column : str
        ANSUR II name.

    Returns
    -------
    mean, sd : float [mm or kg]
    """
    row = find_row("population", f"gordon2014_summary_{sex}", measure=column)
    return float(row["mean"]), float(row["sd"])


@cache
def survey_range(sex: Sex, column: str) -> tuple[float, float]:
    """Return the least and the greatest value that the survey met.

    Parameters
    ----------
    sex : {"female", "male"}
    column : str
        ANSUR II name.

    Returns
    -------
    least, greatest : float [mm or kg]
    """
    row = find_row("population", f"gordon2014_summary_{sex}", measure=column)
    return float(row["min"]), float(row["max"])


def outside_survey(sex: Sex, known: Mapping[str, float]) -> list[str]:
    """Name the size measures that nobody of the survey reaches.

    Parameters
    ----------
    sex : {"female", "male"}
    known : mapping of str to float [mm or kg]
        Measured values by ANSUR II name.

    Returns
    -------
    list of str
        Stature, body mass or sitting height, by ANSUR II name.
    """
    outside = []
    for column in (column for column in SIZE_COLUMNS if column in known):
        least, greatest = survey_range(sex, column)
        if not least <= known[column] <= greatest:
            outside.append(column)
    return outside


@cache
def correlated_measures() -> tuple[str, ...]:
    """Name the catalogue's measures that the correlation table holds.

    Returns
    -------
    tuple of str
        In catalogue order.
    """
    columns = set(population("male").columns)
    return tuple(name for name, kind in CATALOGUE.items() if kind.ansur in columns)
