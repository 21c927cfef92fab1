"""A client's centre of mass from scales, in place of the body model's."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.errors import InputError, Problem
from chairwright.scales.carried import OccupantShift, weighed_occupant


@dataclass(frozen=True)
class WeighedClient:
    """What one weighing says of a client, for every set-up.

    Parameters
    ----------
    reference : str
        The client's.
    where : str
        The scales file, to be named when it does not go with a client.
    dated : str
        Day of the weighing; empty when not said.
    estimated : Occupant
        As the body model had the client when the set-up was weighed.
    shift : OccupantShift
    """

    reference: str
    where: str
    dated: str
    estimated: Occupant
    shift: OccupantShift

    @property
    def mass_ratio(self) -> float:
        """Mass on the scales over the mass of the body model."""
        return self.shift.mass_kg / self.estimated.body.mass_kg


def as_weighed(reference: str, occupant: Occupant, weighed: WeighedClient | None) -> Occupant:
    """The occupant with what the scales said.

    Parameters
    ----------
    reference : str
        The client's.
    occupant : Occupant
        As estimated.
    weighed : WeighedClient or None
        None leaves the estimate.

    Returns
    -------
    Occupant

    Raises
    ------
    InputError
        When another client was weighed, or the same one with other measures.
    """
    if weighed is None:
        return occupant
    if weighed.reference != reference:
        must = f"the client on the scales must be the client of the set-up, {reference}"
        remedy = "Name the scales file of this client."
        raise InputError(Problem(weighed.where, must, weighed.reference, remedy))
    if weighed.estimated.body != occupant.body:
        must = "the set-up that was weighed must name a client file with the same measures"
        got = f"another body than that of {reference} here"
        remedy = "Weigh again after a change of measures, or name the same client file in both."
        raise InputError(Problem(weighed.where, must, got, remedy))
    return weighed_occupant(occupant, weighed.shift)


def carried_to(later: Occupant, weighed: WeighedClient) -> WeighedClient:
    """A weighing of today put to the same client on a later day, grown or changed.

    Parameters
    ----------
    later : Occupant
        As estimated on that day.
    weighed : WeighedClient

    Returns
    -------
    WeighedClient
        The mass in the ratio of today's; the shift as it is. The scales know nothing of that day:
        this is an assumption (theory: growth).
    """
    grown = later.body.mass_kg / weighed.estimated.body.mass_kg
    scale = np.array([grown, 1.0, 1.0, 1.0])
    shift = replace(
        weighed.shift,
        mass_kg=weighed.shift.mass_kg * grown,
        covariance=weighed.shift.covariance * np.outer(scale, scale),
    )
    return replace(weighed, estimated=later, shift=shift)
