"""Casters that strike a footplate or a rear tyre as they swing round."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field

import numpy as np

from chairwright.chair.rows import Rows
from chairwright.chair.steps import arm_supports, seat_rails
from chairwright.figures.space import caster_foot_clearance, caster_tyre_clearance
from chairwright.fitting.empty_chair import NOBODY
from chairwright.fitting.line_checks.finding import Finding, mistake, remark
from chairwright.fitting.line_checks.foot_places import foot_places, with_foot
from chairwright.fitting.line_checks.gears import IN_WORDS
from chairwright.line.model import Line, Option
from chairwright.line.reachable import Deduction
from chairwright.mass_points import FloatArray

CASTER = "caster"
MOST_TOLD = 3
MOSTLY = 0.9
"""A share of combinations that strike beyond which two parts hardly go together (our choice)."""


@dataclass
class Meeting:
    """How one caster and another part get on, over all combinations.

    Parameters
    ----------
    count, strikes : int
        Combinations, and those of them that strike.
    best_mm, worst_mm : float
        Greatest and least clearance.
    worst : dict of str to int
        Option positions of the combination with the least.
    """

    count: int = 0
    strikes: int = 0
    best_mm: float = -np.inf
    worst_mm: float = np.inf
    worst: dict[str, int] = field(default_factory=dict)

    def take_in(self, rows: Rows, clearance_mm: FloatArray) -> None:
        """Count more combinations, shape (n,); those with NaN do not count."""
        kept = clearance_mm[~np.isnan(clearance_mm)]
        if not len(kept):
            return
        self.count += len(kept)
        self.strikes += int((kept < 0).sum())
        self.best_mm = max(self.best_mm, float(kept.max()))
        at = int(np.nanargmin(clearance_mm))
        if clearance_mm[at] < self.worst_mm:
            self.worst_mm = float(clearance_mm[at])
            self.worst = {name: int(index[at]) for name, index in rows.index.items()}


Meetings = dict[tuple[int, int], Meeting]
"""By the option positions of the caster and of the other part."""


def strike_findings(line: Line, usable: Rows) -> Iterator[Finding]:
    """Judge every pair of caster and hanger, and of caster and rear wheel.

    Parameters
    ----------
    line : Line
    usable : Rows
        From `gears.usable_gears`, at least one row.

    Yields
    ------
    Finding
        For each pair that strikes in nearly all its combinations a remark, or a mistake when
        it is all of them; one remark for all that strike in some.
    """
    yield from _judged(line, "hanger", "the footplates", _foot_meetings(line, usable))
    yield from _judged(line, "rear_wheel", "the rear tyre", _tyre_meetings(line, usable))


def _foot_meetings(line: Line, usable: Rows) -> Meetings:
    found: Meetings = {}
    for frame, gears in _by(usable, "side_frame"):
        places = list(foot_places(line, frame))
        for caster, mine in _by(gears, CASTER):
            for place in places:
                rows, possible = with_foot(mine, place)
                clearance = np.where(possible, caster_foot_clearance(rows, NOBODY), np.nan)
                pair = caster, place.options["hanger"]
                found.setdefault(pair, Meeting()).take_in(rows, clearance)
    return found


def _tyre_meetings(line: Line, usable: Rows) -> Meetings:
    found: Meetings = {}
    outsets = line.column("arm_support", "hub_outset_mm")
    arms = np.unique(outsets, return_index=True)[1]
    for caster, mine in _by(usable, CASTER):
        for wheel, gears in _by(mine, "rear_wheel"):
            for arm in arms:
                rows = gears.tried("seat_width", 0).tried("arm_support", int(arm))
                seat_rails(rows, NOBODY)
                arm_supports(rows, NOBODY)
                meeting = found.setdefault((caster, wheel), Meeting())
                meeting.take_in(rows, caster_tyre_clearance(rows, NOBODY))
    return found


def _by(rows: Rows, choice: str) -> Iterator[tuple[int, Rows]]:
    for option in np.unique(rows.index[choice]):
        yield int(option), rows.take(rows.index[choice] == option)


def _judged(line: Line, other: str, what: str, found: Meetings) -> Iterator[Finding]:
    for pair in sorted(found):
        if found[pair].strikes >= max(1.0, MOSTLY * found[pair].count):
            yield _apart(line, other, what, pair, found[pair])
    sometimes = [met for met in found.values() if 0 < met.strikes < met.count]
    if sometimes:
        yield _sometimes(line, other, what, found, sometimes)


def _pair(line: Line, other: str, pair: tuple[int, int]) -> tuple[Option, Option]:
    return line.choices[CASTER].options[pair[0]], line.choices[other].options[pair[1]]


def _apart(line: Line, other: str, what: str, pair: tuple[int, int], met: Meeting) -> Finding:
    """Two parts that hardly ever go together, or never."""
    caster, part = _pair(line, other, pair)
    names = f"{line.choices[other].label.lower()} {part.code} and caster {caster.code}"
    must = f"with {names} the caster must swing clear of {what} ({IN_WORDS})"
    remedy = "Correct their sizes, or keep the two apart by a rule."
    if met.strikes == met.count:
        got = f"none of {met.count:,} combinations, {-met.best_mm:.0f} mm too little at best"
        return mistake(part.where, must, got, remedy)
    got = f"{met.strikes:,} of {met.count:,} combinations that strike"
    return remark(part.where, must, got, remedy)


def _sometimes(
    line: Line, other: str, what: str, found: Meetings, sometimes: list[Meeting]
) -> Finding:
    count = sum(each.count for each in found.values())
    strikes = sum(each.strikes for each in found.values())
    pairs = sorted(
        (pair for pair, met in found.items() if met.strikes > 0),
        key=lambda pair: (-found[pair].strikes / found[pair].count, pair),
    )
    told = ", ".join(_share(line, other, pair, found[pair]) for pair in pairs[:MOST_TOLD])
    example = _example(line, sometimes)
    return remark(
        line.choices[CASTER].options[pairs[0][0]].where,
        f"casters should swing clear of {what}",
        f"{strikes:,} of {count:,} usable combinations that strike, most of them {told}{example}",
        "A fit keeps clear of them by itself; a rule is needed where chairs are ordered by hand.",
    )


def _share(line: Line, other: str, pair: tuple[int, int], met: Meeting) -> str:
    caster, part = _pair(line, other, pair)
    return f"{caster.code} with {part.code} ({100 * met.strikes / met.count:.0f} %)"


def _example(line: Line, meetings: Iterable[Meeting]) -> str:
    """The worst combination that some complete set-up has."""
    deduction = Deduction(line)
    for met in sorted(meetings, key=lambda each: each.worst_mm):
        codes = {
            name: line.choices[name].options[at].code
            for name, at in met.worst.items()
            if name != "seat_width"
        }
        settled = {name: frozenset({code}) for name, code in codes.items()}
        if deduction.example(settled) is not None:
            return f"; the worst by {-met.worst_mm:.0f} mm: {' '.join(codes.values())}"
    return ""
