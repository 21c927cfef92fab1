"""How a client is expected to grow or change, as a range, and the client at a later day."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from itertools import product
from math import sqrt

from chairwright.errors import InputError, Problem
from chairwright.person.client import Client, Expected, Measure
from chairwright.person.growth_table import (
    FIRST_YEARS,
    GROWN_YEARS,
    SOURCE,
    lms_at,
    score,
    value_at,
)
from chairwright.person.measures import BODY_MASS, CATALOGUE, STATURE
from chairwright.units import Quantity

USUAL_YEARS = 5.0
"""A chair's life when nothing is said (common practice, no source)."""
LONGEST_YEARS = 15.0
CENTILE_BAND = 0.67
"""How far a child may have drifted from its own line at the end of the range, in standard
deviations: one of the bands between the usual centile lines, 25, 50, 75 (common practice, no
source)."""
BREADTHS = frozenset(
    {
        "hip_width", "shoulder_width", "chest_width", "chest_depth", "abdomen_depth",
        "thigh_clearance", "external_knee_width",
    }
)  # fmt: skip
"""Measures that follow the body's mass as well as its height."""
KEPT = frozenset({"shoe_sole"})
"""Measures that nothing here changes."""

Values = dict[str, float]


@dataclass(frozen=True)
class Track:
    """One way in which the client may change.

    Parameters
    ----------
    name : str
        For people.
    signs : dict of str to int
        Of stature, mass and every measure with a range of its own: -1 least, 0 middle, 1 most.
    """

    name: str
    signs: Mapping[str, int]


@dataclass(frozen=True)
class Growth:
    """What is expected of one client over some years.

    Parameters
    ----------
    client : Client
        As measured now.
    years : float [years]
        How long the range is.
    ranges : dict of str to tuple of float [mm or kg]
        Least and most at the end, of stature, mass and measures with a range of their own; only
        those that change.
    sources : dict of str to str
        Of each range.
    tracks : tuple of Track
        The middle first; then every combination of the ends of stature and mass.
    """

    client: Client
    years: float
    ranges: dict[str, tuple[float, float]]
    sources: dict[str, str]
    tracks: tuple[Track, ...]

    @property
    def changes(self) -> bool:
        """Whether anything is expected to change."""
        return bool(self.ranges)

    def age(self, after_years: float) -> float | None:
        """Age after some years; None when the file does not say."""
        return None if self.client.age_years is None else self.client.age_years + after_years

    def at(self, track: Track, after_years: float) -> Client:
        """The client at a later day, as if measured again.

        Parameters
        ----------
        track : Track
        after_years : float [years]

        Returns
        -------
        Client
        """
        if after_years == 0.0 or not self.ranges:
            return self.client
        own = {
            name: self._value(name, track.signs.get(name, 0), after_years) for name in self.ranges
        }
        measures = tuple(_later(each, self.client, own) for each in self.client.measures)
        return replace(self.client, measures=measures)

    def _value(self, name: str, sign: int, after_years: float) -> float:
        share = after_years / self.years
        if self.sources[name] == SOURCE:
            return table_value(self.client, name, after_years, sign * CENTILE_BAND * share)
        low, high = self.ranges[name]
        end = (low + high) / 2.0 + sign * (high - low) / 2.0
        now = measured(self.client, name)
        return now + (end - now) * share


def expected_growth(
    client: Client, years: float | None = None, mass_share: float | None = None
) -> Growth:
    """What is expected: the client file's own ranges, else the table's for a child.

    Parameters
    ----------
    client : Client
    years : float or None [years]
        How long the range is; None takes the client file's, or `USUAL_YEARS`.
    mass_share : float or None
        Asks for a range of this share of the body mass either way, where the file states none.

    Returns
    -------
    Growth
        Without any range for an adult of whom the file says nothing.

    Raises
    ------
    InputError
        When the years differ from those that the client file's ranges are for.
    """
    stated = client.expected or Expected(USUAL_YEARS, {}, "")
    length = _length(client, stated, years)
    ranges, sources = dict(stated.ranges), dict.fromkeys(stated.ranges, "client file")
    for name in _from_table(client, ranges):
        ends = [table_value(client, name, length, sign * CENTILE_BAND) for sign in (-1, 1)]
        ranges[name], sources[name] = (ends[0], ends[1]), SOURCE
    if mass_share is not None and BODY_MASS not in ranges:
        now = measured(client, BODY_MASS)
        ranges[BODY_MASS] = (now * (1.0 - mass_share), now * (1.0 + mass_share))
        sources[BODY_MASS] = f"{mass_share:.0%} either way (common practice, no source)"
    return Growth(client, length, ranges, sources, _tracks(client, ranges))


def measured(client: Client, name: str) -> float:
    """Value of a measure that was taken; the mean where both sides were [mm or kg]."""
    values = [each.value for each in client.measures if each.name == name]
    return sum(values) / len(values)


def table_value(client: Client, name: str, after_years: float, drift: float) -> float:
    """Stature or mass on the child's own line, some years on [mm or kg].

    Parameters
    ----------
    client : Client
        With an age.
    name : {"stature", "body_mass"}
    after_years : float [years]
    drift : float
        Off the child's own line, in standard deviations.
    """
    age = client.age_years
    if age is None:
        message = "a client of unknown age has no line in the table"
        raise ValueError(message)
    place = score(measured(client, name), lms_at(name, client.sex, age))
    return value_at(place + drift, lms_at(name, client.sex, age + after_years))


def _length(client: Client, stated: Expected, years: float | None) -> float:
    if years is None or years == stated.over_years:
        return stated.over_years
    if not stated.ranges:
        return years
    where = f"{client.where.get('expected', client.reference)}: expected"
    must = f"the client file's ranges are for {stated.over_years:g} years"
    remedy = "Leave the years away, or change over_years and the ranges in the file."
    raise InputError(Problem(where, must, f"{years:g} years", remedy))


def _from_table(client: Client, ranges: Mapping[str, object]) -> tuple[str, ...]:
    age = client.age_years
    if age is None or not FIRST_YEARS <= age < GROWN_YEARS:
        return ()
    there = {each.name for each in client.measures}
    return tuple(name for name in (STATURE, BODY_MASS) if name in there and name not in ranges)


def _tracks(client: Client, ranges: Mapping[str, tuple[float, float]]) -> tuple[Track, ...]:
    """The middle, and every combination of the ends; other ranges go with stature or mass."""
    lengths = [n for n in ranges if n != BODY_MASS and n not in BREADTHS]
    masses = [n for n in ranges if n == BODY_MASS or n in BREADTHS]
    groups = [group for group in (lengths, masses) if group]
    middle = Track("middle of the range", dict.fromkeys(ranges, 0))
    if not groups:
        return (middle,)
    found = [middle]
    for ends in product((-1, 1), repeat=len(groups)):
        signs = {name: end for group, end in zip(groups, ends, strict=True) for name in group}
        words = [_end_words(group is lengths, end) for group, end in zip(groups, ends, strict=True)]
        found.append(Track(" and ".join(words), signs))
    return tuple(found)


def _end_words(length: bool, end: int) -> str:
    if length:
        return "tallest" if end > 0 else "shortest"
    return "heaviest" if end > 0 else "lightest"


def _later(measure: Measure, client: Client, own: Values) -> Measure:
    """One measure at a later day.

    References
    ----------
    First principles: a body that keeps its shape has lengths that go with stature, and breadths
    with the root of mass over stature. Proportions of children change a little with age; that is
    not in it.
    """
    value = own.get(measure.name)
    if value is None:
        value = measure.value * _ratio(measure.name, client, own)
    else:
        value *= measure.value / measured(client, measure.name)
    unit = measure.quantity.unit
    digits = 1 if unit == "kg" else 0
    quantity = Quantity(value, f"{value:.{digits}f} {unit}", measure.quantity.dimension)
    return replace(measure, quantity=quantity)


def _ratio(name: str, client: Client, own: Values) -> float:
    if name in KEPT or CATALOGUE[name].dimension == "mass":
        return 1.0
    taller = own[STATURE] / measured(client, STATURE) if STATURE in own else 1.0
    if name not in BREADTHS:
        return taller
    heavier = own[BODY_MASS] / measured(client, BODY_MASS) if BODY_MASS in own else 1.0
    return sqrt(heavier / taller)
