"""A scatter on paper millimetres: axes with round steps, and dots that a page turns into links."""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil, floor, isnan, log10

WIDTH_MM, HEIGHT_MM = 150.0, 96.0
LEFT_MM, RIGHT_MM, TOP_MM, BOTTOM_MM = 20.0, 5.0, 7.0, 16.0
DOT_MM = 1.3
HIT_MM = 4.2
STEPS_WANTED = 6
NUMBER_MM = 1.7, -1.1
"""From a dot to the lower left corner of its number."""
DIGIT_MM = 1.35, 1.8

Box = tuple[float, float, float, float]


@dataclass(frozen=True)
class Dot:
    """One thing to be shown, in the figures' own units."""

    number: int
    x: float
    y: float
    label: str


@dataclass(frozen=True)
class PlacedDot:
    """A dot on paper [mm], with the corner of its link; ``named`` when its number has room."""

    number: int
    x: float
    y: float
    left: float
    top: float
    label: str
    named: bool = False


@dataclass(frozen=True)
class Tick:
    """A step of an axis: where it lies on paper [mm], and its number."""

    at: float
    words: str


@dataclass(frozen=True)
class Scatter:
    """The picture in paper millimetres.

    Parameters
    ----------
    width, height, left, right, top, bottom : float
        Paper and the box of the axes.
    x_words, y_words : str
        What the axes are.
    x_ticks, y_ticks : tuple of Tick
    dots : tuple of PlacedDot
    now : PlacedDot or None
        The set-up on the bench; None where it lies outside or is not known.
    radius, hit : float
        Of a dot, and side of its link.
    """

    width: float
    height: float
    left: float
    right: float
    top: float
    bottom: float
    x_words: str
    y_words: str
    x_ticks: tuple[Tick, ...]
    y_ticks: tuple[Tick, ...]
    dots: tuple[PlacedDot, ...]
    now: PlacedDot | None
    radius: float = DOT_MM
    hit: float = HIT_MM


def scatter_of(
    dots: tuple[Dot, ...],
    x_words: str,
    y_words: str,
    now: tuple[float, float] | None,
    digits: tuple[int, int],
) -> Scatter:
    """Lay a scatter out.

    Parameters
    ----------
    dots : tuple of Dot
        At least one.
    x_words, y_words : str
    now : tuple of float or None
        The present set-up's place.
    digits : tuple of int
        Digits after the point of the two figures.

    Returns
    -------
    Scatter
    """
    shown = now if now is not None and not any(map(isnan, now)) else None
    xs = [dot.x for dot in dots] + ([shown[0]] if shown else [])
    ys = [dot.y for dot in dots] + ([shown[1]] if shown else [])
    right, bottom = WIDTH_MM - RIGHT_MM, HEIGHT_MM - BOTTOM_MM
    across, up = axis_steps(xs, digits[0]), axis_steps(ys, digits[1])

    def at(x: float, y: float) -> tuple[float, float]:
        return (
            round(_between(x, across, LEFT_MM, right), 2),
            round(_between(y, up, bottom, TOP_MM), 2),
        )

    def placed(number: int, x: float, y: float, label: str) -> PlacedDot:
        (u, v), half = at(x, y), HIT_MM / 2.0
        return PlacedDot(number, u, v, round(u - half, 2), round(v - half, 2), label)

    return Scatter(
        width=WIDTH_MM,
        height=HEIGHT_MM,
        left=LEFT_MM,
        right=right,
        top=TOP_MM,
        bottom=bottom,
        x_words=x_words,
        y_words=y_words,
        x_ticks=tuple(
            Tick(round(_between(step, across, LEFT_MM, right), 2), words)
            for step, words in _worded(across)
        ),
        y_ticks=tuple(
            Tick(round(_between(step, up, bottom, TOP_MM), 2), words) for step, words in _worded(up)
        ),
        dots=_named([placed(dot.number, dot.x, dot.y, dot.label) for dot in dots]),
        now=None if shown is None else placed(0, *shown, "the set-up on the bench"),
    )


def _named(dots: list[PlacedDot]) -> tuple[PlacedDot, ...]:
    """The dots; the number stands beside those where it meets no other dot or number."""
    taken = [(d.x - DOT_MM, d.y - DOT_MM, d.x + DOT_MM, d.y + DOT_MM) for d in dots]
    found = []
    for at, dot in enumerate(dots):
        left, low = dot.x + NUMBER_MM[0], dot.y + NUMBER_MM[1]
        box = left, low - DIGIT_MM[1], left + DIGIT_MM[0] * len(str(dot.number)), low
        others = (each for place, each in enumerate(taken) if place != at)
        free = box[2] <= WIDTH_MM and not any(_meet(box, each) for each in others)
        if free:
            taken.append(box)
        found.append(replace(dot, named=free))
    return tuple(found)


def _meet(one: Box, other: Box) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


def axis_steps(values: list[float], digits: int) -> tuple[float, ...]:
    """Round steps that hold all values between the first and the last.

    Parameters
    ----------
    values : list of float
    digits : int
        Digits after the point of the figure: no step is finer.

    Examples
    --------
    >>> axis_steps([12.0, 61.0], 0)
    (10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 70.0)
    """
    low, high = min(values), max(values)
    rough = max((high - low) / STEPS_WANTED, 10.0**-digits)
    power = 10.0 ** floor(log10(rough))
    step = next(size * power for size in (1.0, 2.0, 5.0, 10.0) if size * power >= rough * 0.999)
    first, last = floor(round(low / step, 6)), ceil(round(high / step, 6))
    last = max(last, first + 1)
    return tuple(round(number * step, 9) for number in range(first, last + 1))


def _worded(steps: tuple[float, ...]) -> list[tuple[float, str]]:
    return [(step, f"{step:g}") for step in steps]


def _between(value: float, steps: tuple[float, ...], start: float, end: float) -> float:
    share = (value - steps[0]) / (steps[-1] - steps[0])
    return start + share * (end - start)
