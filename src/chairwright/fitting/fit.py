"""The whole fitting of one client: measures, targets, space, best set-up or reasons, front."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from chairwright.chair.occupant import Occupant, seat
from chairwright.fitting.described import Described, describe
from chairwright.fitting.extras import with_extras
from chairwright.fitting.settled import space_for
from chairwright.line.model import Line
from chairwright.person.client import Client
from chairwright.person.estimates import MeasureSet, complete
from chairwright.person.plausibility import Review, review
from chairwright.search.best import Best, find_best
from chairwright.search.front import Front, Objective, find_front
from chairwright.search.prepared import prepare
from chairwright.search.reasons import Reasons, find_reasons
from chairwright.search.space import Space
from chairwright.targets.build import targets_for
from chairwright.targets.target import Target

Progress = Callable[[str], None]

BALANCE = Objective("tip_least_deg", "max")
WIDTH = Objective("overall_width_mm", "min")
REACH = Objective("push_reach_deg", "min")
TURNING = Objective("turning_diameter_mm", "min")


@dataclass(frozen=True)
class Person:
    """A client with measures completed and checked, seated, and what is asked of the chair."""

    client: Client
    measures: MeasureSet
    review: Review
    occupant: Occupant
    targets: tuple[Target, ...]


@dataclass(frozen=True)
class Fit:
    """What came out for one client and one line.

    Parameters
    ----------
    person : Person
    line : Line
    space : Space
    count : int
        Set-ups in the space, exact.
    best : Best or None
        None when no set-up holds every must.
    reasons : Reasons or None
        Why there is none; None when there is one.
    setup : Described or None
        The best set-up, or the nearest one: that of the first correction.
    front : Front or None
        None when nothing fits or nobody asked.
    objectives : tuple of Objective
        What the front trades off.
    """

    person: Person
    line: Line
    space: Space
    count: int
    best: Best | None
    reasons: Reasons | None
    setup: Described | None
    front: Front | None
    objectives: tuple[Objective, ...]


MOST_CORRECTIONS = 4
"""Corrections sought unless all are asked for: few read more, and each takes a search or two."""


def read_person(client: Client) -> Person:
    """Complete, check and seat a client, and make the targets.

    Parameters
    ----------
    client : Client

    Returns
    -------
    Person

    Raises
    ------
    InputError
        For an unknown rule set, an own target that cannot be meant, or measures that do not
        make a body.
    """
    measures = complete(client)
    return Person(
        client=client,
        measures=measures,
        review=review(client),
        occupant=seat(client, measures),
        targets=tuple(targets_for(client, measures)),
    )


def objectives_for(occupant: Occupant) -> tuple[Objective, ...]:
    """What the trade-off front is about: balance, width, and the push or the turning circle."""
    return (BALANCE, WIDTH, REACH if occupant.hands_that_push else TURNING)


def fit_client(
    client: Client,
    line: Line,
    *,
    front: bool = True,
    most_corrections: int | None = MOST_CORRECTIONS,
    progress: Progress = lambda _: None,
) -> Fit:
    """Find the best set-up of a line for a client, or the reasons why there is none.

    Parameters
    ----------
    client : Client
    line : Line
    front : bool
        Whether the trade-off front is wanted.
    most_corrections : int or None
        After how many corrections the search for reasons stops; None for all of them.
    progress : callable
        Told in a few words what is being done.

    Returns
    -------
    Fit

    Raises
    ------
    InputError
        When the client file asks for what cannot be meant.
    """
    person, line = read_person(client), with_extras(line, client.extras, client.where)
    space = space_for(client, line, person.occupant)
    count = space.count
    progress(f"{count:,} set-ups; looking for the best")
    prepared = prepare(space)
    best = find_best(prepared, person.targets) if count else None
    objectives = objectives_for(person.occupant)
    reasons, setup, found = None, None, None
    if best is not None:
        setup = describe(line, person.occupant, best.index, person.targets)
        if front:
            progress(f"{best.looked_at:,} looked at; tracing the trade-off front")
            found = find_front(prepared, person.targets, objectives)
    else:
        progress("no set-up meets every must; looking for the reasons")
        reasons = Reasons((), ())
        if count:
            reasons = find_reasons(
                prepared,
                person.targets,
                most_corrections,
                lambda found: progress(f"reasons: {found} so far"),
            )
        if reasons.corrections:
            nearest = reasons.corrections[0].index
            setup = describe(line, person.occupant, nearest, person.targets)
    return Fit(person, line, space, count, best, reasons, setup, found, objectives)
