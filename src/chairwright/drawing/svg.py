"""A finished sheet as SVG text: no decisions here, only numbers and attributes."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from math import cos, radians, sin
from xml.sax.saxutils import escape

from chairwright.drawing.lettering import CAP_HEIGHT_EM, DESCENT_EM, REGULAR_SHARE, text_width
from chairwright.drawing.palette import FONT_FAMILY, INK, PENS, SHEET, PenName
from chairwright.drawing.scene import (
    Arc,
    Circle,
    Fill,
    Line,
    Point,
    Polyline,
    Primitive,
    Silhouette,
    Text,
)
from chairwright.drawing.sheet import Sheet

_FILLS: dict[Fill, str] = {"none": "none", "sheet": SHEET, "ink": INK}
_BACKING_MM = 0.5
_QUOTE = {'"': "&quot;"}
Attributes = dict[str, str]


@dataclass(frozen=True)
class _Hand:
    """How a sheet is written: width of its pens, digits of its places, and for whom."""

    ratio: float
    digits: int
    screen: bool


def to_svg(sheet: Sheet, prefix: str, *, screen: bool = False) -> str:
    """Write a sheet as one SVG element.

    Parameters
    ----------
    sheet : Sheet
        Everything in paper mm.
    prefix : str
        Start of every id, so that several drawings can stand in one page.
    screen : bool
        True writes tenths of a millimetre, and every silhouette once: two thirds of the text for
        a page that is drawn anew with every change. Paper has hundredths.

    Returns
    -------
    str
        SVG text in mm; the same sheet gives the same bytes.

    Raises
    ------
    ValueError
        When the prefix cannot start an XML id.
    """
    if not prefix.isascii() or not prefix.replace("-", "").isalnum() or not prefix[0].isalpha():
        message = f"prefix must be letters, digits and hyphens after a letter; got {prefix!r}"
        raise ValueError(message)
    hand = _Hand(sheet.line_ratio, 1 if screen else 2, screen)
    inner = [
        _element("title", {"id": f"{prefix}-title"}, escape(sheet.title)),
        _element("desc", {"id": f"{prefix}-desc"}, escape(sheet.description)),
        _element("rect", {"width": "100%", "height": "100%", "fill": SHEET}),
    ]
    for group in sheet.groups:
        drawn = "".join([_drawn(item, hand) for item in group.items])
        inner.append(_element("g", {"id": escape(f"{prefix}-{group.name}", _QUOTE)}, drawn))
    return _element("svg", _root(sheet, prefix), "".join(inner))


def _root(sheet: Sheet, prefix: str) -> Attributes:
    width, height = _number(sheet.width_mm), _number(sheet.height_mm)
    return {
        "xmlns": "http://www.w3.org/2000/svg",
        "width": f"{width}mm",
        "height": f"{height}mm",
        "viewBox": f"0 0 {width} {height}",
        "role": "img",
        "aria-labelledby": f"{prefix}-title {prefix}-desc",
        "font-family": FONT_FAMILY,
        "fill": "none",
        "stroke-linecap": "round",
        "stroke-linejoin": "round",
    }


def _drawn(item: Primitive, hand: _Hand) -> str:
    match item:
        case Line():
            return _line(item, hand)
        case Polyline():
            return _polyline(item, hand)
        case Circle():
            return _circle(item, hand)
        case Arc():
            return _element("path", {"d": _arc_path(item, hand), **_stroke(item.pen, hand.ratio)})
        case Silhouette():
            return _silhouette(item, hand)
        case Text():
            return _text(item, hand)


def _line(item: Line, hand: _Hand) -> str:
    (x1, y1), (x2, y2), digits = item.start, item.end, hand.digits
    ends = {
        "x1": _number(x1, digits),
        "y1": _number(y1, digits),
        "x2": _number(x2, digits),
        "y2": _number(y2, digits),
    }
    return _element("line", {**ends, **_stroke(item.pen, hand.ratio)})


def _polyline(item: Polyline, hand: _Hand) -> str:
    tag = "polygon" if item.closed else "polyline"
    points = _points(item.points, hand.digits)
    look = {"points": points, "fill": _FILLS[item.fill]}
    return _element(tag, {**look, **_stroke(item.pen, hand.ratio)})


def _circle(item: Circle, hand: _Hand) -> str:
    (x, y), digits = item.centre, hand.digits
    place = {
        "cx": _number(x, digits),
        "cy": _number(y, digits),
        "r": _number(item.radius),
        "fill": _FILLS[item.fill],
    }
    return _element("circle", {**place, **_stroke(item.pen, hand.ratio)})


def _silhouette(item: Silhouette, hand: _Hand) -> str:
    pen = PENS[item.pen]
    path = " ".join([f"M{_points(shape, hand.digits)}Z" for shape in item.shapes])
    doubled = {"stroke": pen.colour, "stroke-width": _number(2.0 * hand.ratio * pen.width_mm)}
    if hand.screen:
        return _element("path", {"d": path, "fill": SHEET, "paint-order": "stroke", **doubled})
    outline = _element("path", {"d": path, **doubled})
    return outline + _element("path", {"d": path, "fill": SHEET})


def _text(item: Text, hand: _Hand) -> str:
    x, y = _number(item.at[0], hand.digits), _number(item.at[1], hand.digits)
    turn = {"transform": f"rotate({_number(-item.turn_deg)} {x} {y})"} if item.turn_deg else {}
    backing = _element("rect", {**_backing(item), "fill": SHEET, **turn}) if item.backed else ""
    look = {"x": x, "y": y, "font-size": _number(item.size_mm), "text-anchor": item.anchor,
            "fill": INK}  # fmt: skip
    if 0 < item.strong < len(item.text):
        runs = _run(item.text[: item.strong], item.size_mm, strong=True)
        runs += _run(item.text[item.strong :], item.size_mm, strong=False)
        blank = {"xml:space": "preserve"}  # the one before the second run
        return backing + _element("text", {**look, **turn, **blank}, runs)
    whole = _room(item.text, item.size_mm, strong=bool(item.strong))
    return backing + _element("text", {**look, **whole, **turn}, escape(item.text))


def _run(words: str, size_mm: float, *, strong: bool) -> str:
    return _element("tspan", _room(words, size_mm, strong=strong), escape(words))


def _room(words: str, size_mm: float, *, strong: bool) -> Attributes:
    """Weight and width of a run of letters, kept when another font stands in."""
    room = text_width(words, size_mm) * (1.0 if strong else REGULAR_SHARE)
    kept = {"textLength": _number(room), "lengthAdjust": "spacingAndGlyphs"}
    return kept | ({"font-weight": "600"} if strong else {})


def _backing(item: Text) -> Attributes:
    width = text_width(item.text, item.size_mm)
    left = item.at[0] - width * {"start": 0.0, "middle": 0.5, "end": 1.0}[item.anchor]
    top = item.at[1] - CAP_HEIGHT_EM * item.size_mm
    height = (CAP_HEIGHT_EM + DESCENT_EM) * item.size_mm
    return {
        "x": _number(left - _BACKING_MM),
        "y": _number(top - _BACKING_MM),
        "width": _number(width + 2 * _BACKING_MM),
        "height": _number(height + _BACKING_MM),
    }


def _arc_path(item: Arc, hand: _Hand) -> str:
    first, last = (_on_circle(item, angle) for angle in (item.from_deg, item.to_deg))
    large = int((item.to_deg - item.from_deg) % 360.0 > 180.0)
    radius, digits = _number(item.radius), hand.digits
    return f"M{_points((first,), digits)}A{radius} {radius} 0 {large} 0 {_points((last,), digits)}"


def _on_circle(item: Arc, angle_deg: float) -> Point:
    angle = radians(angle_deg)
    return (
        item.centre[0] + item.radius * cos(angle),
        item.centre[1] - item.radius * sin(angle),
    )


@cache
def _stroke(name: PenName, ratio: float) -> Attributes:
    pen = PENS[name]
    look = {"stroke": pen.colour, "stroke-width": _number(ratio * pen.width_mm)}
    if pen.dashes:
        look["stroke-dasharray"] = " ".join(_number(ratio * dash) for dash in pen.dashes)
        look["stroke-linecap"] = "butt"
    return look


def _points(points: tuple[Point, ...], digits: int) -> str:
    if digits == 1:  # at once, for most of a drawing is points
        tenths = " ".join(["%.1f,%.1f" % point for point in points])  # noqa: UP031
        return tenths.replace(".0,", ",").replace(".0 ", " ")
    return " ".join([f"{_number(x, digits)},{_number(y, digits)}" for x, y in points])


def _number(value: float, digits: int = 2) -> str:
    text = f"{value:.{digits}f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


def _element(tag: str, attributes: Attributes, inner: str = "") -> str:
    """One element; attribute values and what is inside are safe already."""
    told = "".join([f' {name}="{value}"' for name, value in attributes.items()])
    return f"<{tag}{told}>{inner}</{tag}>" if inner else f"<{tag}{told} />"
