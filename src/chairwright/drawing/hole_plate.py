"""The axle plate with every hole, from outside, and the one that the axle goes into."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from chairwright.drawing.compose import View, compose
from chairwright.drawing.dimensions import Units
from chairwright.drawing.hole_marks import (
    LETTER_MM,
    Codes,
    heading,
    heading_width,
    hole_mark,
    letters,
    level,
    readable_scales,
)
from chairwright.drawing.scene import (
    Anchor,
    Circle,
    Dimension,
    Group,
    Line,
    Point,
    Polyline,
    Primitive,
    Text,
)
from chairwright.drawing.sheet import Page, Sheet
from chairwright.line.model import TURNED, Option

Side = Literal["right", "left"]

PAGE = Page(125.0, 72.0)
EDGE_MM = 16.0


def axle_plate_sheet(
    codes: Codes, side: Side = "right", page: Page = PAGE, units: Units = "mm"
) -> Sheet:
    """Draw one axle plate.

    Parameters
    ----------
    codes : Codes
    side : {"right", "left"}
        Of the chair; the left plate is the right one in a mirror.
    page : Page
    units : {"mm", "in"}

    Returns
    -------
    Sheet
    """
    scales = readable_scales(hole.numbers["z_mm"] for hole in _mounted(codes))
    return compose(lambda scale: plate_view(codes, side, scale), page, units, scales)


def _mounted(codes: Codes) -> list[Option]:
    """Holes of the plate as it is mounted."""
    chosen = codes.option("axle_hole")
    options = codes.line.choices["axle_hole"].options
    return [each for each in options if each.mounting == chosen.mounting]


def plate_view(codes: Codes, side: Side, scale: float) -> View:
    """One axle plate in real mm, seen from outside.

    Parameters
    ----------
    codes : Codes
    side : {"right", "left"}
    scale : float
        Real length over paper length.
    """
    chosen = codes.option("axle_hole")
    holes = _mounted(codes)
    sense = 1.0 if side == "right" else -1.0
    turned = ", turned round" if chosen.mounting[1] else ""
    return View(
        name=f"Axle plate {chosen.part}, {side} side{turned}: hole {chosen.code}{codes.state}",
        description=plate_words(codes, holes, side),
        groups=(
            _datum(holes, sense, scale),
            _plate(holes, sense),
            _lettered(holes, sense, scale),
            _holes(holes, codes, sense, scale),
        ),
        dimensions=tuple(_dimensions(chosen, sense)),
        legend=(),
        around=(_heading(holes, codes, sense, scale),),
    )


def _at(option: Option, sense: float) -> Point:
    return sense * option.numbers["x_mm"], option.numbers["z_mm"]


def column_of(option: Option) -> str:
    """Letter of a hole's column."""
    return option.code[0]


def row_of(option: Option) -> str:
    """Number of a hole's row."""
    return option.code[1:].removesuffix(TURNED)


def _box(holes: Sequence[Option], sense: float) -> tuple[float, float, float, float]:
    places = [_at(hole, sense) for hole in holes]
    xs, zs = [x for x, _ in places], [z for _, z in places]
    return min(xs), min(zs), max(xs), max(zs)


def _plate(holes: Sequence[Option], sense: float) -> Group:
    left, low, right, high = _box(holes, sense)
    ring = (
        (left - EDGE_MM, low - EDGE_MM),
        (right + EDGE_MM, low - EDGE_MM),
        (right + EDGE_MM, high + EDGE_MM),
        (left - EDGE_MM, high + EDGE_MM),
    )
    return Group("plate", (Polyline(ring, closed=True, fill="sheet"),))


def _datum(holes: Sequence[Option], sense: float, scale: float) -> Group:
    """Seat rail, back post and the corner where they meet, from which the holes are placed."""
    left, low, right, _ = _box(holes, sense)
    ends = min(left - EDGE_MM, -12.0), max(right + EDGE_MM, 12.0)
    anchor: Anchor = "start" if sense > 0 else "end"
    ahead = ends[1] if sense > 0 else ends[0]
    rail = sense * max(sense * ahead - 20.0 * scale, 1.5 * scale)
    items: list[Primitive] = [
        Line((ends[0], 0.0), (ends[1], 0.0), "centre"),
        Line((0.0, 9.0 * scale), (0.0, low - EDGE_MM), "centre"),
        Circle((0.0, 0.0), 0.7 * scale, "thin", "ink"),
        Text((rail, 1.2 * scale), "top of seat rail", LETTER_MM, anchor),
        Text((sense * 1.0 * scale, 6.0 * scale), "front of back post", LETTER_MM, anchor),
    ]
    return Group("datum", tuple(items))


def _lettered(holes: Sequence[Option], sense: float, scale: float) -> Group:
    """Letters of the columns above the plate, numbers of the rows where no dimension stands."""
    left, _, right, high = _box(holes, sense)
    columns = {column_of(hole): _at(hole, sense)[0] for hole in holes}
    rows = {row_of(hole): _at(hole, sense)[1] for hole in holes}
    above = high + EDGE_MM + 1.4 * scale
    beside = right + EDGE_MM + 1.4 * scale if sense > 0 else left - EDGE_MM - 1.4 * scale
    anchor: Anchor = "start" if sense > 0 else "end"
    named = [letters((x, above), name) for name, x in columns.items()]
    named += [letters(level((beside, z), scale), name, anchor) for name, z in rows.items()]
    return Group("letters", tuple(named))


def _holes(holes: Sequence[Option], codes: Codes, sense: float, scale: float) -> Group:
    order = sorted(holes, key=lambda hole: codes.use("axle_hole", hole.code) == "chosen")
    items: list[Primitive] = []
    for hole in order:
        items += hole_mark(_at(hole, sense), codes.use("axle_hole", hole.code), scale)
    return Group("holes", tuple(items))


def _heading(holes: Sequence[Option], codes: Codes, sense: float, scale: float) -> Group:
    uses = [codes.use("axle_hole", hole.code) for hole in holes]
    left, _, right, _ = _box(holes, sense)
    start = left - EDGE_MM if sense > 0 else right + EDGE_MM - heading_width(codes, uses) * scale
    return heading((start, 9.0 * scale), codes, uses, scale, sense)


def _dimensions(chosen: Option, sense: float) -> list[Dimension]:
    x, z = _at(chosen, sense)
    ahead = "ahead" if chosen.numbers["x_mm"] >= 0 else "behind"
    found = []
    if abs(x) >= 0.5:
        found.append(Dimension("axle_hole_x_mm", (0.0, z), (x, z), abs(x), ahead, "below"))
    if abs(z) >= 0.5:
        side: Literal["left", "right"] = "left" if sense > 0 else "right"
        words = "below" if z < 0 else "above"
        found.append(Dimension("axle_hole_z_mm", (x, 0.0), (x, z), abs(z), words, side, brief=True))
    return found


def plate_words(codes: Codes, holes: Sequence[Option], side: Side) -> str:
    """The drawing in words.

    Parameters
    ----------
    codes : Codes
    holes : sequence of Option
        Of the plate as it is mounted.
    side : {"right", "left"}
    """
    chosen = codes.option("axle_hole")
    placed = sorted(holes, key=lambda hole: hole.numbers["x_mm"])
    columns = list(dict.fromkeys(column_of(hole) for hole in placed))
    down = sorted(holes, key=lambda hole: -hole.numbers["z_mm"])
    rows = list(dict.fromkeys(row_of(hole) for hole in down))
    x, z = chosen.numbers["x_mm"], chosen.numbers["z_mm"]
    turned = " The plate is turned round." if chosen.mounting[1] else ""
    return (
        f"Axle plate {chosen.part} on the {side} side of the chair, seen from outside, the front "
        f"to the {side}.{turned} Columns from back to front {' '.join(columns)}; rows from top to "
        f"bottom {' '.join(rows)}. The axle {codes.axle_words} hole {chosen.code}: "
        f"{abs(x):g} mm {'ahead of' if x >= 0 else 'behind'} the front of the back post and "
        f"{abs(z):g} mm {'above' if z > 0 else 'below'} the top of the seat rail."
    )
