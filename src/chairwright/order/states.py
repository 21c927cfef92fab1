"""States of a client in the years to come, and whether a set-up holds its musts in one of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

import numpy as np

from chairwright.chair.buildable import reason_not
from chairwright.chair.rows import Rows
from chairwright.figures.evaluate import figures_of, realise
from chairwright.fitting.person import Person, read_person
from chairwright.fitting.settled import space_for
from chairwright.fitting.weighed import WeighedClient, as_weighed, carried_to
from chairwright.line.model import Line
from chairwright.order.reach import Sets
from chairwright.person.client import Client
from chairwright.person.growth import Growth, Track
from chairwright.places.model import Surroundings
from chairwright.search.any_of import find_any
from chairwright.search.space import Space
from chairwright.targets.target import Target
from chairwright.targets.verdict import broken

Index = dict[str, int]
MONTHS = 12


@dataclass(frozen=True)
class State:
    """The client on one track at one day.

    Parameters
    ----------
    months : int
        From now.
    track : Track
    person : Person
        Completed, seated, with targets.
    space : Space
        All that the line offers this client.
    told : dict
        Of set-ups looked at before, whether they hold.
    """

    months: int
    track: Track
    person: Person
    space: Space
    told: dict[tuple[int, ...], bool] = field(default_factory=dict, compare=False, repr=False)

    @cached_property
    def musts(self) -> tuple[Target, ...]:
        """What must hold."""
        return tuple(target for target in self.person.targets if target.must)

    def holds(self, index: Mapping[str, int]) -> bool:
        """Whether one set-up stands and holds every must."""
        key = tuple(index.values())
        if key not in self.told:
            self.told[key] = self._holds(index)
        return self.told[key]

    def _holds(self, index: Mapping[str, int]) -> bool:
        if not all(index[name] in options for name, options in self.space.allowed.items()):
            return False
        rows = self._rows(index)
        return not reason_not(rows) and not self._missed(rows)

    def missed(self, index: Mapping[str, int]) -> tuple[Target, ...]:
        """The musts that one set-up misses."""
        return self._missed(self._rows(index))

    def _rows(self, index: Mapping[str, int]) -> Rows:
        one = {name: np.array([at]) for name, at in index.items()}
        return realise(self.space.line, self.person.occupant, one)[0]

    def _missed(self, rows: Rows) -> tuple[Target, ...]:
        names = dict.fromkeys(target.figure for target in self.musts)
        values = figures_of(rows, self.person.occupant, names)
        return tuple(each for each in self.musts if broken(each, values[each.figure])[0])

    def any_within(self, sets: Sets) -> Index | None:
        """Any set-up of some sets that holds every must; None when there is none, proven."""
        part = self.within(sets)
        found = None if part.is_empty else find_any(part, self.musts)
        return None if found is None else found.index

    def within(self, sets: Sets) -> Space:
        """The part of the space that some sets leave."""
        allowed = {
            name: np.intersect1d(options, sets[name], assume_unique=True)
            for name, options in self.space.allowed.items()
        }
        return Space(self.space.line, self.space.occupant, allowed)


class States:
    """States by month and track, each made when first asked for.

    Parameters
    ----------
    growth : Growth
    line : Line
        With the client's extras.
    surroundings : Surroundings or None
    weighed : WeighedClient or None
        Of the client today; carried over to later days.
    made_to_order : bool
        Whether sizes made to order are open.
    """

    def __init__(
        self,
        growth: Growth,
        line: Line,
        surroundings: Surroundings | None = None,
        weighed: WeighedClient | None = None,
        *,
        made_to_order: bool = False,
    ) -> None:
        self.growth = growth
        self.line = line
        self.surroundings = surroundings
        self.weighed = weighed
        self.made_to_order = made_to_order
        self._made: dict[tuple[int, int], State] = {}

    @property
    def last(self) -> int:
        """Months to the end of the range."""
        return round(self.growth.years * MONTHS)

    @property
    def now(self) -> State:
        """The client as measured."""
        return self.at(0, 0)

    def at(self, months: int, track: int) -> State:
        """One state.

        Parameters
        ----------
        months : int
        track : int
            Place in ``growth.tracks``; 0 is the middle. All are the same at 0 months.
        """
        key = (months, track if months else 0)
        if key not in self._made:
            self._made[key] = self._make(*key)
        return self._made[key]

    def every(self, months: int) -> tuple[State, ...]:
        """The states of all tracks at one day, the ends of the range before the middle."""
        if not months:
            return (self.now,)
        count = len(self.growth.tracks)
        return tuple(self.at(months, track) for track in (*range(1, count), 0))

    def _make(self, months: int, track: int) -> State:
        way = self.growth.tracks[track]
        client = self.growth.at(way, months / MONTHS)
        person = self._person(client, months)
        space = space_for(client, self.line, person.occupant, made_to_order=self.made_to_order)
        return State(months, way, person, space)

    def _person(self, client: Client, months: int) -> Person:
        """The client as weighed today; on a later day with today's weighing carried over."""
        if not months or self.weighed is None:
            return read_person(client, self.surroundings, self.weighed)
        estimated = read_person(client, self.surroundings)
        weighed = carried_to(estimated.occupant, self.weighed)
        occupant = as_weighed(client.reference, estimated.occupant, weighed)
        return replace(estimated, occupant=occupant, weighed=weighed)
