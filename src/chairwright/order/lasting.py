"""Set-ups that stay good while the client changes, without a part being bought: exact.

A set-up lasts to a day when at every day of a stated grid up to it, in every state of the range,
some setting of its holes and adjustments holds every must. Sought is the trade-off between the fit
now and how long a set-up lasts.

The best set-up now is put to the states; where none of its settings holds, a group of choices is
found that already excludes it there, and every set-up with such a group is cut off (a rule of the
line, for this search). What is cut off lasts no longer than the set-up that showed it, so nothing
that belongs to the trade-off is lost.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from chairwright.figures.registry import FIGURES
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line, Rule
from chairwright.order.reach import Reach, Sets
from chairwright.order.states import Index, State, States
from chairwright.search.best import Best, find_best
from chairwright.search.space import Space
from chairwright.targets.target import Target

STEP_MONTHS = 6
"""The grid of days on which every state must have a setting."""

GEOMETRY = (
    "seat_width_mm", "seat_depth_mm", "back_height_mm", "arm_height_mm",
    "seat_to_back_angle_deg", "leg_support_length_mm",
)  # fmt: skip
"""Figures of the chair alone, whoever sits in it."""

Progress = Callable[[str], None]


@dataclass(frozen=True)
class Lasting:
    """A set-up of the trade-off.

    Parameters
    ----------
    index : dict of str to int
        Option position of every choice.
    cost : float
        Of the preferences missed now.
    months : int
        The last day of the grid to which it lasts; the end of the range when it lasts throughout.
    settings : tuple of dict
        Settings that show it, itself first: for every state of the grid one of them holds.
    """

    index: Index
    cost: float
    months: int
    settings: tuple[Index, ...]


@dataclass(frozen=True)
class Found:
    """The whole trade-off.

    Parameters
    ----------
    points : tuple of Lasting
        Best fit now first; each next one lasts longer and fits no better. Empty when nothing
        holds every must now.
    rounds : int
        Searches for a best set-up that it took.
    """

    points: tuple[Lasting, ...]
    rounds: int

    @property
    def longest(self) -> Lasting:
        """What lasts longest."""
        return self.points[-1]


def grid(states: States, step: int = STEP_MONTHS) -> tuple[int, ...]:
    """Days on which every state must have a setting [months], the end of the range among them."""
    return (*range(0, states.last, step), states.last)


def find_lasting(
    states: States, step: int = STEP_MONTHS, progress: Progress = lambda _: None
) -> Found:
    """Find the trade-off between the fit now and how long a set-up lasts.

    Parameters
    ----------
    states : States
    step : int
        Of the grid [months].
    progress : callable
        Told in a few words what is being done.

    Returns
    -------
    Found
    """
    days = grid(states, step)
    cuts, points, level, rounds = _Cuts(states), list[Lasting](), 0, 0
    while level < len(days):
        best, rounds = cuts.best(days[: level + 1]), rounds + 1
        if best is None:
            break
        tried = Tried(states, cuts.reach, best.index)
        failing = next((s for at in reversed(days[: level + 1]) if (s := tried.fails(at))), None)
        if failing is None:
            level = tried.first_failing(days, level + 1)
            lasts = days[level - 1]
            points.append(Lasting(best.index, best.cost, lasts, tuple(tried.settings)))
            progress(f"one that lasts {lasts} months" if lasts else "the best fit now")
            failing = None if level == len(days) else tried.fails(days[level])
        if failing is not None and not cuts.add(best.index, failing):
            break
    return Found(tuple(points), rounds)


def how_long(states: States, index: Index, cost: float, step: int = STEP_MONTHS) -> Lasting:
    """How long one given set-up lasts; -1 months when it does not hold its musts even now.

    Parameters
    ----------
    states : States
    index : dict of str to int
    cost : float
        Of the preferences missed now.
    step : int
        Of the grid [months].
    """
    days, tried = grid(states, step), Tried(states, Reach(states.line), index)
    level = tried.first_failing(days, 0)
    return Lasting(index, cost, days[level - 1] if level else -1, tuple(tried.settings))


class Tried:
    """One set-up put to the states, with the settings found for it so far.

    Parameters
    ----------
    states : States
    reach : Reach
    index : dict of str to int
    """

    def __init__(self, states: States, reach: Reach, index: Index) -> None:
        self._states = states
        self.sets = reach.of(index)
        self.settings: list[Index] = [index]

    def fails(self, months: int) -> State | None:
        """A state of one day in which no setting holds; None when each has one."""
        return next((s for s in self._states.every(months) if self.setting(s) is None), None)

    def setting(self, state: State) -> Index | None:
        """A setting that holds in one state; those that served last are tried first."""
        for at in range(len(self.settings) - 1, -1, -1):
            if state.holds(self.settings[at]):
                self.settings.append(self.settings.pop(at)) if at else None
                return self.settings[at and -1]
        found = state.any_within(self.sets)
        if found is not None:
            self.settings.append(found)
        return found

    def first_failing(self, days: Sequence[int], start: int) -> int:
        """Place of the first day that fails; one past the last when none does."""
        places = range(start, len(days))
        return next((at for at in places if self.fails(days[at])), len(days))


class _Cuts:
    """The space of set-ups to begin with, less what is known not to last."""

    def __init__(self, states: States) -> None:
        self._states = states
        self.reach = Reach(states.line)
        self._space = states.now.space
        self._rules: list[Rule] = []
        self._geometry = tuple(n for n in GEOMETRY if self._settled_by_parts(n))

    def _settled_by_parts(self, name: str) -> bool:
        depends = FIGURES[name].depends
        return all(self.reach.fixed(each, self._space.allowed[each]) for each in depends)

    def best(self, days: Sequence[int]) -> Best | None:
        """Best set-up now of those that are not cut off."""
        line = replace(self._states.line, rules=(*self._states.line.rules, *self._rules))
        space = replace(self._space, line=line)
        if space.is_empty:
            return None
        return find_best(space, [*self._states.now.person.targets, *self._implied(days)])

    def _implied(self, days: Sequence[int]) -> Iterator[Target]:
        """Later musts on figures that only a new part would change: they must hold now."""
        for at in days[1:]:
            for state in self._states.every(at):
                yield from (must for must in state.musts if must.figure in self._geometry)

    def add(self, index: Index, state: State) -> bool:
        """Cut off a set-up that has no setting in a state, and all that fail for its reason.

        False when that is every set-up.
        """
        group = _Group(self.reach, state, self._space, index).smallest()
        if not group:
            return False
        if len(group) == 1:
            ((name, options),) = group.items()
            left = np.setdiff1d(self._space.allowed[name], list(options))
            self._space = replace(self._space, allowed={**self._space.allowed, name: left})
            return True
        self._rules.append(_never(self._states.line, group))
        return True


def _never(line: Line, group: dict[str, frozenset[int]]) -> Rule:
    """The rule that not all choices of a group have their options."""
    codes = {
        name: frozenset(line.choices[name].options[at].code for at in options)
        for name, options in group.items()
    }
    *first, last = codes
    every = frozenset(line.choices[last].codes)
    return Rule(
        {name: codes[name] for name in first},
        {last: every - codes[last]},
        "no setting of these parts holds later",
    )


class _Group:
    """The choices that exclude a set-up in one state, as few and as wide as can be shown."""

    def __init__(self, reach: Reach, state: State, space: Space, index: Index) -> None:
        self._reach, self._state, self._space, self._index = reach, state, space, index
        self._whole = {
            name: reach.union(name, map(int, options)) for name, options in space.allowed.items()
        }

    def smallest(self) -> dict[str, frozenset[int]]:
        """Option positions of each choice of the group: any set-up with them fails."""
        wide: dict[str, frozenset[int]] = {}
        for name in self._needed([], list(self._by_weight())):
            wide[name] = frozenset({self._index[name]})
        for name in wide:
            wide[name] = self._widened(name, wide)
        return wide

    def _by_weight(self) -> Iterator[str]:
        """Choices that set-ups can differ in, the least likely to matter last."""
        return (name for name in CHOICES if len(self._space.allowed[name]) > 1)

    def _needed(self, kept: list[str], rest: list[str]) -> list[str]:
        """A smallest part of ``rest`` that together with ``kept`` excludes (divide and conquer)."""
        if self._excludes({name: frozenset({self._index[name]}) for name in kept}):
            return []
        if len(rest) == 1:
            return rest
        half = len(rest) // 2
        first, second = rest[:half], rest[half:]
        from_second = self._needed([*kept, *first], second)
        from_first = self._needed([*kept, *from_second], first) if first else []
        return [*from_first, *from_second]

    def _widened(self, name: str, group: dict[str, frozenset[int]]) -> frozenset[int]:
        """The option of one choice with all smaller ones, all larger ones, or those of a part."""
        options, own = self._space.allowed[name], self._index[name]
        held = group[name]
        for more in (options[options < own], options[options > own]):
            wider = held | frozenset(map(int, more))
            if wider != held and self._excludes({**group, name: wider}):
                held = wider
        return held

    def _excludes(self, group: dict[str, frozenset[int]]) -> bool:
        """Whether no setting of any set-up with these options holds in the state, proven."""
        sets: Sets = dict(self._whole)
        for name, options in group.items():
            sets[name] = self._reach.union(name, options)
        return self._state.any_within(sets) is None
