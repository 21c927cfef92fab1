"""The surroundings of one client: what must be passed, climbed, reached under or moved to.

Who lives there, why they need a chair and the address have no place here. The kinds of places
stand in ``places.kinds``.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import ClassVar, Literal

Site = Literal["new", "existing"]
Building = Literal["dwelling", "public"]
Limits = Literal["women", "men"]


@dataclass(frozen=True)
class Slope:
    """A slope as the tangent of its angle.

    Parameters
    ----------
    ratio : float
        Rise by run.
    typed : str
        As written: ``1:12``, ``8 %`` or ``5 deg``.
    """

    ratio: float
    typed: str = field(default="", compare=False)

    @property
    def degrees(self) -> float:
        """Angle to the horizontal [deg]."""
        return math.degrees(math.atan(self.ratio))

    @property
    def one_in(self) -> float:
        """Run for a rise of one; infinite on the level."""
        return math.inf if self.ratio == 0 else 1 / self.ratio


@dataclass(frozen=True, kw_only=True)
class Place:
    """What every place has.

    Parameters
    ----------
    name : str
        What the household calls it; no two places share a name.
    must : bool
        True when the chair must manage this place; False for a wish.
    reason : str
        Why it matters, in the file's own words; may be empty.
    site : {"new", "existing"}
        What is built anew has stricter public codes.
    building : {"dwelling", "public"}
        Whose code rows apply.
    where : str
        ``file:line`` of the place.
    typed : mapping of str to str
        Attribute to the value as it was written.
    """

    kind: ClassVar[str] = "place"
    name: str
    must: bool = True
    reason: str = ""
    site: Site = "existing"
    building: Building = "dwelling"
    where: str = field(default="", compare=False)
    typed: Mapping[str, str] = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True)
class Carer:
    """Who pushes and lifts, as far as a chair is concerned.

    Parameters
    ----------
    shoulder_height_mm : float or None [mm]
        Floor to shoulder in everyday shoes.
    limits : {"women", "men"}
        Published screening limits that apply where no own limit is given.
    push_start_n, push_keep_n : float or None [N]
        Own limits: to start and stop, and to keep moving.
    lift_kg : float or None [kg]
        Heaviest piece that they lift.
    where : mapping of str to str
        ``file:line`` of each key.
    """

    shoulder_height_mm: float | None = None
    limits: Limits = "women"
    push_start_n: float | None = None
    push_keep_n: float | None = None
    lift_kg: float | None = None
    where: Mapping[str, str] = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True)
class OwnLimits:
    """What the client pushes and lifts alone, as the clinician has seen it.

    Parameters
    ----------
    push_n : float or None [N]
        At each hand rim, mean of a stroke, kept up for the length of a ramp.
    lift_kg : float or None [kg]
        Heaviest piece that they lift.
    where : mapping of str to str
        ``file:line`` of each key.
    """

    push_n: float | None = None
    lift_kg: float | None = None
    where: Mapping[str, str] = field(default_factory=dict, compare=False, repr=False)


@dataclass(frozen=True)
class Surroundings:
    """Everything that one places file says.

    Parameters
    ----------
    reference : str
        The client's number.
    places : tuple of Place
        At least one, in the order of the file.
    codes : tuple of str
        Keys of ``places.codes.CODES`` that are to be shown.
    carer : Carer or None
        None when nobody helps.
    own : OwnLimits
    note : str
    where : mapping of str to str
        ``file:line`` of every top-level key.
    """

    reference: str
    places: tuple[Place, ...]
    codes: tuple[str, ...] = ()
    carer: Carer | None = None
    own: OwnLimits = field(default_factory=OwnLimits)
    note: str = ""
    where: Mapping[str, str] = field(default_factory=dict, compare=False, repr=False)

    def of(self, name: str) -> Place:
        """Return the place with a name.

        Raises
        ------
        KeyError
            When no place has it.
        """
        found = next((place for place in self.places if place.name == name), None)
        if found is None:
            raise KeyError(name)
        return found
