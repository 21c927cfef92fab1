"""Plan of a corridor corner with the occupied chair on its way round it."""

from __future__ import annotations

from chairwright.chair.shape import Shape
from chairwright.drawing.compose import View, compose
from chairwright.drawing.dimensions import Units
from chairwright.drawing.place_corner_way import corner_way
from chairwright.drawing.place_floor import legend_of, overlap_groups, swept_groups, way_ahead
from chairwright.drawing.place_hatch import cut_face
from chairwright.drawing.place_marks import Said, gap_mark, said_above, titled
from chairwright.drawing.place_pose import chair_at, outline_at, outline_of
from chairwright.drawing.place_way import Way
from chairwright.drawing.scene import Dimension, Group
from chairwright.drawing.sheet import A5_PORTRAIT, Page, Sheet
from chairwright.figures.corner import corner_best_arc_out_mm, corner_free_in_mm
from chairwright.places.kinds import Corner
from chairwright.places.outline import Outline

WALL_MM = 100.0
"""Thickness of walls as drawn; it means nothing."""
_BEYOND_MM = 120.0
_TOP_ROW_MM = 6.0
_WORDS = {
    "gap_inner_mm": "clear",
    "gap_in_mm": "clear",
    "gap_out_mm": "clear",
    "overlap_mm": "too tight here",
}


def corner_sheet(
    chair: Shape | Outline,
    corner: Corner,
    *,
    moves: bool = False,
    units: Units = "mm",
    page: Page = A5_PORTRAIT,
) -> Sheet:
    """Draw a corner of two corridors with the chair going round it to the left.

    Parameters
    ----------
    chair : Shape or Outline
        The occupied chair; of an outline nothing but the outline is drawn.
    corner : Corner
    moves : bool
        Whether to look for moves to and fro where one steady turn is not enough; that can take
        seconds, once for each chair and corner.
    units : {"mm", "in"}
    page : Page
        Largest sheet [mm].

    Returns
    -------
    Sheet

    Raises
    ------
    InputError
        When a width is not above zero.
    """
    outline = outline_of(chair)
    way = corner_way(outline, corner.width_in_mm, corner.width_out_mm, moves=moves)
    told = said_of(outline, corner, way, moves=moves)

    def build(scale: float) -> View:
        return _view(chair, corner, way, told, scale, units, page)

    return compose(build, page, units)


def said_of(outline: Outline, corner: Corner, way: Way, *, moves: bool = False) -> Said:
    """Verdict on a corner and what it would need.

    Parameters
    ----------
    outline : Outline
    corner : Corner
    way : Way
    moves : bool
        Whether moves to and fro were looked for.

    Returns
    -------
    Said
    """
    wide_in, wide_out = corner.width_in_mm, corner.width_out_mm
    if way.outcome == "arc":
        spare = f"{round(way.clearance_mm)} mm to spare all the way."
        return Said("holds", f"goes round in one steady turn, {spare}")
    if way.outcome == "moves":
        return Said("holds", f"goes round in {way.moves} moves to and fro, not in one turn.")
    if way.outcome == "wide":
        narrow = min(wide_in, wide_out)
        least = f"The chair is {outline.width:.0f} mm wide, the corridor {narrow:.0f} mm."
        return Said("fails", "the chair is wider than the corridor.", (least,))
    if way.outcome == "stuck":
        need = float(corner_free_in_mm(outline.corners, wide_out)[0])
        note = _needs("Whatever the moves, they need", "way in", need, wide_in)
        return Said("fails", "no way of moving gets the chair round this corner.", (note,))
    need = float(corner_best_arc_out_mm(outline.corners, wide_in)[0])
    tried = "were found" if moves else "were tried"
    note = "The way in is too narrow for one steady turn."
    if need < float("inf"):
        note = _needs("One steady turn needs", "way out", need, wide_out)
    return Said(
        "not known", f"one steady turn is not enough; no moves to and fro {tried}.", (note,)
    )


def _needs(how: str, what: str, need: float, there: float) -> str:
    return f"{how} a {what} of {need:.0f} mm; there are {there:.0f} mm."


def _view(
    chair: Shape | Outline,
    corner: Corner,
    way: Way,
    told: Said,
    scale: float,
    units: Units,
    page: Page,
) -> View:
    outline = outline_of(chair)
    left, top = _extent(outline, way, corner)
    groups = (
        _walls(corner, left, top, scale),
        *swept_groups(way),
        *chair_at(chair, way.poses[0]),
        Group("on-the-way", tuple(outline_at(outline, pose) for pose in way.poses[1:])),
        *overlap_groups(way.overlaps, scale),
        *(gap_mark(gap, scale, units, _WORDS[gap.name]) for gap in way.gaps),
    )
    shown = tuple(group for group in groups if group.items)
    width = corner.width_out_mm + WALL_MM - left
    around = (
        way_ahead(outline, way.poses[0], scale),
        said_above(told, left, top + (_TOP_ROW_MM + 5.0) * scale, width, scale, page),
    )
    dimensions = _dimensions(corner, left, top)
    words = _description(outline, corner, way, told)
    return View(titled("Plan", corner.name, page), words, shown, dimensions, legend_of(way), around)


def _extent(outline: Outline, way: Way, corner: Corner) -> tuple[float, float]:
    """Left and upper end of what is drawn [mm]."""
    placed = [pose.place(outline.points) for pose in way.poses]
    left = min(float(each[:, 0].min()) for each in placed)
    top = max(float(each[:, 1].max()) for each in placed)
    return left - _BEYOND_MM, max(top, corner.width_in_mm) + _BEYOND_MM


def _walls(corner: Corner, left: float, top: float, scale: float) -> Group:
    far, right, thick = -corner.width_in_mm, corner.width_out_mm, WALL_MM
    inner = ((left, 0.0), (0.0, 0.0), (0.0, top))
    inner_back = ((left, thick), (-thick, thick), (-thick, top))
    outer = ((left, far), (right, far), (right, top))
    outer_back = ((left, far - thick), (right + thick, far - thick), (right + thick, top))
    faces = (*cut_face(inner, inner_back, scale), *cut_face(outer, outer_back, scale))
    return Group("walls", faces)


def _dimensions(corner: Corner, left: float, top: float) -> tuple[Dimension, ...]:
    far, right = -corner.width_in_mm, corner.width_out_mm
    return (
        Dimension("width_in_mm", (left, far), (left, 0.0), -far, "way in", "left"),
        Dimension("width_out_mm", (0.0, top), (right, top), right, "way out", "parallel",
                  -_TOP_ROW_MM),
    )  # fmt: skip


def _description(outline: Outline, corner: Corner, way: Way, told: Said) -> str:
    return (
        f"{corner.name}: a corner of two corridors from above. The chair comes from the left in a "
        f"corridor of {corner.width_in_mm:.0f} mm and turns left into one of "
        f"{corner.width_out_mm:.0f} mm. "
        f"The occupied chair is {outline.ahead + outline.behind:.0f} mm long and "
        f"{outline.width:.0f} mm wide. {told.whole}"
    )
