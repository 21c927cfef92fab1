"""Running gear with which no chair stands, or none that somebody could be given."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from chairwright.chair.buildable import PITCH_RANGE_DEG
from chairwright.chair.rows import IndexArray, Rows
from chairwright.fitting.line_checks.finding import Finding, mistake, remark
from chairwright.fitting.line_checks.gears import (
    IN_WORDS,
    SEAT_DEG,
    USABLE,
    stands,
    whole_space,
)
from chairwright.line.choices import NONE
from chairwright.line.model import Choice, Line
from chairwright.search.geometry import running_gears

GEAR = ("side_frame", "rear_wheel", "camber", "axle_hole", "caster", "fork", "stem_spacer")
_REMEDY = "Compare its sizes with its neighbours' in the file; one number is probably wrong."


def standing_findings(line: Line, usable: Rows) -> Iterator[Finding]:
    """Judge each part of the running gear by whether a chair with it can be used.

    Parameters
    ----------
    line : Line
    usable : Rows
        From `gears.usable_gears`.

    Yields
    ------
    Finding
        A mistake for a part with which no chair stands on its four wheels; a remark for one
        whose chairs all stand out of square or too steep.
    """
    if not len(usable):
        yield _nothing(line)
        return
    for name in GEAR:
        choice = line.choices[name]
        used = set(np.unique(usable.index[name]).tolist())
        for part, positions in parts_of(choice).items():
            if part != NONE and not used.intersection(positions.tolist()):
                yield _unused(line, choice, part, positions)


def parts_of(choice: Choice) -> dict[str, IndexArray]:
    """Option positions of each part of a choice; a setting without a part stands for itself."""
    found: dict[str, list[int]] = {}
    for at, option in enumerate(choice.options):
        found.setdefault(option.part or option.code, []).append(at)
    return {part: np.array(positions) for part, positions in found.items()}


def _unused(line: Line, choice: Choice, part: str, positions: IndexArray) -> Finding:
    where = choice.options[int(positions[0])].where
    what = f"{choice.label.lower()} {part}"
    if stands(line, {choice.name: positions}):
        must = f"a chair with {what} should come square ({IN_WORDS})"
        return remark(where, must, "none, whatever it is combined with", _REMEDY)
    low, high = PITCH_RANGE_DEG
    must = f"a chair with {what} must stand on its four wheels"
    got = f"none: the frame would tilt out of {low:g} to {high:g} deg whatever it is combined with"
    return mistake(where, must, got, _REMEDY)


def _nothing(line: Line) -> Finding:
    """Whether the seat's angle or the stems' keeps every running gear from being used."""
    stems = [rows["stem"] for rows in running_gears(whole_space(line), USABLE[:1])]
    if stems:
        nearest = float(np.degrees(np.concatenate([np.abs(each) for each in stems]).min()))
        return mistake(
            line.choices["stem_setting"].options[0].where,
            f"some stem setting must bring the stem square to the floor ({IN_WORDS})",
            f"{nearest:.1f} deg off the vertical at best",
            "Check stem_settings_deg: top leaning back is positive, forward negative.",
        )
    return mistake(
        line.choices["axle_hole"].options[0].where,
        f"some axle hole must bring the seat to {SEAT_DEG[0]:g} to {SEAT_DEG[1]:g} deg",
        "none with any frame, wheel, caster, fork and housing",
        "Check the places of axle plate, caster housing and frame tube: one number is wrong.",
    )
