"""Changing one choice: what is refused, what must go with it, and what each option would change."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

import numpy as np

from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.registry import FIGURES, Figure
from chairwright.fitting.allowed import broken_rules, plain
from chairwright.fitting.described import judge
from chairwright.fitting.one_change import one_change
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line, Option
from chairwright.mass_points import FloatArray
from chairwright.search.best import find_best
from chairwright.search.space import Space
from chairwright_desk.bench.bridge.lifted import DEVICE
from chairwright_desk.bench.bridge.opened import Bench, Index, State, Units, index_of
from chairwright_desk.bench.bridge.options import table_of
from chairwright_desk.bench.bridge.words import change_shown, unit_of

MOST_COMPANIONS, MOST_MOVED = 3, 3
GEAR = frozenset(
    {"axle_hole", "caster", "fork", "stem_spacer", "caster_housing", "stem_setting", DEVICE}
)
"""Choices that may go along with a wish that no single further change makes possible."""
MOVED = (
    "seat_to_floor_front_mm", "seat_to_floor_rear_mm", "tip_rear_locked_deg", "tip_forward_deg",
    "caster_share", "push_reach_deg", "overall_width_mm", "overall_length_mm", "seat_angle_deg",
    "chair_mass_kg", "price", "lead_days",
)  # fmt: skip
"""Figures of which an option's effect is told."""


@dataclass(frozen=True)
class Companion:
    """What makes a refused option possible.

    Parameters
    ----------
    codes : dict of str to str
        Choice to code of everything that changes, the option wished among it.
    words : str
        What goes with it.
    """

    codes: dict[str, str]
    words: str

    @property
    def typed(self) -> str:
        """The changes as one value of a form: ``caster=C5 fork=FM-2``."""
        return " ".join(f"{name}={code}" for name, code in self.codes.items())


@dataclass(frozen=True)
class Changed:
    """What came of a wish to change one choice.

    Parameters
    ----------
    codes : dict of str to str
        The set-up that holds now: the new one, or the old one where the wish is refused.
    refused : str
        The reason; empty when it is done.
    choice, code : str
        What was wished.
    companions : tuple of Companion
        What could be changed with it.
    """

    codes: dict[str, str]
    refused: str
    choice: str
    code: str
    companions: tuple[Companion, ...]

    @property
    def label(self) -> str:
        """What was wished, in words."""
        return f"{CHOICES[self.choice].label} {self.code}"


def change(state: State, choice: str, code: str) -> Changed:
    """Change one choice of a set-up, if it is allowed.

    Parameters
    ----------
    state : State
    choice, code : str
        Of the state's line.

    Returns
    -------
    Changed

    Raises
    ------
    InputError
        When the line has no such option.
    """
    wished = {**state.codes, choice: code}
    index = index_of(state.bench.line, wished)
    table, pair = table_of(state), (choice, index[choice])
    reason = table.refused.get(pair, "")
    if not reason:
        return Changed(_with_device(state, wished, table.lifted.get(pair)), "", choice, code, ())
    return Changed(state.codes, reason, choice, code, companions(state.bench, index, choice))


def _with_device(state: State, wished: dict[str, str], hole: int | None) -> dict[str, str]:
    """The set-up with the anti-tip device in another hole, where it has to go along."""
    if hole is None:
        return wished
    return {**wished, DEVICE: state.bench.line.choices[DEVICE].options[hole].code}


def companions(bench: Bench, index: Index, choice: str) -> tuple[Companion, ...]:
    """Further changes with which a wished set-up keeps the rules and stands.

    Parameters
    ----------
    bench : Bench
    index : dict of str to int
        The set-up as wished, which may not be built as it is.
    choice : str
        The choice that was wished and stays.

    Returns
    -------
    tuple of Companion
        Single changes that break and cost least by the client's targets, at most three; where no
        single one will do, the best for it of running gear and what the rules name, everything
        else kept; or of the whole line.
    """
    kept = {**bench.space.allowed, choice: np.array([index[choice]], dtype=np.intp)}
    space = Space(bench.line, bench.person.occupant, kept)
    found = one_change(space, index, bench.person.targets)
    order = np.lexsort((found.costs.sum(axis=1), found.steps_outside(), found.lost.sum(axis=1)))
    steps = [found.steps[at] for at in order[:MOST_COMPANIONS]]
    if not steps:
        return _with_gear(bench, index, choice)
    wished = {choice: bench.line.choices[choice].options[index[choice]].code}
    return tuple(
        Companion({**wished, step.choice: step.option.code}, _went(step.choice, step.option))
        for step in steps
    )


def _with_gear(bench: Bench, index: Index, choice: str) -> tuple[Companion, ...]:
    """What breaks least with the option wished: of running gear and rules, or of the whole line."""
    spoken = (rule.choices for rule in broken_rules(bench.line, index))
    best = _best_with(bench, index, choice, GEAR.union(*spoken))
    best = best or _best_with(bench, index, choice, frozenset(bench.space.allowed))
    if best is None:
        return ()
    choices = bench.line.choices
    moved = {
        name: choices[name].options[at]
        for name, at in best.items()
        if at != index[name] or name == choice
    }
    words = ", ".join(f"{plain(name)} {option.code}" for name, option in moved.items()
                      if name != choice)  # fmt: skip
    return (Companion({name: option.code for name, option in moved.items()}, words),)


def _best_with(bench: Bench, index: Index, choice: str, free: frozenset[str]) -> Index | None:
    """The best set-up with the option wished, only some choices free."""
    allowed = {
        name: options if name in free and name != choice else np.array([index[name]], dtype=np.intp)
        for name, options in bench.space.allowed.items()
    }
    wishes = [replace(target, must=False) for target in bench.person.targets]
    best = find_best(Space(bench.line, bench.person.occupant, allowed), wishes)
    return None if best is None else best.index


def _went(name: str, option: Option) -> str:
    return f"{plain(name)} {option.code}, {option.name}"


@dataclass(frozen=True)
class Effect:
    """What one option would change.

    Parameters
    ----------
    code, words : str
    refused : str
    moved : tuple of str
        The figures that move most, each with how far: ``Seat to floor, front −12 mm``.
    breaks, mends : tuple of str
        Musts that would be missed, and that are missed now and would hold.
    mark : str
        Of the musts together: ``holds`` or ``fails``.
    """

    code: str
    words: str
    refused: str
    moved: tuple[str, ...]
    breaks: tuple[str, ...]
    mends: tuple[str, ...]
    mark: str


def effects_of(state: State, choice: str, units: Units) -> tuple[Effect, ...]:
    """What each other option of a choice would change, everything else kept.

    Parameters
    ----------
    state : State
    choice : str
    units : {"mm", "in"}

    Returns
    -------
    tuple of Effect
        In the line's order, without the present option and without what is neither standard nor
        already chosen.
    """
    if state.setup is None:
        return ()
    return tuple(_effects(state, choice, units))


def _effects(state: State, choice: str, units: Units) -> Iterator[Effect]:
    bench, table = state.bench, table_of(state)
    options = bench.line.choices[choice].options
    open_places = [int(at) for at in bench.space.allowed[choice] if at != state.index[choice]]
    tried = [at for at in open_places if (choice, at) not in table.refused]
    names = tuple(dict.fromkeys([*MOVED, *(t.figure for t in bench.person.targets)]))
    values = values_of(state, choice, tried, names)
    for at in open_places:
        why = table.refused.get((choice, at), "")
        if why:
            yield Effect(options[at].code, options[at].name, why, (), (), (), "")
            continue
        figures = {name: float(array[tried.index(at)]) for name, array in values.items()}
        yield _effect(state, options[at].code, options[at].name, figures, units)


def values_of(
    state: State, choice: str, tried: Sequence[int], names: Sequence[str]
) -> dict[str, FloatArray]:
    """Figures with each of some options of one choice, everything else kept.

    Parameters
    ----------
    state : State
    choice : str
    tried : sequence of int
        Positions of options that may take the present one's place.
    names : sequence of str

    Returns
    -------
    dict of str to ndarray
        One value for each option; an anti-tip device that would stand in the floor is lifted.
    """
    bench, lifted = state.bench, table_of(state).lifted
    rows = {
        name: np.array(tried if name == choice else [at] * len(tried), dtype=np.intp)
        for name, at in state.index.items()
    }
    for row, at in enumerate(tried):
        rows[DEVICE][row] = lifted.get((choice, at), rows[DEVICE][row])
    if not tried:
        return {}
    made, _ = realise(bench.line, bench.person.occupant, rows)
    return figures_of(made, bench.person.occupant, names)


def _effect(state: State, code: str, words: str, figures: dict[str, float], units: Units) -> Effect:
    before, line = state.setup, state.bench.line
    if before is None:
        raise AssertionError(NO_CHAIR)
    after = judge(figures, {}, state.bench.person.targets)
    pairs = list(zip(before.judged, after, strict=True))
    breaks = [n.target.figure for o, n in pairs if n.verdict.breaks and not o.verdict.breaks]
    mends = [n.target.figure for o, n in pairs if o.verdict.breaks and not n.verdict.breaks]
    return Effect(
        code=code,
        words=words,
        refused="",
        moved=tuple(_moved(before.figures, figures, units, line)),
        breaks=_labels(breaks),
        mends=_labels(mends),
        mark="fails" if any(item.verdict.breaks for item in after) else "holds",
    )


NO_CHAIR = "only a chair that stands is compared"


def _labels(names: list[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(FIGURES[name].label for name in names))


def _moved(
    before: dict[str, float], after: dict[str, float], units: Units, line: Line
) -> Iterator[str]:
    def steps(figure: Figure) -> float:
        by = abs(after[figure.name] - before[figure.name]) / figure.scale
        return 0.0 if math.isnan(by) else -by

    figures = sorted((FIGURES[name] for name in MOVED), key=steps)
    shown = 0
    for figure in figures:
        words = change_shown(figure, before[figure.name], after[figure.name], units)
        if words and shown < MOST_MOVED:
            shown += 1
            yield f"{figure.label} {words} {unit_of(figure, line, units)}".rstrip()
