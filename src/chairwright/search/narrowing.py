"""What musts on figures of few choices, and rules, leave of each choice before a search begins."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray
from chairwright.chair.steps import STEPS
from chairwright.figures.terms import TERMS, matters
from chairwright.search.look_ahead import LookAhead
from chairwright.search.space import Limit, Space, obeyed
from chairwright.targets.target import Target
from chairwright.targets.verdict import SLACK, broken

MOST_CELLS = 1_000_000
"""Limits whose common table would have more cells are not joined; that only costs time."""

LATER = tuple(name for step in reversed(STEPS[1:]) for name in step.choices)
"""Choices in the order in which they are looked beyond: those made last come first."""


def narrowed(space: Space, limits: Sequence[Limit]) -> Space:
    """Leave out options with which some limit cannot hold, and note which options go together.

    A set-up that keeps every limit and rule is in the smaller space exactly when it is in the
    whole one.

    Parameters
    ----------
    space : Space
    limits : sequence of Limit
        Those of the musts, see `of_must`; the line's rules come on top.

    Returns
    -------
    Space
        Its limits tell, of the choices made so far, whether those still open can follow. When
        nothing is left, some choice has no option.

    References
    ----------
    Elimination of one choice after another (Dechter 1999, bucket elimination; from memory).
    """
    known = [*limits, *_of_rules(space)]
    allowed = _supported(known, space.allowed)
    derived = []
    if all(len(options) for options in allowed.values()):
        derived = list(_looked_beyond(known, allowed))
        allowed = _supported([*known, *derived], allowed)
    return replace(space, allowed=allowed, limits=(*limits, *derived))


def of_must(must: Target, ahead: LookAhead) -> Limit:
    """Which options go together that a must on a figure of few choices can hold with.

    Parameters
    ----------
    must : Target
    ahead : LookAhead
        Of its figure.
    """
    return Limit(ahead.depends, ahead.grid.marked(~broken(must, ahead.values)))


def of_term(must: Target, space: Space) -> Iterator[Limit]:
    """Options with which a must on load limit, price or delivery time can hold, choice by choice.

    Parameters
    ----------
    must : Target
        Its figure is one of ``figures.terms.TERMS``.
    space : Space

    Yields
    ------
    Limit
        Of one choice: an option stays when some options of all the others may go with it.
    """
    line, occupant = space.line, space.occupant
    term = TERMS[must.figure]
    allowed = {name: places for name, places in space.allowed.items() if matters(line, name, term)}
    columns = {name: line.column(name, term.key) for name in allowed}
    for name, own in columns.items():
        low = high = np.full(len(own), term.base(line))
        low, high = term.add(low, own), term.add(high, own)
        for other, places in allowed.items():
            if other != name and len(places):
                values = columns[other][places]
                low, high = term.add(low, values.min()), term.add(high, values.max())
        holds = np.ones(len(own), dtype=bool)
        if must.low is not None:
            holds &= term.figure(line, occupant, high) >= must.low - SLACK
        if must.high is not None:
            holds &= term.figure(line, occupant, low) <= must.high + SLACK
        yield Limit((name,), holds)


def of_device(space: Space) -> Limit:
    """The anti-tip devices that are devices: without one there is no pitch until it touches."""
    fitted = ~np.isnan(space.line.column("anti_tip", "z_mm"))
    return Limit(("anti_tip",), np.asarray(fitted))


def _of_rules(space: Space) -> Iterator[Limit]:
    """Rules that reach beyond the running gear, as tables."""
    line = space.line
    for rule in line.rules:
        names = tuple(name for name in line.choices if name in rule.choices)
        shape = tuple(len(line.choices[name].options) for name in names)
        if set(names) <= set(STEPS[0].choices) or math.prod(shape) > MOST_CELLS:
            continue
        places = dict(zip(names, np.indices(shape).reshape(len(shape), -1), strict=True))
        yield Limit(names, obeyed(line, [rule], places).reshape(shape))


def _supported(limits: Iterable[Limit], allowed: Mapping[str, IndexArray]) -> dict[str, IndexArray]:
    """Options that go with some allowed option of every other choice of each limit."""
    left = dict(allowed)
    while True:
        before = sum(len(options) for options in left.values())
        for limit in limits:
            box = _box(limit, left)
            for place, name in enumerate(limit.choices):
                others = tuple(axis for axis in range(box.ndim) if axis != place)
                left[name] = left[name][box.any(axis=others)]
                box = _box(limit, left)
        if sum(len(options) for options in left.values()) == before:
            return left


def _box(limit: Limit, allowed: Mapping[str, IndexArray]) -> NDArray[np.bool_]:
    return np.asarray(limit.holds[np.ix_(*(allowed[name] for name in limit.choices))])


def _looked_beyond(limits: list[Limit], allowed: Mapping[str, IndexArray]) -> Iterator[Limit]:
    """Limits on the choices made earlier that follow once later choices are looked beyond."""
    held = list(limits)
    for name in LATER:
        bucket = [limit for limit in held if name in limit.choices]
        held = [limit for limit in held if name not in limit.choices]
        for group in _joinable(bucket, allowed):
            found = _without(name, group, allowed)
            if found is not None:
                held.append(found)
                yield found


def _joinable(bucket: list[Limit], allowed: Mapping[str, IndexArray]) -> list[list[Limit]]:
    """All of the limits together, or each alone where their table would be too large."""
    names = {name for limit in bucket for name in limit.choices}
    if math.prod(len(allowed[name]) for name in names) <= MOST_CELLS:
        return [bucket] if bucket else []
    return [[limit] for limit in bucket]


def _without(name: str, group: list[Limit], allowed: Mapping[str, IndexArray]) -> Limit | None:
    """What limits say of the other choices when some option of one must go with them."""
    names = tuple(dict.fromkeys(each for limit in group for each in limit.choices))
    sizes = {each: len(allowed[each]) for each in names}
    joined = np.ones(tuple(sizes.values()), dtype=bool)
    for limit in group:
        box = _box(limit, allowed)
        order = [limit.choices.index(each) for each in names if each in limit.choices]
        spread = [sizes[each] if each in limit.choices else 1 for each in names]
        joined &= box.transpose(order).reshape(spread)
    rest = tuple(each for each in names if each != name)
    holds = joined.any(axis=names.index(name))
    if not rest or holds.all():
        return None
    table = np.zeros(tuple(_size(group, each) for each in rest), dtype=bool)
    table[np.ix_(*(allowed[each] for each in rest))] = holds
    return Limit(rest, table)


def _size(group: list[Limit], name: str) -> int:
    """Number of options of a choice, allowed or not."""
    limit = next(limit for limit in group if name in limit.choices)
    return int(limit.holds.shape[limit.choices.index(name)])
