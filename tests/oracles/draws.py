"""Random complete set-ups of a line that its rules allow and that stand on their wheels."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import buildable
from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import Rows
from chairwright.figures.evaluate import realise
from chairwright.line.model import Line
from chairwright.mass_points import MassPoints

from .rules import allowed_positions, rules_kept

Index = dict[str, NDArray[np.intp]]
Wanted = Callable[[Rows], NDArray[np.bool_]]
AT_ONCE = 4000
MOST_DRAWS = 60
TOO_FEW = "hardly any set-up of this line stands"
LEGS = ("foot_supports", "hanger", "foot_plate", "leg_length")


def random_index(
    line: Line, occupant: Occupant, rng: np.random.Generator, count: int = AT_ONCE
) -> Index:
    """Draw option positions and keep those that the rules allow."""
    allowed = allowed_positions(line, occupant)
    index = {name: rng.choice(options, count) for name, options in allowed.items()}
    _fit_legs_together(line, index, allowed, rng)
    keep = rules_kept(line, index)
    return {name: array[keep] for name, array in index.items()}


def _fit_legs_together(line: Line, index: Index, allowed: Index, rng: np.random.Generator) -> None:
    """Draw foot supports, hanger, footplate and length together: all of them or none."""
    absent = {name: line.choices[name].codes["none"] for name in LEGS}
    bare = index["foot_supports"] == absent["foot_supports"]
    for name in LEGS[1:]:
        fitted = allowed[name][allowed[name] != absent[name]]
        index[name] = np.where(bare, absent[name], rng.choice(fitted, len(bare)))


def random_setups(
    line: Line,
    occupant: Occupant,
    rng: np.random.Generator,
    count: int,
    wanted: Wanted | None = None,
) -> tuple[Rows, list[MassPoints]]:
    """Draw complete set-ups until there are enough that stand and are wanted.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    rng : numpy.random.Generator
    count : int
    wanted : callable or None
        Tells which rows to keep.

    Returns
    -------
    tuple of Rows and list of MassPoints
        Of ``count`` set-ups; places in frame axes.

    Raises
    ------
    LookupError
        When hardly any set-up is to be had.
    """
    kept: list[Index] = []
    while sum(len(index["caster"]) for index in kept) < count:
        if len(kept) == MOST_DRAWS:
            raise LookupError(TOO_FEW)
        index = random_index(line, occupant, rng)
        rows, _ = realise(line, occupant, index)
        fine = buildable(rows)
        if wanted is not None:
            fine &= wanted(rows)
        kept.append({name: array[fine] for name, array in index.items()})
    joined = {name: np.concatenate([i[name] for i in kept])[:count] for name in kept[0]}
    return realise(line, occupant, joined)
