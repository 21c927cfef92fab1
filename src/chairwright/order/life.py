"""The chair's life: which setting serves from when till when, and when it is looked at again."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from chairwright.order.change import Change, change_between
from chairwright.order.chosen import SetUp, chosen
from chairwright.order.lasting import Lasting, Tried, grid
from chairwright.order.reach import Reach
from chairwright.order.states import MONTHS, Index, States
from chairwright.person.growth import Track
from chairwright.search.any_of import find_any
from chairwright.search.best import find_best
from chairwright.targets.target import Target


@dataclass(frozen=True)
class WornOut:
    """The first day on which a setting holds no longer.

    Parameters
    ----------
    months : int
        From now.
    track : str
        On which it happens.
    musts : tuple of Target
        Those that are missed.
    beyond : tuple of Target
        Those of them that no setting of these parts holds by itself.
    reset : bool
        Whether another setting of the same parts holds every must on that day.
    """

    months: int
    track: str
    musts: tuple[Target, ...]
    beyond: tuple[Target, ...]
    reset: bool


@dataclass(frozen=True)
class Serving:
    """One setting while it serves, on one track.

    Parameters
    ----------
    start, end : int
        Months from now; at the end it is set anew, or the range ends, or new parts are needed.
    index : dict of str to int
        Option position of every choice.
    setup : SetUp
    change : Change or None
        From the setting before; None for the first.
    ends_by : WornOut or None
        None when it serves to the end of the range.
    """

    start: int
    end: int
    index: Index
    setup: SetUp
    change: Change | None
    ends_by: WornOut | None


@dataclass(frozen=True)
class Way:
    """What serves from when till when, on one track.

    Parameters
    ----------
    track : Track
    servings : tuple of Serving
        Each begins where the one before ends; the delivered setting first.
    """

    track: Track
    servings: tuple[Serving, ...]


@dataclass(frozen=True)
class Life:
    """One set-up over the years to come.

    Parameters
    ----------
    lasting : Lasting
    ways : tuple of Way
        One for each track, the middle of the range first.
    first_end : WornOut or None
        When the delivered setting first holds no longer, on whichever track that is soonest.
    gaps : tuple of int
        Months up to ``lasting.months``, off the grid, on which some track has no setting.
    """

    lasting: Lasting
    ways: tuple[Way, ...]
    first_end: WornOut | None
    gaps: tuple[int, ...]

    @property
    def settings(self) -> tuple[Index, ...]:
        """Every setting that serves on some track, the delivered one first, each once."""
        found: list[Index] = []
        for way in self.ways:
            found += [each.index for each in way.servings if each.index not in found]
        return tuple(found)


def life_of(states: States, lasting: Lasting) -> Life:
    """Work out the life of one set-up.

    Parameters
    ----------
    states : States
    lasting : Lasting
        Of these states; it holds its musts now.

    Returns
    -------
    Life
    """
    tried = Tried(states, Reach(states.line), lasting.index)
    tried.settings = list(lasting.settings)
    made = _Life(states, tried)
    return Life(
        lasting=lasting,
        ways=tuple(
            Way(track, tuple(made.servings(lasting.index, at)))
            for at, track in enumerate(states.growth.tracks)
        ),
        first_end=made.first_end(lasting.index),
        gaps=tuple(m for m in range(1, lasting.months) if tried.fails(m) is not None),
    )


class _Life:
    def __init__(self, states: States, tried: Tried) -> None:
        self._states, self._tried, self._line = states, tried, states.line

    def servings(self, index: Index, track: int) -> Iterator[Serving]:
        """Setting after setting along one track, until the range ends or none holds."""
        start, before = 0, None
        while True:
            end = self._serves_until(index, start, track)
            setup = chosen(self._line, index)
            change = None if before is None else change_between(before, setup)
            over = None if end == self._states.last else self._worn_out(index, end + 1, track)
            yield Serving(start, end, index, setup, change, over)
            if over is None or not over.reset:
                return
            start, before, index = end, setup, self._next(end + 1, track)

    def _serves_until(self, index: Index, start: int, track: int) -> int:
        """Last month in a row on which a setting holds, on one track."""
        months = range(start + 1, self._states.last + 1)
        fails = (m for m in months if not self._states.at(m, track).holds(index))
        return next(fails, self._states.last + 1) - 1

    def _next(self, months: int, track: int) -> Index:
        """Of the best settings for the days of the grid still to come, the one that serves longest.

        The best for the first day is among them.
        """
        days = [months, *(day for day in grid(self._states) if day > months)]
        best: tuple[int, Index] | None = None
        for day in days:
            state = self._states.at(day, track)
            found = find_best(state.within(self._tried.sets), state.person.targets)
            if found is not None and self._states.at(months, track).holds(found.index):
                until = self._serves_until(found.index, months, track)
                best = (until, found.index) if best is None or until > best[0] else best
            if best is not None and best[0] < day:
                break
        if best is None:
            raise AssertionError(LOST)
        return best[1]

    def first_end(self, index: Index) -> WornOut | None:
        """When the delivered setting first holds no longer, looked for month by month."""
        for months in range(1, self._states.last + 1):
            for track in range(len(self._states.growth.tracks)):
                if not self._states.at(months, track).holds(index):
                    return self._worn_out(index, months, track)
        return None

    def _worn_out(self, index: Index, months: int, track: int) -> WornOut:
        state = self._states.at(months, track)
        musts = state.missed(index)
        part = state.within(self._tried.sets)
        beyond = tuple(must for must in musts if find_any(part, [must]) is None)
        reset = not beyond and self._tried.setting(state) is not None
        return WornOut(months, state.track.name, musts, beyond, reset)


LOST = "a setting for this day was found before and must be found again"


def months_words(months: int) -> str:
    """Say how long some months are.

    Examples
    --------
    >>> months_words(9), months_words(12), months_words(30), months_words(61)
    ('9 months', '1 year', '2 years 6 months', '5 years 1 month')
    """
    years, rest = divmod(months, MONTHS)
    parts = [_counted(years, "year")] if years else []
    parts += [_counted(rest, "month")] if rest or not years else []
    return " ".join(parts)


def _counted(count: int, what: str) -> str:
    return f"{count} {what}" + ("" if count == 1 else "s")
