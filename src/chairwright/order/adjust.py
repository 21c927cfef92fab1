"""From one set-up to another: what changes and what follows from it, step by step.

A step is one piece of work of `order.steps`, in the order of adjustment. After each step the
chair is looked at as it then is: whether it may be put down on its wheels, and what a tape and an
angle gauge read.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from chairwright.chair.occupant import Occupant
from chairwright.errors import InputError, Problem
from chairwright.fitting.described import Described
from chairwright.line.choices import CHOICES, NONE
from chairwright.order.adjust_follow import notes_for, shown_readings
from chairwright.order.adjust_readings import Reading
from chairwright.order.adjust_state import State, states
from chairwright.order.chosen import SetUp
from chairwright.order.parts import PARTS, Side, pieces
from chairwright.order.steps import CASTERS, DEVICE, EXTRAS, GEAR, LOCKS, TYRE, UNDO, WORKS, Work
from chairwright.order.steps_words import Move, move

StepKind = Literal["change", "set again", "check"]
LAST_CHECK = Work("Last check", ())
ON_LEVEL = ("Put the chair on a level floor, casters trailing, cushion loaded.",)


@dataclass(frozen=True)
class Step:
    """One step.

    Parameters
    ----------
    number : int
        From 1.
    group : str
        Step of the order of adjustment.
    kind : {"change", "set again", "check"}
        Something is changed, or only follows from a change: set to the tyre again, or checked.
    undo : tuple of str
        What is loosened or taken off first.
    moves : tuple of Move
        From hole to hole, from part to part; empty when nothing is changed.
    notes : tuple of str
        What to see to besides.
    readings : tuple of Reading
        What is read after the step.
    state : State
        The chair after the step.
    down_after : int
        Number of the step after which it may be put down; its own number when it stands.
    lift : str
        How it is lifted for it; empty when it is not.
    rebuild : bool
        Whether it is workshop work on the frame.
    """

    number: int
    group: str
    kind: StepKind
    undo: tuple[str, ...]
    moves: tuple[Move, ...]
    notes: tuple[str, ...]
    readings: tuple[Reading, ...]
    state: State
    down_after: int
    lift: str
    rebuild: bool


@dataclass(frozen=True)
class Fetch:
    """A part that comes on or off: what it is, code, name, pieces, side."""

    label: str
    code: str
    words: str
    quantity: int
    side: Side


@dataclass(frozen=True)
class Adjustment:
    """The way from one set-up to another.

    Parameters
    ----------
    first, last : Described
    start : State
        The chair before the first step.
    steps : tuple of Step
        Empty when nothing differs.
    parts_on, parts_off : tuple of Fetch
        To have at hand, and what is left over.
    """

    first: Described
    last: Described
    start: State
    steps: tuple[Step, ...]
    parts_on: tuple[Fetch, ...]
    parts_off: tuple[Fetch, ...]

    @property
    def rebuild(self) -> bool:
        """Whether some step is work on the frame itself."""
        return any(step.rebuild for step in self.steps)

    @property
    def off_wheels(self) -> tuple[tuple[int, int], ...]:
        """Stretches of steps that leave the chair off its wheels: the first, the last of each."""
        spans: list[tuple[int, int]] = []
        for step in self.steps:
            if not step.state.stands:
                joined = bool(spans) and spans[-1][1] == step.number - 1
                start = spans.pop()[0] if joined else step.number
                spans.append((start, step.number))
        return tuple(spans)


@dataclass(frozen=True)
class _Planned:
    """A step before its state is known."""

    work: Work
    kind: StepKind
    moves: tuple[Move, ...] = ()


def adjust(first: Described, last: Described, occupant: Occupant) -> Adjustment:
    """Plan the way from one set-up to another of the same line.

    Parameters
    ----------
    first, last : Described
    occupant : Occupant
        Whose chair it becomes.

    Returns
    -------
    Adjustment

    Raises
    ------
    InputError
        When the set-ups are of different lines or versions.
    """
    check_lines(first, last)
    planned = list(_plan(first, last))
    indexes = [dict(first.index)]
    for each in planned:
        changed = {m.choice: last.index[m.choice] for m in each.moves if m.choice != EXTRAS}
        indexes.append({**indexes[-1], **changed})
    lock = last.options["wheel_lock"].numbers["z_mm"]
    start, *after = states(last.line, occupant, indexes, lock)
    return Adjustment(
        first=first,
        last=last,
        start=start,
        steps=tuple(_step(at, planned, start, after) for at in range(len(planned))),
        parts_on=tuple(_fetched(planned, last, "on")),
        parts_off=tuple(_fetched(planned, first, "off")),
    )


def check_lines(first: SetUp, last: SetUp) -> None:
    """Refuse set-ups of different lines.

    Parameters
    ----------
    first, last : SetUp

    Raises
    ------
    InputError
        When the lines differ in name, version or codes.
    """
    one, other = ((each.line.name, each.line.version) for each in (first, last))
    same = all(first.line.choices[name].codes == last.line.choices[name].codes for name in CHOICES)
    if one != other or not same:
        must = "both set-ups must be of one product line in one version"
        got = f"{one[0]} {one[1]} and {other[0]} {other[1]}"
        remedy = "A chair of one line does not become one of another: order it."
        raise InputError(Problem("set-ups", must, got, remedy))


def _plan(first: Described, last: Described) -> Iterator[_Planned]:
    changed = frozenset(name for name in CHOICES if first.index[name] != last.index[name])
    extras = tuple(_extra_moves(first, last))
    for work in WORKS:
        moves = tuple(
            move(last.line, name, first.index[name], last.index[name])
            for name in work.choices
            if name in changed
        )
        moves = extras if work.choices == (EXTRAS,) else moves
        if moves:
            yield _Planned(work, "change", moves)
        else:
            kind = _follows(work, changed, last)
            if kind is not None:
                yield _Planned(work, kind)
    if changed or extras:
        yield _Planned(LAST_CHECK, "check")


def _follows(work: Work, changed: frozenset[str], last: Described) -> StepKind | None:
    """Whether a piece of work is due although none of its choices changes."""
    if work.group == LOCKS and changed & TYRE:
        return "set again"
    if not changed & GEAR:
        return None
    if work.group == CASTERS and work.choices == ("stem_setting",):
        return "check"
    if work.group == DEVICE and last.options["anti_tip"].code != NONE:
        return "check"
    return None


def _extra_moves(first: Described, last: Described) -> Iterator[Move]:
    had, has = first.extras, last.extras
    for extra in had:
        if extra not in has:
            words = f"{extra.code}, {extra.name}"
            yield Move(EXTRAS, "Extra", extra.code, NONE, extra.name, "not fitted", part_off=words)
    for extra in has:
        if extra not in had:
            words = f"{extra.code}, {extra.name}"
            yield Move(EXTRAS, "Extra", NONE, extra.code, "not fitted", extra.name, part_on=words)


def _step(at: int, planned: Sequence[_Planned], start: State, after: Sequence[State]) -> Step:
    each, state = planned[at], after[at]
    before = start if at == 0 else after[at - 1]
    down = next(number for number, later in enumerate(after[at:], at + 1) if later.stands)
    since = start if each.work.choices in ((), ("wheel_lock",)) or each.kind == "check" else before
    return Step(
        number=at + 1,
        group=each.work.group,
        kind=each.kind,
        undo=_undo(each),
        moves=each.moves,
        notes=notes_for(each.work, each.kind, each.moves, start, state),
        readings=shown_readings(each.work.group, each.kind, since, state),
        state=state,
        down_after=down,
        lift=each.work.lift,
        rebuild=each.work.rebuild,
    )


def _undo(planned: _Planned) -> tuple[str, ...]:
    if planned.work is LAST_CHECK:
        return ON_LEVEL
    fitted = (each for each in planned.moves if each.before != NONE)
    return tuple(dict.fromkeys(UNDO[each.choice] for each in fitted))


def _fetched(
    planned: Sequence[_Planned], setup: Described, way: Literal["on", "off"]
) -> Iterator[Fetch]:
    for each in planned:
        for one in each.moves:
            words = one.part_on if way == "on" else one.part_off
            if words:
                count: tuple[int, Side] = (1, "one")
                if one.choice != EXTRAS:
                    count = pieces(one.choice, setup)
                code, _, name = words.partition(", ")
                yield Fetch(PARTS.get(one.choice, one.label).capitalize(), code, name, *count)
