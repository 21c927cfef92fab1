"""Tyres, camber, toe and casters (rows WH)."""

from __future__ import annotations

import numpy as np
import pytest

from chairwright.chair import pose
from chairwright.tables.load import load_table
from tests.oracles.draws import random_setups
from tests.oracles.lines import everyday, everyday_as_written, line_from
from tests.oracles.people import client, seated
from tests.oracles.rows_of import one


def outside_diameter(bead_seat: float, tyre_width: float) -> float:
    """Outside diameter that the program makes of a wheel written in a line file [mm]."""
    data = everyday_as_written()
    wheel = data["rear_wheels"][0]
    wheel.update(bead_seat_mm=bead_seat, tyre_width_mm=tyre_width, hand_rim_diameter_mm=400)
    line = line_from(data)
    return 2 * float(line.column("rear_wheel", "radius_mm")[0])


@pytest.mark.parametrize(
    ("width", "bead_seat", "diameter"),
    # ISO 5775 marking, from memory, unverified; diameter = bead seat + 2 x width.
    [(25, 501, 551), (25, 540, 590), (37, 540, 614), (25, 559, 609), (25, 590, 640)],
)
def test_wh_01_outside_diameter(width: float, bead_seat: float, diameter: float) -> None:
    assert outside_diameter(bead_seat, width) == diameter
    marking = f"{width}-{bead_seat}"
    (row,) = [r for r in load_table("wheels", "iso5775_tyre_sizes") if r["marking"] == marking]
    assert float(row["outside_diameter_mm"]) == diameter


@pytest.mark.parametrize(
    ("width", "bead_seat", "sum_", "measured"),
    # thofisch/Gearing (public code).
    [
        (25.4, 559, 609.8, 610),
        (25.4, 571, 621.8, 622),
        (35, 590, 660, 660),
        (31.75, 451, 514.5, 514),
    ],
)
def test_wh_02_against_measured_wheels(
    width: float, bead_seat: float, sum_: float, measured: float
) -> None:
    got = outside_diameter(bead_seat, width)
    assert got == pytest.approx(sum_, abs=0.05)
    assert got == pytest.approx(measured, abs=3)
    rows = load_table("wheels", "gearing_measured_radii")
    radii = {float(r["bead_seat_diameter_mm"]): float(r["measured_radius_mm"]) for r in rows}
    assert 2 * radii[bead_seat] == measured


@pytest.mark.parametrize(
    ("width", "bead_seat", "roll_out", "rolled", "gap"),
    # Public cycling speed-profile code; typical gap 3 mm, worst 12 mm.
    [(32, 559, 1953, 621.7, 3), (35, 590, 2068, 658.3, 3), (34, 540, 1948, 620, 12.5)],
)
def test_wh_03_against_roll_out(
    width: float, bead_seat: float, roll_out: float, rolled: float, gap: float
) -> None:
    printed = 0.5 if rolled == round(rolled) else 0.05
    assert roll_out / np.pi == pytest.approx(rolled, abs=printed)
    assert outside_diameter(bead_seat, width) == pytest.approx(rolled, abs=gap)


@pytest.mark.parametrize(
    ("radius", "camber", "growth"),
    [
        (305, 3, 31.9), (305, 6, 63.8), (305, 1, 10.6), (305, 2, 21.3), (305, 4, 42.6),
        (305, 9, 95.4), (305, 15, 157.9), (295, 3, 30.9), (295, 6, 61.7),
    ],
)  # fmt: skip
def test_wh_04_to_07_track_growth(radius: float, camber: float, growth: float) -> None:
    assert pose.track_growth(one(radius), one(camber))[0] == pytest.approx(growth, abs=0.05)


@pytest.mark.parametrize(("camber", "drop"), [(3, 0.42), (6, 1.67), (9, 3.76), (15, 10.39)])
def test_wh_04_to_06_axle_drop(camber: float, drop: float) -> None:
    height = pose.rear_axle_height(one(305), one(camber))[0]
    assert 305 - height == pytest.approx(drop, abs=0.005)


def test_wh_08_camber_leans_the_tops_in() -> None:
    # ISO 7176-26, 4.6.3 calls that negative; here the everyday magnitude is used.
    rng = np.random.default_rng(1)
    occupant = seated(client())
    rows, _ = random_setups(everyday(), occupant, rng, 40, lambda r: r["camber"] > 0)
    top = rows["hub_half"] - rows["rear_radius"] * np.sin(np.radians(rows["camber"]))
    assert (rows["rear_track"] / 2 > rows["hub_half"]).all()
    assert rows["rear_track"] / 2 + top == pytest.approx(2 * rows["hub_half"])


@pytest.mark.parametrize(
    ("camber", "tilt", "toe"), [(3, 5, 0.262), (6, 5, 0.525), (6, 10, 1.046), (15, 5, 1.338)]
)
def test_wh_09_toe_out_of_a_frame_that_tilts_back(camber: float, tilt: float, toe: float) -> None:
    got = pose.toe_out_deg(one(camber), np.radians(one(tilt)))[0]
    assert got == pytest.approx(toe, abs=0.0005)
    # Trudel 1995 (read in the abstract): toe-out when the frame tilts back, so in when it dips.
    assert pose.toe_out_deg(one(camber), np.radians(one(-tilt)))[0] == pytest.approx(-got)


@pytest.mark.parametrize("tilt", [-5.0, 0.0, 7.0, 20.0])
def test_wh_10_no_camber_no_toe(tilt: float) -> None:
    assert pose.toe_out_deg(one(0), np.radians(one(tilt)))[0] == 0


@pytest.mark.parametrize(("stem", "trail"), [(3, 49.7), (-3, 40.4), (5, 52.96)])
def test_wh_13_trail_on_the_floor(stem: float, trail: float) -> None:
    got = pose.floor_trail(one(45), one(89), np.radians(one(stem)))[0]
    assert got == pytest.approx(trail, abs=0.005 if trail == 52.96 else 0.05)


@pytest.mark.parametrize(("stem", "rise"), [(3, 4.7), (5, 7.84), (0, 0.0)])
def test_wh_14_the_front_rises_when_the_caster_swings_round(stem: float, rise: float) -> None:
    tilt = np.radians(one(stem))
    _, behind = pose.turned(one(-45), one(0), np.sin(tilt), np.cos(tilt))
    _, ahead = pose.turned(one(45), one(0), np.sin(tilt), np.cos(tilt))
    # The caster's axle stays at its height, so the frame moves the other way.
    assert ahead[0] - behind[0] == pytest.approx(rise, abs=0.005 if stem == 5 else 0.05)


def test_wh_15_vertical_stem() -> None:
    assert pose.floor_trail(one(45), one(89), one(0))[0] == 45


def test_wh_16_axle_raised_by_an_inch() -> None:
    level = pose.settle(one(400), one(0), one(89), one(89))
    raised = pose.settle(one(400), one(-25.4), one(89), one(89))
    assert np.degrees(level.pitch_rad[0]) == pytest.approx(0, abs=1e-12)
    # Frame and stem tilt back together.
    assert np.degrees(raised.pitch_rad[0]) == pytest.approx(3.63, abs=0.005)
