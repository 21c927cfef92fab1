"""Every running gear of a line that somebody could be given: casters square, seat not too steep."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

import numpy as np

from chairwright.chair.rows import IndexArray, Rows
from chairwright.fitting.empty_chair import NOBODY
from chairwright.line.model import Line
from chairwright.search.geometry import running_gears
from chairwright.search.space import Space
from chairwright.targets.target import Target

SOURCE = "common practice, no source"
STEM_DEG = (-1.0, 1.0)
"""Caster stem off the vertical after it was squared again (common practice, no source)."""
SEAT_DEG = (0.0, 8.0)
"""Seat angle that a chair is usually delivered with (common practice, no source)."""
USABLE = (
    Target("seat_angle_deg", *SEAT_DEG, True, 1.0, SOURCE, "usual seat angle"),
    Target("caster_stem_angle_deg", *STEM_DEG, True, 1.0, SOURCE, "stem square to the floor"),
)
IN_WORDS = (
    f"stem within {STEM_DEG[1]:g} deg of the vertical, seat angle {SEAT_DEG[0]:g} to "
    f"{SEAT_DEG[1]:g} deg"
)


def whole_space(line: Line) -> Space:
    """Every option of a line, nobody in the chair."""
    return Space(
        line, NOBODY, {name: np.arange(len(each.options)) for name, each in line.choices.items()}
    )


def usable_gears(line: Line) -> Rows:
    """Running gears that the rules allow and that somebody could be given.

    Parameters
    ----------
    line : Line

    Returns
    -------
    Rows
        With the columns of the first step; maybe none.
    """
    return joined(line, running_gears(whole_space(line), USABLE))


def stands(line: Line, settled: Mapping[str, IndexArray]) -> bool:
    """Whether any running gear with these option positions stands on its wheels."""
    space = whole_space(line)
    narrowed = Space(line, NOBODY, {**space.allowed, **settled})
    return any(len(rows) for rows in running_gears(narrowed, ()))


def joined(line: Line, blocks: Iterable[Rows]) -> Rows:
    """Several tables of the same columns as one."""
    kept = list(blocks)
    if not kept:
        return Rows(line, {})
    return Rows(
        line,
        {name: np.concatenate([rows.index[name] for rows in kept]) for name in kept[0].index},
        {name: np.concatenate([rows[name] for rows in kept]) for name in kept[0].columns},
    )
