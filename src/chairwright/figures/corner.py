"""The corner of two corridors for any outline, on arrays of chairs.

Corridors meet at 90 degrees; the chair comes by the first ("in") and leaves by the second
("out"). Three numbers bracket what a chair needs:

- free motion: below it no motion at all gets the outline round;
- best arc: straight on, one steady arc about a point of the axle line, straight on; enough;
- arc: the same with the whole circle of the front corner inside both outer walls; enough.

The chair steers by its rear wheels, so its instant centre lies on the axle line.
Theory: docs/theory/turning.md.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache
from itertools import combinations

import numpy as np
from numpy.typing import ArrayLike, NDArray

from chairwright.figures.turning import Corner, stacked
from chairwright.mass_points import FloatArray

GOLDEN = (np.sqrt(5) - 1) / 2
ROUNDS = 32
"""Golden sections after the coarse look: the bracket shrinks by 2e-7."""
RADII = 61
ANGLES = 61
AT_ONCE = 6000
"""Values looked at in one array; more would leave the processor's cache."""

Need = Callable[[FloatArray], FloatArray]
Places = NDArray[np.intp]


def least_over(
    need: Need, low: FloatArray, high: FloatArray, steps: int, rounds: int = ROUNDS
) -> FloatArray:
    """Least value of a function of one variable, entry by entry.

    A coarse look, then golden sections round the two lowest valleys that it shows.

    Parameters
    ----------
    need : callable
        From places of shape (m, n) to values of shape (m, n), column by column alike.
    low, high : ndarray, shape (n,)
    steps : int
        Places of the coarse look.
    rounds : int
        Golden sections.

    Returns
    -------
    ndarray, shape (n,)
        Least of all values met.
    """
    part = np.linspace(0.0, 1.0, steps)
    rows = max(1, AT_ONCE // max(1, len(low)))
    looks = [need(low + (high - low) * some[:, None]) for some in _pieces(part, rows)]
    values = np.concatenate(looks)
    edge = np.full((1, *low.shape), np.inf)
    before, after = np.concatenate([edge, values[:-1]]), np.concatenate([values[1:], edge])
    valleys = np.where((values <= before) & (values <= after), values, np.inf)
    best = np.argsort(valleys, axis=0, kind="stable")[:2]
    left = low + (high - low) * part[np.maximum(best - 1, 0)]
    right = low + (high - low) * part[np.minimum(best + 1, steps - 1)]
    return np.asarray(
        np.minimum(values.min(axis=0), _golden(need, left, right, rounds).min(axis=0))
    )


def _pieces(part: FloatArray, size: int) -> list[FloatArray]:
    return [part[start : start + size] for start in range(0, len(part), size)]


def _golden(need: Need, left: FloatArray, right: FloatArray, rounds: int) -> FloatArray:
    """Least value met by golden sections between two places, entry by entry."""
    first, second = right - GOLDEN * (right - left), left + GOLDEN * (right - left)
    one, two = need(first), need(second)
    least = np.minimum(one, two)
    for _ in range(rounds):
        lower = one <= two
        left, right = np.where(lower, left, first), np.where(lower, second, right)
        step = GOLDEN * (right - left)
        fresh = np.where(lower, right - step, left + step)
        value = need(fresh)
        first, second = np.where(lower, fresh, second), np.where(lower, first, fresh)
        one, two = np.where(lower, value, two), np.where(lower, one, value)
        least = np.minimum(least, value)
    return np.asarray(least)


def _across(corners: FloatArray, at: FloatArray) -> FloatArray:
    """Corners of shape (k, n) made to go with places of shape (n,) or (m, n)."""
    return corners if at.ndim == 1 else corners[:, None, :]


class _Pushed:
    """The outline at one angle, pushed against both outer walls.

    Holds each left-hand corner's distance from the wall across the way out (``ahead``) and
    from the outer wall of the way in (``aside``), shape (k, n). Only left-hand corners can
    meet the inner corner first; both ends of the turn and all angles between are taken.
    """

    def __init__(self, x: FloatArray, y: FloatArray, angle: FloatArray) -> None:
        sine, cosine = np.sin(angle), np.cos(angle)
        x, y = _across(x, angle), _across(y, angle)
        along, across, forth, back = x * cosine, y * cosine, x * sine, y * sine
        self.ahead = (along + back).max(axis=0) - (along - back)
        self.aside = (forth + across) - (forth - across).min(axis=0)


@cache
def _pairs(count: int) -> tuple[Places, Places]:
    first, second = np.array(list(combinations(range(count), 2)), dtype=np.intp).reshape(-1, 2).T
    return first, second


def _equal_need(x: FloatArray, y: FloatArray, angle: FloatArray) -> FloatArray:
    """Equal corridors needed at an angle: the greatest min(ahead, aside) over the outline."""
    pushed = _Pushed(x, y, angle)
    ahead, aside = pushed.ahead, pushed.aside
    need = np.max(np.minimum(ahead, aside), axis=0)
    i, j = _pairs(len(x))
    lead = ahead - aside
    apart = lead[j] - lead[i]
    with np.errstate(divide="ignore", invalid="ignore"):
        level = (ahead[i] * lead[j] - ahead[j] * lead[i]) / apart
    crossing = np.where(lead[i] * lead[j] < 0, level, -np.inf)
    return np.asarray(np.maximum(need, np.max(crossing, axis=0, initial=-np.inf)))


def _other_need(x: FloatArray, y: FloatArray, angle: FloatArray, known: FloatArray) -> FloatArray:
    """First corridor needed at an angle when the second is known: greatest aside beyond it."""
    pushed = _Pushed(x, y, angle)
    beyond, aside = pushed.ahead - known, pushed.aside
    need = np.where(beyond >= 0, aside, -np.inf).max(axis=0)
    i, j = _pairs(len(x))
    one, two = beyond.take(i, axis=0), beyond.take(j, axis=0)
    with np.errstate(divide="ignore", invalid="ignore"):
        level = (aside.take(i, axis=0) * two - aside.take(j, axis=0) * one) / (two - one)
    crossing = np.where(one * two < 0, level, -np.inf)
    return np.asarray(np.maximum(need, crossing.max(axis=0, initial=-np.inf)))


def beside(
    corners: Sequence[Corner], corridor: ArrayLike
) -> tuple[FloatArray, FloatArray, FloatArray]:
    """Corners x, y of shape (k, n) and a known width of shape (n,), brought to one n."""
    x, y = stacked(corners)
    known = np.atleast_1d(np.asarray(corridor, dtype=np.float64))
    count = np.broadcast_shapes(x.shape[1:], known.shape)
    whole = (len(x), *count)
    return np.broadcast_to(x, whole), np.broadcast_to(y, whole), np.broadcast_to(known, count)


def _quarter(x: FloatArray) -> tuple[FloatArray, FloatArray]:
    return np.zeros(x.shape[1]), np.full(x.shape[1], np.pi / 2)


def corner_free_mm(corners: Sequence[Corner]) -> FloatArray:
    """Equal corridors below which no motion at all gets the outline round, shape (n,) [mm].

    The outline is pushed against both outer walls at every angle; the greatest need over all
    angles counts. Convex hull of the corners and their mirror images.
    """
    x, y = stacked(corners)
    most = -least_over(lambda q: -_equal_need(x, y, q), *_quarter(x), ANGLES)
    return np.asarray(np.maximum(most, 2 * np.max(y, axis=0)))


def corner_free_in_mm(
    corners: Sequence[Corner], corridor_out: ArrayLike, rounds: int = ROUNDS
) -> FloatArray:
    """Way in below which no motion at all gets the outline round, way out known [mm].

    Parameters
    ----------
    corners : sequence of Corner
    corridor_out : array_like, shape (n,) [mm]
    rounds : int
        Golden sections.

    Returns
    -------
    ndarray, shape (n,) [mm]
        Infinite when the outline is wider than the way out.
    """
    x, y, known = beside(corners, corridor_out)
    most = -least_over(lambda q: -_other_need(x, y, q, known), *_quarter(x), ANGLES, rounds)
    width = 2 * np.max(y, axis=0)
    return np.where(known < width, np.inf, np.maximum(most, width))


def corner_free_out_mm(
    corners: Sequence[Corner], corridor_in: ArrayLike, rounds: int = ROUNDS
) -> FloatArray:
    """Way out below which no motion at all gets the outline round, way in known [mm].

    Parameters
    ----------
    corners : sequence of Corner
    corridor_in : array_like, shape (n,) [mm]
    rounds : int
        Golden sections.

    Returns
    -------
    ndarray, shape (n,) [mm]
        Infinite when the outline is wider than the way in. Going out is coming in backwards,
        so it is the way in of the outline turned round.
    """
    turned = tuple((-np.asarray(x, dtype=np.float64), y) for x, y in corners)
    return corner_free_in_mm(turned, corridor_in, rounds)


class _Swing:
    """What an arc about (0, radius) sweeps in a quarter turn to the left, shape (n,) [mm].

    ``first`` and ``second``: reach from the centre towards the outer wall of the way in and
    of the way out; ``circle``: reach in any direction; ``inner``: from the centre to the
    nearest line along the chair.
    """

    def __init__(self, x: FloatArray, y: FloatArray, radius: FloatArray) -> None:
        x, y = _across(x, radius), _across(y, radius)
        across = radius + y
        self._x, self._across = x, across
        self.first = np.hypot(np.minimum(x, 0.0), across).max(axis=0)
        self.second = np.hypot(np.maximum(x, 0.0), across).max(axis=0)
        self.inner = radius - y.max(axis=0)

    @property
    def circle(self) -> FloatArray:
        """Reach in any direction."""
        return np.asarray(np.hypot(self._x, self._across).max(axis=0))


def _least_arc(
    need: Callable[[_Swing], FloatArray],
    x: FloatArray,
    y: FloatArray,
    corridor: FloatArray,
    rounds: int = ROUNDS,
) -> FloatArray:
    """Least need over the radius: from the chair's widest place to far beyond any use."""
    low = np.max(y, axis=0)
    span = 4 * (np.max(np.hypot(x, y), axis=0) + corridor)

    def at(part: FloatArray) -> FloatArray:
        return need(_Swing(x, y, low + span * part**2))

    return least_over(at, np.zeros_like(low), np.ones_like(low), RADII, rounds)


def corner_arc_mm(corners: Sequence[Corner]) -> FloatArray:
    """Equal corridors in which one arc about the corner's bisector is enough, shape (n,) [mm].

    The whole circle of the farthest corner keeps off both outer walls, so the arc serves
    either way round. Least over the radius.
    """
    x, y = stacked(corners)

    def need(swing: _Swing) -> FloatArray:
        return np.asarray(swing.circle - swing.inner / np.sqrt(2))

    return _least_arc(need, x, y, np.zeros(x.shape[1]))


def corner_arc_out_mm(corners: Sequence[Corner], corridor_in: ArrayLike) -> FloatArray:
    """Way out in which one arc is enough, whole circle inside both outer walls [mm].

    Parameters
    ----------
    corners : sequence of Corner
    corridor_in : array_like, shape (n,) [mm]

    Returns
    -------
    ndarray, shape (n,) [mm]
        Infinite when no such arc with a radius up to 4 (reach + way in) fits the way in.
    """
    return _arc_out(corners, corridor_in, whole_circle=True)


def corner_best_arc_out_mm(
    corners: Sequence[Corner], corridor_in: ArrayLike, rounds: int = ROUNDS
) -> FloatArray:
    """Way out in which the best placed arc is enough, way in known [mm].

    Parameters
    ----------
    corners : sequence of Corner
    corridor_in : array_like, shape (n,) [mm]
    rounds : int
        Golden sections.

    Returns
    -------
    ndarray, shape (n,) [mm]
        Infinite when no arc with a radius up to 4 (reach + way in) fits the way in.
    """
    return _arc_out(corners, corridor_in, rounds, whole_circle=False)


def _arc_out(
    corners: Sequence[Corner], corridor_in: ArrayLike, rounds: int = ROUNDS, *, whole_circle: bool
) -> FloatArray:
    x, y, known = beside(corners, corridor_in)

    def need(swing: _Swing) -> FloatArray:
        first = swing.circle if whole_circle else swing.first
        second = swing.circle if whole_circle else swing.second
        up = np.maximum(first - known, 0.0)
        back = np.sqrt(np.maximum(swing.inner**2 - up**2, 0.0))
        return np.where(up > swing.inner, np.inf, second - back)

    return _least_arc(need, x, y, known, rounds)


def corner_best_arc_mm(corners: Sequence[Corner]) -> FloatArray:
    """Equal corridors in which the best placed steady arc is enough, shape (n,) [mm].

    The outer wall of the way in only has to clear the rear overhang, that of the way out the
    front; the centre moves off the bisector until both needs are equal.
    """
    x, y = stacked(corners)
    return _least_arc(_equal_arc, x, y, np.zeros(x.shape[1]))


def _equal_arc(swing: _Swing) -> FloatArray:
    gap = (swing.second - swing.first) / np.maximum(swing.inner, 1e-9)
    angle = np.arccos(np.clip(gap, -1.0, 1.0) / np.sqrt(2)) - np.pi / 4
    one = swing.first - swing.inner * np.sin(angle)
    return np.asarray(np.maximum(one, swing.second - swing.inner * np.cos(angle)))


def corner_widths_mm(corners: Sequence[Corner]) -> dict[str, FloatArray]:
    """All three widths of equal corridors at once [mm]: ``free``, ``best_arc`` and ``arc``."""
    return {
        "free": corner_free_mm(corners),
        "best_arc": corner_best_arc_mm(corners),
        "arc": corner_arc_mm(corners),
    }
