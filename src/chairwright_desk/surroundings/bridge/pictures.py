"""A small picture of a place as it was measured, and the client's chair in it."""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from chairwright.drawing.dimensions import Units, lay_out
from chairwright.drawing.place_sheets import place_sheet
from chairwright.drawing.scene import Dimension, Group, Line, Polyline, Primitive
from chairwright.drawing.sheet import Placement, Sheet, groups_box, shifted
from chairwright.drawing.svg import to_svg
from chairwright.errors import InputError
from chairwright.files.client import read_client
from chairwright.fitting.described import Described
from chairwright.places.kinds import (
    Boot,
    Corner,
    Corridor,
    CrossSlope,
    Door,
    Kerb,
    Lift,
    Ramp,
    Room,
    Threshold,
    TransferPlace,
    UnderTop,
)
from chairwright.reading import FileText
from chairwright.targets.from_places import place_targets
from chairwright_desk.surroundings.bridge.keys import KIND_WORDS, keys_of
from chairwright_desk.surroundings.bridge.read import place_in, places_in

Drawn = tuple[list[Primitive], list[Dimension]]
LARGEST_MM = 62.0
_SCALES = (2.0, 5.0, 10.0, 15.0, 20.0, 30.0, 40.0, 50.0, 75.0, 100.0, 200.0, 500.0, 1000.0)
_WALL = 100.0


def picture_of(text: str, units: Units, prefix: str) -> str:
    """Draw the one place of a text to scale, with its main measures; empty when it cannot be read.

    Parameters
    ----------
    text : str
    units : {"mm", "in"}
    prefix : str
        Start of every id.
    """
    place = place_in(text)
    if place is None:
        return ""
    drawer = next(_DRAWERS[kind] for kind in type(place).__mro__ if kind in _DRAWERS)
    items, dimensions = drawer(place)
    real = groups_box((Group("place", tuple(items)),))
    size = max(real[2] - real[0], real[3] - real[1])
    scale = next((s for s in _SCALES if size / s <= LARGEST_MM), _SCALES[-1])
    placement = Placement(scale)
    drawn = placement.group(Group("place", tuple(items)))
    groups = (drawn, *lay_out(tuple(dimensions), placement, groups_box((drawn,)), units))
    left, top, right, bottom = groups_box(groups)
    moved = tuple(shifted(group, 3.0 - left, 3.0 - top) for group in groups)
    words = f"{KIND_WORDS[place.kind]}, scale 1:{scale:g}"
    sheet = Sheet(words, words, right - left + 6.0, bottom - top + 6.0, moved)
    return to_svg(sheet, prefix)


def with_chair(text: str, setup: Described, units: Units, prefix: str) -> str:
    """Draw a set-up in the one place of a text; empty for a kind without such a drawing.

    Parameters
    ----------
    text : str
    setup : Described
    units : {"mm", "in"}
    prefix : str
    """
    place = place_in(text)
    try:
        sheet = None if place is None else place_sheet(setup, place, units=units)
    except InputError:
        return ""
    return "" if sheet is None else to_svg(sheet, prefix)


def in_words(text: str) -> list[tuple[str, str]]:
    """What is said of the one place of a text: label and words, as typed."""
    place = place_in(text)
    if place is None:
        return []
    labels = {key.name: key for key in keys_of(place.kind)}
    told = []
    for attribute, typed in place.typed.items():
        name = _key_name(attribute)
        if name in labels:
            words = dict(labels[name].options).get(typed, typed)
            told.append((labels[name].label, words))
    return told


def _key_name(attribute: str) -> str:
    own = {"landing_length_mm": "landings", "edge_protection": "edges", "helped": "carer"}
    return own.get(attribute, attribute.removesuffix("_mm"))


def asked_of(client_text: str, places_text: str) -> dict[str, list[str]]:
    """What every place asks of the chair, in the reasons' own words, by the place's name.

    Parameters
    ----------
    client_text, places_text : str
    """
    try:
        client = read_client(FileText("client", client_text))
        around = places_in(places_text)
        return {
            place.name: [target.reason for target in place_targets(place, client, around)]
            for place in around.places
        }
    except InputError:
        return {}


def _line(*points: tuple[float, float]) -> Polyline:
    return Polyline(points, "outline")


def _size(name: str, start: Any, end: Any, side: str, words: str = "") -> Dimension:
    value = abs(end[0] - start[0]) if side == "below" else abs(end[1] - start[1])
    return Dimension(name, start, end, value, words, side)  # type: ignore[arg-type]


def _door(place: Door) -> Drawn:
    wide, wall = place.clear_width_mm, place.opening_depth_mm or _WALL
    items: list[Primitive] = [
        Polyline(((-500.0, 0.0), (0.0, 0.0), (0.0, wall), (-500.0, wall)), "outline"),
        Polyline(((wide + 500.0, 0.0), (wide, 0.0), (wide, wall), (wide + 500.0, wall)), "outline"),
    ]
    if place.swing in ("push", "pull"):
        far = wall + wide if place.swing == "push" else -wide
        items.append(Line((0.0, wall if far > 0 else 0.0), (0.0, far), "outline"))
    elif place.swing == "slide":
        items.append(Line((-wide, wall / 2), (0.0, wall / 2), "hidden"))
    sizes = [_size("clear-width", (0.0, 0.0), (wide, 0.0), "below")]
    across = place.floor_depth_mm or place.corridor_width_mm
    if across and across < 4000.0:
        items.append(Line((-500.0, -across), (wide + 500.0, -across), "outline"))
        sizes.append(_size("floor", (-500.0, -across), (-500.0, 0.0), "left"))
    return items, sizes


def _corridor(place: Corridor) -> Drawn:
    wide, long = place.width_mm, max(1500.0, 1.6 * place.width_mm)
    items: list[Primitive] = [_line((0.0, 0.0), (long, 0.0)), _line((0.0, wide), (long, wide))]
    return items, [_size("width", (0.0, 0.0), (0.0, wide), "left")]


def _corner(place: Corner) -> Drawn:
    a, b = place.width_in_mm, place.width_out_mm
    far = 0.8 * max(a, b)
    items: list[Primitive] = [
        _line((0.0, -far), (0.0, b), (a + far, b)),
        _line((a, -far), (a, 0.0), (a + far, 0.0)),
    ]
    return items, [
        _size("in", (0.0, -far), (a, -far), "below", "in"),
        _size("out", (a + far, 0.0), (a + far, b), "right", "out"),
    ]


def _rectangle(wide: float, deep: float) -> Polyline:
    return Polyline(((0.0, 0.0), (wide, 0.0), (wide, deep), (0.0, deep)), "outline", closed=True)


def _room(place: Room) -> Drawn:
    wide, deep = place.width_mm, place.depth_mm
    return [_rectangle(wide, deep)], [
        _size("width", (0.0, 0.0), (wide, 0.0), "below"),
        _size("depth", (0.0, 0.0), (0.0, deep), "left"),
    ]


def _lift(place: Lift) -> Drawn:
    wide, deep, door = place.width_mm, place.depth_mm, min(place.door_width_mm, place.width_mm)
    left = (wide - door) / 2.0
    items: list[Primitive] = [
        _line((left, 0.0), (0.0, 0.0), (0.0, deep), (wide, deep), (wide, 0.0), (wide - left, 0.0)),
        Line((left, 0.0), (wide - left, 0.0), "hidden"),
    ]
    return items, [
        _size("door", (left, 0.0), (wide - left, 0.0), "below", "door"),
        _size("width", (0.0, 0.0), (wide, 0.0), "below"),
        _size("depth", (0.0, 0.0), (0.0, deep), "left"),
    ]


def _ramp(place: Ramp) -> Drawn:
    run, rise = place.run_mm, place.rise_mm
    flat = min(place.landing_length_mm or 600.0, 1500.0)
    items: list[Primitive] = [
        _line((-flat, 0.0), (0.0, 0.0), (run, rise), (run + flat, rise)),
        Line((0.0, 0.0), (run + flat, 0.0), "hidden"),
    ]
    return items, [
        _size("run", (0.0, 0.0), (run, 0.0), "below"),
        _size("rise", (run, 0.0), (run, rise), "right"),
    ]


def _cross_slope(place: CrossSlope) -> Drawn:
    wide = 1200.0
    fall = wide * place.slope.ratio
    items: list[Primitive] = [
        _line((0.0, fall), (wide, 0.0)),
        Line((0.0, 0.0), (wide, 0.0), "hidden"),
    ]
    words = f"fall on {wide:g}"
    return items, [_size("fall", (0.0, 0.0), (0.0, fall), "left", words)]


def _step(place: Threshold | Kerb, *, through: bool) -> Drawn:
    high = place.height_mm
    wide = max(120.0, 2.0 * high)
    top = (wide, high), (wide, 0.0), (2.2 * wide, 0.0)
    ends = top if through else ((2.2 * wide, high),)
    slope = high if getattr(place, "bevelled", None) else 0.0
    items: list[Primitive] = [_line((-wide, 0.0), (-slope, 0.0), (0.0, high), *ends)]
    return items, [_size("height", (-wide, 0.0), (-wide, high), "left")]


def _under_top(place: UnderTop) -> Drawn:
    clear = place.clear_height_mm
    top = place.top_height_mm or clear + 40.0
    knee = place.knee_depth_mm or 500.0
    foot, toe = place.foot_depth_mm or knee, place.toe_depth_mm or knee
    deep = max(knee, foot, toe)
    items: list[Primitive] = [
        _line((-300.0, 0.0), (deep + 100.0, 0.0)),
        Polyline(((0.0, clear), (0.0, top), (deep, top), (deep, clear)), "outline", closed=True),
        Polyline(((knee, clear), (knee, 230.0), (foot, 230.0), (toe, 0.0)), "hidden"),
    ]
    sizes = [_size("clear", (0.0, 0.0), (0.0, clear), "left", "clear")]
    if place.top_height_mm:
        sizes.append(_size("top", (deep, 0.0), (deep, top), "right", "top"))
    if place.knee_depth_mm:
        sizes.append(_size("knee", (0.0, clear), (knee, clear), "below", "knees"))
    return items, sizes


def _transfer(place: TransferPlace) -> Drawn:
    high, wide = place.height_mm, 700.0
    items: list[Primitive] = [
        _line((-350.0, 0.0), (wide + 50.0, 0.0)),
        Polyline(
            ((0.0, high - 120.0), (0.0, high), (wide, high), (wide, high - 120.0)),
            "outline",
            closed=True,
        ),
        Line((60.0, 0.0), (60.0, high - 120.0), "outline"),
        Line((wide - 60.0, 0.0), (wide - 60.0, high - 120.0), "outline"),
    ]
    return items, [_size("height", (0.0, 0.0), (0.0, high), "left")]


def _boot(place: Boot) -> Drawn:
    wide, high, sill = place.opening_width_mm, place.opening_height_mm, place.sill_height_mm or 0.0
    items: list[Primitive] = [
        Polyline(
            ((0.0, sill), (wide, sill), (wide, sill + high), (0.0, sill + high)),
            "outline",
            closed=True,
        ),
        _line((-150.0, 0.0), (wide + 150.0, 0.0)),
    ]
    sizes = [
        _size("width", (0.0, 0.0), (wide, 0.0), "below"),
        _size("height", (0.0, sill), (0.0, sill + high), "left"),
    ]
    if sill:
        sizes.append(_size("sill", (wide, 0.0), (wide, sill), "right", "sill"))
    return items, sizes


_DRAWERS: dict[type, Callable[[Any], Drawn]] = {
    Door: _door,
    Corridor: _corridor,
    Corner: _corner,
    Room: _room,
    Lift: _lift,
    Ramp: _ramp,
    CrossSlope: _cross_slope,
    Threshold: partial(_step, through=True),
    Kerb: partial(_step, through=False),
    UnderTop: _under_top,
    TransferPlace: _transfer,
    Boot: _boot,
}
