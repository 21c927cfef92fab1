"""Side view of the occupied chair on a ramp, with plumb line and tipping edges."""

from __future__ import annotations

from collections.abc import Mapping
from math import cos, hypot, pi, radians, sin
from types import MappingProxyType
from typing import Literal

import numpy as np

from chairwright.chair.shape import Point, Shape
from chairwright.drawing import side_chair
from chairwright.drawing.balance import contact_xs, tipping_angles_deg
from chairwright.drawing.compose import LegendEntry, View, compose
from chairwright.drawing.dimensions import Units
from chairwright.drawing.lesson_side import without_fine_lines
from chairwright.drawing.person import body_side, near_arm
from chairwright.drawing.place_balance import (
    Edge,
    balance_lines,
    edge_labels,
    ground,
    slope_label,
    spread_words,
    word_of,
)
from chairwright.drawing.place_hatch import clipped, struck
from chairwright.drawing.place_marks import Gap, Said, gap_mark, said_above, titled
from chairwright.drawing.place_pose import ring_of, turned
from chairwright.drawing.place_ramp_stand import (
    Facing,
    Stand,
    contact_pitch_deg,
    device_clearance_mm,
    grounds_before_mm,
    margins_deg,
    slope_words,
    stand_on,
    worse_facing,
)
from chairwright.drawing.scene import Group
from chairwright.drawing.sheet import A5_PORTRAIT, Page, Sheet
from chairwright.places.kinds import Ramp
from chairwright.places.walls import LONG, block

NO_SPREADS: Mapping[str, float] = MappingProxyType({})
_BEYOND_MM = 150.0
_DEVICE_TAIL_MM = 9.0
_JUST_MM = 5.0
_FIGURES: dict[Facing, str] = {"up": "tip_rear_locked_deg", "down": "tip_forward_deg"}


def ramp_sheet(
    shape: Shape,
    ramp: Ramp,
    *,
    facing: Literal["up", "down", "worse"] = "worse",
    spreads: Mapping[str, float] = NO_SPREADS,
    units: Units = "mm",
    page: Page = A5_PORTRAIT,
) -> Sheet:
    """Draw the occupied chair on a ramp, wheels locked or held, from the right.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    ramp : Ramp
    facing : {"up", "down", "worse"}
        Which way the person looks; ``worse`` takes the smaller margin to tipping.
    spreads : mapping of str to float [deg]
        Half width of ``tip_rear_locked_deg`` and ``tip_forward_deg``, where known.
    units : {"mm", "in"}
    page : Page
        Largest sheet [mm].

    Returns
    -------
    Sheet
    """
    slope = ramp.slope_deg
    chosen: Facing = worse_facing(shape, slope) if facing == "worse" else facing
    stand = stand_on(shape, slope, chosen)
    told = said_of(shape, ramp, chosen, spreads)

    def build(scale: float) -> View:
        return _view(shape, ramp, stand, told, scale, units, page)

    return compose(build, page, units)


def said_of(
    shape: Shape, ramp: Ramp, facing: Facing, spreads: Mapping[str, float] = NO_SPREADS
) -> Said:
    """Verdict on a ramp: the angle left to tipping, and the anti-tip device at its foot.

    Parameters
    ----------
    shape : Shape
    ramp : Ramp
    facing : {"up", "down"}
    spreads : mapping of str to float [deg]

    Returns
    -------
    Said
    """
    slope, back = ramp.slope_deg, facing == "up"
    margin = margins_deg(shape, slope)[0 if back else 1]
    tips = tipping_angles_deg(shape)[0 if back else 1]
    way = "back going up" if back else "forward going down"
    spread = spreads.get(_FIGURES[facing], 0.0)
    sentence = f"{margin:.1f}° left before it tips {way}."
    if margin <= 0.0:
        sentence = f"it tips {way}: the ramp is {-margin:.1f}° too steep."
    sums = f"Wheels held it tips at {tips:.1f}°; the ramp has {slope:.1f}°."
    notes = (sums, *spread_words(margin, spread), *_device_notes(shape, slope))
    return Said(word_of(margin, spread), sentence, notes)


def _device_notes(shape: Shape, slope_deg: float) -> tuple[str, ...]:
    if shape.anti_tip_wheel is None:
        return ("No anti-tip device is fitted.",)
    pitch, clear = contact_pitch_deg(shape), device_clearance_mm(shape, slope_deg)
    if clear >= 0.0:
        just = "only just " if clear < _JUST_MM else ""
        return (
            f"The anti-tip device {just}passes the ramp's foot, {clear:.0f} mm to spare; on a "
            f"level floor it touches after {pitch:.1f}° of tipping back.",
        )
    before = grounds_before_mm(shape, slope_deg)
    if before is None:
        return ("The anti-tip device stands on the floor already.",)
    where = f"with the rear axle {before:.0f} mm before it"
    return (
        f"Caution: the anti-tip device grounds at the ramp's foot, {where}; turn it up to pass.",
    )


def _view(
    shape: Shape,
    ramp: Ramp,
    stand: Stand,
    told: Said,
    scale: float,
    units: Units,
    page: Page,
) -> View:
    left, right = _extent(shape, stand)
    edges = _edges(shape, stand)
    com = stand.place((shape.com[0], shape.com[2]))
    chair = (turned(group, stand.turn_deg, stand.at) for group in _chair(shape))
    floor = _floor_line(shape, ramp, stand, left, right)
    side = 1.0 if stand.facing == "up" else -1.0
    end = (right, edges[1].at[1]) if side > 0.0 else (left, edges[0].at[1])
    groups = (
        ground(floor, scale),
        *chair,
        balance_lines(com, stand.ground_mm(com[0]), edges, scale),
        edge_labels(edges, scale),
        slope_label(end, side, f"slope {slope_words(ramp.slope.ratio)}", scale),
        *_device(shape, stand, scale, units),
    )
    shown = tuple(group for group in groups if group.items)
    top = stand.place((0.0, shape.figurine.head_centre[1] + shape.figurine.head_radius_mm))[1]
    above = said_above(told, left, top + 60.0 + 3.0 * scale, right - left, scale, page)
    words = _description(shape, ramp, stand, told)
    name = titled(f"Side view, {stand.facing} the ramp", ramp.name, page)
    return View(name, words, shown, (), _legend(shape, stand), (above,))


def _chair(shape: Shape) -> tuple[Group, ...]:
    return (
        side_chair.anti_tip(shape),
        body_side(shape.figurine),
        side_chair.frame(shape),
        without_fine_lines(side_chair.caster(shape)),
        side_chair.seat_and_back(shape),
        without_fine_lines(side_chair.rear_wheel(shape)),
        near_arm(shape.figurine),
    )


def _extent(shape: Shape, stand: Stand) -> tuple[float, float]:
    """Left and right end of the floor that is drawn [mm]."""
    rear, front = side_chair.side_extent(shape)
    left, right = stand.place((rear, 0.0))[0], stand.place((front, 0.0))[0]
    return left - _BEYOND_MM, max(right, 0.0) + _BEYOND_MM


def _floor_line(
    shape: Shape, ramp: Ramp, stand: Stand, left: float, right: float
) -> tuple[Point, ...]:
    """Floor, foot, ramp, and its top when that is in sight and the chair still stands below it."""
    lean, length = radians(stand.slope_deg), hypot(ramp.rise_mm, ramp.run_mm)
    _, front = contact_xs(shape)
    sign = 1.0 if stand.facing == "up" else -1.0
    far = right if sign > 0.0 else left
    reach = front if sign > 0.0 else 0.0
    used = hypot(*stand.place((reach, 0.0))) + 20.0
    points = [(far, stand.ground_mm(far))]
    if used < length < abs(far) / cos(lean):
        top = (sign * length * cos(lean), length * sin(lean))
        points = [top, (far, top[1])]
    near = (left if sign > 0.0 else right, 0.0)
    whole = [near, (0.0, 0.0), *points]
    return tuple(whole if sign > 0.0 else whole[::-1])


def _edges(shape: Shape, stand: Stand) -> tuple[Edge, Edge]:
    rear, front = contact_xs(shape)
    back, ahead = tipping_angles_deg(shape)
    turn = stand.turn_deg
    return (
        Edge(stand.place((rear, 0.0)), back - turn, "tipping_rear", "to tip back"),
        Edge(stand.place((front, 0.0)), ahead + turn, "tipping_forward", "to tip forward"),
    )


def _device(shape: Shape, stand: Stand, scale: float, units: Units) -> tuple[Group, ...]:
    """Room under the anti-tip device in the foot of the ramp, or where it is in the floor."""
    if shape.anti_tip_wheel is None or stand.facing == "down":
        return ()
    x, z = stand.place(shape.anti_tip_wheel)
    radius = shape.anti_tip_radius_mm
    clear = device_clearance_mm(shape, stand.slope_deg)
    words = "under the anti-tip device" if clear >= 0.0 else "anti-tip device grounds"
    gap = Gap("device_clearance_mm", (x, z - radius), (x, 0.0), abs(clear))
    marks = [gap_mark(gap, scale, units, words, _DEVICE_TAIL_MM)] if clear >= 0.0 else []
    if clear < 0.0:
        wheel = np.array([(x + radius * cos(turn), z + radius * sin(turn))
                          for turn in np.linspace(0.0, 2.0 * pi, 48, endpoint=False)])  # fmt: skip
        ring = clipped(wheel, block(-LONG, LONG, -LONG, 0.0))
        marks.append(Group("overlap", tuple(struck(ring_of(ring), scale))))
        deep = Gap("device_clearance_mm", (x, 0.0), (x, z - radius), -clear)
        marks.append(gap_mark(deep, scale, units, words, _DEVICE_TAIL_MM))
    return tuple(marks)


def _legend(shape: Shape, stand: Stand) -> tuple[LegendEntry, ...]:
    entries = [
        LegendEntry("centre of mass", None),
        LegendEntry("plumb line", "plumb"),
        LegendEntry("to the rear tipping edge", "tipping_rear"),
        LegendEntry("to the front tipping edge", "tipping_forward"),
    ]
    grounds = shape.anti_tip_wheel is not None and device_clearance_mm(shape, stand.slope_deg) < 0.0
    if grounds and stand.facing == "up":
        entries.append(LegendEntry("in the floor", "hit"))
    return tuple(entries)


def _description(shape: Shape, ramp: Ramp, stand: Stand, told: Said) -> str:
    back, ahead = (edge.margin_deg for edge in _edges(shape, stand))
    where = "its rear wheels in the ramp's foot" if stand.facing == "up" else "near the ramp's foot"
    return (
        f"{ramp.name}: the occupied wheelchair from the right, looking {stand.facing} a ramp of "
        f"{slope_words(ramp.slope.ratio)} ({ramp.rise_mm:.0f} mm rise on {ramp.run_mm:.0f} mm), "
        f"{where}. From the plumb line it is {back:.1f} degrees to the rear tipping edge and "
        f"{ahead:.1f} degrees to the front one. {told.whole}"
    )
