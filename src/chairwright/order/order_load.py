"""Load rating: what every part bears against the occupant with everything carried."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from chairwright.chair.occupant import Occupant
from chairwright.fitting.described import Described
from chairwright.line.choices import CHOICES


@dataclass(frozen=True)
class LoadLimit:
    """One part with a limit [kg]."""

    label: str
    code: str
    words: str
    limit_kg: float


@dataclass(frozen=True)
class Load:
    """One thing that the chair carries [kg]."""

    name: str
    mass_kg: float


@dataclass(frozen=True)
class LoadRating:
    """The chair's rating against its load.

    Parameters
    ----------
    limits : tuple of LoadLimit
        The least first; parts without a limit are left out.
    loads : tuple of Load
        The occupant first, then everything carried.
    """

    limits: tuple[LoadLimit, ...]
    loads: tuple[Load, ...]

    @property
    def rated_kg(self) -> float:
        """The least limit; infinite when no part has one."""
        return self.limits[0].limit_kg if self.limits else math.inf

    @property
    def load_kg(self) -> float:
        """Occupant with everything carried."""
        return sum(load.mass_kg for load in self.loads)

    @property
    def margin_kg(self) -> float:
        """Rating less load; negative when the chair is overloaded."""
        return self.rated_kg - self.load_kg

    @property
    def bears(self) -> bool:
        """Whether the rating is not less than the load."""
        return self.margin_kg >= 0.0

    @property
    def least(self) -> tuple[LoadLimit, ...]:
        """The parts that make the rating."""
        return tuple(each for each in self.limits if each.limit_kg == self.rated_kg)


def load_rating(setup: Described, occupant: Occupant) -> LoadRating:
    """Set every part's limit against the load.

    Parameters
    ----------
    setup : Described
    occupant : Occupant

    Returns
    -------
    LoadRating
    """
    limits = sorted(_limits(setup), key=lambda each: each.limit_kg)
    carried = (Load(item.name, item.mass_kg) for item in occupant.carries)
    return LoadRating(tuple(limits), (Load("occupant", occupant.body.mass_kg), *carried))


def _limits(setup: Described) -> Iterator[LoadLimit]:
    for name, option in setup.options.items():
        limit = option.numbers["load_limit_kg"]
        if limit < math.inf:
            yield LoadLimit(CHOICES[name].label, option.part or option.code, option.name, limit)
    for part in setup.line.fixed_parts:
        if part.load_limit_kg < math.inf:
            yield LoadLimit("Part", part.code, part.name, part.load_limit_kg)
