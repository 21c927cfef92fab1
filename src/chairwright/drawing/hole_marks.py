"""Marks of holes: a hole, the one to use, the one used until now; front arrow, letters, key.

A mark is told by its form, never by a colour: the hole to use is a filled disc in a ring, the one
used until now a ring with a cross, every other one an open ring. Marks and letters keep their
size on paper, so a view is built for a scale.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise
from math import inf
from typing import Literal

from chairwright.drawing.compose import HOLE_SCALES
from chairwright.drawing.lettering import text_width
from chairwright.drawing.scene import Anchor, Circle, Group, Line, Point, Polyline, Primitive, Text
from chairwright.line.model import Line as ProductLine
from chairwright.line.model import Option

Use = Literal["open", "chosen", "before"]

OPEN_MM, DISC_MM, RING_MM, CROSS_MM = 1.15, 1.1, 2.1, 1.9
"""Radii on paper, and half the length of the cross."""
LETTER_MM = 2.8
NEAREST_MM = 2.45
"""Least distance of two rows of letters on paper: their height, and a little."""
ROW_MM, ARROW_MM = 4.0, 11.0
_KEY_GAP_MM = 2.6
_ARROW_ROOM_MM = ARROW_MM + 2 * _KEY_GAP_MM
_MARK_MM = 2 * RING_MM + 1.0
WORDS: dict[Use, str] = {"chosen": "use this", "before": "until now", "open": "others"}
IN_USE = "in use"


@dataclass(frozen=True)
class Codes:
    """Which options are to be marked.

    Parameters
    ----------
    line : ProductLine
    chosen : mapping of str to str
        Code of every choice, as it shall be.
    before : mapping of str to str
        Code of every choice, as it is; empty when nothing was set before.
    as_is : bool
        The drawing shows a chair as it is, not as it shall be.
    """

    line: ProductLine
    chosen: Mapping[str, str]
    before: Mapping[str, str]
    as_is: bool = False

    @property
    def state(self) -> str:
        """End of a drawing's name."""
        return ", as it is" if self.as_is else ""

    @property
    def set_words(self) -> str:
        """What comes before the code of a setting in a description."""
        return "set now" if self.as_is else "to be set"

    @property
    def axle_words(self) -> str:
        """What an axle does with its hole in a description."""
        return "is in" if self.as_is else "goes into"

    def option(self, choice: str) -> Option:
        """The option to use."""
        found = self.line.choices[choice]
        return found.options[found.codes[self.chosen[choice]]]

    def use(self, choice: str, code: str) -> Use:
        """How an option is marked."""
        if code == self.chosen[choice]:
            return "chosen"
        return "before" if code == self.before.get(choice) else "open"


def readable_scales(heights_mm: Iterable[float]) -> tuple[float, ...]:
    """Reductions at which the letters of neighbouring holes do not touch.

    Parameters
    ----------
    heights_mm : iterable of float
        Of the holes that have letters beside them.
    """
    levels = sorted(set(heights_mm))
    pitch = min((high - low for low, high in pairwise(levels)), default=inf)
    return tuple(each for each in HOLE_SCALES if pitch >= NEAREST_MM * each) or HOLE_SCALES[:1]


def hole_mark(at: Point, use: Use, scale: float) -> list[Primitive]:
    """Mark one hole.

    Parameters
    ----------
    at : Point [mm]
    use : {"open", "chosen", "before"}
    scale : float
        Real length over paper length.

    Returns
    -------
    list of Primitive
        In real mm.
    """
    (x, y), far = at, CROSS_MM * scale
    if use == "chosen":
        ring = Circle(at, RING_MM * scale, "outline", "sheet")
        return [ring, Circle(at, DISC_MM * scale, "thin", "ink")]
    hole = Circle(at, OPEN_MM * scale, "thin", "sheet")
    if use == "open":
        return [hole]
    return [
        hole,
        Line((x - far, y - far), (x + far, y + far), "person"),
        Line((x - far, y + far), (x + far, y - far), "person"),
    ]


def letters(at: Point, words: str, anchor: Anchor = "middle", *, strong: bool = False) -> Text:
    """A short word in the middle of a height.

    Parameters
    ----------
    at : Point [mm]
    words : str
    anchor : {"start", "middle", "end"}
    strong : bool
        Whether it is set in bold.
    """
    return Text(at, words, LETTER_MM, anchor, strong=len(words) if strong else 0, backed=True)


def level(at: Point, scale: float) -> Point:
    """Baseline of letters whose middle shall lie at a point."""
    return (at[0], at[1] - 0.33 * LETTER_MM * scale)


def heading(
    at: Point, codes: Codes, uses: Iterable[Use], scale: float, sense: float = 1.0
) -> Group:
    """Front arrow, and what the marks mean, in a row over a view.

    Parameters
    ----------
    at : Point [mm]
        Where the row begins, at the top of what lies below it.
    codes : Codes
    uses : iterable of {"open", "chosen", "before"}
        Those that are in the view.
    scale : float
    sense : {1.0, -1.0}
        1 when the front of the chair is to the reader's right.
    """
    left, y = at[0], at[1] + ROW_MM * scale
    start = left + _ARROW_ROOM_MM * scale
    marks = _key((start, y), _told(codes, uses), scale)
    return Group("heading", (*_front(left, y, scale, sense), *marks))


def heading_width(codes: Codes, uses: Iterable[Use]) -> float:
    """Width of such a row on paper [mm].

    Parameters
    ----------
    codes : Codes
    uses : iterable of {"open", "chosen", "before"}
    """
    words = _told(codes, uses).values()
    marks = sum(_MARK_MM + text_width(each, LETTER_MM) for each in words)
    return _ARROW_ROOM_MM + marks + _KEY_GAP_MM * (len(words) - 1)


def _told(codes: Codes, uses: Iterable[Use]) -> dict[Use, str]:
    found = set(uses)
    told = {use: words for use, words in WORDS.items() if use in found}
    if codes.as_is:
        told["chosen"] = IN_USE
    return told


def _front(left: float, y: float, scale: float, sense: float) -> list[Primitive]:
    ends = (left, left + ARROW_MM * scale)
    start, tip = ends if sense > 0 else ends[::-1]
    base, half = tip - 2.6 * scale * sense, 0.9 * scale
    head = Polyline(((tip, y), (base, y + half), (base, y - half)), "thin", closed=True, fill="ink")
    word = Text((sum(ends) / 2, y + 1.6 * scale), "front", LETTER_MM, "middle")
    return [Line((start, y), (base, y), "outline"), head, word]


def _key(at: Point, told: Mapping[Use, str], scale: float) -> list[Primitive]:
    items: list[Primitive] = []
    x, y = at
    for use, words in told.items():
        items += hole_mark((x + RING_MM * scale, y), use, scale)
        x += _MARK_MM * scale
        items.append(Text((x, y - 0.33 * LETTER_MM * scale), words, LETTER_MM))
        x += (text_width(words, LETTER_MM) + _KEY_GAP_MM) * scale
    return items
