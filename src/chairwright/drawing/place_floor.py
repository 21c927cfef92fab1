"""What all floor plans with a moving chair share: swept floor, overlaps, arrow, legend."""

from __future__ import annotations

from collections.abc import Iterable

import numpy as np

from chairwright.drawing.compose import LegendEntry
from chairwright.drawing.place_hatch import struck
from chairwright.drawing.place_marks import way_mark
from chairwright.drawing.place_pose import ring_of
from chairwright.drawing.place_way import Way
from chairwright.drawing.scene import Group, Polyline
from chairwright.mass_points import FloatArray
from chairwright.places.moves import Pose
from chairwright.places.outline import Outline

_ARROW_MM = (2.0, 11.0)


def swept_groups(way: Way) -> tuple[Group, ...]:
    """Outline of the floor swept, as one group or none."""
    rings = tuple(Polyline(ring_of(ring), "thin", closed=True) for ring in way.rings)
    return (Group("swept", rings),) if rings else ()


def overlap_groups(rings: Iterable[FloatArray], scale: float) -> tuple[Group, ...]:
    """Where chair and wall would lie over each other, as one group or none."""
    items = tuple(item for ring in rings for item in struck(ring_of(ring), scale))
    return (Group("overlap", items),) if items else ()


def way_ahead(outline: Outline, pose: Pose, scale: float) -> Group:
    """Arrow ahead of the first position, in the way that is driven.

    Parameters
    ----------
    outline : Outline
    pose : Pose
    scale : float
        Real over paper length.

    Returns
    -------
    Group
    """
    ends = np.array([[outline.ahead + each * scale, 0.0] for each in _ARROW_MM])
    start, end = ring_of(pose.place(ends))
    return Group("way", tuple(way_mark(start, end, scale)))


def legend_of(way: Way, struck_words: str = "hits here") -> tuple[LegendEntry, ...]:
    """Line kinds of the floor plans; the thick line's words can be given."""
    entries = [LegendEntry("chair and occupant", "person"), LegendEntry("on the way", "hidden")]
    if way.rings:
        entries.append(LegendEntry("floor that is swept", "thin"))
    if way.overlaps:
        entries.append(LegendEntry(struck_words, "hit"))
    return tuple(entries)
