"""Why a set-up is not the best: what forbids it, what it breaks, and what it costs more."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from chairwright.fitting.allowed import plain, why_not_allowed
from chairwright.fitting.described import Described, Judged, describe, why_not_buildable
from chairwright.fitting.fit import Fit
from chairwright.fitting.next_best import SMALLEST, Shift, shifts
from chairwright.fitting.person import Person
from chairwright.fitting.target_reasons import cost_of
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line


@dataclass(frozen=True)
class Rejected:
    """One set-up beside the best.

    Parameters
    ----------
    line : Line
        With the extras of the set-up.
    index : dict of str to int
        Option position of every choice.
    setup : Described or None
        None when the chair would not stand on its wheels.
    forbidden : tuple of str
        Rules of the line, and of the client's feet and hands, that it breaks; why it does not
        stand.
    not_open : tuple of str
        What of it was not among the options looked at: settled otherwise, or on request.
    best : Described or None
        None when no set-up holds every must.
    shifts : tuple of Shift
        The preferences that cost otherwise than in the best set-up, the greatest rise first.
    """

    line: Line
    index: dict[str, int]
    setup: Described | None
    forbidden: tuple[str, ...]
    not_open: tuple[str, ...]
    best: Described | None
    shifts: tuple[Shift, ...]

    @property
    def broken(self) -> tuple[Judged, ...]:
        """The musts that it misses."""
        return () if self.setup is None else self.setup.broken

    @property
    def cost(self) -> float | None:
        """Cost of its preferences; None when there is no such chair."""
        return None if self.setup is None else _cost(self.setup)

    @property
    def costs_more(self) -> float | None:
        """What its preferences cost more than those of the best; None where one is missing."""
        if self.setup is None or self.best is None:
            return None
        return _cost(self.setup) - _cost(self.best)

    @property
    def is_refused(self) -> bool:
        """Whether something else than its cost stands against it."""
        return bool(self.forbidden or self.not_open or self.broken)

    @property
    def is_best(self) -> bool:
        """Whether it is the best set-up itself, extras included."""
        best = self.best
        return best is not None and self.index == best.index and self.line == best.line

    @property
    def is_tie(self) -> bool:
        """Whether nothing but the order of the line's options stands against it."""
        more = self.costs_more
        return not self.is_refused and more is not None and abs(more) <= SMALLEST

    @property
    def differs(self) -> tuple[str, ...]:
        """Choices in which it differs from the best, in the order of the choices."""
        best = self.best
        return () if best is None else tuple(n for n in CHOICES if self.index[n] != best.index[n])


def why_rejected(fit: Fit, line: Line, index: Mapping[str, int]) -> Rejected:
    """Explain what stands against a set-up.

    Parameters
    ----------
    fit : Fit
        Of the client on the line.
    line : Line
        The same line, with the extras of the set-up.
    index : mapping of str to int
        Option position of every choice.

    Returns
    -------
    Rejected
    """
    person, best = fit.person, None if fit.best is None else fit.setup
    unbuildable = why_not_buildable(line, person.occupant, index)
    setup = (
        None
        if unbuildable
        else describe(line, person.occupant, index, person.targets, person.surroundings)
    )
    rules = why_not_allowed(line, person.occupant, index)
    return Rejected(
        line=line,
        index=dict(index),
        setup=setup,
        forbidden=(*rules, unbuildable) if unbuildable else rules,
        not_open=tuple(_not_open(fit, person, index)),
        best=best,
        shifts=() if setup is None or best is None else tuple(shifts(best.judged, setup.judged)),
    )


def _not_open(fit: Fit, person: Person, index: Mapping[str, int]) -> Iterator[str]:
    for name, at in index.items():
        if at in fit.space.allowed[name]:
            continue
        option, settled = fit.line.choices[name].options[at], person.client.fixed_choices.get(name)
        if settled:
            codes = " or ".join(settled)
            yield f"the client's choices settle the {plain(name)} to {codes}, and not {option.code}"
        elif option.kind == "on request":
            yield (
                f"the {plain(name)} {option.code} is on request, and the client's choices do not "
                "name it"
            )
        elif option.kind == "made to order":
            yield f"the {plain(name)} {option.code} is made to order, and a standard set-up will do"


def _cost(setup: Described) -> float:
    return sum(cost_of(judged) for judged in setup.judged)
