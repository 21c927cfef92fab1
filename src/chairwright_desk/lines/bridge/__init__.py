"""The way from the lines to the engineering: nothing else of the lines imports it.

All that comes back is plain: words, numbers, tuples.
"""

from __future__ import annotations

from chairwright.errors import InputError
from chairwright.line.load import SHIPPED
from chairwright_desk.lines.bridge.checked import (
    MOST_SECONDS,
    Checked,
    Told,
    checked_apart,
    checked_here,
)
from chairwright_desk.lines.bridge.heights import (
    HeightsAsked,
    HeightsShown,
    degrees,
    heights_pdf_of,
    shown,
)
from chairwright_desk.lines.bridge.holds import Holds, holds_of
from chairwright_desk.lines.bridge.texts import line_from, shipped_text

__all__ = [
    "MOST_SECONDS",
    "SHIPPED",
    "Checked",
    "HeightsAsked",
    "HeightsShown",
    "Holds",
    "InputError",
    "Told",
    "checked_apart",
    "checked_here",
    "degrees",
    "heights_pdf_of",
    "holds_of",
    "line_from",
    "shipped_text",
    "shown",
]
