"""Marks of the place drawings: verdict and notes, narrow gaps, the way that is driven."""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot
from typing import Literal

from chairwright.drawing.dimensions import TEXT_MM, Units, dimension_text
from chairwright.drawing.lettering import text_width
from chairwright.drawing.scene import Anchor, Circle, Group, Line, Point, Polyline, Primitive, Text
from chairwright.drawing.sheet import Page

Word = Literal["holds", "holds on nominal values", "fails", "not known"]

_MARK_MM = 1.6
_HEAD_MM = 3.8
_NOTE_MM = 3.2
_ROW_MM = 4.6
_LEAST_WIDTH_MM = 96.0
_BESIDE_MM = 22.0
_TITLE_MM = 3.6
_BESIDE_TITLE_MM = 22.0
_TAIL_MM = 4.5
_ARROW_MM = 2.2
_WAY_MM = 3.4


@dataclass(frozen=True)
class Said:
    """What a drawing says in words: the verdict, one sentence for it, and notes below."""

    word: Word
    sentence: str
    notes: tuple[str, ...] = ()

    @property
    def whole(self) -> str:
        """Everything on one line, for a reader who cannot see the drawing."""
        return " ".join((f"{self.word.capitalize()}: {self.sentence}", *self.notes))


@dataclass(frozen=True)
class Gap:
    """Room between the chair and a wall at its narrowest.

    Parameters
    ----------
    name : str
    start, end : Point [mm]
        On the chair's way and on the wall.
    value_mm : float [mm]
    """

    name: str
    start: Point
    end: Point
    value_mm: float


def titled(view: str, name: str, page: Page) -> str:
    """Name of a view with that of its place, cut where the page is too narrow for it.

    Parameters
    ----------
    view, name : str
    page : Page

    Returns
    -------
    str
    """
    whole, room = f"{view}: {name}", page.width_mm - _BESIDE_TITLE_MM
    if text_width(whole, _TITLE_MM) <= room:
        return whole
    while whole and text_width(f"{whole}...", _TITLE_MM) > room:
        whole = whole[:-1]
    return f"{whole.rstrip()}..."


def said_above(
    said: Said, left: float, bottom: float, width: float, scale: float, page: Page
) -> Group:
    """Verdict and notes above a view, wrapped to its width.

    Parameters
    ----------
    said : Said
    left, bottom : float [real mm]
        Left end, and what the last line stays clear of.
    width : float [real mm]
        Of the view.
    scale : float
        Real over paper length.
    page : Page
        A narrow view takes more than its own width, as far as this has it.

    Returns
    -------
    Group
    """
    least = min(_LEAST_WIDTH_MM, page.width_mm - _BESIDE_MM)
    room = max(width / scale, least)
    strong = len(said.word)
    head = _wrapped(f"{said.word.capitalize()}: {said.sentence}", _HEAD_MM, room - 6.0)
    notes = [row for note in said.notes for row in _wrapped(note, _NOTE_MM, room)]
    up = bottom + (2.5 + _ROW_MM * (len(head) + len(notes) - 1)) * scale
    at = left + _MARK_MM * scale
    items = verdict_mark(said.word, (at, up + 0.33 * _HEAD_MM * scale), _MARK_MM * scale)
    for place, row in enumerate((*head, *notes)):
        large = place < len(head)
        x, y = left + (5.0 * scale if large else 0.0), up - place * _ROW_MM * scale
        bold = strong if place == 0 else 0
        items.append(Text((x, y), row, _HEAD_MM if large else _NOTE_MM, strong=bold))
    return Group("verdict", tuple(items))


def verdict_mark(word: Word, at: Point, radius: float) -> list[Primitive]:
    """Filled disc, half disc, open disc with bar, dotted disc.

    Parameters
    ----------
    word : str
    at : Point [real mm]
    radius : float [real mm]

    Returns
    -------
    list of Primitive
    """
    if word == "holds":
        return [Circle(at, radius, "outline", "ink")]
    if word == "holds on nominal values":
        return [Circle(at, radius), Polyline(_half_disc(at, radius), "thin", True, "ink")]
    if word == "fails":
        (x, y), reach = at, 0.72 * radius
        return [Circle(at, radius), Line((x - reach, y - reach), (x + reach, y + reach))]
    return [Circle(at, radius, "second_plumb"), Circle(at, 0.25 * radius, "thin", "ink")]


def _half_disc(at: Point, radius: float) -> tuple[Point, ...]:
    steps = [step / 12 for step in range(-12, 13)]
    return tuple(
        (at[0] - radius * (1 - step * step) ** 0.5, at[1] + radius * step) for step in steps
    )


def _wrapped(text: str, size_mm: float, room: float) -> list[str]:
    rows = [""]
    for word in text.split():
        longer = f"{rows[-1]} {word}".strip()
        if rows[-1] and text_width(longer, size_mm) > room:
            rows.append(word)
        else:
            rows[-1] = longer
    return rows


def gap_mark(
    gap: Gap, scale: float, units: Units, words: str = "", tail_mm: float = _TAIL_MM
) -> Group:
    """Two arrows from outside onto a narrow gap, its size beyond the wall.

    Parameters
    ----------
    gap : Gap
    scale : float
        Real over paper length.
    units : {"mm", "in"}
    words : str
        After the number.
    tail_mm : float [paper mm]
        How far the line goes on beyond the gap to the number.

    Returns
    -------
    Group
    """
    (x1, y1), (x2, y2) = gap.start, gap.end
    length = hypot(x2 - x1, y2 - y1) or 1.0
    along = ((x2 - x1) / length, (y2 - y1) / length)
    tail = tail_mm * scale
    first = (x1 - along[0] * _TAIL_MM * scale, y1 - along[1] * _TAIL_MM * scale)
    last = (x2 + along[0] * tail, y2 + along[1] * tail)
    number = dimension_text(gap.value_mm, units)
    items: list[Primitive] = [
        Line(first, last, "dimension"),
        arrow((x1, y1), along, _ARROW_MM * scale),
        arrow((x2, y2), (-along[0], -along[1]), _ARROW_MM * scale),
        _beyond(last, along, f"{number} {words}".strip(), len(number), scale),
    ]
    return Group(f"dimension-{gap.name.replace('_', '-')}", tuple(items))


def _beyond(at: Point, along: Point, text: str, strong: int, scale: float) -> Text:
    """A text that carries on where a line ends, in the line's own way."""
    side = 0 if abs(along[0]) < 0.4 else (1 if along[0] > 0 else -1)
    anchors: tuple[Anchor, ...] = ("middle", "start", "end")
    down = 0.33 * TEXT_MM * (1.0 if side else 1.0 - 2.6 * along[1])
    x, y = at[0] + along[0] * 0.8 * scale, at[1] + along[1] * 0.8 * scale - down * scale
    return Text((x, y), text, TEXT_MM, anchors[side], strong=strong, backed=True)


def arrow(tip: Point, along: Point, length: float) -> Polyline:
    """Filled arrow head, in real mm.

    Parameters
    ----------
    tip : Point
    along : Point
        Unit vector to which it points.
    length : float

    Returns
    -------
    Polyline
    """
    base = (tip[0] - along[0] * length, tip[1] - along[1] * length)
    half = 0.19 * length
    aside = (-along[1] * half, along[0] * half)
    ring = (tip, (base[0] + aside[0], base[1] + aside[1]), (base[0] - aside[0], base[1] - aside[1]))
    return Polyline(ring, "dimension", closed=True, fill="ink")


def way_mark(start: Point, end: Point, scale: float) -> list[Primitive]:
    """Arrow in the middle of the way that is driven.

    Parameters
    ----------
    start, end : Point [real mm]
    scale : float

    Returns
    -------
    list of Primitive
    """
    length = hypot(end[0] - start[0], end[1] - start[1]) or 1.0
    along = ((end[0] - start[0]) / length, (end[1] - start[1]) / length)
    return [Line(start, end, "thin"), arrow(end, along, _WAY_MM * scale)]
