"""A maker's product line as the engineering sees it: choices, options, rules.

All places are in frame axes [mm]: origin at the seat corner (front face of the back post at
the top of the seat rail, on the mid-plane), x forward, z up, in the attitude in which the maker
drew the frame. Masses of a pair are given for the pair.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from chairwright.mass_points import FloatArray


@dataclass(frozen=True)
class Option:
    """One thing that can be chosen.

    Parameters
    ----------
    code : str
        Order code, unique within its choice.
    name : str
        Plain description, for a fitter.
    numbers : dict of str to float
        The option's figures, unit as suffix of the key.
    where : str
        ``file:line``.
    """

    code: str
    name: str
    numbers: dict[str, float]
    where: str = ""


@dataclass(frozen=True)
class Choice:
    """One adjustable or orderable thing with its options in the line file's order."""

    name: str
    label: str
    options: tuple[Option, ...]

    @cached_property
    def codes(self) -> dict[str, int]:
        """Position of each code."""
        return {option.code: index for index, option in enumerate(self.options)}

    def column(self, key: str) -> FloatArray:
        """One figure of every option, shape (options,); NaN where an option has none."""
        return np.array([option.numbers.get(key, np.nan) for option in self.options])


@dataclass(frozen=True)
class Rule:
    """If every condition is met, every demand must be met.

    Parameters
    ----------
    when, need : dict of str to frozenset of str
        Choice name to the codes that meet it.
    because : str
        The reason in plain words.
    where : str
        ``file:line``.
    """

    when: dict[str, frozenset[str]]
    need: dict[str, frozenset[str]]
    because: str
    where: str = ""

    @property
    def choices(self) -> frozenset[str]:
        """Names of all choices that the rule speaks about."""
        return frozenset(self.when) | frozenset(self.need)


@dataclass(frozen=True)
class FixedPart:
    """A part that every chair of the line has."""

    code: str
    name: str
    mass_kg: float
    x_mm: float
    z_mm: float
    moves_with: Literal["frame", "casters"]


@dataclass(frozen=True)
class FootPlate:
    """The footplates' common geometry [mm]; laterals count inward from the seat's edge."""

    length_mm: float
    behind_tube_mm: float
    thickness_mm: float
    outer_inset_mm: float
    width_mm: float


@dataclass(frozen=True)
class Line:
    """A whole product line.

    Parameters
    ----------
    name, title, maker, version : str
    choices : dict of str to Choice
        In the order in which ties are broken.
    rules : tuple of Rule
    fixed_parts : tuple of FixedPart
    foot_plate : FootPlate
    caster_outset_mm : float
        Stem axis outward of the seat's edge, each side.
    crown_gap_mm : float
        Least gap from the caster's tyre to the fork crown.
    folded_seat_mm : float
        Distance of the seat rails when folded.
    push_handle_behind_mm, push_handle_above_mm : float
        Handle grip behind the back post and above its top.
    """

    name: str
    title: str
    maker: str
    version: str
    choices: dict[str, Choice]
    rules: tuple[Rule, ...]
    fixed_parts: tuple[FixedPart, ...]
    foot_plate: FootPlate
    caster_outset_mm: float
    crown_gap_mm: float
    folded_seat_mm: float
    push_handle_behind_mm: float
    push_handle_above_mm: float
    path: str = ""
    _columns: dict[tuple[str, str], FloatArray] = field(
        default_factory=dict, repr=False, compare=False
    )

    def column(self, choice: str, key: str) -> FloatArray:
        """One figure of every option of a choice, cached; shape (options,)."""
        found = self._columns.get((choice, key))
        if found is None:
            found = self.choices[choice].column(key)
            self._columns[(choice, key)] = found
        return found

    def rule_matches(self, codes: frozenset[str], choice: str) -> NDArray[np.bool_]:
        """Which options of a choice are among ``codes``, shape (options,)."""
        return np.array([option.code in codes for option in self.choices[choice].options])
