"""A picture of a seat-height chart: for each rear wheel, heights at the front over seat angles."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from chairwright.fitting.heights_chart import ANGLE, FRONT, HeightsChart
from chairwright.papers.heights_blocks import printed_holes
from chairwright.units import MM_PER_INCH

WIDTH, HEIGHT = 160.0, 70.0
LEFT, RIGHT, TOP, BOTTOM = 16.0, 3.0, 3.0, 15.0
SHAPES = ("disc", "ring", "square", "cross")
MOST_TICKS = 9


@dataclass(frozen=True)
class Tick:
    """A number on an axis."""

    at: str
    words: str


@dataclass(frozen=True)
class Cloud:
    """All that stands with one caster: its mark, and a path of all its places."""

    code: str
    shape: str
    path: str
    count: int

    @property
    def sample(self) -> str:
        """One mark at the origin, for the key."""
        return _mark(self.shape, 0.0, 0.0)


@dataclass(frozen=True)
class Panel:
    """One rear wheel's picture.

    Parameters
    ----------
    words : str
        For readers who cannot see it.
    clouds : tuple of Cloud
    across, up : tuple of Tick
    unit : str
        Of the heights.
    width, height, left, right, top, bottom : str
        Of the drawing and of its frame.
    """

    words: str
    clouds: tuple[Cloud, ...]
    across: tuple[Tick, ...]
    up: tuple[Tick, ...]
    unit: str
    width: str = f"{WIDTH:g}"
    height: str = f"{HEIGHT:g}"
    left: str = f"{LEFT:g}"
    right: str = f"{WIDTH - RIGHT:g}"
    top: str = f"{TOP:g}"
    bottom: str = f"{HEIGHT - BOTTOM:g}"


@dataclass(frozen=True)
class Frame:
    """The range of both axes, shared by every wheel."""

    low_x: float
    high_x: float
    low_y: float
    high_y: float

    def x(self, value: float) -> float:
        """Place of a height across."""
        return LEFT + (WIDTH - LEFT - RIGHT) * (value - self.low_x) / (self.high_x - self.low_x)

    def y(self, value: float) -> float:
        """Place of an angle from the top."""
        room = HEIGHT - TOP - BOTTOM
        return HEIGHT - BOTTOM - room * (value - self.low_y) / (self.high_y - self.low_y)


def panels(chart: HeightsChart, units: str) -> tuple[Panel, ...]:
    """Draw every rear wheel of a chart on the same axes.

    Parameters
    ----------
    chart : HeightsChart
        With something that stands.
    units : {"mm", "in"}
    """
    holes = printed_holes(chart)
    per = MM_PER_INCH if units == "in" else 1.0
    fronts = chart.figures[FRONT][:, holes] / per
    angles = chart.figures[ANGLE][:, holes]
    step_x, step_y = _step(fronts), _step(angles)
    frame = Frame(
        step_x * math.floor(float(np.nanmin(fronts)) / step_x - 0.2),
        step_x * math.ceil(float(np.nanmax(fronts)) / step_x + 0.2),
        step_y * math.floor(float(np.nanmin(angles)) / step_y - 0.2),
        step_y * math.ceil(float(np.nanmax(angles)) / step_y + 0.2),
    )
    across = tuple(_ticks(frame.low_x, frame.high_x, step_x, frame.x))
    up = tuple(_ticks(frame.low_y, frame.high_y, step_y, frame.y))
    unit = "in" if units == "in" else "mm"
    return tuple(
        Panel(
            _words(fronts[wheel], angles[wheel], unit),
            tuple(_clouds(chart, fronts[wheel], angles[wheel], frame)),
            across,
            up,
            unit,
        )
        for wheel in range(fronts.shape[0])
    )


def _step(values: np.ndarray) -> float:
    """A round step that gives few ticks."""
    span = max(float(np.nanmax(values) - np.nanmin(values)), 1.0)
    rough = span / (MOST_TICKS - 3)
    power = 10.0 ** math.floor(math.log10(rough))
    return next(power * each for each in (1.0, 2.0, 5.0, 10.0) if power * each >= rough)


def _ticks(low: float, high: float, step: float, place: object) -> Iterator[Tick]:
    for at in range(round((high - low) / step) + 1):
        value = low + at * step
        yield Tick(f"{place(value):.2f}", f"{value:g}".replace("-", "−"))  # type: ignore[operator]


def _clouds(
    chart: HeightsChart, fronts: np.ndarray, angles: np.ndarray, frame: Frame
) -> Iterator[Cloud]:
    for caster in range(fronts.shape[1]):
        pairs = zip(fronts[:, caster].ravel().tolist(), angles[:, caster].ravel().tolist(),
                    strict=True)  # fmt: skip
        places = [
            (frame.x(front), frame.y(angle)) for front, angle in pairs if not math.isnan(front)
        ]
        if places:
            shape = SHAPES[caster % len(SHAPES)]
            path = "".join(_mark(shape, x, y) for x, y in places)
            yield Cloud(chart.option("caster", caster).code, shape, path, len(places))


def _mark(shape: str, x: float, y: float) -> str:
    """One mark as part of a path; the four differ without colour."""
    start = f"M{x:.2f} {y:.2f}"
    if shape in ("disc", "ring"):
        return f"{start}m-0.8 0a0.8 0.8 0 1 0 1.6 0a0.8 0.8 0 1 0 -1.6 0"
    if shape == "square":
        return f"{start}m-0.75 -0.75h1.5v1.5h-1.5z"
    return f"{start}m-0.8 -0.8l1.6 1.6m0 -1.6l-1.6 1.6"


def _words(fronts: np.ndarray, angles: np.ndarray, unit: str) -> str:
    if np.isnan(fronts).all():
        return "Nothing stands with this wheel."
    digits = 1 if unit == "in" else 0
    low, high = float(np.nanmin(fronts)), float(np.nanmax(fronts))
    least, most = float(np.nanmin(angles)), float(np.nanmax(angles))
    return (
        f"Seat height at the front from {low:.{digits}f} to {high:.{digits}f} {unit}, seat angle "
        f"from {least:.1f} to {most:.1f} degrees."
    )
