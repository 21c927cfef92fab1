"""Each primitive of a sheet as entities of a DXF drawing, carried back into real millimetres."""

from __future__ import annotations

from math import cos, pi, radians, sin
from typing import TYPE_CHECKING

import numpy as np

from chairwright.drawing.lettering import CAP_HEIGHT_EM
from chairwright.drawing.palette import PenName
from chairwright.drawing.scene import (
    Arc,
    Circle,
    Line,
    Point,
    Polyline,
    Primitive,
    Silhouette,
    Text,
)
from chairwright.drawing.sheet import Placement, text_box
from chairwright.places.union import union

if TYPE_CHECKING:
    from ezdxf.layouts.layout import Modelspace

TEXT = "CW-TEXT"
MASK = "CW-MASK"
"""Layer of what hides the lines behind it; switched off, every line shows."""

BY_LAYER = 256
_ROUND = 48
_ALIGNED = {"start": "LEFT", "middle": "CENTER", "end": "RIGHT"}


def layer_of(pen: PenName) -> str:
    """Layer of a kind of line.

    Examples
    --------
    >>> layer_of("tipping_rear")
    'CW-TIPPING-REAR'
    """
    return f"CW-{pen.replace('_', '-').upper()}"


def draw(space: Modelspace, item: Primitive, placement: Placement) -> None:
    """Draw one primitive.

    Parameters
    ----------
    space : Modelspace
    item : Primitive
        In paper mm.
    placement : Placement
        Of the sheet.
    """
    match item:
        case Line():
            ends = placement.real(item.start), placement.real(item.end)
            space.add_line(*ends, dxfattribs=_on(item.pen))
        case Polyline():
            _polyline(space, item, placement)
        case Circle():
            _circle(space, item, placement)
        case Arc():
            centre, radius = placement.real(item.centre), item.radius * placement.scale
            space.add_arc(centre, radius, item.from_deg, item.to_deg, dxfattribs=_on(item.pen))
        case Silhouette():
            _silhouette(space, item, placement)
        case Text():
            _text(space, item, placement)


def _on(pen: PenName) -> dict[str, str]:
    return {"layer": layer_of(pen)}


def _mask(space: Modelspace, ring: list[Point]) -> None:
    space.add_wipeout(ring).dxf.layer = MASK


def _polyline(space: Modelspace, item: Polyline, placement: Placement) -> None:
    points = [placement.real(point) for point in item.points]
    if item.fill == "sheet":
        _mask(space, points)
    if item.fill == "ink":
        space.add_hatch(color=BY_LAYER, dxfattribs=_on(item.pen)).paths.add_polyline_path(points)
    space.add_lwpolyline(points, close=item.closed, dxfattribs=_on(item.pen))


def _circle(space: Modelspace, item: Circle, placement: Placement) -> None:
    (x, y), radius = placement.real(item.centre), item.radius * placement.scale
    if item.fill == "sheet":
        turns = [2.0 * pi * step / _ROUND for step in range(_ROUND)]
        _mask(space, [(x + radius * cos(turn), y + radius * sin(turn)) for turn in turns])
    if item.fill == "ink":
        hatch = space.add_hatch(color=BY_LAYER, dxfattribs=_on(item.pen))
        hatch.paths.add_edge_path().add_arc((x, y), radius, 0.0, 360.0)
    space.add_circle((x, y), radius, dxfattribs=_on(item.pen))


def _silhouette(space: Modelspace, item: Silhouette, placement: Placement) -> None:
    rings = [np.array([placement.real(point) for point in ring]) for ring in item.shapes]
    for ring in rings:
        _mask(space, [(float(x), float(y)) for x, y in ring])
    for ring in union(rings):
        points = [(float(x), float(y)) for x, y in ring]
        space.add_lwpolyline(points, close=True, dxfattribs=_on(item.pen))


def _text(space: Modelspace, item: Text, placement: Placement) -> None:
    from ezdxf.enums import TextEntityAlignment

    at = placement.real(item.at)
    if item.backed:
        _mask(space, _backing(item, placement))
    look = {
        "layer": TEXT,
        "height": CAP_HEIGHT_EM * item.size_mm * placement.scale,
        "rotation": item.turn_deg,
    }
    align = TextEntityAlignment[_ALIGNED[item.anchor]]
    space.add_text(item.text, dxfattribs=look).set_placement(at, align=align)


def _backing(item: Text, placement: Placement) -> list[Point]:
    """Corners of the room behind a text, turned with it about its anchor."""
    flat = Text(item.at, item.text, item.size_mm, item.anchor)
    left, top, right, bottom = text_box(flat)
    (x0, y0), turn = item.at, radians(item.turn_deg)
    corners = []
    for x, y in ((left, top), (right, top), (right, bottom), (left, bottom)):
        dx, dy = x - x0, y - y0
        corners.append((x0 + dx * cos(turn) + dy * sin(turn), y0 + dy * cos(turn) - dx * sin(turn)))
    return [placement.real(corner) for corner in corners]
