"""Polar chart of the tipping angle by direction: ahead is up, left is left."""

from __future__ import annotations

from dataclasses import dataclass
from math import ceil, cos, radians, sin

import numpy as np
from numpy.typing import ArrayLike, NDArray

from chairwright.drawing.scene import Anchor, Circle, Group, Line, Point, Polyline, Primitive, Text
from chairwright.drawing.sheet import Sheet
from chairwright.drawing.svg import to_svg
from chairwright.errors import InputError, Problem

_TEXT_MM = 3.2
_TITLE_MM = 3.6
_MARGIN_MM = 3.0
_TITLE_ROOM_MM = 9.0
_SIDE_ROOM_MM = 10.0
_END_ROOM_MM = 4.5
_FOOT_MM = 4.5
_LARGEST_DEG = 45.0
_RING_LABELS_DEG = -45.0
_REFERENCE_LABEL_DEG = 45.0

FloatArray = NDArray[np.float64]


@dataclass(frozen=True)
class _Chart:
    """Where angles land on paper."""

    centre: Point
    radius_mm: float
    outer_deg: float
    step_deg: float

    def at(self, direction_deg: float, angle_deg: float) -> Point:
        reach = min(angle_deg, self.outer_deg) / self.outer_deg * self.radius_mm
        turn = radians(direction_deg)
        return (self.centre[0] - reach * sin(turn), self.centre[1] - reach * cos(turn))


def polar_chart(
    directions_deg: ArrayLike,
    angles_deg: ArrayLike,
    *,
    prefix: str = "polar",
    size_mm: float = 74.0,
    reference_deg: float | None = 7.0,
) -> str:
    """Draw the tipping angle in every direction as SVG text.

    Parameters
    ----------
    directions_deg : array_like, shape (n,) [deg]
        Direction in which the floor falls away, from straight ahead, left positive.
    angles_deg : array_like, shape (n,) [deg]
        Tipping angle in that direction; a NaN is left out, a large one is drawn at the rim.
    prefix : str
        Start of every id in the drawing.
    size_mm : float
        Width of the sheet [mm].
    reference_deg : float or None
        A slope to show as a dashed ring [deg].

    Returns
    -------
    str
        SVG text.

    Raises
    ------
    InputError
        When the arrays differ in shape or fewer than three angles are known.
    ValueError
        When the prefix cannot start an XML id.
    """
    return to_svg(polar_sheet(directions_deg, angles_deg, size_mm, reference_deg), prefix)


def polar_sheet(
    directions_deg: ArrayLike,
    angles_deg: ArrayLike,
    size_mm: float = 74.0,
    reference_deg: float | None = 7.0,
) -> Sheet:
    """Lay the polar chart out on a sheet in paper mm.

    Parameters
    ----------
    directions_deg, angles_deg : array_like, shape (n,) [deg]
        Direction of the fall from straight ahead, left positive; tipping angle there.
    size_mm : float [mm]
        Width of the sheet.
    reference_deg : float or None [deg]
        Ring to compare with; None for none.

    Returns
    -------
    Sheet
    """
    directions, angles = _known(directions_deg, angles_deg)
    chart = _chart(angles, size_mm, reference_deg)
    least = int(np.argmin(angles))
    caption = f"least {angles[least]:.1f}°, {direction_words(float(directions[least]))}"
    height = chart.centre[1] + chart.radius_mm + _END_ROOM_MM + _FOOT_MM + _MARGIN_MM
    groups = (
        _rings(chart, reference_deg),
        _curve(chart, directions, angles),
        _ends(chart, directions, angles),
        _least(chart, float(directions[least]), float(angles[least])),
        _words(caption, chart, height),
    )
    description = (
        "Angle at which the occupied chair tips, wheels locked, by the direction in which "
    )
    description += f"the floor falls away; ahead is up. The {caption}."
    return Sheet("Tipping angle by direction", description, size_mm, height, groups)


def direction_words(direction_deg: float) -> str:
    """Name a direction for people, left positive.

    Examples
    --------
    >>> direction_words(180.0), direction_words(-30.0)
    ('straight back', '30° right of straight ahead')
    """
    turn = (direction_deg + 180.0) % 360.0 - 180.0
    side = "left" if turn > 0 else "right"
    if abs(turn) < 0.5:
        return "straight ahead"
    if abs(turn) > 179.5:
        return "straight back"
    if abs(abs(turn) - 90.0) < 0.5:
        return f"straight to the {side}"
    if abs(turn) < 90.0:
        return f"{abs(turn):.0f}° {side} of straight ahead"
    return f"{180.0 - abs(turn):.0f}° {side} of straight back"


def _known(directions_deg: ArrayLike, angles_deg: ArrayLike) -> tuple[FloatArray, FloatArray]:
    directions = np.asarray(directions_deg, dtype=np.float64)
    angles = np.asarray(angles_deg, dtype=np.float64)
    known = ~np.isnan(angles) if directions.shape == angles.shape else np.zeros(0, dtype=bool)
    if directions.ndim != 1 or directions.shape != angles.shape or known.sum() < 3:
        raise InputError(
            Problem(
                "polar chart",
                "directions and angles must be two rows of one length with three known angles",
                f"shapes {directions.shape} and {angles.shape}, {int(known.sum())} known",
                "Pass one tipping angle for each direction.",
            )
        )
    order = np.argsort(np.mod(directions[known], 360.0), kind="stable")
    return directions[known][order], angles[known][order]


def _chart(angles: FloatArray, size_mm: float, reference_deg: float | None) -> _Chart:
    largest = min(max(float(np.max(angles)), reference_deg or 0.0), _LARGEST_DEG)
    step = 5.0 if largest <= 25.0 else 10.0
    outer = step * ceil(largest / step)
    radius = size_mm / 2.0 - _MARGIN_MM - _SIDE_ROOM_MM
    middle = _MARGIN_MM + _TITLE_ROOM_MM + _END_ROOM_MM + radius - 3.0
    return _Chart((size_mm / 2.0, middle), radius, outer, step)


def _rings(chart: _Chart, reference_deg: float | None) -> Group:
    items: list[Primitive] = []
    for turn in range(0, 180, 45):
        ends = chart.at(turn, chart.outer_deg), chart.at(turn + 180, chart.outer_deg)
        items.append(Line(*ends, "dimension"))
    count = round(chart.outer_deg / chart.step_deg)
    for number in range(1, count + 1):
        angle = number * chart.step_deg
        items.append(Circle(chart.centre, chart.radius_mm * number / count, "dimension"))
        items.append(_ring_label(chart.at(_RING_LABELS_DEG, angle), f"{angle:g}°"))
    if reference_deg is not None:
        reach = chart.radius_mm * reference_deg / chart.outer_deg
        items.append(Circle(chart.centre, reach, "hidden"))
        place = chart.at(_REFERENCE_LABEL_DEG, reference_deg)
        items.append(_ring_label(place, f"{reference_deg:g}°"))
    return Group("rings", tuple(items))


def _ring_label(at: Point, words: str) -> Text:
    return Text((at[0], at[1] + 0.9), words, _TEXT_MM, "middle", backed=True)


def _curve(chart: _Chart, directions: FloatArray, angles: FloatArray) -> Group:
    pairs = zip(directions, angles, strict=True)
    ring = tuple(chart.at(float(turn), float(angle)) for turn, angle in pairs)
    return Group("curve", (Polyline(ring, "outline", closed=True),))


def _ends(chart: _Chart, directions: FloatArray, angles: FloatArray) -> Group:
    (x, y), reach = chart.centre, chart.radius_mm
    places: tuple[tuple[float, str, Point, Anchor], ...] = (
        (0.0, "ahead", (x, y - reach - 1.5), "middle"),
        (90.0, "left", (x - reach - 1.2, y - 0.6), "end"),
        (180.0, "back", (x, y + reach + 3.9), "middle"),
        (270.0, "right", (x + reach + 1.2, y - 0.6), "start"),
    )
    items: list[Primitive] = []
    for turn, name, at, anchor in places:
        angle = float(np.interp(turn, np.mod(directions, 360.0), angles, period=360.0))
        if anchor == "middle":
            items.append(Text(at, f"{name} {angle:.1f}°", _TEXT_MM, anchor))
        else:
            items.append(Text(at, name, _TEXT_MM, anchor))
            items.append(Text((at[0], at[1] + 3.7), f"{angle:.1f}°", _TEXT_MM, anchor))
    return Group("ends", tuple(items))


def _least(chart: _Chart, direction_deg: float, angle_deg: float) -> Group:
    tip = chart.at(direction_deg, angle_deg)
    return Group(
        "least", (Line(chart.centre, tip, "tipping_rear"), Circle(tip, 1.1, "outline", "ink"))
    )


def _words(caption: str, chart: _Chart, height_mm: float) -> Group:
    title = Text((_MARGIN_MM, _MARGIN_MM + 2.7), "Tipping angle", _TITLE_MM, strong=13)
    at = (chart.centre[0], height_mm - _MARGIN_MM - 1.0)
    return Group("name", (title, Text(at, caption, _TEXT_MM, "middle", strong=len(caption))))
