"""Several small drawings of one size and scale, to stand in a row."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from chairwright.drawing.scene import Group, Line
from chairwright.drawing.sheet import Sheet, groups_box, shifted

SCALES = (12.5, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0)
_MARGIN_MM = 0.8
_LINE_RATIO = 0.6


@dataclass(frozen=True)
class Small:
    """One small drawing before it is placed, in paper mm.

    Parameters
    ----------
    name, words : str
        Title, and what it shows for readers who cannot see it.
    groups : tuple of Group
    anchor_mm : float
        What lies above each other in the row, from the drawing's own origin [mm].
    """

    name: str
    words: str
    groups: tuple[Group, ...]
    anchor_mm: float


@dataclass(frozen=True)
class DrawnRow:
    """Drawings of one size, and their scale as real over paper length."""

    sheets: tuple[Sheet, ...]
    scale: float


def drawn_row(
    make: Callable[[float], Sequence[Small]],
    width_mm: float,
    height_mm: float,
    *,
    on_floor: bool = False,
) -> DrawnRow:
    """Place drawings at the largest scale of the series at which each fits.

    Parameters
    ----------
    make : callable
        Gives the drawings for a scale.
    width_mm, height_mm : float [mm]
        Largest size of one drawing on paper.
    on_floor : bool
        Draw a floor line through all the width at the drawings' own level 0.

    Returns
    -------
    DrawnRow
        At the smallest scale of the series when none fits.
    """
    row = _placed(make(SCALES[-1]), SCALES[-1], on_floor)
    for scale in SCALES:
        tried = _placed(make(scale), scale, on_floor)
        first = tried.sheets[0]
        if first.width_mm <= width_mm and first.height_mm <= height_mm:
            return tried
    return row


def _placed(smalls: Sequence[Small], scale: float, on_floor: bool) -> DrawnRow:
    boxes = [groups_box(small.groups) for small in smalls]
    anchors = [small.anchor_mm for small in smalls]
    left = min(box[0] - x for box, x in zip(boxes, anchors, strict=True)) - _MARGIN_MM
    right = max(box[2] - x for box, x in zip(boxes, anchors, strict=True)) + _MARGIN_MM
    top = min(box[1] for box in boxes) - _MARGIN_MM
    size = right - left, max(box[3] for box in boxes) + _MARGIN_MM - top
    floor = (Group("floor", (Line((0.0, -top), (size[0], -top)),)),) if on_floor else ()
    sheets = (
        Sheet(
            small.name,
            small.words,
            *size,
            (*floor, *(shifted(group, -small.anchor_mm - left, -top) for group in small.groups)),
            _LINE_RATIO,
        )
        for small in smalls
    )
    return DrawnRow(tuple(sheets), scale)
