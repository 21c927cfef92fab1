"""Which options of one choice are laid beside each other, and in what order."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from chairwright.errors import InputError, Problem
from chairwright.line.choices import CHOICES
from chairwright.line.codes import matching_codes
from chairwright.line.model import Choice, Option
from chairwright.validation import suggest

FORE_AFT = "fore-aft"
UP_DOWN = "up-down"
SETTINGS = "settings"
PARTS = "parts"
EVERY = "every"
NAMED = "named"
DIRECTIONS = (FORE_AFT, UP_DOWN)
SPLITS = (SETTINGS, PARTS)
ASKED = (*DIRECTIONS, *SPLITS, EVERY)

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
    "stem_spacer": "height_mm",
    "caster_housing": "ahead_mm",
    "stem_setting": "angle_deg",
    "hand_rim": "standoff_mm",
    "seat_width": "width_mm",
    "arm_support": "pad_height_mm",
    "seat_depth": "depth_mm",
    "cushion": "front_mm",
    "back_angle": "angle_deg",
    "back_support": "behind_post_mm",
    "hanger": "angle_deg",
    "foot_plate": "length_mm",
    "leg_length": "length_mm",
    "back_height": "height_mm",
    "push_handle": "above_mm",
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
    name : {"fore-aft", "up-down", "settings", "parts", "every", "named"}
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
    wanted : {"fore-aft", "up-down", "settings", "parts", "every"} or None
        None gives both directions through the present hole for holes that lie in a plane; the
        settings of the present part and then the other parts, each in its nearest setting,
        when the present part has several settings; and every option for the rest. Sizes made
        to order are left out unless the set-up has one.

    Returns
    -------
    tuple of Run
        Every run holds the present option.

    Raises
    ------
    InputError
        When a run is asked for that the choice does not have.
    """
    if wanted == EVERY:
        return (_every(choice, present),)
    known = runs_known(choice)
    if wanted is not None and wanted not in known:
        must = f"{choice.name} can be swept as {', '.join([*known, EVERY])}"
        remedy = "Leave --run out, or name one of these."
        raise InputError(Problem("--run", must, wanted, remedy))
    if not known:
        return (_every(choice, present),)
    if wanted is not None:
        return (_run(choice, present, wanted),)
    runs = tuple(run for name in known if len((run := _run(choice, present, name)).places) > 1)
    if not runs or (known == SPLITS and runs[0].name == PARTS):
        return (_every(choice, present),)
    return runs


def runs_known(choice: Choice) -> tuple[str, ...]:
    """The runs that a choice is swept in besides "every"."""
    if choice.name in GRIDS:
        return DIRECTIONS
    parts = {part_of(option) for option in choice.options}
    return SPLITS if 1 < len(parts) < len(choice.options) else ()


def part_of(option: Option) -> str:
    """The part that an option is a setting of; its own code when it is a mere setting."""
    return option.part or option.code


def usual(choice: Choice, present: int) -> Iterator[int]:
    """Positions of the options in stock sizes and of the present one."""
    for at, option in enumerate(choice.options):
        if at == present or option.kind != "made to order":
            yield at


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


def _every(choice: Choice, present: int) -> Run:
    return _ordered(choice, EVERY, ALONG.get(choice.name, ""), usual(choice, present))


def _run(choice: Choice, present: int, name: str) -> Run:
    if name in DIRECTIONS:
        return _direction(choice, present, name)
    along = ALONG.get(choice.name, "")
    if name == SETTINGS:
        part = part_of(choice.options[present])
        same = (at for at in usual(choice, present) if part_of(choice.options[at]) == part)
        return _ordered(choice, SETTINGS, along, same)
    return Run(PARTS, "", tuple(_nearest_of_each_part(choice, present, along)))


def _nearest_of_each_part(choice: Choice, present: int, along: str) -> Iterator[int]:
    """Position of one option of each part, in the line's order: that nearest to the present one."""
    here = choice.options[present].numbers.get(along, 0.0)
    parts: dict[str, list[int]] = {}
    for at in usual(choice, present):
        parts.setdefault(part_of(choice.options[at]), []).append(at)
    for places in parts.values():
        if present in places:
            yield present
        else:
            yield min(places, key=lambda at: abs(choice.options[at].numbers.get(along, 0.0) - here))


def _direction(choice: Choice, present: int, name: str) -> Run:
    ahead, up = GRIDS[choice.name]
    along, across = (ahead, up) if name == FORE_AFT else (up, ahead)
    here = choice.options[present]
    places = (
        at
        for at, option in enumerate(choice.options)
        if option.mounting == here.mounting
        and abs(option.numbers[across] - here.numbers[across]) < SAME_MM
    )
    return _ordered(choice, name, along, places)


def _ordered(choice: Choice, name: str, along: str, places: Iterable[int]) -> Run:
    def key(at: int) -> tuple[bool, float, int]:
        number = choice.options[at].numbers.get(along)
        return number is None, 0.0 if number is None else number, at

    return Run(name, along, tuple(sorted(places, key=key)))
