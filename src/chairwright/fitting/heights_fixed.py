"""What a seat-height chart runs over, and what stays the same on all of it."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from chairwright.chair.steps import STEPS
from chairwright.errors import InputError, Problem
from chairwright.line.choices import CHOICES
from chairwright.line.codes import matching_codes
from chairwright.line.model import Choice, Line, Option
from chairwright.line.reachable import Deduction, blockers
from chairwright.validation import suggest

VARIED = ("rear_wheel", "axle_hole", "caster", "fork")
"""Axes of the chart, in the order of its arrays."""

SQUARED = "stem_setting"
"""Chosen anew in every cell: the setting that brings the caster stem nearest to the vertical."""

FIXED = (*(n for n in STEPS[0].choices if n not in (*VARIED, SQUARED)), "seat_depth")
"""Everything else that moves a seat height."""

CHOSEN = (*VARIED, *FIXED, SQUARED)

_HOLE = re.compile(r"([A-Z]+?)(\d+)(R?)")


@dataclass(frozen=True)
class HoleColumn:
    """Axle holes one below the other.

    Parameters
    ----------
    label : str
        The column's letter; an R after it when the plate is turned round.
    x_mm : float [mm]
        Ahead of the back post, frame axes.
    rows : dict of str to int
        Hole number to the hole's position in the line, highest hole first.
    """

    label: str
    x_mm: float
    rows: dict[str, int]

    @property
    def turned(self) -> bool:
        """Whether the plate is turned round."""
        return len(self.label) > 1 and self.label.endswith("R")


def hole_columns(line: Line) -> tuple[HoleColumn, ...]:
    """Axle holes of a line in columns, in the line's order.

    Parameters
    ----------
    line : Line

    Returns
    -------
    tuple of HoleColumn
    """
    options = line.choices["axle_hole"].options
    found: dict[str, dict[str, int]] = {}
    for at, option in enumerate(options):
        letter, number, turned = _hole_parts(option.code)
        found.setdefault(letter + turned, {})[number] = at

    def height(item: tuple[str, int]) -> float:
        return -options[item[1]].numbers["z_mm"]

    columns = {label: dict(sorted(rows.items(), key=height)) for label, rows in found.items()}
    return tuple(
        HoleColumn(label, options[next(iter(rows.values()))].numbers["x_mm"], rows)
        for label, rows in columns.items()
    )


def _hole_parts(code: str) -> tuple[str, str, str]:
    match = _HOLE.fullmatch(code)
    return (match[1], match[2], match[3]) if match else (code, code, "")


def chosen_column(line: Line, label: str | None) -> HoleColumn:
    """The column of axle holes that the chart is printed for.

    Parameters
    ----------
    line : Line
    label : str or None
        None takes the middle one of the first plate; of two middle ones the rear one.

    Returns
    -------
    HoleColumn

    Raises
    ------
    InputError
        When the line has no such column.
    """
    columns = {column.label: column for column in hole_columns(line)}
    if label is not None:
        if label.upper() not in columns:
            must = f"it must be a column of the line's axle plates ({', '.join(columns)})"
            raise InputError(Problem("--axle-column", must, repr(label), "Name one of these."))
        return columns[label.upper()]
    first = next(iter(columns.values()))
    plate = plate_code(line, first), first.turned
    same = [c for c in columns.values() if (plate_code(line, c), c.turned) == plate]
    return sorted(same, key=lambda column: column.x_mm)[(len(same) - 1) // 2]


def plate_code(line: Line, column: HoleColumn) -> str:
    """Order code of the axle plate that a column belongs to."""
    option = line.choices["axle_hole"].options[next(iter(column.rows.values()))]
    return option.part


def fixed_options(line: Line, asked: Mapping[str, str]) -> dict[str, Option]:
    """One option for every choice that stays the same on the chart.

    Parameters
    ----------
    line : Line
    asked : mapping of str to str
        Choice to code. A choice left out gets the line's first standard option that goes with
        the rest; the caster housing its middle height hole, from which most chairs come level.

    Returns
    -------
    dict of str to Option
        In the order of `FIXED`.

    Raises
    ------
    InputError
        When a code is not in the line, or the rules do not allow the codes together.
    """
    settled = {name: frozenset({_known(line.choices[name], code)}) for name, code in asked.items()}
    rules = Deduction(line)
    if rules.example(settled) is None:
        raise InputError(_contradiction(line, settled))
    for name in FIXED:
        if name not in settled:
            tries = (frozenset({option.code}) for option in _usual_first(line.choices[name]))
            settled[name] = next(t for t in tries if rules.example({**settled, name: t}))
    return {name: _option(line.choices[name], settled[name]) for name in FIXED}


def _usual_first(choice: Choice) -> list[Option]:
    """Options in the order in which they are tried for what nobody asked for."""
    options = standard_first(choice)
    if choice.name != "caster_housing":
        return options
    side = [o for o in options if o.numbers["ahead_mm"] == options[0].numbers["ahead_mm"]]
    middle = sorted(side, key=lambda option: -option.numbers["z_mm"])[len(side) // 2]
    return [middle, *(option for option in options if option is not middle)]


def standard_first(choice: Choice) -> list[Option]:
    """Options in the line's order, those that must be asked for last."""
    return sorted(choice.options, key=lambda option: option.kind != "standard")


def _option(choice: Choice, codes: Iterable[str]) -> Option:
    (code,) = codes
    return choice.options[choice.codes[code]]


def _known(choice: Choice, code: str) -> str:
    for known in choice.codes:
        if known.upper() == code.upper():
            return known
    raise InputError(_unknown(choice, code))


def _unknown(choice: Choice, code: str) -> Problem:
    must = f"it must be a {CHOICES[choice.name].label.lower()} of the line"
    return Problem(flag(choice.name), must, repr(code), suggest(code, choice.codes))


def flag(name: str) -> str:
    """A choice's option on the command line."""
    return "--" + name.replace("_", "-")


def _contradiction(line: Line, settled: Mapping[str, frozenset[str]]) -> Problem:
    reasons = dict.fromkeys(rule.because for rule in blockers(line, settled))
    return Problem(
        where=", ".join(flag(name) for name in settled),
        must=f"the line's rules must allow them together ({'; '.join(reasons)})",
        got=" with ".join(code for codes in settled.values() for code in codes),
        remedy="Change one of them, or leave it out.",
    )


def open_options(line: Line, name: str, codes: Iterable[str] | None) -> tuple[int, ...]:
    """Positions of the options of one axis that the chart shows.

    Parameters
    ----------
    line : Line
    name : str
    codes : iterable of str or None
        None for all; a part's code means all of its holes.

    Returns
    -------
    tuple of int
        In the line's order.

    Raises
    ------
    InputError
        With every code that is not in the line.
    """
    choice = line.choices[name]
    if codes is None:
        return tuple(range(len(choice.options)))
    wanted = [code.upper() for code in codes]
    strange = [code for code in wanted if not matching_codes(choice, [code])]
    if strange:
        raise InputError(*(_unknown(choice, code) for code in strange))
    return tuple(sorted(choice.codes[code] for code in matching_codes(choice, wanted)))
