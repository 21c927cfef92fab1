"""The things with holes as pictures in which every hole can be chosen.

The background is the drawing of the papers without its marks; where each hole lies is said in the
same paper millimetres, so that a page can lay buttons over it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace

from chairwright.drawing.compose import HOLE_SCALES, View, compose
from chairwright.drawing.hole_back import ANGLES_AT_MM, along, back_angle_view, back_height_view
from chairwright.drawing.hole_fork import fork_view, housing_view
from chairwright.drawing.hole_marks import Codes
from chairwright.drawing.hole_plate import plate_view
from chairwright.drawing.scene import Circle, Group, Point
from chairwright.drawing.sheet import Page, Sheet
from chairwright.drawing.svg import to_svg
from chairwright.line.model import Option
from chairwright_desk.bench.bridge.kept import Kept
from chairwright_desk.bench.bridge.opened import State, Units
from chairwright_desk.bench.bridge.options import ChoiceShown, OptionShown
from chairwright_desk.bench.bridge.words import length_words

MARKS = ("holes", "heights", "angles")
"""Groups of the drawings that hold the marks of holes."""

SPACING_SHARE = 0.45
LARGEST_MM = 4.5
"""Half the side of a button on paper: less than half the way to the next hole, and no more than
this."""


@dataclass(frozen=True)
class Spot:
    """One hole.

    Parameters
    ----------
    code, label : str
        The label says where it lies, its state, and why it is refused.
    standing : {"chosen", "allowed", "refused"}
    reason : str
    x, y, left, top, size : float
        Middle, and corner and side of its button [paper mm].
    """

    code: str
    label: str
    standing: str
    reason: str
    x: float
    y: float
    left: float
    top: float
    size: float


@dataclass(frozen=True)
class HolePicture:
    """One thing with its holes.

    Parameters
    ----------
    choice, name, words, svg : str
        The svg is the background.
    width, height : float
        Of the paper [mm].
    spots : tuple of Spot
    """

    choice: str
    name: str
    words: str
    svg: str
    width: float
    height: float
    spots: tuple[Spot, ...]


PLATE, FORK, HOUSING, BACK = Page(150, 150), Page(90, 120), Page(120, 130), Page(110, 160)

ViewAt = Callable[[Codes, float], View]
PLACED: dict[str, tuple[ViewAt, Page, tuple[str, ...]]] = {
    "axle_hole": (
        lambda codes, scale: plate_view(codes, "right", scale), PLATE, ("axle_hole",)
    ),
    "fork": (fork_view, FORK, ("fork", "stem_spacer")),
    "caster_housing": (
        housing_view, HOUSING, ("caster_housing", "stem_setting", "side_frame")
    ),
    "back_height": (
        back_height_view, BACK, ("back_height", "back_angle", "push_handle")
    ),
    "back_angle": (back_angle_view, BACK, ("back_angle",)),
}  # fmt: skip
"""For each choice with a picture: the view, its paper, and the choices that it shows."""


@dataclass(frozen=True)
class Ground:
    """A thing as drawn, and where its holes lie, whatever is said of them.

    Parameters
    ----------
    sheet : Sheet
    svg : str
    holes : dict of str to (str, Point)
        By code: where it lies in words, and on paper.
    half : float
        Half the side of a button [paper mm].
    """

    sheet: Sheet
    svg: str
    holes: dict[str, tuple[str, Point]]
    half: float


_GROUNDS: Kept[Ground] = Kept(256)


def hole_picture(state: State, choice: ChoiceShown, units: Units) -> HolePicture | None:
    """One thing with its holes.

    Parameters
    ----------
    state : State
    choice : ChoiceShown
        From `options.choice_shown`.
    units : {"mm", "in"}

    Returns
    -------
    HolePicture or None
        None when the choice has no picture.
    """
    if choice.name not in PLACED:
        return None
    _, _, seen = PLACED[choice.name]
    key = (state.bench.key, choice.name, units, *(state.index[name] for name in seen))
    ground = _GROUNDS.of(key, lambda: _ground(state, choice.name, units))
    sheet, holes = ground.sheet, ground.holes
    spots = tuple(
        _spot(each, *holes[each.code], ground.half)
        for each in choice.options
        if each.code in holes
    )  # fmt: skip
    return HolePicture(
        choice.name,
        sheet.title,
        sheet.description,
        ground.svg,
        sheet.width_mm,
        sheet.height_mm,
        spots,
    )


def _ground(state: State, name: str, units: Units) -> Ground:
    sheet, svg = _background(state, name, units)
    options = state.bench.line.choices[name].options
    chosen = options[state.index[name]]
    shown = [option for option in options if _together(name, option, chosen)]
    places = [_place(state, option, sheet) for option in shown]
    holes = {
        option.code: (_where(option, name, units), at)
        for option, at in zip(shown, places, strict=True)
    }
    return Ground(sheet, svg, holes, _half(places))


def _background(state: State, name: str, units: Units) -> tuple[Sheet, str]:
    view, page, _ = PLACED[name]
    codes = Codes(state.bench.line, state.codes, {})
    sheet = compose(lambda scale: _unmarked(view(codes, scale)), page, units, HOLE_SCALES)
    return sheet, to_svg(sheet, f"holes-{name.replace('_', '-')}")


def _unmarked(view: View) -> View:
    """A view without the marks of its holes and without their key; the front arrow stays."""
    groups = tuple(_without_circles(group) if group.name in MARKS else group
                   for group in view.groups)  # fmt: skip
    around = tuple(replace(group, items=group.items[:3]) for group in view.around)
    return replace(view, groups=tuple(each for each in groups if each.items), around=around)


def _without_circles(group: Group) -> Group:
    return Group(group.name, tuple(i for i in group.items if not isinstance(i, Circle)))


def _together(name: str, option: Option, chosen: Option) -> bool:
    """Whether the picture of the chosen part, side or range shows this option too."""
    match name:
        case "axle_hole":
            return option.mounting == chosen.mounting
        case "fork":
            return option.part == chosen.part
        case "caster_housing":
            return option.numbers["ahead_mm"] == chosen.numbers["ahead_mm"]
        case _:
            return option.kind != "made to order" or option is chosen


def _place(state: State, option: Option, sheet: Sheet) -> Point:
    """Where an option lies on paper."""
    if sheet.placement is None:
        raise AssertionError(UNPLACED)
    return sheet.placement.point(_real(state, option))


UNPLACED = "a drawing of holes is to scale"


def _real(state: State, option: Option) -> Point:
    numbers = option.numbers
    if "drop_mm" in numbers:
        return -numbers["trail_mm"], -numbers["drop_mm"]
    if "ahead_mm" in numbers:
        return _chosen(state, "side_frame").numbers["caster_tube_x_mm"], numbers["z_mm"]
    if "height_mm" in numbers:
        lean = _chosen(state, "back_angle").numbers["angle_deg"]
        return along(numbers["height_mm"], lean)
    if "angle_deg" in numbers:
        return along(ANGLES_AT_MM, numbers["angle_deg"])
    return numbers["x_mm"], numbers["z_mm"]


def _chosen(state: State, name: str) -> Option:
    return state.bench.line.choices[name].options[state.index[name]]


def _half(places: Sequence[Point]) -> float:
    """Half the side of a button that does not reach into the next one."""
    least = min(
        (max(abs(x - u), abs(y - v)) for at, (x, y) in enumerate(places)
         for u, v in places[at + 1 :]),
        default=2.0 * LARGEST_MM,
    )  # fmt: skip
    return min(LARGEST_MM, SPACING_SHARE * least)


def _where(option: Option, name: str, units: Units) -> str:
    numbers = option.numbers
    if name == "axle_hole":
        x, z = numbers["x_mm"], numbers["z_mm"]
        along_words = f"{length_words(abs(x), units)} {'ahead' if x >= 0 else 'behind'}"
        return f"axle hole {option.code}, {along_words}, {length_words(abs(z), units)} below"
    if name == "fork":
        return f"fork hole {option.code}, {length_words(numbers['drop_mm'], units)} below the crown"
    if name == "caster_housing":
        below = length_words(abs(numbers["z_mm"]), units)
        return f"housing hole {option.code}, crown {below} below the seat rail"
    if name == "back_height":
        return f"back height {option.code}, {length_words(numbers['height_mm'], units)}"
    return f"back angle {option.code}, {option.name}"


STANDING = {"chosen": "now chosen", "allowed": "free", "refused": "not allowed"}


def _spot(each: OptionShown, where: str, at: Point, half: float) -> Spot:
    why = f": {each.reason}" if each.reason else ""
    x, y = (round(value, 2) for value in at)
    return Spot(
        code=each.code,
        label=f"{where}, {STANDING[each.standing]}{why}",
        standing=each.standing,
        reason=each.reason,
        x=x,
        y=y,
        left=round(x - half, 2),
        top=round(y - half, 2),
        size=round(2.0 * half, 2),
    )
