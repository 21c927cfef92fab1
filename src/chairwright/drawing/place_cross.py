"""View from behind of the occupied chair across a slope, with plumb line and tipping edges."""

from __future__ import annotations

from collections.abc import Mapping
from math import atan2, degrees, radians, sin, tan
from typing import Literal

from chairwright.chair.shape import Point, Shape
from chairwright.drawing.compose import LegendEntry, View, compose
from chairwright.drawing.dimensions import Units
from chairwright.drawing.place_balance import (
    Edge,
    balance_lines,
    edge_labels,
    ground,
    slope_label,
    spread_words,
    word_of,
)
from chairwright.drawing.place_marks import Said, said_above, titled
from chairwright.drawing.place_pose import turned, turned_point
from chairwright.drawing.place_ramp import NO_SPREADS
from chairwright.drawing.place_ramp_stand import slope_words
from chairwright.drawing.place_rear import rear_view
from chairwright.drawing.scene import Circle, Dimension, Group
from chairwright.drawing.sheet import A5_PORTRAIT, Page, Sheet
from chairwright.places.kinds import CrossSlope
from chairwright.places.model import Slope

Side = Literal["left", "right"]
_BEYOND_MM = 170.0
_TRACK_MM = 23.0
_OUTSIDE_MM = 4.0


def cross_slope_sheet(
    shape: Shape,
    place: CrossSlope,
    *,
    falls: Literal["left", "right", "worse"] = "worse",
    spreads: Mapping[str, float] = NO_SPREADS,
    units: Units = "mm",
    page: Page = A5_PORTRAIT,
) -> Sheet:
    """Draw the occupied chair on a floor that falls straight to one side, from behind.

    Parameters
    ----------
    shape : Shape
        Floor axes [mm].
    place : CrossSlope
    falls : {"left", "right", "worse"}
        To which side of the person; ``worse`` takes the smaller margin to tipping.
    spreads : mapping of str to float [deg]
        Half width of ``tip_left_deg`` and ``tip_right_deg``, where known.
    units : {"mm", "in"}
    page : Page
        Largest sheet [mm].

    Returns
    -------
    Sheet
    """
    left, right = tip_sideways_deg(shape)
    worse: Side = "left" if left <= right else "right"
    side: Side = worse if falls == "worse" else falls
    told = said_of(shape, place.slope, side, spreads)

    def build(scale: float) -> View:
        return _view(shape, place, side, told, scale, page)

    return compose(build, page, units)


def edge_at_com_mm(shape: Shape) -> float:
    """Half the distance of the two side tipping edges where the centre of mass is [mm].

    Between the rear and the caster track: each edge runs from rear tyre to caster.
    """
    rear, front = shape.rear_track_mm / 2.0, shape.caster_track_mm / 2.0
    return rear - shape.com[0] / shape.wheelbase_mm * (rear - front)


def tip_sideways_deg(shape: Shape) -> tuple[float, float]:
    """Slope at which the chair tips to the person's left and right [deg].

    References
    ----------
    First principles: the floor falls straight to that side; atan((y_edge -+ y) / h).
    """
    half, (_, y, height) = edge_at_com_mm(shape), shape.com
    return degrees(atan2(half - y, height)), degrees(atan2(half + y, height))


def said_of(
    shape: Shape, slope: Slope, side: Side, spreads: Mapping[str, float] = NO_SPREADS
) -> Said:
    """Verdict on a cross slope: the angle left to tipping downhill.

    Parameters
    ----------
    shape : Shape
    slope : Slope
    side : {"left", "right"}
        To which the floor falls.
    spreads : mapping of str to float [deg]

    Returns
    -------
    Said
    """
    tips = tip_sideways_deg(shape)[0 if side == "left" else 1]
    margin, spread = tips - slope.degrees, spreads.get(f"tip_{side}_deg", 0.0)
    sentence = f"{margin:.1f}° left before it tips to the {side}."
    if margin <= 0.0:
        sentence = f"it tips to the {side}: the floor is {-margin:.1f}° too steep."
    sums = f"It tips to the {side} at {tips:.1f}°; the floor falls {slope.degrees:.1f}°."
    held = "Rolling straight, the casters trailing; leaning or reaching downhill takes from it."
    return Said(word_of(margin, spread), sentence, (sums, *spread_words(margin, spread), held))


def _view(
    shape: Shape, place: CrossSlope, side: Side, told: Said, scale: float, page: Page
) -> View:
    turn = place.slope.degrees * (1.0 if side == "left" else -1.0)
    com = turned_point((-shape.com[1], shape.com[2]), turn)
    edges = _edges(shape, turn)
    reach = shape.overall_width_mm / 2.0 + _BEYOND_MM
    floor = tuple(turned_point((x, 0.0), turn) for x in (-reach, reach))
    down = 1.0 if side == "right" else -1.0
    downhill = edges[1 if down > 0.0 else 0].at
    words_at = (downhill[0] + down * _OUTSIDE_MM * scale, downhill[1])
    marks = tuple(Circle(edge.at, 0.8 * scale, "thin", "ink") for edge in edges)
    groups = (
        ground(floor, scale),
        *(turned(group, turn) for group in rear_view(shape)),
        balance_lines(com, com[0] * tan(radians(turn)), edges, scale),
        Group("edges", marks),
        edge_labels(edges, scale, -_OUTSIDE_MM),
        slope_label(words_at, -down, f"slope {slope_words(place.slope.ratio)}", scale),
    )
    head = shape.figurine.head_centre[1] + shape.figurine.head_radius_mm
    top = head + abs(head * sin(radians(turn))) * 0.1 + 40.0
    above = said_above(told, floor[0][0], top + 3.0 * scale, 2.0 * reach, scale, page)
    words = _description(shape, place, side, told)
    name = titled("From behind, across the slope", place.name, page)
    return View(name, words, groups, (_track(shape, turn),), _LEGEND, (above,))


def _edges(shape: Shape, turn_deg: float) -> tuple[Edge, Edge]:
    half, (left, right) = edge_at_com_mm(shape), tip_sideways_deg(shape)
    downhill, uphill = "to tip downhill", "to tip uphill"
    falls_left = turn_deg >= 0.0
    return (
        Edge(turned_point((-half, 0.0), turn_deg), left - turn_deg,
             "tipping_rear" if falls_left else "tipping_forward",
             downhill if falls_left else uphill),
        Edge(turned_point((half, 0.0), turn_deg), right + turn_deg,
             "tipping_forward" if falls_left else "tipping_rear",
             uphill if falls_left else downhill),
    )  # fmt: skip


def _track(shape: Shape, turn_deg: float) -> Dimension:
    half = shape.rear_track_mm / 2.0
    ends: tuple[Point, Point] = (turned_point((-half, 0.0), turn_deg), turned_point((half, 0.0),
                                 turn_deg))  # fmt: skip
    return Dimension("rear_track_mm", *ends, shape.rear_track_mm, "rear track", "parallel",
                     _TRACK_MM)  # fmt: skip


_LEGEND = (
    LegendEntry("centre of mass", None),
    LegendEntry("plumb line", "plumb"),
    LegendEntry("to the downhill tipping edge", "tipping_rear"),
    LegendEntry("to the uphill tipping edge", "tipping_forward"),
)


def _description(shape: Shape, place: CrossSlope, side: Side, told: Said) -> str:
    left, right = tip_sideways_deg(shape)
    turn = place.slope.degrees * (1.0 if side == "left" else -1.0)
    return (
        f"{place.name}: the occupied wheelchair from behind on a floor that falls to its {side}, "
        f"{slope_words(place.slope.ratio)}. Rear track {shape.rear_track_mm:.0f} mm; where the "
        f"centre of mass is, the tipping edges are {2.0 * edge_at_com_mm(shape):.0f} mm apart. "
        f"From the plumb line it is {left - turn:.1f} degrees to the left edge and "
        f"{right + turn:.1f} degrees to the right one. {told.whole}"
    )
