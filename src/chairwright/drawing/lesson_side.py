"""Small side views for a lesson: one scale, one floor, the earlier state in dashed lines."""

from __future__ import annotations

from collections.abc import Sequence

from chairwright.chair.shape import Shape
from chairwright.drawing import side_chair
from chairwright.drawing.balance import contact_xs, tipping_angles_deg
from chairwright.drawing.compose import mass_mark
from chairwright.drawing.lesson_row import DrawnRow, Small, drawn_row
from chairwright.drawing.person import body_side, near_arm
from chairwright.drawing.scene import Circle, Group, Line, Primitive, Text
from chairwright.drawing.sheet import Placement
from chairwright.drawing.wire import ghost

TEXT_MM = 3.2
_BELOW_FLOOR_MM = 4.0
_QUIET = ("hidden", "centre")


def lesson_sides(
    shapes: Sequence[Shape], earlier: int, width_mm: float, height_mm: float
) -> DrawnRow:
    """Draw several states of a chair from the right, on one floor.

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
        The seat corners lie above each other.
    """

    def make(scale: float) -> list[Small]:
        return [
            Small(
                "Side view",
                _words(shape),
                _groups(shape, None if at == earlier else shapes[earlier], scale),
                shape.seat_corner[0] / scale,
            )
            for at, shape in enumerate(shapes)
        ]

    return drawn_row(make, width_mm, height_mm, on_floor=True)


def _groups(shape: Shape, before: Shape | None, scale: float) -> tuple[Group, ...]:
    groups = [
        side_chair.anti_tip(shape),
        body_side(shape.figurine),
        side_chair.frame(shape),
        without_fine_lines(side_chair.caster(shape)),
        side_chair.seat_and_back(shape),
        _rear_wheel(shape),
        near_arm(shape.figurine),
    ]
    if before is not None:
        groups.append(ghost(shape, before, "hidden"))
    groups += [_axle(shape), _balance(shape, scale)]
    placement = Placement(scale)
    return tuple(placement.group(group) for group in groups if group.items)


def without_fine_lines(group: Group) -> Group:
    """A group without its dashed and chain lines, which are too fine for a small scale."""
    kept = (item for item in group.items if getattr(item, "pen", "") not in _QUIET)
    return Group(group.name, tuple(kept))


def _rear_wheel(shape: Shape) -> Group:
    axle, radius = shape.rear_axle, shape.rear_radius_mm
    items: list[Primitive] = [Circle(axle, radius)]
    rim = shape.hand_rim_radius_mm
    inner = rim if rim > 0.0 else radius - 1.6 * max(shape.rear_tyre_width_mm, 10.0)
    items.append(Circle(axle, inner, "thin"))
    return Group("rear-wheel", tuple(items))


def _axle(shape: Shape) -> Group:
    x, z = shape.rear_axle
    spoke = Line((x, z), (x, 0.0), "thin")
    return Group("axle", (Circle((x, z), 14.0, "outline", "ink"), spoke))


def _balance(shape: Shape, scale: float) -> Group:
    """Centre of mass, plumb line, lines to the tipping edges; their angles below the floor."""
    x, _, z = shape.com
    rear, front = contact_xs(shape)
    back, ahead = (f"{angle:.1f}°" for angle in tipping_angles_deg(shape))
    low = -_BELOW_FLOOR_MM * scale
    items: list[Primitive] = [
        Line((x, z), (rear, 0.0), "tipping_rear"),
        Line((x, z), (front, 0.0), "tipping_forward"),
        Line((x, z), (x, 0.0), "plumb"),
        Text((x - scale, low), back, TEXT_MM, "end", strong=len(back)),
        Text((x + scale, low), ahead, TEXT_MM, "start", strong=len(ahead)),
        *mass_mark((x, z), 1.2 * scale),
    ]
    return Group("balance", tuple(items))


def _words(shape: Shape) -> str:
    rear, front = tipping_angles_deg(shape)
    return (
        f"The occupied wheelchair from the right, front to the right. Centre of mass "
        f"{shape.com[0]:.0f} mm ahead of the rear axle, {shape.com[2]:.0f} mm above the floor; "
        f"{rear:.1f} degrees to the rear contact and {front:.1f} degrees to the front contact."
    )
