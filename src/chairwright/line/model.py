"""A maker's product line as the engineering sees it: choices, options, rules.

All places are in frame axes [mm]: origin at the seat corner (front face of the back post at
the top of the seat rail, on the mid-plane), x forward, z up, in the attitude in which the maker
drew the frame. Masses of a pair are given for the pair.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from chairwright.mass_points import FloatArray

OptionKind = Literal["standard", "made to order", "on request"]
"""Made to order: a size beyond the standard ones. On request: only when it is asked for by code."""


TURNED = "R"
"""End of the code of a hole whose plate is mounted turned round."""


@dataclass(frozen=True)
class Option:
    """One thing that can be chosen.

    Parameters
    ----------
    code : str
        Unique within its choice.
    name : str
        Plain description, for a fitter.
    numbers : dict of str to float
        The option's figures, unit as suffix of the key; always ``price`` and ``surcharge`` (the
        price of being made to order) [the line's currency], ``extra_days`` and
        ``load_limit_kg`` (infinite when it has none).
    where : str
        ``file:line``.
    part : str
        Order code of the part; empty for a mere setting.
    kind : {"standard", "made to order", "on request"}
    """

    code: str
    name: str
    numbers: dict[str, float]
    where: str = ""
    part: str = ""
    kind: OptionKind = "standard"

    @property
    def mounting(self) -> tuple[str, bool]:
        """The part of a hole, and whether it is mounted turned round."""
        return self.part, self.code.endswith(TURNED)


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
    """A part that a chair has whatever is chosen: mass [kg], place in frame axes, price, days."""

    code: str
    name: str
    mass_kg: float
    x_mm: float
    z_mm: float
    price: float = 0.0
    extra_days: float = 0.0
    load_limit_kg: float = math.inf


@dataclass(frozen=True)
class Fastener:
    """What holds a part or a setting, with which tool and how tight.

    Parameters
    ----------
    choice : str
        Name of the choice that it holds.
    codes : frozenset of str
        Options of the choice with which it is there.
    what, tool : str
    pieces : int
        Of one part; a left and a right part have twice as many.
    torque_nm : float
        NaN when the line states none.
    note : str
        Empty when there is none.
    source : str
    """

    choice: str
    codes: frozenset[str]
    what: str
    tool: str
    pieces: int = 1
    torque_nm: float = math.nan
    note: str = ""
    source: str = ""


@dataclass(frozen=True)
class Later:
    """What it takes to change a chair that is in use.

    Parameters
    ----------
    frame : frozenset of str
        Choices that are the frame itself: another option of any of them is a new frame.
    frame_price, frame_minutes : float
        Of a new frame on top of its options' prices [the line's currency], and of moving
        everything over to it; the minutes are NaN when the line states none.
    part_prices : dict of str to float
        What a part of a choice costs on top of its price with a new chair, when it is bought
        later; for a pair.
    minutes : dict of str to float
        Work on a choice, or on what several choices share, where the line states it.
    source : str
        Where these values come from; empty when the line states none.
    """

    frame: frozenset[str] = frozenset()
    frame_price: float = 0.0
    frame_minutes: float = math.nan
    part_prices: dict[str, float] = field(default_factory=dict)
    minutes: dict[str, float] = field(default_factory=dict)
    source: str = ""


Often = Literal[
    "every day", "every week", "every month", "every 3 months", "every 6 months", "every year",
    "when worn", "after every change",
]  # fmt: skip


@dataclass(frozen=True)
class LineUpkeep:
    """A work of upkeep that the maker asks for: how often, what, and where that comes from."""

    often: Often
    work: str
    source: str


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
        Of every chair, and the extras that were asked for.
    extras : tuple of FixedPart
        Accessories that can be asked for.
    caster_outset_mm : float
        Stem axis outward of the seat's edge, each side.
    crown_gap_mm : float
        Least gap from the caster's tyre to the fork crown.
    folded_seat_mm : float
        Distance of the seat rails when folded; NaN when no chair of the line folds.
    folds_to_width_mm : float
        Widest seat with a cross-brace that folds; 0 when no chair of the line folds.
    currency : str
        Three letters, as ISO 4217.
    base_price : float
        Of the chair before any option.
    build_days : int
        Delivery time before any option adds to it.
    typed_in : {"mm", "in"}
        Units in which the maker names sizes.
    path : str
    fasteners : tuple of Fastener
        Empty when the maker gives none.
    later : Later
        What changing a chair in use takes.
    upkeep : tuple of LineUpkeep
        What the maker asks for; empty when the line file states none.
    """

    name: str
    title: str
    maker: str
    version: str
    choices: dict[str, Choice]
    rules: tuple[Rule, ...]
    fixed_parts: tuple[FixedPart, ...]
    extras: tuple[FixedPart, ...]
    caster_outset_mm: float
    crown_gap_mm: float
    folded_seat_mm: float
    folds_to_width_mm: float
    currency: str
    base_price: float
    build_days: int
    typed_in: Literal["mm", "in"] = "mm"
    path: str = ""
    fasteners: tuple[Fastener, ...] = ()
    later: Later = Later()
    upkeep: tuple[LineUpkeep, ...] = ()
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
