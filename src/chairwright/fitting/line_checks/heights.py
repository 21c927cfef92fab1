"""Gaps between the seat heights that each rear wheel gives."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.fitting.line_checks.finding import Finding, remark
from chairwright.fitting.line_checks.gears import IN_WORDS
from chairwright.fitting.line_checks.standing import parts_of
from chairwright.line.model import Line
from chairwright.mass_points import FloatArray

WIDEST_GAP_MM = 15.0
"""About what a therapist would still bridge with a cushion (common practice, no source)."""
MOST_TOLD = 4


def height_findings(line: Line, usable: Rows) -> Iterator[Finding]:
    """Seat heights at the back that no running gear gives.

    Parameters
    ----------
    line : Line
    usable : Rows
        From `gears.usable_gears`, at least one row.

    Yields
    ------
    Finding
        One remark for the whole line, or one for each wheel that has gaps of its own.
    """
    heights = usable.to_floor(0.0, 0.0)[1]
    common = gaps(heights)
    if common:
        yield _remark(line, usable, heights, common, "with any rear wheel")
    for part, positions in parts_of(line.choices["rear_wheel"]).items():
        mine = np.isin(usable.index["rear_wheel"], positions)
        own = [gap for gap in gaps(heights[mine]) if not _within(gap, common)]
        if own:
            yield _remark(line, usable.take(mine), heights[mine], own, f"with rear wheel {part}")


def gaps(heights_mm: FloatArray) -> list[tuple[float, float]]:
    """Neighbouring heights that lie too far apart, as (lower, upper) [mm].

    Parameters
    ----------
    heights_mm : ndarray, shape (n,)
    """
    steps = np.unique(heights_mm)
    wide = np.nonzero(np.diff(steps) > WIDEST_GAP_MM)[0]
    return [(float(steps[at]), float(steps[at + 1])) for at in wide]


def _within(gap: tuple[float, float], others: list[tuple[float, float]]) -> bool:
    return any(low <= gap[0] and gap[1] <= high for low, high in others)


def _remark(
    line: Line, rows: Rows, heights: FloatArray, found: list[tuple[float, float]], which: str
) -> Finding:
    lower, upper = (_hole(line, rows, heights, end) for end in found[0])
    told = ", ".join(f"{low:.0f} and {high:.0f}" for low, high in found[:MOST_TOLD])
    rest = len(found) - MOST_TOLD
    more = f", and {rest} more gaps" if rest > 0 else ""
    holes = line.choices["axle_hole"]
    return remark(
        holes.options[upper].where,
        f"seat heights at the back {which} should follow each other within {WIDEST_GAP_MM:g} mm "
        f"({IN_WORDS})",
        f"nothing between {told} mm{more}",
        f"An axle hole between {holes.options[lower].code} and {holes.options[upper].code}, or "
        "another fork or housing hole, would close the first gap.",
    )


def _hole(line: Line, rows: Rows, heights: FloatArray, height: float) -> int:
    """The first axle hole that gives a height."""
    return int(rows.index["axle_hole"][np.nonzero(heights == height)[0]].min())
