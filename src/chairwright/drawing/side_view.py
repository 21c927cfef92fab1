"""Side view of the occupied chair, from the right, with dimensions and balance lines."""

from __future__ import annotations

from typing import Literal

from chairwright.chair.shape import Point, Shape
from chairwright.drawing import side_chair
from chairwright.drawing.balance import balance, contact_xs, tipping_angles_deg
from chairwright.drawing.compose import LegendEntry, View, compose
from chairwright.drawing.dimensions import Units
from chairwright.drawing.person import body_side, near_arm
from chairwright.drawing.scene import Dimension, Group
from chairwright.drawing.sheet import A5_PORTRAIT, Page, Sheet
from chairwright.drawing.svg import to_svg


def side_view(
    shape: Shape, *, prefix: str = "side", units: Units = "mm", page: Page = A5_PORTRAIT
) -> str:
    """Draw the side view as SVG text.

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
    return to_svg(side_sheet(shape, units, page), prefix)


def side_sheet(shape: Shape, units: Units = "mm", page: Page = A5_PORTRAIT) -> Sheet:
    """Lay the side view out on a sheet in paper mm.

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
    return compose(lambda scale: seen_from_side(shape, scale), page, units)


def seen_from_side(shape: Shape, scale: float) -> View:
    """The side view in real mm.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    scale : float
        Real over paper length; marks and letters keep their size on paper.
    """
    groups = (
        side_chair.floor(shape),
        side_chair.anti_tip(shape),
        body_side(shape.figurine),
        side_chair.frame(shape),
        side_chair.caster(shape),
        side_chair.seat_and_back(shape),
        side_chair.rear_wheel(shape),
        near_arm(shape.figurine),
        side_chair.axle_plate(shape),
        balance(shape, scale),
    )
    shown: tuple[Group, ...] = tuple(group for group in groups if group.items)
    return View("Side view", _description(shape), shown, _dimensions(shape), _legend(shape))


def _legend(shape: Shape) -> tuple[LegendEntry, ...]:
    rear, front = tipping_angles_deg(shape)
    return (
        LegendEntry("centre of mass", None),
        LegendEntry(f"tipping line, rear {rear:.1f}°", "tipping_rear"),
        LegendEntry(f"tipping line, forward {front:.1f}°", "tipping_forward"),
        LegendEntry("plumb line", "plumb"),
        LegendEntry("caster turned, swing", "hidden"),
    )


def _description(shape: Shape) -> str:
    rear, front = tipping_angles_deg(shape)
    return (
        f"The occupied wheelchair from the right, front to the right. Seat to floor "
        f"{shape.seat_corner[1]:.0f} mm at the back and {shape.seat_front[1]:.0f} mm at the front, "
        f"wheelbase {shape.wheelbase_mm:.0f} mm. Centre of mass {shape.com[0]:.0f} mm ahead of "
        f"the rear axle and {shape.com[2]:.0f} mm above the floor; from the plumb line it is "
        f"{rear:.1f} degrees to the rear contact and {front:.1f} degrees to the front contact."
    )


def _dimensions(shape: Shape) -> tuple[Dimension, ...]:
    front = shape.seat_front
    rows = [
        *_axle_offset(shape),
        _wheelbase(shape),
        _overall_length(shape),
        _height("seat_to_floor_rear_mm", shape.seat_corner, "seat, rear", "left"),
        *_clearance(shape),
        _height("seat_to_floor_front_mm", front, "seat, front", "right"),
        _height("cushion_to_floor_front_mm", shape.cushion_front, "cushion, front", "right"),
    ]
    return tuple(rows)


def _height(figure: str, at: Point, words: str, side: Literal["left", "right"]) -> Dimension:
    return Dimension(figure, (at[0], 0.0), at, at[1], words, side)


def _axle_offset(shape: Shape) -> list[Dimension]:
    ahead = shape.rear_axle[0] - shape.seat_corner[0]
    if round(abs(ahead)) == 0:
        return []
    words = "axle ahead, level" if ahead > 0 else "axle behind, level"
    ends = (shape.seat_corner, shape.rear_axle)
    return [Dimension("axle_ahead_of_back_post_mm", *ends, abs(ahead), words, "below")]


def _wheelbase(shape: Shape) -> Dimension:
    rear, front = contact_xs(shape)
    ends = ((rear, 0.0), (front, 0.0))
    return Dimension("wheelbase_mm", *ends, shape.wheelbase_mm, "wheelbase", "below")


def _overall_length(shape: Shape) -> Dimension:
    rear, front = side_chair.side_extent(shape)
    ends = ((rear, 0.0), (front, 0.0))
    return Dimension("overall_length_mm", *ends, front - rear, "overall length", "below")


def _clearance(shape: Shape) -> list[Dimension]:
    supports = shape.foot_supports
    plates = [point for item in supports for point in (item.plate_rear, item.plate_front)]
    if not plates:
        return []
    low = min(plates, key=lambda point: point[1])
    return [_height("footplate_clearance_mm", low, "footplate", "right")]
