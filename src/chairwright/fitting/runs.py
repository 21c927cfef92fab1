"""Which options of one choice are laid beside each other, and in what order."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from chairwright.errors import InputError, Problem
from chairwright.line.choices import CHOICES
from chairwright.line.expand import matching_codes
from chairwright.line.model import Choice, Option
from chairwright.validation import suggest

FORE_AFT = "fore-aft"
UP_DOWN = "up-down"
EVERY = "every"
NAMED = "named"
DIRECTIONS = (FORE_AFT, UP_DOWN)

GRIDS: Mapping[str, tuple[str, str]] = {
    "axle_hole": ("x_mm", "z_mm"),
    "caster_housing": ("ahead_mm", "z_mm"),
}
"""Choices whose options lie in a plane: the numbers that say how far ahead and how high."""

ALONG: Mapping[str, str] = {
    "side_frame": "caster_tube_x_mm",
    "rear_wheel": "radius_mm",
    "camber": "angle_deg",
    "axle_hole": "x_mm",
    "caster": "radius_mm",
    "fork": "drop_mm",
    "caster_housing": "ahead_mm",
    "stem_setting": "angle_deg",
    "seat_width": "width_mm",
    "arm_support": "pad_height_mm",
    "seat_depth": "depth_mm",
    "cushion": "front_mm",
    "back_angle": "angle_deg",
    "back_support": "behind_post_mm",
    "hanger": "angle_deg",
    "leg_length": "length_mm",
    "back_height": "height_mm",
    "anti_tip": "z_mm",
}
"""The number that a choice is mainly about; options are laid out in its order."""

SAME_MM = 0.5
"""Two holes are in one row when they are as high as each other to within this."""


@dataclass(frozen=True)
class Run:
    """Options of one choice in one order.

    Parameters
    ----------
    name : {"fore-aft", "up-down", "every", "named"}
    along : str
        The number that rises from option to option; empty when there is none.
    places : tuple of int
        Positions of the options in the line.
    """

    name: str
    along: str
    places: tuple[int, ...]


def runs_of(choice: Choice, present: int, wanted: str | None = None) -> tuple[Run, ...]:
    """Lay out the options of a choice.

    Parameters
    ----------
    choice : Choice
    present : int
        Position of the option that the set-up has.
    wanted : {"fore-aft", "up-down", "every"} or None
        None gives both directions through the present hole for holes that lie in a plane,
        and every option for the rest.

    Returns
    -------
    tuple of Run
        Every run holds the present option.

    Raises
    ------
    InputError
        When a direction is asked of options that do not lie in a plane.
    """
    if choice.name in GRIDS and wanted != EVERY:
        directions = DIRECTIONS if wanted is None else (wanted,)
        return tuple(_direction(choice, present, name) for name in directions)
    if wanted in DIRECTIONS:
        grids = " and ".join(GRIDS)
        must = f"only {grids} lie in a plane and can be swept in one direction"
        remedy = "Leave --run out, or say --run every."
        raise InputError(Problem(f"--run {wanted}", must, choice.name, remedy))
    places = (at for at, option in enumerate(choice.options) if _usual(option, at == present))
    return (_ordered(choice, EVERY, ALONG.get(choice.name, ""), places),)


def named_run(choice: Choice, present: int, codes: Iterable[str]) -> Run:
    """Lay out the options that somebody named, with the present one.

    Parameters
    ----------
    choice : Choice
    present : int
        Position of the option that the set-up has.
    codes : iterable of str
        Option codes; a part's code means each of its holes or heights.

    Returns
    -------
    Run

    Raises
    ------
    InputError
        With every code that the choice does not have.
    """
    wanted = list(codes)
    strange = [code for code in wanted if not matching_codes(choice, [code])]
    if strange or not wanted:
        must = f"it must name options of {choice.name}"
        raise InputError(
            *(
                Problem("--options", must, repr(code), suggest(code, choice.codes))
                for code in strange or [""]
            )
        )
    meant = matching_codes(choice, wanted) | {choice.options[present].code}
    places = (choice.codes[code] for code in meant)
    return _ordered(choice, NAMED, ALONG.get(choice.name, ""), places)


def known_choice(typed: str) -> str:
    """Find a choice by its name, dashes and capitals forgiven.

    Parameters
    ----------
    typed : str

    Returns
    -------
    str

    Raises
    ------
    InputError
        When there is no such choice.
    """
    name = typed.strip().lower().replace("-", "_").replace(" ", "_")
    if name not in CHOICES:
        must = "it must be the name of a choice"
        raise InputError(Problem("CHOICE", must, repr(typed), suggest(name, CHOICES)))
    return name


def _usual(option: Option, present: bool) -> bool:
    return present or bool(option.code)


def _direction(choice: Choice, present: int, name: str) -> Run:
    ahead, up = GRIDS[choice.name]
    along, across = (ahead, up) if name == FORE_AFT else (up, ahead)
    here = choice.options[present]
    places = (
        at
        for at, option in enumerate(choice.options)
        if abs(option.numbers[across] - here.numbers[across]) < SAME_MM
    )
    return _ordered(choice, name, along, places)


def _ordered(choice: Choice, name: str, along: str, places: Iterable[int]) -> Run:
    def key(at: int) -> tuple[bool, float, int]:
        number = choice.options[at].numbers.get(along)
        return number is None, 0.0 if number is None else number, at

    return Run(name, along, tuple(sorted(places, key=key)))
