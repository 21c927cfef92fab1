"""Two chairs drawn over each other: the first in ink, the second in dashed centre lines.

Floor and rear axle contact lie over each other, so that what differs is what is seen apart.
"""

from __future__ import annotations

from chairwright.chair.shape import Shape
from chairwright.drawing import side_chair
from chairwright.drawing.compose import LegendEntry, View, compose, mass_mark
from chairwright.drawing.person import body_side, near_arm
from chairwright.drawing.scene import Group, Line, Point, Primitive, Text
from chairwright.drawing.sheet import A5_PORTRAIT, Page, Sheet
from chairwright.drawing.wire import wire, wire_person

_LETTER_MM = 3.2


def overlay_sheet(
    first: Shape,
    second: Shape,
    names: tuple[str, str],
    page: Page = A5_PORTRAIT,
    number: int = 2,
) -> Sheet:
    """Draw two occupied chairs over each other, from the right.

    Parameters
    ----------
    first, second : Shape
        Floor axes [mm].
    names : tuple of str
        What the two are called.
    page : Page
        Largest sheet [mm]; the scale is the largest of the series that fits.
    number : int
        What the second is called at its centre of mass.

    Returns
    -------
    Sheet
    """
    return compose(lambda scale: _view(first, second, names, scale, number), page, "mm")


def _view(first: Shape, second: Shape, names: tuple[str, str], scale: float, number: int) -> View:
    groups = (
        _floor(first, second),
        side_chair.anti_tip(first),
        body_side(first.figurine),
        side_chair.frame(first),
        _caster(first),
        side_chair.seat_and_back(first),
        side_chair.rear_wheel(first),
        near_arm(first.figurine),
        wire(second, "second"),
        wire_person(second.figurine, "second"),
        Group("plumb", tuple(_plumb(first, second, scale, str(number)))),
    )
    shown = tuple(group for group in groups if group.items)
    legend = (
        LegendEntry(f"1: {names[0]}", "outline"),
        LegendEntry(f"{number}: {names[1]}", "second"),
        LegendEntry("plumb line of 1", "plumb"),
        LegendEntry(f"plumb line of {number}", "second_plumb"),
    )
    return View("Side view", _words(first, second, names), shown, (), legend)


def _floor(first: Shape, second: Shape) -> Group:
    ends = [end for shape in (first, second) for end in side_chair.side_extent(shape)]
    return Group("floor", (Line((min(ends) - 15.0, 0.0), (max(ends) + 15.0, 0.0)),))


def _caster(shape: Shape) -> Group:
    group = side_chair.caster(shape)
    kept = (item for item in group.items if getattr(item, "pen", "") not in ("hidden", "centre"))
    return Group(group.name, tuple(kept))


def _plumb(first: Shape, second: Shape, scale: float, digit: str) -> list[Primitive]:
    one, other = (first.com[0], first.com[2]), (second.com[0], second.com[2])
    apart = -1.0 if one[0] <= other[0] else 1.0
    return [
        Line(one, (one[0], 0.0), "plumb"),
        Line(other, (other[0], 0.0), "second_plumb"),
        *mass_mark(one, 1.4 * scale),
        *mass_mark(other, 1.4 * scale),
        _number("1", one, apart, scale),
        _number(digit, other, -apart, scale),
    ]


def _number(digit: str, at: Point, side: float, scale: float) -> Text:
    place = (at[0] + side * 3.4 * scale, at[1] + 1.6 * scale)
    return Text(place, digit, _LETTER_MM, "middle", strong=1, backed=True)


def _words(first: Shape, second: Shape, names: tuple[str, str]) -> str:
    told = "; ".join(
        f"{name}: wheelbase {shape.wheelbase_mm:.0f} mm, seat {shape.seat_corner[1]:.0f} mm high "
        f"at the back and {shape.seat_front[1]:.0f} mm at the front, centre of mass "
        f"{shape.com[0]:.0f} mm ahead of the rear axle and {shape.com[2]:.0f} mm above the floor"
        for name, shape in zip(names, (first, second), strict=True)
    )
    return f"Two occupied wheelchairs over each other from the right, rear axles in line. {told}."
