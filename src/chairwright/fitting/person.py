"""A client read, checked and seated, with all that is asked of the chair."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.chair.occupant import Occupant, seat
from chairwright.errors import InputError, Problem
from chairwright.fitting.weighed import WeighedClient, as_weighed
from chairwright.person.client import Client
from chairwright.person.estimates import MeasureSet, complete
from chairwright.person.plausibility import Review, review
from chairwright.places.model import Surroundings
from chairwright.targets.build import targets_for
from chairwright.targets.from_places import from_places
from chairwright.targets.target import Target


@dataclass(frozen=True)
class Person:
    """A client with measures completed and checked, seated, and what is asked of the chair.

    Parameters
    ----------
    client : Client
    measures : MeasureSet
    review : Review
    occupant : Occupant
    targets : tuple of Target
        Those of places come last.
    surroundings : Surroundings or None
        None when no places are known.
    weighed : WeighedClient or None
        What the occupant has from scales; None leaves the estimate of the centre of mass.
    """

    client: Client
    measures: MeasureSet
    review: Review
    occupant: Occupant
    targets: tuple[Target, ...]
    surroundings: Surroundings | None = None
    weighed: WeighedClient | None = None

    @property
    def own_targets(self) -> tuple[Target, ...]:
        """The targets that no place asks for."""
        return tuple(target for target in self.targets if not target.place)


def read_person(
    client: Client,
    surroundings: Surroundings | None = None,
    weighed: WeighedClient | None = None,
) -> Person:
    """Complete, check and seat a client, and make the targets.

    Parameters
    ----------
    client : Client
    surroundings : Surroundings or None
        Of this client; each place adds its targets.
    weighed : WeighedClient or None
        Of this client: the centre of mass is as measured.

    Returns
    -------
    Person

    Raises
    ------
    InputError
        For an unknown rule set, an own target that cannot be meant, measures that do not
        make a body, or places or scales of another client.
    """
    measures = complete(client)
    occupant = as_weighed(client.reference, seat(client, measures), weighed)
    targets = targets_for(client, measures)
    if surroundings is not None:
        check_reference(client, surroundings)
        targets += from_places(client, surroundings, knees=bool(occupant.knee_above_joint_mm))
    return Person(
        client=client,
        measures=measures,
        review=review(client),
        occupant=occupant,
        targets=tuple(targets),
        surroundings=surroundings,
        weighed=weighed,
    )


def check_reference(client: Client, surroundings: Surroundings) -> None:
    """Refuse places that are another client's.

    Parameters
    ----------
    client : Client
    surroundings : Surroundings

    Raises
    ------
    InputError
        With both references.
    """
    if surroundings.reference == client.reference:
        return
    where = f"{surroundings.where.get('reference', 'places file')}: reference"
    must = f"the places must be those of the client, {client.reference}"
    raise InputError(
        Problem(where, must, surroundings.reference, "Name the places file of this client.")
    )
