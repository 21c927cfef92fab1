"""One set-up with everything that is said of it: figures, spreads, verdicts, masses, shape."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from chairwright.chair.buildable import reason_not
from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.chair.shape import Shape
from chairwright.chair.shape_of import shape_of
from chairwright.figures.directions import tip_angles
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.outline import plan_outline
from chairwright.figures.registry import FIGURES
from chairwright.fitting.extras import fitted_extras
from chairwright.line.choices import CHOICES
from chairwright.line.model import FixedPart, Line, Option
from chairwright.mass_points import FloatArray, MassPoints, MovesWith
from chairwright.places.model import Surroundings
from chairwright.targets.target import Target
from chairwright.targets.verdict import Verdict, verdict, verdict_of_ends
from chairwright.tolerance.of_setup import NOT_FOLLOWED, Tolerance, tolerance_of


@dataclass(frozen=True)
class Judged:
    """One target with the figure's value, its spread and the verdict.

    Parameters
    ----------
    target : Target
    value, spread : float
        Of the figure, in its unit.
    verdict : Verdict
    halves : tuple of float, or None
        Half width of the margin to the low and to the high end: figure and end move together
        where a measure makes both. None where the figure's own spread and the target's tolerance
        were added instead.
    """

    target: Target
    value: float
    spread: float
    verdict: Verdict
    halves: tuple[float, float] | None = None


@dataclass(frozen=True)
class PlacedMass:
    """One point mass in floor axes [kg, mm]."""

    name: str
    mass_kg: float
    x_mm: float
    y_mm: float
    z_mm: float
    moves_with: MovesWith


@dataclass(frozen=True)
class Described:
    """One complete, buildable set-up.

    Parameters
    ----------
    line : Line
        With the extras that are fitted among its fixed parts.
    index : dict of str to int
        Option position of every choice.
    figures : dict of str to float
        Every fixed figure of the registry, and those of a place that some target is about; NaN
        where the set-up has none.
    spreads : dict of str to float
        Half width, in the figure's unit, of the figures that can be off.
    judged : tuple of Judged
        In the order of the targets.
    masses : tuple of PlacedMass
        Floor axes; parts without mass are left out.
    shape : Shape
        Floor axes.
    directions_deg, angles_deg : ndarray, shape (72,) [deg]
        Tipping angle, wheels locked, by the direction in which the floor falls away.
    tolerance : Tolerance
        What makes the spreads, with the ends in the order of ``judged``; empty where the spreads
        come from elsewhere.
    """

    line: Line
    index: dict[str, int]
    figures: dict[str, float]
    spreads: dict[str, float]
    judged: tuple[Judged, ...]
    masses: tuple[PlacedMass, ...]
    shape: Shape
    directions_deg: FloatArray
    angles_deg: FloatArray
    tolerance: Tolerance = NOT_FOLLOWED

    @property
    def options(self) -> dict[str, Option]:
        """The chosen option of every choice, in the order of the choices."""
        return {name: self.line.choices[name].options[self.index[name]] for name in CHOICES}

    @property
    def codes(self) -> dict[str, str]:
        """The chosen code of every choice, in the order of the choices."""
        return {name: option.code for name, option in self.options.items()}

    @property
    def made_to_order(self) -> dict[str, Option]:
        """The sizes made to order, by choice."""
        return {
            name: option for name, option in self.options.items() if option.kind == "made to order"
        }

    @property
    def extras(self) -> tuple[FixedPart, ...]:
        """The accessories that are fitted."""
        return fitted_extras(self.line)

    @property
    def broken(self) -> tuple[Judged, ...]:
        """The musts that it misses."""
        return tuple(item for item in self.judged if item.verdict.breaks)


def describe(
    line: Line,
    occupant: Occupant,
    index: Mapping[str, int],
    targets: Sequence[Target],
    surroundings: Surroundings | None = None,
) -> Described:
    """Work out all that is said of one set-up.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : mapping of str to int
        Option position of every choice; the set-up must be buildable.
    targets : sequence of Target
    surroundings : Surroundings or None
        Of the client; without them the sizes of places count as exact.

    Returns
    -------
    Described
    """
    rows, points = realise(line, occupant, one_row(index))
    names = tuple(dict.fromkeys([*FIGURES, *(target.figure for target in targets)]))
    values = figures_of(rows, occupant, names)
    figures = {name: float(each[0]) for name, each in values.items()}
    tolerance = tolerance_of(line, occupant, index, names, targets, surroundings)
    directions, angles = tip_angles(rows)
    return Described(
        line=line,
        index=dict(index),
        figures=figures,
        spreads=tolerance.half_widths,
        judged=judge_with(figures, tolerance, targets),
        masses=placed_masses(rows, points),
        shape=shape_of(rows, occupant, figures, plan_outline(rows)),
        directions_deg=directions,
        angles_deg=angles,
        tolerance=tolerance,
    )


def why_not_buildable(line: Line, occupant: Occupant, index: Mapping[str, int]) -> str:
    """Say in plain words why a set-up cannot be built; empty when it can.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : mapping of str to int
        Option position of every choice.
    """
    return reason_not(realise(line, occupant, one_row(index))[0])


def judge(
    figures: Mapping[str, float], spreads: Mapping[str, float], targets: Sequence[Target]
) -> tuple[Judged, ...]:
    """Judge figures against targets.

    Parameters
    ----------
    figures : mapping of str to float
        Every figure that a target names; NaN where there is none.
    spreads : mapping of str to float
        Half widths; a figure that is absent has none.
    targets : sequence of Target

    Returns
    -------
    tuple of Judged
        One for each target, in their order.
    """

    def one(target: Target) -> Judged:
        value, spread = figures[target.figure], spreads.get(target.figure, 0.0)
        return Judged(target, value, spread, verdict(target, value, spread))

    return tuple(one(target) for target in targets)


def judge_with(
    figures: Mapping[str, float], tolerance: Tolerance, targets: Sequence[Target]
) -> tuple[Judged, ...]:
    """Judge figures against targets, each by what its margin can be off.

    Parameters
    ----------
    figures : mapping of str to float
        Every figure that a target names; NaN where there is none.
    tolerance : Tolerance
        Of the same targets.
    targets : sequence of Target

    Returns
    -------
    tuple of Judged
        One for each target, in their order.
    """
    spreads = tolerance.half_widths

    def one(at: int, target: Target) -> Judged:
        value, halves = figures[target.figure], tolerance.halves(at)
        spread = spreads.get(target.figure, 0.0)
        return Judged(target, value, spread, verdict_of_ends(target, value, halves), halves)

    return tuple(one(at, target) for at, target in enumerate(targets))


def placed_masses(rows: Rows, points: Sequence[MassPoints]) -> tuple[PlacedMass, ...]:
    """Turn the point masses of one set-up from frame axes to floor axes.

    Parameters
    ----------
    rows : Rows, shape (1,)
    points : sequence of MassPoints
        Frame axes, from ``figures.evaluate.realise``.

    Returns
    -------
    tuple of PlacedMass
        Without the points that have no mass.
    """
    found = []
    for point in points:
        mass = _one(point.mass_kg)
        if mass > 0.0:
            x_mm, z_mm = rows.to_floor(point.x_mm, point.z_mm)
            place = _one(x_mm), _one(point.y_mm), _one(z_mm)
            found.append(PlacedMass(point.name, mass, *place, point.moves_with))
    return tuple(found)


def one_row(index: Mapping[str, int]) -> dict[str, np.ndarray[tuple[int, ...], np.dtype[np.intp]]]:
    """Return option positions as arrays of one set-up."""
    return {name: np.array([place], dtype=np.intp) for name, place in index.items()}


def _one(value: FloatArray | float) -> float:
    return float(np.ravel(np.asarray(value, dtype=float))[0])
