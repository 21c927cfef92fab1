"""What follows from a change: wheel locks to the tyre, casters square, anti-tip height, checks."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from chairwright.order.adjust_readings import AT_STEP, Reading, reading
from chairwright.order.adjust_state import IN_FRAME, ON_FLOOR, TYRE_FRONT, TYRE_OUT, State
from chairwright.order.steps import DEVICE, LOCKS, Work
from chairwright.order.steps_words import Move

LEAST_MM = 0.5
HOLES = frozenset({"axle_hole", "fork", "caster_housing"})
"""Choices that are holes of a left and a right part."""

BOTH_SIDES = "The same hole on both sides, counted on both sides before the bolts are tightened."
SQUARE = (
    "Both caster stems upright to the floor from the side and from the front (after any move of "
    "the axle: NSW, read in the source)."
)
LOCK_TEST = "Lock both wheels and push the chair hard: no wheel turns. Open: no pad touches a tyre."
NEW_LOCKS = (
    "Set the new wheel locks to the tyres: pads press in when locked, stand clear when open."
)
SET_LOCKS = "Set both wheel locks to the tyres again, pads alike left and right."
DEVICE_TEST = "Tip the chair back by hand: both anti-tip wheels meet the floor together."
LAST_TESTS = (
    "Every bolt that was undone is tight, every button has sprung out, no tool is left on the "
    "chair.",
    "Casters swing round clear of footplates, heels, frame and rear tyres.",
    "Tip check in all directions with a spotter, after every change (Training guide 1998, read in "
    "the source). Only then the client sits in it without a hand on the chair.",
)


def shown_readings(group: str, kind: str, before: State, after: State) -> tuple[Reading, ...]:
    """The readings of a step.

    Parameters
    ----------
    group : str
    kind : {"change", "set again", "check"}
        A check shows all of its readings; a change those that it moves.
    before, after : State

    Returns
    -------
    tuple of Reading
        For the last check: everything that the whole adjustment has moved.
    """
    names = AT_STEP.get(group, (*IN_FRAME, *ON_FLOOR) if kind == "check" else ())
    found = [
        reading(name, before.values.get(name), after.values[name])
        for name in names
        if name in after.values
    ]
    every = kind == "check" and group in AT_STEP
    return tuple(each for each in found if every or each.moved)


def notes_for(
    work: Work, kind: str, moves: Sequence[Move], start: State, after: State
) -> tuple[str, ...]:
    """What to see to in a step besides its moves.

    Parameters
    ----------
    work : Work
    kind : {"change", "set again", "check"}
    moves : sequence of Move
    start : State
        The chair before the first step.
    after : State
        After this one.

    Returns
    -------
    tuple of str
    """
    return tuple(_notes(work, kind, moves, start, after))


def _notes(
    work: Work, kind: str, moves: Sequence[Move], start: State, after: State
) -> Iterator[str]:
    if not work.choices:
        yield from LAST_TESTS
    elif work.group == LOCKS:
        new = any(each.part_on for each in moves)
        yield NEW_LOCKS if new else f"{SET_LOCKS}{_tyre_words(start, after)}"
        yield LOCK_TEST
    elif work.choices == ("stem_setting",):
        yield SQUARE
    elif any(each.choice in HOLES for each in moves):
        yield BOTH_SIDES
    elif work.group == DEVICE:
        yield DEVICE_TEST


def _tyre_words(start: State, after: State) -> str:
    """How far the tyre has moved at the lock; empty when it cannot be said."""
    if any(name not in state.values for name in (TYRE_FRONT, TYRE_OUT) for state in (start, after)):
        return ""
    words = []
    for name, more, less in ((TYRE_FRONT, "forward", "back"), (TYRE_OUT, "out", "in")):
        by = after.values[name] - start.values[name]
        if abs(by) >= LEAST_MM:
            words.append(f"{abs(by):.0f} mm {more if by > 0 else less}")
    if not words:
        return " At the lock the tyre stands where it stood."
    return f" At the lock the tyre has come {' and '.join(words)}: the locks go with it."
