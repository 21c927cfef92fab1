"""Centre of mass, plumb line and the lines to the tipping edges, in side view."""

from __future__ import annotations

from math import atan, cos, degrees, radians, tan

from chairwright.chair.shape import Shape
from chairwright.drawing.compose import mass_mark
from chairwright.drawing.scene import Anchor, Arc, Group, Line, Point, Primitive, Text

_ARC_ON_PAPER_MM = 42.0
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
    radius = min(0.71 * z, _ARC_ON_PAPER_MM * scale)
    items: list[Primitive] = [
        Line((x, z), (rear, 0.0), "tipping_rear"),
        Line((x, z), (front, 0.0), "tipping_forward"),
        Line((x, z), (x, 0.0), "plumb"),
        *_arcs((x, z), radius, rear_deg, front_deg),
        _label((x, z), _down(radius, rear_deg), -rear_deg, f"rear {rear_deg:.1f}°", scale),
        _label((x, z), _clear(shape, scale), front_deg, f"forward {front_deg:.1f}°", scale),
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


def _down(radius: float, angle_deg: float) -> float:
    return radius * cos(radians(angle_deg))


def _clear(shape: Shape, scale: float) -> float:
    """How far below the centre of mass the forward label clears the caster housing [mm]."""
    level = max(shape.caster_tube_top[1] + 1.2 * scale, 0.3 * shape.com[2])
    return max(shape.com[2] - level, 0.3 * shape.com[2])


def _label(at: Point, down: float, angle_deg: float, words: str, scale: float) -> Text:
    side = -1.0 if angle_deg < 0.0 else 1.0
    anchor: Anchor = "end" if angle_deg < 0.0 else "start"
    place = (at[0] + down * tan(radians(angle_deg)) + side * 1.6 * scale, at[1] - down)
    return Text(place, words, _ANGLE_TEXT_MM, anchor, strong=len(words), backed=True)
