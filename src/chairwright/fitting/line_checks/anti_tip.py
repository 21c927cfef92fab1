"""Anti-tip holes that are of no use: in the floor, or out of reach until the chair has tipped."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

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
from chairwright.fitting.line_checks.standing import parts_of
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
    choice = line.choices["anti_tip"]
    devices = {part: at for part, at in parts_of(choice).items() if part != NONE}
    tips = _tips_back(line, usable) if devices else np.zeros(0)
    for part, positions in devices.items():
        useless: dict[Use, list[Option]] = {}
        for at in positions:
            rows = usable.tried("anti_tip", int(at))
            anti_tip_devices(rows, NOBODY)
            use = _use(np.degrees(contact_pitch(rows)), tips)
            useless.setdefault(use, []).append(choice.options[int(at)])
        yield from _told(part, useless)


Use = Literal["some", "in the floor", "too late"]


def _use(contact_deg: FloatArray, tips_deg: FloatArray) -> Use:
    touches = contact_deg >= 0
    if (touches & (contact_deg < tips_deg)).any():
        return "some"
    return "too late" if touches.any() or np.isnan(contact_deg).all() else "in the floor"


def _told(part: str, useless: Mapping[Use, Sequence[Option]]) -> Iterator[Finding]:
    for use, (must, remedy) in REMARKS.items():
        holes = useless.get(use, ())
        if holes:
            codes = ", ".join(option.code for option in holes)
            yield remark(
                holes[0].where, f"anti-tip device {part} {must}", f"none at {codes}", remedy
            )


REMARKS: dict[Use, tuple[str, str]] = {
    "in the floor": (
        "should clear the floor at each hole on some running gear",
        "Check these holes' height and the wheel's radius.",
    ),
    "too late": (
        "should touch the floor, at each hole on some running gear, before the chair tips over "
        f"with {IN_WORDS}",
        "Check these holes' height and wheel_x_mm.",
    ),
}


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
