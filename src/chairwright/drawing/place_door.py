"""Plan of a doorway with the occupied chair on its way through it."""

from __future__ import annotations

from chairwright.chair.shape import Shape
from chairwright.drawing.compose import View, compose
from chairwright.drawing.dimensions import Units
from chairwright.drawing.place_door_way import (
    LEAF_MM,
    door_way,
    from_corridor,
    hands_at,
    hinge_at_mm,
    leaf_hit,
    leaf_ring,
    thickness_mm,
    through,
)
from chairwright.drawing.place_floor import legend_of, overlap_groups, swept_groups, way_ahead
from chairwright.drawing.place_hatch import cut_face
from chairwright.drawing.place_marks import Said, gap_mark, said_above, titled
from chairwright.drawing.place_pose import chair_at, outline_at, outline_of, ring_of
from chairwright.drawing.place_way import Way
from chairwright.drawing.scene import Arc, Dimension, Group, Polyline, Primitive
from chairwright.drawing.sheet import A5_PORTRAIT, Page, Sheet
from chairwright.figures.doors import door_corridor_mm
from chairwright.places.kinds import Door
from chairwright.places.outline import Outline

HANDS_MM = 50.0
"""Room for a hand on each side: the transportable chair of the EU rail rule 1300/2014, appendix M,
is 700 mm wide and 50 mm more on each side for hands (from memory, unverified)."""
_SIDE_MM = 420.0
_BEYOND_MM = 120.0
_FAR_WALL_MM = 100.0
_TOP_ROW_MM = 6.0
_WORDS = {"overlap_mm": "too tight here"}


def door_sheet(
    chair: Shape | Outline,
    door: Door,
    *,
    hands_mm: float = HANDS_MM,
    moves: bool = False,
    units: Units = "mm",
    page: Page = A5_PORTRAIT,
) -> Sheet:
    """Draw a doorway with the chair going straight through, or in from a corridor.

    Parameters
    ----------
    chair : Shape or Outline
        The occupied chair; of an outline nothing but the outline is drawn.
    door : Door
    hands_mm : float [mm]
        Room for a hand on each rim; 0 when no hand pushes.
    moves : bool
        Whether to look for moves to and fro where one steady turn is not enough; that can take
        seconds, once for each chair and door.
    units : {"mm", "in"}
    page : Page
        Largest sheet [mm].

    Returns
    -------
    Sheet

    Raises
    ------
    InputError
        When a size is not above zero.
    """
    outline = outline_of(chair)
    way = door_way(outline, door, hands_mm, moves=moves)
    told = said_of(outline, door, way, hands_mm, moves=moves)

    def build(scale: float) -> View:
        return _view(chair, door, way, told, hands_mm, scale, units, page)

    return compose(build, page, units)


def said_of(
    outline: Outline, door: Door, way: Way, hands_mm: float, *, moves: bool = False
) -> Said:
    """Verdict on a doorway and what it would need.

    Parameters
    ----------
    outline : Outline
    door : Door
    way : Way
    hands_mm : float [mm]
    moves : bool
        Whether moves to and fro were looked for.

    Returns
    -------
    Said
    """
    clear, corridor = door.clear_width_mm, from_corridor(door)
    sizes = f"Clear width {clear:.0f} mm, chair {outline.width:.0f} mm"
    notes = (f"{sizes}.{_hands(outline, door, hands_mm)}", *_hinge_note(door))
    if way.outcome == "wide":
        return Said("fails", "the chair is wider than the doorway.", (f"{sizes}.",))
    if way.outcome == "open":
        need = float(door_corridor_mm(outline.corners, clear)[0])
        tried = "were found" if moves else "were tried"
        least = f"One steady turn needs a corridor of {need:.0f} mm; there are {corridor:.0f} mm."
        words = f"one steady turn is not enough; no moves to and fro {tried}."
        return Said("not known", words, (least, *notes))
    if leaf_hit(door, way):
        words = "goes in only if the door opens further than 90 degrees."
        return Said("not known", words, ("The open leaf stands in the way.", *notes))
    if way.outcome == "moves":
        return Said("holds", f"goes in by {way.moves} moves to and fro, not in one turn.", notes)
    if corridor is None:
        each = (clear - outline.width) / 2
        return Said("holds", f"goes through, {each:.0f} mm to spare on each side.", notes)
    spare = f"{way.clearance_mm:.0f} mm to spare all the way."
    return Said("holds", f"goes in by one steady turn, {spare}", notes)


def _hands(outline: Outline, door: Door, hands_mm: float) -> str:
    if hands_mm <= 0.0:
        return ""
    need = outline.width + 2.0 * hands_mm
    fits = (
        "hands can stay on the rims" if need <= door.clear_width_mm else "take hands off the rims"
    )
    return f" With hands on the rims {need:.0f} mm: {fits}."


def _hinge_note(door: Door) -> tuple[str, ...]:
    told = door.approach_side is not None and from_corridor(door) is not None
    return () if told or door.swing == "none" else ("The hinges are drawn on the left.",)


def _view(
    chair: Shape | Outline,
    door: Door,
    way: Way,
    told: Said,
    hands_mm: float,
    scale: float,
    units: Units,
    page: Page,
) -> View:
    outline = outline_of(chair)
    left, right, top = _extent(outline, door, way)
    on_the_way = [outline_at(outline, pose) for pose in way.poses[1:]]
    fists = hands_at(outline, through(door), hands_mm) if way.outcome != "wide" else ()
    on_the_way += [Polyline(ring_of(fist), "hidden", closed=True) for fist in fists]
    groups = (
        _walls(door, left, right, scale),
        *swept_groups(way),
        _leaf(door),
        *chair_at(chair, way.poses[0]),
        Group("on-the-way", tuple(on_the_way)),
        *overlap_groups(way.overlaps, scale),
        *(gap_mark(gap, scale, units, _WORDS.get(gap.name, "clear")) for gap in way.gaps),
    )
    shown = tuple(group for group in groups if group.items)
    around = (
        way_ahead(outline, way.poses[0], scale),
        said_above(told, left, top + (_TOP_ROW_MM + 5.0) * scale, right - left, scale, page),
    )
    dimensions = _dimensions(outline, door, way, top, scale)
    words = _description(outline, door, told)
    hands_only = way.outcome in ("arc", "moves") and not leaf_hit(door, way)
    legend = legend_of(way, "hands hit here" if hands_only else "hits here")
    return View(titled("Plan", door.name, page), words, shown, dimensions, legend, around)


def _extent(outline: Outline, door: Door, way: Way) -> tuple[float, float, float]:
    """Left, right and upper end of what is drawn [mm]."""
    placed = [pose.place(outline.points) for pose in way.poses]
    left = min(float(each[:, 0].min()) for each in placed)
    top = max(float(each[:, 1].max()) for each in (*placed, *way.rings))
    right = door.clear_width_mm + _SIDE_MM
    if from_corridor(door) is not None:
        right = max(right, max(float(each[:, 0].max()) for each in placed) + _BEYOND_MM)
        return left - _BEYOND_MM, right, top + _BEYOND_MM
    leaf = thickness_mm(door) + door.clear_width_mm if door.swing == "push" else 0.0
    return -_SIDE_MM, right, max(top, leaf) + _BEYOND_MM


def _walls(door: Door, left: float, right: float, scale: float) -> Group:
    width, thick = door.clear_width_mm, thickness_mm(door)
    items: list[Primitive] = []
    for end, jamb in ((left, 0.0), (right, width)):
        face = ((end, 0.0), (jamb, 0.0), (jamb, thick / 2))
        items += cut_face(face, ((end, thick), (jamb, thick), (jamb, thick / 2)), scale)
    corridor = from_corridor(door)
    if corridor is not None:
        far = ((left, -corridor), (right, -corridor))
        low = ((left, -corridor - _FAR_WALL_MM), (right, -corridor - _FAR_WALL_MM))
        items += cut_face(far, low, scale)
    return Group("walls", tuple(items))


def _leaf(door: Door) -> Group:
    """The open leaf and the arc of its edge; a sliding leaf beside the opening."""
    hinge, width, thick = hinge_at_mm(door), door.clear_width_mm, thickness_mm(door)
    leaf = leaf_ring(door)
    if leaf is None:
        if door.swing == "none":
            return Group("leaf", ())
        west = hinge - width if hinge == 0.0 else hinge
        ring = ((west, thick), (west + width, thick), (west + width, thick + LEAF_MM),
                (west, thick + LEAF_MM))  # fmt: skip
        return Group("leaf", (Polyline(ring, "outline", closed=True, fill="sheet"),))
    level = thick if door.swing == "push" else 0.0
    first = {(True, True): 0.0, (True, False): 90.0, (False, True): 270.0, (False, False): 180.0}[
        (door.swing == "push", hinge == 0.0)
    ]
    swing = Arc((hinge, level), width, first, first + 90.0, "centre")
    return Group("leaf", (swing, Polyline(ring_of(leaf), "outline", closed=True, fill="sheet")))


def _dimensions(
    outline: Outline, door: Door, way: Way, top: float, scale: float
) -> tuple[Dimension, ...]:
    width, thick, corridor = door.clear_width_mm, thickness_mm(door), from_corridor(door)
    away = -(top - thick) / scale - _TOP_ROW_MM
    clear = Dimension("clear_width_mm", (0.0, thick), (width, thick), width, "clear width",
                      "parallel", away)  # fmt: skip
    first = way.poses[0]
    if corridor is None:
        low, high = float(outline.points[:, 1].min()), float(outline.points[:, 1].max())
        y, x = first.y_mm, first.x_mm
        ends = ((x - high, y), (x - low, y))
        return (clear, Dimension("overall_width_mm", *ends, high - low, "chair", "below"))
    left = min(float(pose.place(outline.points)[:, 0].min()) for pose in way.poses) - _BEYOND_MM
    across = Dimension("corridor_width_mm", (left, -corridor), (left, 0.0), corridor, "corridor",
                       "left")  # fmt: skip
    return (clear, across)


def _description(outline: Outline, door: Door, told: Said) -> str:
    corridor = from_corridor(door)
    how = "straight at it from below"
    if corridor is not None:
        how = f"along a corridor of {corridor:.0f} mm and turns left into it"
    swing = {"push": "is pushed open", "pull": "is pulled open", "slide": "slides", "none": ""}
    leaf = f" The door {swing[door.swing]}." if swing[door.swing] else " There is no door leaf."
    return (
        f"{door.name}: a doorway {door.clear_width_mm:.0f} mm clear, from above. "
        f"The chair comes {how}.{leaf} "
        f"The occupied chair is {outline.ahead + outline.behind:.0f} mm long and "
        f"{outline.width:.0f} mm wide. {told.whole}"
    )
