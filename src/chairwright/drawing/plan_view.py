"""Plan view of the chair with support polygon, centre of mass and turning circle."""

from __future__ import annotations

from math import cos, radians, sin

from chairwright.chair.shape import Shape
from chairwright.drawing import plan_chair
from chairwright.drawing.compose import LegendEntry, View, compose, mass_mark
from chairwright.drawing.dimensions import TEXT_MM, Units, dimension_text
from chairwright.drawing.scene import Circle, Dimension, Group, Line, Polyline, Text
from chairwright.drawing.sheet import A5_PORTRAIT, Page, Sheet
from chairwright.drawing.svg import to_svg

_LEGEND = (
    LegendEntry("centre of mass", None),
    LegendEntry("support area, caster swing", "hidden"),
    LegendEntry("turning circle, axle line", "centre"),
)
_LABEL_DEG = 48.0


def plan_view(
    shape: Shape, *, prefix: str = "plan", units: Units = "mm", page: Page = A5_PORTRAIT
) -> str:
    """Draw the plan view as SVG text, front to the right.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    prefix : str
        Start of every id in the drawing.
    units : {"mm", "in"}
        ``"in"`` adds inches after the millimetres.
    page : Page
        Largest sheet [mm]; the scale is the largest of the series that fits.

    Returns
    -------
    str
        SVG; its size in mm makes the named scale true when printed at 100 %.

    Raises
    ------
    ValueError
        When the prefix cannot start an XML id.
    """
    return to_svg(plan_sheet(shape, units, page), prefix)


def plan_sheet(shape: Shape, units: Units = "mm", page: Page = A5_PORTRAIT) -> Sheet:
    """Lay the plan out on a sheet in paper mm.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    units : {"mm", "in"}
    page : Page
        Largest sheet [mm].

    Returns
    -------
    Sheet
    """
    return compose(lambda scale: seen_from_above(shape, scale, units), page, units)


def seen_from_above(shape: Shape, scale: float, units: Units) -> View:
    """The plan in real mm.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    scale : float
        Real over paper length; marks and letters keep their size on paper.
    units : {"mm", "in"}
    """
    groups = (
        plan_chair.anti_tip(shape),
        plan_chair.casters(shape),
        plan_chair.feet(shape),
        plan_chair.rear_wheels(shape),
        plan_chair.seat(shape),
        _support(shape, scale),
    )
    shown = tuple(group for group in groups if group.items)
    around = (_turning_circle(shape, scale, units),)
    dimensions = _dimensions(shape)
    return View("Plan", _description(shape), shown, dimensions, _LEGEND, around)


def _description(shape: Shape) -> str:
    return (
        f"The wheelchair from above, front to the right. Seat width {shape.seat_width_mm:.0f} mm, "
        f"rear track {shape.rear_track_mm:.0f} mm, overall width {shape.overall_width_mm:.0f} mm, "
        f"wheelbase {shape.wheelbase_mm:.0f} mm, turning circle about the middle of the axle "
        f"{plan_chair.turning_diameter_mm(shape):.0f} mm across. Centre of mass "
        f"{shape.com[0]:.0f} mm ahead of the rear axle and {abs(shape.com[1]):.0f} mm "
        f"{_lateral(shape.com[1])}."
    )


def _lateral(y_mm: float) -> str:
    if round(y_mm) == 0:
        return "off the middle"
    return "to the left of the middle" if y_mm > 0 else "to the right of the middle"


def _support(shape: Shape, scale: float) -> Group:
    ring = tuple((contact.x_mm, contact.y_mm) for contact in shape.contacts)
    dots = tuple(Circle(point, 0.7 * scale, "thin", "ink") for point in ring)
    marks = mass_mark(shape.com[:2], 1.8 * scale)
    return Group("support", (Polyline(ring, "hidden", closed=True), *dots, *marks))


def _turning_circle(shape: Shape, scale: float, units: Units) -> Group:
    diameter = plan_chair.turning_diameter_mm(shape)
    reach = diameter / 2.0 + 2.0 * scale
    turn = radians(_LABEL_DEG)
    x, y = reach * cos(turn), reach * sin(turn)
    number = f"Ø {dimension_text(diameter, units)}"
    cross = 2.5 * scale
    return Group(
        "turning-circle",
        (
            Circle((0.0, 0.0), diameter / 2.0, "centre"),
            Line((-cross, 0.0), (cross, 0.0), "centre"),
            Text((x, y + 3.9 * scale), number, TEXT_MM, strong=len(number)),
            Text((x, y), "turning circle", TEXT_MM),
        ),
    )


def _dimensions(shape: Shape) -> tuple[Dimension, ...]:
    rear, seat = shape.seat_corner[0], shape.seat_width_mm / 2.0
    track, half = shape.rear_track_mm / 2.0, shape.overall_width_mm / 2.0
    front = max(contact.x_mm for contact in shape.contacts)
    bottom = -shape.caster_track_mm / 2.0
    edge, depth = shape.seat_front[0], shape.seat_depth_mm
    return (
        Dimension("seat_width_mm", (rear, -seat), (rear, seat), 2.0 * seat, "seat width", "left"),
        Dimension("rear_track_mm", (0.0, -track), (0.0, track), 2.0 * track, "rear track", "left"),
        Dimension(
            "overall_width_mm", (0.0, -half), (0.0, half), 2.0 * half, "overall width", "left"
        ),
        Dimension(
            "wheelbase_mm", (0.0, -track), (front, bottom), shape.wheelbase_mm, "wheelbase", "below"
        ),
        Dimension(
            "seat_depth_mm", (edge - depth, -seat), (edge, -seat), depth, "seat depth", "below"
        ),
    )
