"""How far a figure can be off when the occupant's centre of mass was found on scales."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from chairwright.chair.occupant import Occupant, own_points
from chairwright.chair.rows import Rows
from chairwright.chair.weighed import COVERAGE, CentreWeighed
from chairwright.figures.mass import mass_box
from chairwright.figures.registry import FIGURES
from chairwright.figures.yaw import brought
from chairwright.mass_points import FloatArray
from chairwright.person.posture import centre_of_mass

POSTURE_SHARE = 0.2
"""How much of the model's own move of the body, from one set-up to the other, is not relied on:
a half width (common practice, no source)."""

SUMS = ("frame_mass_x", "frame_mass_y", "frame_mass_z")


def weighed_spreads(
    rows: Rows, occupant: Occupant, weighed: CentreWeighed, names: Iterable[str]
) -> dict[str, float]:
    """Half width of figures of the centre of mass: two standard uncertainties.

    Parameters
    ----------
    rows : Rows, shape (1,)
        A complete set-up, from ``figures.evaluate.realise``.
    occupant : Occupant
    weighed : CentreWeighed
        Of the occupant.
    names : iterable of str
        Figures of masses.

    Returns
    -------
    dict of str to float
        In the figure's unit; only figures that move.

    References
    ----------
    First principles (theory: scales): first order, along the axes of the covariance.
    """
    names = tuple(names)
    middle = _middle(rows, occupant)
    variance = dict.fromkeys(names, 0.0)
    for step in axes(weighed, _modelled(middle, weighed)):
        ends = [_figures(_stepped(rows, middle, sign * step), names) for sign in (1.0, -1.0)]
        for name in names:
            variance[name] += ((ends[0][name] - ends[1][name]) / 2.0) ** 2
    half = {name: COVERAGE * float(np.sqrt(value)) for name, value in variance.items()}
    return {name: width for name, width in half.items() if np.isfinite(width) and width > 0.0}


def axes(weighed: CentreWeighed, modelled_at_mm: FloatArray) -> FloatArray:
    """Standard uncertainty along each axis of the covariance, shape (4, 4): mass, then place.

    Parameters
    ----------
    weighed : CentreWeighed
    modelled_at_mm : ndarray, shape (3,) [mm]
        Where the model has the occupant's centre of mass in this set-up, frame axes: the farther
        from where it was weighed, the less sure.
    """
    moved = (modelled_at_mm - np.array(weighed.modelled_at_mm)) * POSTURE_SHARE / COVERAGE
    covariance = np.array(weighed.covariance) + np.diag([0.0, *(moved**2)])
    scale = np.sqrt(np.diag(covariance))
    scale[scale == 0.0] = 1.0
    values, vectors = np.linalg.eigh(covariance / np.outer(scale, scale))
    return np.asarray((vectors * np.sqrt(np.clip(values, 0.0, None)) * scale[:, None]).T)


def _middle(rows: Rows, occupant: Occupant) -> FloatArray:
    """Mass and centre of mass of the occupant as weighed, frame axes, shape (4,)."""
    found = centre_of_mass(own_points(brought(rows, occupant), occupant))
    return np.array([float(np.ravel(np.asarray(value))[0]) for value in found])


def _modelled(middle: FloatArray, weighed: CentreWeighed) -> FloatArray:
    return np.asarray(middle[1:] - np.array(weighed.shift_mm))


def _stepped(rows: Rows, middle: FloatArray, step: FloatArray) -> Rows:
    """The same set-up with the occupant heavier and elsewhere."""
    fresh = Rows(rows.line, rows.index, dict(rows.columns))
    moments = (middle[0] + step[0]) * (middle[1:] + step[1:]) - middle[0] * middle[1:]
    fresh["frame_mass"] = rows["frame_mass"] + step[0]
    fresh["load"] = rows["load"] + step[0]
    for name, moment in zip(SUMS, moments, strict=True):
        fresh[name] = rows[name] + moment
    return fresh


def _figures(rows: Rows, names: Iterable[str]) -> dict[str, float]:
    box = mass_box(rows)
    formulas = {name: FIGURES[name].weighed for name in names}
    return {
        name: float(formula(rows, box).low[0])
        for name, formula in formulas.items()
        if formula is not None
    }
