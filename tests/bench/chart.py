"""Time against the size of the space, as a plain picture: both axes run in powers of ten."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

WIDTH, HEIGHT = 680, 440
LEFT, RIGHT, TOP, BOTTOM = 66, 150, 44, 54
INK, GRID, PAPER = "#1d2b36", "#b9c1c7", "#fbfaf7"
FONT = "font-family=\"'Source Sans Pro', 'Source Sans 3', Arial, sans-serif\""

Mark = Literal["disc", "ring", "square", "triangle"]
Point = tuple[float, float]


@dataclass(frozen=True)
class Series:
    """One line: what it is called beside its end, how it is drawn, (set-ups, seconds)."""

    words: str
    mark: Mark
    dash: str
    points: tuple[Point, ...]
    before: bool = False


@dataclass(frozen=True)
class Axes:
    """Powers of ten at the ends of both axes."""

    left: int
    right: int
    low: int
    high: int

    def at(self, point: Point) -> Point:
        """Place of (set-ups, seconds) in the picture."""
        across = (math.log10(point[0]) - self.left) / (self.right - self.left)
        up = (math.log10(point[1]) - self.low) / (self.high - self.low)
        return LEFT + across * (WIDTH - LEFT - RIGHT), HEIGHT - BOTTOM - up * (
            HEIGHT - TOP - BOTTOM
        )


def chart(series: Sequence[Series]) -> str:
    """Draw seconds over the number of set-ups as SVG text.

    Parameters
    ----------
    series : sequence of Series
    """
    places = [point for each in series for point in each.points]
    sizes, seconds = zip(*places, strict=True)
    axes = Axes(*_powers(sizes), *_powers(seconds))
    head = "Seconds to the proven answer, average client"
    parts = [_text((LEFT, 24), head, "start"), *_grid(axes)]
    under = (LEFT + WIDTH - RIGHT) / 2, HEIGHT - 12.0
    parts.append(_text(under, "set-ups that the rules leave", "middle"))
    for each in series:
        parts += _drawn(each, axes)
    parts += _names(series, axes)
    body = "\n".join(parts)
    told = "Time to the proven answer against the number of set-ups, both in powers of ten"
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {WIDTH} {HEIGHT}" width="{WIDTH}" '
        f'height="{HEIGHT}" role="img" aria-label="{told}">\n'
        f'<rect width="{WIDTH}" height="{HEIGHT}" fill="{PAPER}"/>\n{body}\n</svg>\n'
    )


def _powers(values: Iterable[float]) -> tuple[int, int]:
    """Powers of ten around some values."""
    logs = [math.log10(value) for value in values]
    return math.floor(min(logs)), math.ceil(max(logs))


def _grid(axes: Axes) -> list[str]:
    left, right = 10.0**axes.left, 10.0**axes.right
    low, high = 10.0**axes.low, 10.0**axes.high
    parts = []
    for seconds in (10.0**power for power in range(axes.low, axes.high + 1)):
        start = axes.at((left, seconds))
        parts.append(_line((start, axes.at((right, seconds))), 0.6, GRID))
        parts.append(_text((start[0] - 8, start[1] + 4), f"{seconds:g} s", "end"))
    for power in range(axes.left, axes.right + 1):
        foot = axes.at((10.0**power, low))
        parts.append(_line((foot, axes.at((10.0**power, high))), 0.6, GRID))
        if (power - axes.left) % 2 == 0:
            parts.append(_power((foot[0], foot[1] + 20), power))
    return parts


def _names(series: Sequence[Series], axes: Axes) -> list[str]:
    """The name of each line beside its last point, never two on top of each other."""
    parts, least = [], 0.0
    for each in sorted(series, key=lambda one: -one.points[-1][1]):
        x, y = axes.at(each.points[-1])
        if each.before:
            parts.append(_text((x - 10, y + 4), each.words, "end"))
            continue
        least = max(y + 4, least + 17)
        parts.append(_text((x + 10, least), each.words, "start"))
    return parts


def _drawn(series: Series, axes: Axes) -> list[str]:
    points = [axes.at(point) for point in series.points]
    return [
        _line(points, 1.8, INK, series.dash),
        *(_mark(point, series.mark) for point in points),
    ]


def _mark(at: Point, mark: Mark) -> str:
    x, y = at
    if mark == "square":
        corners = f"{x - 4:.1f},{y - 4:.1f} {x + 4:.1f},{y - 4:.1f} {x + 4:.1f},{y + 4:.1f} "
        return _shape(f"{corners}{x - 4:.1f},{y + 4:.1f}")
    if mark == "triangle":
        return _shape(f"{x - 5:.1f},{y + 4:.1f} {x + 5:.1f},{y + 4:.1f} {x:.1f},{y - 5:.1f}")
    fill = INK if mark == "disc" else PAPER
    look = f'fill="{fill}" stroke="{INK}" stroke-width="1.5"'
    return f'<circle cx="{x:.1f}" cy="{y:.1f}" r="4" {look}/>'


def _shape(corners: str) -> str:
    return f'<polygon points="{corners}" fill="{PAPER}" stroke="{INK}" stroke-width="1.5"/>'


def _line(points: Sequence[Point], width: float, colour: str, dash: str = "") -> str:
    drawn = " ".join(f"{x:.1f},{y:.1f}" for x, y in points)
    dashes = f' stroke-dasharray="{dash}"' if dash else ""
    look = f'fill="none" stroke="{colour}" stroke-width="{width}"{dashes}'
    return f'<polyline points="{drawn}" {look}/>'


def _power(at: Point, power: int) -> str:
    return _text(at, f'10<tspan dy="-5" font-size="10">{power}</tspan>', "middle")


def _text(at: Point, words: str, anchor: str) -> str:
    place = f'x="{at[0]:.1f}" y="{at[1]:.1f}" text-anchor="{anchor}"'
    return f'<text {place} {FONT} font-size="14" fill="{INK}">{words}</text>'
