"""Anti-tip holes that are of no use: in the floor, or out of reach until the chair has tipped."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.chair.steps import anti_tip_devices
from chairwright.figures.anti_tip import contact_pitch
from chairwright.figures.balance import rear_free
from chairwright.figures.evaluate import realise
from chairwright.figures.mass import mass_box
from chairwright.fitting.empty_chair import NOBODY
from chairwright.fitting.line_checks.finding import Finding, remark
from chairwright.fitting.line_checks.reference import IN_WORDS, reference_occupant
from chairwright.line.choices import NONE
from chairwright.line.model import Line, Option
from chairwright.mass_points import FloatArray

BLOCK = 20_000


def anti_tip_findings(line: Line, usable: Rows) -> Iterator[Finding]:
    """Judge every hole of every anti-tip device over all usable running gears.

    Parameters
    ----------
    line : Line
    usable : Rows
        From `gears.usable_gears`, at least one row.

    Yields
    ------
    Finding
        Remarks.
    """
    devices = [
        (at, option)
        for at, option in enumerate(line.choices["anti_tip"].options)
        if option.code != NONE
    ]
    if not devices:
        return
    tips = _tips_back(line, usable)
    for at, option in devices:
        rows = usable.tried("anti_tip", at)
        anti_tip_devices(rows, NOBODY)
        found = _judged(option, np.degrees(contact_pitch(rows)), tips)
        if found is not None:
            yield found


def _judged(option: Option, contact_deg: FloatArray, tips_deg: FloatArray) -> Finding | None:
    touches = contact_deg >= 0
    if not touches.any() and (contact_deg < 0).any():
        return remark(
            option.where,
            f"anti-tip device {option.code} should clear the floor on some running gear",
            "none: it always stands in the floor",
            "Check the hole's height and the wheel's radius.",
        )
    if (touches & (contact_deg < tips_deg)).any():
        return None
    least = f" at the earliest at {contact_deg[touches].min():.0f} deg" if touches.any() else ""
    return remark(
        option.where,
        f"anti-tip device {option.code} should touch the floor before the chair tips over, on "
        f"some running gear, with {IN_WORDS}",
        f"none: it touches{least or ' never'}, when the chair has tipped",
        "Check the hole's height and wheel_x_mm.",
    )


def _tips_back(line: Line, usable: Rows) -> FloatArray:
    """Rearward tipping angle, wheels free, every other choice at its first option [deg]."""
    parts = []
    for start in range(0, len(usable), BLOCK):
        index = {name: array[start : start + BLOCK] for name, array in usable.index.items()}
        count = len(index["side_frame"])
        first = {name: np.zeros(count, dtype=np.intp) for name in line.choices}
        rows, _ = realise(line, reference_occupant(), {**first, **index})
        parts.append(rear_free(rows, mass_box(rows)).low)
    return np.concatenate(parts)
