"""Tornado chart: what each input does to one number, the widest bar first."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import hypot

from chairwright.drawing.lettering import text_width
from chairwright.drawing.scene import Group, Line, Point, Polyline, Primitive, Text
from chairwright.drawing.sheet import Sheet
from chairwright.drawing.svg import to_svg
from chairwright.figures.figure import Figure
from chairwright.tolerance.bars import Bar

WIDTH_MM = 160.0
LABEL_MM = 68.0
EDGE_MM = 3.0
ROW_MM = 6.0
BAR_MM = 3.4
TEXT_MM = 3.0
TITLE_MM = 3.6
HEAD_MM = 13.0
NUMBER_MM = 15.0
MOST_BARS = 10
LEGEND = "Open: the input is smaller. Filled: it is larger. By two standard uncertainties each."


@dataclass(frozen=True)
class Tornado:
    """What a chart shows.

    Parameters
    ----------
    figure : Figure
        For unit and digits.
    title : str
        The number with its spread, in words.
    bars : tuple of Bar
        The widest first.
    again : str
        What to measure again, in a sentence; may be empty.
    """

    figure: Figure
    title: str
    bars: tuple[Bar, ...]
    again: str


def tornado_chart(tornado: Tornado, *, prefix: str = "tornado") -> str:
    """Draw a tornado chart as SVG text.

    Parameters
    ----------
    tornado : Tornado
    prefix : str
        Start of every id in the drawing.

    Returns
    -------
    str
        SVG text; open and filled bars read without colour.

    Raises
    ------
    ValueError
        When the prefix cannot start an XML id.
    """
    return to_svg(tornado_sheet(tornado), prefix)


def tornado_sheet(tornado: Tornado) -> Sheet:
    """Lay a tornado chart out on a sheet in paper mm."""
    shown = tornado.bars[:MOST_BARS]
    rows = len(shown) + (len(tornado.bars) > MOST_BARS)
    foot = HEAD_MM + rows * ROW_MM + 3.0
    lines = [LEGEND, *_lines(tornado.again)]
    groups = (
        Group("head", (Text((EDGE_MM, 6.0), tornado.title, TITLE_MM, strong=len(tornado.title)),)),
        Group("bars", tuple(_bars(tornado, shown))),
        Group("words", tuple(_words(lines, foot + 2.0))),
    )
    return Sheet(
        width_mm=WIDTH_MM,
        height_mm=foot + 2.0 + 4.5 * len(lines) + 1.0,
        groups=groups,
        line_ratio=1.0,
        title=tornado.title,
        description=_description(tornado, shown),
    )


def _bars(tornado: Tornado, shown: Sequence[Bar]) -> Iterator[Primitive]:
    reach = max((max(abs(bar.less), abs(bar.more)) for bar in shown), default=0.0) or 1.0
    middle = (LABEL_MM + WIDTH_MM - EDGE_MM) / 2.0
    per_unit = (WIDTH_MM - EDGE_MM - LABEL_MM - 2.0 * NUMBER_MM) / 2.0 / reach
    for at, bar in enumerate(shown):
        y_mm = HEAD_MM + at * ROW_MM
        yield Text((EDGE_MM, y_mm + BAR_MM - 0.5), _short(bar.what.label), TEXT_MM)
        yield from _bar(tornado.figure, bar, middle, y_mm, per_unit)
    rest = tornado.bars[len(shown) :]
    if rest:
        y_mm = HEAD_MM + len(shown) * ROW_MM
        half = hypot(*(bar.width / 2.0 for bar in rest))
        words = f"{len(rest)} others together"
        yield Text((EDGE_MM, y_mm + BAR_MM - 0.5), words, TEXT_MM)
        number = f"± {half:.{_digits(tornado.figure)}f}"
        yield Text((middle + 2.0, y_mm + BAR_MM - 0.5), number, TEXT_MM)
    top, bottom = HEAD_MM - 2.0, HEAD_MM + len(shown) * ROW_MM - 1.0
    yield Line((middle, top), (middle, bottom), "centre")


def _bar(
    figure: Figure, bar: Bar, middle: float, y_mm: float, per_unit: float
) -> Iterator[Primitive]:
    for change, filled in ((bar.less, False), (bar.more, True)):
        end = middle + change * per_unit
        box: tuple[Point, ...] = (
            (middle, y_mm), (end, y_mm), (end, y_mm + BAR_MM), (middle, y_mm + BAR_MM),
        )  # fmt: skip
        yield Polyline(box, "thin", closed=True, fill="ink" if filled else "sheet")
    for change in {min(bar.less, bar.more), max(bar.less, bar.more)}:
        anchor = "end" if change < 0.0 else "start"
        x_mm = middle + change * per_unit + (-1.2 if change < 0.0 else 1.2)
        number = f"{change:+.{_digits(figure)}f}"
        if float(number) != 0.0:
            place = (x_mm, y_mm + BAR_MM - 0.5)
            yield Text(place, number, TEXT_MM, "end" if anchor == "end" else "start")


def _digits(figure: Figure) -> int:
    return figure.digits + (1 if figure.digits < 3 else 0)


def _short(label: str) -> str:
    """A label that fits its column."""
    room = LABEL_MM - EDGE_MM - 2.0
    if text_width(label, TEXT_MM) <= room:
        return label
    while text_width(f"{label}...", TEXT_MM) > room:
        label = label[:-1]
    return f"{label.rstrip()}..."


def _lines(words: str) -> list[str]:
    """Words in lines that fit the sheet."""
    lines: list[str] = []
    for word in words.split():
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, TEXT_MM) <= WIDTH_MM - 2.0 * EDGE_MM:
            lines[-1] = longer
        else:
            lines.append(word)
    return lines


def _words(lines: Sequence[str], y_mm: float) -> Iterator[Text]:
    for at, line in enumerate(lines):
        yield Text((EDGE_MM, y_mm + 4.5 * at + 2.5), line, TEXT_MM, strong=len(line) if at else 0)


def _description(tornado: Tornado, shown: Sequence[Bar]) -> str:
    digits = _digits(tornado.figure)
    told = "; ".join(
        f"{bar.what.label} {bar.less:+.{digits}f} to {bar.more:+.{digits}f}" for bar in shown
    )
    return f"What each input does, the widest first: {told}. {tornado.again}".strip()
