"""What is done to one choice, from which hole to which, and how far that is."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from chairwright.line.choices import CHOICES, NONE
from chairwright.line.model import Line, Option
from chairwright.order.parts import part_name

LEAST_MM = 0.05


@dataclass(frozen=True)
class Move:
    """One choice of one step: from an option to another.

    Parameters
    ----------
    choice, label : str
    before, after : str
        Codes.
    words_before, words_after : str
    far : str
        How far the hole or the setting goes, such as ``50 mm back, 20 mm up``; may be empty.
    part_off, part_on : str
        Parts that come off and go on; empty when the same part stays.
    """

    choice: str
    label: str
    before: str
    after: str
    words_before: str
    words_after: str
    far: str = ""
    part_off: str = ""
    part_on: str = ""


@dataclass(frozen=True)
class _Way:
    """A number of an option and what its growth and its fall mean on the chair."""

    key: str
    more: str
    less: str
    unit: str = "mm"


WAYS: dict[str, tuple[_Way, ...]] = {
    "axle_hole": (_Way("x_mm", "forward", "back"), _Way("z_mm", "up", "down")),
    "fork": (_Way("drop_mm", "further from the crown", "nearer to the crown"),),
    "caster_housing": (_Way("ahead_mm", "forward", "back"), _Way("z_mm", "up", "down")),
    "stem_setting": (_Way("angle_deg", "top further back", "top further forward", "deg"),),
    "back_angle": (_Way("angle_deg", "further back", "more upright", "deg"),),
    "back_height": (_Way("height_mm", "higher", "lower"),),
    "back_support": (
        _Way("behind_post_mm", "further back", "further forward"),
        _Way("tilt_deg", "leaning further back", "more upright", "deg"),
    ),
    "arm_support": (_Way("pad_height_mm", "higher", "lower"),),
    "seat_width": (_Way("width_mm", "wider", "narrower"),),
    "seat_depth": (_Way("depth_mm", "deeper", "shorter"),),
    "hanger": (_Way("angle_deg", "steeper", "flatter", "deg"),),
    "leg_length": (_Way("length_mm", "longer", "shorter"),),
    "anti_tip": (_Way("z_mm", "up", "down"),),
    "camber": (_Way("angle_deg", "more", "less", "deg"),),
}
"""What a fitter sees move when a number of the option grows or falls."""


def move(line: Line, choice: str, before: int, after: int) -> Move:
    """Say what is done to one choice.

    Parameters
    ----------
    line : Line
    choice : str
    before, after : int
        Positions of the options.

    Returns
    -------
    Move
    """
    options = line.choices[choice].options
    first, last = options[before], options[after]
    off, on = _swap(line, choice, first, last)
    return Move(
        choice=choice,
        label=CHOICES[choice].label,
        before=first.code,
        after=last.code,
        words_before=first.name,
        words_after=last.name,
        far=", ".join(_far(choice, first, last)),
        part_off=off,
        part_on=on,
    )


def _swap(line: Line, choice: str, first: Option, last: Option) -> tuple[str, str]:
    """Parts that come off and go on, as code and name."""
    if first.part and first.part == last.part:
        return "", ""
    return _part_words(line, choice, first), _part_words(line, choice, last)


def _part_words(line: Line, choice: str, option: Option) -> str:
    """A part as ``FM, medium fork``; empty for a setting, or when nothing is fitted."""
    code = option.part or (option.code if option.kind == "made to order" else "")
    if option.code == NONE or not code or choice in ("back_angle", "stem_setting"):
        return ""
    return f"{code}, {part_name(line.choices[choice], option)}"


def _far(choice: str, first: Option, last: Option) -> Iterator[str]:
    for way in WAYS.get(choice, ()):
        start, end = (each.numbers.get(way.key, math.nan) for each in (first, last))
        by = end - start
        if not math.isnan(by) and abs(by) >= LEAST_MM:
            yield f"{abs(by):.4g} {way.unit} {way.more if by > 0 else way.less}"
