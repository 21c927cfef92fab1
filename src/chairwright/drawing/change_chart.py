"""The trade-off of a re-fit as a picture: money across, what is missed upwards, minutes beside."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from chairwright.drawing.scene import Circle, Group, Line, Point, Primitive, Text
from chairwright.drawing.sheet import Sheet

_WIDTH_MM, _HEIGHT_MM = 150.0, 62.0
_LEFT, _RIGHT, _TOP, _BOTTOM = 16.0, 12.0, 8.0, 13.0
_TEXT_MM = 3.0
_DOT_MM = 2.3
_MOST_TICKS = 6
_WORDS_MM = 16.0


@dataclass(frozen=True)
class Mark:
    """One point of the trade-off.

    Parameters
    ----------
    number : int
    money : float
    minutes : float
    cost : float
    chosen : bool
    """

    number: int
    money: float
    minutes: float
    cost: float
    chosen: bool = False


@dataclass(frozen=True)
class _Axes:
    """Where money and cost land on paper."""

    money: tuple[float, ...]
    cost: tuple[float, ...]

    def at(self, money: float, cost: float) -> Point:
        across = (money - self.money[0]) / (self.money[-1] - self.money[0])
        up = (cost - self.cost[0]) / (self.cost[-1] - self.cost[0])
        wide, high = _WIDTH_MM - _LEFT - _RIGHT, _HEIGHT_MM - _TOP - _BOTTOM
        return (_LEFT + across * wide, _HEIGHT_MM - _BOTTOM - up * high)


def change_chart_sheet(marks: Sequence[Mark], currency: str) -> Sheet:
    """Draw a trade-off.

    Parameters
    ----------
    marks : sequence of Mark
        At least one.
    currency : str

    Returns
    -------
    Sheet
    """
    axes = _Axes(_ticks([mark.money for mark in marks]), _ticks([mark.cost for mark in marks]))
    spoken = "; ".join(
        f"row {mark.number}: {mark.money:g} {currency}, {mark.minutes:g} minutes, missed "
        f"{mark.cost:.1f}{', chosen' if mark.chosen else ''}"
        for mark in marks
    )
    return Sheet(
        "Trade-off of the re-fit",
        f"Money for parts across, what is missed upwards. {spoken}.",
        _WIDTH_MM,
        _HEIGHT_MM,
        (
            Group("axes", tuple(_axes(axes, currency))),
            Group("points", tuple(_points(axes, marks))),
        ),
        0.7,
    )


def _ticks(values: Sequence[float]) -> tuple[float, ...]:
    """Round values around all of these, a few steps apart."""
    low, high = min(values), max(values)
    span = max(high - low, 0.02 * abs(high), 0.2)
    power = 10.0 ** _power(span / _MOST_TICKS)
    step = next(n * power for n in (1.0, 2.0, 5.0, 10.0) if n * power * _MOST_TICKS >= span)
    first, last = math.ceil(low / step) - 1, math.floor(high / step) + 1
    return tuple(round(n * step, 6) for n in range(first, last + 1))


def _power(value: float) -> int:
    power = 0
    while value >= 10.0:
        value, power = value / 10.0, power + 1
    while value < 1.0:
        value, power = value * 10.0, power - 1
    return power


def _axes(axes: _Axes, currency: str) -> list[Primitive]:
    left, bottom = axes.at(axes.money[0], axes.cost[0])
    right, top = axes.at(axes.money[-1], axes.cost[-1])
    found: list[Primitive] = [
        Line((left, bottom), (right, bottom), "thin"),
        Line((left, bottom), (left, top), "thin"),
        Text(((left + right) / 2, _HEIGHT_MM - 2.0), f"Parts [{currency}]", _TEXT_MM, "middle"),
        Text((2.0, top - 3.5), "Missed", _TEXT_MM),
    ]
    for money in axes.money:
        x, y = axes.at(money, axes.cost[0])
        found += [Line((x, y), (x, y + 1.2), "thin"),
                  Text((x, y + 4.8), f"{money:g}", _TEXT_MM, "middle")]  # fmt: skip
    for cost in axes.cost:
        x, y = axes.at(axes.money[0], cost)
        found += [Line((x - 1.2, y), (x, y), "thin"),
                        Text((x - 2.0, y + 1.0), f"{cost:g}", _TEXT_MM, "end")]  # fmt: skip
    return found


def _points(axes: _Axes, marks: Sequence[Mark]) -> list[Primitive]:
    """Numbered rings, the chosen one last and double; minutes where there is room for them."""
    found: list[Primitive] = []
    places = {mark.number: axes.at(mark.money, mark.cost) for mark in marks}
    for mark in sorted(marks, key=lambda each: each.chosen):
        x, y = places[mark.number]
        if mark.chosen:
            found.append(Circle((x, y), _DOT_MM + 0.8, "outline", "sheet"))
        found += [
            Circle((x, y), _DOT_MM, "thin", "sheet"),
            Text((x, y + 1.0), str(mark.number), 2.8, "middle", strong=2),
        ]
        if _free((x, y), [place for number, place in places.items() if number != mark.number]):
            found.append(Text((x + _DOT_MM + 1.4, y + 0.9), f"{mark.minutes:g} min", 2.6))
    return found


def _free(place: Point, others: Sequence[Point]) -> bool:
    """Whether nothing stands to the right of a ring where its minutes go."""
    x, y = place
    return not any(-1.0 < ox - x < _WORDS_MM and abs(oy - y) < 2 * _DOT_MM for ox, oy in others)
