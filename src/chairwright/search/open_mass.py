"""What the choices still open can add to the mass and its first moments, in frame axes."""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import IndexArray, Rows
from chairwright.chair.steps import STEPS, Step
from chairwright.figures.band import Band
from chairwright.figures.evaluate import realise
from chairwright.figures.mass import OpenMass
from chairwright.mass_points import FloatArray
from chairwright.search.grid import EndsTable, Known
from chairwright.search.space import Space

SUMS = ("mass", "x", "y", "z")


class OpenMasses:
    """Bounds on what the open choices add.

    Parameters
    ----------
    space : Space
    known : dict or None
        What was worked out before for spaces of the same line and occupant.
    """

    def __init__(self, space: Space, known: Known | None = None) -> None:
        known = {} if known is None else known
        self._about = _point(space, known)
        self._legs = _pushing_legs(space.occupant, self._about)
        self._tables = {
            level: _step_table(space, step, self._about, known)
            for level, step in enumerate(STEPS)
            if level and step.places
        }

    def after(self, rows: Rows, level: int) -> OpenMass | None:
        """Bounds for rows on which some steps are taken; None when nothing is open.

        Parameters
        ----------
        rows : Rows, shape (n,)
        level : int
            Place of the last step taken in ``chair.steps.STEPS``.

        Returns
        -------
        OpenMass or None
        """
        still = [table for step, table in self._tables.items() if step > level]
        legs = self._legs if "foot_supports" not in rows.index else None
        if not still:
            return None
        zero = np.zeros(len(rows))
        mass, x, y, z = (_total(key, still, rows.index, legs, zero) for key in SUMS)
        return OpenMass(mass, x, y, z, self._about)


def _total(
    key: str,
    tables: list[EndsTable],
    index: Mapping[str, IndexArray],
    legs: Mapping[str, tuple[float, float]] | None,
    zero: FloatArray,
) -> Band:
    low, high = zero, zero
    for table in tables:
        least, most = table.ends(key, index)
        low, high = low + least, high + most
    if legs is not None:
        low, high = low + legs[key][0], high + legs[key][1]
    return Band(low, high)


Place = tuple[float, float, float]


def _centre(space: Space) -> Place:
    """Centre of mass of one set-up of the space, or near it [mm]: a point to take moments about.

    Any point serves; the seat corner does where the first options do not go together.
    """
    one = {name: options[:1] for name, options in space.allowed.items()}
    rows, _ = realise(space.line, space.occupant, one)
    x_mm, z_mm = (float(rows[f"frame_mass_{axis}"][0] / rows["frame_mass"][0]) for axis in "xz")
    return (x_mm, 0.0, z_mm) if math.isfinite(x_mm + z_mm) else (0.0, 0.0, 0.0)


def _point(space: Space, known: Known) -> Place:
    """The point that moments are taken about: that of the first space asked about."""
    if CENTRE not in known:
        known[CENTRE] = {axis: np.array(at) for axis, at in zip("xyz", _centre(space), strict=True)}
    x_mm, y_mm, z_mm = (float(known[CENTRE][axis]) for axis in "xyz")
    return x_mm, y_mm, z_mm


CENTRE = "centre of mass of one set-up"


def _step_table(space: Space, step: Step, about: Place, known: Known) -> EndsTable:
    table = EndsTable(space, step.places)
    what = "open mass", step.choices
    table.tabulate_all(space, what, lambda rows: _sums(rows, step, space.occupant, about), known)
    return table


def _sums(rows: Rows, step: Step, occupant: Occupant, about: Place) -> dict[str, FloatArray]:
    """Mass and first moments of what the step adds, shape (n,) each."""
    sums = dict.fromkeys(SUMS, np.zeros(len(rows)))
    for point in [] if step.on_floor else step.follow(rows, occupant):
        places = (point.x_mm, point.y_mm, point.z_mm)
        arms = (1.0, *(place - origin for place, origin in zip(places, about, strict=True)))
        for key, arm in zip(SUMS, arms, strict=True):
            sums[key] = sums[key] + point.mass_kg * arm
    return sums


def _pushing_legs(occupant: Occupant, about: Place) -> dict[str, tuple[float, float]] | None:
    """Ends for legs whose place depends on the floor, before they are placed.

    Wide but safe: the legs reach forward and down from the seat, and a little back and up.
    """
    if not occupant.feet_that_push:
        return None
    body = occupant.body
    legs = [
        segment
        for segment in body.segments
        if segment.side in occupant.feet_that_push and segment.link in ("thigh", "shank", "foot")
    ]
    mass = sum(segment.mass_kg for segment in legs)
    across = sum(
        segment.mass_kg * (body.half_hip_mm if segment.side == "left" else -body.half_hip_mm)
        for segment in legs
    )
    ahead, below = mass * FARTHEST_LEG_MM, mass * FARTHEST_LEG_MM
    moved = (0.0, 0.0, 0.0) if occupant.weighed is None else occupant.weighed.shift_mm
    x_mm, z_mm = about[0] - moved[0], about[2] - moved[2]
    across += mass * moved[1]
    return {
        "mass": (mass, mass),
        "x": (-0.1 * ahead - mass * x_mm, ahead - mass * x_mm),
        "y": (across, across),
        "z": (-below - mass * z_mm, 0.3 * below - mass * z_mm),
    }


FARTHEST_LEG_MM = 1200.0
"""No leg's mass lies farther from the seat corner (longer than any thigh and shank)."""
