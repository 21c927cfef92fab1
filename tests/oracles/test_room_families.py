"""Figures of corners, doors, devices and knees against other ways of working them out."""

from __future__ import annotations

from typing import Any, NamedTuple

import numpy as np
import pytest
from numpy.typing import NDArray
from scipy.optimize import brentq, minimize_scalar
from shapely.affinity import rotate, translate
from shapely.geometry import MultiPoint, box
from shapely.ops import unary_union

from chairwright.chair.rows import Rows
from chairwright.figures import families_room
from chairwright.figures.corner import corner_best_arc_out_mm, corner_free_out_mm
from chairwright.figures.doors import door_corridor_mm
from chairwright.figures.evaluate import figures_of
from chairwright.figures.outline import corners_of, plan_outline
from chairwright.figures.turning import box_corners, half_turn_free_mm

from .random_chairs import Batch, batches

Array = NDArray[np.float64]
MICRON = 1e-3
AHEAD, BEHIND, WIDTH = 850.0, 250.0, 660.0
LENGTH = AHEAD + BEHIND


def figure(batch: Batch, name: str) -> Array:
    return np.array(figures_of(batch.rows, batch.occupant, [name])[name])


def some(seed: int, each: int = 12) -> Batch:
    (batch,) = batches(seed, 1, each)
    return batch


# --- the box of 1100 x 660 mm ----------------------------------------------------------------


@pytest.fixture
def boxes(monkeypatch: pytest.MonkeyPatch) -> Batch:
    """Chairs whose outline is the box, whatever they are."""
    around = box_corners(np.full(12, AHEAD), np.full(12, BEHIND), np.full(12, WIDTH))
    monkeypatch.setattr(families_room, "corners_of", lambda _: around)
    return some(1)


def free_out(width_in: float) -> float:
    """Least w2 with w1 sin q + w2 cos q - L sin q cos q >= B at every q."""

    def need(q: float) -> float:
        return float((WIDTH + LENGTH * np.sin(q) * np.cos(q) - width_in * np.sin(q)) / np.cos(q))

    angles = np.linspace(0.0, np.pi / 2 - 1e-6, 2001)
    best = angles[int(np.argmax([need(q) for q in angles]))]
    around = (max(best - 1e-3, 0.0), best + 1e-3)
    found = minimize_scalar(lambda q: -need(q), bounds=around, options={"xatol": 1e-12})
    return float(max(-found.fun, need(0.0)))


def test_equal_corridors_of_the_box(boxes: Batch) -> None:
    # (B + L/2) / sqrt 2 = 855.599 mm
    assert figure(boxes, "corner_free_mm@855.599") == pytest.approx(855.599, abs=2 * MICRON)


@pytest.mark.parametrize("width_in", [700.0, 800.0, 950.0, 1100.0, 1500.0])
def test_unequal_corridors_of_the_box(boxes: Batch, width_in: float) -> None:
    found = figure(boxes, f"corner_free_mm@{width_in:g}")
    assert found == pytest.approx(free_out(width_in), abs=MICRON)


@pytest.mark.parametrize("width_in", [950.0, 1067.731, 1300.0])
def test_best_arc_of_the_box(boxes: Batch, width_in: float) -> None:
    """Radii in tenths of a millimetre; the centre as near the outer wall as the rear lets it."""
    radius = np.arange(WIDTH / 2, 6000.0, 0.1)
    inner = radius - WIDTH / 2
    rear, front = np.hypot(BEHIND, radius + WIDTH / 2), np.hypot(AHEAD, radius + WIDTH / 2)
    up = np.maximum(rear - width_in, 0.0)
    fits = up <= inner
    needs = front[fits] - np.sqrt(inner[fits] ** 2 - up[fits] ** 2)
    found = figure(boxes, f"corner_arc_mm@{width_in:g}")
    # At a valley 0.1 mm of radius are worth less than a thousandth; the figure may go lower.
    assert found == pytest.approx(needs.min(), abs=5 * MICRON)
    assert (found >= figure(boxes, f"corner_free_mm@{width_in:g}")).all()
    if width_in == 1067.731:  # where the whole circle serves about the bisector, (a + B) / sqrt 2
        assert (found <= 1067.731 + MICRON).all()


def test_wider_than_the_way_in_is_never(boxes: Batch) -> None:
    for name in ("corner_free_mm@659", "corner_arc_mm@659", "door_turn_mm@659"):
        assert (figure(boxes, name) == 99_999.0).all()


# --- the outline -----------------------------------------------------------------------------


def whole(rows: Rows) -> list[tuple[Array, Array]]:
    """Every corner of every outline, shape (n,) each."""
    outlines = [plan_outline(rows.take(np.array([at]))) for at in range(len(rows))]
    table = np.array(outlines)
    return [(table[:, at, 0], np.abs(table[:, at, 1])) for at in range(table.shape[1])]


@pytest.mark.parametrize("seed", range(4))
def test_few_corners_say_the_same_as_all(seed: int) -> None:
    rows = some(40 + seed, 30).rows
    few, every = corners_of(rows), whole(rows)
    assert len(few) < len(every)
    for width in (720.0, 850.0, 1000.0, 1400.0):
        for need in (corner_free_out_mm, corner_best_arc_out_mm, door_corridor_mm):
            # Golden sections meet the valley of both to the same rounding.
            assert need(few, width) == pytest.approx(need(every, width), abs=1e-6)
    assert half_turn_free_mm(few) == pytest.approx(half_turn_free_mm(every), abs=1e-9)


# --- doors -----------------------------------------------------------------------------------


class Turn(NamedTuple):
    """Centre of a turn to the right through an opening from x = 0 in a wall along y = 0."""

    x: float
    y: float
    radius: float
    corridor: float


def turn(radius: float, chair: Array, opening: float) -> Turn:
    """The turn of one radius that takes the least corridor.

    The near side ends along the near jamb and starts clear of the wall, and no point ahead may
    meet the far jamb. In a wide opening the centre may lie between the jambs: then the points
    ahead graze the far jamb, and the near side the near one on the way.
    """
    inner, ahead = radius - chair[:, 1].max(), np.maximum(chair[:, 0], 0.0)
    front = np.hypot(ahead, radius + chair[:, 1]).max()
    rear = np.hypot(np.minimum(chair[:, 0], 0.0), radius + chair[:, 1]).max()
    if front > opening + inner:
        x, y = -inner, max(np.sqrt(front**2 - (opening + inner) ** 2), -inner)
    else:
        x = min(opening - front, 0.0)
        y = -np.sqrt(inner**2 - x**2) if inner > 0 else -inner
    return Turn(float(x), float(y), radius, float(rear + y))


def floor(chair: Array, at: Turn) -> Any:
    """What is swept along the corridor, round the centre, and through the door."""
    start = translate(MultiPoint(chair).convex_hull, at.x, at.y + at.radius)
    poses = [rotate(start, -each, origin=(at.x, at.y)) for each in np.arange(0.0, 90.01, 0.05)]
    ends = [(start, (-3000, 0)), (poses[-1], (0, -3000))]
    straight = [
        MultiPoint([*pose.exterior.coords, *translate(pose, *by).exterior.coords]).convex_hull
        for pose, by in ends
    ]
    return unary_union([*poses, *straight])


@pytest.mark.parametrize("seed", range(6))
def test_the_turn_into_a_door_swept_by_the_library(seed: int) -> None:
    batch, opening = some(60 + seed, 1), 760.0 + 30 * seed
    chair = np.array(plan_outline(batch.rows))
    (found,) = figure(batch, f"door_turn_mm@{opening:g}")
    radii = np.arange(0.0, 1500.0, 0.05)  # half a step off is worth less than a micron
    best = min((turn(each, chair, opening) for each in radii), key=lambda each: each.corridor)
    swept = floor(chair, best)
    walls = unary_union([box(-5000, -500, 0, 0), box(opening, -500, 5000, 0)])
    assert swept.intersection(walls).area < 1.0  # mm2: rounding along the jambs
    assert found == pytest.approx(swept.bounds[3], abs=MICRON)


# --- anti-tip device -------------------------------------------------------------------------


def lowest(rows: Rows, at: int, pitch: float) -> float:
    """Bottom of the device's wheel above the floor, the chair pitched about its rear axle."""
    arm = complex(rows["device_x"][at], rows["device_z"][at] - rows["rear_height"][at])
    centre = arm * np.exp(1j * pitch) + 1j * rows["rear_height"][at]
    return float(centre.imag - rows["device_radius"][at])


def over_ramp(rows: Rows, at: int, slope: float) -> float:
    """Caster axle above a ramp whose foot the rear wheels touch, the chair pitched by the slope."""
    high = rows["rear_height"][at]
    axle = complex(-high * np.tan(slope / 2), high)
    caster = axle + complex(rows["wheelbase"][at], rows["caster_radius"][at] - high) * np.exp(
        1j * slope
    )
    return float((caster * np.exp(-1j * slope)).imag)


def with_device(seed: int) -> tuple[Batch, list[int]]:
    batch = some(seed, 60)
    pitch = batch.figures["pitch_to_anti_tip_deg"]
    return batch, [at for at in range(60) if 1.0 < pitch[at] < 30.0][:12]


@pytest.mark.parametrize("seed", range(80, 83))
def test_on_the_foot_of_a_ramp_the_device_just_touches(seed: int) -> None:
    batch, some_rows = with_device(seed)
    assert len(some_rows) > 4
    spare = figure(batch, "device_spare_deg@slope_4")
    for at in some_rows:
        touching = brentq(lambda p, at=at: lowest(batch.rows, at, p), 0.0, 0.7)
        assert np.degrees(touching) - 4.0 == pytest.approx(spare[at], abs=1e-6)
        # Pitched by the slope the chair does stand there: its casters are on the ramp.
        radius = batch.rows["caster_radius"][at]
        assert over_ramp(batch.rows, at, touching) == pytest.approx(radius, abs=1e-9)


@pytest.mark.parametrize("seed", range(80, 83))
def test_on_a_step_the_figure_errs_a_little_on_the_safe_side(seed: int) -> None:
    batch, some_rows = with_device(seed)
    spare, rows = figure(batch, "device_spare_deg@step_30"), batch.rows
    for at in some_rows:
        arm = complex(rows["wheelbase"][at], rows["caster_radius"][at] - rows["rear_height"][at])
        raised = rows["caster_radius"][at] + 30.0 - rows["rear_height"][at]
        pitch = brentq(lambda p, a=arm, up=raised: (a * np.exp(1j * p)).imag - up, 0.0, 0.7)
        touching = brentq(lambda p, at=at: lowest(rows, at, p), 0.0, 0.7)
        true = float(np.degrees(touching - pitch))
        # sin(asin(H / L)) - sin(true pitch) = (R - rc) (1 - cos(true pitch)) / L
        said = np.arcsin(30.0 / rows["wheelbase"][at])
        error = -arm.imag * (1 - np.cos(said)) / (arm.real * np.cos(said))
        assert true - np.degrees(error) - 1e-9 <= spare[at] <= true + 1e-9


def test_without_a_device_everything_is_to_spare() -> None:
    batch = some(84, 60)
    none = np.isnan(batch.rows["device_x"])
    assert none.any() and not none.all()
    assert (figure(batch, "device_spare_deg@slope_4")[none] == 90.0).all()


# --- knees -----------------------------------------------------------------------------------


@pytest.mark.parametrize("seed", range(90, 96))
def test_knees_by_a_sum_of_vectors(seed: int) -> None:
    batch = some(seed, 20)
    rows, found = batch.rows, batch.figures["knee_top_mm"]
    tops = []
    for side, above in batch.occupant.knee_above_joint_mm.items():
        thigh = batch.occupant.body.thigh_mm[side]
        assert thigh is not None and above >= 0
        hip = rows["hip_x"] + 1j * rows["hip_z"] - rows["axle_x"] - 1j * rows["axle_z"]
        knee = (hip + thigh * np.exp(1j * rows["seat_slope"])) * np.exp(1j * rows["pitch"])
        tops.append(knee.imag + rows["rear_height"] + above)
    if tops:
        assert found == pytest.approx(np.max(tops, axis=0), abs=1e-9)
    else:
        assert np.isnan(found).all()
