"""A finished sheet as SVG text: no decisions here, only numbers and attributes."""

from __future__ import annotations

from functools import cache
from math import cos, radians, sin
from xml.etree import ElementTree as ET

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


def to_svg(sheet: Sheet, prefix: str) -> str:
    """Write a sheet as one SVG element.

    Parameters
    ----------
    sheet : Sheet
        Everything in paper mm.
    prefix : str
        Start of every id, so that several drawings can stand in one page.

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
    root = _root(sheet, prefix)
    _child(root, "rect", width="100%", height="100%", fill=SHEET)
    for group in sheet.groups:
        node = _child(root, "g", id=f"{prefix}-{group.name}")
        for item in group.items:
            _draw(node, item, sheet.line_ratio)
    return ET.tostring(root, encoding="unicode")


def _root(sheet: Sheet, prefix: str) -> ET.Element:
    width, height = _number(sheet.width_mm), _number(sheet.height_mm)
    names = {
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
    root = ET.Element("svg", names)
    _child(root, "title", id=f"{prefix}-title").text = sheet.title
    _child(root, "desc", id=f"{prefix}-desc").text = sheet.description
    return root


def _draw(node: ET.Element, item: Primitive, ratio: float) -> None:
    match item:
        case Line():
            _draw_line(node, item, ratio)
        case Polyline():
            _draw_polyline(node, item, ratio)
        case Circle():
            _draw_circle(node, item, ratio)
        case Arc():
            _child(node, "path", d=_arc_path(item), **_stroke(item.pen, ratio))
        case Silhouette():
            _draw_silhouette(node, item, ratio)
        case Text():
            _draw_text(node, item)


def _draw_line(node: ET.Element, item: Line, ratio: float) -> None:
    (x1, y1), (x2, y2) = item.start, item.end
    ends = {"x1": _number(x1), "y1": _number(y1), "x2": _number(x2), "y2": _number(y2)}
    _child(node, "line", **ends, **_stroke(item.pen, ratio))


def _draw_polyline(node: ET.Element, item: Polyline, ratio: float) -> None:
    tag = "polygon" if item.closed else "polyline"
    look = {"fill": _FILLS[item.fill], **_stroke(item.pen, ratio)}
    _child(node, tag, points=_points(item.points), **look)


def _draw_circle(node: ET.Element, item: Circle, ratio: float) -> None:
    x, y = item.centre
    place = {"cx": _number(x), "cy": _number(y), "r": _number(item.radius)}
    _child(node, "circle", **place, fill=_FILLS[item.fill], **_stroke(item.pen, ratio))


def _draw_silhouette(node: ET.Element, item: Silhouette, ratio: float) -> None:
    pen = PENS[item.pen]
    path = " ".join(f"M{_points(shape)}Z" for shape in item.shapes)
    doubled = {"stroke": pen.colour, "stroke-width": _number(2.0 * ratio * pen.width_mm)}
    _child(node, "path", d=path, **doubled)
    _child(node, "path", d=path, fill=SHEET)


def _draw_text(node: ET.Element, item: Text) -> None:
    x, y = _number(item.at[0]), _number(item.at[1])
    turn = {"transform": f"rotate({_number(-item.turn_deg)} {x} {y})"} if item.turn_deg else {}
    if item.backed:
        _child(node, "rect", **_backing(item), fill=SHEET, **turn)
    look = {"font-size": _number(item.size_mm), "text-anchor": item.anchor, "fill": INK}
    if 0 < item.strong < len(item.text):
        text = _child(node, "text", x=x, y=y, **look, **turn)
        text.set("xml:space", "preserve")  # the blank before the second run
        _run(text, item.text[: item.strong], item.size_mm, strong=True)
        _run(text, item.text[item.strong :], item.size_mm, strong=False)
        return
    whole = _room(item.text, item.size_mm, strong=bool(item.strong))
    text = _child(node, "text", x=x, y=y, **look, **whole, **turn)
    text.text = item.text


def _run(node: ET.Element, words: str, size_mm: float, *, strong: bool) -> None:
    _child(node, "tspan", **_room(words, size_mm, strong=strong)).text = words


def _room(words: str, size_mm: float, *, strong: bool) -> dict[str, str]:
    """Weight and width of a run of letters, kept when another font stands in."""
    room = text_width(words, size_mm) * (1.0 if strong else REGULAR_SHARE)
    kept = {"textLength": _number(room), "lengthAdjust": "spacingAndGlyphs"}
    return kept | ({"font-weight": "600"} if strong else {})


def _backing(item: Text) -> dict[str, str]:
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


def _arc_path(item: Arc) -> str:
    first, last = (_on_circle(item, angle) for angle in (item.from_deg, item.to_deg))
    large = int((item.to_deg - item.from_deg) % 360.0 > 180.0)
    radius = _number(item.radius)
    return f"M{_points((first,))}A{radius} {radius} 0 {large} 0 {_points((last,))}"


def _on_circle(item: Arc, angle_deg: float) -> Point:
    angle = radians(angle_deg)
    return (
        item.centre[0] + item.radius * cos(angle),
        item.centre[1] - item.radius * sin(angle),
    )


@cache
def _stroke(name: PenName, ratio: float) -> dict[str, str]:
    pen = PENS[name]
    look = {"stroke": pen.colour, "stroke-width": _number(ratio * pen.width_mm)}
    if pen.dashes:
        look["stroke-dasharray"] = " ".join(_number(ratio * dash) for dash in pen.dashes)
        look["stroke-linecap"] = "butt"
    return look


def _points(points: tuple[Point, ...]) -> str:
    return " ".join([f"{_number(x)},{_number(y)}" for x, y in points])


def _number(value: float) -> str:
    text = f"{value:.2f}".rstrip("0").rstrip(".")
    return "0" if text in {"-0", ""} else text


def _child(node: ET.Element, tag: str, **attributes: str) -> ET.Element:
    return ET.SubElement(node, tag, attributes)
