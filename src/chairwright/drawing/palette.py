"""Ink, pens and line kinds; every line also reads without its colour.

Line kinds follow ISO 128 (continuous, dashed, chain) and line widths its series 0.18, 0.25,
0.35, 0.5 mm; the standards' numbers are from memory, unverified.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

INK = "#1d2b36"
SHEET = "#ffffff"
ACCENT = "#0b6e6e"
CAUTION = "#9a4f00"
SECOND = "#2a5d9f"

FONT_FAMILY = (
    "'Source Sans Pro', 'Source Sans 3', 'Liberation Sans Narrow', 'Arial Narrow', "
    "'DejaVu Sans Condensed', 'Noto Sans', Arial, sans-serif"
)
"""Narrow ones stand in first: some programs do not keep a text to its ``textLength``."""

PenName = Literal[
    "outline",
    "person",
    "hidden",
    "centre",
    "thin",
    "dimension",
    "plumb",
    "tipping_rear",
    "tipping_forward",
    "second",
    "second_plumb",
    "hit",
]


@dataclass(frozen=True)
class Pen:
    """How a line is drawn.

    Parameters
    ----------
    width_mm : float
        Line width on paper [mm].
    colour : str
        Hexadecimal colour.
    dashes : tuple of float
        Dash and gap lengths on paper [mm]; empty for a continuous line.
    """

    width_mm: float
    colour: str = INK
    dashes: tuple[float, ...] = ()


PENS: dict[PenName, Pen] = {
    "outline": Pen(0.5),
    "person": Pen(0.35),
    "hidden": Pen(0.25, dashes=(2.0, 1.0)),
    "centre": Pen(0.18, dashes=(4.5, 0.8, 0.5, 0.8)),
    "thin": Pen(0.25),
    "dimension": Pen(0.18),
    "plumb": Pen(0.5, ACCENT),
    "tipping_rear": Pen(0.5, CAUTION, (3.2, 1.2)),
    "tipping_forward": Pen(0.5, SECOND, (3.2, 0.9, 0.6, 0.9)),
    "second": Pen(0.4, SECOND, (2.2, 1.1)),
    "second_plumb": Pen(0.5, SECOND, (0.7, 1.1)),
    "hit": Pen(1.0),
}
