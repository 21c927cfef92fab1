"""A small side drawing: wheels, seat, and where the scales say that the mass is."""

from __future__ import annotations

import math

from chairwright.chair.shape import Shape
from chairwright.drawing.scene import Anchor, Circle, Group, Line, Point, Polyline, Primitive, Text
from chairwright.drawing.sheet import Placement, Sheet
from chairwright.drawing.svg import to_svg
from chairwright.fitting.described import Described
from chairwright.scales.model import Session
from chairwright.scales.propagate import Measured

SCALE = 12.0
EDGE_MM = 6.0
WORDS_MM = 3.0
CORNERS = 36
LEAST_MM = 14.0
"""A ring of doubt smaller than this, real mm, is drawn so large that it can be seen."""


def pads_picture(setup: Described, found: Measured, session: Session) -> str:
    """Draw a weighing.

    Parameters
    ----------
    setup : Described
        The set-up on the pads, with the estimate.
    found : Measured
    session : Session

    Returns
    -------
    str
        SVG text.
    """
    shape = setup.shape
    rear = max(shape.rear_radius_mm, -shape.back_top[0] + 30.0)
    front = shape.wheelbase_mm + shape.caster_radius_mm + 60.0
    top = max(shape.back_top[1], shape.com[2]) + 40.0
    width = (rear + front) / SCALE + 2 * EDGE_MM
    height = top / SCALE + 2 * EDGE_MM + 11.0
    at = Placement(SCALE, (EDGE_MM + rear / SCALE, EDGE_MM + top / SCALE))
    groups = (
        at.group(Group("chair", tuple(_chair(shape)))),
        at.group(Group("mass", tuple(_mass(shape, found)))),
        Group("words", tuple(_words(at, found, width, height))),
    )
    return to_svg(
        Sheet("Centre of mass as weighed", _spoken(found, session), width, height, groups, 0.7),
        "pads",
    )


def _chair(shape: Shape) -> list[Primitive]:
    caster = (shape.wheelbase_mm, shape.caster_radius_mm)
    return [
        Line((-shape.rear_radius_mm - 40.0, 0.0), (shape.wheelbase_mm + 100.0, 0.0), "thin"),
        Circle(shape.rear_axle, shape.rear_radius_mm, "outline"),
        Circle(caster, shape.caster_radius_mm, "outline"),
        Line(shape.seat_corner, shape.seat_front, "outline"),
        Line(shape.back_bottom, shape.back_top, "outline"),
    ]


def _mass(shape: Shape, found: Measured) -> list[Primitive]:
    """The plumb line always; the place with its doubt when the height is known."""
    x = found.values["com_x_mm"]
    estimated = (shape.com[0], shape.com[2])
    drawn: list[Primitive] = [_cross(estimated)[0], _cross(estimated)[1]]
    if "com_z_mm" not in found.values:
        half = found.half_width("com_x_mm")
        return [*drawn, *(Line((each, 0.0), (each, shape.back_top[1]), "plumb")
                          for each in (x - half, x + half))]  # fmt: skip
    place = (x, found.values["com_z_mm"])
    ring = _ring(place, found.half_width("com_x_mm"), found.half_width("com_z_mm"))
    return [*drawn, Line(place, (x, 0.0), "plumb"), Polyline(ring, "thin", closed=True),
            Circle(place, 5.0, "thin", "ink")]  # fmt: skip


def _ring(place: Point, across: float, up: float) -> tuple[Point, ...]:
    across, up = max(across, LEAST_MM), max(up, LEAST_MM)
    turns = (2.0 * math.pi * n / CORNERS for n in range(CORNERS))
    return tuple((place[0] + across * math.cos(t), place[1] + up * math.sin(t)) for t in turns)


def _cross(place: Point) -> tuple[Primitive, Primitive]:
    x, z = place
    return (
        Line((x - 10.0, z - 10.0), (x + 10.0, z + 10.0), "thin"),
        Line((x - 10.0, z + 10.0), (x + 10.0, z - 10.0), "thin"),
    )


def _words(at: Placement, found: Measured, width: float, height: float) -> list[Text]:
    x = found.values["com_x_mm"]
    foot = at.point((x, 0.0))
    half = found.half_width("com_x_mm")
    side: Anchor = "start" if foot[0] < width / 2.0 else "end"
    words = f"{x:.0f} ± {max(half, 0.1):.1f} ahead of the axle"
    told = [Text((foot[0], foot[1] + 4.2), words, WORDS_MM, side)]
    if "com_z_mm" in found.values:
        z, up = found.values["com_z_mm"], found.half_width("com_z_mm")
        there = at.point((x, z))
        told.append(Text((there[0] + 3.0, there[1] - 2.6), f"{z:.0f} ± {up:.0f} high", WORDS_MM,
                         backed=True))  # fmt: skip
    told.append(Text((EDGE_MM, height - 2.5), "Disc: as weighed. Cross: as estimated. mm", 2.6))
    return told


def _spoken(found: Measured, session: Session) -> str:
    x = found.values["com_x_mm"]
    words = (
        f"Side view. Wheelbase {session.wheelbase_mm:.0f} mm. The centre of mass of chair and "
        f"client lies {x:.0f} mm ahead of the rear axle, give or take "
        f"{found.half_width('com_x_mm'):.0f}"
    )
    if "com_z_mm" not in found.values:
        return f"{words}. Its height is not known."
    z = found.values["com_z_mm"]
    return (
        f"{words}, and {z:.0f} mm above the floor, give or take {found.half_width('com_z_mm'):.0f}."
    )
