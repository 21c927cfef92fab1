"""Musts that a set-up misses, and who has accepted each by name with a reason.

An acceptance is of one miss as it was: what was asked, and what was reached. It does not stand for
a larger miss, nor when something else is asked.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from chairwright.errors import InputError, Problem
from chairwright.figures.registry import FIGURES, Figure
from chairwright.files.order import LONGEST_NAME, LONGEST_REASON, AcceptedMust
from chairwright.fitting.described import Described, Judged
from chairwright.fitting.moved import printed
from chairwright.fitting.place_verdicts import PlaceVerdict
from chairwright.validation import suggest


@dataclass(frozen=True)
class Unmet:
    """A must that a set-up misses.

    Parameters
    ----------
    judged : Judged
        The must with its value, verdict, reason and source.
    accepted : AcceptedMust or None
        Who lets it pass; None when nobody does.
    """

    judged: Judged
    accepted: AcceptedMust | None = None

    @property
    def figure(self) -> Figure:
        """What it is about."""
        return FIGURES[self.judged.target.figure]

    @property
    def value(self) -> float | None:
        """What is reached, as printed; None when the set-up has no such figure."""
        return _number(self.figure, self.judged.value)

    @property
    def asked(self) -> tuple[float | None, float | None]:
        """What must hold, as printed."""
        low, high = self.judged.target.low, self.judged.target.high
        return _number(self.figure, low), _number(self.figure, high)


def _number(figure: Figure, value: float | None) -> float | None:
    return None if value is None or math.isnan(value) else printed(figure, value)


@dataclass(frozen=True)
class Acceptance:
    """What somebody says: this must may be missed.

    Parameters
    ----------
    must : str
        Name of the figure.
    by, reason : str
    """

    must: str
    by: str
    reason: str


def missed_at(places: Sequence[PlaceVerdict]) -> tuple[Judged, ...]:
    """Every must of a place that the set-up misses, place by place.

    Parameters
    ----------
    places : sequence of PlaceVerdict
    """
    return tuple(
        item for each in places for item in each.judged if item.target.must and item.verdict.breaks
    )


def check_acceptances(
    setup: Described, said: Sequence[Acceptance], places: Sequence[PlaceVerdict] = ()
) -> None:
    """Refuse an acceptance of what is not missed, without a name, or without a reason.

    Parameters
    ----------
    setup : Described
    said : sequence of Acceptance
    places : sequence of PlaceVerdict
        What fails at a place may be accepted as well.

    Raises
    ------
    InputError
        With every problem.
    """
    missed = list(dict.fromkeys(item.target.figure for item in (*setup.broken, *missed_at(places))))
    problems = [problem for each in said for problem in _problems(each, missed)]
    names = [each.must for each in said]
    for name in dict.fromkeys(name for name in names if names.count(name) > 1):
        must = "each must is accepted by one person"
        problems.append(Problem("--accept", must, f"{name} a second time", "Say it once."))
    if problems:
        raise InputError(*problems)


def _problems(each: Acceptance, missed: list[str]) -> list[Problem]:
    found = []
    if each.must not in missed:
        must = "only a must that the set-up misses can be accepted"
        remedy = suggest(each.must, missed) if missed else "This set-up misses none: leave it out."
        found.append(Problem("--accept", must, repr(each.must), remedy))
    for option, text, longest in (
        ("--by", each.by, LONGEST_NAME),
        ("--reason", each.reason, LONGEST_REASON),
    ):
        if not text.strip() or len(text) > longest or not text.isprintable():
            must = f"it must be one line of 1 to {longest} characters"
            remedy = "An accepted must is printed with name and reason."
            found.append(Problem(f"{option} (of {each.must})", must, f"{len(text)}", remedy))
    return found


def settle(
    missed: Sequence[Judged],
    said: Sequence[Acceptance],
    earlier: Sequence[AcceptedMust],
    revision: int,
) -> tuple[Unmet, ...]:
    """Musts that a set-up misses, each with who has accepted it.

    Parameters
    ----------
    missed : sequence of Judged
    said : sequence of Acceptance
        Checked, new in this revision; they go before earlier ones.
    earlier : sequence of AcceptedMust
        Of an earlier revision; each stands as far as it covers the miss.
    revision : int
        Number of this revision.

    Returns
    -------
    tuple of Unmet
        In the same order.
    """
    return tuple(_settled(Unmet(item), said, earlier, revision) for item in missed)


def _settled(
    unmet: Unmet, said: Sequence[Acceptance], earlier: Sequence[AcceptedMust], revision: int
) -> Unmet:
    name, (low, high) = unmet.figure.name, unmet.asked
    new = next((each for each in said if each.must == name), None)
    if new is not None:
        by, reason = new.by.strip(), new.reason.strip()
        place = unmet.judged.target.place
        must = AcceptedMust(name, low, high, unmet.value, by, reason, revision, place)
        return Unmet(unmet.judged, must)
    kept = next((each for each in earlier if covers(each, unmet)), None)
    return Unmet(unmet.judged, kept)


def covers(accepted: AcceptedMust, unmet: Unmet) -> bool:
    """Whether an acceptance stands for a miss: the same asked, and no more missed than then.

    Parameters
    ----------
    accepted : AcceptedMust
    unmet : Unmet
    """
    target = unmet.judged.target
    if (accepted.figure, accepted.place) != (target.figure, target.place):
        return False
    if (accepted.low, accepted.high) != unmet.asked:
        return False
    if unmet.value is None or accepted.value is None:
        return unmet.value is accepted.value
    low = accepted.low
    if low is not None and unmet.value < low:
        return unmet.value >= accepted.value
    return unmet.value <= accepted.value
