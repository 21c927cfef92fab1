"""What a drawing is made of: a few flat primitives, in mm of the real chair or of the paper.

A view builds them in real millimetres with the second axis up; ``sheet.Placement`` turns them
into paper millimetres with the second axis down. The back end sees only the latter.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from chairwright.drawing.palette import PenName

Point = tuple[float, float]
Fill = Literal["none", "sheet", "ink"]
Anchor = Literal["start", "middle", "end"]


@dataclass(frozen=True)
class Line:
    """A straight line."""

    start: Point
    end: Point
    pen: PenName = "outline"


@dataclass(frozen=True)
class Polyline:
    """A run of straight lines; ``fill="sheet"`` hides what lies behind a closed one."""

    points: tuple[Point, ...]
    pen: PenName = "outline"
    closed: bool = False
    fill: Fill = "none"


@dataclass(frozen=True)
class Circle:
    """A circle."""

    centre: Point
    radius: float
    pen: PenName = "outline"
    fill: Fill = "none"


@dataclass(frozen=True)
class Arc:
    """Part of a circle, counter-clockwise from ``from_deg`` to ``to_deg`` as seen by the reader.

    Angles count from the reader's right, both in the scene and on paper.
    """

    centre: Point
    radius: float
    from_deg: float
    to_deg: float
    pen: PenName = "thin"


@dataclass(frozen=True)
class Silhouette:
    """One outline around several closed shapes that lie over each other."""

    shapes: tuple[tuple[Point, ...], ...]
    pen: PenName = "person"


@dataclass(frozen=True)
class Text:
    """One line of text; size is always in paper mm.

    Parameters
    ----------
    at : Point
        Anchor on the baseline.
    text : str
    size_mm : float
        Font size on paper [mm].
    anchor : {"start", "middle", "end"}
    turn_deg : float
        Counter-clockwise rotation as seen by the reader [deg].
    strong : int
        How many leading letters are semibold.
    backed : bool
        Clear the drawing behind the text.
    """

    at: Point
    text: str
    size_mm: float = 3.0
    anchor: Anchor = "start"
    turn_deg: float = 0.0
    strong: int = 0
    backed: bool = False


Primitive = Line | Polyline | Circle | Arc | Silhouette | Text


@dataclass(frozen=True)
class Group:
    """Primitives that belong together, under a name that a page can address."""

    name: str
    items: tuple[Primitive, ...]


@dataclass(frozen=True)
class Dimension:
    """A length between two points, drawn beside the view or parallel to what it measures.

    Parameters
    ----------
    figure : str
        Name of the figure that the dimension shows.
    start, end : Point
        Measured points in real mm.
    value_mm : float
        The number to print [mm].
    words : str
        Short name after the number.
    side : {"below", "left", "right", "parallel"}
        Where the dimension line lies; ``parallel`` runs along start to end.
    offset_mm : float
        Distance of a parallel dimension line from its points, on paper [mm]; positive to the
        right of the way from start to end as seen by the reader.
    brief : bool
        Whether the words are left out where they have no room between the arrows.
    """

    figure: str
    start: Point
    end: Point
    value_mm: float
    words: str
    side: Literal["below", "left", "right", "parallel"]
    offset_mm: float = 0.0
    brief: bool = False
