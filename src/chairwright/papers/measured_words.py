"""A measured chair in the words that report and paper share."""

from __future__ import annotations

from dataclasses import dataclass

from chairwright.files.chair_measures import CHAIR_MEASURES
from chairwright.files.measured import MeasuredFile
from chairwright.fitting.described import Described
from chairwright.fitting.ledger import Row
from chairwright.fitting.person import Person
from chairwright.measured.gains import Change, Kind, changes
from chairwright.measured.slips import Doubt, Suspect
from chairwright.measured.stands import Stands
from chairwright.papers.words import measured_words, range_words, spread_words

SPREAD = (
    "+/- is what tape, level and scales can be off, with what is assumed and how far the posture "
    "model can be off, as the root of the sum of squares. A verdict 'holds' when the whole of it "
    "lies inside; 'holds on nominal values' when only the value does."
)
NOT_MEASURED = (
    "A figure that hangs on one of these is left out (-): {names}. Measure them to have it."
)
ASSUMED = "Not measured, usual values stand in and count in the +/-: {names}."
MOST_OTHERS = 2
NOT_SHOWN = ("currency", "days")


HEADS: tuple[tuple[Kind, str, str], ...] = (
    ("gain", "Gains", "No verdict gets better."),
    ("nearer", "Still missed, by less", ""),
    ("loss", "Losses", "No verdict gets worse."),
    ("farther", "Missed by more than now", ""),
    ("not told", "Not told: one of the two has no such figure", ""),
)
"""Kinds of change, what stands over them, and what is said when there is none."""


@dataclass(frozen=True)
class Proposed:
    """A set-up that a measured chair is compared with, and what it is called."""

    name: str
    setup: Described


@dataclass(frozen=True)
class Judgement:
    """One measured chair, all that is said of it, and what it is compared with.

    Parameters
    ----------
    file : MeasuredFile
    person : Person
    doubt : Doubt
    stands : Stands
    proposed : Proposed or None
    dated : str
        Day of the measuring; empty when not said.
    """

    file: MeasuredFile
    person: Person
    doubt: Doubt
    stands: Stands
    proposed: Proposed | None = None
    dated: str = ""

    @property
    def changes(self) -> tuple[Change, ...]:
        """What the proposed set-up changes; empty without one."""
        return () if self.proposed is None else changes(self.stands.setup, self.proposed.setup)


def doubt_lines(doubt: Doubt) -> list[str]:
    """Which reading to take again, and what does not close; empty when all does.

    Parameters
    ----------
    doubt : Doubt

    Returns
    -------
    list of str
    """
    lines = []
    if doubt.named is not None:
        lines.append(f"{_suspect(doubt.named)} Measure it again first.")
        lines += [f"Or: {_suspect(each)}" for each in doubt.suspects[1 : 1 + MOST_OTHERS]]
    elif doubt.open_closures:
        lines.append("No single slip explains it: measure again what is named below.")
    for closure in doubt.open_closures:
        names = ", ".join(name for name in closure.uses if name in CHAIR_MEASURES)
        lines.append(f"Does not hold: {closure.words[0].lower()}{closure.words[1:]} ({names}).")
    return lines


def _suspect(each: Suspect) -> str:
    reading = each.reading
    label = CHAIR_MEASURES[reading.name].label.lower()
    return f"{reading.where}: {reading.name} ({label}) {slip_words(each)}"


def slip_words(each: Suspect) -> str:
    """What a reading says and what was perhaps meant, to stand after the reading's name."""
    unit = CHAIR_MEASURES[each.reading.name].unit
    return (
        f"is given as {each.reading.quantity.typed}; perhaps {each.slip.words} "
        f"({each.slip.meant:.4g} {unit} would fit the others)."
    )


def gain_words(change: Change) -> str:
    """One figure now and then, in a sentence.

    Parameters
    ----------
    change : Change

    Returns
    -------
    str
    """
    now, then = change.now, change.then
    values = now.value, then.value
    asked = "; ".join(
        f"{'must be' if item.target.must else 'preferred'} {range_words(item.target, *values)}"
        for item in then.asked
    )
    words = (
        f"{now.figure.label}: {valued_words(now)} now, {now.word}; "
        f"{valued_words(then)} then, {then.word} ({asked})."
    )
    if change.kind == "not told" or change.sure:
        return words
    return f"{words} The two lie within what the measuring can be off."


def valued_words(row: Row) -> str:
    """A value with its unit and half width: ``457 mm ± 5``."""
    shown = measured_words(row.figure, row.value, None, *row.targets)
    return f"{shown} {spread_words(row.figure, row.spread)}".rstrip()
