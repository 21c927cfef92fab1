"""All figures of complete set-ups."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import IndexArray, Rows
from chairwright.chair.steps import STEPS
from chairwright.figures.mass import mass_box
from chairwright.figures.registry import FIGURES
from chairwright.line.model import Line
from chairwright.mass_points import FloatArray, MassPoints


def realise(
    line: Line, occupant: Occupant, index: dict[str, IndexArray]
) -> tuple[Rows, list[MassPoints]]:
    """Complete set-ups with all that follows from their choices.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : dict of str to ndarray of int, shape (n,)
        Option position of every choice.

    Returns
    -------
    tuple of Rows and list of MassPoints
        The points in frame axes, in the order in which the choices bring them.
    """
    rows = Rows(line, dict(index))
    return rows, follow(rows, occupant)


def follow(rows: Rows, occupant: Occupant) -> list[MassPoints]:
    """Add to bare rows all that follows from their choices.

    Parameters
    ----------
    rows : Rows, shape (n,)
        With the option position of every choice and no columns yet; they are filled.
    occupant : Occupant

    Returns
    -------
    list of MassPoints
        In frame axes, in the order in which the choices bring them.
    """
    points: list[MassPoints] = []
    for step in STEPS:
        brought = step.follow(rows, occupant)
        rows.load(brought)
        points.extend(brought)
    return points


def figures_of(
    rows: Rows, occupant: Occupant, names: Iterable[str] | None = None
) -> dict[str, FloatArray]:
    """Figures of complete set-ups.

    Parameters
    ----------
    rows : Rows
        Made by ``realise``, shape (n,).
    occupant : Occupant
    names : iterable of str or None
        Which figures; None for all.

    Returns
    -------
    dict of str to ndarray, shape (n,)
        In the registry's order; NaN where a set-up has no such figure.
    """
    box = mass_box(rows)
    found: dict[str, FloatArray] = {}
    for name in FIGURES if names is None else names:
        figure = FIGURES[name]
        if figure.exact is not None:
            found[name] = figure.exact(rows, occupant)
        elif figure.weighed is not None:
            found[name] = np.broadcast_to(figure.weighed(rows, box).low, len(rows))
    return found
