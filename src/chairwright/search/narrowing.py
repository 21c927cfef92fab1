"""What the musts on figures of few choices leave of each choice before any search begins."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from chairwright.chair.rows import IndexArray
from chairwright.figures.registry import FIGURES
from chairwright.search.look_ahead import LookAhead
from chairwright.search.space import Limit, Space
from chairwright.targets.target import Target
from chairwright.targets.verdict import broken


def narrowed(space: Space, musts: Iterable[Target]) -> Space:
    """Leave out options with which some must cannot hold, and note which go together.

    Only musts on figures of few choices are used. A set-up that holds every must is in the
    smaller space exactly when it is in the whole one.

    Parameters
    ----------
    space : Space
    musts : iterable of Target

    Returns
    -------
    Space
        The same space when nothing would be left.
    """
    limits = tuple(_limit(space, must) for must in musts if FIGURES[must.figure].depends)
    allowed = dict(space.allowed)
    while True:
        before = sum(len(options) for options in allowed.values())
        for limit in limits:
            allowed.update(_supported(limit, allowed))
        if not all(len(options) for options in allowed.values()):
            return space
        if sum(len(options) for options in allowed.values()) == before:
            return replace(space, allowed=allowed, limits=limits)


def _limit(space: Space, must: Target) -> Limit:
    ahead = LookAhead(space, must.figure)
    return Limit(ahead.depends, ahead.grid.marked(~broken(must, ahead.values)))


def _supported(limit: Limit, allowed: dict[str, IndexArray]) -> dict[str, IndexArray]:
    """Options that go with some allowed option of every other choice of a limit."""
    box: NDArray[np.bool_] = limit.holds[np.ix_(*(allowed[name] for name in limit.choices))]
    others = range(box.ndim)
    return {
        name: allowed[name][box.any(axis=tuple(axis for axis in others if axis != place))]
        for place, name in enumerate(limit.choices)
    }
