"""The measured occupant in another set-up: figures, and how far they can be off."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.weighed import COVERAGE, CentreWeighed
from chairwright.figures.evaluate import figures_of
from chairwright.figures.registry import FIGURES
from chairwright.figures.spread import NO_SPREAD
from chairwright.figures.weighed_spread import axes
from chairwright.mass_points import FloatArray, MassPoints
from chairwright.scales.from_setup import estimate, of_body
from chairwright.scales.propagate import Measured


@dataclass(frozen=True)
class OccupantShift:
    """A measured occupant against the estimate: what to add to the body's points.

    Parameters
    ----------
    mass_kg : float [kg]
        Measured.
    ahead_mm, left_mm, up_mm : float [mm]
        Measured centre of mass less the estimated one, frame axes of the set-up weighed.
    estimated_at_mm : tuple of float [mm]
        The estimate there, frame axes: the model's posture in the set-up weighed.
    covariance : ndarray, shape (4, 4)
        Of mass and shift.
    """

    mass_kg: float
    ahead_mm: float
    left_mm: float
    up_mm: float
    estimated_at_mm: tuple[float, float, float]
    covariance: FloatArray

    @property
    def centre(self) -> CentreWeighed:
        """The same as an occupant holds it."""
        shift = self.ahead_mm, self.left_mm, self.up_mm
        rows = tuple(tuple(float(each) for each in row) for row in self.covariance)
        return CentreWeighed(self.mass_kg, shift, self.estimated_at_mm, rows)


@dataclass(frozen=True)
class CarriedOver:
    """Figures of a set-up with the measured occupant.

    Parameters
    ----------
    figures : dict of str to float
        Every figure of masses, and the load margin; NaN where the set-up has none.
    half_widths : dict of str to float
        Two standard uncertainties of those that the occupant moves.
    """

    figures: dict[str, float]
    half_widths: dict[str, float]


FIGURES_CARRIED = (
    *(name for name, figure in FIGURES.items() if figure.weighed is not None),
    "load_margin_kg",
)


def occupant_shift(
    found: Measured, points: Sequence[MassPoints], occupant: Occupant
) -> OccupantShift | None:
    """Compare the measured occupant with the estimate in the set-up weighed.

    Parameters
    ----------
    found : Measured
        Of a session with its set-up.
    points : sequence of MassPoints
        Of that set-up, frame axes.
    occupant : Occupant
        As estimated.

    Returns
    -------
    OccupantShift or None
        None without a weighing with the casters raised: the height is not known then. Without
        four pads the shift to the left is zero.
    """
    if "occupant_frame_z_mm" not in found.values:
        return None
    _, place = estimate(points, occupant)
    sideways = "occupant_y_mm" in found.values
    names = ["occupant_mass_kg", "occupant_frame_x_mm", "occupant_frame_z_mm"]
    names += ["occupant_y_mm"] if sideways else []
    covariance = np.zeros((4, 4))
    order = np.array([0, 1, 3, 2][: len(names)])
    covariance[np.ix_(order, order)] = found.covariance(*names)
    return OccupantShift(
        mass_kg=found.values["occupant_mass_kg"],
        ahead_mm=found.values["occupant_frame_x_mm"] - place[0],
        left_mm=found.values["occupant_y_mm"] - place[1] if sideways else 0.0,
        up_mm=found.values["occupant_frame_z_mm"] - place[2],
        estimated_at_mm=place,
        covariance=covariance,
    )


def corrected_points(
    points: Sequence[MassPoints], occupant: Occupant, shift: OccupantShift
) -> list[MassPoints]:
    """The points of a set-up with the body's moved and scaled to what was measured.

    Parameters
    ----------
    points : sequence of MassPoints
        Frame axes.
    occupant : Occupant
        As estimated.
    shift : OccupantShift
    """
    ratio = shift.mass_kg / occupant.body.mass_kg

    def moved(point: MassPoints) -> MassPoints:
        return replace(
            point,
            mass_kg=point.mass_kg * ratio,
            x_mm=point.x_mm + shift.ahead_mm,
            y_mm=point.y_mm + shift.left_mm,
            z_mm=point.z_mm + shift.up_mm,
        )

    return [moved(point) if of_body(point, occupant) else point for point in points]


def corrected_occupant(occupant: Occupant, mass_kg: float) -> Occupant:
    """The occupant with every segment scaled to the measured mass."""
    ratio = mass_kg / occupant.body.mass_kg
    segments = tuple(replace(each, mass_kg=each.mass_kg * ratio) for each in occupant.body.segments)
    body = replace(occupant.body, mass_kg=mass_kg, segments=segments)
    return replace(occupant, body=body, kept={})


def weighed_occupant(occupant: Occupant, shift: OccupantShift) -> Occupant:
    """The occupant as weighed, for every set-up: its points of mass are where the scales say.

    Parameters
    ----------
    occupant : Occupant
        As estimated.
    shift : OccupantShift
    """
    return replace(corrected_occupant(occupant, shift.mass_kg), weighed=shift.centre)


def corrected_rows(
    rows: Rows, points: Sequence[MassPoints], occupant: Occupant, shift: OccupantShift
) -> Rows:
    """Sums of masses of one set-up with the measured occupant.

    Parameters
    ----------
    rows : Rows
        From ``figures.evaluate.realise``, with the estimate.
    points : sequence of MassPoints
    occupant : Occupant
        As estimated.
    shift : OccupantShift
    """
    fresh = Rows(rows.line, dict(rows.index), dict(rows.columns))
    for name in ("frame_mass", "frame_mass_x", "frame_mass_y", "frame_mass_z", "wheel_mass"):
        fresh.columns.pop(name)
    fresh.load(corrected_points(points, occupant, shift))
    fresh["load"] = rows["load"] + shift.mass_kg - occupant.body.mass_kg
    return fresh


def carried_over(
    rows: Rows, points: Sequence[MassPoints], occupant: Occupant, shift: OccupantShift
) -> CarriedOver:
    """Figures of a set-up with the measured occupant instead of the estimate.

    Parameters
    ----------
    rows : Rows, shape (1,)
        The other set-up, or the one weighed.
    points : sequence of MassPoints
        Of it, frame axes.
    occupant : Occupant
        As estimated.
    shift : OccupantShift

    Returns
    -------
    CarriedOver

    References
    ----------
    First principles (theory: scales): the body model says how the body moves from one set-up to
    the other, the scales how far it is off. First order, along the axes of the covariance.
    """
    figures = _figures(rows, points, occupant, shift)
    variance = dict.fromkeys(figures, 0.0)
    for step in axes(shift.centre, np.array(estimate(points, occupant)[1])):
        ends = [_figures(rows, points, occupant, _stepped(shift, sign * step)) for sign in (1, -1)]
        for name in figures:
            variance[name] += ((ends[0][name] - ends[1][name]) / 2.0) ** 2
    half = {name: COVERAGE * float(np.sqrt(value)) for name, value in variance.items()}
    return CarriedOver(
        figures,
        {n: w for n, w in half.items() if n not in NO_SPREAD and np.isfinite(w) and w > 0.0},
    )


def _figures(
    rows: Rows, points: Sequence[MassPoints], occupant: Occupant, shift: OccupantShift
) -> dict[str, float]:
    fresh = corrected_rows(rows, points, occupant, shift)
    who = corrected_occupant(occupant, shift.mass_kg)
    return {
        name: float(value[0]) for name, value in figures_of(fresh, who, FIGURES_CARRIED).items()
    }


def _stepped(shift: OccupantShift, step: FloatArray) -> OccupantShift:
    return replace(
        shift,
        mass_kg=shift.mass_kg + float(step[0]),
        ahead_mm=shift.ahead_mm + float(step[1]),
        left_mm=shift.left_mm + float(step[2]),
        up_mm=shift.up_mm + float(step[3]),
    )
