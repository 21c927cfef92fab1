"""Numbers of the tapes large enough for a phone: one at a time, level, inside the drawing."""

from __future__ import annotations

from html import escape

from chairwright.drawing.dimensions import TEXT_MM
from chairwright.drawing.lettering import text_width
from chairwright.drawing.scene import Text
from chairwright.drawing.sheet import Sheet

LEAST_PX = 11.0
"""Smallest letters that are asked to be read on a screen."""
ROOM_PX = (326.0, 224.0)
"""What a phone of 360 px leaves for the drawing above the fields: width, height."""
_BOTH = " left"


def natural_px(sheet: Sheet) -> tuple[float, float]:
    """Width and height of the drawing at which every number on it can be read [px].

    Parameters
    ----------
    sheet : Sheet
    """
    each = LEAST_PX / TEXT_MM
    return (sheet.width_mm * each, sheet.height_mm * each)


def large_numbers(sheet: Sheet) -> dict[str, str]:
    """Make the number of every tape once more, to be read while the whole drawing fits a phone.

    Parameters
    ----------
    sheet : Sheet
        With a group ``dimension-NAME`` for each tape.

    Returns
    -------
    dict
        SVG text element by name of the group.
    """
    share = max(sheet.width_mm / ROOM_PX[0], sheet.height_mm / ROOM_PX[1])
    size = LEAST_PX * share
    found = {}
    for group in sheet.groups:
        text = next((each for each in group.items if isinstance(each, Text)), None)
        if text is not None and group.name.startswith("dimension-"):
            found[group.name] = _large(text, size, sheet)
    return found


def _large(text: Text, size: float, sheet: Sheet) -> str:
    words = text.text if text.text.endswith(_BOTH) else text.text[: text.strong]
    half = text_width(words, size) / 2.0 + 1.0
    x = min(max(_middle(text), half), sheet.width_mm - half)
    y = min(max(text.at[1], size), sheet.height_mm - 0.3 * size)
    place = f'x="{x:.2f}" y="{y:.2f}" font-size="{size:.2f}" text-anchor="middle"'
    return f'<text class="large" {place} aria-hidden="true">{escape(words)}</text>'


def _middle(text: Text) -> float:
    width = 0.0 if text.turn_deg else text_width(text.text, text.size_mm)
    return text.at[0] + {"start": 0.5, "middle": 0.0, "end": -0.5}[text.anchor] * width
