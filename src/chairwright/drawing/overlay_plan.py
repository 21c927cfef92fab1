"""Two chairs over each other in plan: outlines, wheel planes, seats."""

from __future__ import annotations

from chairwright.chair.shape import FootSupport, Point, Shape
from chairwright.drawing import plan_chair
from chairwright.drawing.compose import LegendEntry, View, compose
from chairwright.drawing.lesson_side import without_fine_lines
from chairwright.drawing.palette import PenName
from chairwright.drawing.scene import Circle, Group, Line, Polyline, Primitive
from chairwright.drawing.sheet import A5_PORTRAIT, Page, Sheet


def overlay_plan_sheet(
    first: Shape,
    second: Shape,
    names: tuple[str, str],
    page: Page = A5_PORTRAIT,
    number: int = 2,
) -> Sheet:
    """Draw two chairs over each other, from above, front to the right.

    Parameters
    ----------
    first, second : Shape
        Floor axes [mm].
    names : tuple of str
        What the two are called.
    page : Page
        Largest sheet [mm]; the scale is the largest of the series that fits.
    number : int
        What the second is called in the legend.

    Returns
    -------
    Sheet
    """
    return compose(lambda _: _view(first, second, names, number), page, "mm")


def _view(first: Shape, second: Shape, names: tuple[str, str], number: int) -> View:
    groups = (
        plan_chair.anti_tip(first),
        without_fine_lines(plan_chair.casters(first)),
        plan_chair.feet(first),
        plan_chair.rear_wheels(first),
        plan_chair.seat(first),
        wire_plan(second, "second"),
    )
    shown = tuple(group for group in groups if group.items)
    legend = (
        LegendEntry(f"1: {names[0]}", "outline"),
        LegendEntry(f"{number}: {names[1]}", "second"),
    )
    return View("Plan", _words(first, second, names), shown, (), legend)


def wire_plan(shape: Shape, pen: PenName) -> Group:
    """Seat, footplates, wheel contacts, outer width and stems from above, nothing filled.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    pen : str

    Returns
    -------
    Group
        Primitives in real mm.
    """
    half, reach = shape.seat_width_mm / 2.0, shape.rear_radius_mm
    rear, front = shape.seat_corner[0], shape.seat_front[0]
    ring = ((rear, half), (front, half), (front, -half), (rear, -half))
    items: list[Primitive] = [Polyline(ring, pen, closed=True)]
    for support in shape.foot_supports:
        items.append(Polyline(_plate(support), pen, closed=True))
    for side in plan_chair.SIDES:
        for y in (side * shape.rear_track_mm / 2.0, side * shape.overall_width_mm / 2.0):
            items.append(Line((-reach, y), (reach, y), pen))
        stem = (shape.fork_crown[0], side * shape.caster_track_mm / 2.0)
        items.append(Circle(stem, 14.0, pen))
    return Group("second", tuple(items))


def _plate(support: FootSupport) -> tuple[Point, ...]:
    rear, front = support.plate_rear[0], support.plate_front[0]
    inner, outer = support.y_inner_mm, support.y_outer_mm
    return ((rear, inner), (front, inner), (front, outer), (rear, outer))


def _words(first: Shape, second: Shape, names: tuple[str, str]) -> str:
    told = "; ".join(
        f"{name}: seat {shape.seat_width_mm:.0f} mm and chair {shape.overall_width_mm:.0f} mm wide"
        for name, shape in zip(names, (first, second), strict=True)
    )
    return f"Two wheelchairs over each other from above, front to the right. {told}."
