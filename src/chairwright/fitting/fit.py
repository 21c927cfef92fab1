"""The whole fitting of one client: measures, targets, space, best set-up or reasons, front."""

from __future__ import annotations

import math
from collections.abc import Callable
from concurrent.futures import Executor
from dataclasses import dataclass, replace
from functools import partial
from typing import Any, Literal, TypeVar

from chairwright.fitting.alone import Alone, judged_alone
from chairwright.fitting.described import Described, describe
from chairwright.fitting.extras import with_extras
from chairwright.fitting.person import Person, read_person
from chairwright.fitting.settled import space_for
from chairwright.fitting.sureness import Sureness
from chairwright.fitting.to_order import (
    MONEY,
    ToOrder,
    find_cheapest,
    offers_more,
    surcharge_of,
    within,
)
from chairwright.fitting.trade import usual_objectives
from chairwright.line.model import Line
from chairwright.person.client import Client
from chairwright.places.model import Surroundings
from chairwright.search.best import Best, cost_of, find_best
from chairwright.search.front import Front, Objective, find_front
from chairwright.search.prepared import Prepared, prepare
from chairwright.search.reasons import Reasons, find_reasons
from chairwright.search.space import Space

Progress = Callable[[str], None]
Index = dict[str, int]
T = TypeVar("T")
Extent = Literal["standard", "needed", "always"]


@dataclass(frozen=True)
class Fit:
    """What came out for one client and one line.

    Parameters
    ----------
    person : Person
    line : Line
    space : Space
        What was looked at last: the standard range, or that and the sizes made to order.
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
    extent : {"standard", "needed", "always"}
        Whether sizes made to order were not looked at, were when the standard range had no
        set-up that holds every must, or were from the start.
    without_places : Alone or None
        The best set-up if no place asked for anything, judged by the places as well; None when
        nobody asked, or when nothing meets the musts even so.
    sure : Sureness or None
        Whether musts hold with their spread, when that was asked for; see `fitting.sure.surest`.
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
    extent: Extent = "standard"
    without_places: Alone | None = None
    sure: Sureness | None = None


MOST_CORRECTIONS = 4
"""Corrections sought unless all are asked for: few read more, and each takes a search or two."""


def fit_client(
    client: Client,
    line: Line,
    *,
    surroundings: Surroundings | None = None,
    objectives: tuple[Objective, ...] | None = (),
    to_order: ToOrder = "when-needed",
    most_corrections: int | None = MOST_CORRECTIONS,
    alone: bool = False,
    progress: Progress = lambda _: None,
) -> Fit:
    """Find the best set-up of a line for a client, or the reasons why there is none.

    Parameters
    ----------
    client : Client
    line : Line
    surroundings : Surroundings or None
        Of the client; None leaves places out.
    objectives : tuple of Objective, or None
        What the front trades off; empty: what `trade.usual_objectives` says; None: no front.
    to_order : {"when-needed", "always", "never"}
        When sizes made to order are looked at. Where they are needed, the least surcharge goes
        before the preferences.
    most_corrections : int or None
        After how many corrections the search for reasons stops; None for all of them.
    alone : bool
        Whether to find as well what would be best if no place asked for anything.
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
    person = read_person(client, surroundings)
    return fit_person(
        person,
        line,
        objectives=objectives,
        to_order=to_order,
        most_corrections=most_corrections,
        alone=alone,
        progress=progress,
    )


def fit_person(
    person: Person,
    line: Line,
    *,
    objectives: tuple[Objective, ...] | None = (),
    to_order: ToOrder = "when-needed",
    most_corrections: int | None = MOST_CORRECTIONS,
    alone: bool = False,
    progress: Progress = lambda _: None,
    apart: Executor | None = None,
) -> Fit:
    """Find the best set-up for a client who is read already, weighed or not.

    Parameters
    ----------
    person : Person
    line : Line
    objectives, to_order, most_corrections, alone, progress
        As for `fit_client`.
    apart : Executor or None
        Where the front is traced while the best set-up is searched, and then what would be best
        without places, and the amounts of corrections are worked out; None: one after the other.

    Returns
    -------
    Fit

    Raises
    ------
    InputError
        When the client file asks for what cannot be meant.
    """
    client = person.client
    line = with_extras(line, client.extras, client.where)
    front = objectives is not None
    objectives = objectives or usual_objectives(person.occupant)
    begun = None
    if front and apart is not None:
        begun = apart.submit(_front_of_all, person, line, objectives, to_order == "always")
    searched = _search(person, line, to_order, progress)
    other = None
    if alone and person.surroundings is not None:
        other = _later(apart, _best_alone, person, line, to_order, searched.known)
    reasons, setup = None, None
    if searched.best is not None:
        setup = _described(person, line, searched.best.index)
    else:
        reasons, setup = _reasons(person, line, searched, most_corrections, progress, apart)
    found = None
    if front and searched.best is not None:
        progress(f"{searched.best.looked_at:,} looked at; tracing the trade-off front")
        if begun is None or searched.extent == "needed":
            found = _front(person, searched, objectives)
        else:
            found = begun.result()
    index = None if other is None else other()
    return Fit(
        person=person,
        line=line,
        space=searched.space,
        count=searched.count,
        best=searched.best,
        reasons=reasons,
        setup=setup,
        front=found,
        objectives=objectives,
        extent=searched.extent,
        without_places=None if index is None else _judged(person, line, index),
    )


def _described(person: Person, line: Line, index: Index) -> Described:
    return describe(line, person.occupant, index, person.targets, person.surroundings)


def _judged(person: Person, line: Line, index: Index) -> Alone:
    return judged_alone(line, person.occupant, index, person.targets)


def _later(apart: Executor | None, task: Callable[..., T], *args: Any) -> Callable[[], T]:
    """What a task answers: worked out apart from now on, or here when it is asked for."""
    return partial(task, *args) if apart is None else apart.submit(task, *args).result


def _best_alone(person: Person, line: Line, to_order: ToOrder, known: Index | None) -> Index | None:
    """The best set-up if no place asked for anything; what it takes and gives can be pickled."""
    own = replace(person, targets=person.own_targets, surroundings=None)
    best = _search(own, line, to_order, lambda _: None, known).best
    return None if best is None else best.index


@dataclass(frozen=True)
class _Searched:
    prepared: Prepared
    count: int
    best: Best | None
    extent: Extent

    @property
    def space(self) -> Space:
        return self.prepared.space

    @property
    def known(self) -> Index | None:
        """The best, where it is one of the set-ups that are looked at first."""
        return None if self.best is None or self.extent == "needed" else self.best.index


def _search(
    person: Person, line: Line, to_order: ToOrder, progress: Progress, known: Index | None = None
) -> _Searched:
    """Search the standard range, and the sizes made to order when they are wanted.

    Parameters
    ----------
    person : Person
    line : Line
    to_order : {"when-needed", "always", "never"}
    progress : callable
    known : dict of str to int, or None
        One of the set-ups that are looked at first: nothing that is worse has to be looked at.
    """
    standard = space_for(person.client, line, person.occupant)
    extended = space_for(person.client, line, person.occupant, made_to_order=True)
    more = offers_more(standard, extended)
    if to_order != "always" or not more:
        found = _searched(person, standard, "standard", progress, known)
        if found.best is not None or to_order == "never" or not more:
            return found
        progress("no standard set-up meets every must; looking at sizes made to order")
        return _searched(person, extended, "needed", progress)
    return _searched(person, extended, "always", progress, known)


def _searched(
    person: Person, space: Space, extent: Extent, progress: Progress, known: Index | None = None
) -> _Searched:
    count, prepared = space.count, prepare(space)
    progress(f"{count:,} set-ups; looking for the best")
    best = None
    if count and extent == "needed":
        best = find_cheapest(prepared, person.targets)
    elif count:
        at_most = math.inf if known is None else cost_of(space, known, person.targets)
        best = find_best(prepared, person.targets, at_most)
    return _Searched(prepared, count, best, extent)


def _front_of_all(
    person: Person, line: Line, objectives: tuple[Objective, ...], made_to_order: bool
) -> Front:
    """The front of all set-ups of a range, for a process that has nothing prepared."""
    space = space_for(person.client, line, person.occupant, made_to_order=made_to_order)
    return find_front(prepare(space), person.targets, objectives)


def _front(person: Person, searched: _Searched, objectives: tuple[Objective, ...]) -> Front:
    """The front; at no more than the least surcharge unless money is among its figures."""
    targets = person.targets
    money = any(aim.figure in MONEY for aim in objectives)
    if searched.extent == "needed" and searched.best is not None and not money:
        targets = within(targets, surcharge_of(searched.space, searched.best.index))
    return find_front(searched.prepared, targets, objectives)


def _reasons(
    person: Person,
    line: Line,
    searched: _Searched,
    most: int | None,
    progress: Progress,
    apart: Executor | None,
) -> tuple[Reasons, Described | None]:
    """The reasons, and the set-up of the first correction."""
    progress("no set-up meets every must; looking for the reasons")
    if not searched.count:
        return Reasons((), ()), None
    nearest: list[Described] = []
    reasons = find_reasons(
        searched.prepared,
        person.targets,
        most,
        lambda found: progress(f"reasons: {found} so far"),
        apart,
        find_best if searched.extent == "standard" else find_cheapest,
        lambda correction: nearest.append(_described(person, line, correction.index)),
    )
    return reasons, nearest[0] if nearest else None
