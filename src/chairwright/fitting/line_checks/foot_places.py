"""Where every combination of frame, hanger, footplate and length brings the footplates."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import buildable
from chairwright.chair.occupant import SIDES
from chairwright.chair.rows import IndexArray, Rows
from chairwright.figures.evaluate import realise
from chairwright.fitting.line_checks.reference import reference_occupant
from chairwright.line.choices import NONE
from chairwright.line.model import Choice, Line
from chairwright.search.space import obeyed

FOOT = ("hanger", "foot_plate", "leg_length")
PLATE_COLUMNS = (
    "plate_x",
    "plate_z",
    *(f"sole_plate_{n}" for n in ("length", "thickness", "outer_inset")),
)


@dataclass(frozen=True)
class FootPlace:
    """Footplates on both sides: the chosen options and what follows in frame axes.

    Parameters
    ----------
    options : dict of str to int
        Option position of each of `FOOT`.
    columns : dict of str to float
        `PLATE_COLUMNS` [mm].
    """

    options: dict[str, int]
    columns: dict[str, float]


def foot_places(line: Line, frame: int) -> Iterator[FootPlace]:
    """Every footplate place of one side frame, at the standard hanger lengths.

    Parameters
    ----------
    line : Line
    frame : int
        Option position of the side frame.

    Yields
    ------
    FootPlace
    """
    axes = np.meshgrid(*(_fitted(line.choices[name]) for name in FOOT), indexing="ij")
    index = {name: axis.ravel() for name, axis in zip(FOOT, axes, strict=True)}
    count = len(index["hanger"])
    if not count:
        return
    first = {name: np.zeros(count, dtype=np.intp) for name in line.choices}
    first["side_frame"] += frame
    rows, _ = realise(line, reference_occupant(), {**first, **index})
    for at in range(count):
        yield FootPlace(
            {name: int(index[name][at]) for name in FOOT},
            {name: float(rows[name][at]) for name in PLATE_COLUMNS},
        )


def _fitted(choice: Choice) -> IndexArray:
    kept = [
        at
        for at, option in enumerate(choice.options)
        if option.code != NONE and option.kind != "made to order"
    ]
    return np.array(kept, dtype=np.intp)


def with_foot(rows: Rows, place: FootPlace) -> tuple[Rows, NDArray[np.bool_]]:
    """Running gears with one place of the footplates, and which of them can be built.

    Parameters
    ----------
    rows : Rows, shape (n,)
        With the columns of the first step.
    place : FootPlace

    Returns
    -------
    tuple of Rows and ndarray of bool, shape (n,)
        True where the rules let the two together and the footplates clear the floor.
    """
    line = rows.line
    same = {**place.options, "foot_supports": line.choices["foot_supports"].codes["both"]}
    index = {**rows.index, **{name: np.full(len(rows), at) for name, at in same.items()}}
    rules = [r for r in line.rules if r.choices <= set(index) and not r.choices <= set(rows.index)]
    trial = Rows(line, index, dict(rows.columns))
    for name, value in place.columns.items():
        trial[name] = np.full(len(rows), value)
    for side in SIDES:
        trial[f"plate_{side}"] = np.ones(len(rows))
    return trial, obeyed(line, rules, index) & buildable(trial)
