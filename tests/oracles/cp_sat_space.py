"""Spaces cut down for the comparisons, and every set-up of one looked at in arrays.

Nothing of the search is used. Rules, musts and costs are worked out here from their definitions;
what stands and the figures are the program's own.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.buildable import buildable
from chairwright.figures.evaluate import figures_of, realise
from chairwright.figures.registry import FIGURES
from chairwright.line.choices import CHOICES
from chairwright.line.model import Line
from chairwright.search.space import Space
from chairwright.targets.target import Target

Array = NDArray[np.float64]
Mask = NDArray[np.bool_]
Whole = NDArray[np.int64]
Index = dict[str, NDArray[np.intp]]

NEAR = 1e-9
"""Outside by less than this counts as inside."""
STEPS_FOR_NO_VALUE = 10.0
"""What a preference costs when the set-up has no such figure."""
CHUNK = 50_000
"""Set-ups looked at together, so that the arrays stay in memory."""


def drawn(
    space: Space, number: Mapping[str, int], kept: Mapping[str, int], rng: np.random.Generator
) -> Space:
    """Keep some options of each choice, drawn at random, and one given option.

    Parameters
    ----------
    space : Space
    number : mapping of str to int
        Options kept of each choice; one where no number is given.
    kept : mapping of str to int
        Option position of each choice that stays in.
    rng : numpy.random.Generator
    """
    allowed = {}
    for name, options in space.allowed.items():
        others = rng.permutation(options[options != kept[name]])[: number.get(name, 1) - 1]
        allowed[name] = np.sort(np.append(others, kept[name]))
    return replace(space, allowed=allowed)


@dataclass(frozen=True)
class Least:
    """Result of looking at every set-up.

    Parameters
    ----------
    cost : float
        Infinite when no set-up holds every must.
    index : dict of str to int
        The first set-up of that cost, options in the order of the choices.
    count : int
        Set-ups that the rules allow.
    """

    cost: float
    index: dict[str, int]
    count: int


def look_at_all(space: Space, targets: Sequence[Target]) -> Least:
    """Least cost of a space by evaluating every set-up that the rules allow.

    Parameters
    ----------
    space : Space
    targets : sequence of Target
    """
    least, found, count = math.inf, dict[str, int](), 0
    for index in every_set_up(space):
        count += len(index["fork"])
        cost = costs_of(space, targets, index)
        if cost.min(initial=math.inf) < least:
            least = float(cost.min())
            found = {name: int(index[name][cost.argmin()]) for name in CHOICES}
    return Least(least, found, count)


def every_set_up(space: Space) -> Iterator[Index]:
    """Every set-up that the rules allow, in chunks, in the order of the choices.

    Parameters
    ----------
    space : Space
    """
    names = list(CHOICES)
    first, last = (_listed(space, part) for part in (names[:HALF], names[HALF:]))
    each, others = (len(next(iter(part.values()))) for part in (first, last))
    size = max(1, CHUNK // max(1, others))
    for start in range(0, each, size):
        taken = np.arange(start, min(start + size, each))
        index = {name: np.repeat(first[name][taken], others) for name in first}
        index.update({name: np.tile(last[name], len(taken)) for name in last})
        keep = obeys(space.line, index)
        yield {name: positions[keep] for name, positions in index.items()}


HALF = 9
"""Choices of the running gear: listed by themselves with the rules that speak only of them."""


def _listed(space: Space, names: Sequence[str]) -> Index:
    """Every combination of some choices that the rules among them allow."""
    index: Index = {}
    for name in names:
        known = len(next(iter(index.values()))) if index else 1
        options = space.allowed[name]
        index = {other: np.repeat(positions, len(options)) for other, positions in index.items()}
        index[name] = np.tile(options, known)
        keep = obeys(space.line, index, index)
        index = {other: positions[keep] for other, positions in index.items()}
    return index


def obeys(line: Line, index: Index, within: Iterable[str] = CHOICES) -> Mask:
    """Which set-ups keep the rules that speak only of some choices.

    Parameters
    ----------
    line : Line
    index : dict of str to ndarray of int, shape (n,)
    within : iterable of str
    """
    known = set(within)
    fine = np.ones(len(next(iter(index.values()))), dtype=bool)
    for rule in line.rules:
        if rule.choices <= known:
            fine &= ~_meets(line, rule.when, index) | _meets(line, rule.need, index)
    return fine


def certain(space: Space) -> Space:
    """Leave out the options that a rule forbids whatever else is chosen.

    Parameters
    ----------
    space : Space
    """
    allowed = {name: list(positions) for name, positions in space.allowed.items()}
    options = {name: choice.options for name, choice in space.line.choices.items()}
    before = 0
    while before != (now := sum(map(len, allowed.values()))):
        before = now
        for rule in space.line.rules:
            codes = {name: {options[name][at].code for at in allowed[name]} for name in rule.when}
            if all(codes[name] <= wanted for name, wanted in rule.when.items()):
                for name, wanted in rule.need.items():
                    allowed[name] = [at for at in allowed[name] if options[name][at].code in wanted]
    return replace(space, allowed={name: np.array(each) for name, each in allowed.items()})


def _meets(line: Line, wanted: Mapping[str, frozenset[str]], index: Index) -> Mask:
    met = np.ones(len(next(iter(index.values()))), dtype=bool)
    for name, codes in wanted.items():
        among = np.array([option.code in codes for option in line.choices[name].options])
        met &= among[index[name]]
    return met


def costs_of(space: Space, targets: Sequence[Target], index: Index) -> Array:
    """Cost of each set-up; infinite where it cannot stand or breaks a must.

    Parameters
    ----------
    space : Space
    targets : sequence of Target
    index : dict of str to ndarray of int, shape (n,)
    """
    if not len(index["fork"]):
        return np.empty(0)
    rows, _ = realise(space.line, space.occupant, index)
    found = figures_of(rows, space.occupant, {target.figure for target in targets})
    total = np.where(buildable(rows), 0.0, np.inf)
    for target in targets:
        total += cost_of(target, found[target.figure])
    return total


def cost_of(target: Target, values: Array) -> Array:
    """Cost that one target adds: infinite for a broken must.

    Parameters
    ----------
    target : Target
    values : ndarray, shape (n,)
        The figure's values.
    """
    far = np.where(np.isnan(values), np.nan, 0.0)
    if target.low is not None:
        far = np.where(target.low - values > NEAR, target.low - values, far)
    if target.high is not None:
        far = np.where(values - target.high > NEAR, values - target.high, far)
    if target.must:
        return np.where(far == 0.0, 0.0, np.inf)
    steps = far / FIGURES[target.figure].scale
    return target.weight * np.where(np.isnan(steps), STEPS_FOR_NO_VALUE, steps)
