"""DXF: audited, in real millimetres, lengths as on the chair, no clock; not a pixel compared."""

from __future__ import annotations

import io
import subprocess
import sys
from functools import cache
from math import hypot
from typing import Any

import pytest
from ezdxf import filemanagement, units
from ezdxf.document import Drawing
from ezdxf.math import Vec2

from chairwright.chair.shape import Shape
from chairwright.drawing.palette import PENS
from chairwright.drawing.plan_view import plan_sheet
from chairwright.drawing.polar import polar_sheet
from chairwright.drawing.scene import Arc, Circle, Line, Point, Polyline, Silhouette, Text
from chairwright.drawing.sheet import Sheet
from chairwright.drawing.side_view import side_sheet
from chairwright.exchange.dxf import dxf_text
from chairwright.exchange.dxf_shapes import MASK, TEXT, layer_of
from tests.unit.drawing.shapes import average_adult

SHAPE = average_adult()
SHEETS = {"side": side_sheet, "plan": plan_sheet}
EXACT_MM = 1e-6


def read(text: str) -> Drawing:
    return filemanagement.read(io.StringIO(text))


@cache
def drawn(view: str) -> tuple[Sheet, Drawing]:
    sheet = SHEETS[view](SHAPE)
    return sheet, read(dxf_text(sheet))


def entities(view: str, kind: str, pen: str = "") -> list[Any]:
    space = drawn(view)[1].modelspace()
    return [
        each
        for each in space.query(kind)
        if not pen or each.dxf.layer == f"CW-{pen.replace('_', '-').upper()}"
    ]


def near(one: Any, other: Point) -> bool:
    return hypot(one[0] - other[0], one[1] - other[1]) < EXACT_MM


@pytest.mark.parametrize("view", SHEETS)
def test_it_is_audited_without_errors(view: str) -> None:
    _, document = drawn(view)
    audit = document.audit()
    assert (audit.errors, audit.fixes) == ([], [])
    assert document.units == units.MM
    assert document.dxfversion == "AC1024"


@pytest.mark.parametrize("view", SHEETS)
def test_every_kind_of_line_has_its_layer(view: str) -> None:
    _, document = drawn(view)
    names = {layer_of(pen) for pen in PENS} | {TEXT, MASK}
    layers = {layer.dxf.name for layer in document.layers}
    assert layers <= names | {"0", "Defpoints"}
    assert {each.dxf.layer for each in document.modelspace()} == layers - {"0", "Defpoints"}
    assert {each.dxf.layer for each in document.modelspace()} <= names
    hidden = document.layers.get("CW-HIDDEN")
    assert hidden.dxf.linetype == "CW-HIDDEN"
    assert hidden.dxf.lineweight in {18, 25}
    assert document.layers.get("CW-OUTLINE").dxf.linetype == "Continuous"


@pytest.mark.parametrize(
    ("view", "centre", "radius"),
    [
        ("side", (0.0, 303.0), 303.0),  # rear wheel of the shape
        ("side", (330.0, 76.0), 76.0),  # caster of the shape
        ("plan", (375.0, 215.0), 122.0),  # swing circle: stem and half the caster track
    ],
)
def test_circles_lie_where_the_chair_has_them(view: str, centre: Point, radius: float) -> None:
    if view == "plan":
        centre = (SHAPE.fork_crown[0], SHAPE.caster_track_mm / 2.0)
    found = [each for each in entities(view, "CIRCLE") if near(each.dxf.center, centre)]
    assert any(abs(each.dxf.radius - radius) < EXACT_MM for each in found)


@pytest.mark.parametrize(
    ("view", "length", "words"),
    [
        ("side", SHAPE.wheelbase_mm, "wheelbase"),
        ("side", 470.0, "seat, rear"),
        ("side", 500.0, "seat, front"),
        ("plan", SHAPE.seat_width_mm, "seat width"),
        ("plan", SHAPE.rear_track_mm, "rear track"),
        ("plan", SHAPE.overall_width_mm, "overall width"),
    ],
)
def test_a_dimension_line_is_as_long_as_its_number(view: str, length: float, words: str) -> None:
    lines = entities(view, "LINE", "dimension")
    assert any(abs((line.dxf.end - line.dxf.start).magnitude - length) < EXACT_MM for line in lines)
    assert f"{length:.0f} {words}" in {text.dxf.text for text in entities(view, "TEXT")}


def test_the_seat_in_plan_has_its_four_corners() -> None:
    rear, front, half = SHAPE.seat_corner[0], SHAPE.seat_front[0], SHAPE.seat_width_mm / 2.0
    wanted = [(rear, half), (front, half), (front, -half), (rear, -half)]
    rings = [
        [Vec2(point) for point in each.get_points("xy")] for each in entities("plan", "LWPOLYLINE")
    ]
    assert any(
        len(ring) == 4 and all(any(near(point, corner) for point in ring) for corner in wanted)
        for ring in rings
    )


@pytest.mark.parametrize("view", SHEETS)
def test_everything_of_the_scene_is_there(view: str) -> None:
    sheet, document = drawn(view)
    items = [item for group in sheet.groups for item in group.items]
    space = document.modelspace()
    for kind, entity in ((Line, "LINE"), (Circle, "CIRCLE"), (Arc, "ARC"), (Text, "TEXT")):
        assert len(space.query(entity)) == sum(isinstance(item, kind) for item in items), kind
    rings = sum(isinstance(item, Polyline) for item in items)
    persons = sum(isinstance(item, Silhouette) for item in items)
    assert len(space.query("LWPOLYLINE")) >= rings + persons


@pytest.mark.parametrize("view", SHEETS)
def test_every_line_of_the_scene_is_carried_back_to_the_chair(view: str) -> None:
    sheet, document = drawn(view)
    scale, (x0, y0) = sheet.placement.scale, sheet.placement.origin  # type: ignore[union-attr]
    lines = [item for group in sheet.groups for item in group.items if isinstance(item, Line)]
    for item, entity in zip(lines, document.modelspace().query("LINE"), strict=True):
        x, y = item.start
        assert near(entity.dxf.start, ((x - x0) * scale, (y0 - y) * scale))


def test_a_text_is_as_high_as_its_capitals_at_the_scale() -> None:
    sheet, _ = drawn("side")
    scale = sheet.placement.scale  # type: ignore[union-attr]
    number = next(text for text in entities("side", "TEXT") if "wheelbase" in text.dxf.text)
    # Letters of 3.2 mm on paper; a capital of Source Sans is 0.66 of that (read from the font).
    assert abs(number.dxf.height - 3.2 * 0.66 * scale) < EXACT_MM


def test_the_title_names_the_scale_that_the_letters_are_made_for() -> None:
    sheet, _ = drawn("side")
    scale = sheet.placement.scale  # type: ignore[union-attr]
    assert f"Side view 1:{scale:g}" in {text.dxf.text for text in entities("side", "TEXT")}


@pytest.mark.parametrize("view", SHEETS)
def test_the_same_sheet_gives_the_same_bytes_in_another_process(view: str) -> None:
    code = (
        "import hashlib, sys\n"
        "from chairwright.drawing.side_view import side_sheet\n"
        "from chairwright.drawing.plan_view import plan_sheet\n"
        "from chairwright.exchange.dxf import dxf_text\n"
        "from tests.unit.drawing.shapes import average_adult\n"
        f"text = dxf_text({view}_sheet(average_adult()))\n"
        "sys.stdout.write(text)\n"
    )
    first, second = (
        subprocess.run(
            [sys.executable, "-c", code],
            check=True,
            capture_output=True,
            text=True,
            env={"PYTHONHASHSEED": seed, "PYTHONPATH": ":".join(sys.path)},
        ).stdout
        for seed in ("1", "2")
    )
    assert first == second == dxf_text(SHEETS[view](SHAPE))


def test_inches_stand_after_the_millimetres() -> None:
    document = read(dxf_text(side_sheet(SHAPE, "in")))
    texts = {text.dxf.text for text in document.modelspace().query("TEXT")}
    assert "470 (18 1/2 in) seat, rear" in texts  # 470 / 25.4 = 18.504


def test_a_sheet_without_a_scale_is_refused() -> None:
    with pytest.raises(ValueError, match="must have a scale"):
        dxf_text(polar_sheet([0.0, 90.0, 180.0, 270.0], [10.0, 15.0, 20.0, 15.0], 60.0))


def test_a_person_is_one_outline_without_lines_inside() -> None:
    shape: Shape = SHAPE
    document = read(dxf_text(side_sheet(shape)))
    rings = list(document.modelspace().query('LWPOLYLINE[layer=="CW-PERSON"]'))
    groups = [g for g in side_sheet(shape).groups if g.name in ("person", "near-arm")]
    layers = sum(len(group.items) for group in groups)
    assert layers <= len(rings) < 3 * layers
