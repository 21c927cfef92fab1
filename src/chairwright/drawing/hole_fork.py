"""The caster fork with its holes, and the caster housing with its height holes and stem setting."""

from __future__ import annotations

from collections.abc import Sequence
from math import cos, radians, sin

from chairwright.chair.shape_of import STEM_MM, TUBE_BEYOND_MM
from chairwright.drawing.compose import View, compose
from chairwright.drawing.dimensions import Units
from chairwright.drawing.hole_marks import (
    LETTER_MM,
    Codes,
    heading,
    hole_mark,
    letters,
    level,
    readable_scales,
)
from chairwright.drawing.limbs import capsule
from chairwright.drawing.scene import (
    Dimension,
    Group,
    Line,
    Point,
    Polyline,
    Primitive,
    Silhouette,
    Text,
)
from chairwright.drawing.sheet import Page, Sheet
from chairwright.drawing.side_chair import tube
from chairwright.line.choices import NONE
from chairwright.line.model import Option

FORK_PAGE = Page(84.0, 78.0)
HOUSING_PAGE = Page(104.0, 75.0)
BLADE_MM = 11.0
STUB_MM = 30.0
BODY_MM = 14.0
TUBE_MM = 17.0


def fork_sheet(codes: Codes, page: Page = FORK_PAGE, units: Units = "mm") -> Sheet:
    """Draw the caster fork with its stem upright.

    Parameters
    ----------
    codes : Codes
    page : Page
    units : {"mm", "in"}

    Returns
    -------
    Sheet
    """
    scales = readable_scales(hole.numbers["drop_mm"] for hole in _of_fork(codes))
    return compose(lambda scale: fork_view(codes, scale), page, units, scales)


def _of_fork(codes: Codes) -> list[Option]:
    """Holes of the chosen fork."""
    part = codes.option("fork").part
    return [each for each in codes.line.choices["fork"].options if each.part == part]


def housing_sheet(codes: Codes, page: Page = HOUSING_PAGE, units: Units = "mm") -> Sheet:
    """Draw the caster housing on its frame tube, seat rail level.

    Parameters
    ----------
    codes : Codes
    page : Page
    units : {"mm", "in"}

    Returns
    -------
    Sheet
    """
    heights = (each.numbers["z_mm"] for each in codes.line.choices["caster_housing"].options)
    scales = readable_scales(heights)
    return compose(lambda scale: housing_view(codes, scale), page, units, scales)


def hole_of(option: Option) -> str:
    """Number of a hole after the dash of its code, or of a height hole after its letter."""
    return option.code.rpartition("-")[2] if "-" in option.code else option.code[1:]


def fork_view(codes: Codes, scale: float) -> View:
    """The fork in real mm: stem upright, origin at the underside of the crown.

    Parameters
    ----------
    codes : Codes
    scale : float
        Real length over paper length.
    """
    chosen, spacer = codes.option("fork"), codes.option("stem_spacer")
    holes = _of_fork(codes)
    at, lift = (-chosen.numbers["trail_mm"], -chosen.numbers["drop_mm"]), _spacer_mm(spacer)
    uses = [codes.use("fork", hole.code) for hole in holes]
    lowest = min(-hole.numbers["drop_mm"] for hole in holes) - BLADE_MM
    left = at[0] - BLADE_MM - 3.0 * scale
    return View(
        name=f"Caster fork {chosen.part}, both sides: hole {hole_of(chosen)}{codes.state}",
        description=fork_words(codes, holes),
        groups=(
            _blades(holes, lift),
            *_spacer(spacer, lift, scale),
            Group("stem", (Line((0.0, lift + STUB_MM + 8.0), (0.0, lowest), "centre"),)),
            _fork_holes(holes, codes, scale),
        ),
        dimensions=(
            Dimension("fork_trail_mm", at, (0.0, at[1]), -at[0], "behind", "below"),
            Dimension("fork_drop_mm", (0.0, 0.0), at, -at[1], "below", "right", brief=True),
        ),
        legend=(),
        around=(heading((left, lift + STUB_MM + 8.0), codes, uses, scale),),
    )


def _spacer_mm(spacer: Option) -> float:
    return 0.0 if spacer.code == NONE else spacer.numbers["height_mm"]


def _blades(holes: Sequence[Option], lift: float) -> Group:
    drops = sorted(-hole.numbers["drop_mm"] for hole in holes)
    x = -holes[0].numbers["trail_mm"]
    high, low = (x, drops[-1]), (x, drops[0])
    crown = (0.0, -BLADE_MM)
    rings = (capsule(crown, high, BLADE_MM), capsule(high, low, BLADE_MM))
    flat = _block(BLADE_MM, -BLADE_MM, 0.0)
    housing = _block(BODY_MM, lift + 1.0, lift + STUB_MM)
    stem = _block(5.0, 0.0, lift + 1.0)
    return Group(
        "fork",
        (
            Polyline(housing, closed=True, fill="sheet"),
            Polyline(stem, "thin", closed=True, fill="sheet"),
            Silhouette((*rings, flat), "outline"),
        ),
    )


def _block(half: float, low: float, high: float) -> tuple[Point, ...]:
    return ((-half, low), (half, low), (half, high), (-half, high))


def _spacer(spacer: Option, lift: float, scale: float) -> tuple[Group, ...]:
    if not lift:
        return ()
    ring = Polyline(_block(BODY_MM - 3.0, 0.5, lift), closed=True, fill="sheet")
    words = letters(level((-BODY_MM - 1.5 * scale, lift / 2), scale), spacer.code, "end")
    return (Group("spacer", (ring, words)),)


def _fork_holes(holes: Sequence[Option], codes: Codes, scale: float) -> Group:
    items: list[Primitive] = []
    for hole in holes:
        at = -hole.numbers["trail_mm"], -hole.numbers["drop_mm"]
        use = codes.use("fork", hole.code)
        beside = at[0] - BLADE_MM - 1.6 * scale
        items += hole_mark(at, use, scale)
        number = letters(level((beside, at[1]), scale), hole_of(hole), "end")
        items.append(number)
    return Group("holes", tuple(items))


def fork_words(codes: Codes, holes: Sequence[Option]) -> str:
    """The drawing of the fork in words.

    Parameters
    ----------
    codes : Codes
    holes : sequence of Option
        Of the fork, the one nearest the crown first.
    """
    chosen, spacer = codes.option("fork"), codes.option("stem_spacer")
    between = "" if spacer.code == NONE else f" Spacer {spacer.code} sits above the crown."
    return (
        f"Caster fork {chosen.part} seen from the right, the front to the right, the stem upright; "
        f"the left one is alike. Holes from the crown down {' '.join(map(hole_of, holes))}. The "
        f"caster axle {codes.axle_words} hole {hole_of(chosen)}: "
        f"{chosen.numbers['drop_mm']:g} mm below the crown and "
        f"{chosen.numbers['trail_mm']:g} mm behind the stem.{between}"
    )


def housing_view(codes: Codes, scale: float) -> View:
    """The caster housing in frame axes [mm].

    Parameters
    ----------
    codes : Codes
    scale : float
        Real length over paper length.
    """
    chosen, setting = codes.option("caster_housing"), codes.option("stem_setting")
    options = codes.line.choices["caster_housing"].options
    holes = [e for e in options if e.numbers["ahead_mm"] == chosen.numbers["ahead_mm"]]
    x = codes.option("side_frame").numbers["caster_tube_x_mm"]
    zs = [each.numbers["z_mm"] for each in holes]
    crown = (x + chosen.numbers["ahead_mm"], chosen.numbers["z_mm"])
    uses = [codes.use("caster_housing", each.code) for each in holes]
    return View(
        name=f"Caster housing, both sides: {chosen.code}, stem {setting.code}{codes.state}",
        description=housing_words(codes, holes),
        groups=(
            _rail(x, scale),
            _tube(x, zs),
            *_other_side(options, chosen, x),
            _body(x, crown, setting.numbers["angle_deg"]),
            _height_holes(holes, codes, x, scale),
            _stem_words(crown, setting, scale),
        ),
        dimensions=(
            Dimension("housing_ahead_mm", (x, crown[1]), crown, abs(chosen.numbers["ahead_mm"]),
                      "ahead" if crown[0] > x else "behind", "below"),
            Dimension("crown_z_mm", (crown[0], 0.0), crown, -crown[1], "below", "right",
                      brief=True),
        ),
        legend=(),
        around=(heading((x - 60.0, 4.0 * scale), codes, uses, scale),),
    )  # fmt: skip


def _rail(x: float, scale: float) -> Group:
    words = Text((x - 60.0, 1.2 * scale), "top of seat rail", LETTER_MM)
    return Group("datum", (Line((x - 60.0, 0.0), (x + 72.0, 0.0), "centre"), words))


def _tube(x: float, zs: Sequence[float]) -> Group:
    low, high = min(zs) - TUBE_BEYOND_MM, max(zs) + TUBE_BEYOND_MM
    middle = Line((x, high + 14.0), (x, low - 6.0), "centre")
    return Group("tube", (tube((x, low), (x, high), TUBE_MM), middle))


def _other_side(options: Sequence[Option], chosen: Option, x: float) -> tuple[Group, ...]:
    """Where the housing would stand when bolted to the tube's other side, dashed."""
    z = chosen.numbers["z_mm"]
    found = {each.numbers["ahead_mm"] for each in options} - {chosen.numbers["ahead_mm"]}
    rings = tuple(
        Polyline(capsule((x + ahead, z + 19.0), (x + ahead, z + STEM_MM), BODY_MM), "hidden", True)
        for ahead in sorted(found)
    )
    return (Group("other-side", rings),) if rings else ()


def _body(x: float, crown: Point, angle_deg: float) -> Group:
    """Bracket, housing and stem; the stem leans by its setting."""
    lean = radians(angle_deg)

    def up(along: float) -> Point:
        return crown[0] - along * sin(lean), crown[1] + along * cos(lean)

    return Group(
        "housing",
        (
            tube((x, crown[1]), up(STEM_MM * 0.6), 9.0),
            tube(up(19.0), up(STEM_MM), BODY_MM),
            tube(crown, up(19.0), 6.0),
            Line(up(-22.0), up(STEM_MM + 24.0), "centre"),
        ),
    )


def _height_holes(holes: Sequence[Option], codes: Codes, x: float, scale: float) -> Group:
    items: list[Primitive] = []
    ahead = holes[0].numbers["ahead_mm"] > 0
    beside = (-1 if ahead else 1) * (TUBE_MM + 0.6 * scale)
    for hole in holes:
        at = x, hole.numbers["z_mm"]
        items += hole_mark(at, codes.use("caster_housing", hole.code), scale)
        place = level((x + beside, at[1]), scale)
        items.append(letters(place, hole_of(hole), "end" if ahead else "start"))
    return Group("holes", tuple(items))


def _stem_words(crown: Point, setting: Option, scale: float) -> Group:
    lean = radians(setting.numbers["angle_deg"])
    at = (crown[0] - (STEM_MM + 24.0) * sin(lean), crown[1] + STEM_MM + 24.0 + 1.0 * scale)
    return Group("stem-setting", (letters(at, f"stem {setting.code}"),))


def housing_words(codes: Codes, holes: Sequence[Option]) -> str:
    """The drawing of the housing in words.

    Parameters
    ----------
    codes : Codes
    holes : sequence of Option
        Height holes with the housing on the same side of the tube, top first.
    """
    chosen, setting = codes.option("caster_housing"), codes.option("stem_setting")
    options = codes.line.choices["caster_housing"].options
    ahead = chosen.numbers["ahead_mm"]
    side = "ahead of" if ahead > 0 else "behind"
    other = " Dashed: the other side of the tube." if len(options) > len(holes) else ""
    return (
        f"Caster housing on its frame tube, seen from the right, the front to the right, the seat "
        f"rail level; the left one is alike. The housing, {codes.set_words}: {side} the tube, "
        f"at height hole {hole_of(chosen)} of {' '.join(map(hole_of, holes))}, numbered "
        f"from the top and drawn at the height of the fork crown that each gives. Stem axis "
        f"{abs(ahead):g} mm {side} the tube, fork crown "
        f"{abs(chosen.numbers['z_mm']):g} mm below the top of the seat rail. Stem setting "
        f"{setting.code}: {setting.name}.{other}"
    )
