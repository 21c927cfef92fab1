"""How far a figure can be off because the occupant's centre of mass is an estimate."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import product

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.band import known
from chairwright.figures.mass import MassBox, mass_box
from chairwright.figures.registry import FIGURES
from chairwright.figures.weighed_spread import weighed_spreads

FORE_AFT_MM = 25.0
HEIGHT_MM = 30.0
"""Half widths of the estimate of a seated person's centre of mass (derived: the segment model
beside the seated means of 762 laser-scanned people, UMTRI, read in the abstract only, and of
Santschi 1963, from memory, unverified)."""

NO_SPREAD = ("tip_least_direction_deg",)
"""A direction jumps from edge to edge; a half width would say nothing."""


def spreads_of(
    rows: Rows, occupant: Occupant, names: Iterable[str] | None = None
) -> dict[str, float]:
    """Half width of every figure that depends on where the centre of mass is.

    Parameters
    ----------
    rows : Rows, shape (1,)
        A complete set-up, from ``figures.evaluate.realise``.
    occupant : Occupant
    names : iterable of str or None
        Which figures; None for all that are fixed.

    Returns
    -------
    dict of str to float
        In the figure's unit; only figures that move. Figures of geometry alone are absent.

    References
    ----------
    First principles: the figure at the four corners of the occupant's centre of mass, moved
    fore and aft and up and down at once; the farthest counts. Each formula is monotone along
    both (the least of several angles is concave), so no inner point lies farther. An occupant
    found on scales has the spread that the scales leave instead.
    """
    names = [name for name in (FIGURES if names is None else names) if _moves(name)]
    if occupant.weighed is not None:
        return weighed_spreads(rows, occupant, occupant.weighed, names)
    box = mass_box(rows)
    corners = [_moved(box, rows, occupant, *signs) for signs in product((-1.0, 1.0), repeat=2)]
    found: dict[str, float] = {}
    for name in names:
        formula = FIGURES[name].weighed
        if formula is None:
            continue
        middle = float(formula(rows, box).low[0])
        ends = [float(formula(rows, corner).low[0]) for corner in corners]
        spread = max(abs(end - middle) for end in ends)
        if np.isfinite(spread) and spread > 0.0:
            found[name] = spread
    return found


def _moves(name: str) -> bool:
    return FIGURES[name].weighed is not None and name not in NO_SPREAD


def _moved(box: MassBox, rows: Rows, occupant: Occupant, ahead: float, up: float) -> MassBox:
    """The same masses with the occupant's centre of mass moved."""
    whole = occupant.body.mass_kg / box.mass.low
    tilting = occupant.body.mass_kg / rows["frame_mass"]
    x_mm, z_mm = ahead * FORE_AFT_MM, up * HEIGHT_MM
    return box._replace(
        x=known(box.x.low + whole * x_mm),
        z=known(box.z.low + whole * z_mm),
        tilting_x=known(box.tilting_x.low + tilting * x_mm),
        tilting_z=known(box.tilting_z.low + tilting * z_mm),
    )
