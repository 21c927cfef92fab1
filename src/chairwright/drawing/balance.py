"""Centre of mass, plumb line and the lines to the tipping edges, in side view."""

from __future__ import annotations

from math import atan, degrees, radians, tan

from chairwright.chair.shape import Shape
from chairwright.drawing.compose import mass_mark
from chairwright.drawing.lettering import text_width
from chairwright.drawing.scene import Anchor, Arc, Group, Line, Point, Primitive, Text

_ARC_ON_PAPER_MM = 36.0
_ANGLE_TEXT_MM = 3.2


def balance(shape: Shape, scale: float) -> Group:
    """The coloured lines with their angles, and the mark of the centre of mass.

    Parameters
    ----------
    shape : Shape
    scale : float
        Real over paper length; marks and letters keep their size on paper.

    Returns
    -------
    Group
        Primitives in real mm.
    """
    x, _, z = shape.com
    rear, front = contact_xs(shape)
    rear_deg, front_deg = tipping_angles_deg(shape)
    radius = min(0.62 * z, _ARC_ON_PAPER_MM * scale)
    items: list[Primitive] = [
        Line((x, z), (rear, 0.0), "tipping_rear"),
        Line((x, z), (front, 0.0), "tipping_forward"),
        Line((x, z), (x, 0.0), "plumb"),
        *_arcs((x, z), radius, rear_deg, front_deg),
        _label((x, z), radius, rear_deg, -1.0, scale),
        _label((x, z), radius, front_deg, 1.0, scale),
        *mass_mark((x, z), 2.0 * scale),
    ]
    return Group("balance", tuple(items))


def tipping_angles_deg(shape: Shape) -> tuple[float, float]:
    """Angles at the centre of mass from the plumb line to the rear and front contacts [deg].

    Rear atan(x/h), forward atan((L - x)/h): the whole chair with locked wheels, casters as drawn.
    """
    x, _, height = shape.com
    rear, front = contact_xs(shape)
    return degrees(atan((x - rear) / height)), degrees(atan((front - x) / height))


def contact_xs(shape: Shape) -> tuple[float, float]:
    """Rear and front end of the tyre contacts [mm ahead of the rear axle]."""
    xs = [contact.x_mm for contact in shape.contacts]
    return min(xs), max(xs)


def _arcs(at: Point, radius: float, rear_deg: float, front_deg: float) -> list[Primitive]:
    spans = ((270.0 - rear_deg, 270.0), (270.0, 270.0 + front_deg))
    return [Arc(at, radius, first, last, "dimension") for first, last in spans if first < last]


def _label(at: Point, radius: float, angle_deg: float, side: float, scale: float) -> Text:
    """Put the angle inside its wedge below the arc, or outside near the floor when too narrow."""
    words = f"{angle_deg:.1f}°"
    slope = tan(radians(max(angle_deg, 0.0)))
    needed = (text_width(words, _ANGLE_TEXT_MM) + 2.4) * scale
    down = at[1] - 1.5 * scale
    if needed > slope * down:
        place = (at[0] + side * (slope * down + 1.2 * scale), at[1] - down)
        anchor: Anchor = "start" if side > 0.0 else "end"
        return Text(place, words, _ANGLE_TEXT_MM, anchor, strong=len(words), backed=True)
    down = min(down, max(needed / slope, radius + 4.0 * scale))
    place = (at[0] + side * slope * down / 2.0, at[1] - down)
    return Text(place, words, _ANGLE_TEXT_MM, "middle", strong=len(words), backed=True)
