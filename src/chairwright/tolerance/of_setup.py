"""How sure everything is that is said of one set-up: figures, and margins to what is asked."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np

from chairwright.chair.occupant import Occupant
from chairwright.chair.rows import IndexArray
from chairwright.figures.evaluate import figures_of
from chairwright.figures.spread import NO_SPREAD
from chairwright.line.model import Line
from chairwright.mass_points import FloatArray
from chairwright.places.model import Surroundings
from chairwright.targets.target import Target
from chairwright.tolerance.bounds import Bound, bounds_of
from chairwright.tolerance.chain import Chain, chain_of
from chairwright.tolerance.chair_inputs import DrawnRows
from chairwright.tolerance.draws import DRAWS, drawn_steps
from chairwright.tolerance.model import Input
from chairwright.tolerance.place_margins import place_moves
from chairwright.tolerance.spread import Spread, moves, spread_of, with_more

Ends = tuple[Spread | None, Spread | None]


@dataclass(frozen=True)
class Tolerance:
    """How sure the figures and the margins of one set-up are.

    Parameters
    ----------
    inputs : tuple of Input
        In the order of every spread's ``up`` and ``down``.
    figures : dict of str to Spread
        Figures that have a value and a spread.
    ends : tuple of (Spread or None, Spread or None)
        Of the margin to the low and to the high end of each target; None for an open end, or
        where the figure has no value.
    values : dict of str to float
        The figures as they stand.
    """

    inputs: tuple[Input, ...]
    figures: dict[str, Spread]
    ends: tuple[Ends, ...]
    values: dict[str, float] = field(default_factory=dict)

    @property
    def half_widths(self) -> dict[str, float]:
        """Half width of every figure that has one."""
        return {name: spread.half for name, spread in self.figures.items()}

    def halves(self, at: int) -> tuple[float, float]:
        """Half width of the margin to the low and to the high end of one target."""
        low, high = self.ends[at]
        return (0.0 if low is None else low.half), (0.0 if high is None else high.half)


NOT_FOLLOWED = Tolerance((), {}, ())
"""Where spreads come from elsewhere."""


class _Tried:
    """One set-up with its errors stepped and drawn, each figure worked out once."""

    def __init__(self, chain: Chain, index: Mapping[str, int], names: Sequence[str]) -> None:
        self.chain = chain
        self._index = index
        self._names = names
        count = len(chain.inputs)
        one = np.eye(count)
        self.stepped = self._figures(np.concatenate([np.zeros((1, count)), one, -one]), names)
        self._drawn: dict[tuple[str, int], FloatArray] = {}
        self._built: tuple[DrawnRows, Occupant] | None = None

    def steps(self, count: int) -> FloatArray:
        """The first so many draws; all of them for 0."""
        every = drawn_steps(self.chain.inputs)
        return every[:count] if count else every

    def value(self, name: str) -> float:
        """The figure as it stands."""
        return float(self.stepped[name][0])

    def changes(self, name: str) -> tuple[FloatArray, FloatArray]:
        """What one standard uncertainty more, and less, of each input adds."""
        values = self.stepped[name]
        count = len(self.chain.inputs)
        return values[1 : count + 1] - values[0], values[count + 1 :] - values[0]

    def drawn(self, name: str) -> Callable[[int], FloatArray]:
        """The figure on the first so many draws."""

        def of(count: int) -> FloatArray:
            if (name, count) not in self._drawn:
                found = self._on_all(name) if count == DRAWS else self._on_some(count)
                self._drawn.update({(each, count): values for each, values in found.items()})
            return self._drawn[name, count]

        return of

    def _on_some(self, count: int) -> dict[str, FloatArray]:
        """Every figure on the first so many draws."""
        return self._figures(self.steps(count), self._names)

    def _on_all(self, name: str) -> dict[str, FloatArray]:
        """One figure on all draws; the chairs on them are built once."""
        if self._built is None:
            steps = self.steps(0)
            self._built = self.chain.built(_rows_of(self._index, len(steps)), steps)
        with np.errstate(invalid="ignore", divide="ignore"):
            return figures_of(*self._built, [name])

    def _figures(self, steps: FloatArray, names: Sequence[str]) -> dict[str, FloatArray]:
        return self.chain.figures(_rows_of(self._index, len(steps)), steps, names)


def _rows_of(index: Mapping[str, int], count: int) -> dict[str, IndexArray]:
    return {name: np.full(count, at, dtype=np.intp) for name, at in index.items()}


def tolerance_of(
    line: Line,
    occupant: Occupant,
    index: Mapping[str, int],
    names: Iterable[str],
    targets: Sequence[Target] = (),
    surroundings: Surroundings | None = None,
) -> Tolerance:
    """How sure the figures of a set-up are, and the margins to what is asked.

    Parameters
    ----------
    line : Line
    occupant : Occupant
    index : mapping of str to int
        Option position of every choice; the set-up must be buildable.
    names : iterable of str
        Which figures; those of the targets come by themselves.
    targets : sequence of Target
    surroundings : Surroundings or None
        Of the client; without them the sizes of places count as exact.

    Returns
    -------
    Tolerance

    References
    ----------
    JCGM 100:2008, 5.1.2 (first order); JCGM 101:2008 (Monte Carlo); theory: tolerance.
    """
    every = tuple(dict.fromkeys([*names, *(target.figure for target in targets)]))
    moving = tuple(name for name in every if name not in NO_SPREAD)
    tried = _Tried(chain_of(line, occupant), index, moving)
    figures = {name: spread for name in moving if (spread := _figure(tried, name)) is not None}
    bounds = bounds_of(tried.chain, targets)
    placed = place_moves(line, occupant, index, targets, surroundings)
    ends = [
        _ends(tried, target, both, placed.get(at, ()))
        for at, (target, both) in enumerate(zip(targets, bounds, strict=True))
    ]
    return Tolerance(
        tried.chain.inputs,
        {name: spread for name, spread in figures.items() if moves(tried.value(name), spread)},
        tuple(ends),
        {name: tried.value(name) for name in moving},
    )


def _figure(tried: _Tried, name: str) -> Spread | None:
    value = tried.value(name)
    if math.isnan(value):
        return None
    found = spread_of(value, *tried.changes(name), tried.drawn(name), tried.steps)
    return found


def _ends(
    tried: _Tried,
    target: Target,
    bounds: tuple[Bound | None, Bound | None],
    more: Sequence[tuple[Input, float, float]],
) -> Ends:
    if target.figure in NO_SPREAD or math.isnan(tried.value(target.figure)):
        return None, None
    low, high = bounds
    return (
        None if low is None else _margin(tried, target.figure, low, more),
        None if high is None else _margin(tried, target.figure, high, more),
    )


def _margin(
    tried: _Tried, name: str, bound: Bound, more: Sequence[tuple[Input, float, float]]
) -> Spread:
    up, down = tried.changes(name)
    figure = tried.drawn(name)

    def drawn(count: int) -> FloatArray:
        return figure(count) - bound.value - tried.steps(count) @ bound.slopes

    spread = spread_of(
        tried.value(name) - bound.value,
        up - bound.slopes,
        down + bound.slopes,
        drawn,
        tried.steps,
    )
    return with_more(spread, [*more, *_apart(bound)])


def _apart(bound: Bound) -> list[tuple[Input, float, float]]:
    if bound.apart == 0.0:
        return []
    stated = Input("target", "tolerance that the target states", "measured", 0.0, "", "the target")
    return [(stated, bound.apart, -bound.apart)]
