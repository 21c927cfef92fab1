"""Ramp and cross slope: drawn angles are the figures; the device grounds by geometry."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from math import atan, cos, degrees, hypot, radians, sin, tan

import pytest

from chairwright.chair.shape import Shape
from chairwright.drawing.dimensions import Units
from chairwright.drawing.place_cross import cross_slope_sheet, edge_at_com_mm, tip_sideways_deg
from chairwright.drawing.place_ramp import ramp_sheet
from chairwright.drawing.place_ramp_stand import (
    Facing,
    contact_pitch_deg,
    device_clearance_mm,
    grounds_before_mm,
    margins_deg,
    stand_on,
)
from chairwright.drawing.scene import Line, Polyline
from chairwright.drawing.sheet import A5_LANDSCAPE, A5_PORTRAIT, Page, Sheet
from chairwright.drawing.svg import to_svg
from chairwright.places.kinds import CrossSlope, Ramp
from chairwright.places.model import Slope
from tests.unit.chair.seated import seated

from .place_scenes import group, overlapping, scale_of, texts, words
from .shapes import ALL, average_adult, tall_adult

EXACT = 1e-6


def ramp(one_in: float = 12.0, rise: float = 400.0, name: str = "front door") -> Ramp:
    return Ramp(name=name, rise_mm=rise, run_mm=rise * one_in)


def drawn_deg(sheet: Sheet) -> dict[str, float]:
    """Angle of each line to the tipping edges from the plumb line, as drawn; right positive."""
    lines = [item for item in group(sheet, "balance").items if isinstance(item, Line)]
    (plumb,) = [line for line in lines if line.pen == "plumb"]
    assert plumb.start[0] == pytest.approx(plumb.end[0], abs=1e-9)
    found: dict[str, float] = {}
    for line in lines:
        if line.pen in ("tipping_rear", "tipping_forward"):
            assert line.start == plumb.start
            across, down = line.end[0] - line.start[0], line.end[1] - line.start[1]
            found[line.pen] = degrees(atan(across / down))
    return found


@pytest.mark.parametrize("one_in", [6.0, 12.0, 20.0])
@pytest.mark.parametrize("facing", ["up", "down"])
def test_drawn_angles_are_the_figures_less_the_slope(one_in: float, facing: Facing) -> None:
    made = seated()
    slope = degrees(atan(1.0 / one_in)) * (1.0 if facing == "up" else -1.0)
    rear = made.figures["tip_rear_locked_deg"] - slope
    front = made.figures["tip_forward_deg"] + slope
    sheet = ramp_sheet(made.shape, ramp(one_in), facing=facing)
    angles = drawn_deg(sheet)
    assert angles["tipping_rear"] == pytest.approx(-rear, abs=EXACT)
    assert angles["tipping_forward"] == pytest.approx(front, abs=EXACT)
    shown = words(sheet, "margins")
    assert shown == f"{rear:.1f}° to tip back {front:.1f}° to tip forward"
    left = rear if facing == "up" else front
    assert f"{left:.1f}° left before it tips" in words(sheet, "verdict") or left <= 0.0
    assert words(sheet, "slope") == f"slope 1:{one_in:g}, {abs(slope):.1f}°"


def test_worse_takes_the_smaller_margin() -> None:
    for make in ALL:
        shape = make()
        up, down = margins_deg(shape, ramp().slope_deg)
        title = ramp_sheet(shape, ramp()).title
        assert title.startswith(f"Side view, {'up' if up <= down else 'down'} the ramp")


@pytest.mark.parametrize(
    ("one_in", "spread", "word"),
    [(12.0, 0.0, "Holds: "), (12.0, 9.0, "Holds on nominal values: "), (3.0, 0.0, "Fails: ")],
)
def test_verdict_follows_margin_and_spread(one_in: float, spread: float, word: str) -> None:
    # average adult: 13.0 degrees to tip back; 1:12 is 4.8, 1:3 is 18.4 degrees
    sheet = ramp_sheet(average_adult(), ramp(one_in), facing="up",
                       spreads={"tip_rear_locked_deg": spread})  # fmt: skip
    told = words(sheet, "verdict")
    assert told.startswith(word)
    assert ("spread" in told) is bool(spread)


@pytest.mark.parametrize("facing", ["up", "down"])
def test_all_wheels_stand_on_the_ramp(facing: Facing) -> None:
    shape, slope = average_adult(), 7.0
    stand = stand_on(shape, slope, facing)
    sign = 1.0 if facing == "up" else -1.0
    for place, radius in ((shape.rear_axle, 303.0), (shape.caster_axle, 76.0)):
        x, z = stand.place(place)
        off = z * cos(radians(slope)) - sign * x * sin(radians(slope))
        assert off == pytest.approx(radius, abs=EXACT)
    if facing == "up":
        assert stand.place(shape.rear_axle)[1] == pytest.approx(303.0, abs=EXACT)
    else:
        assert stand.place((330.0, 0.0))[0] < 0.0


def test_device_grounds_where_pitch_and_slope_are_equal() -> None:
    made = seated()
    pitch = made.figures["pitch_to_anti_tip_deg"]
    assert contact_pitch_deg(made.shape) == pytest.approx(pitch, abs=EXACT)
    assert device_clearance_mm(made.shape, pitch) == pytest.approx(0.0, abs=EXACT)
    assert device_clearance_mm(made.shape, pitch - 0.5) > 0.0
    assert device_clearance_mm(made.shape, pitch + 0.5) < 0.0
    assert grounds_before_mm(made.shape, pitch - 0.5) is None


@pytest.mark.parametrize("make", [average_adult, tall_adult])
@pytest.mark.parametrize("more_deg", [1.0, 4.0])
def test_place_of_grounding_by_geometry(make: Callable[[], Shape], more_deg: float) -> None:
    shape = make()
    pitch = radians(contact_pitch_deg(shape))
    slope = pitch + radians(more_deg)
    before = grounds_before_mm(shape, degrees(slope))
    assert before is not None
    axle = shape.rear_axle[1]

    def placed(point: tuple[float, float]) -> tuple[float, float]:
        x, up = point[0], point[1] - axle
        return (x * cos(pitch) - up * sin(pitch) - before, x * sin(pitch) + up * cos(pitch) + axle)

    assert shape.anti_tip_wheel is not None
    assert placed(shape.anti_tip_wheel)[1] == pytest.approx(shape.anti_tip_radius_mm, abs=EXACT)
    x, z = placed(shape.caster_axle)
    off = z * cos(slope) - x * sin(slope)
    assert off == pytest.approx(shape.caster_radius_mm, abs=EXACT)
    assert before > axle * tan(slope / 2)  # the rear wheel has not come to the ramp
    told = words(ramp_sheet(shape, ramp(1.0 / tan(slope)), facing="up"), "verdict")
    assert f"with the rear axle {before:.0f} mm before it" in told


def test_device_in_the_floor_is_drawn_and_told() -> None:
    shape = average_adult()
    steep = ramp(5.0)
    sheet = ramp_sheet(shape, steep, facing="up")
    clear = device_clearance_mm(shape, steep.slope_deg)
    assert clear < 0.0
    pens = {item.pen for item in group(sheet, "overlap").items if isinstance(item, Polyline)}
    assert pens == {"hit"}
    shown = words(sheet, "dimension-device-clearance-mm")
    assert shown == f"{round(-clear)} anti-tip device grounds"
    gentle = ramp_sheet(shape, ramp(40.0), facing="up")
    assert "overlap" not in {each.name for each in gentle.groups}
    clear = device_clearance_mm(shape, ramp(40.0).slope_deg)
    shown = words(gentle, "dimension-device-clearance-mm")
    assert shown == f"{round(clear)} under the anti-tip device"


def test_a_chair_without_device_says_so() -> None:
    bare = replace(average_adult(), anti_tip_wheel=None, anti_tip_mount=None)
    assert "No anti-tip device is fitted." in words(ramp_sheet(bare, ramp()), "verdict")
    with pytest.raises(ValueError, match="must have an anti-tip device"):
        device_clearance_mm(bare, 4.0)


def test_top_of_a_short_ramp_is_drawn() -> None:
    lines = []
    for rise in (60.0, 400.0):
        sheet = ramp_sheet(average_adult(), ramp(8.0, rise), facing="up")
        (floor,) = [item for item in group(sheet, "floor").items if isinstance(item, Polyline)]
        lines.append([(x * scale_of(sheet), y * scale_of(sheet)) for x, y in floor.points])
    # level, ramp, landing; level and ramp
    assert [len(points) for points in lines] == [4, 3]
    assert lines[0][2][1] == pytest.approx(lines[0][3][1], abs=1e-9)
    ramp_mm = hypot(lines[0][2][0] - lines[0][1][0], lines[0][2][1] - lines[0][1][1])
    assert ramp_mm == pytest.approx(hypot(60.0, 480.0), abs=EXACT)


@pytest.mark.parametrize("falls", ["left", "right"])
def test_cross_slope_angles_are_the_figures(falls: str) -> None:
    made = seated()
    left, right = (made.figures[f"tip_{side}_deg"] for side in ("left", "right"))
    assert tip_sideways_deg(made.shape) == pytest.approx((left, right), abs=EXACT)
    place = CrossSlope(name="yard", slope=Slope(0.12))
    turn = place.slope.degrees * (1.0 if falls == "left" else -1.0)
    sheet = cross_slope_sheet(made.shape, place, falls=falls)  # type: ignore[arg-type]
    angles = drawn_deg(sheet)
    downhill, uphill = (left, right) if falls == "left" else (right, left)
    sign = -1.0 if falls == "left" else 1.0
    slope = place.slope.degrees
    assert angles["tipping_rear"] == pytest.approx(sign * (downhill - slope), abs=EXACT)
    assert angles["tipping_forward"] == pytest.approx(-sign * (uphill + slope), abs=EXACT)
    shown = words(sheet, "margins")
    assert f"{left - turn:.1f}° to tip" in shown
    assert f"{right + turn:.1f}° to tip" in shown
    assert f"{downhill - slope:.1f}° left before it tips to the {falls}" in words(sheet, "verdict")
    track = words(sheet, "dimension-rear-track-mm")
    assert track == f"{round(made.figures['rear_track_mm'])} rear track"


def test_edge_beside_the_centre_of_mass_by_hand() -> None:
    # rear track 560, caster track 470, wheelbase 330, centre of mass 135 ahead:
    # 280 - 45 x 135 / 330 = 261.59
    assert edge_at_com_mm(average_adult()) == pytest.approx(261.59, abs=0.005)


def test_worse_side_of_a_chair_with_its_mass_to_the_left_is_the_left() -> None:
    place = CrossSlope(name="yard", slope=Slope(0.05))
    sheet = cross_slope_sheet(tall_adult(), place)  # 8 mm to the left
    assert "tips to the left" in words(sheet, "verdict")


@pytest.mark.parametrize("make", ALL)
@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("page", [A5_PORTRAIT, A5_LANDSCAPE, Page(120.0, 160.0)])
def test_they_fit_the_page_with_texts_apart(
    make: Callable[[], Shape], units: Units, page: Page
) -> None:
    long = "the way between the street and the front door, " * 4
    place = CrossSlope(name=long, slope=Slope(0.08))
    for sheet in (
        ramp_sheet(make(), ramp(name=long), facing="up", units=units, page=page),
        ramp_sheet(make(), ramp(name=long), facing="down", units=units, page=page),
        cross_slope_sheet(make(), place, units=units, page=page),
    ):
        assert sheet.width_mm <= page.width_mm
        assert sheet.height_mm <= page.height_mm
        assert overlapping(texts(sheet)) == []
        assert long in sheet.description


def test_only_the_balance_lines_and_their_legend_have_a_colour() -> None:
    place = CrossSlope(name="yard", slope=Slope(0.05))
    for sheet in (ramp_sheet(average_adult(), ramp()), cross_slope_sheet(average_adult(), place)):
        coloured = {
            each.name
            for each in sheet.groups
            for item in each.items
            if getattr(item, "pen", "") in ("plumb", "tipping_rear", "tipping_forward")
        }
        assert coloured == {"balance", "legend"}


def test_the_same_slope_gives_the_same_bytes() -> None:
    first, second = (to_svg(ramp_sheet(average_adult(), ramp()), "r") for _ in range(2))
    assert first == second
    assert '<title id="r-title">Side view, up the ramp: front door, scale 1:' in first
