"""Where scales found the occupant's centre of mass, against the body model."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import sqrt

from chairwright.mass_points import MassPoints

COVERAGE = 2.0
"""Half widths are two standard uncertainties, about 95 % (common practice)."""

Place = tuple[float, float, float]
"""Ahead, to the left and up in frame axes [mm]."""


@dataclass(frozen=True)
class CentreWeighed:
    """How far the measured centre of mass lies from the model's, and how sure that is.

    Parameters
    ----------
    mass_kg : float [kg]
        Of the occupant, measured.
    shift_mm : tuple of float [mm]
        Measured less modelled, frame axes of the set-up that was weighed: ahead, left, up.
    modelled_at_mm : tuple of float [mm]
        Where the model had it there, same axes.
    covariance : tuple of four tuples of float
        Of the occupant's mass [kg] and the shift [mm], in that order.
    """

    mass_kg: float
    shift_mm: Place
    modelled_at_mm: Place
    covariance: tuple[tuple[float, ...], ...]

    @property
    def half_widths(self) -> tuple[float, float, float, float]:
        """Two standard uncertainties of mass [kg] and of the place ahead, left and up [mm]."""
        mass, ahead, left, up = (COVERAGE * sqrt(self.covariance[at][at]) for at in range(4))
        return mass, ahead, left, up

    def moved(self, points: Sequence[MassPoints]) -> list[MassPoints]:
        """Segments of the body, moved from where the model has them.

        Parameters
        ----------
        points : sequence of MassPoints
            Frame axes, for any set-up.
        """
        ahead, left, up = self.shift_mm
        return [
            replace(
                each, x_mm=each.x_mm + ahead, y_mm=each.y_mm + left, z_mm=each.z_mm + up
            )
            for each in points
        ]  # fmt: skip
