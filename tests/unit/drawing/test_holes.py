"""Drawings of holes by their numbers. Expected places: from the line files, first principles."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache
from math import cos, radians, sin

import pytest

from chairwright.drawing.compose import View
from chairwright.drawing.dimensions import Units
from chairwright.drawing.hole_back import (
    back_angle_sheet,
    back_angle_view,
    back_height_sheet,
    back_height_view,
)
from chairwright.drawing.hole_fork import fork_sheet, fork_view, housing_sheet, housing_view
from chairwright.drawing.hole_marks import DISC_MM, OPEN_MM, RING_MM, Codes
from chairwright.drawing.hole_plate import axle_plate_sheet, plate_view
from chairwright.drawing.lettering import text_width
from chairwright.drawing.palette import INK, SHEET
from chairwright.drawing.scene import Circle, Line, Primitive, Text
from chairwright.drawing.sheet import Sheet
from chairwright.drawing.svg import to_svg
from chairwright.line.load import load_line
from chairwright.line.model import Line as ProductLine
from tests.oracles.lines import everyday_as_written, line_from

from .test_side_view import overlapping, texts

LINES = {name: load_line(name) for name in ("everyday", "heavy-duty", "light-rigid")}
SCALE = 5.0
Draw = Callable[[Codes], Sheet]
SHOWN: dict[str, tuple[Draw, ...]] = {
    "axle_hole": (lambda c: axle_plate_sheet(c, "left"), lambda c: axle_plate_sheet(c, "right")),
    "fork": (fork_sheet,),
    "stem_spacer": (fork_sheet,),
    "caster_housing": (housing_sheet,),
    "stem_setting": (housing_sheet,),
    "back_height": (back_height_sheet,),
    "back_angle": (back_angle_sheet, back_height_sheet),
    "push_handle": (back_height_sheet,),
}


def codes(line: ProductLine, before: dict[str, str] | None = None, **chosen: str) -> Codes:
    first = {name: choice.options[0].code for name, choice in line.choices.items()}
    return Codes(line, {**first, **chosen}, {**first, **before} if before else {})


def items(view: View) -> list[Primitive]:
    return [item for group in (*view.groups, *view.around) for item in group.items]


def marked(view: View, group: str) -> tuple[list[tuple[float, float]], list[tuple[float, float]]]:
    """Places of the disc in a ring, and of the open rings, in real mm."""
    (found,) = [each for each in view.groups if each.name == group]
    circles = [item for item in found.items if isinstance(item, Circle)]
    chosen = [item.centre for item in circles if item.fill == "ink"]
    rings = [item for item in circles if item.pen == "outline"]
    assert [ring.centre for ring in rings] == chosen
    return chosen, [c.centre for c in circles if c.fill == "sheet" and c not in rings]


def near(place: tuple[float, float]) -> object:
    return pytest.approx(place, abs=0.01)


def test_the_plate_has_every_hole_and_marks_the_chosen_one() -> None:
    chosen, others = marked(plate_view(codes(LINES["everyday"], axle_hole="E8"), "right", SCALE),
                            "holes")  # fmt: skip
    assert chosen == [near((55, -196))]
    assert len(others) == 6 * 9 - 1
    assert (min(others), max(others)) == (near((-45, -216)), near((80, -56)))


def test_the_left_plate_is_the_right_one_in_a_mirror() -> None:
    found = codes(LINES["everyday"], axle_hole="E8")
    right, left = (plate_view(found, side, SCALE) for side in ("right", "left"))
    assert marked(left, "holes")[0] == [near((-55, -196))]
    assert column_letters(right) == list("ABCDEF")
    assert column_letters(left) == list("FEDCBA")
    assert (arrow_sense(right), arrow_sense(left)) == (1, -1)
    assert "right side: hole E8" in right.name
    assert "left side: hole E8" in left.name


def column_letters(view: View) -> list[str]:
    (group,) = [each for each in view.groups if each.name == "letters"]
    found = [item for item in group.items if isinstance(item, Text) and item.text.isalpha()]
    return [item.text for item in sorted(found, key=lambda each: each.at[0])]


def arrow_sense(view: View) -> int:
    (heading,) = view.around
    (shaft,) = [item for item in heading.items if isinstance(item, Line) and item.pen == "outline"]
    return 1 if shaft.end[0] > shaft.start[0] else -1


def test_a_plate_turned_round_has_its_letters_the_other_way() -> None:
    """Turned about x = 50 mm, the columns at -25, 5 and 35 come to 125, 95 and 65."""
    line = LINES["heavy-duty"]
    view = plate_view(codes(line, axle_hole="A2R"), "right", SCALE)
    assert column_letters(view) == ["C", "B", "A"]
    assert marked(view, "holes")[0] == [near((125, -114.3))]
    assert "turned round" in view.name
    assert "turned round" in view.description
    assert "Columns from back to front C B A" in view.description


def test_a_closed_hole_is_not_drawn() -> None:
    data = everyday_as_written()
    data["axle_plates"][0]["closed"] = ["B3", "F9"]
    view = plate_view(codes(line_from(data), axle_hole="E8"), "right", SCALE)
    _, others = marked(view, "holes")
    assert len(others) == 6 * 9 - 3
    assert near((-20, -96)) not in others
    assert near((80, -216)) not in others


def test_the_hole_used_until_now_has_a_cross() -> None:
    line = LINES["everyday"]
    view = plate_view(codes(line, {"axle_hole": "C5"}, axle_hole="E8"), "right", SCALE)
    (holes,) = [each for each in view.groups if each.name == "holes"]
    crosses = [item for item in holes.items if isinstance(item, Line)]
    middles = {((c.start[0] + c.end[0]) / 2, (c.start[1] + c.end[1]) / 2) for c in crosses}
    assert len(crosses) == 2
    assert middles == {(5.0, -136.0)}
    words = {item.text for item in view.around[0].items if isinstance(item, Text)}
    assert words == {"front", "use this", "until now", "others"}


def test_the_holes_of_a_fork_lie_behind_the_stem_below_the_crown() -> None:
    view = fork_view(codes(LINES["everyday"], fork="FL-3"), SCALE)
    chosen, others = marked(view, "holes")
    assert chosen == [near((-55, -152))]
    assert others == [near((-55, -116)), near((-55, -134)), near((-55, -170))]
    assert [
        item.text for item in items(view) if isinstance(item, Text) and item.text.isdigit()
    ] == (["1", "2", "3", "4"])


def test_the_spacer_stands_between_housing_and_crown() -> None:
    view = fork_view(codes(LINES["everyday"], fork="FM-4", stem_spacer="Z12"), SCALE)
    (spacer,) = [each for each in view.groups if each.name == "spacer"]
    (block,) = [item for item in spacer.items if not isinstance(item, Text)]
    assert max(z for _, z in block.points) == 12.0  # type: ignore[union-attr]
    assert "Spacer Z12" in view.description


@pytest.mark.parametrize(("code", "x"), [("L4", 425 + 42), ("T4", 425 - 42)])
def test_the_housing_stands_ahead_of_its_tube_or_behind_it(code: str, x: float) -> None:
    """Long side frame: tube at 425 mm; height holes at 170, 200, 230 and 260 mm below."""
    line = LINES["everyday"]
    view = housing_view(
        codes(line, side_frame="SFL", caster_housing=code, stem_setting="N0"), SCALE
    )
    chosen, others = marked(view, "holes")
    assert chosen == [near((425, -260))]
    assert others == [near((425, -170)), near((425, -200)), near((425, -230))]
    ahead, below = view.dimensions
    assert (ahead.end, below.end) == (near((x, -260)), near((x, -260)))
    assert (ahead.value_mm, below.value_mm) == (42, 260)


def test_a_stem_set_forward_leans_its_top_forward() -> None:
    line = LINES["everyday"]
    found = codes(line, side_frame="SFL", caster_housing="L4", stem_setting="NF4")
    (body,) = [g for g in housing_view(found, SCALE).groups if g.name == "housing"]
    (axis,) = [item for item in body.items if isinstance(item, Line)]
    over = axis.end[1] + 260
    assert over > 90
    assert axis.end[0] - 467 == pytest.approx(over * sin(radians(4)) / cos(radians(4)))


def test_the_back_post_leans_by_its_angle_and_ends_at_its_height() -> None:
    view = back_height_view(codes(LINES["everyday"], back_angle="B8", back_height="P400"), SCALE)
    chosen, others = marked(view, "heights")
    lean = radians(8)
    assert chosen == [near((-400 * sin(lean), 400 * cos(lean)))]
    heights = (300, 325, 350, 375, 425, 450, 475, 500)
    assert others == [near((-up * sin(lean), up * cos(lean))) for up in heights]


def test_a_height_made_to_order_is_drawn_only_when_it_is_chosen() -> None:
    line = LINES["everyday"]
    _, others = marked(back_height_view(codes(line, back_height="MP410"), SCALE), "heights")
    assert len(others) == 9


def test_back_angles_are_drawn_as_they_are() -> None:
    view = back_angle_view(codes(LINES["everyday"], back_angle="B12"), SCALE)
    chosen, others = marked(view, "angles")
    ((x, z),) = chosen
    assert -x / z == pytest.approx(sin(radians(12)) / cos(radians(12)))
    assert [round(-x / z, 4) for x, z in others] == [0.0, 0.0699, 0.1405]  # tan 0, 4, 8 degrees


def test_the_chosen_hole_is_told_by_its_form() -> None:
    assert DISC_MM < RING_MM
    assert RING_MM > 1.5 * OPEN_MM


@cache
def every_sheet() -> tuple[tuple[str, Sheet], ...]:
    return tuple(drawn_sheets())


def drawn_sheets() -> Iterator[tuple[str, Sheet]]:
    for name, line in LINES.items():
        for choice, draws in SHOWN.items():
            last = line.choices[choice].options[-1].code
            for option in line.choices[choice].options:
                for before in (None, {choice: last}):
                    for draw in draws:
                        found = codes(line, before, **{choice: option.code})
                        yield f"{name} {choice} {option.code} {before}", draw(found)


def test_every_option_of_every_line_fits_at_a_scale_that_can_be_read() -> None:
    for told, sheet in every_sheet():
        assert sheet.title.rpartition("1:")[2] in ("1", "2", "3", "5", "7.5"), told
        assert sheet.width_mm <= 125, told
        assert sheet.height_mm <= 84, told


def test_no_letter_lies_on_another() -> None:
    for told, sheet in every_sheet():
        assert overlapping(texts(sheet)) == [], told


def test_drawings_are_black_and_white() -> None:
    for told, sheet in every_sheet():
        text = to_svg(sheet, "x")
        colours = {part[:7] for part in text.split('"') if part.startswith("#")}
        assert colours <= {INK, SHEET}, told


@pytest.mark.parametrize("units", ["mm", "in"])
def test_dimensions_say_where_the_hole_is(units: Units) -> None:
    """55 mm is 2 1/8 in and 196 mm 7 3/4 in to the nearest eighth."""
    sheet = axle_plate_sheet(codes(LINES["everyday"], axle_hole="E8"), units=units)
    told = {item.text for item in texts(sheet)}
    wanted = {"mm": ("55 ahead", "196 below"),
              "in": ("55 (2 1/8 in) ahead", "196 (7 3/4 in)")}[units]  # fmt: skip
    assert set(wanted) <= told


@pytest.mark.parametrize("units", ["mm", "in"])
def test_a_height_that_has_room_stands_between_its_arrows(units: Units) -> None:
    """From the seat rail to hole E8; with inches the word "below" gives way to the number."""
    sheet = axle_plate_sheet(codes(LINES["everyday"], axle_hole="E8"), units=units)
    assert sheet.placement is not None
    span = 196.0 / sheet.placement.scale
    (label,) = [item for item in texts(sheet) if item.text.startswith("196")]
    top, hole = (sheet.placement.point((0.0, z))[1] for z in (0.0, -196.0))
    half = text_width(label.text, label.size_mm) / 2
    assert text_width("196 (7 3/4 in)", label.size_mm) < span
    assert top < label.at[1] - half
    assert label.at[1] + half < hole


def test_descriptions_say_what_the_drawing_shows() -> None:
    found = codes(LINES["everyday"], axle_hole="E8", fork="FL-4", side_frame="SFL",
                  caster_housing="T3", stem_setting="NF2", back_angle="B4")  # fmt: skip
    plate = axle_plate_sheet(found).description
    assert "goes into hole E8: 55 mm ahead of the front of the back post and 196 mm below" in plate
    assert (
        "hole 4: 170 mm below the crown and 55 mm behind the stem" in fork_sheet(found).description
    )
    housing = housing_sheet(found).description
    assert "behind the tube, at height hole 3 of 1 2 3 4" in housing
    assert "2 degrees forward" in housing
    assert "Angles from upright to leaning back B0 B4 B8 B12; to be set: B4" in (
        back_angle_sheet(found).description
    )


def test_a_chair_as_it_is_is_not_told_as_an_instruction() -> None:
    line = LINES["everyday"]
    found = Codes(line, codes(line).chosen, {}, as_is=True)
    for draws in SHOWN.values():
        for draw in draws:
            sheet = draw(found)
            assert "as it is" in sheet.title
            assert not any(words in sheet.description for words in ("to be set", "goes into"))
            assert "use this" not in {item.text for item in texts(sheet)}


def test_same_holes_same_bytes() -> None:
    for draws in SHOWN.values():
        for draw in draws:
            one, two = (to_svg(draw(codes(load_line("everyday"))), "p") for _ in range(2))
            assert one == two
