"""Small plan views for a lesson about width: one scale, the earlier state in dashed lines."""

from __future__ import annotations

from collections.abc import Sequence

from chairwright.chair.shape import Shape
from chairwright.drawing import plan_chair
from chairwright.drawing.lesson_row import DrawnRow, Small, drawn_row
from chairwright.drawing.lesson_side import TEXT_MM, without_fine_lines
from chairwright.drawing.scene import Circle, Group, Line, Polyline, Primitive, Text
from chairwright.drawing.sheet import Placement, groups_box
from chairwright.drawing.wire import NEAR_MM

_BELOW_MM = 4.4


def lesson_plans(
    shapes: Sequence[Shape], earlier: int, width_mm: float, height_mm: float
) -> DrawnRow:
    """Draw several states of a chair from above, front to the right.

    Parameters
    ----------
    shapes : sequence of Shape
        Floor axes [mm].
    earlier : int
        Which of them is the state that the others are compared with.
    width_mm, height_mm : float [mm]
        Largest size of one drawing on paper.

    Returns
    -------
    DrawnRow
        The rear axles lie above each other.
    """

    def make(scale: float) -> list[Small]:
        return [
            Small(
                "Plan",
                _words(shape),
                _groups(shape, None if at == earlier else shapes[earlier], scale),
                0.0,
            )
            for at, shape in enumerate(shapes)
        ]

    return drawn_row(make, width_mm, height_mm)


def _groups(shape: Shape, before: Shape | None, scale: float) -> tuple[Group, ...]:
    groups = [
        plan_chair.anti_tip(shape),
        without_fine_lines(plan_chair.casters(shape)),
        plan_chair.feet(shape),
        plan_chair.rear_wheels(shape),
        plan_chair.seat(shape),
        _support(shape),
    ]
    if before is not None:
        groups.append(_ghost(shape, before))
    drawn = tuple(Placement(scale).group(group) for group in groups if group.items)
    return (*drawn, _width(shape, groups_box(drawn)[3]))


def _support(shape: Shape) -> Group:
    ring = tuple((contact.x_mm, contact.y_mm) for contact in shape.contacts)
    x, y, _ = shape.com
    return Group("support", (Polyline(ring, "hidden", closed=True), Circle((x, y), 16.0, "thin")))


def _ghost(now: Shape, before: Shape) -> Group:
    """Wheel planes and seat edges of the earlier state, where they have visibly moved."""
    items: list[Primitive] = []
    for side in plan_chair.SIDES:
        if abs(now.rear_track_mm - before.rear_track_mm) > NEAR_MM:
            y, reach = side * before.rear_track_mm / 2.0, before.rear_radius_mm
            items.append(Line((-reach, y), (reach, y), "hidden"))
        if abs(now.seat_width_mm - before.seat_width_mm) > NEAR_MM:
            y = side * before.seat_width_mm / 2.0
            items.append(Line((before.seat_corner[0], y), (before.seat_front[0], y), "hidden"))
    return Group("ghost", tuple(items))


def _width(shape: Shape, low: float) -> Group:
    words = f"{shape.overall_width_mm:.0f} mm wide"
    at = (0.0, low + _BELOW_MM)
    return Group("width", (Text(at, words, TEXT_MM, "middle", strong=len(words)),))


def _words(shape: Shape) -> str:
    return (
        f"The wheelchair from above, front to the right. Seat width {shape.seat_width_mm:.0f} mm, "
        f"rear track {shape.rear_track_mm:.0f} mm, overall width {shape.overall_width_mm:.0f} mm."
    )
