"""The back post with its places for back angle and back height, and the push handle."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, hypot, radians, sin

from chairwright.drawing.compose import HOLE_SCALES, View, compose
from chairwright.drawing.dimensions import Units
from chairwright.drawing.hole_marks import (
    LETTER_MM,
    Codes,
    Use,
    heading,
    hole_mark,
    letters,
    level,
)
from chairwright.drawing.limbs import between, capsule
from chairwright.drawing.scene import Group, Line, Point, Polyline, Primitive, Text
from chairwright.drawing.sheet import Page, Sheet
from chairwright.drawing.side_chair import TUBE_MM, tube
from chairwright.line.choices import NONE
from chairwright.line.model import Option

HEIGHT_PAGE, ANGLE_PAGE = Page(84.0, 63.0), Page(84.0, 78.0)
SMALL = 0.75
"""Marks of the back angle beside those of holes: their places lie near each other."""
ANGLES_AT_MM = 165.0
"""How far along the post the places of the back angle are drawn: the angles are true, their place
on the post is not."""
ABOVE_MM = 28.0
ARC_STEPS = 12
RAIL_MM = 120.0
BELOW_MM = 60.0
NEAR_MM = 20.0
"""A letter nearer than this to that of the chosen height is left out."""


def back_height_sheet(codes: Codes, page: Page = HEIGHT_PAGE, units: Units = "mm") -> Sheet:
    """Draw the top of the back post from the right, seat rail level.

    Parameters
    ----------
    codes : Codes
    page : Page
    units : {"mm", "in"}

    Returns
    -------
    Sheet
    """
    return compose(lambda scale: back_height_view(codes, scale), page, units, HOLE_SCALES)


def back_angle_sheet(codes: Codes, page: Page = ANGLE_PAGE, units: Units = "mm") -> Sheet:
    """Draw the foot of the back post from the right, seat rail level.

    Parameters
    ----------
    codes : Codes
    page : Page
    units : {"mm", "in"}

    Returns
    -------
    Sheet
    """
    return compose(lambda scale: back_angle_view(codes, scale), page, units, HOLE_SCALES)


def back_height_view(codes: Codes, scale: float) -> View:
    """The places of the back height and the push handle in frame axes [mm].

    Parameters
    ----------
    codes : Codes
    scale : float
        Real length over paper length.
    """
    chosen, handle = codes.option("back_height"), codes.option("push_handle")
    lean = codes.option("back_angle").numbers["angle_deg"]
    top = along(chosen.numbers["height_mm"], lean)
    heights = _shown(codes, "back_height")
    uses = [codes.use("back_height", each.code) for each in heights]
    most = along(heights[-1].numbers["height_mm"], lean)
    above = max(most[1], top[1] + handle.numbers.get("above_mm", 0.0) + 6.0 * scale)
    return View(
        name=f"Back post, both sides: height {chosen.code}{codes.state}",
        description=height_words(codes, heights),
        groups=(
            _top_of_post(heights, top, lean, scale),
            _handle(top, handle, radians(lean), scale),
            _heights(heights, codes, lean, scale),
        ),
        dimensions=(),
        legend=(),
        around=(heading((most[0] - 100.0, above + 3.0 * scale), codes, uses, scale),),
    )


def back_angle_view(codes: Codes, scale: float) -> View:
    """The places of the back angle in frame axes [mm].

    Parameters
    ----------
    codes : Codes
    scale : float
        Real length over paper length.
    """
    chosen, angles = codes.option("back_angle"), _shown(codes, "back_angle")
    uses = [codes.use("back_angle", each.code) for each in angles]
    end = along(ANGLES_AT_MM + ABOVE_MM, chosen.numbers["angle_deg"])
    return View(
        name=f"Back post, both sides: angle {chosen.code}{codes.state}",
        description=angle_words(codes, angles),
        groups=(_foot_of_post(end, scale), _angles(angles, codes, scale)),
        dimensions=(),
        legend=(),
        around=(heading((-70.0, end[1] + 3.0 * scale), codes, uses, scale),),
    )


def along(up_mm: float, angle_deg: float) -> Point:
    """Point of the post's front face at a height along it; origin at the seat corner [mm]."""
    lean = radians(angle_deg)
    return -up_mm * sin(lean), up_mm * cos(lean)


def _shown(codes: Codes, choice: str) -> list[Option]:
    """Standard places, the one to use and the one used until now, in rising order."""
    kept = {codes.chosen[choice], codes.before.get(choice)}
    options = codes.line.choices[choice].options
    found = [each for each in options if each.kind != "made to order" or each.code in kept]
    size = "height_mm" if choice == "back_height" else "angle_deg"
    return sorted(found, key=lambda each: each.numbers[size])


def _top_of_post(heights: Sequence[Option], top: Point, lean: float, scale: float) -> Group:
    """The post from a break up; where it could reach, dashed."""
    low = along(heights[0].numbers["height_mm"] - BELOW_MM, lean)
    reach = along(heights[-1].numbers["height_mm"], lean)
    return Group("post", (Line(top, reach, "hidden"), *_cut(low, top, scale)))


def _foot_of_post(end: Point, scale: float) -> Group:
    items: list[Primitive] = [
        tube((0.0, -TUBE_MM), (RAIL_MM, -TUBE_MM)),
        *_cut(end, (0.0, 0.0), scale),
        Line((0.0, 0.0), (0.0, ANGLES_AT_MM + ABOVE_MM), "centre"),
        Text((RAIL_MM, 1.2 * scale), "seat rail, level", LETTER_MM, "end"),
    ]
    return Group("post", tuple(items))


def _cut(broken: Point, end: Point, scale: float) -> list[Primitive]:
    """A tube with one whole end; at the other a break, as ISO 128 has it (from memory, unverified).

    Parameters
    ----------
    broken, end : Point [mm]
        Ends of the tube's middle line.
    scale : float
    """
    length = hypot(end[0] - broken[0], end[1] - broken[1])
    along_x, along_z = (end[0] - broken[0]) / length, (end[1] - broken[1]) / length

    def at(aside: float, up: float = 0.0) -> Point:
        return (
            broken[0] - aside * along_z + up * along_x,
            broken[1] + aside * along_x + up * along_z,
        )

    ring = capsule(broken, end, TUBE_MM)
    around_end = ring[: len(ring) // 2]
    far, step = TUBE_MM + 1.4 * scale, 1.0 * scale
    zigzag = (at(-far), at(-step), at(-step / 2, step), at(step / 2, -step), at(step), at(far))
    walls = Polyline((at(-TUBE_MM), *around_end, at(TUBE_MM)), fill="sheet")
    return [walls, Polyline(zigzag, "thin")]


def _handle(top: Point, handle: Option, lean: float, scale: float) -> Group:
    if handle.code == NONE:
        return Group("push-handle", ())
    behind, above = handle.numbers["behind_mm"], handle.numbers["above_mm"]
    neck = (top[0] - above * sin(lean), top[1] + above * cos(lean))
    grip = (neck[0] - behind, neck[1])
    items: list[Primitive] = [tube(top, neck, 9.0)] if above > 0 else []
    items += [tube(neck, grip, 9.0), tube(between(neck, grip, 0.3), grip, 15.0)]
    words = letters((grip[0], grip[1] + 15.0 + 1.4 * scale), handle.code)
    return Group("push-handle", (*items, words))


def _angles(angles: Sequence[Option], codes: Codes, scale: float) -> Group:
    items: list[Primitive] = []
    ends = (angles[0].numbers["angle_deg"], angles[-1].numbers["angle_deg"])
    swing = (ends[0] + (ends[1] - ends[0]) * step / ARC_STEPS for step in range(ARC_STEPS + 1))
    items.append(Polyline(tuple(along(ANGLES_AT_MM, lean) for lean in swing), "thin"))
    for number, each in enumerate(angles):
        degrees = each.numbers["angle_deg"]
        use = codes.use("back_angle", each.code)
        items += hole_mark(along(ANGLES_AT_MM, degrees), use, SMALL * scale)
        away = 4.0 * scale if number % 2 else -4.0 * scale
        at = level(along(ANGLES_AT_MM + away, degrees), scale)
        items.append(letters(at, each.code, strong=use == "chosen"))
    return Group("angles", tuple(items))


def _heights(heights: Sequence[Option], codes: Codes, lean: float, scale: float) -> Group:
    items: list[Primitive] = []
    chosen = codes.option("back_height").numbers["height_mm"]
    ordered: list[tuple[Use, Option]] = sorted(
        ((codes.use("back_height", each.code), each) for each in heights),
        key=lambda pair: pair[0] == "chosen",
    )
    for use, each in ordered:
        up = each.numbers["height_mm"]
        at = along(up, lean)
        items += hole_mark(at, use, scale)
        if use == "chosen" or abs(up - chosen) >= NEAR_MM:
            beside = level((at[0] + TUBE_MM + 1.6 * scale, at[1]), scale)
            items.append(letters(beside, each.code, "start", strong=use == "chosen"))
    return Group("heights", tuple(items))


def height_words(codes: Codes, heights: Sequence[Option]) -> str:
    """The drawing of the back height in words.

    Parameters
    ----------
    codes : Codes
    heights : sequence of Option
        Those that are drawn, in rising order.
    """
    height, handle = codes.option("back_height"), codes.option("push_handle")
    holds = "No push handles." if handle.code == NONE else (
        f"Push handle {handle.code}: grip {handle.numbers['behind_mm']:g} mm behind the top of the "
        f"post and {handle.numbers['above_mm']:g} mm above it."
    )  # fmt: skip
    return (
        "Top of the back post seen from the right, the front to the right; the left one is alike. "
        f"Heights from the lowest up {' '.join(each.code for each in heights)}; {codes.set_words}: "
        f"{height.code}, {height.name} above the seat rail along the post. {holds}"
    )


def angle_words(codes: Codes, angles: Sequence[Option]) -> str:
    """The drawing of the back angle in words.

    Parameters
    ----------
    codes : Codes
    angles : sequence of Option
        Those that are drawn, in rising order.
    """
    angle = codes.option("back_angle")
    return (
        "Foot of the back post seen from the right, the front to the right, the seat rail level; "
        "the left one is alike. Angles from upright to leaning back "
        f"{' '.join(each.code for each in angles)}; {codes.set_words}: {angle.code}, "
        f"{angle.name} to the seat rail."
    )
