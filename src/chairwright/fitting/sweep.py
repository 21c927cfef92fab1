"""One choice of a set-up tried in all its options, everything else kept."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from chairwright.chair.steps import STEPS
from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.allowed import why_not_allowed
from chairwright.fitting.described import Described, describe, why_not_buildable
from chairwright.fitting.follow_up import (
    DEVICE,
    SETTING,
    STEM,
    Squared,
    cleared,
    device_gap_mm,
    squared,
)
from chairwright.fitting.person import Person
from chairwright.fitting.runs import Run
from chairwright.line.model import Line, Option

Status = Literal["as it stands", "stands", "not allowed", "does not stand"]
Progress = Callable[[int, int], None]

GEAR = frozenset(STEPS[0].choices)


@dataclass(frozen=True)
class Tried:
    """One option in the place of the present one.

    Parameters
    ----------
    option : Option
    status : {"as it stands", "stands", "not allowed", "does not stand"}
    reasons : tuple of str
        Why it is not allowed or does not stand.
    also : dict of str to str
        Codes of other choices that had to follow for it to stand.
    setup : Described or None
        None when there is no such chair.
    squared : Squared or None
        The stem setting that would bring the caster stem nearer to the vertical.
    """

    option: Option
    status: Status
    reasons: tuple[str, ...] = ()
    also: Mapping[str, str] | None = None
    setup: Described | None = None
    squared: Squared | None = None

    @property
    def stands(self) -> bool:
        """Whether there is such a chair."""
        return self.setup is not None

    @property
    def missed(self) -> tuple[Figure, ...]:
        """Figures whose must it misses."""
        broken = () if self.setup is None else self.setup.broken
        return tuple(dict.fromkeys(FIGURES[item.target.figure] for item in broken))


@dataclass(frozen=True)
class SweptRun:
    """The options of one run, tried.

    Parameters
    ----------
    run : Run
    tried : tuple of Tried
        In the order of the run.
    """

    run: Run
    tried: tuple[Tried, ...]

    @property
    def standing(self) -> tuple[Tried, ...]:
        """The options with which there is a chair."""
        return tuple(each for each in self.tried if each.stands)

    @property
    def present(self) -> int:
        """Where the option of the set-up as it stands lies among `tried`."""
        return next(at for at, each in enumerate(self.tried) if each.status == "as it stands")

    def setups(self) -> tuple[Described, ...]:
        """The set-ups of `standing`."""
        return tuple(each.setup for each in self.tried if each.setup is not None)


@dataclass(frozen=True)
class Sweep:
    """One choice tried in all its options.

    Parameters
    ----------
    choice : str
    person : Person
    line : Line
    base : Described
        The set-up as it stands.
    runs : tuple of SweptRun
    """

    choice: str
    person: Person
    line: Line
    base: Described
    runs: tuple[SweptRun, ...]

    @property
    def option(self) -> Option:
        """The present option."""
        return self.base.options[self.choice]


def sweep(
    person: Person,
    base: Described,
    choice: str,
    runs: Sequence[Run],
    *,
    keep: bool = False,
    progress: Progress = lambda done, count: None,
) -> Sweep:
    """Try the options of one choice in a set-up.

    Parameters
    ----------
    person : Person
    base : Described
        The set-up as it stands, allowed by the line's rules.
    choice : str
    runs : sequence of Run
    keep : bool
        True keeps an anti-tip device where it is even when it would stand in the floor;
        otherwise it is raised on its tube, and `Tried.also` says so.
    progress : callable
        Told how many of how many options are done.

    Returns
    -------
    Sweep
    """
    gap_mm = device_gap_mm(base.line, person.occupant, base.index)
    count = sum(len(run.places) for run in runs)
    done: dict[int, Tried] = {}

    def one(at: int) -> Tried:
        if at not in done:
            done[at] = _tried(person, base, choice, at, None if keep else gap_mm)
            progress(len(done), count)
        return done[at]

    swept = tuple(SweptRun(run, tuple(one(at) for at in run.places)) for run in runs)
    return Sweep(choice, person, base.line, base, swept)


def _tried(person: Person, base: Described, choice: str, at: int, gap_mm: float | None) -> Tried:
    line, occupant = base.line, person.occupant
    option = line.choices[choice].options[at]
    index = {**base.index, choice: at}
    if at == base.index[choice]:
        return _standing(person, base, choice, option, "as it stands", {})
    refused = why_not_allowed(line, occupant, index)
    if refused:
        return Tried(option, "not allowed", refused)
    reason, also = why_not_buildable(line, occupant, index), {}
    if reason and gap_mm is not None and choice != DEVICE:
        hole = cleared(line, occupant, index, gap_mm)
        if hole is not None:
            index[DEVICE], reason = hole, ""
            also = {DEVICE: line.choices[DEVICE].options[hole].code}
    if reason:
        return Tried(option, "does not stand", (reason,))
    setup = describe(line, occupant, index, person.targets, person.surroundings)
    return _standing(person, setup, choice, option, "stands", also)


def _standing(
    person: Person,
    setup: Described,
    choice: str,
    option: Option,
    status: Status,
    also: Mapping[str, str],
) -> Tried:
    square = None
    if choice in GEAR and choice != SETTING:
        square = squared(setup.line, person.occupant, setup.index, setup.figures[STEM])
    return Tried(option, status, (), also, setup, square)
