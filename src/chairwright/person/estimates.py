"""From the measured values to a complete set: what nobody measured is estimated and marked so."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from chairwright.errors import InputError, Problem
from chairwright.person.amputation import client_intact_mass_kg
from chairwright.person.client import Amputation, Client, Measure, Side
from chairwright.person.expectation import (
    Expectation,
    expect,
    population_values,
    sole_mm,
)
from chairwright.person.measures import BODY_MASS, CATALOGUE, STATURE
from chairwright.units import Quantity

_LEG_DISTAL = frozenset({"lower_leg_length", "knee_height", "foot_length"})
_THIGH = frozenset({"buttock_thigh_depth", "buttock_knee_length"})
_ARM_DISTAL = frozenset({"forearm_length", "hand_length"})
LOST_WITH: dict[str, frozenset[str]] = {
    "foot": _LEG_DISTAL,
    "below_knee": _LEG_DISTAL,
    "through_knee": _LEG_DISTAL,
    "above_knee": _LEG_DISTAL | _THIGH,
    "hip": _LEG_DISTAL | _THIGH,
    "hand": _ARM_DISTAL,
    "below_elbow": _ARM_DISTAL,
    "through_elbow": _ARM_DISTAL,
    "above_elbow": _ARM_DISTAL | {"upper_arm_length"},
    "shoulder": _ARM_DISTAL | {"upper_arm_length"},
}
_SIDES: tuple[Side, ...] = ("left", "right")


@dataclass(frozen=True)
class MeasureSet:
    """Every measure of one client, measured or estimated, in catalogue order.

    Parameters
    ----------
    measures : tuple of Measure
        Sided measures stand once for each side; those of a lost part are absent.
    intact : mapping of str to float [mm or kg]
        Value of each kind for the body with every limb whole; used for stumps.
    """

    measures: tuple[Measure, ...]
    intact: Mapping[str, float]
    _by_key: dict[tuple[str, str], Measure] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        """Index the measures by name and side."""
        table = {(measure.name, measure.side): measure for measure in self.measures}
        object.__setattr__(self, "_by_key", table)

    def __iter__(self) -> Iterator[Measure]:
        """Iterate in catalogue order, left before right."""
        return iter(self.measures)

    def find(self, name: str, side: Side = "middle") -> Measure | None:
        """Return a measure, or None when that part of the body is lost.

        Parameters
        ----------
        name : str
            Catalogue name.
        side : {"left", "right", "middle"}
            Ignored for a measure without sides; ``"middle"`` of a sided one gives
            whichever side there is, left first.

        Returns
        -------
        Measure or None

        Raises
        ------
        KeyError
            When the catalogue has no such name.
        """
        if not CATALOGUE[name].sided:
            return self._by_key.get((name, "middle"))
        if side != "middle":
            return self._by_key.get((name, side))
        return self._by_key.get((name, "left")) or self._by_key.get((name, "right"))

    def get(self, name: str, side: Side = "middle") -> Measure:
        """Return a measure that must be there.

        Parameters
        ----------
        name : str
            Catalogue name.
        side : {"left", "right", "middle"}
            As for `find`.

        Returns
        -------
        Measure

        Raises
        ------
        KeyError
            When the part is lost or the catalogue has no such name.
        """
        measure = self.find(name, side)
        if measure is None:
            msg = f"{name} ({side}) is absent: that part of the body is lost"
            raise KeyError(msg)
        return measure

    def both(self, name: str) -> tuple[Measure | None, Measure | None]:
        """Return the left and the right measure.

        Parameters
        ----------
        name : str
            Catalogue name.

        Returns
        -------
        left, right : Measure or None
            None where the part is lost.
        """
        return self.find(name, "left"), self.find(name, "right")

    def shorter(self, name: str) -> Measure:
        """Return the shorter side of a measure (the only one when a side is lost).

        Parameters
        ----------
        name : str
            Catalogue name.

        Returns
        -------
        Measure
            The left one when both are equal.

        Raises
        ------
        KeyError
            When both sides are lost.
        """
        there = [measure for measure in self.both(name) if measure is not None]
        return min(there, key=lambda measure: measure.value) if there else self.get(name)


def complete(client: Client) -> MeasureSet:
    """Add an estimate for every measure that nobody took.

    Parameters
    ----------
    client : Client
        Body mass and either stature or sitting height must be measured.

    Returns
    -------
    MeasureSet
        Estimates carry ``estimated=True``, their basis in words, and a tolerance of about
        two residual standard deviations.

    Raises
    ------
    InputError
        When body mass, or both stature and sitting height, are missing.

    References
    ----------
    Gordon 2014 (ANSUR II): conditional expectation of a multivariate normal population,
    given every measured value, with the body mass of the whole body for amputees.
    """
    _require(client)
    found: list[Measure] = []
    intact: dict[str, float] = {BODY_MASS: whole_mass_kg(client)}
    for name, guess in expectations(client).items():
        rows = _of_kind(client, name, guess)
        found.extend(rows)
        intact.setdefault(name, _intact_value(client, name, guess))
    return MeasureSet(tuple(found), intact)


def whole_mass_kg(client: Client) -> float:
    """Body mass with every limb whole [kg]."""
    mass = next(m.value for m in client.measures if m.name == BODY_MASS)
    return client_intact_mass_kg(mass, client.amputations)


def expectations(client: Client) -> dict[str, Expectation]:
    """What the measured values lead one to expect of each measure, measured ones among them.

    Parameters
    ----------
    client : Client

    Returns
    -------
    dict of str to Expectation
        By catalogue name, in its order.
    """
    known = population_values(client, whole_mass_kg(client), lost_measures(client.amputations))
    sole = sole_mm(client)
    return {name: expect(name, client.sex, known, sole) for name in CATALOGUE}


def lost_measures(amputations: tuple[Amputation, ...]) -> frozenset[tuple[str, str]]:
    """Name what cannot be measured on this body.

    Parameters
    ----------
    amputations : tuple of Amputation

    Returns
    -------
    frozenset of (name, side)
    """
    return frozenset((name, a.side) for a in amputations for name in LOST_WITH[a.level])


def _require(client: Client) -> None:
    names = {measure.name for measure in client.measures}
    problems = []
    if BODY_MASS not in names:
        problems.append(_missing_problem("body mass", client))
    if not names & {STATURE, "sitting_height"}:
        problems.append(_missing_problem("stature or sitting height", client))
    if problems:
        raise InputError(*problems)


def _missing_problem(what: str, client: Client) -> Problem:
    return Problem(
        where=client.where.get("measures", f"client {client.reference}"),
        must=f"{what} must be measured",
        got="no such measure",
        remedy=f"Measure {what} and add it; the other measures can be estimated from it.",
    )


def _measured(client: Client, name: str, side: str) -> Measure | None:
    same = [measure for measure in client.measures if measure.name == name]
    exact = [measure for measure in same if measure.side == side]
    both = [measure for measure in same if measure.side == "middle"]
    return next(iter(exact + both), None)


def _of_kind(client: Client, name: str, guess: Expectation) -> list[Measure]:
    if not CATALOGUE[name].sided:
        measured = next((m for m in client.measures if m.name == name), None)
        return [measured or _estimate(name, "middle", guess)]
    rows = [_on_side(client, name, side, guess) for side in _SIDES]
    return [row for row in rows if row is not None]


def _on_side(client: Client, name: str, side: Side, guess: Expectation) -> Measure | None:
    measured = _measured(client, name, side)
    if measured is not None:
        basis, where = measured.basis, measured.where
        return Measure(
            name, side, measured.quantity, measured.tolerance, measured.estimated, basis, where
        )
    if (name, side) in lost_measures(client.amputations):
        return None
    return _estimate(name, side, _like_other_side(client, name, side) or guess)


def _like_other_side(client: Client, name: str, side: Side) -> Expectation | None:
    other: Side = "left" if side == "right" else "right"
    measured = _measured(client, name, other)
    if measured is None or (name, other) in lost_measures(client.amputations):
        return None
    basis = f"taken as the {other} side, which was measured"
    return Expectation(measured.value, 2.0 * measured.tolerance, basis)


def _estimate(name: str, side: Side, guess: Expectation) -> Measure:
    dimension = CATALOGUE[name].dimension
    unit = "kg" if dimension == "mass" else "mm"
    quantity = Quantity(round(guess.value, 1), f"{guess.value:.0f} {unit}", dimension)
    return Measure(name, side, quantity, round(guess.tolerance, 1), True, guess.basis)


def _intact_value(client: Client, name: str, guess: Expectation) -> float:
    lost = lost_measures(client.amputations)
    values = [m.value for m in client.measures if m.name == name and (name, m.side) not in lost]
    return sum(values) / len(values) if values else guess.value
