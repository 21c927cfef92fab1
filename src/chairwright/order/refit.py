"""Fitting a chair again: from the chair as it is and new measures to the smallest changes.

What is sought is the exact trade-off between money for parts, minutes of work and the cost of the
preferences that are missed, among all set-ups that hold every must. The first point is the
smallest change: the least money, then the least work.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

import numpy as np

from chairwright.chair.rows import IndexArray
from chairwright.errors import InputError, Problem
from chairwright.fitting.described import Described, describe, why_not_buildable
from chairwright.fitting.extras import with_extras
from chairwright.fitting.fit import MOST_CORRECTIONS, Extent
from chairwright.fitting.person import Person
from chairwright.fitting.settled import space_for
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.measured.gains import Change as Gain
from chairwright.measured.gains import changes
from chairwright.order.change import Change, change_between, new_chair
from chairwright.order.change_table import ChangeTable, change_table, new_chair_table
from chairwright.order.chosen import chosen
from chairwright.person.client import Client
from chairwright.search.change_front import ChangeFront, Traded, find_change_front
from chairwright.search.reasons import Reasons, find_reasons
from chairwright.search.space import Space, open_space
from chairwright.validation import suggest

MONEY_STEP, MINUTE_STEP = 0.01, 1.0
MONEY_WORTH, MINUTE_WORTH = 0.0002, 0.1
"""How much a step counts where the search looks first; they change no answer."""


@dataclass(frozen=True)
class Present:
    """The chair as it is.

    Parameters
    ----------
    name : str
        What its set-up is called.
    setup : Described
        As it was fitted, for the person of that day.
    client : Client
        The client as that set-up knows him or her.
    line : str
        The line as the set-up file names it; empty without a file.
    buys : Line or None
        For a chair of another maker: the line of which a chair is bought; None for a chair
        that is changed.
    kept : dict of str to str
        For a chair of another maker: what goes on the new chair, choice to code of that line.
    """

    name: str
    setup: Described
    client: Client
    line: str = ""
    buys: Line | None = None
    kept: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True)
class RefitPoint:
    """One trade-off: a set-up that holds every must, and what it takes.

    Parameters
    ----------
    number : int
        From 1, the smallest change first.
    change : Change
    cost : float
        Of the preferences missed, as printed: steps of each figure's scale, weighted.
    """

    number: int
    change: Change
    cost: float

    @property
    def index(self) -> dict[str, int]:
        """Option position of every choice."""
        return self.change.last.index


@dataclass(frozen=True)
class Refit:
    """What came out.

    Parameters
    ----------
    person : Person
        The client as he or she is now.
    present : Present
    now : Described or None
        The present set-up judged by today's measures; None when it cannot carry the client now.
    why_not : str
        Why it cannot; empty when it can.
    points : tuple of RefitPoint
        The whole trade-off; empty when nothing of the line holds every must.
    count, looked_at : int
        Set-ups that can be reached, and how many the proof took.
    extent : {"standard", "needed"}
        Whether sizes made to order had to be looked at.
    reasons : Reasons or None
        Why the present frame does not do, when no point keeps it; where there is no point at
        all, why nothing of the line does.
    nearest : tuple of Change
        What the set-up of each correction of the reasons would take.
    """

    person: Person
    present: Present
    now: Described | None
    why_not: str
    points: tuple[RefitPoint, ...]
    count: int
    looked_at: int
    extent: Extent
    reasons: Reasons | None
    nearest: tuple[Change, ...] = ()

    @property
    def line(self) -> Line:
        """The line that the chair is of, or of which one is bought."""
        return self.present.buys or self.present.setup.line

    @property
    def new_chair(self) -> bool:
        """Whether the chair as it is is of another maker, so that a whole one is bought."""
        return self.present.buys is not None

    @property
    def nothing_to_change(self) -> bool:
        """Whether the chair as it is holds every must."""
        return bool(self.points) and not self.points[0].change.items

    @property
    def frame_kept(self) -> bool:
        """Whether some point keeps the present frame."""
        return any(not point.change.new_frame for point in self.points)


def refit(person: Person, present: Present) -> Refit:
    """Find every smallest change of a chair that meets the client's targets again.

    Parameters
    ----------
    person : Person
        The client as he or she is now, with the places that matter.
    present : Present

    Returns
    -------
    Refit

    Raises
    ------
    InputError
        When the chair is another client's, or the client's decisions leave no option.
    """
    _check_client(person, present)
    line = with_extras(
        present.buys or present.setup.line, person.client.extras, person.client.where
    )
    if present.buys is None:
        table = change_table(line, present.setup.index)
        now, why_not = _judged_now(line, person, present)
    else:
        check_kept(line, present.kept)
        table = new_chair_table(line, present.kept)
        now, why_not = present.setup, ""
    space, front, extent = _searched(person, line, table)

    def change(index: Mapping[str, int]) -> Change:
        if present.buys is not None:
            return new_chair(chosen(line, index), present.kept)
        return change_between(present.setup, chosen(line, index))

    points = tuple(
        RefitPoint(number, change(found.index), found.cost)
        for number, found in enumerate(front.points, start=1)
    )
    reasons = _reasons(space, table, person, points)
    return Refit(
        person=person,
        present=present,
        now=now,
        why_not=why_not,
        points=points,
        count=space.count,
        looked_at=front.looked_at,
        extent=extent,
        reasons=reasons,
        nearest=() if reasons is None else tuple(change(e.index) for e in reasons.corrections),
    )


def described(found: Refit, change: Change) -> Described:
    """Everything that is said of a set-up for the client as he or she is now.

    Parameters
    ----------
    found : Refit
    change : Change
        One of its points' or of the nearest.

    Returns
    -------
    Described
    """
    return _described(change.last.line, found.person, change.last.index)


def gains(found: Refit, setup: Described) -> tuple[Gain, ...]:
    """What a set-up changes beside the chair as it is; empty when that cannot be judged.

    Parameters
    ----------
    found : Refit
    setup : Described
        From `described`.

    Returns
    -------
    tuple of Gain
    """
    return () if found.now is None else changes(found.now, setup)


def _check_client(person: Person, present: Present) -> None:
    if person.client.reference != present.client.reference:
        must = f"the chair must be that of the client, {person.client.reference}"
        remedy = (
            "Name a set-up of this client. A chair that comes from somebody else: write its codes "
            "into a set-up file that names this client."
        )
        raise InputError(Problem("--from", must, present.client.reference, remedy))


def check_kept(line: Line, kept: Mapping[str, str]) -> None:
    """Refuse parts said to be kept that the line does not know.

    Parameters
    ----------
    line : Line
    kept : mapping of str to str

    Raises
    ------
    InputError
        With every word at fault.
    """
    problems = []
    for name, code in kept.items():
        if name not in CHOICES:
            must = "what is kept must be a choice of the line"
            problems.append(Problem("--keep", must, repr(name), suggest(name, CHOICES)))
        elif code not in line.choices[name].codes:
            must = f"what is kept must be a code of {name} in the line {line.name}"
            codes = line.choices[name].codes
            problems.append(Problem("--keep", must, repr(code), suggest(code, codes)))
    if problems:
        raise InputError(*problems)


def _described(line: Line, person: Person, index: Mapping[str, int]) -> Described:
    return describe(line, person.occupant, index, person.targets, person.surroundings)


def _judged_now(line: Line, person: Person, present: Present) -> tuple[Described | None, str]:
    """The present set-up by today's measures, with the extras of today."""
    index = present.setup.index
    feet = open_space(line, person.occupant, {}).allowed["foot_supports"]
    if index["foot_supports"] not in feet:
        code = present.setup.options["foot_supports"].code
        return None, f"the feet that push and rest now do not go with foot supports: {code}"
    reason = why_not_buildable(line, person.occupant, index)
    return (None, reason) if reason else (_described(line, person, index), "")


def _searched(person: Person, line: Line, table: ChangeTable) -> tuple[Space, ChangeFront, Extent]:
    space = _reachable(person, line, table, made_to_order=False)
    front = _front(space, table, person)
    if front.points:
        return space, front, "standard"
    more = _reachable(person, line, table, made_to_order=True)
    if all(len(more.allowed[name]) == len(each) for name, each in space.allowed.items()):
        return space, front, "standard"
    return more, _front(more, table, person), "needed"


def _front(space: Space, table: ChangeTable, person: Person) -> ChangeFront:
    traded = (
        Traded("money", table.money, MONEY_STEP, MONEY_WORTH),
        Traded("minutes", table.minutes, MINUTE_STEP, MINUTE_WORTH),
    )
    return find_change_front(space, person.targets, traded)


def _reachable(person: Person, line: Line, table: ChangeTable, *, made_to_order: bool) -> Space:
    """What the client's decisions leave, and the parts that the chair has already."""
    space = space_for(person.client, line, person.occupant, made_to_order=made_to_order)
    if min(table.index.values()) < 0:
        return _with_kept(space, table)
    decided = {*person.client.fixed_choices, "foot_supports"}
    allowed = {
        name: options if name in decided else np.union1d(options, _on_the_chair(table, name))
        for name, options in space.allowed.items()
    }
    if person.occupant.hands_that_push:
        rims = line.column("hand_rim", "fitted")
        allowed["hand_rim"] = allowed["hand_rim"][rims[allowed["hand_rim"]] > 0]
    return replace(space, allowed=allowed)


def _with_kept(space: Space, table: ChangeTable) -> Space:
    """For a new chair: the parts that are kept, and of all else what the decisions leave."""
    kept = {n: np.array([at], dtype=np.intp) for n, at in table.index.items() if at >= 0}
    return replace(space, allowed={**space.allowed, **kept})


def _on_the_chair(table: ChangeTable, name: str) -> IndexArray:
    """The present option, and the other holes and settings of its part."""
    options = table.line.choices[name].options
    here = options[table.index[name]]
    same = [at for at, each in enumerate(options) if here.part and each.part == here.part]
    return np.array(same or [table.index[name]], dtype=np.intp)


def _reasons(
    space: Space, table: ChangeTable, person: Person, points: tuple[RefitPoint, ...]
) -> Reasons | None:
    """Why the present frame does not do; why nothing does, when there is no point at all."""
    if any(not point.change.new_frame for point in points):
        return None
    asked = _frame_kept(space, table) if points else space
    if asked.is_empty or not asked.count:
        return Reasons((), ())
    return find_reasons(asked, person.targets, MOST_CORRECTIONS)


def _frame_kept(space: Space, table: ChangeTable) -> Space:
    return replace(
        space,
        allowed={
            name: options[options == table.index[name]] if name in table.line.later.frame
            else options
            for name, options in space.allowed.items()
        },
    )  # fmt: skip
