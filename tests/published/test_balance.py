"""Static and dynamic stability against published chairs and closed forms (rows ST and DY)."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest

from chairwright.chair.rows import Rows
from chairwright.figures import balance
from chairwright.figures.band import Band
from chairwright.figures.mass import MassBox, mass_box
from chairwright.mass_points import MassPoints
from chairwright.tables.load import load_table
from tests.oracles.rows_of import chair, masses, one

Formula = Callable[[Rows, MassBox], Band]

# The surrogate chair of ISO 10865-1, Annex D, Table D.1 (mm), casters trailing.
TABLE = {
    row["quantity"]: float(row["value"])
    for row in load_table("experiments", "iso10865_surrogate_chair")
}
LENGTH, TRAIL = TABLE["wheelbase_casters_trailing"], TABLE["caster_trail"]
RADIUS, CASTER_RADIUS = TABLE["rear_wheel_diameter"] / 2, TABLE["caster_diameter"] / 2
X, Z = TABLE["com_forward_of_axle"], TABLE["com_height"]
SURROGATE = chair(
    wheelbase=LENGTH,
    rear_radius=RADIUS,
    track=TABLE["rear_track"],
    caster_track=TABLE["caster_track"],
    trail=TRAIL,
)
BOX = masses(X, Z)
PRINTED = 0.005
"""Half a unit of the last printed digit of a figure with two decimals."""


def value(band: Band) -> float:
    """The value of a known band."""
    assert band.low is band.high
    return float(np.ravel(band.low)[0])


def ahead_over_caster_axle(length: float) -> float:
    """Forward about the caster axle: the same formula, heights counted from that axle."""
    edges = balance.support_edges(one(length), one(465.0), one(275.0))
    front = edges[1]
    return float(balance.edge_angle(front, 1.0, one(X), one(0.0), one(Z - CASTER_RADIUS))[0])


def test_the_table_is_the_printed_one() -> None:
    # ISO 10865-1 Table D.1.
    assert (LENGTH, X, Z, RADIUS) == (360, 115, 600, 304.5)
    assert (TABLE["rear_track"], TABLE["caster_track"], TRAIL, CASTER_RADIUS) == (465, 275, 45, 89)


def test_st_01_rear_locked() -> None:
    assert value(balance.rear_locked(SURROGATE, BOX)) == pytest.approx(10.85, abs=PRINTED)


def test_st_02_rear_free() -> None:
    assert value(balance.rear_free(SURROGATE, BOX)) == pytest.approx(21.26, abs=PRINTED)


def test_st_03_forward_over_the_contact() -> None:
    assert value(balance.forward(SURROGATE, BOX)) == pytest.approx(22.21, abs=PRINTED)


def test_st_04_forward_over_the_caster_axle() -> None:
    assert ahead_over_caster_axle(LENGTH) == pytest.approx(25.62, abs=PRINTED)


def test_st_05_casters_turned_forward() -> None:
    turned = value(balance.forward_casters_forward(SURROGATE, BOX))
    assert turned == pytest.approx(29.18, abs=PRINTED)
    assert ahead_over_caster_axle(LENGTH + 2 * TRAIL) == pytest.approx(33.25, abs=PRINTED)


def test_st_06_sideways_and_its_line() -> None:
    side = value(balance.tip_left(SURROGATE, BOX))
    assert side == pytest.approx(18.62, abs=PRINTED)
    assert value(balance.tip_right(SURROGATE, BOX)) == pytest.approx(18.62, abs=PRINTED)
    assert np.tan(np.radians(side)) * Z == pytest.approx(202.15, abs=PRINTED)


def test_st_07_sideways_about_the_wheel_line() -> None:
    for figure in (balance.tip_left_line, balance.tip_right_line):
        assert value(figure(SURROGATE, BOX)) == pytest.approx(18.04, abs=PRINTED)


def test_st_07_the_line_lies_at_its_printed_angle() -> None:
    left = balance.support_edges(one(LENGTH), one(465.0), one(275.0))[2]
    angle = np.degrees(np.arctan2(left.normal_x, left.normal_y))[0]
    assert angle == pytest.approx(14.78, abs=PRINTED)


def test_st_08_caster_share() -> None:
    share = 100 * value(balance.caster_share(SURROGATE, BOX))
    assert share == pytest.approx(31.9, abs=0.05)


@pytest.mark.parametrize(
    ("figure", "low", "high"),
    [(balance.rear_locked, 9.77, 11.96), (balance.rear_free, 18.97, 23.65)],
)
def test_st_09_range_over_the_tables_tolerance(figure: Formula, low: float, high: float) -> None:
    band = figure(SURROGATE, masses(X, Z, spread=10.0))
    assert float(band.low[0]) == pytest.approx(low, abs=PRINTED)
    assert float(band.high[0]) == pytest.approx(high, abs=PRINTED)


@pytest.mark.parametrize(
    ("figure", "angle"),
    # Statics, ST-11: L 400, R 305, x 120, h 620.
    [(balance.rear_locked, 10.95), (balance.rear_free, 20.85), (balance.forward, 24.30)],
)
def test_st_11_plain_chair(figure: Formula, angle: float) -> None:
    rows = chair(wheelbase=400, rear_radius=305)
    assert value(figure(rows, masses(120, 620))) == pytest.approx(angle, abs=PRINTED)


@pytest.mark.parametrize(
    ("direction", "angle"),
    [(180.0, 13.41618), (0.0, 30.41958), (90.0, 25.73208), (120.0, 25.50414)],
)
def test_st_12_and_13_every_direction(direction: float, angle: float) -> None:
    edges = balance.support_edges(one(450), one(560), one(440))
    got = balance.tip_angle(edges, one(130), one(0), one(545), direction)[0]
    assert got == pytest.approx(angle, abs=1e-5)


@pytest.fixture
def body_on_wheels() -> tuple[Rows, MassBox]:
    """Body of 84 kg, two rear wheels of 2.0 kg and two casters of 0.5 kg, for ST-14 and ST-15."""
    turned = {"sin_pitch": 0.0, "cos_pitch": 1.0}
    rows = chair(wheelbase=450, rear_radius=305, axle_x=0, axle_z=305, load=70, **turned)
    rows.load(
        [
            MassPoints("body", 84.0, 130.0, 0.0, 560.0),
            MassPoints("casters", 1.0, 450.0, 0.0, 65.0, "casters"),
            MassPoints("rear wheels", 4.0, 0.0, 0.0, 305.0, "rear_wheels"),
        ]
    )
    return rows, mass_box(rows)


def test_st_14_whole_chair_locked(body_on_wheels: tuple[Rows, MassBox]) -> None:
    rows, box = body_on_wheels
    assert value(box.x) == pytest.approx(127.75, abs=PRINTED)
    assert value(box.z) == pytest.approx(542.98, abs=PRINTED)
    assert value(balance.rear_locked(rows, box)) == pytest.approx(13.2399, abs=0.00005)


def test_st_15_frame_and_casters_about_the_axle(body_on_wheels: tuple[Rows, MassBox]) -> None:
    rows, box = body_on_wheels
    free = value(balance.rear_free(rows, box))
    assert free == pytest.approx(28.2281, abs=0.00005)
    assert free > value(balance.rear_locked(rows, box)) + 10


def test_st_17_the_ramp_problem_is_answered_at_the_contact_not_at_the_axle() -> None:
    # A restated textbook problem: CoM 13 cm ahead of the axle and 24 cm above it, wheel radius
    # 30.5 cm, plumb line through the ground contact.
    rows, box = chair(wheelbase=450, rear_radius=305), masses(130, 545)
    locked = value(balance.rear_locked(rows, box))
    assert locked == pytest.approx(13.416, abs=0.0005)
    assert abs(locked - 28.443) > 15
    # The wrong answer is the other case, wheels free, and stands under its own name.
    assert value(balance.rear_free(rows, box)) == pytest.approx(28.443, abs=0.0005)


@pytest.mark.parametrize(("x", "angle"), [(143, 21.7), (60, 9.4)])
def test_st_18_offsets_that_the_1985_angles_need(x: float, angle: float) -> None:
    # Loane & Kirby 1985 (angles, read in the abstract); h - R = 360 mm. 0.1: x is rounded.
    rows = chair(wheelbase=450, rear_radius=300)
    assert value(balance.rear_free(rows, masses(x, 660))) == pytest.approx(angle, abs=0.1)


@pytest.mark.parametrize(("above", "travel"), [(330, 77), (360, 84)])
def test_st_19_axle_travel_between_the_1985_angles(above: float, travel: float) -> None:
    # Loane & Kirby 1985 (angles, read in the abstract). 0.1: the travel is rounded to 1 mm.
    rows = chair(wheelbase=450, rear_radius=300)
    rearmost = above * np.tan(np.radians(21.7))
    angles = [
        value(balance.rear_free(rows, masses(x, 300 + above)))
        for x in (rearmost, rearmost - travel)
    ]
    assert angles == pytest.approx([21.7, 9.4], abs=0.1)
    slope = (np.tan(np.radians(angles[0])) - np.tan(np.radians(9.4))) * above / (0.2324 * above)
    assert slope == pytest.approx(1.0, abs=0.0005)


@pytest.mark.parametrize(("x", "angle"), [(273, 28.6), (199, 21.7), (83, 9.4)])
def test_st_21_plain_triangle_500_above_the_pivot(x: float, angle: float) -> None:
    rows = chair(wheelbase=600, rear_radius=300)
    assert value(balance.rear_free(rows, masses(x, 800))) == pytest.approx(angle, abs=0.1)


def test_st_26_breathing_moves_the_centre_of_mass_by_3_mm() -> None:
    # Kirby 2010 (read in the abstract): 0.46 deg at 16.3 deg; h - R = 350 mm.
    rows = chair(wheelbase=450, rear_radius=300)
    x = 350 * np.tan(np.radians(16.3))
    shift = [value(balance.rear_free(rows, masses(x + d, 650))) for d in (-1.55, 1.55)]
    # 0.015: the 3.1 mm is rounded to 0.1 mm, worth 0.015 deg.
    assert shift[1] - shift[0] == pytest.approx(0.46, abs=0.015)


@pytest.mark.parametrize(
    ("run", "angle", "printed"),
    [(4, 14.036, 3), (8, 7.125, 3), (10, 5.71, 2), (12, 4.764, 3), (15, 3.81, 2), (20, 2.86, 2)],
)
def test_st_31_a_chair_that_just_stands_on_a_slope_of_1_to_n(
    run: int, angle: float, printed: int
) -> None:
    # Trigonometry: x / h = 1 / n.
    rows = chair(wheelbase=450, rear_radius=300)
    got = value(balance.rear_locked(rows, masses(600 / run, 600)))
    assert got == pytest.approx(angle, abs=0.5 * 10.0**-printed)


def test_st_32_margin_on_ramps_of_the_least_stable_1985_chair() -> None:
    # 9.4 deg: Loane & Kirby 1985 (read in the abstract); 1:12 is the program's own constant.
    rows = chair(wheelbase=450, rear_radius=300)
    box = masses(600 * np.tan(np.radians(9.4)), 600)
    tips = value(balance.rear_locked(rows, box))
    assert tips - balance.SLOPE_1_TO_12_DEG == pytest.approx(4.6, abs=0.05)
    assert tips - np.degrees(np.arctan(1 / 8)) == pytest.approx(2.3, abs=0.05)
    assert tips < np.degrees(np.arctan(1 / 4))
